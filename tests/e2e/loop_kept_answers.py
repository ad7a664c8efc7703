"""nudge and calendar give a kept answer only while book, day and program are the same, and it is the one they would work out."""
import time
import unittest

from _demo import DemoTest


class KeptAnswers(DemoTest):
    def setUp(self):
        super().setUp()
        self.cache = self.folder / "cache"
        self.env["XDG_CACHE_HOME"] = str(self.cache)
        self.ok("calendar")  # what is kept in the book is there from now on

    def settle(self):
        time.sleep(0.25)  # a book that changed a moment ago is never trusted

    def fresh(self, *arguments):
        """Worked out anew: with a cache folder that cannot be made."""
        return self.ok(*arguments, env={"XDG_CACHE_HOME": "/dev/null/nowhere"}).out

    def files(self):
        return sorted((self.cache / "larderloop").glob("answer-*"))

    def test_the_kept_answer_is_the_worked_out_one(self):
        for command in (["nudge"], ["nudge", "--json"], ["calendar"], ["calendar", "--json"]):
            self.settle()
            first = self.ok(*command).out
            count = len(self.files())
            self.assertGreater(count, 0)
            self.assertEqual(self.ok(*command).out, first)
            self.assertEqual(self.fresh(*command), first)
            self.assertEqual(len(self.files()), count)
        self.assertEqual(self.run_it("nudge", "--exit-code").code, 1)

    def test_it_is_really_taken_from_the_folder(self):
        self.settle()
        text = self.ok("nudge").out
        (kept,) = self.files()
        changed = kept.read_bytes().replace(b"Review the Home kit", b"Review the Hone kit")
        self.assertNotEqual(changed, kept.read_bytes())
        kept.write_bytes(changed)
        self.assertEqual(self.ok("nudge").out, text.replace("Home kit\n", "Hone kit\n", 1))

    def test_every_change_of_the_book_is_seen_at_once(self):
        for change in (["record", "eaten", "98", "1", "--at", "first", "--who", "jorik", "--meal", "breakfast"],
                       ["lot", "state", "209", "recalled"],
                       ["person", "change", "mira", "--avoid", "celery"],
                       ["review", "start", "home-kit"],
                       ["review", "finish", "home-kit"]):
            self.settle()
            before = self.ok("nudge").out
            self.ok(*change)
            after = self.ok("nudge").out
            self.assertEqual(after, self.fresh("nudge"), change)
            if change[0] != "person":
                self.assertNotEqual(after, before, change)
            # A small change need not change the file's size, and once it has settled only the file's times tell of it.
            self.settle()
            self.ok("lot", "state", "201", "doubtful")
            self.settle()
            self.assertEqual(self.ok("nudge").out, self.fresh("nudge"), change)
            self.ok("lot", "state", "201", "ok")
            self.settle()
            self.assertEqual(self.ok("nudge").out, self.fresh("nudge"), change)

    def test_another_day_or_zone_is_another_answer(self):
        self.settle()
        first = self.ok("nudge").out
        self.on("2027-04-04")
        self.assertEqual(self.ok("nudge").out, self.fresh("nudge"))
        self.assertNotEqual(self.ok("nudge").out, first)

    def test_damaged_files_are_worked_out_again(self):
        self.settle()
        text = self.ok("nudge").out
        (kept,) = self.files()
        whole = kept.read_bytes()
        for spoiled in (b"", b"\n", whole[:-1], whole[:40], b"\xff" * 400, whole + b"x"):
            kept.write_bytes(spoiled)
            self.assertEqual(self.ok("nudge").out, text)
        self.assertEqual((self.cache / "larderloop").stat().st_mode & 0o777, 0o700)

    def test_a_dry_run_keeps_and_recalls_nothing(self):
        self.settle()
        self.ok("nudge", "-n")
        self.assertEqual(self.files(), [])


if __name__ == "__main__":
    unittest.main()
