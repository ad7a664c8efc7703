"""Help, wrong command lines, and what they answer."""
import re
import unittest

from _support import ProgramTest


class Usage(ProgramTest):
    def commands(self):
        """Every command that the overview names."""
        overview = self.ok("--help").out
        part = overview.split("Options that work everywhere")[0]
        found = []
        for line in part.splitlines():
            match = re.match(r"  ([a-z-]+(?: [a-z-]+)?)(?:  |$)", line)
            if match:
                found.append(match.group(1))
        self.assertGreater(len(found), 30, overview)
        return found

    def test_every_command_explains_itself_in_80_columns(self):
        for command in self.commands():
            with self.subTest(command=command):
                by_option = self.ok(*command.split(), "--help")
                by_word = self.ok("help", *command.split())
                self.assertEqual(by_option.out, by_word.out)
                for part in ("Usage: larderloop " + command, "Examples:", "Exit codes:", "--dry-run", "man larderloop"):
                    self.assertIn(part, by_option.out)
                for line in by_option.out.split("Exit codes")[0].splitlines():
                    if not line.startswith("  larderloop "):
                        self.assertLessEqual(len(line), 80, line)
                self.assertNotIn("\x1b", by_option.out)
                self.assertEqual(by_option.err, "")

    def test_examples_in_help_name_only_real_commands_and_options(self):
        for command in self.commands():
            text = self.ok("help", *command.split()).out
            examples = text.split("Examples:\n")[1].split("\n\n")[0].replace("\\\n", " ")
            for line in examples.splitlines():
                if not line.strip().startswith("larderloop"):
                    continue
                named = re.findall(r"--[a-z-]+", line)
                for option in named:
                    self.assertIn(option, text, f"{command}: {line}")

    def test_no_command_is_short_help_on_stderr(self):
        answer = self.run_it()
        self.assertEqual((answer.code, answer.out), (2, ""))
        self.assertIn("larderloop --help", answer.err)

    def test_version_comes_first(self):
        self.assertRegex(self.ok("--version").out, r"^larderloop \d+\.\d+\.\d+\n")
        self.assertEqual(self.ok("-V").out, self.ok("check", "--version").out)

    def test_unknown_words_get_a_suggestion(self):
        for arguments, wanted in (
            (("exprot",), "did you mean 'export'?"),
            (("lot", "lst"), "did you mean 'lot list'?"),
            (("record", "eatne", "17", "2"), "did you mean 'record eaten'?"),
            (("export", "--ouput", "x"), "did you mean '--output'?"),
            (("lot", "add", "stew", "--unts", "3"), "did you mean '--units'?"),
            (("help", "exprot"), "did you mean 'export'?"),
        ):
            with self.subTest(arguments=arguments):
                self.assertIn(wanted, self.refused(2, *arguments).err)

    def test_wrong_command_lines_are_code_2(self):
        for arguments in (
            ("lot",),
            ("lot", "add"),
            ("lot", "add", "stew"),
            ("backup",),
            ("record", "eaten"),
            ("record", "eaten", "17"),
            ("export", "too", "many"),
            ("export", "-o"),
            ("check", "--color", "blue"),
            ("check", "--now", "March"),
            ("--frobnicate",),
            ("record", "moved", "17", "1"),
        ):
            with self.subTest(arguments=arguments):
                self.assertIn("hint: ", self.refused(2, *arguments).err)

    def test_errors_are_json_when_json_is_asked_for(self):
        for arguments, code, kind in (
            (("exprot", "--json"), 2, "usage"),
            (("check", "--nonsense", "--json"), 2, "usage"),
            (("--json",), 2, "usage"),
            (("check", "--json"), 4, "not_found"),
        ):
            with self.subTest(arguments=arguments):
                answer = self.refused(code, *arguments)
                self.assertEqual(answer.error["schema"], "larderloop.error/1")
                self.assertEqual((answer.error["kind"], answer.error["exit_code"]), (kind, code))
                self.assertTrue(answer.error["message"])

    def test_global_options_work_before_and_after_the_command(self):
        self.make_book()
        after = self.ok("person", "list", "--json", "--now", "2027-05-05").out
        before = self.ok("--json", "--now", "2027-05-05", "person", "list").out
        between = self.ok("person", "--now=2027-05-05", "list", "--json").out
        self.assertEqual(before, after)
        self.assertEqual(between, after)
        self.assertIn('"as_of": "2027-05-05"', after)

    def test_two_dashes_end_the_options(self):
        self.make_book()
        self.ok("person", "add", "--key", "dash", "--", "-x-")
        self.assertIn("-x-", self.ok("person", "show", "dash").out)

    def test_things_may_be_called_like_commands(self):
        self.make_book()
        self.ok("person", "add", "export")
        self.ok("food", "add", "list", "--note", "record")
        self.assertIn("export", self.ok("person", "show", "export").out)
        self.assertIn("record", self.ok("food", "show", "list").out)


if __name__ == "__main__":
    unittest.main()
