"""GS1 symbols drawn by zint, read back by independent readers (zxing-cpp, zbar), and entered.

zint and both readers follow the GS1 General Specifications by themselves; what they agree on is the outside truth here.
"""
import subprocess
import unittest

from _support import ProgramTest

GS = "\x1d"
ITEM = "09520000000110"


class Scan(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.ok("food", "change", "lentil-pouch", "--gtin", ITEM)

    def draw(self, kind, data, *more):
        picture = self.folder / "symbol.png"
        subprocess.run(["zint", "-b", kind, "-o", picture, "--scale", "4", "--quietzones", *more, "-d", data], check=True, timeout=60)
        return picture

    def zxing(self, picture):
        """Symbology identifier and bytes, as a scanner sends them."""
        told = subprocess.run(["ZXingReader", "-bytes", picture], check=False, timeout=60, capture_output=True)
        data = told.stdout
        words = subprocess.run(["ZXingReader", picture], check=True, timeout=60, capture_output=True, text=True).stdout
        identifier = next(line.split(":", 1)[1].strip() for line in words.splitlines() if line.startswith("Identifier:"))
        # Of DataBar Expanded it tells the line of text beside the symbol, with the identifiers in brackets.
        return data.decode("latin-1") if data.startswith(b"(") else identifier + data.decode("latin-1")

    def read(self, text):
        return self.ok("scan", text, "--json").json["data"]["scans"][0]

    def test_symbols_with_date_and_lot_are_read_and_entered(self):
        data = "[01]" + ITEM + "[17]280831[10]LOT-7A[21]K3"
        for kind, more in (("DATAMATRIX", ("--gs1", "--square")), ("QRCODE", ("--gs1",)), ("GS1-128", ()), ("DBAR_EXP", ())):
            with self.subTest(kind):
                text = self.zxing(self.draw(kind, data, *more))
                scan = self.read(text)
                self.assertEqual((scan["gtin"], scan["food"], scan["lot_code"], scan["serial"]), (ITEM, "lentil-pouch", "LOT-7A", "K3"), repr(text))
                self.assertEqual(scan["dates"], [{"kind": "use_by", "precision": "day", "day": "2028-08-31"}], repr(text))
                lot = self.ok("scan", text, "--at", "pantry", "--units", 2, "--json").json["data"]["lots"][0]
                self.assertEqual((lot["food"], lot["mark"]["day"], lot["lot_code"]), ("lentil-pouch", "2028-08-31", "LOT-7A"))
                again = self.ok("lot", "add", text, "--units", 1, "--at", "pantry", "--json").json["data"]
                self.assertEqual((again["food"], again["mark"]["day"], again["lot_code"]), ("lentil-pouch", "2028-08-31", "LOT-7A"))

    def test_numbers_under_the_bars(self):
        for kind, digits, expected in (("EANX", "952000000011", ITEM), ("EANX", "9520000", "00000095200002"), ("UPCA", "40000000001", "00400000000015")):
            with self.subTest(digits):
                picture = self.draw(kind, digits)
                self.assertEqual(self.read(self.zxing(picture))["gtin"], expected)
                told = subprocess.run(["zbarimg", "-q", "--raw", picture], check=True, timeout=60, capture_output=True, text=True)
                self.assertEqual(self.read(told.stdout.strip())["gtin"], expected)

    def test_the_separator_comes_through_another_reader(self):
        picture = self.draw("QRCODE", "[01]" + ITEM + "[10]LOT-7A[17]280200", "--gs1")
        told = subprocess.run(["zbarimg", "-q", "--raw", "-Sbinary", picture], check=True, timeout=60, capture_output=True)
        scan = self.read(told.stdout.decode("latin-1").strip("\n"))
        self.assertEqual((scan["lot_code"], scan["dates"]), ("LOT-7A", [{"kind": "use_by", "precision": "month", "day": "2028-02-29"}]))

    def test_a_link_in_a_plain_symbol(self):
        text = self.zxing(self.draw("QRCODE", f"https://example.com/01/{ITEM}/10/AB?15=280200"))
        scan = self.read(text)
        self.assertEqual((scan["food"], scan["lot_code"], scan["dates"][0]["kind"]), ("lentil-pouch", "AB", "best_before"))

    def test_scanned_lines_are_units_and_dates(self):
        stdin = f"{ITEM}\nBBE 08 2028\n]d201{ITEM}1728083110L1\n]d201{ITEM}1728083110L1\n]d201{ITEM}1728083110L2{GS}21X\n"
        lots = self.ok("scan", "--at", "pantry", "-y", "--json", stdin=stdin).json["data"]["lots"]
        self.assertEqual([(each["mark"]["day"], each["lot_code"], each["entry"]["amount"]["value"]) for each in lots],
                         [("2028-08-31", None, "1"), ("2028-08-31", "L1", "2"), ("2028-08-31", "L2", "1")])

    def test_what_is_not_known_or_missing_is_said_and_nothing_is_written(self):
        before = self.export()
        unknown = self.refused(3, "scan", "--at", "pantry", "-y", stdin="9520000000028\n")
        self.assertIn("food add NAME --gtin 09520000000028", unknown.err)
        missing = self.refused(3, "scan", ITEM, "--at", "pantry")
        self.assertIn("no date", missing.err)
        self.refused(3, "scan", "9520000000111")
        self.refused(2, "scan", ITEM, "--units", 3)
        self.assertEqual(self.export(), before)
        told = self.ok("scan", "9520000000028")
        self.assertIn("food add NAME --gtin 09520000000028", told.err)

    def test_a_lost_separator_is_warned_of(self):
        self.assertIn("ABC", self.read(f"]d201{ITEM}10ABC17280831")["warnings"][0])


if __name__ == "__main__":
    unittest.main()
