"""new, export, check, backup; the book's path, the clock, and the exit codes that come from outside."""
import json
import pathlib
import sqlite3
import unittest

from _support import ProgramTest, household


class New(ProgramTest):
    def test_empty_book_in_the_data_folder(self):
        del self.env["LARDERLOOP_BOOK"]
        answer = self.ok("new")
        made = self.home / ".local/share/larderloop/household.book"
        self.assertTrue(made.exists(), str(answer))
        self.assertEqual(oct(made.parent.stat().st_mode & 0o777), "0o700")
        self.assertEqual(self.ok("person", "list", "--json").json["data"], [])
        data = self.folder / "data"
        self.ok("new", env={"XDG_DATA_HOME": str(data)})
        self.assertTrue((data / "larderloop/household.book").exists())
        # A relative base folder counts as unset, so the first book is meant: it exists.
        self.refused(3, "new", env={"XDG_DATA_HOME": "data"})

    def test_two_books_have_different_identities(self):
        self.ok("new", "a.book")
        self.ok("new", "b.book")
        a, b = (json.loads(self.ok("--book", name, "export").out)["book_id"] for name in ("a.book", "b.book"))
        self.assertNotEqual(a, b)

    def test_from_document_and_back(self):
        self.make_book()
        first = self.export()
        self.ok("new", "copy.book", "--from", "-", stdin=first)
        self.assertEqual(self.ok("--book", "copy.book", "export").out, first)

    def test_all_problems_are_listed_and_nothing_is_made(self):
        document = household()
        document["foods"][1]["servings"] = 0
        document["menu"][0]["people"] = ["nobody"]
        document["review_rules"][0]["starts"] = "2026-04-05"
        answer = self.refused(3, "new", self.book, "--from", "-", "--json", stdin=json.dumps(document))
        self.assertGreaterEqual(len(answer.error["problems"]), 2, str(answer))
        self.assertFalse(self.book.exists())

    def test_review_rule_that_does_not_hit_its_start(self):
        document = household()
        document["review_rules"][0]["starts"] = "2026-04-05"
        answer = self.refused(3, "new", self.book, "--from", "-", "--json", stdin=json.dumps(document))
        self.assertEqual([each["where"] for each in answer.error["problems"]], ["/review_rules/0/rule"])
        self.assertFalse(self.book.exists())

    def test_at_most_twenty_problems_as_text(self):
        document = household()
        document["foods"] += [{"key": f"bad key {number}", "name": "x"} for number in range(30)]
        answer = self.refused(3, "new", self.book, "--from", "-", stdin=json.dumps(document))
        self.assertIn(" more (all with --json)", answer.err)

    def test_existing_file_missing_file_and_broken_text(self):
        self.make_book()
        before = self.book.read_bytes()
        self.assertIn("exists", self.refused(3, "new", self.book).err)
        self.assertEqual(self.book.read_bytes(), before)
        self.refused(4, "new", "x.book", "--from", "missing.json")
        self.refused(3, "new", "x.book", "--from", "-", stdin="{")
        self.refused(3, "new", "x.book", "--from", self.folder)
        self.assertFalse((self.folder / "x.book").exists())

    def test_dry_run_makes_nothing(self):
        answer = self.ok("new", self.book, "-n")
        self.assertEqual(answer.out.splitlines()[0], "Dry run: nothing was written.")
        self.assertFalse(self.book.exists())


class Export(ProgramTest):
    def test_to_a_file(self):
        self.make_book()
        answer = self.ok("export", "-o", "out.json")
        self.assertEqual(answer.out, "")
        self.assertEqual((self.folder / "out.json").read_text(encoding="utf-8"), self.export())
        self.assertEqual(self.ok("export", "--output=-").out, self.export())
        self.assertEqual([each.name for each in self.folder.glob("out.json?*")], [])
        self.refused(8, "export", "-o", "no/such/folder/out.json")
        self.ok("export", "-n", "-o", "dry.json")
        self.assertFalse((self.folder / "dry.json").exists())


