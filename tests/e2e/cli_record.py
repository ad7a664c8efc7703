"""The record: what was eaten, moved, opened, found, counted, corrected, and what is refused."""
import unittest

from _support import ProgramTest


class Record(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.pouches = self.add_lot("lentil-pouch", 6, "pantry", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        self.jars = self.add_lot("jam-jar", 2, "shelf-1", "--date", "2028-05")

    def record(self, *arguments):
        return self.ok("record", *arguments)

    def entries(self, *more):
        return self.ok("record", "list", "--json", *more).json["data"]

    def test_eaten_units(self):
        answer = self.record("eaten", self.pouches, "2", "--who", "mira", "--meal", "dinner", "--on", "yesterday", "--note", "good",
                             "--now", "2027-03-02")
        self.assertRegex(answer.err, r"^eaten: 2 .*Lentil stew.*left there: 4 .*undo: larderloop record corrected \d+\n$")
        self.assertEqual(self.on_hand(self.pouches), {("pantry", None): 8})
        entry = self.entries("--limit", "1")[0]
        self.assertEqual((entry["kind"], entry["on"], entry["who"], entry["meal"], entry["note"]),
                         ("eaten", "2027-03-01", "mira", "dinner", "good"))

    def test_part_of_a_sealed_unit_opens_it(self):
        answer = self.record("eaten", self.jars, "1.5", "servings")
        self.assertIn("opened", answer.err)
        self.assertEqual(self.on_hand(self.jars), {("shelf-1", None): 12, ("shelf-1", "2027-03-01"): 9})
        self.assertEqual([each["kind"] for each in self.entries("--limit", "2")], ["eaten", "opened"])
        # What is open is eaten before another jar is opened.
        self.record("eaten", self.jars, "a serving", "--now", "2027-03-02")
        self.assertEqual(self.on_hand(self.jars), {("shelf-1", None): 12, ("shelf-1", "2027-03-01"): 7})
        # More than the rest: the rest, and a part of the next jar.
        self.record("eaten", self.jars, "5 servings", "--now", "2027-03-02")
        self.assertEqual(self.on_hand(self.jars), {("shelf-1", "2027-03-02"): 9})

    def test_sealed_can_be_asked_for(self):
        self.record("opened", self.jars)
        self.record("eaten", self.jars, "half serving", "--sealed", "--now", "2027-03-02")
        self.assertEqual(self.on_hand(self.jars), {("shelf-1", "2027-03-01"): 12, ("shelf-1", "2027-03-02"): 11})
        self.record("eaten", self.jars, "half a serving", "--opened", "--now", "2027-03-03")
        self.assertEqual(self.on_hand(self.jars)[("shelf-1", "2027-03-01")], 11)

    def test_half_of_a_single_serving_leaves_an_opened_rest(self):
        self.record("eaten", self.pouches, "half", "serving")
        self.assertEqual(self.on_hand(self.pouches), {("pantry", None): 10, ("pantry", "2027-03-01"): 1})

    def test_all_takes_sealed_and_opened(self):
        self.record("opened", self.jars, "1")
        self.record("given-away", self.jars, "all")
        self.assertEqual(self.on_hand(self.jars), {})
        self.assertIn("Nothing of it is left", self.ok("lot", "show", self.jars).out)

    def test_thrown_out_and_lost(self):
        self.record("thrown-out", self.pouches, "1", "--note", "swollen")
        self.record("lost", self.pouches, "2 units")
        self.assertEqual(self.on_hand(self.pouches), {("pantry", None): 6})

    def test_moving_and_naming_the_place(self):
        self.record("moved", self.pouches, "2", "--to", "bag-mira")
        self.assertEqual(self.on_hand(self.pouches), {("pantry", None): 8, ("bag-mira", None): 4})
        several = self.assert_unchanged("record", "eaten", self.pouches, "1")
        self.assertIn("--at", several.err)
        self.assertIn("bag-mira", several.err)
        self.record("eaten", self.pouches, "1", "--at", "bag-mira")
        # An outer place will do when the lot lies only once inside it.
        self.record("eaten", self.pouches, "1", "--at", "home-kit")
        self.assertEqual(self.on_hand(self.pouches), {("pantry", None): 8})
        self.assert_unchanged("record", "moved", self.pouches, "1", "--to", "pantry")
        self.assert_unchanged("record", "moved", self.pouches, "half serving", "--to", "shelf-1")

    def test_moving_what_is_open(self):
        self.record("opened", self.jars)
        self.record("moved", self.jars, "all", "--to", "pantry", "--opened")
        self.assertEqual(self.on_hand(self.jars), {("shelf-1", None): 12, ("pantry", "2027-03-01"): 12})

    def test_nothing_moves_to_somebody_who_must_not_have_it(self):
        bars = self.add_lot("oat-bar", 4, "pantry", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        mine = self.assert_unchanged("record", "moved", bars, "1", "--to", "bag-mira")
        self.assertIn("Mira must not have it", mine.err)
        communal = self.assert_unchanged("record", "moved", bars, "1", "--to", "box-1")
        self.assertIn("Ada must not have it", communal.err)
        self.assert_unchanged("record", "received", bars, "1", "--at", "bag-ada")
        unread = self.assert_unchanged("record", "moved", self.jars, "1", "--to", "bag-ada")
        self.assertIn("lot label", unread.err)
        self.record("moved", bars, "1", "--to", "bag-jon")

    def test_recalled_lots_go_into_no_kit(self):
        self.ok("lot", "state", self.pouches, "recalled")
        self.assert_unchanged("record", "moved", self.pouches, "1", "--to", "bag-jon")
        self.record("moved", self.pouches, "1", "--to", "shelf-1")

    def test_facts_are_recorded_with_a_warning(self):
        bars = self.add_lot("oat-bar", 4, "pantry", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        self.assertIn("must leave", self.record("found", bars, "1", "--at", "bag-mira").err)
        self.assertIn("must leave", self.record("counted", bars, "2", "--at", "bag-mira", "-q").err)
        self.assertIn("doctor", self.record("eaten", bars, "1", "--at", "pantry", "--who", "ada").err)
        self.assertEqual(self.on_hand(bars), {("pantry", None): 6, ("bag-mira", None): 4})

    def test_counting(self):
        self.record("counted", self.pouches, "4", "--at", "pantry")
        self.assertEqual(self.entries("--limit", "1")[0]["change"], {"value": "-2", "unit": "serving"})
        self.record("counted", self.pouches, "0", "--at", "pantry")
        self.assertEqual(self.on_hand(self.pouches), {})
        self.record("found", self.pouches, "1", "--at", "box-1")
        self.record("received", self.pouches, "3", "--at", "pantry", "--paid", "4.20")
        self.assertEqual(self.on_hand(self.pouches), {("box-1", None): 2, ("pantry", None): 6})
        self.record("opened", self.jars)
        self.record("counted", self.jars, "2.5 servings", "--at", "shelf-1", "--opened")
        self.assertEqual(self.on_hand(self.jars)[("shelf-1", "2027-03-01")], 5)

    def test_correcting(self):
        before = self.on_hand(self.jars)
        self.record("eaten", self.jars, "1 serving")
        entries = self.entries("--limit", "2")
        eaten, opened = entries[0]["entry"], entries[1]["entry"]
        # The opened unit was eaten from: that comes first.
        self.assert_unchanged("record", "corrected", opened)
        self.record("corrected", eaten, opened, "--note", "wrong jar")
        self.assertEqual(self.on_hand(self.jars), before)
        self.assert_unchanged("record", "corrected", eaten)
        last = self.entries("--limit", "1")[0]
        self.assertEqual((last["kind"], last["corrects"], last["lot"]), ("corrected", opened, self.jars))
        self.assert_unchanged("record", "corrected", last["entry"])
        self.assert_unchanged("record", "corrected", "9999", code=4)
        listed = self.ok("record", "list", "--lot", self.jars).out
        self.assertIn("corrected", listed)

    def test_undo_command_of_the_message_works(self):
        before = self.on_hand(self.jars)
        message = self.record("eaten", self.jars, "7 servings").err
        undo = message.strip().split("undo: larderloop ")[1].split()
        self.ok(*undo)
        self.assertEqual(self.on_hand(self.jars), before)

    def test_too_much_and_absurd(self):
        for arguments in (
            ("eaten", self.pouches, "7"),
            ("eaten", self.pouches, "0"),
            ("eaten", self.pouches, "-2"),
            ("eaten", self.pouches, "--", "-2"),
            ("eaten", self.pouches, "100001"),
            ("eaten", self.pouches, "99999999999999999999999"),
            ("eaten", self.pouches, "1.5"),
            ("eaten", self.pouches, "0.3 servings"),
            ("eaten", self.pouches, "7 servings"),
            ("eaten", self.pouches, "two"),
            ("eaten", self.pouches, "1,5 servings"),
            ("eaten", self.jars, "1", "--opened", "--at", "shelf-1"),
            ("opened", self.jars, "3"),
            ("moved", self.pouches, "7", "--to", "shelf-1"),
            ("counted", self.pouches, "all", "--at", "pantry"),
            ("counted", self.pouches, "100001", "--at", "pantry"),
            ("received", self.pouches, "100001", "--at", "pantry"),
            ("found", self.pouches, "1.5 servings", "--at", "pantry"),
            ("eaten", self.pouches, "1", "--meal", "brunch"),
            ("given-away", self.pouches, "1", "--at", "bag-jon"),
        ):
            with self.subTest(arguments=arguments):
                self.assertIn("hint: ", self.assert_unchanged("record", *arguments).err)
        self.assert_unchanged("record", "eaten", self.pouches, "1", "--who", "nobody", code=4)
        self.assert_unchanged("record", "eaten", "77", "1", code=4)
        self.assert_unchanged("record", "moved", self.pouches, "1", "--to", "nowhere", code=4)
        self.assert_unchanged("record", "eaten", self.pouches, "1", "--opened", "--sealed", code=2)

    def test_impossible_days(self):
        for day in ("2027-03-02", "2027-02-29", "2027-13-01", "tomorrow", "+1d", "2027-02-28", "1999-01-01", "soon", "01.03.2027"):
            with self.subTest(day=day):
                self.assert_unchanged("record", "eaten", self.pouches, "1", "--on", day)

    def test_an_earlier_day_must_leave_later_days_possible(self):
        self.record("eaten", self.pouches, "6", "--now", "2027-03-10")
        self.record("found", self.pouches, "2", "--at", "pantry", "--now", "2027-03-12")
        # On 5 March there were six, of which all were eaten on the 10th: eating one earlier cannot have been.
        answer = self.refused(3, "record", "eaten", self.pouches, "1", "--on", "2027-03-05", "--now", "2027-03-13")
        self.assertIn("hint: ", answer.err)
        self.record("eaten", self.pouches, "1", "--on", "2027-03-12", "--now", "2027-03-13")

    def test_dry_run_leaves_the_book(self):
        before = self.export()
        for arguments in (
            ("eaten", self.pouches, "1"),
            ("moved", self.pouches, "1", "--to", "bag-jon"),
            ("corrected", "1"),
            ("counted", self.pouches, "3", "--at", "pantry"),
        ):
            answer = self.record(*arguments, "-n")
            self.assertEqual(answer.out.splitlines()[0], "Dry run: nothing was written.")
            self.assertEqual(self.export(), before)
        answer = self.record("eaten", self.pouches, "1", "-n", "--json")
        self.assertEqual(answer.err.splitlines()[0], "Dry run: nothing was written.")
        self.assertEqual(answer.json["schema"], "larderloop.recorded/1")
        self.refused(3, "record", "eaten", self.pouches, "7", "-n")
        self.assertEqual(self.export(), before)

    def test_list_filters(self):
        self.record("eaten", self.pouches, "1", "--now", "2027-04-01")
        self.assertEqual([each["kind"] for each in self.entries("--lot", self.pouches)], ["eaten", "received"])
        self.assertEqual([each["lot"] for each in self.entries("--since", "2027-03-15")], [self.pouches])
        self.assertEqual(len(self.entries("--limit", "1")), 1)
        self.refused(3, "record", "list", "--limit", "0")
        self.refused(3, "record", "list", "--since", "March")

    def test_quiet_says_nothing(self):
        answer = self.record("eaten", self.pouches, "1", "--quiet")
        self.assertEqual((answer.out, answer.err), ("", ""))

    def test_conservation_through_a_long_day(self):
        """received + found + counted = eaten + given away + thrown out + lost + on hand."""
        for arguments in (("eaten", "half serving"), ("moved", "2", "--to", "shelf-1", "--sealed"), ("opened", "1", "--at", "shelf-1"),
                          ("eaten", "half serving", "--at", "shelf-1"), ("given-away", "1", "--at", "pantry"),
                          ("counted", "5", "--at", "shelf-1"), ("thrown-out", "all", "--at", "shelf-1", "--opened"), ("found", "2", "--at", "box-1"),
                          ("lost", "1", "--at", "box-1")):
            self.record(arguments[0], self.pouches, *arguments[1:])
        sums = {}
        for entry in self.entries("--lot", self.pouches):
            amount = entry["change"] if entry["kind"] == "counted" else entry["amount"]
            sums[entry["kind"]] = sums.get(entry["kind"], 0) + float(amount["value"])
        come = sum(sums.get(kind, 0) for kind in ("received", "found", "counted"))
        gone = sum(sums.get(kind, 0) for kind in ("eaten", "given_away", "thrown_out", "lost"))
        here = sum(self.on_hand(self.pouches).values()) / 2
        self.assertEqual(come, gone + here)
        self.ok("check")


if __name__ == "__main__":
    unittest.main()
