"""Several writers at once, a locked book, and a program that is killed in the middle."""
import os
import signal
import sqlite3
import subprocess
import time
import unittest

from _support import BINARY, SCALE, ProgramTest


class Crash(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()
        self.lot = self.add_lot("lentil-pouch", 10000, "pantry", "--date", "2028-05")

    def start(self, *arguments):
        return subprocess.Popen([BINARY, *[str(each) for each in arguments]], env=self.env, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                                cwd=self.folder)

    def eaten(self):
        data = self.ok("record", "list", "--lot", self.lot, "--json").json["data"]
        return [each["entry"] for each in data if each["kind"] == "eaten"]

    def test_writers_at_once_lose_nothing(self):
        writers = [self.start("record", "eaten", self.lot, "1", "--note", f"writer {number}") for number in range(8)]
        for writer in writers:
            writer.communicate(timeout=120)
        done = sum(writer.returncode == 0 for writer in writers)
        # A busy book is said with its own code, never anything else.
        self.assertTrue({writer.returncode for writer in writers} <= {0, 7}, [writer.returncode for writer in writers])
        self.assertEqual(len(self.eaten()), done)
        self.assertEqual(len(set(self.eaten())), done)
        self.assertGreaterEqual(done, 5)
        self.ok("check")

    def test_locked_book_is_code_7_and_can_still_be_read(self):
        raw = sqlite3.connect(self.book, isolation_level=None)
        raw.execute("BEGIN IMMEDIATE")
        try:
            self.assertIn("hint: ", self.refused(7, "record", "eaten", self.lot, "1").err)
            self.ok("lot", "list")
        finally:
            raw.execute("ROLLBACK")
            raw.close()
        self.ok("record", "eaten", self.lot, "1")

    def test_killed_in_the_middle_keeps_what_was_said(self):
        acknowledged = 0
        rounds = 0
        end = time.monotonic() + 10 * SCALE
        delay = 0.0005
        while time.monotonic() < end and rounds < 60 * SCALE:
            writer = self.start("record", "eaten", self.lot, "1")
            time.sleep(delay)
            writer.send_signal(signal.SIGKILL)
            _, err = writer.communicate(timeout=60)
            if err.startswith(b"eaten: "):
                acknowledged += 1
            # Sweeps the whole life of the program, from its start to its end.
            delay = delay * 1.25 if delay < 0.5 and writer.returncode != 0 else 0.0005
            rounds += 1
            if rounds % 10 == 0:
                self.ok("check")
        self.assertGreaterEqual(rounds, 10)
        self.ok("check")
        entries = self.eaten()
        # What was said is there; of each killed run there is at most the one entry that it was about.
        self.assertGreaterEqual(len(entries), acknowledged)
        self.assertLessEqual(len(entries), rounds)
        left = sum(self.on_hand(self.lot).values())
        self.assertEqual(left, 2 * (10000 - len(entries)))
        self.ok("record", "eaten", self.lot, "1")

    def test_signals_end_it_by_that_signal(self):
        read_end, write_end = os.pipe()
        for number in (signal.SIGTERM, signal.SIGINT):
            waiting = subprocess.Popen([BINARY, "new", "x.book", "--from", "-"], env=self.env, stdin=read_end, stdout=subprocess.PIPE,
                                       stderr=subprocess.PIPE, cwd=self.folder)
            time.sleep(0.3)
            waiting.send_signal(number)
            waiting.communicate(timeout=60)
            self.assertIn(waiting.returncode, (-number, 128 + number))
        os.close(write_end)
        os.close(read_end)
        self.assertFalse((self.folder / "x.book").exists())


if __name__ == "__main__":
    unittest.main()
