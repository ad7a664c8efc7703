"""Independent readers of the calendar see the same events on the same days, wherever they are.

khal 0.10 reads what vdirsyncer 0.19 fetched over HTTP; python3-icalendar and recurring-ical-events read the bytes; ical.js 2.2.1 and
node-ical 0.25.6 do, installed by the lock file in tests/js. rrule 2.8.1 expands the recurrence rules of tests/reference.
"""
import csv
import datetime
import json
import os
import pathlib
import shutil
import subprocess
import unittest

import icalendar
import recurring_ical_events

from _demo import DemoTest
from _feed_server import FeedServer
from _serving import Serving
from _support import BINARY, SOURCE

FROM, THROUGH = datetime.date(2027, 4, 1), datetime.date(2029, 5, 1)
# Far east and far west of the date line, a half-hour clock change, the usual one, none (IANA time-zone names).
ZONES = ("Pacific/Auckland", "Pacific/Kiritimati", "Pacific/Honolulu", "Europe/London", "Australia/Lord_Howe")


def node_folder():
    """The JavaScript readers beside the build, installed once as tests/js/package-lock.json says."""
    folder = pathlib.Path(BINARY).parent / "js"
    ready = folder / "installed"
    lock = (SOURCE / "tests/js/package-lock.json").read_bytes()
    folder.mkdir(exist_ok=True)
    if not ready.exists() or ready.read_bytes() != lock:
        for name in ("package.json", "package-lock.json"):
            shutil.copy(SOURCE / "tests/js" / name, folder)
        done = subprocess.run(["npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund"], cwd=folder, capture_output=True, text=True, timeout=300, check=False)
        assert done.returncode == 0, done.stdout + done.stderr
        ready.write_bytes(lock)
    shutil.copy(SOURCE / "tests/js/read.mjs", folder)
    return folder


class Clients(DemoTest):
    def call(self, command, zone="UTC", **more):
        env = {"PATH": os.environ.get("PATH", "/usr/bin:/bin"), "HOME": str(self.home), "TZ": zone, "LC_ALL": "C.UTF-8",
               "XDG_CACHE_HOME": str(self.folder / "cache"), "XDG_DATA_HOME": str(self.folder / "share"), **more.pop("env", {})}
        done = subprocess.run([str(each) for each in command], env=env, cwd=self.folder, capture_output=True, text=True, timeout=120, check=False, **more)
        self.assertEqual(done.returncode, 0, f"{command}\n{done.stdout}\n{done.stderr}")
        return done.stdout

    def truth(self):
        """[(uid, day, title)] as the book tells it."""
        events = self.data("calendar")["events"]
        return sorted((each["uid"], each["begin"], each["summary"]) for each in events)

    def node(self, *arguments, zone="UTC"):
        return json.loads(self.call(["node", node_folder() / "read.mjs", *arguments], zone))


