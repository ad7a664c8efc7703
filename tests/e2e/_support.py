"""Runs the program for the end-to-end tests: an empty home, a fixed day, a fixed zone and locale, no other environment."""
import json
import os
import pathlib
import subprocess
import tempfile
import unittest

BINARY = os.environ["LARDERLOOP_BIN"]
SOURCE = pathlib.Path(os.environ["LARDERLOOP_SRC"])
SCALE = float(os.environ.get("LARDERLOOP_TEST_SCALE", "1"))
NOW = "2027-03-01"


class Answer:
    """What one run said and how it ended."""

    def __init__(self, arguments, code, out, err):
        self.arguments, self.code, self.out, self.err = arguments, code, out, err

    @property
    def json(self):
        return json.loads(self.out)

    @property
    def error(self):
        return json.loads(self.err)

    def __str__(self):
        return f"larderloop {' '.join(self.arguments)}\nexit {self.code}\n-- out\n{self.out}-- err\n{self.err}"


class ProgramTest(unittest.TestCase):
    """A test with a folder of its own, and a book in it once make_book() was called."""

    maxDiff = None

    def setUp(self):
        self._folder = tempfile.TemporaryDirectory(prefix="larderloop-test-")
        self.addCleanup(self._folder.cleanup)
        self.folder = pathlib.Path(self._folder.name)
        self.home = self.folder / "home"
        self.home.mkdir()
        self.book = self.folder / "household.book"
        self.env = {
            "HOME": str(self.home),
            "PATH": "/usr/bin:/bin",
            "TZ": "UTC",
            "LC_ALL": "C.UTF-8",
            "LARDERLOOP_NOW": NOW,
            "LARDERLOOP_BOOK": str(self.book),
        }
        # Sanitizer settings of the build under test are not the program's environment, but its instruments'.
        for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS", "LSAN_OPTIONS"):
            if name in os.environ:
                self.env[name] = os.environ[name]

    def command(self, arguments):
        return [BINARY, *[each if isinstance(each, bytes) else str(each) for each in arguments]]

    def run_bytes(self, *arguments, stdin=b"", env=None, **more):
        return subprocess.run(
            self.command(arguments),
            input=stdin,
            stdout=more.pop("stdout", subprocess.PIPE),
            stderr=subprocess.PIPE,
            env={**self.env, **(env or {})},
            cwd=self.folder,
            timeout=120,
            check=False,
            **more,
        )

    def run_it(self, *arguments, stdin="", env=None, **more):
        done = self.run_bytes(*arguments, stdin=stdin.encode(), env=env, **more)
        out = (done.stdout or b"").decode("utf-8")
        return Answer([str(each) for each in arguments], done.returncode, out, done.stderr.decode("utf-8"))

    def ok(self, *arguments, **more):
        answer = self.run_it(*arguments, **more)
        self.assertEqual(answer.code, 0, str(answer))
        return answer

    def refused(self, code, *arguments, **more):
        """The run fails with this code, says why and what next, and prints no result."""
        answer = self.run_it(*arguments, **more)
        self.assertEqual(answer.code, code, str(answer))
        self.assertTrue(answer.err.startswith("larderloop: ") or answer.err.startswith("{"), str(answer))
        self.assertEqual(answer.out, "", str(answer))
        return answer

    def export(self):
        return self.ok("export").out

    def assert_unchanged(self, *arguments, code=3):
        """Refused, and the book holds exactly what it held before."""
        before = self.export()
        answer = self.refused(code, *arguments)
        self.assertEqual(self.export(), before, str(answer))
        return answer

    def make_book(self):
        """Three people, a cat, a kit with bags and a menu, a pantry, some foods; no lots yet."""
        document = self.folder / "household.json"
        document.write_text(json.dumps(household()), encoding="utf-8")
        self.ok("new", self.book, "--from", document)

    def add_lot(self, food, units, at, *more):
        answer = self.ok("lot", "add", food, "--units", units, "--at", at, "--json", *more)
        return answer.json["data"]["lot"]

    def on_hand(self, lot):
        """Half servings of the lot by (place, opened_on)."""
        data = self.ok("lot", "show", lot, "--json").json["data"]
        return {(each["place"], each["opened_on"]): halves(each["amount"]) for each in data["lies"]}


def halves(amount):
    assert amount["unit"] == "serving", amount
    return round(float(amount["value"]) * 2)


def household():
    """A household document with invented people and generic foods. Mira avoids sesame; Jon keeps no diet; Ada avoids milk."""
    return {
        "format": "larderloop.household",
        "version": 1,
        "book_id": "6b1f0f0c-4f43-4c2c-9e55-0d8f6b7a1c11",
        "people": [
            {"key": "ada", "name": "Ada", "born": "2019-05-04", "appetite": 0.5, "avoid": [{"key": "milk"}]},
            {"key": "jon", "name": "Jon"},
            {"key": "mira", "name": "Mira", "avoid": [{"key": "sesame"}]},
            {"key": "tomte", "name": "Tomte", "species": "cat"},
        ],
        "foods": [
            food("cat-food", "Cat food", kind="pet_food", species="cat", roles=["pet_meal"]),
            food("jam-jar", "Plum jam", unit="jar", servings=6, meals=["breakfast"], storage={"opened_days": 20}),
            food("lentil-pouch", "Lentil stew", unit="pouch", meals=["dinner", "lunch"], roles=["main"],
                 label={"contains": ["mustard"], "may_contain": [], "suits": ["vegan"], "read_by": "Mira", "read_on": "2026-10-03"}),
            food("oat-bar", "Oat bar", unit="bar", meals=["snack"], roles=["snack"],
                 label={"contains": ["gluten", "milk"], "may_contain": ["sesame"], "suits": [], "read_by": "Mira", "read_on": "2026-10-03"}),
        ],
        "places": [
            {"key": "bag-ada", "name": "Ada's bag", "kind": "bag", "parent": "box-1"},
            {"key": "bag-jon", "name": "Jon's bag", "kind": "bag", "parent": "box-1"},
            {"key": "bag-mira", "name": "Mira's bag", "kind": "bag", "parent": "box-1"},
            {"key": "box-1", "name": "Box 1", "kind": "box", "parent": "home-kit"},
            {"key": "home-kit", "name": "Home kit", "kind": "kit"},
            {"key": "pantry", "name": "Pantry", "kind": "pantry"},
            {"key": "shelf-1", "name": "Upper shelf", "kind": "shelf", "parent": "pantry"},
        ],
        "review_rules": [{"kit": "home-kit", "rule": "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1SA", "starts": "2026-04-04"}],
        "menu": [
            {"id": 1, "place": "bag-ada", "people": ["ada"], "day": 1, "meal": "dinner", "role": "main", "units": 1},
            {"id": 2, "place": "bag-jon", "people": ["jon"], "day": 1, "meal": "dinner", "role": "main", "units": 1},
            {"id": 3, "place": "bag-mira", "people": ["mira"], "day": 1, "meal": "dinner", "role": "main", "units": 1},
            {"id": 4, "place": "box-1", "everyone": True, "day": 1, "meal": "snack", "role": "snack", "units": 2},
        ],
    }


def food(key, name, **more):
    return {"key": key, "name": name, **more}
