"""Reviews as one repeating event a kit: the same days as the dated ones, in every reader; stamps that move with it and only then.

The readers: python3-icalendar with recurring-ical-events, ical.js, node-ical (with rrule), khal behind vdirsyncer, Evolution's data server. Rules are
those of the list in docs/limits.md, also expanded by python3-dateutil; in the usual run some of them, with LARDERLOOP_TEST_SCALE above 1 all.
"""
import datetime
import json
import unittest

import dateutil.rrule
import icalendar
import recurring_ical_events

from _demo import DEMO, DemoTest
from _eds import DataServerClient
from _feed_server import FeedServer
from _support import SCALE
from clients_feed import FROM, ZONES, Clients, Fetching

AHEAD = datetime.timedelta(days=731)
TODAY = datetime.date(2027, 4, 3)
# Starts and rules; what the reference cases of the list are, set off by a year or so.
RULES = (("2027-03-06", "FREQ=YEARLY;BYMONTH=3,9;BYDAY=1SA"), ("2027-03-06", "FREQ=MONTHLY;INTERVAL=6;BYDAY=1SA"), ("2027-03-31", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1"),
         ("2027-04-25", "FREQ=YEARLY;BYMONTH=4,10;BYDAY=-1SU"), ("2027-01-15", "FREQ=YEARLY;BYMONTH=1,7"), ("2028-02-29", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=-1"),
         ("2027-03-27", "FREQ=MONTHLY;INTERVAL=3;BYDAY=-1SA"), ("2027-03-14", "FREQ=YEARLY;BYMONTH=3;BYDAY=2SU"), ("2027-06-30", "FREQ=YEARLY;BYMONTH=6,12;BYMONTHDAY=30"),
         ("2027-04-03", "FREQ=MONTHLY;BYDAY=1SA"))


class SeriesTest(DemoTest):
    def setUp(self):
        super().setUp()
        self.ok("settings", "set", "feed-reviews", "series")

    def dated(self):
        """The events of the same book on the same day with every review by itself: [(day, title)], of today and the two years ahead."""
        copy = self.folder / "dated.book"
        copy.unlink(missing_ok=True)
        self.ok("backup", copy)
        self.ok("settings", "set", "feed-reviews", "dated", "--book", copy)
        events = self.data("calendar", "--book", copy)["events"]
        self.assertTrue(all(each["repeats"] is None for each in events))
        return sorted((each["begin"], each["summary"]) for each in events)

    def today(self):
        return datetime.date.fromisoformat(self.env["LARDERLOOP_NOW"][:10])

    def expanded(self, raw):
        """[(day, title)] by recurring-ical-events, from today through the two years ahead."""
        calendar = icalendar.Calendar.from_ical(raw)
        seen = recurring_ical_events.of(calendar).between(self.today(), self.today() + AHEAD + datetime.timedelta(1))
        return sorted((each["DTSTART"].dt.isoformat(), str(each["SUMMARY"])) for each in seen)

    def parts(self, raw, kit="Home"):
        """The master of the kit's series and what is moved."""
        events = [each for each in icalendar.Calendar.from_ical(raw).walk("VEVENT") if f"Review the {kit}" in str(each["SUMMARY"])]
        (master,) = [each for each in events if "RRULE" in each]
        return master, [each for each in events if "RRULE" not in each]

    def kits(self):
        return sorted({each["kit"] for each in self.data("plan")["kits"]})


class Readers(SeriesTest, Clients):
    def agree(self, zones=ZONES if SCALE > 1 else ("Pacific/Kiritimati",)):
        """All readers of files see what dated events say."""
        raw = self.feed()
        truth = self.dated()
        self.assertEqual(self.expanded(raw), truth)
        file = self.folder / "feed.ics"
        last = f"{self.today() + AHEAD:%Y%m%d}"
        for zone in zones:
            seen = self.node("feed", file, f"{self.today():%Y%m%d}", last, zone=zone)
            for reader in ("icaljs", "nodeical"):
                self.assertEqual(sorted((f"{each['day'][:4]}-{each['day'][4:6]}-{each['day'][6:]}", each["summary"]) for each in seen[reader]), truth, (reader, zone))
                self.assertEqual({each["days"] for each in seen[reader]}, {1}, (reader, zone))
        return raw

    def test_every_step_in_every_reader_of_files(self):
        first = self.agree(ZONES)
        master, moved = self.parts(first)
        self.assertEqual((moved, "EXDATE" in master, master["DTSTART"].dt), ([], False, TODAY))
        self.assertEqual(first.count(b"RRULE:"), len(self.kits()), "one a kit")
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        second = self.agree()
        changed, (moved,) = self.parts(second)
        self.assertEqual(changed["UID"], master["UID"])
        self.assertEqual(moved["UID"], master["UID"])
        self.assertEqual((moved["RECURRENCE-ID"].dt, moved["DTSTART"].dt), (TODAY, datetime.date(2027, 4, 10)))
        for each in (changed, moved):
            self.assertEqual(int(each["SEQUENCE"]), int(master["SEQUENCE"]) + 1)
            self.assertGreater(each["LAST-MODIFIED"].dt, master["LAST-MODIFIED"].dt)
            self.assertEqual(each["DTSTAMP"].dt, each["LAST-MODIFIED"].dt)
        self.on("2027-04-03T11:00:00Z")
        self.assertEqual(self.feed(), second, "an hour later it is the same")
        later = ["2027-10-02", "2028-04-01"]
        self.ok("review", "skip", "home-kit", "--date", later[1])
        third = self.agree()
        skipped, _ = self.parts(third)
        self.assertEqual([each.dt.isoformat() for each in skipped["EXDATE"].dts], [later[1]])
        self.assertGreater(skipped["LAST-MODIFIED"].dt, changed["LAST-MODIFIED"].dt)
        self.on("2027-04-10T08:00:00Z")
        self.assertEqual(self.parts(self.agree())[0]["DTSTART"].dt, TODAY, "moved to today, so it is still to come")
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        done, moved = self.parts(self.agree())
        self.assertEqual((done["UID"], done["DTSTART"].dt.isoformat(), moved), (master["UID"], later[0], []), "what is done is gone, as dated events go")
        self.assertGreater(int(done["SEQUENCE"]), int(skipped["SEQUENCE"]))

    def test_every_rule_of_the_list(self):
        for start, rule in RULES if SCALE > 1 else RULES[1::4]:
            self.ok("review", "rule", "home-kit", rule, "--from", start)
            raw = self.feed()
            self.assertEqual(self.expanded(raw), self.dated(), rule)
            master, _ = self.parts(raw)
            begin = datetime.datetime.fromisoformat(start)
            days = [each.date() for each in dateutil.rrule.rrulestr(rule, dtstart=begin).between(begin, begin + datetime.timedelta(days=1500), inc=True)]
            self.assertIn(master["DTSTART"].dt, days)
            written = master["RRULE"].to_ical().decode()
            own = [each.date() for each in dateutil.rrule.rrulestr(written, dtstart=datetime.datetime.combine(master["DTSTART"].dt, datetime.time())).between(
                begin, begin + datetime.timedelta(days=1500), inc=True)]
            self.assertEqual(own, [each for each in days if each >= master["DTSTART"].dt], rule)
            file = self.folder / "feed.ics"
            seen = self.node("feed", file, f"{TODAY:%Y%m%d}", f"{TODAY + AHEAD:%Y%m%d}")
            for reader in ("icaljs", "nodeical"):
                self.assertEqual(sorted((f"{each['day'][:4]}-{each['day'][4:6]}-{each['day'][6:]}", each["summary"]) for each in seen[reader]), self.expanded(raw), (reader, rule))


class Khal(SeriesTest, Fetching):
    def start(self):
        self.server = FeedServer()
        self.addCleanup(self.server.stop)
        self.url = self.server.url

    def compare(self):
        self.fetch(self.feed())
        day = str(self.today() + AHEAD)
        self.assertEqual([each for each in self.listed() if str(self.today()) <= each[0] <= day], [each for each in self.dated() if each[0] >= str(FROM)])

    def test_khal_follows(self):
        self.compare()
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        self.ok("review", "skip", "home-kit", "--date", "2028-04-01")
        self.compare()
        self.on("2027-04-10T10:00:00Z")
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        self.compare()


class DataServer(SeriesTest):
    def test_the_data_server_follows(self):
        server = FeedServer()
        self.addCleanup(server.stop)
        server.raw = self.feed()
        client = DataServerClient(self, server.port, "/kit.ics")

        def compare():
            server.raw = self.feed()
            window = (str(self.today()), str(self.today() + AHEAD + datetime.timedelta(1)))
            client.must_hold(self.dated(), lambda: sorted((day, title) for _, day, title in client.ask(*window)["days"]))

        compare()
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        self.ok("review", "skip", "home-kit", "--date", "2028-04-01")
        compare()
        self.on("2027-04-10T10:00:00Z")
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        compare()


class Choices(SeriesTest):
    def test_a_new_rule_is_a_new_series_and_so_is_one_that_comes_back(self):
        first = str(self.parts(self.feed())[0]["UID"])
        self.ok("review", "rule", "home-kit", "FREQ=YEARLY;BYMONTH=5,11;BYDAY=1SA", "--from", "2027-05-01")
        second = str(self.parts(self.feed())[0]["UID"])
        self.assertNotEqual(second, first)
        self.ok("settings", "set", "feed-reviews", "dated")
        dated = {each["uid"] for each in self.data("calendar")["events"] if each["kind"] == "Review"}
        self.assertFalse(dated & {first, second})
        self.ok("settings", "set", "feed-reviews", "series")
        third = str(self.parts(self.feed())[0]["UID"])
        self.assertNotIn(third, dated | {first, second}, "what was withdrawn does not come back under its UID")
        self.ok("settings", "set", "feed-reviews", "dated")
        self.assertEqual({each["uid"] for each in self.data("calendar")["events"] if each["kind"] == "Review"}, dated, "these were there all the time, out of sight")

    def test_nothing_changes_for_nothing_until_a_review_is_past(self):
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        blocks = set()
        for day in ("2027-04-04", "2027-04-20", "2027-06-01", "2027-07-15"):
            self.on(day)
            raw = self.feed()
            uid = str(self.parts(raw)[0]["UID"]).encode()
            blocks.add(next(block for block in raw.split(b"BEGIN:VEVENT\r\n") if uid in block))
        self.assertEqual(len(blocks), 1)
        before, _ = self.parts(raw)
        after = self.today().replace(month=12)
        self.on(str(after))
        late, _ = self.parts(self.feed())
        self.assertEqual(late["UID"], before["UID"])
        self.assertGreater(late["DTSTART"].dt, after, "one that was not done is in the past; nudge goes on asking for it")
        self.assertIn("review", self.ok("nudge").out.lower())

    def test_rules_off_the_list_are_refused_for_the_series_with_advice_that_works(self):
        self.ok("settings", "set", "feed-reviews", "dated")
        rules = ("FREQ=WEEKLY;INTERVAL=26", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=15", "FREQ=MONTHLY;INTERVAL=2;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=1")
        for rule in rules if SCALE > 1 else rules[:1]:
            self.ok("review", "rule", "home-kit", rule)
            dated = self.feed()
            self.assertNotIn(b"RRULE", dated)
            answer = self.assert_unchanged("settings", "set", "feed-reviews", "series", "--json")
            self.assertEqual(self.feed(), dated, "dated events stay")
            advice = answer.error["hint"]
            self.assertIn("dated", advice)
            better = advice.split("'")[1]
            self.ok("review", "rule", "home-kit", better)
            self.ok("settings", "set", "feed-reviews", "series")
            self.assertIn(b"RRULE", self.feed())
            refused = self.assert_unchanged("review", "rule", "home-kit", rule)
            self.assertIn("cannot be one repeating event", refused.err)
            self.ok("settings", "set", "feed-reviews", "dated")
        self.assert_unchanged("settings", "set", "feed-reviews", "sometimes")

    def test_a_document_keeps_the_setting_and_may_not_have_such_a_rule(self):
        document = json.loads(self.ok("export").out)
        self.assertEqual(document["settings"]["feed"]["reviews"], "series")
        self.feed()
        file = self.folder / "again.json"
        file.write_text(self.ok("export").out, encoding="utf-8")
        again = self.folder / "again.book"
        self.ok("new", again, "--from", file)
        self.assertEqual(self.ok("calendar", "--book", again).out.encode(), self.feed(), "the same bytes from the other book")
        rule = next(each for each in document["review_rules"] if each["kit"] == "home-kit")
        rule["rule"], rule["starts"] = "FREQ=WEEKLY;INTERVAL=26", "2027-04-03"
        file.write_text(json.dumps(document), encoding="utf-8")
        answer = self.run_it("new", self.folder / "no.book", "--from", file)
        self.assertEqual(answer.code, 3, str(answer))
        self.assertIn("cannot be one repeating event", answer.err)
        self.assertFalse((self.folder / "no.book").exists())

    def test_alarms_private_detail_shopping_and_to_dos(self):
        self.ok("settings", "set", "feed-alarms", "review:7")
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        master, (moved,) = self.parts(self.feed())
        alarms = [each.walk("VALARM")[0] for each in (master, moved)]
        self.assertEqual({each["TRIGGER"].dt for each in alarms}, {-datetime.timedelta(days=6, hours=15)})
        self.assertEqual(len({str(each["UID"]) for each in alarms}), 2)
        private = icalendar.Calendar.from_ical(self.ok("calendar", "--detail", "private").out).walk("VEVENT")
        self.assertEqual({str(each["SUMMARY"]) for each in private if "RRULE" in each or "RECURRENCE-ID" in each}, {"Review a food kit"})
        shops = [each for each in icalendar.Calendar.from_ical(self.feed()).walk("VEVENT") if "RELATED-TO" in each]
        self.assertIn(str(master["UID"]), {str(each["RELATED-TO"]) for each in shops})
        todos = [each for each in self.data("calendar", "--todos")["todos"] if each["kind"] == "Review" and "Home" in each["summary"]]
        self.assertGreater(len(todos), 3, "each review is a to-do of its own, to be ticked off")
        self.assertEqual(todos[0]["due"], "2027-04-10")
        self.assertEqual({each["related_to"] for each in todos}, {str(master["UID"])})

    def test_a_kit_without_a_rule_of_its_own(self):
        document = json.loads(DEMO.read_text(encoding="utf-8"))
        document["review_rules"] = []
        document["settings"]["feed"] = {"reviews": "series"}
        file = self.folder / "usual.json"
        file.write_text(json.dumps(document), encoding="utf-8")
        self.env["LARDERLOOP_BOOK"] = str(self.folder / "usual.book")
        self.ok("new", self.env["LARDERLOOP_BOOK"], "--from", file)
        self.assertEqual(self.expanded(self.feed()), self.dated())


if __name__ == "__main__":
    unittest.main()
