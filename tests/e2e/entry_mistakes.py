"""Lots that were entered by mistake, or with a wrong code: taken back and entered again by further entries; nothing is changed or forgotten."""
import json
import sqlite3
import unittest

from _support import ProgramTest


class Mistakes(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.lot = self.add_lot("lentil-pouch", 6, "pantry", "--date", "BBE 05 2028", "--lot-code", "L1", "--paid", "8.40", "--label-read-by", "Jon", "--label-same-as-food")

    def document(self):
        return json.loads(self.export())

    def stock(self):
        """By the book's own view, which the program does not use."""
        with sqlite3.connect(f"file:{self.book}?mode=ro", uri=True) as file:
            rows = file.execute("SELECT lot, place, opened_on, half_servings FROM stock ORDER BY 1, 2, 3").fetchall()
        file.close()
        return rows

    def test_a_lot_that_never_was(self):
        before = self.document()
        self.ok("record", "moved", self.lot, "2", "--to", "shelf-1")
        self.assertEqual(len(self.stock()), 2)
        answer = self.ok("lot", "retire", self.lot, "--json")
        self.assertIn(f"took back lot {self.lot} (Lentil stew): 2 entries corrected, nothing of it is left", answer.err)
        self.assertEqual(answer.json["data"]["lot"], self.lot)
        self.assertEqual(self.stock(), [])
        after = self.document()
        self.assertEqual(after["lots"], before["lots"])
        self.assertEqual(after["entries"][0], before["entries"][0])
        self.assertEqual([(each["kind"], each["corrects"], each["note"]) for each in after["entries"][2:]],
                         [("corrected", 2, "entered by mistake"), ("corrected", 1, "entered by mistake")])
        self.assertEqual(self.ok("lot", "list", "--json").json["data"], [])
        self.assertIn("taken back already", self.refused(3, "lot", "retire", self.lot).err)
        self.refused(4, "lot", "retire", "99")
        self.ok("check")

    def test_what_was_eaten_is_taken_back_only_when_somebody_says_so(self):
        self.ok("record", "eaten", self.lot, "1", "--who", "jon")
        before = self.export()
        self.assertIn("needs a yes", self.refused(2, "lot", "retire", self.lot).err)
        self.assertEqual(self.export(), before)
        self.ok("lot", "retire", self.lot, "-n")
        self.assertEqual(self.export(), before)
        self.ok("lot", "retire", self.lot, "-y", "--note", "entered twice")
        self.assertEqual(self.stock(), [])
        self.assertEqual({each["note"] for each in self.document()["entries"] if each["kind"] == "corrected"}, {"entered twice"})

    def test_another_code_is_the_same_lot_under_another_number(self):
        self.ok("lot", "date", self.lot, "BBE 04 2028", "--by", "Jon")
        self.ok("record", "moved", self.lot, "2", "--to", "shelf-1")
        self.ok("record", "eaten", self.lot, "half", "serving", "--at", "pantry", "--who", "jon")
        self.ok("record", "counted", self.lot, "1", "--at", "shelf-1")
        before, stock = self.document(), self.stock()
        self.refused(3, "lot", "code", self.lot, "L1")
        self.assertEqual(self.document(), before)
        answer = self.ok("lot", "code", self.lot, "L2", "B", "--json")
        new = answer.json["data"]["lot"]
        self.assertEqual(new, self.lot + 1)
        self.assertIn(f"lot {self.lot} is now lot {new}", answer.err)
        self.assertEqual([(new, *row[1:]) for row in stock], self.stock())
        after = self.document()
        self.assertEqual(after["lots"][0], before["lots"][0])
        self.assertEqual(after["lots"][1], {**before["lots"][0], "id": new, "lot_code": "L2 B", "mark": {"text": "BBE 04 2028", "kind": "best_before", "precision": "month", "day": "2028-04-30"}})
        bare = [{key: value for key, value in each.items() if key not in ("id", "lot", "written_at")} for each in after["entries"] if each.get("lot") == new]
        self.assertEqual(bare, [{key: value for key, value in each.items() if key not in ("id", "lot", "written_at")} for each in before["entries"]])
        self.ok("lot", "code", new, "none")
        self.assertEqual(self.document()["lots"][2].get("lot_code"), None)
        self.ok("check")

    def test_what_never_was_tells_nothing(self):
        """Neither how long the next pack will keep, nor that what was not to be had has come."""
        self.ok("food", "change", "lentil-pouch", "--pack", "Corner shop:6:8.40")
        self.ok("record", "eaten", self.lot, "all")

        def wanted():
            return [line["food"] for shop in self.ok("shop", "--json").json["data"]["shops"] for line in shop["lines"]]

        self.assertIn("lentil-pouch", wanted())
        # Two lots that keep for days only: a pack of it is not expected to last, and is not asked for.
        short = [self.add_lot("lentil-pouch", 1, "shelf-1", "--date", date) for date in ("2027-03-05", "2027-03-06")]
        self.assertNotIn("lentil-pouch", wanted())
        for lot in short:
            self.ok("lot", "retire", lot)
        self.assertIn("lentil-pouch", wanted())
        self.env["LARDERLOOP_NOW"] = "2027-03-02"  # what came on the day of a note has come
        self.ok("receive", stdin="0\nq\n")
        self.assertIn("not to be had", self.ok("shop").out)
        lot = self.add_lot("lentil-pouch", 1, "pantry", "--date", "2028-05")
        self.assertNotIn("not to be had", self.ok("shop").out)
        self.ok("lot", "retire", lot)
        self.assertIn("not to be had", self.ok("shop").out)

    def test_a_recalled_lot_stays_recalled(self):
        self.ok("lot", "state", self.lot, "recalled")
        new = self.ok("lot", "code", self.lot, "L2", "--json").json["data"]["lot"]
        self.assertEqual(self.ok("lot", "show", new, "--json").json["data"]["state"], "recalled")


if __name__ == "__main__":
    unittest.main()