class Readers(Clients):
    def test_python_readers(self):
        calendar = icalendar.Calendar.from_ical(self.feed())
        self.assertEqual([each.errors for each in calendar.walk("VEVENT") if each.errors], [])
        seen = recurring_ical_events.of(calendar).between(FROM, THROUGH)
        self.assertEqual(sorted((str(each["UID"]), each["DTSTART"].dt.isoformat(), str(each["SUMMARY"])) for each in seen), self.truth())
        self.assertTrue(all(each["DTEND"].dt - each["DTSTART"].dt == datetime.timedelta(1) for each in seen))

    def test_javascript_readers_in_every_zone(self):
        file = self.folder / "feed.ics"
        file.write_bytes(self.feed())
        truth = [(uid, day.replace("-", ""), title) for uid, day, title in self.truth()]
        for zone in ZONES:
            seen = self.node("feed", file, f"{FROM:%Y%m%d}", f"{THROUGH:%Y%m%d}", zone=zone)
            for reader in ("icaljs", "nodeical"):
                self.assertEqual(sorted((each["uid"], each["day"], each["summary"]) for each in seen[reader]), truth, (reader, zone))
                self.assertEqual({each["days"] for each in seen[reader]}, {1}, (reader, zone))

    def test_to_dos_in_javascript_and_python(self):
        target = self.folder / "tasks.ics"
        self.ok("calendar", "--todos", "-o", target)
        truth = sorted((each["uid"], each["due"], each["summary"], each["related_to"]) for each in self.data("calendar", "--todos")["todos"])
        seen = self.node("feed", target, "0", "9")["todos"]
        self.assertEqual({each["status"] for each in seen}, {"NEEDS-ACTION"})
        self.assertEqual(sorted((each["uid"], f"{each['day'][:4]}-{each['day'][4:6]}-{each['day'][6:]}", each["summary"], each["related"]) for each in seen), truth)
        python = icalendar.Calendar.from_ical(target.read_bytes()).walk("VTODO")
        self.assertEqual(sorted((str(each["UID"]), each["DUE"].dt.isoformat(), str(each["SUMMARY"]), str(each["RELATED-TO"])) for each in python), truth)

    def test_the_recurrence_rows_by_rrule(self):
        rows = []
        with open(SOURCE / "tests/reference/recurrence_rows.csv", encoding="utf-8") as file:
            for row in csv.DictReader((line for line in file if not line.startswith("#")), delimiter="|"):
                rows.append((row["id"], row["dtstart"].replace("-", ""), row["rule"], row["expected dates"].replace("-", "").split()))
        self.assertGreater(len(rows), 25)
        cases = self.folder / "rules.json"
        cases.write_text(json.dumps([{"start": start, "rule": rule, "count": len(dates)} for _, start, rule, dates in rows]), encoding="utf-8")
        for (name, _, rule, dates), seen in zip(rows, self.node("rules", cases)):
            self.assertEqual(seen, dates, f"{name} {rule}")


class Fetching(Clients):
    """vdirsyncer fetches, khal lists."""

    def setUp(self):
        super().setUp()
        self.start()
        self.files = self.folder / "fetched"
        (self.folder / "vdirsyncer.conf").write_text(
            f'[general]\nstatus_path = "{self.folder}/status"\n[pair kit]\na = "local"\nb = "feed"\ncollections = null\n'
            f'conflict_resolution = "b wins"\n[storage local]\ntype = "filesystem"\npath = "{self.files}"\nfileext = ".ics"\n'
            f'[storage feed]\ntype = "http"\nurl = "{self.url}"\n', encoding="utf-8")
        (self.folder / "khal.conf").write_text(
            f"[calendars]\n[[kit]]\npath = {self.files}\nreadonly = True\n[locale]\ndateformat = %Y-%m-%d\nlongdateformat = %Y-%m-%d\n"
            "timeformat = %H:%M\ndatetimeformat = %Y-%m-%d %H:%M\nlongdatetimeformat = %Y-%m-%d %H:%M\n"
            f"[sqlite]\npath = {self.folder}/khal.db\n", encoding="utf-8")

    def start(self):
        """Any web server with the calendar as a file."""
        self.server = FeedServer()
        self.addCleanup(self.server.stop)
        self.url = self.server.url

    def publish(self, raw):
        self.server.raw = raw

    def told(self):
        """khal has names of its own for events, so days and titles are compared."""
        return sorted((day, title) for _, day, title in self.truth())

    def fetch(self, raw):
        self.publish(raw)
        if not self.files.exists():
            self.files.mkdir()
            self.call(["vdirsyncer", "-c", self.folder / "vdirsyncer.conf", "discover"], input="y\n" * 4)
        return self.call(["vdirsyncer", "-c", self.folder / "vdirsyncer.conf", "sync"])

    def listed(self, zone="UTC"):
        text = self.call(["khal", "-c", self.folder / "khal.conf", "list", "--format", "{start-date}|{title}", "--day-format", "", str(FROM), str(THROUGH)], zone)
        return sorted(tuple(line.split("|", 1)) for line in text.splitlines() if "|" in line)


