"""What export --csv writes goes through a real spreadsheet program, LibreOffice Calc without a window: opened, saved, read back. Nothing changes.

Also with the settings that people really have: another language, numbers and days recognised, semicolons or tabs, all texts quoted, another encoding.
"""
import csv
import json
import subprocess
import unittest

from _demo import DemoTest

# "Filter Options for CSV Filter", LibreOffice help: sign between cells, quote, encoding, first line, formats, language, all texts quoted, days and
# numbers recognised (reading) or cells as they are shown (writing). 76 is UTF-8, 1 Windows-1252, 65535 UTF-16; 1033 American English, 1031 German.
PLAIN = "44,34,76,1"
ENGLISH = "44,34,76,1,,1033,false,true"
GERMAN = "44,34,76,1,,1031,false,true"
SAVED_GERMAN = "59,34,1,1,,1031,true,true"
SAVED_UTF16 = "9,34,65535,1,,1033,true,true"
SHEETS = ("foods", "lots", "people", "menu")


class SpreadsheetProgram(DemoTest):
    def opened_and_saved(self, sheets, opened=PLAIN, saved=PLAIN):
        """The files after the program opened and saved each of them."""
        profile, out = self.folder / "profile", self.folder / f"saved {saved}"
        name = "Text - txt - csv (StarCalc)"
        done = subprocess.run(["soffice", f"-env:UserInstallation=file://{profile}", "--headless", f"--infilter={name}:{opened}", "--convert-to", f"csv:{name}:{saved}", "--outdir", str(out),
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
        for opened, saved, begin, encoding, delimiter in ((PLAIN, PLAIN, b'"lot","food",', "UTF-8", "comma"), (GERMAN, SAVED_GERMAN, b'"lot";"food";', "Windows-1252", "semicolon"),
                                                          (ENGLISH, SAVED_UTF16, '"lot"\t"food"\t'.encode("utf-16"), "UTF-16", "tab")):
            files = self.opened_and_saved(SHEETS, opened, saved)
            self.assertTrue(files["lots"].read_bytes().startswith(begin), files["lots"].read_bytes()[:40])
            for sheet, path in files.items():
                answer = self.ok("import", path, "--as", sheet, "-y", "--json").json["data"]
                self.assertEqual((answer["added"], answer["changed"], answer["counted"], answer["news"]), (0, 0, 0, []), (saved, sheet))
                self.assertEqual((answer["delimiter"], answer["encoding"]), (delimiter, answer["encoding"] if encoding == "Windows-1252" else encoding), (saved, sheet))
                self.assertGreater(answer["known"], 5)
            self.assertEqual(self.export(), before)
        self.assertIn("lots", json.loads(before))

    def test_days_that_the_program_rewrote(self):
        """What it makes of dates that somebody typed without the guard: most stay texts, the others become all numbers, month first. Those are refused
        with both readings; only a household that set an order of its own has it kept (docs/spreadsheets.md says so)."""
        typed = ("2027-08", "03APR27", "BBE 08 2027", "15 MAR 2027", "Aug 2027", "03.04.2027", "2027-08-15", "15.08.27")
        (self.folder / "typed.csv").write_text("food,units,place,received,lot_code,date\n" + "".join(f"oat-bar,2,tins,2026-10-03,T{index},{date}\n" for index, date in enumerate(typed)), encoding="utf-8")
        path = self.opened_and_saved(["typed"], GERMAN, SAVED_GERMAN)["typed"]
        saved = [row[5] for row in csv.reader(path.read_text("cp1252").splitlines(), delimiter=";")][1:]
        self.assertEqual(saved, ["2027-08", "03APR27", "BBE 08 2027", "15 MAR 2027", "08/01/27", "04/03/27", "2027-08-15", "08/15/27"])
        before = self.export()
        problems = self.refused(3, "import", path, "--as", "lots", "-y", "--json").error["problems"]
        self.assertEqual([(each["where"], each["value"]) for each in problems], [("line 6, date", "08/01/27"), ("line 7, date", "04/03/27")])
        for each, readings in zip(problems, (("2027-08-01", "2027-01-08"), ("2027-03-04", "2027-04-03"))):
            for day in readings:
                self.assertIn(day, each["hint"])
        # Whoever set the day first: what cannot be that stops all of it.
        self.ok("settings", "set", "date-order", "dmy")
        problems = self.refused(3, "import", path, "--as", "lots", "-y", "--json").error["problems"]
        self.assertEqual([(each["where"], each["value"]) for each in problems], [("line 9, date", "08/15/27")])
        self.ok("settings", "set", "date-order", "none")
        self.assertEqual(self.export(), before)

    def test_a_file_without_the_guard_would_not_survive(self):
        """The guard is needed: the same texts without it come back as something else."""
        (self.folder / "bare.csv").write_text("name,note\r\nRice,007\r\nBeans,=1+1\r\nPeas,1E5\r\n", encoding="utf-8")
        saved = self.opened_and_saved(["bare"])["bare"].read_text(encoding="utf-8")
        self.assertNotIn("007", saved)
        self.assertNotIn("1E5", saved)


if __name__ == "__main__":
    unittest.main()
