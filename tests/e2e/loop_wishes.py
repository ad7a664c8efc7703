"""The family's wishes and skipped food, from outside: the demo household asks, the plan answers."""
import copy
import datetime
import json
import unittest

from jsonschema import Draft7Validator

from _demo import DemoTest
from _support import SOURCE

TODAY = "2027-04-03"  # a Saturday
SUNDAY = "2027-04-04"


class Wishes(DemoTest):
    def setUp(self):
        super().setUp()
        self.on(TODAY)

    def eat_down(self):
        return self.data("plan", "--all")["eat_down"]

    def helpings(self, day, meal):
        return [helping for each in self.eat_down()["meals"] if (each["day"], each["meal"]) == (day, meal) for helping in each["helpings"]]

    def told(self):
        return {(each["wish"], each["person"]): each for each in self.eat_down()["wishes"]}

    def test_a_want_is_for_everyone_who_may_and_the_others_are_told_why_not(self):
        self.ok("wish", "add", "want", "hummus-tin", "--day", SUNDAY, "--meal", "lunch")
        told = self.told()
        self.assertEqual({person for _, person in told}, {"ansa", "jorik", "mira", "odil", "tove", "wim"})
        self.assertFalse(told[1, "mira"]["met"])
        self.assertEqual(told[1, "mira"]["why_not"], "the label says it contains sesame")
        had = {each["person"] for each in self.helpings(SUNDAY, "lunch") if each["food"] == "hummus-tin"}
        self.assertEqual(had, {person for (_, person), each in told.items() if each["met"]})
        self.assertNotIn("mira", had)
        text = self.ok("plan").out
        self.assertIn("Asked for by the family", text)
        self.assertIn("Hummus tin for Mira: cannot be: the label says it contains sesame", text)

    def test_what_is_not_wanted_is_not_planned(self):
        before = self.eat_down()["meals"]
        lunch = next(each for each in before if each["day"] > SUNDAY and each["meal"] == "lunch")
        food, person = lunch["helpings"][0]["food"], lunch["helpings"][0]["person"]
        self.ok("wish", "add", "not", food, "--person", person)
        self.assertFalse([1 for meal in self.eat_down()["meals"] for each in meal["helpings"] if (each["food"], each["person"]) == (food, person)])
        self.ok("wish", "add", "not", food, "--day", lunch["day"], "--meal", "lunch")
        self.assertNotIn(food, [each["food"] for each in self.helpings(lunch["day"], "lunch")])
        dinner = next(each["day"] for each in before if each["meal"] == "dinner")
        self.ok("wish", "add", "not", "--day", dinner, "--meal", "dinner")
        self.assertEqual(self.helpings(dinner, "dinner"), [])
        self.ok("wish", "add", "want", "lentil-stew-pouch", "--day", dinner, "--meal", "dinner", "--person", "tove")
        self.assertEqual(self.told()[4, "tove"]["why_not"], "wish 3 says not")
        self.ok("wish", "remove", 1, 2, 3, 4)
        self.assertEqual(self.data("wish", "list"), [])
        self.ok("check")

    def test_wishes_are_listed_exported_and_dry_runs_leave_none(self):
        self.ok("-n", "wish", "add", "not", "oat-bar")
        self.assertEqual(self.data("wish", "list"), [])
        self.ok("wish", "add", "not", "Oat bar", "--from", "tomorrow", "--through", "+9d", "--person", "Tove")
        self.assertEqual(self.data("wish", "list"), [{"wish": 1, "kind": "not", "food": "oat-bar", "name": "Oat bar", "person": "tove", "meal": None,
                                                     "from": SUNDAY, "through": "2027-04-12"}])
        self.assertIn("Sun 4 Apr 2027 through Mon 12 Apr 2027", self.ok("wish", "list").out)
        exported = self.export()
        self.assertIn('{"id": 1, "kind": "not", "food": "oat-bar", "from": "2027-04-04", "through": "2027-04-12", "person": "tove"}', exported)
        other = self.folder / "other.book"
        self.ok("new", other, "--from", "-", stdin=exported)
        self.assertEqual(self.ok("--book", other, "export").out, exported)
        self.ok("wish", "remove", 1)
        self.assertEqual(self.run_it("wish", "remove", 1).code, 4)
        self.assertEqual(self.run_it("wish", "add", "want", "oat-bar", "--meal", "snack").code, 3)
        self.assertEqual(self.run_it("wish", "add", "want", "oat-bar", "--day", SUNDAY, "--from", SUNDAY, "--meal", "snack").code, 2)
        self.assertEqual(self.run_it("wish", "add", "wont", "oat-bar").code, 3)

    def test_food_skipped_three_times_is_said_and_eating_it_ends_that(self):
        day = datetime.date.fromisoformat(TODAY)
        skipped = []
        for _ in range(40):  # nobody records what they eat
            self.on(day.isoformat())
            skipped = self.eat_down()["skipped"]
            if skipped:
                break
            day += datetime.timedelta(days=1)
        self.assertTrue(skipped, "six weeks of plans that nobody follows skip nothing")
        first = skipped[0]
        times = first["times"]
        self.assertGreaterEqual(times, 3)  # two meals of one day may pass at once
        schema = Draft7Validator(json.loads((SOURCE / "docs" / "schema" / "plan-1.schema.json").read_text(encoding="utf-8")))
        document = self.ok("plan", "--json").json
        self.assertEqual([each.message for each in schema.iter_errors(document)], [])
        spoiled = copy.deepcopy(document)
        del spoiled["data"]["eat_down"]["skipped"][0]["times"]
        self.assertFalse(schema.is_valid(spoiled))
        text = self.ok("plan").out
        self.assertIn(f"{first['name']} (lot {first['lot']}) has been skipped {times} times: ", text)
        self.assertIn(f"larderloop person change {first['people'][0]} --rate {first['food']}:-1", text)
        self.assertIn(f"Skipped {times} times: {first['name']}", "".join(self.data_of_nudge()))
        self.ok("record", "eaten", first["lot"], "half", "serving")
        self.assertNotIn(first["lot"], [each["lot"] for each in self.eat_down()["skipped"]])
        self.ok("check")

    def data_of_nudge(self):
        return [each["text"] for each in self.data("nudge")["items"]]


if __name__ == "__main__":
    unittest.main()
