"""What export --csv writes goes through a real spreadsheet program, LibreOffice Calc without a window: opened, saved, read back. Nothing changes."""
import json
import subprocess
import unittest

from _demo import DemoTest

FILTER = "Text - txt - csv (StarCalc):44,34,76,1"  # comma, double quote, UTF-8, from the first line
SHEETS = ("foods", "lots", "people", "menu")


class SpreadsheetProgram(DemoTest):
    def opened_and_saved(self, sheets):
        """The files after the program opened and saved each of them."""
        profile, out = self.folder / "profile", self.folder / "saved"
        done = subprocess.run(["soffice", f"-env:UserInstallation=file://{profile}", "--headless", f"--infilter={FILTER}", "--convert-to", f"csv:{FILTER}", "--outdir", str(out),
                               *[str(self.folder / f"{sheet}.csv") for sheet in sheets]],
                              env={"HOME": str(self.home), "PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8"}, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=900, check=False)
        for sheet in sheets:
            self.assertTrue((out / f"{sheet}.csv").exists(), done.stdout.decode())
        return {sheet: out / f"{sheet}.csv" for sheet in sheets}

    def test_the_round_trip_changes_nothing(self):
        # Texts that the program would run or turn into numbers and days, if it could.
        for index, note in enumerate(("=1+1", "@x", "-1+2", "007", "1E5", "3-4", "2027-08", "Aug 2027", "TRUE", "two\nlines, \"quoted\"; é")):
            self.ok("food", "add", f"Tried food {index}", "--note", note)
            self.ok("lot", "add", f"tried-food-{index}", "--units", "2", "--at", "tins", "--date", "BBE 08 2028", "--lot-code", note, "--note", note)
        self.ok("record", "opened", "221", "--at", "tins")
        before = self.export()
        for sheet in SHEETS:
            self.ok("export", "--csv", sheet, "-o", self.folder / f"{sheet}.csv")
        for sheet, path in self.opened_and_saved(SHEETS).items():
            answer = self.ok("import", path, "--as", sheet, "-y", "--json").json["data"]
            self.assertEqual((answer["added"], answer["changed"], answer["counted"], answer["news"]), (0, 0, 0, []), sheet)
            self.assertGreater(answer["known"], 5)
        self.assertEqual(self.export(), before)
        self.assertIn("lots", json.loads(before))

    def test_a_file_without_the_guard_would_not_survive(self):
        """The guard is needed: the same texts without it come back as something else."""
        (self.folder / "bare.csv").write_text("name,note\r\nRice,007\r\nBeans,=1+1\r\nPeas,1E5\r\n", encoding="utf-8")
        saved = self.opened_and_saved(["bare"])["bare"].read_text(encoding="utf-8")
        self.assertNotIn("007", saved)
        self.assertNotIn("1E5", saved)


if __name__ == "__main__":
    unittest.main()
