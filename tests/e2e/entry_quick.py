"""A day's shopping by quick lines: all or nothing, problems by line, and what a lot costs in keystrokes."""
import unittest

from _support import ProgramTest


class Quick(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def lots(self, *arguments, **more):
        return self.ok("quick", *arguments, "-y", "--json", **more).json["data"]["lots"]

    def test_a_list_is_entered(self):
        lots = self.lots("--at", "pantry", "--read-by", "Jon", stdin=(
            "# Saturday\n"
            "6 lentil pouch 2028-05 same =8.40\n"
            "\n"
            "2x oat bar bbe 3/28 lot L6074 @upper shelf\n"
            "plum jam use by 15MAR28\n"
            "@bag-jon\n"
            "3 lentil-pouch EXP 2028 JN 05 same\n"))
        self.assertEqual([(each["food"], each["entry"]["place"], each["mark"]["kind"], each["mark"]["day"], each["lot_code"], each["entry"]["paid_cents"]) for each in lots], [
            ("lentil-pouch", "pantry", "best_before", "2028-05-31", None, 840),
            ("oat-bar", "shelf-1", "best_before", "2028-03-31", "L6074", None),
            ("jam-jar", "pantry", "use_by", "2028-03-15", None, None),
            ("lentil-pouch", "bag-jon", "use_by", "2028-06-05", None, None)])
        self.assertEqual([each["label"] is not None for each in lots], [True, False, False, True])

    def test_everything_that_is_wrong_is_told_by_line_and_nothing_is_written(self):
        before = self.export()
        answer = self.refused(3, "quick", "-y", "--at", "pantry", stdin=(
            "6 lentil 2028-05\n"
            "2 lintel-pouch 2028-05\n"
            "1 oat bar 03/04/28\n"
            "1 oat bar\n"
            "1 oat bar 2028-05 @attic\n"
            "1 oat bar 2028-05 same\n"
            "1 oat bar 2028-05 =8,40\n"
            "1 oat bar 2028-05 @bag-ada\n"))
        for line, word in ((2, "lentil-pouch"), (3, "could be"), (4, "date is missing"), (5, "attic"), (6, "by whom"), (7, "8,40"), (8, "Ada")):
            self.assertRegex(answer.err, rf"line {line}: .*(\n.*)?{word}", str(answer))
        self.assertNotIn("line 1:", answer.err)
        self.assertEqual(self.export(), before)

    def test_without_a_yes_nothing_is_written(self):
        before = self.export()
        shown = self.run_it("quick", "--at", "pantry", stdin="6 lentil 2028-05\n")
        self.assertEqual(shown.code, 2, str(shown))
        self.assertIn("6 pouches of Lentil stew, best before Wed 31 May 2028 (the end of the month), into Pantry; label not read", shown.out)
        self.assertEqual(self.export(), before)
        self.ok("quick", "--at", "pantry", "-n", stdin="6 lentil 2028-05\n")
        self.assertEqual(self.export(), before)

    def test_words_that_two_foods_have_are_refused(self):
        self.ok("food", "add", "Lentil soup", "--unit", "can")
        answer = self.refused(3, "quick", "-y", "--at", "pantry", stdin="1 lentil 2028-05\n")
        self.assertIn("more than one food", answer.err)
        self.assertEqual(len(self.lots("--at", "pantry", stdin="1 lentil can 2028-05\n")), 1)

    def test_a_label_that_was_not_read_keeps_it_out_of_an_allergic_persons_bag(self):
        answer = self.refused(3, "quick", "-y", stdin="1 lentil 2028-05 @bag-mira\n")
        self.assertIn("Mira", answer.err)

    def test_the_usual_order_of_the_household_counts(self):
        self.refused(3, "quick", "-y", "--at", "pantry", stdin="1 lentil 03/04/28\n")
        document = self.folder / "household.json"
        document.write_text(document.read_text().replace('"people"', '"settings": {"date_order": "dmy"}, "people"', 1))
        other = self.folder / "other.book"
        self.ok("new", other, "--from", document)
        lots = self.lots("--book", other, "--at", "pantry", stdin="1 lentil 03/04/28\n")
        self.assertEqual(lots[0]["mark"]["day"], "2028-04-03")


if __name__ == "__main__":
    unittest.main()
