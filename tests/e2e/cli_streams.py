"""Where output goes: full disks, closed pipes, control characters, locales, colour, JSON."""
import os
import pty
import subprocess
import unittest

from _support import ProgramTest

READING = (
    ("export",), ("check",), ("person", "list"), ("person", "show", "mira"), ("food", "list"), ("food", "show", "lentil-pouch"),
    ("place", "list"), ("place", "show", "box-1"), ("lot", "list"), ("lot", "show", "1"), ("record", "list"),
)


class Streams(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.lot = self.add_lot("lentil-pouch", 6, "pantry", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")

    def test_full_disk_is_code_8(self):
        for arguments in (*READING, ("--help",), ("--version",), ("help", "lot", "add")):
            if arguments == ("check",):
                arguments = ("check", "--json")
            with self.subTest(arguments=arguments), open("/dev/full", "wb") as full:
                answer = self.run_it(*arguments, stdout=full)
                self.assertEqual(answer.code, 8, str(answer))
                self.assertIn("standard output", answer.err)

    def test_closed_output_is_code_8(self):
        done = subprocess.run(["/bin/sh", "-c", '"$0" lot list >&-', self.command(())[0]], env=self.env, capture_output=True, timeout=60,
                              check=False)
        self.assertEqual(done.returncode, 8, done)

    def test_a_file_that_would_not_change_keeps_its_times(self):
        target = self.folder / "household.json"
        self.ok("export", "-o", target)
        before, held = target.stat(), target.read_bytes()
        self.assertIn("is up to date", self.ok("export", "-o", target).err)
        self.assertEqual(target.stat().st_mtime_ns, before.st_mtime_ns)
        self.assertEqual(target.stat().st_ino, before.st_ino)
        target.write_bytes(held.replace(b"a", b"e", 1))  # as long as before
        self.assertIn("wrote", self.ok("export", "-o", target).err)
        self.assertEqual(target.read_bytes(), held)

    def test_closed_pipe_is_quiet(self):
        for arguments in READING:
            with self.subTest(arguments=arguments):
                read_end, write_end = os.pipe()
                os.close(read_end)
                with os.fdopen(write_end, "wb") as pipe:
                    answer = self.run_it(*arguments, "-q", stdout=pipe)
                self.assertEqual((answer.code, answer.err), (0, ""), str(answer))

    def test_failing_output_does_not_lose_what_was_recorded(self):
        with open("/dev/full", "wb") as full:
            answer = self.run_it("record", "eaten", self.lot, "1", "--json", stdout=full)
        self.assertEqual(answer.code, 8)
        self.assertEqual(self.on_hand(self.lot), {("pantry", None): 10})

    def test_json_everywhere(self):
        names = {"check": "findings", "person list": "people", "person show": "person", "food list": "foods", "food show": "food",
                 "place list": "places", "place show": "place", "lot list": "lots", "lot show": "lot", "record list": "entries"}
        for arguments in READING[1:]:
            with self.subTest(arguments=arguments):
                answer = self.ok(*arguments, "--json")
                self.assertEqual(list(answer.json), ["schema", "as_of", "data"])
                self.assertEqual(answer.json["schema"], f"larderloop.{names[' '.join(arguments[:2])]}/1")
                self.assertEqual(answer.json["as_of"], "2027-03-01")
                self.assertTrue(answer.out.endswith("\n"))

    def test_control_characters_are_shown_escaped(self):
        hostile = "\x1b[31mRed\x07 \u202etxet"
        answer = self.run_it("person", "add", "--key", "hostile", hostile)
        if answer.code == 0:
            shown = self.ok("person", "list").out + self.ok("person", "show", "hostile").out + answer.err
            self.assertIn("\\x1b[31m", shown)
        else:
            self.assertEqual(answer.code, 3, str(answer))
            shown = answer.err
        for character in ("\x1b", "\x07", "\u202e"):
            self.assertNotIn(character, shown)

    def test_bytes_that_are_no_text(self):
        before = self.export()
        done = self.run_bytes("person", "add", b"\xff\xfeEva")
        self.assertEqual(done.returncode, 3, done)
        done.stderr.decode("utf-8")
        self.assertEqual(self.export(), before)

    def test_no_locale_changes_anything(self):
        for locale in ("C", "de_DE.UTF-8", "tr_TR.UTF-8", "nonsense", "ar_EG.UTF-8"):
            env = {"LC_ALL": locale, "LANG": locale, "LC_NUMERIC": locale}
            for arguments in (*READING, ("record", "eaten", self.lot, "0.5 servings", "-n"), ("help", "lot", "add")):
                with self.subTest(locale=locale, arguments=arguments):
                    plain, other = self.ok(*arguments), self.ok(*arguments, env=env)
                    self.assertEqual((plain.out, plain.err), (other.out, other.err))
            self.refused(3, "record", "eaten", self.lot, "0,5 servings", env=env)

    def terminal(self, *arguments, **env):
        """What the program writes when its standard output and error are a terminal."""
        leader, follower = pty.openpty()
        process = subprocess.Popen(self.command(arguments), stdin=follower, stdout=follower, stderr=follower,
                                   env={**self.env, "TERM": "xterm", **env}, cwd=self.folder)
        os.close(follower)
        text = b""
        while True:
            try:
                part = os.read(leader, 65536)
            except OSError:  # the last writer closed its end
                break
            if not part:
                break
            text += part
        os.close(leader)
        process.wait(timeout=60)
        return text.decode("utf-8")

    def test_colour_only_on_a_terminal_and_only_when_wanted(self):
        wrong = ("lot", "show", "99")
        self.assertIn("\x1b[1m", self.terminal(*wrong))
        self.assertNotIn("\x1b", self.terminal(*wrong, NO_COLOR="1"))
        self.assertNotIn("\x1b", self.terminal(*wrong, TERM="dumb"))
        self.assertNotIn("\x1b", self.terminal(*wrong, "--color=never"))
        self.assertIn("\x1b[1m", self.terminal(*wrong, "--color=always", NO_COLOR="1"))
        self.assertNotIn("\x1b", self.run_it(*wrong).err)
        self.assertIn("\x1b[1m", self.run_it(*wrong, "--color=always").err)

    def test_a_table_fits_the_terminal_and_is_whole_in_a_pipe(self):
        self.ok("place", "change", "pantry", "--name", "The pantry " + "behind the stairs " * 6)
        narrow = self.terminal("lot", "list", COLUMNS="60")
        self.assertLessEqual(max(len(line) for line in narrow.splitlines()), 60, narrow)
        self.assertIn("behind the stairs " * 5, self.ok("lot", "list", env={"COLUMNS": "60"}).out)


if __name__ == "__main__":
    unittest.main()
