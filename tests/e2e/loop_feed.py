"""The calendar of the demo household, read by two independent libraries; byte stability; what moves when something changes."""
import datetime
import re
import unittest

import icalendar
import vobject

from _demo import DemoTest


def by_icalendar(raw):
    calendar = icalendar.Calendar.from_ical(raw)
    events = {}
    for event in calendar.walk("VEVENT"):
        assert not event.errors, event.errors
        events[str(event["UID"])] = (event["DTSTART"].dt, event["DTEND"].dt, str(event["SUMMARY"]), str(event["DESCRIPTION"]), int(event["SEQUENCE"]))
    return events


def by_vobject(raw):
    events = {}
    for event in vobject.readOne(raw.decode("utf-8")).vevent_list:
        events[event.uid.value] = (event.dtstart.value, event.dtend.value, event.summary.value, event.description.value, int(event.sequence.value))
    return events


class Feed(DemoTest):
    def test_two_readers_see_the_same_events(self):
        raw = self.feed()
        events = by_icalendar(raw)
        self.assertEqual(events, by_vobject(raw))
        told = {event["uid"]: event for event in self.data("calendar")["events"]}
        self.assertEqual(set(events), set(told))
        for uid, (begin, end, summary, description, _) in events.items():
            self.assertEqual((begin.isoformat(), end.isoformat(), summary, description),
                             (told[uid]["begin"], told[uid]["end"], told[uid]["summary"], told[uid]["description"]))
            self.assertIs(type(begin), datetime.date, "whole days, no times")
        kinds = {event["kind"] for event in told.values()}
        self.assertEqual(kinds, {"Review", "Eat soon", "Shop", "Give away"} & kinds)
        self.assertLessEqual({"Review", "Eat soon", "Shop"}, kinds)

    def test_lines_are_legal(self):
        raw = self.feed()
        self.assertTrue(raw.endswith(b"END:VCALENDAR\r\n"))
        for line in raw.split(b"\r\n"):
            self.assertLessEqual(len(line), 75)
            line.decode("utf-8")
        self.assertNotIn(b"METHOD", raw)
        self.assertNotIn(b"X-LIC-", raw)
        self.assertNotIn(b"VTIMEZONE", raw)
        head = raw.split(b"BEGIN:VEVENT")[0]
        self.assertNotIn(b"UID", head)

    def test_nothing_changed_is_the_same_bytes(self):
        first = self.feed()
        self.assertEqual(self.feed(), first)
        self.on("2027-04-03T21:00:00Z")
        self.assertEqual(self.feed(), first)
        for zone, locale in (("Pacific/Kiritimati", "C"), ("America/Los_Angeles", "de_DE.UTF-8")):
            self.on("2027-04-03")
            self.env.update(TZ=zone, LC_ALL=locale)
            self.assertEqual(self.feed(), first)

    def test_a_change_moves_the_stamps_of_what_changed_and_of_nothing_else(self):
        before = by_icalendar(self.feed())
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        raw = self.feed()
        after = by_icalendar(raw)
        moved = [uid for uid in before if uid in after and before[uid][0] != after[uid][0] and "Review" in before[uid][2]]
        self.assertEqual(len(moved), 1)
        self.assertEqual(after[moved[0]][4], before[moved[0]][4] + 1, "SEQUENCE grows")
        for event in icalendar.Calendar.from_ical(raw).walk("VEVENT"):
            uid = str(event["UID"])
            changed = uid not in before or before[uid][:4] != after[uid][:4]
            stamp = event["LAST-MODIFIED"].dt
            self.assertEqual(stamp, event["DTSTAMP"].dt)
            self.assertEqual(stamp.hour == 10, changed, str(event["SUMMARY"]))

    def test_no_health_facts_at_any_level(self):
        text = re.sub(r"\r\n ", "", self.feed().decode()).lower()
        for word in ("sesame", "allerg", "kiwi", "milk,", "vegetarian", "gluten", "refus", "hazelnut"):
            hits = [line for line in text.split("\r\n") if word in line]
            self.assertEqual(hits, [], word)

    def test_done_and_past_ones_are_gone_and_the_feed_is_never_empty(self):
        uids = set(by_icalendar(self.feed()))
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        after = by_icalendar(self.feed())
        self.assertEqual([e for e in after.values() if "Review the Home kit" in e[2] and e[0] == datetime.date(2027, 4, 3)], [])
        self.on("2027-04-20")
        later = by_icalendar(self.feed())
        self.assertTrue(all(event[0] >= datetime.date(2027, 4, 20) for event in later.values()))
        self.assertTrue(uids & set(later), "reviews to come keep their identity")
        empty = self.folder / "empty.book"
        self.ok("new", empty)
        out = self.ok("--book", empty, "calendar").out
        self.assertEqual(out.count("BEGIN:VEVENT"), 1)
        self.assertIn("STATUS:CANCELLED", out)


if __name__ == "__main__":
    unittest.main()
