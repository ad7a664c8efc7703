"""plan, shop, nudge, history and the household document of the demo household, as a household would use them."""
import csv
import io
import json
import re
import unittest

import jsonschema

from _demo import DEMO, DemoTest
from _support import SOURCE


class Answers(DemoTest):
    def test_the_demo_document_round_trips_and_fits_the_schema(self):
        text = DEMO.read_text(encoding="utf-8")
        self.assertEqual(self.export(), text)
        schema = json.loads((SOURCE / "docs" / "schema" / "household-1.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft7Validator.check_schema(schema)
        jsonschema.Draft7Validator(schema).validate(json.loads(text))
        self.ok("calendar")  # a plan and a feed are in the book now
        exported = self.export()
        jsonschema.Draft7Validator(schema).validate(json.loads(exported))
        other = self.folder / "other.book"
        self.ok("new", other, "--from", "-", stdin=exported)
        self.assertEqual(self.ok("--book", other, "export").out, exported)
        self.assertEqual(self.ok("--book", other, "calendar").out, self.ok("calendar").out)

    def test_plain_date_order_breaks_rules_and_the_shown_plan_none(self):
        plain = self.data("plan", "--compare")["eat_down"]["plain_date_order"]
        self.assertGreaterEqual(plain["broken_rules"], 5)
        self.assertTrue(plain["examples"])
        self.assertIn("this plan breaks no rule", self.ok("plan", "--compare").out)

    def test_the_comparison_decides_in_numbers(self):
        self.assertIsNone(self.data("plan")["eat_down"]["comparison"])
        plan = self.data("plan", "--compare")
        compared = plan["eat_down"]["comparison"]
        mine, allowed, by_date = (compared[name] for name in ("plan", "date_order_allowed", "date_order"))
        for fair in (mine, allowed):
            self.assertEqual((fair["broken_rules"], fair["must_not_have"]["value"], fair["will_not_eat"]["value"]), (0, "0", "0"))
        self.assertGreater(float(by_date["must_not_have"]["value"]), 0)
        served = sum(float(each["amount"]["value"]) for meal in plan["eat_down"]["meals"] for each in meal["helpings"])
        self.assertEqual(float(mine["handed_out"]["value"]), served)
        levels = {level["name"]: level["value"] for level in plan["eat_down"]["levels"]}
        # The levels count half servings.
        self.assertEqual(2 * float(mine["thrown_away"]["amount"]["value"]), levels["wasted"])
        self.assertEqual(2 * float(mine["given_away"]["amount"]["value"]), levels["donated"])
        self.assertLessEqual(float(mine["thrown_away"]["amount"]["value"]), float(allowed["thrown_away"]["amount"]["value"]))
        bought = [line for kit in plan["kits"] for line in kit["buy"] if line["water_ml"] is None]
        self.assertEqual(compared["purchases"]["plan"]["packs"], sum(line["packs"] for line in bought))
        self.assertEqual(compared["purchases"]["plan"]["cents"], sum(line["packs"] * (line["price_cents"] or 0) for line in bought))
        text = self.ok("plan", "--compare").out
        for row in ("thrown away, servings", "given away, servings", "packs to buy", "to who must not have it"):
            self.assertIn(row, text)

    def test_the_same_day_gives_the_same_bytes(self):
        first = self.ok("plan", "--json").out
        self.assertEqual(self.ok("plan", "--json").out, first)
        self.assertEqual(self.ok("plan", "--json", "-n").out, first)

    def test_shop_tells_the_same_in_text_csv_and_json(self):
        lines = [line for shop in self.data("shop")["shops"] for line in shop["lines"]]
        rows = list(csv.DictReader(io.StringIO(self.ok("shop", "--csv").out)))
        self.assertEqual([(r["food"], int(r["packs"]), int(r["units_needed"])) for r in rows],
                         [(l["food"], l["packs"], l["units"]) for l in lines])
        text = self.ok("shop").out
        for line in lines:
            self.assertIn(line["name"], text)
            self.assertGreaterEqual(line["packs"] * line["pack_units"], line["units"])
            self.assertTrue(line["read_the_label"])
        self.assertIn("Read the label of every package", text)
        pantry = [line for shop in self.data("shop", "--pantry")["shops"] for line in shop["lines"]]
        self.assertGreater(len(pantry), len(lines))

    def test_the_nudge_has_at_most_twelve_lines_and_can_be_silent(self):
        out = self.ok("nudge").out
        self.assertLessEqual(out.count("\n"), 12)
        self.assertEqual(self.run_it("nudge", "--exit-code").code, 1)
        empty = self.folder / "empty.book"
        self.ok("new", empty)
        self.assertEqual(self.ok("--book", empty, "nudge", "--only-if-due").out, "")
        self.assertIn("nothing is due", self.ok("--book", empty, "nudge").out)
        self.assertEqual(self.run_it("--book", empty, "nudge", "--exit-code").code, 0)

    def test_history_sums_equal_the_record(self):
        document = json.loads(self.export())
        servings = {food["key"]: food.get("servings", 1) for food in document["foods"]}
        food_of = {lot["id"]: lot["food"] for lot in document["lots"]}
        corrected = {entry["corrects"] for entry in document["entries"] if entry["kind"] == "corrected"}
        sums = {}
        for entry in document["entries"]:
            if entry["kind"] in ("corrected", "moved", "opened") or entry["id"] in corrected:
                continue
            food = food_of[entry["lot"]]
            halves = entry.get("half_servings", 2 * servings[food] * entry.get("units", 0))
            if entry["kind"] == "counted":
                halves = entry.get("change_half_servings", 0)
            key = (food, int(entry["on"][:4]), entry["kind"])
            sums[key] = sums.get(key, 0) + halves
        told = {}
        for row in self.data("history")["rows"]:
            for kind in ("received", "found", "eaten", "given_away", "thrown_out", "lost"):
                halves = round(2 * float(row[kind]["value"]))
                if halves:
                    told[(row["food"], row["year"], kind)] = halves
            if row["counted_half_servings"]:
                told[(row["food"], row["year"], "counted")] = row["counted_half_servings"]
        self.assertEqual(told, {key: value for key, value in sums.items() if value})

    def test_what_it_was_worth_is_of_the_same_servings(self):
        history = self.data("history")
        rows = {(row["food"], row["year"]): row for row in history["worth"]["rows"]}
        for row in history["rows"]:
            for kind, name in (("received", "bought"), ("eaten", "eaten"), ("given_away", "given_away"), ("thrown_out", "thrown_out"), ("lost", "lost")):
                self.assertEqual(row[kind], rows[(row["food"], row["year"])][name]["amount"])
        total = history["worth"]["total"]["bought"]
        self.assertEqual(total["cents"] - total["pack_price_cents"], sum(row["paid_cents"] for row in history["years"]))
        out = self.ok("history").out
        self.assertIn(f"thrown out   {history['worth']['total']['thrown_out']['amount']['value']} servings", out)
        self.assertIn("not known", out)

    def test_advice_is_of_what_was_thrown_out_and_claims_no_more(self):
        history = self.data("history", "--advice")
        self.assertIsNone(self.data("history")["advice"])
        thrown = {}
        for row in history["worth"]["rows"]:
            cents, amount = thrown.get(row["food"], (0, 0.0))
            thrown[row["food"]] = (cents + row["thrown_out"]["cents"], amount + float(row["thrown_out"]["amount"]["value"]))
        dearest = sorted(thrown.values(), reverse=True)[:3]
        self.assertEqual([thrown[each["food"]] for each in history["advice"]], dearest)
        text = self.ok("history", "--advice").out
        changes = [each["best"]["change"] for each in history["advice"] if each["best"]]
        self.assertEqual(changes, ["review"])
        for each in history["advice"]:
            if each["best"]:
                self.assertLessEqual(each["best"]["avoided_cents"], thrown[each["food"]][0])
                self.assertLessEqual(float(each["best"]["avoided"]["value"]), thrown[each["food"]][1])
                self.assertIn(f"review Home kit {each['best']['weeks_earlier']} weeks earlier", text)
        self.assertEqual(text.count("No single change"), 2)
        self.assertIn("docs/history.md", text)

    def test_answers_on_a_read_only_book_are_the_same_and_nothing_is_kept(self):
        expected = self.ok("plan", "-n").out
        before = self.export()
        self.ok("nudge", "-n")
        self.ok("calendar", "-n")
        self.assertEqual(self.export(), before)
        self.assertEqual(self.ok("plan").out, expected)
        self.assertNotEqual(self.export(), before, "a plan that was shown is kept")

    def test_people_read_no_keys_or_codes(self):
        for command in (["plan"], ["shop"], ["nudge"], ["review", "sheet", "home-kit"]):
            out = self.ok(*command).out
            self.assertIsNone(re.search(r"[a-z]+_[a-z]+|#\w|\bnull\b", out), (command, re.search(r"[a-z]+_[a-z]+|#\w|\bnull\b", out)))


if __name__ == "__main__":
    unittest.main()
