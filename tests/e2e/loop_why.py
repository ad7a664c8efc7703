"""Reasons of the plan, from outside: each rule that is named is taken away in the household document, and the plan must come out otherwise."""
import json
import unittest

from _demo import DemoTest

ENOUGH = 3  # reasons of a kind, at most: some questions are planned anew


class Why(DemoTest):
    def setUp(self):
        super().setUp()
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        # Before anything was shown: then nothing holds a plan in place but its rules.
        self.document = json.loads(self.export())

    def why(self, *what):
        return self.data("why", *what)

    def reasons(self):
        """(part, reason) of every lot that goes into meals."""
        plan = self.data("plan", "--all")["eat_down"]
        lots = sorted({helping["lot"] for meal in plan["meals"] for helping in meal["helpings"]})
        for lot in reversed(lots):
            for part in self.why(lot)["parts"]:
                for reason in part["reasons"]:
                    yield part, reason

    def planned_with(self, change):
        """The plan of the household with one thing changed: who eats what when, and what fills the kits."""
        document = json.loads(json.dumps(self.document))
        change(document)
        book = self.folder / f"other{self.books}.book"
        self.books += 1
        self.ok("new", book, "--from", "-", stdin=json.dumps(document))
        plan = json.loads(self.ok("--book", book, "plan", "--all", "--json").out)["data"]
        meals = sorted((meal["day"], meal["meal"], each["lot"], each["person"], each["amount"]["value"]) for meal in plan["eat_down"]["meals"] for each in meal["helpings"])
        fills = sorted((kit["kit"], each["menu_line"], each["lot"] or 0, each["units"]) for kit in plan["kits"] for each in kit["fills"])
        return meals, fills

    books = 0

    def test_a_rule_that_is_named_changes_the_plan_when_it_is_gone(self):
        # One of them is alone at home for a week, hungry, with what goes off in that week and has gluten.
        for person in ("ansa", "jorik", "mira", "tove", "wim"):
            self.ok("meals", "away", person, "--from", "2027-04-03", "--through", "2027-04-09")
        self.ok("person", "change", "odil", "--appetite", "3", "--tolerance", "40")
        self.ok("lot", "add", "beef-stew-can", "--units", "4", "--at", "tins", "--date", "best before 9 Apr 2027", "--label-read-by", "Mira", "--label-same-as-food")
        self.document = json.loads(self.export())
        spoiling = self.document["lots"][-1]["id"]
        told = {"must_not": [(part, reason) for part in self.why(spoiling)["parts"] for reason in part["reasons"] if reason["rule"] == "must_not"]}
        self.assertEqual([(reason["person"], reason["refusal"]["detail"]) for _, reason in told["must_not"]], [("odil", "gluten_free")])
        for part, reason in self.reasons():
            if reason["rule"] == "date":
                told.setdefault("date", []).append((part, reason))
                if len(told["date"]) >= ENOUGH:
                    break
        self.assertIn("date", told)
        as_it_is = self.planned_with(lambda document: None)
        for part, reason in told["must_not"]:
            def let_eat(document, person=reason["person"]):
                one = next(each for each in document["people"] if each["key"] == person)
                one["avoid"], one["diets"] = [], []
            meals, _ = self.planned_with(let_eat)
            self.assertNotEqual(meals, as_it_is[0], reason)
        for part, reason in told["date"]:
            def let_last(document, lot=reason["lot"]):
                one = next(each for each in document["lots"] if each["id"] == lot)
                one["mark"] = {"text": "2029-12-31", "kind": "best_before", "precision": "day", "day": "2029-12-31"}
                document["readings"] = [each for each in document["readings"] if each["lot"] != lot or "mark" not in each]
            _, fills = self.planned_with(let_last)
            self.assertNotEqual(fills, as_it_is[1], reason)
            self.assertIn(reason["lot"], [fill[2] for fill in fills], reason)

    def test_a_line_of_the_replacement_list_says_what_would_do_but_does_not(self):
        text = self.ok("why", "Apple fruit bar").out
        self.assertIn("(lot 180) would do, but it is good only through Sun 20 Jun 2027, not to Sat 16 Oct 2027", text)
        self.assertIn("Without buying it, places of the menu would stay empty.", text)
        answer = self.run_it("why", "lentil-stew-pouch")
        self.assertEqual(answer.code, 4)
        self.assertIn("replacement list", answer.err)

    def test_a_meal_and_its_words(self):
        plan = self.data("plan", "--all")["eat_down"]
        meal = plan["meals"][0]
        report = self.why(meal["day"], meal["meal"])
        self.assertEqual({part["at"]["lot"] for part in report["parts"]}, {each["lot"] for each in meal["helpings"]})
        self.assertEqual(report["words"] + "\n", self.ok("why", meal["day"], meal["meal"]).out)
        self.assertEqual(self.why("2027-04-01", "dinner")["no_meal"], "passed")
        self.assertEqual(self.why("2028-04-01", "dinner")["no_meal"], "beyond")
        self.ok("wish", "add", "not", "--day", meal["day"], "--meal", meal["meal"])
        self.assertEqual(self.why(meal["day"], meal["meal"])["no_meal"], "wish")

    def test_questions_that_have_no_answer(self):
        self.assertEqual(self.run_it("why", "9999").code, 4)
        self.assertEqual(self.run_it("why", "no such food").code, 4)
        self.assertEqual(self.run_it("why").code, 2)

    def test_the_same_question_has_the_same_answer(self):
        self.assertEqual(self.ok("why", 138).out, self.ok("why", 138).out)


if __name__ == "__main__":
    unittest.main()
