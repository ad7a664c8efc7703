"""What one reader of the calendar sees: one person, a private calendar, some kinds, alarms; read by an independent library."""
import datetime
import json
import unittest

import icalendar

from _demo import DEMO, DemoTest

NINE_THE_DAY_BEFORE = datetime.timedelta(hours=-15)


def events_of(raw):
    return {str(event["UID"]): event for event in icalendar.Calendar.from_ical(raw).walk("VEVENT")}


def stamps(event):
    return (str(event["UID"]), int(event["SEQUENCE"]), event["LAST-MODIFIED"].dt, event["DTSTART"].dt, event["DTEND"].dt)


class Views(DemoTest):
    def view(self, *options):
        target = self.folder / "view.ics"
        self.ok("calendar", "-o", target, *options)
        return target.read_bytes()

    def test_every_view_keeps_identity_and_days(self):
        whole = events_of(self.feed())
        for options in (("--person", "mira"), ("--detail", "private"), ("--kind", "review,shop"), ("--person", "mira", "--detail", "private")):
            seen = events_of(self.view(*options))
            self.assertTrue(seen, options)
            for uid, event in seen.items():
                if "--person" in options and event["CATEGORIES"].to_ical() == b"Eat soon":
                    self.assertNotIn(uid, whole, "one person's part of a meal day is an event of its own")
                else:
                    self.assertEqual(stamps(event), stamps(whole[uid]), options)
            self.assertEqual(self.view(*options), self.view(*options))
        self.assertEqual(set(events_of(self.view("--person", "mira"))), set(events_of(self.view("--person", "mira", "--detail", "private"))))

    def test_stamps_move_only_where_something_is_seen(self):
        """A bag's other name stands in the texts of everybody; a private calendar does not tell it and stays as it is."""
        before = [self.view("--detail", "private"), self.view("--person", "mira", "--detail", "private"), self.view()]
        self.on("2027-04-03T19:00:00Z")
        for place in json.loads(DEMO.read_text(encoding="utf-8"))["places"]:
            self.ok("place", "change", place["key"], "--name", place["name"] + " (old)")
        after = [self.view("--detail", "private"), self.view("--person", "mira", "--detail", "private"), self.view()]
        self.assertEqual(after[:2], before[:2])
        self.assertNotEqual(after[2], before[2])

    def test_who_leaves_a_meal_and_joins_it_again_sees_another_event(self):
        """RFC 5545 section 3.8.4.7: an identity is for ever; what was withdrawn and comes back has a new one."""
        first = events_of(self.view("--person", "mira"))
        whole = set(events_of(self.feed()))
        day = min(event["DTSTART"].dt for event in first.values() if event["CATEGORIES"].to_ical() == b"Eat soon").isoformat()

        def meal_of(seen):
            return [uid for uid, event in seen.items() if event["CATEGORIES"].to_ical() == b"Eat soon" and event["DTSTART"].dt.isoformat() == day]

        (uid,) = meal_of(first)
        # Asked for, so that it comes back when she does.
        eaten = next((meal["meal"], each["food"]) for meal in self.data("plan")["eat_down"]["meals"] if meal["day"] == day for each in meal["helpings"] if each["person"] == "mira")
        self.ok("wish", "add", "want", eaten[1], "--day", day, "--meal", eaten[0], "--person", "mira")
        self.assertEqual(meal_of(events_of(self.view("--person", "mira"))), [uid])
        notes = self.ok("meals", "away", "mira", "--day", day, "--json").json["data"]["exceptions"]
        note = next(each["number"] for each in notes if (each["from"], each["away"]) == (day, ["mira"]))
        self.assertEqual(meal_of(events_of(self.view("--person", "mira"))), [])
        self.ok("meals", "remove", note)
        (again,) = meal_of(events_of(self.view("--person", "mira")))
        self.assertNotIn(again, {uid, *whole})

    def test_a_person_sees_the_meals_in_which_they_eat(self):
        meals = {}
        for meal in self.data("plan")["eat_down"]["meals"]:
            for helping in meal["helpings"]:
                meals.setdefault(helping["person"], set()).add(meal["day"])
        names = {person["key"]: person["name"].split()[0] for person in json.loads(DEMO.read_text(encoding="utf-8"))["people"]}
        whole = events_of(self.feed())
        shown = {event["DTSTART"].dt.isoformat() for event in whole.values() if str(event["SUMMARY"]).startswith("Eat soon")}
        self.assertGreater(len(meals), 1)
        for person, days in meals.items():
            seen = events_of(self.view("--person", person))
            eats = {event["DTSTART"].dt.isoformat(): event for event in seen.values() if str(event["SUMMARY"]).startswith("Eat soon")}
            self.assertEqual(set(eats), days & shown)
            others = {name for key, name in names.items() if key != person}
            for event in eats.values():
                self.assertIn("(" + names[person] + ")", str(event["DESCRIPTION"]))
                for other in others:
                    self.assertNotIn("(" + other, str(event["DESCRIPTION"]))

    def test_private_tells_neither_food_nor_place_nor_name(self):
        household = json.loads(DEMO.read_text(encoding="utf-8"))
        raw = self.view("--detail", "private").replace(b"\r\n ", b"").decode("utf-8")
        full = self.feed().replace(b"\r\n ", b"").decode("utf-8")
        secrets = [each["name"] for kind in ("foods", "places", "people") for each in household[kind]] + [household["settings"]["name"]]
        self.assertGreater(sum(secret in full for secret in secrets), 5, "the full calendar tells them")
        self.assertEqual([secret for secret in secrets if secret in raw], [])

    def test_kinds_and_an_empty_view(self):
        kinds = {str(event["CATEGORIES"].to_ical().decode()) for event in events_of(self.view("--kind", "review")).values()}
        self.assertEqual(kinds, {"Review"})
        self.refused(3, "calendar", "--kind", "party")
        self.refused(4, "calendar", "--person", "nobody")
        only = events_of(self.view("--person", self.cat(), "--kind", "eat-soon"))
        self.assertEqual([str(event["STATUS"]) for event in only.values()], ["CANCELLED"], "never without a component")

    def cat(self):
        meals = {helping["person"] for meal in self.data("plan")["eat_down"]["meals"] for helping in meal["helpings"]}
        people = [person["key"] for person in json.loads(DEMO.read_text(encoding="utf-8"))["people"]]
        return next(person for person in people if person not in meals)

    def test_alarms_and_kinds_of_the_settings(self):
        household = json.loads(self.ok("export").out)
        household["settings"]["feed"] = {"alarm_days": {"review": 1, "shop": 8}, "kinds": ["review", "shop"]}
        document = self.folder / "with-alarms.json"
        document.write_text(json.dumps(household), encoding="utf-8")
        before = events_of(self.feed())
        self.env["LARDERLOOP_BOOK"] = str(self.folder / "alarms.book")
        self.ok("new", self.env["LARDERLOOP_BOOK"], "--from", document)
        target = self.folder / "alarms.ics"
        self.ok("calendar", "-o", target, "--book", self.env["LARDERLOOP_BOOK"])
        seen = events_of(target.read_bytes())
        self.assertEqual(set(seen), {uid for uid, event in before.items() if event["CATEGORIES"].to_ical() in (b"Review", b"Shop")})
        alarms = set()
        for event in seen.values():
            lead = NINE_THE_DAY_BEFORE - (datetime.timedelta(days=7) if event["CATEGORIES"].to_ical() == b"Shop" else datetime.timedelta(0))
            (alarm,) = event.walk("VALARM")
            self.assertEqual((alarm["TRIGGER"].dt, str(alarm["ACTION"]), str(alarm["DESCRIPTION"])), (lead, "DISPLAY", str(event["SUMMARY"])))
            alarms.add(str(alarm["UID"]))
        self.assertEqual(len(alarms), len(seen), "each alarm has an identity of its own")
        self.assertFalse(alarms & set(seen))

    def test_shopping_belongs_to_its_review(self):
        whole = events_of(self.feed())
        shops = [event for event in whole.values() if event["CATEGORIES"].to_ical() == b"Shop"]
        self.assertTrue(shops)
        for event in shops:
            if "RELATED-TO" in event:
                self.assertEqual(whole[str(event["RELATED-TO"])]["CATEGORIES"].to_ical(), b"Review")
        self.assertTrue(any("RELATED-TO" in event for event in shops))


if __name__ == "__main__":
    unittest.main()
