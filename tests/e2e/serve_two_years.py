"""Two years of the demo household, day by day, as a subscriber of the served calendar sees them.

Every day the server is started anew (so the day is a new one for it), the calendar fetched, things are done by the people, and it is fetched
again. Checked with an independent reader (python3-icalendar): an event that says the same is the same bytes; one that changed has moved its
stamps forward; one that left never comes back; nothing is there twice; what is there is what the book says. Evolution's data server looks in
from time to time and has to see what the book says. In the usual run some days, with LARDERLOOP_TEST_SCALE above 1 two years.
"""
import datetime
import random
import re
import signal
import unittest

import icalendar

from _demo import REVIEW_DAY, DemoTest
from _eds import DataServerClient
from _serving import Serving
from _support import SCALE

DAYS = 731 if SCALE > 1 else 12
# Days on which the data server is asked: two running, so that it meets small steps and large ones.
ASKED_DAYS = [day for day in range(DAYS) if day % 24 < 2 or day == DAYS - 1]
STAMPS = ("DTSTAMP", "LAST-MODIFIED", "SEQUENCE")
# Far east and far west of the date line, a half-hour clock change, the usual one (IANA time-zone names).
ZONES = ("Pacific/Auckland", "Pacific/Kiritimati", "Pacific/Honolulu", "Europe/London", "Australia/Lord_Howe")


def events_of(raw):
    """{uid: event}, each with its bytes; refuses an identity that is there twice."""
    blocks = re.findall(rb"BEGIN:VEVENT\r\n.*?END:VEVENT\r\n", raw, re.DOTALL)
    found = {}
    for block, event in zip(blocks, icalendar.Calendar.from_ical(raw).walk("VEVENT"), strict=True):
        uid = str(event["UID"])
        assert uid not in found, f"{uid} is there twice"
        event.block = block
        found[uid] = event
    return found


def content(event):
    return sorted((name, value.to_ical()) for name, value in event.items() if name not in STAMPS)


class Subscriber:
    """Remembers what it has seen, and finds what a calendar must not do."""

    def __init__(self, test):
        self.test, self.events, self.gone, self.mark, self.raw = test, {}, set(), None, None
        self.changed = self.withdrawn = self.new = 0

    def fetch(self, server, path):
        status, headers, raw = server.ask(path, **({"If_None_Match": self.mark} if self.mark else {}))
        if status == 304:
            return
        self.test.assertEqual(status, 200)
        self.test.assertNotEqual(raw, self.raw, "the same bytes under another mark")
        now = events_of(raw)
        self.test.assertEqual(self.gone & set(now), set(), "an identity is used again")
        for uid, event in now.items():
            self.test.assertEqual(event["DTSTAMP"].dt, event["LAST-MODIFIED"].dt)
            before = self.events.get(uid)
            if before is None:
                self.new += 1
            elif content(before) == content(event) and [each.to_ical() for each in before.subcomponents] == [each.to_ical() for each in event.subcomponents]:
                self.test.assertEqual(event.block, before.block, "what says the same is the same bytes")
            else:
                self.changed += 1
                self.test.assertGreater(event["LAST-MODIFIED"].dt, before["LAST-MODIFIED"].dt)
                self.test.assertGreater(int(event["SEQUENCE"]), int(before["SEQUENCE"]))
        for uid in set(self.events) - set(now):
            self.withdrawn += 1
            self.gone.add(uid)
        self.events, self.mark, self.raw = now, headers["ETag"], raw