class Fetched(Fetching):
    def test_khal_lists_what_was_published_and_follows(self):
        self.fetch(self.feed())
        self.assertEqual(self.listed(), self.told())
        files = sorted(path.name for path in self.files.iterdir())
        self.fetch(self.feed())
        self.assertEqual(sorted(path.name for path in self.files.iterdir()), files, "nothing changed")
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        self.fetch(self.feed())
        self.assertEqual(self.listed(), self.told())
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        self.fetch(self.feed())
        self.assertEqual(self.listed(), self.told())

    def test_whole_days_stay_on_their_day_in_every_zone(self):
        self.fetch(self.feed())
        truth = self.told()
        for zone in ZONES:
            (self.folder / "khal.db").unlink(missing_ok=True)
            self.assertEqual(self.listed(zone), truth, zone)


class Served(Fetched):
    """The same, from larderloop serve."""

    def start(self):
        path = self.data("feed", "add", "Desk")["path"]
        self.serving = Serving(self)
        self.url = self.serving.url + path
        self.path = path

    def publish(self, raw):
        self.assertEqual(self.serving.ask(self.path)[2], raw, "serve gives what the calendar command writes")


class ClockChanges(Clients):
    def test_a_review_on_the_day_of_a_clock_change_does_not_move(self):
        """First Sundays of April and October: clocks change in New Zealand and on Lord Howe on 4 April 2027 (IANA time-zone data)."""
        self.ok("new", self.folder / "other.book", "--from", self.sunday_household())
        told = set()
        for zone in ZONES:
            env = {"TZ": zone, "LARDERLOOP_BOOK": str(self.folder / "other.book"), "LARDERLOOP_NOW": "2027-03-01T12:00:00Z"}
            raw = self.ok("calendar", env=env).out.encode()
            reviews = [str(each["DTSTART"].dt) for each in icalendar.Calendar.from_ical(raw).walk("VEVENT") if str(each["SUMMARY"]).startswith("Review")]
            self.assertIn("2027-04-04", reviews, zone)
            self.assertNotIn(b"TZID", raw)
            told.add(tuple(sorted(reviews)))
        self.assertEqual(len(told), 1, "the same days in every zone")

    def test_today_is_the_household_s_own_day(self):
        """Two hours before the change and two hours after it, in each zone: the review of 4 April is there on that very day."""
        for zone, before, after in (("Pacific/Auckland", "2027-04-03T12:30:00Z", "2027-04-03T16:30:00Z"),
                                    ("Australia/Lord_Howe", "2027-04-03T13:30:00Z", "2027-04-03T17:30:00Z")):
            book = self.folder / (zone.replace("/", "-") + ".book")
            self.ok("new", book, "--from", self.sunday_household())
            for now in (before, after):
                env = {"TZ": zone, "LARDERLOOP_BOOK": str(book), "LARDERLOOP_NOW": now}
                data = self.ok("calendar", "--json", env=env).json
                self.assertEqual(data["as_of"], "2027-04-04", (zone, now))
                self.assertIn("2027-04-04", {each["begin"] for each in data["data"]["events"] if each["kind"] == "Review"}, (zone, now))

    def sunday_household(self):
        document = json.loads((SOURCE / "data/demo/household.json").read_text(encoding="utf-8"))
        for rule in document["review_rules"]:
            if rule["kit"] == "home-kit":
                rule.update(rule="FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SU", starts="2026-04-05")
        document["review_events"] = document["review_marks"] = []
        document.get("settings", {}).pop("time_zone", None)
        path = self.folder / "sunday.json"
        path.write_text(json.dumps(document), encoding="utf-8")
        return path


if __name__ == "__main__":
    unittest.main()
