"""Cautions where somebody stands before the food: opening it, buying it, coming home after a disaster, walking through the kit.

The texts are looked for by what they have to say (hours, numbers, words of the sources named in docs/sources.md), not word by word.
"""
import json
import unittest

from _demo import DemoTest


def flat(answer):
    return " ".join((answer.out + answer.err).split())


class Cautions(DemoTest):
    def test_opening_wet_food_says_how_long_it_may_stand(self):
        foods = {each["food"]: each for each in self.data("food", "list")}
        wet = next(lot for lot in self.data("lot", "list") if foods[lot["food"]]["kind"] == "food" and "pouch" in lot["food"])
        place = wet["lies"][0]["place"]
        text = flat(self.ok("record", "opened", str(wet["lot"]), "1", "--at", place))
        self.assertIn("two hours", text)
        self.assertIn("do not taste", text)

    def test_opening_formula_says_what_formula_needs(self):
        lot = next(each for each in self.data("lot", "list") if "formula" in each["food"])
        text = flat(self.ok("record", "opened", str(lot["lot"]), "1", "--at", lot["lies"][0]["place"]))
        for words in ("never thinner", "within two hours", "doctor"):
            self.assertIn(words, text)

    def test_opening_dry_food_says_nothing_of_hours(self):
        document = json.loads(self.export())
        dry = {food["key"] for food in document["foods"] if food.get("kind", "food") == "food" and food.get("storage", {}).get("opened_days", 0) >= 14}
        lot = next(each for each in self.data("lot", "list") if each["food"] in dry)
        text = flat(self.ok("record", "opened", str(lot["lot"]), "1", "--at", lot["lies"][0]["place"]))
        self.assertNotIn("two hours", text)
        self.assertIn("do not taste", text)

    def test_after_use_says_what_water_and_warmth_did(self):
        self.assertNotIn("flood water", flat(self.ok("review", "start", "home-kit", "-n")))
        text = flat(self.ok("review", "start", "home-kit", "--after-use"))
        for words in ("flood water", "pull rings", "Without its label", "four hours", "local"):
            self.assertIn(words, text)

    def test_the_walk_and_the_check_say_what_goes_out(self):
        for arguments, code in ((("review", "sheet", "home-kit"), 0), (("kit", "check", "home-kit"), 1)):
            answer = self.run_it(*arguments)
            self.assertEqual(answer.code, code, str(answer))
            self.assertIn("bulge", flat(answer))
        self.assertIn("never a child", flat(self.run_it("kit", "check", "home-kit")))
        sheet = self.ok("review", "sheet", "home-kit").out
        self.assertNotIn("Batteries, four\n      lot 11, printed: Best before end 2031, good through Wed 31 Dec 2031\n      read the label", sheet)

    def test_buying_begins_with_the_labels(self):
        answer = self.run_it("receive", stdin="q\n")
        self.assertEqual(answer.code, 0, str(answer))
        self.assertIn("recipes change", flat(answer))
        self.assertIn("recipes change", flat(self.ok("shop")))


if __name__ == "__main__":
    unittest.main()
