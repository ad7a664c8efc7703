"""The walk through a kit as it is done: single keys on a terminal (a pseudo-terminal here), lines from a script, stopping and going on."""
import json
import os
import pty
import select
import subprocess
import time
import unittest

from _support import ProgramTest

DAY = "2027-04-03"


class Terminal:
    """The program on a terminal of its own, 40 columns wide."""

    def __init__(self, test, *arguments):
        self.master, slave = pty.openpty()
        self.text = ""
        self.process = subprocess.Popen(test.command(arguments), stdin=slave, stdout=slave, stderr=slave, env={**test.env, "COLUMNS": "40", "TERM": "xterm"},
                                        cwd=test.folder, start_new_session=True)
        os.close(slave)

    def until(self, words, since=0):
        deadline = time.monotonic() + 60
        while words not in self.text[since:]:
            ready, _, _ = select.select([self.master], [], [], 1)
            if ready:
                try:
                    self.text += os.read(self.master, 4096).decode("utf-8", "replace").replace("\r\n", "\n")
                    continue
                except OSError:
                    pass
            if self.process.poll() is not None or time.monotonic() > deadline:
                raise AssertionError(f"{words!r} did not come:\n{self.text}")
        return len(self.text)

    def press(self, keys, then):
        before = len(self.text)
        os.write(self.master, keys.encode())
        return self.until(then, before)

    def end(self):
        self.process.wait(60)
        os.close(self.master)
        return self.process.returncode


class Walk(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.jon = self.add_lot("lentil-pouch", 3, "bag-jon", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        self.bars = self.add_lot("oat-bar", 4, "bag-jon", "--date", "2028-04", "--label-read-by", "Jon", "--label-same-as-food")
        self.mira = self.add_lot("lentil-pouch", 2, "bag-mira", "--date", "2028-06", "--label-read-by", "Jon", "--label-same-as-food")
        self.env["LARDERLOOP_NOW"] = DAY

    def marks(self):
        return [(each["lot"], each["what"]) for each in json.loads(self.export()).get("review_marks", [])]

    def test_single_keys_undo_pause_and_going_on(self):
        terminal = Terminal(self, "review", "walk", "home-kit")
        terminal.until("Jon's bag (1 of 2)")
        terminal.until(f"lot {self.jon} ? ")
        self.assertLessEqual(max(len(line) for line in terminal.text.splitlines() if "lot " in line), 42)
        terminal.press("m", "How many of 3? ")
        terminal.press("1\n", "Oat bar")
        terminal.press("\x1b[A", "undo")  # an arrow is no key of ours, and nothing of it is taken for one
        terminal.press("u", "taken back")
        terminal.press("m", "How many of 3? ")
        terminal.press("2\n", "Oat bar")
        terminal.press("r", "as it is printed")
        terminal.press("03/04/28\n", "could be")
        terminal.press("r", "as it is printed")
        terminal.press("BBE 03 2028\n", "Mira's bag (2 of 2)")
        terminal.press("p", "not looked at")
        self.assertEqual(terminal.end(), 0)
        self.assertIn("0 there, 1 missing, 0 damaged, 1 with another date", " ".join(terminal.text.split()))
        self.assertIn("1 not looked at", terminal.text)
        self.assertEqual(self.marks(), [(self.jon, "missing"), (self.bars, "redated")])

        terminal = Terminal(self, "review", "walk")
        terminal.until("Mira's bag")
        self.assertNotIn("Jon's bag", terminal.text)  # what was marked is not asked again
        terminal.press("e", "put it into")
        self.assertEqual(terminal.end(), 0)
        self.assertEqual(self.on_hand(self.mira), {("shelf-1", None): 4})

        self.ok("review", "finish", "home-kit")
        self.assertEqual(self.on_hand(self.jon), {("bag-jon", None): 2})
        self.assertEqual(self.ok("lot", "show", self.bars, "--json").json["data"]["mark"]["day"], "2028-03-31")

    def test_an_interrupt_keeps_the_marks_and_gives_the_terminal_back(self):
        terminal = Terminal(self, "review", "walk")
        terminal.until(f"lot {self.jon} ? ")
        terminal.press("d", "How many of 3? ")
        terminal.press("\n", f"lot {self.bars} ? ")
        terminal.press("\x03", "not looked at")
        self.assertEqual(terminal.end(), 0)
        self.assertEqual(self.marks(), [(self.jon, "damaged")])

    def test_what_was_taken_back_was_not_looked_at(self):
        """The last key leaves nothing behind; of an earlier one it is said that it counts as there."""
        answer = self.ok("review", "walk", stdin="t\nu\np\n")
        self.assertEqual(self.marks(), [])
        self.assertIn("0 there", answer.out)
        self.assertIn("3 not looked at", answer.out)
        self.assertNotIn("counts as there", answer.err)
        self.ok("review", "walk", stdin="m\n1\nu\nl\np\n")
        self.assertEqual(self.marks(), [])
        answer = self.ok("review", "walk", stdin="d\n1\nt\nu\nu\np\n")
        self.assertIn("until you answer again it counts as there", answer.err)
        self.assertEqual(self.marks(), [(self.jon, "damaged"), (self.jon, "there")])
        self.ok("review", "finish", "home-kit")
        self.assertEqual(self.on_hand(self.jon), {("bag-jon", None): 6})

    def test_eating_now_is_undone_by_entries(self):
        self.ok("review", "walk", "--plain", stdin="eat\nu\nt\np\n")
        self.assertEqual(self.on_hand(self.jon), {("bag-jon", None): 6})
        self.assertEqual(self.marks(), [(self.jon, "there")])

    def test_lines_of_a_script_do_the_same(self):
        answer = self.ok("review", "walk", stdin="t\nd\n1\nl\n")
        self.assertIn("1 there, 0 missing, 1 damaged", answer.out)
        self.assertIn("1 not looked at", answer.out)
        self.assertEqual(self.marks(), [(self.jon, "there"), (self.bars, "damaged")])

    def test_a_dry_run_writes_nothing(self):
        self.ok("review", "start", "home-kit")
        before = self.export()
        self.ok("review", "walk", "-n", stdin="m\n\nt\ne\n")
        self.assertEqual(self.export(), before)


if __name__ == "__main__":
    unittest.main()
