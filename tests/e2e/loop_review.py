"""The loop by hand on the demo household: a review started, marked, finished; the kit filled again; the next review finds it full."""
import json
import unittest

from _demo import HOLD_UNTIL, DemoTest


class ReviewLoop(DemoTest):
    def test_a_review_from_start_to_the_next_one(self):
        self.ok("review", "start", "home-kit")
        staying = [line for line in self.sheet_lines() if not line["leaves"] and line["good_through"]]
        lots = []
        for line in staying:
            if line["lot"] not in [each["lot"] for each in lots] and sum(l["lot"] == line["lot"] for l in staying) == 1:
                lots.append(line)
        missing, damaged, redated = lots[0], lots[1], lots[2]
        self.ok("review", "mark", "home-kit", missing["lot"], "missing")
        self.ok("review", "mark", "home-kit", damaged["lot"], "damaged", "1")
        self.ok("review", "mark", "home-kit", redated["lot"], "redated", "--date", "best before end 2027-08")
        done = self.data("review", "finish", "home-kit")
        reasons = {each["reason"]: each["lot"] for each in done["left"] if each["lot"] in (missing["lot"], damaged["lot"], redated["lot"])}
        self.assertEqual(reasons, {"missing": missing["lot"], "damaged": damaged["lot"], "will_not_last": redated["lot"]})
        self.assertTrue(all(line["good_through"] is None or line["good_through"] >= HOLD_UNTIL or line["name"].lower().find("water") >= 0
                            for line in self.sheet_lines()), "something stayed that will not last")
        again = self.data("review", "finish", "home-kit")
        self.assertTrue(again["already_done"])

        self.fill("home-kit")
        plan = self.kit_plan()
        self.assertEqual(plan["buy"], [])
        self.assertEqual(plan["take_out"], [])
        self.ok("check")

        self.on("2027-10-02")
        slots = self.data("review", "dates", "home-kit")["reviews"]
        self.assertIn("due", [slot["state"] for slot in slots if slot["day"] == "2027-10-02"])
        unmet_now = sum(each["units"] for each in plan["unmet"])
        self.ok("review", "start", "home-kit")
        before = {line["lot"] for line in self.sheet_lines()}
        self.assertTrue(before, "the next review finds the kit packed")
        self.assertLessEqual(unmet_now, 2)

    def fill(self, kit):
        """What a household does with a plan: moves in what the pantry has, buys and receives the rest."""
        plan = self.kit_plan(kit)
        for each in plan["wrong_bag"]:
            if each["lot"] not in [left["lot"] for left in plan["take_out"]]:
                self.ok("record", "moved", each["lot"], "all", "--at", each["place"], "--to", "first")
        moves = {}
        for fill in plan["fills"]:
            if fill["from"] in ("pantry", "other_bag"):
                key = (fill["lot"], fill["place"], fill["into"])
                moves[key] = moves.get(key, 0) + fill["units"]
        for (lot, at, into), units in moves.items():
            self.ok("record", "moved", lot, units, "--at", at, "--to", into)
        labelled = {food["key"] for food in json.loads(self.export())["foods"] if "label" in food}
        bought = {}
        for fill in plan["fills"]:
            if fill["from"] == "buy":
                key = (fill["food"], fill["into"])
                bought[key] = bought.get(key, 0) + fill["units"]
        for (food, into), units in bought.items():
            self.ok("lot", "add", food, "--units", units, "--at", into, "--date", "best before end 2028-08",
                    *(("--label-same-as-food", "--label-read-by", "Ansa") if food in labelled else ()))
        for line in plan["buy"]:
            if line["water_ml"]:
                self.ok("lot", "add", line["food"], "--units", line["units"], "--at", line["places"][0], "--date", "best before end 2028-08")

    def test_an_eaten_meal_leaves_plan_and_feed(self):
        self.on("2027-04-05")
        first = self.feed().decode()
        meal = next(each for each in self.data("plan")["eat_down"]["meals"] if each["day"] == "2027-04-05")
        self.assertIn("DTSTART;VALUE=DATE:20270405", first)
        for each in [m for m in self.data("plan")["eat_down"]["meals"] if m["day"] == "2027-04-05"]:
            for helping in each["helpings"]:
                self.ok("record", "eaten", helping["lot"], helping["amount"]["value"] + " servings", "--at", helping["place"],
                        "--who", helping["person"], "--meal", each["meal"])
        left = [m for m in self.data("plan")["eat_down"]["meals"] if m["day"] == "2027-04-05" and m["meal"] == meal["meal"]]
        self.assertEqual(left, [])
        eaten_today = [event for event in self.feed().decode().split("BEGIN:VEVENT") if "VALUE=DATE:20270405" in event and "Eat soon" in event]
        self.assertEqual(eaten_today, [])

    def test_reviews_are_skipped_and_moved(self):
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        slots = {slot["slot"]: slot for slot in self.data("review", "dates", "home-kit")["reviews"]}
        self.assertEqual(slots["2027-04-03"]["day"], "2027-04-10")
        self.ok("review", "skip", "home-kit", "--date", "2027-10-02")
        slots = {slot["slot"]: slot for slot in self.data("review", "dates", "home-kit")["reviews"]}
        self.assertEqual(slots["2027-10-02"]["state"], "skipped")
        self.assertEqual(self.kit_plan()["hold_until"], "2028-04-15", "what stays has to last past the skipped one")

    def test_refusals_change_nothing(self):
        self.assert_unchanged("review", "finish", "home-kit")
        self.assert_unchanged("review", "mark", "home-kit", "1", "there")
        self.assert_unchanged("review", "move", "home-kit", "--to", "2028-05-01")
        self.assert_unchanged("review", "start", "car-kit")
        self.assert_unchanged("review", "start", "no-kit", code=4)
        self.assert_unchanged("review", "start", code=2)


if __name__ == "__main__":
    unittest.main()