class Check(ProgramTest):
    def test_sound_book(self):
        self.make_book()
        answer = self.ok("check")
        self.assertEqual(answer.out, "")
        self.assertEqual(self.ok("check", "--json").json["data"], [])
        self.assertEqual(self.ok("check", "-q").err, "")

    def test_finding_is_code_1_and_changes_nothing(self):
        self.make_book()
        with sqlite3.connect(self.book) as raw:
            raw.execute("PRAGMA foreign_keys = OFF")
            tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'trigger'")]
            self.assertTrue(tables)
            raw.execute(f'DROP TRIGGER "{tables[0]}"')
        raw.close()
        before = self.book.read_bytes()
        answer = self.run_it("check")
        self.assertEqual(answer.code, 1, str(answer))
        self.assertIn("backup", answer.err)
        self.assertTrue(answer.out, str(answer))
        found = self.run_it("check", "--json")
        self.assertEqual(found.code, 1)
        self.assertGreaterEqual(len(found.json["data"]), 1)
        self.assertEqual(self.book.read_bytes(), before)


class Backup(ProgramTest):
    def test_copy_holds_the_same(self):
        self.make_book()
        self.add_lot("lentil-pouch", 4, "pantry", "--date", "2028-05")
        self.ok("backup", "copy.book")
        self.assertEqual(self.ok("--book", "copy.book", "export").out, self.export())
        self.ok("--book", "copy.book", "check")
        self.refused(3, "backup", "copy.book")
        self.refused(3, "backup", "copy.book", "-n")
        self.ok("backup", "dry.book", "-n")
        self.assertFalse((self.folder / "dry.book").exists())


class Outside(ProgramTest):
    def test_reading_never_creates(self):
        for arguments in (("export",), ("check",), ("backup", "x.book"), ("lot", "list"), ("person", "add", "Eva")):
            with self.subTest(arguments=arguments):
                self.refused(4, *arguments)
                self.assertFalse(self.book.exists())

    def test_not_a_book(self):
        self.book.write_text("this is no book at all, just some text in a file\n" * 40, encoding="utf-8")
        before = self.book.read_bytes()
        for arguments in (("export",), ("lot", "list"), ("person", "add", "Eva"), ("check",)):
            with self.subTest(arguments=arguments):
                self.refused(6, *arguments)
        self.assertEqual(self.book.read_bytes(), before)

    def test_newer_book_is_refused_with_advice(self):
        self.make_book()
        raw = sqlite3.connect(self.book)
        raw.execute("PRAGMA user_version = 9999")
        raw.commit()
        raw.close()
        self.assertIn("hint: ", self.refused(6, "export").err)

    def test_no_home_is_a_configuration_error(self):
        env = {name: value for name, value in self.env.items() if name not in ("HOME", "LARDERLOOP_BOOK")}
        self.env = env
        self.refused(9, "check")

    def test_unknown_zone_and_unreadable_clock(self):
        self.make_book()
        self.refused(9, "lot", "list", env={"TZ": "Nowhere/City", "LARDERLOOP_NOW": "2027-03-01T12:00:00Z"})
        self.refused(9, "lot", "list", env={"LARDERLOOP_NOW": "yesterday"})

    def test_today_is_that_of_the_zone(self):
        self.make_book()
        at = "2027-03-01T12:30:00Z"
        for zone, day in (("UTC", "2027-03-01"), ("Pacific/Auckland", "2027-03-02"), ("Pacific/Pago_Pago", "2027-03-01")):
            found = self.ok("lot", "list", "--json", env={"TZ": zone, "LARDERLOOP_NOW": at}).json
            self.assertEqual(found["as_of"], day, zone)
        # A day given as a day is that day everywhere.
        found = self.ok("lot", "list", "--json", "--now", "2027-03-01", env={"TZ": "Pacific/Auckland"}).json
        self.assertEqual(found["as_of"], "2027-03-01")

    def test_option_outranks_environment(self):
        self.make_book()
        self.ok("new", "other.book")
        self.assertEqual(self.ok("--book", "other.book", "person", "list", "--json").json["data"], [])

    def test_read_only_book_can_be_read(self):
        self.make_book()
        raw = sqlite3.connect(self.book)
        raw.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        raw.close()
        self.book.chmod(0o444)
        self.ok("lot", "list")

    def test_paths_with_spaces_and_signs(self):
        name = self.folder / "my book ?mode=rw#1%41.book"
        self.ok("new", name)
        self.ok("--book", name, "check")
        self.assertEqual(sorted(each.name for each in self.folder.glob("my*.book")), [pathlib.Path(name).name])


if __name__ == "__main__":
    unittest.main()