class TwoYears(DemoTest):
    def setUp(self):
        super().setUp()
        self.chance = random.Random(20270403)
        self.done = self.refusals = 0
        self.views = {"whole": (), "mira": ("--person", "mira"), "private": ("--detail", "private")}
        self.paths = {name: self.data("feed", "add", name, *options)["path"] for name, options in self.views.items()}

    def deed(self, *arguments):
        """Something people do; what does not fit any more is refused, and counted."""
        answer = self.run_it(*arguments)
        self.assertIn(answer.code, (0, 3), str(answer))
        self.done += answer.code == 0
        self.refusals += answer.code == 3

    def live(self, today):
        """What happens on one day in this household."""
        plan = self.data("plan")
        events = [each for each in self.data("calendar")["events"] if each["begin"] <= today]
        for event in events:
            if event["kind"] == "Review":
                self.review(plan, today)
            if event["kind"] == "Shop" and event["begin"] == today:
                self.shop(today)
        helpings = [(meal["meal"], each) for meal in plan["eat_down"]["meals"] if meal["day"] == today for each in meal["helpings"]]
        for meal, each in self.chance.sample(helpings, min(3, len(helpings))):
            self.deed("record", "eaten", each["lot"], each["amount"]["value"], "servings", "--at", each["place"], "--who", each["person"], "--meal", meal)
        for each in plan["eat_down"]["give_away"]:
            if each["by"] == today and each["opened_on"] is None:
                self.deed("record", "given-away", each["lot"], "1", "--at", each["place"])
        if self.chance.random() < 0.05:
            self.deed("meals", "away", "jorik", "--from", "tomorrow", "--through", "+2d")
        if self.chance.random() < 0.03:
            self.deed("place", "change", "home-kit", "--name", f"Box of {today}")

    def review(self, plan, today):
        for kit in plan["kits"]:
            due = kit["current"] or kit["next"]
            if not due or due["day"] > today:
                continue
            fate = self.chance.random()
            if fate < 0.2:
                self.deed("review", "move", kit["kit"], "--to", "+3d")
            elif fate < 0.3:
                self.deed("review", "skip", kit["kit"])
            else:
                self.deed("review", "start", kit["kit"])
                self.deed("review", "finish", kit["kit"])

    def shop(self, today):
        best = (datetime.date.fromisoformat(today) + datetime.timedelta(self.chance.randint(200, 700))).isoformat()
        lines = [line for shop in self.data("shop")["shops"] for line in shop["lines"]]
        for line in self.chance.sample(lines, min(3, len(lines))):
            self.deed("lot", "add", line["food"], "--units", line["units"], "--at", "jars", "--date", f"best before {best}", "--label-same-as-food", "--label-read-by", "Ansa")

    def truth(self, *options):
        """What the book says: [(uid, day, title)], sorted."""
        return sorted((each["uid"], each["begin"], each["summary"]) for each in self.data("calendar", *options)["events"])

    def agree(self, seen):
        """Every subscriber has what the book says, and what is the same event in several calendars is on the same days in them."""
        for name, options in self.views.items():
            self.assertEqual(sorted((uid, each["DTSTART"].dt.isoformat(), str(each["SUMMARY"])) for uid, each in seen[name].events.items()),
                             self.truth(*options), name)
        whole = seen["whole"].events
        for name in ("mira", "private"):
            for uid, event in seen[name].events.items():
                if name == "mira" and event["CATEGORIES"].to_ical() == b"Eat soon":
                    self.assertNotIn(uid, whole, "one person's part is an event of its own")
                    continue
                same = ("DTSTART", "DTEND") if name == "private" else (*STAMPS, "DTSTART", "DTEND")
                self.assertEqual([event[each].to_ical() for each in same], [whole[uid][each].to_ical() for each in same], (name, uid))

    def test_day_by_day(self):
        seen = {name: Subscriber(self) for name in self.paths}
        whole, server, client = seen["whole"], None, None
        first = datetime.date.fromisoformat(REVIEW_DAY)
        for number in range(DAYS):
            today = (first + datetime.timedelta(number)).isoformat()
            self.on(today)
            server = Serving(self, "--quiet", listen=f"127.0.0.1:{server.port}" if server else "127.0.0.1:0")
            client = client or DataServerClient(self, server.port, self.paths["whole"])
            for name, path in self.paths.items():
                seen[name].fetch(server, path)
            late = [str(each["SUMMARY"]) for each in whole.events.values() if each["DTSTART"].dt.isoformat() < today]
            self.assertEqual(late, [], "what is past is gone the next day")
            before = self.done
            self.on(today + "T18:00:00Z")
            self.live(today)
            self.on(today)
            for name, path in self.paths.items():
                marks = seen[name].mark
                seen[name].fetch(server, path)
                if self.done == before:
                    self.assertEqual(seen[name].mark, marks, "nothing was done, nothing is new")
            self.agree(seen)
            if number in ASKED_DAYS:
                client.must_hold(self.truth())
            self.assertEqual(server.stop(signal.SIGTERM), 0)
        self.ok("check")
        self.assertGreater(self.done, DAYS / 2)
        self.assertLess(self.refusals, self.done / 2)
        for name, each in seen.items():
            self.assertGreater(min(each.new, each.changed, each.withdrawn), 0, (name, each.new, each.changed, each.withdrawn))
        print(DAYS, "days,", len(ASKED_DAYS), "with the data server:", self.done, "deeds;",
              {name: (each.new, each.changed, each.withdrawn) for name, each in seen.items()})


class Zones(DemoTest):
    def test_reviews_at_a_clock_change_do_not_move(self):
        """Clocks change on 4 April 2027 in New Zealand and on Lord Howe, on 28 March in London (IANA time-zone data); Kiritimati and Honolulu are a day apart."""
        self.ok("review", "rule", "home-kit", "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SU", "--from", "2027-04-01")
        path = self.data("feed", "add", "Hall")["path"]
        told = set()
        for zone in ZONES:
            self.ok("settings", "set", "time-zone", zone)
            for now in ("2027-04-03T13:30:00Z", "2027-04-03T15:15:00Z", "2027-04-03T17:30:00Z"):
                self.on(now)
                server = Serving(self, env={"TZ": zone})
                raw = server.ask(path)[2]
                self.assertEqual(raw, self.feed())
                self.assertNotIn(b"TZID", raw)
                days = [each["DTSTART"].dt for each in events_of(raw).values() if str(each["SUMMARY"]).startswith("Review")]
                self.assertTrue(all(type(each) is datetime.date for each in days))
                self.assertIn(datetime.date(2027, 4, 4), days, (zone, now))
                told.add(tuple(sorted(days)))
                self.assertEqual(server.stop(signal.SIGTERM), 0)
        self.assertEqual(len(told), 1, "the same days everywhere")


if __name__ == "__main__":
    unittest.main()
