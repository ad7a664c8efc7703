"""The replacement list as it comes out of the shopping bag: dates, labels that changed, what was not to be had."""
import json
import unittest

from _support import ProgramTest


class Receive(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.ok("food", "change", "lentil-pouch", "--pack", "Corner shop:6:8.40")
        self.ok("food", "change", "oat-bar", "--pack", "Corner shop:4:2.00", "--contains", "gluten", "--label-read-by", "Mira")
        foods = [line["food"] for shop in self.ok("shop", "--json").json["data"]["shops"] for line in shop["lines"]]
        self.assertEqual(foods, ["lentil-pouch", "oat-bar"])

    def notes(self):
        return json.loads(self.export()).get("buy_notes", [])

    def stopped(self, stdin, code=3):
        """The script is not taken: what was asked comes first, the error last, and nothing is written."""
        before = self.export()
        answer = self.run_it("receive", "--read-by", "Jon", stdin=stdin)
        self.assertEqual((answer.code, answer.out), (code, ""), str(answer))
        self.assertRegex(answer.err.strip().splitlines()[-2], r"^larderloop: (answer \d+: |the answers end )", str(answer))
        self.assertRegex(answer.err.strip().splitlines()[-1], r"^  hint: ", str(answer))
        self.assertEqual(self.export(), before)
        return answer

    def test_answers_become_lots(self):
        stdin = "\nBBE 08 2028\ns\n\npantry\n" + "4\n03 2028 lot L9\ns\n1.80\nbox-1\n"
        lots = self.ok("receive", "--read-by", "Jon", "--json", stdin=stdin).json["data"]["lots"]
        self.assertEqual([(each["food"], each["mark"]["day"], each["entry"]["place"], each["entry"]["paid_cents"], each["lot_code"]) for each in lots],
                         [("lentil-pouch", "2028-08-31", "pantry", 840, None), ("oat-bar", "2028-03-31", "box-1", 180, "L9")])
        self.assertEqual([each["label"]["read_by"] for each in lots], ["Jon", "Jon"])

    def test_a_changed_label_stops_and_says_whose_bags(self):
        before = self.export()
        stdin = "6\nBBE 08 2028\nc\nmustard,sesame\n\nvegan\n\n"
        answer = self.stopped(stdin)
        self.assertIn("The label is not the one that was read last", answer.err)
        self.assertRegex(answer.err, r"Mira must not have it: .*sesame.*Mira's bag")
        self.assertEqual(self.export(), before)
        # Taken as it is, it still cannot go into her bag.
        stdin = "6\nBBE 08 2028\nc\nmustard,sesame\n\nvegan\ny\n\nbag-mira\n"
        self.stopped(stdin)
        self.assertEqual(self.export(), before)
        stdin = "6\nBBE 08 2028\nc\nmustard,sesame\n\nvegan\ny\n\npantry\nq\n"
        lots = self.ok("receive", "--read-by", "Jon", "--json", stdin=stdin).json["data"]["lots"]
        self.assertEqual(lots[0]["label"]["contains"], ["mustard", "sesame"])

    def test_what_was_not_to_be_had_is_carried_on_until_it_comes(self):
        self.ok("receive", "--read-by", "Jon", stdin="0\ni\njam-jar\n2\n2028-08\n\n\npantry\n")
        self.assertEqual([(each["food"], each["kind"], each.get("instead")) for each in self.notes()],
                         [("lentil-pouch", "not_available", None), ("oat-bar", "bought_instead", "jam-jar")])
        shop = self.ok("shop").out
        self.assertIn("not to be had on Mon 1 Mar 2027", shop)
        self.assertIn("not to be had on Mon 1 Mar 2027", " ".join(self.ok("plan").out.split()))
        self.ok("lot", "add", "lentil-pouch", "--units", 1, "--at", "pantry", "--date", "2028-05")
        self.assertNotIn("not to be had", self.ok("shop").out)

    def test_one_purchase_goes_into_several_places(self):
        begin = "6\nBBE 08 2028\ns\n8.41\n"
        for places in ("3 bag-jon, 2 pantry", "3 bag-jon, 4 pantry", "bag-jon, pantry", "3 bag-jon, rest pantry, rest shelf-1", "3 bag-jon, 3 bag-jon", "6 bag-jon, rest pantry", "7 bag-jon", "0 bag-jon, 6 pantry",
                       "3 bag-jon,, 3 pantry"):
            self.stopped(begin + places + "\n")
        self.stopped(begin + "3 bag-jon, 3 attic\n", code=4)
        added = self.ok("receive", "--read-by", "Jon", "--json", stdin=begin + "3 Jon's bag, 1 bag-mira, rest pantry\nq\n").json["data"]["lots"][0]
        self.assertEqual(self.on_hand(added["lot"]), {("bag-jon", None): 6, ("bag-mira", None): 2, ("pantry", None): 4})
        self.assertEqual([each["paid_cents"] for each in [added["entry"], *added["also"]]], [421, 140, 280])
        self.ok("check")

    def test_no_part_goes_where_somebody_must_not_have_it(self):
        stdin = "6\nBBE 08 2028\nc\nmustard,sesame\n\nvegan\ny\n\n"
        self.assertIn("must not go to 'Mira's bag'", self.stopped(stdin + "5 pantry, 1 bag-mira\n").err)
        self.ok("receive", "--read-by", "Jon", stdin=stdin + "5 pantry, 1 bag-jon\nq\n")

    def test_a_date_that_comes_too_early_is_asked_about(self):
        before = self.export()
        self.assertIn("was not taken", self.stopped("6\nBBE 10 APR 2027\n\n").err)
        self.assertEqual(self.export(), before)
        self.ok("receive", "--read-by", "Jon", stdin="6\nBBE 10 APR 2027\ny\ns\n\npantry\nq\n")

    def test_a_script_that_is_wrong_or_ends_leaves_everything_as_it_was(self):
        before = self.export()
        for stdin in ("many\n", "6\n03/04/28\n", "6\n2028-08\nperhaps\n", "6\n2028-08\ns\n8,40\n", "6\n2028-08\ns\n", ""):
            self.stopped(stdin)
        self.stopped("6\n2028-08\ns\n\nattic\n", code=4)
        self.assertEqual(self.export(), before)
        answers = self.folder / "answers"
        answers.write_text("6\n2028-08\ns\n\npantry\nq\n")
        self.ok("receive", "--read-by", "Jon", "--answers", answers, "-n")
        self.assertEqual(self.export(), before)
        self.ok("receive", "--read-by", "Jon", "--answers", answers)
        self.assertNotEqual(self.export(), before)


if __name__ == "__main__":
    unittest.main()
