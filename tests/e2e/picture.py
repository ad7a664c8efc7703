"""The pictures: well-formed SVG whose bars stand for the numbers of the reports, readable without colour, with hard names, and drawn by
librsvg (rsvg-convert) as an independent reader."""
import collections
import datetime
import json
import re
import shutil
import subprocess
import unittest
import xml.etree.ElementTree as ElementTree

from _demo import DEMO, HOLD_UNTIL, REVIEW_DAY, DemoTest
from _support import halves

SVG = "{http://www.w3.org/2000/svg}"
FSI, PDI = "\u2068", "\u2069"


def days(text):
    return datetime.date.fromisoformat(text).toordinal()


def words(element):
    return "".join(element.itertext())


class Pictures(DemoTest):
    def draw(self, *arguments):
        root = ElementTree.fromstring(self.ok("picture", *arguments).out)
        self.assertEqual(root.tag, SVG + "svg")
        self.assertEqual(root.get("role"), "img")
        labelled = root.get("aria-labelledby").split()
        for name, each in zip(labelled, ("title", "desc")):
            self.assertEqual(root.find(f"{SVG}{each}").get("id"), name)
            self.assertGreater(len(words(root.find(f"{SVG}{each}"))), 20)
        left, top, self.width, self.height = map(float, root.get("viewBox").split())
        self.assertEqual((left, top, self.width), (0, 0, 480))
        self.assertIsNone(root.get("width"), "it fits whatever it stands in")
        for each in root.iter(SVG + "rect"):
            self.assertLessEqual(float(each.get("x", 0)) + float(each.get("width")), self.width)
            self.assertLessEqual(float(each.get("y", 0)) + float(each.get("height")), self.height)
        for each in root.iter():
            for name in ("fill", "stroke"):
                self.assertIn(each.get(name, "none"), ("none", "#000", "#fff", "#ddd", "url(#hatched)", "url(#crossed)", "url(#dotted)"), "no colours")
            self.assertNotIn(each.tag, (SVG + "script", SVG + "image", SVG + "a"))
        return root

    def groups(self, root, kind):
        return [each for each in root.iter(SVG + "g") if each.get("class") == kind]

    def bar(self, group):
        """The bars of a group, left to right, without the white behind words."""
        return [(float(each.get("x")), float(each.get("width")), each.get("fill")) for each in group.iter(SVG + "rect") if each.get("stroke")]

    def test_the_timeline_has_what_lies_in_the_kit(self):
        root = self.draw("timeline", "--kit", "home-kit")
        expected = collections.Counter()
        leaving = collections.Counter()
        for line in self.sheet_lines():
            key = (line["food"], line["good_through"] or "")
            expected[key] += halves(line["amount"])
            leaving[key] += halves(line["amount"]) if line["leaves"] else 0
        drawn, gone = collections.Counter(), collections.Counter()
        for group in self.groups(root, "lot"):
            key = (group.get("data-food"), group.get("data-day"))
            drawn[key] += int(group.get("data-half-servings"))
            if group.get("data-state") not in ("lasts",) and self.bar(group)[0][2] != "url(#dotted)":
                gone[key] += int(group.get("data-half-servings"))
                self.assertIn(group.get("data-state"), words(group), "a pattern never speaks alone")
        self.assertEqual(drawn, expected)
        self.assertEqual(+gone, +leaving)
        self.assertGreater(sum(gone.values()), 20)

    def test_the_days_of_the_timeline_lie_on_one_scale(self):
        root = self.draw("timeline", "--kit", "home-kit")
        places = {}
        for group in self.groups(root, "lot"):
            for x, width, _ in self.bar(group):
                day = days(group.get("data-day"))
                places[day] = x if day < days(REVIEW_DAY) else x + width
        inside = sorted((day, x) for day, x in places.items() if x < 469 and day > days(REVIEW_DAY))
        (first, left), (last, right) = inside[0], inside[-1]
        self.assertGreater(len(inside), 20)
        for day, x in inside:
            self.assertAlmostEqual(x, left + (right - left) * (day - first) / (last - first), delta=0.3)
        self.assertIn("and longer", words(root), "what is beyond the scale says so")

    def test_the_timeline_marks_today_the_reviews_and_the_hold_until_date(self):
        root = self.draw("timeline", "--kit", "home-kit")
        self.assertEqual([each.get("data-day") for each in self.groups(root, "today")], [REVIEW_DAY])
        self.assertEqual([each.get("data-day") for each in self.groups(root, "hold-until")], [HOLD_UNTIL])
        told = [each["day"] for each in self.data("review", "dates", "--all")["reviews"] if each["kit"] == "home-kit"]
        drawn = [each.get("data-day") for each in self.groups(root, "review")]
        self.assertGreaterEqual(len(drawn), 3)
        self.assertLess(set(drawn), set(told))
        self.assertIn("review due, Sat 3 Apr 2027", words(root))

    def test_soonest_first(self):
        drawn = [each.get("data-day") for each in self.groups(self.draw("timeline", "--kit", "home-kit"), "lot")]
        dated = [each for each in drawn if each]
        self.assertEqual(dated, sorted(dated))
        self.assertEqual(drawn[: len(dated)], dated, "what has no date stands at the end")

    def test_the_stock_by_bag_is_that_of_the_sheets(self):
        root = self.draw("stock")
        foods = {each["food"]: each for each in self.data("food", "list")}
        expected = {}
        hold = {kit: self.data("review", "sheet", kit)["schedule"]["hold_until"] for kit in ("car-kit", "home-kit")}
        for kit in ("car-kit", "home-kit"):
            for place in self.data("review", "sheet", kit)["places"]:
                bag = expected.setdefault(place["place"], collections.Counter())
                for line in place["lines"]:
                    kind = foods[line["food"]]["kind"]
                    if kind == "thing":
                        bag["things"] += halves(line["amount"]) // 2
                    elif kind == "water":
                        ml = halves(line["amount"]) * int(foods[line["food"]]["volume"]["value"]) // 2
                        bag["water"] += ml
                        bag["due"] += ml if line["good_through"] and line["good_through"] < hold[kit] else 0
                    else:
                        bag["stays" if not line["leaves"] else "leaves"] += halves(line["amount"])
        drawn = {}
        scales = set()
        for group in self.groups(root, "bag"):
            number = {name: int(group.get(f"data-{name}")) for name in ("lasts", "will-not-last", "not-good", "things", "water-ml", "water-due-ml")}
            drawn[group.get("data-place")] = +collections.Counter(
                things=number["things"], water=number["water-ml"], due=number["water-due-ml"], stays=number["lasts"], leaves=number["will-not-last"] + number["not-good"])
            parts = [number[name] for name in ("lasts", "will-not-last", "not-good") if number[name]]
            bars = self.bar(group)
            self.assertEqual(len(bars), len(parts))
            self.assertEqual("due by then" in words(group), number["water-due-ml"] > 0)
            for (x, width, _), part in zip(bars, parts):
                if part >= 10:
                    scales.add(round(width / part, 1))
            total = sum(parts)
            if total:
                self.assertIn(f"{total / 2:g} serving", words(group))
        self.assertEqual(drawn, {place: +bag for place, bag in expected.items()})
        self.assertLessEqual(len(scales), 2, f"one scale for all: {scales}")
        one = self.draw("stock", "--kit", "car-kit")
        self.assertEqual({each.get("data-place") for each in self.groups(one, "bag")}, {each["place"] for each in self.data("review", "sheet", "car-kit")["places"]})

    def test_the_years_are_those_of_history(self):
        root = self.draw("history")
        history = self.data("history")
        for row, worth in zip(history["years"], history["worth"]["years"]):
            for kind, name in (("eaten", "eaten"), ("given-away", "given_away"), ("thrown-out", "thrown_out")):
                group = next(each for each in self.groups(root, kind) if each.get("data-year") == str(row["year"]))
                self.assertEqual(int(group.get("data-half-servings")), halves(row[name]))
                self.assertIn(f"{row[name]['value']} serving", words(group))
                self.assertEqual(len(self.bar(group)), 1 if halves(row[name]) else 0)
            cents = worth["thrown_out"]["cents"]
            self.assertIn(f"{cents // 100}.{cents % 100:02} {history['worth']['currency']}", words(group))
        self.assertEqual(len(self.groups(root, "eaten")), len(history["years"]))

    def test_hard_names_are_cut_escaped_and_keep_their_direction(self):
        document = json.loads(DEMO.read_text(encoding="utf-8"))
        arabic = "\u0639\u0635\u064a\u0631 \u0627\u0644\u062a\u0641\u0627\u062d"
        hard = {"oat-bar": "A <very> long & \"quoted\" name that nobody prints on one line", "muesli-pot": arabic, "rice-cakes": "Rice\u202e cakes"}
        for food in document["foods"]:
            food["name"] = hard.get(food["key"], food["name"])
        for place in document["places"]:
            if place["key"] == "home-kit":
                place["name"] = "<Kit> & " + arabic
        source = self.folder / "hard.json"
        source.write_text(json.dumps(document), encoding="utf-8")
        book = self.folder / "hard.book"
        self.ok("new", book, "--from", source)
        self.book = book
        root = ElementTree.fromstring(self.ok("--book", book, "picture", "timeline", "--kit", "home-kit").out)
        texts = [each.text for each in root.iter(SVG + "text")]
        self.assertTrue(any(each.endswith("\u2026" + PDI) and "A <very> long" in each for each in texts))
        self.assertTrue(any(FSI + arabic + PDI in each for each in texts), "in an isolate, so that amounts and dates keep their places")
        self.assertFalse(any("\u202e" in each for each in texts))
        self.assertIn("<Kit> & ", words(root.find(SVG + "title")))
        self.assertEqual(root.get("direction"), "ltr")

    def test_an_independent_reader_draws_it(self):
        target = self.folder / "kit.svg"
        for what in (["timeline", "--kit", "home-kit"], ["stock"], ["history"]):
            told = self.ok("picture", *what, "-o", target, "--json").json["data"]
            root = ElementTree.parse(target).getroot()
            self.assertEqual(told["bars"], sum(1 for each in root.iter(SVG + "g") if each.get("class")))
            width, height = map(float, root.get("viewBox").split()[2:])
            for across in (360, 1240):  # a phone; A4 at 150 points an inch
                png = subprocess.run([shutil.which("rsvg-convert"), "-w", str(across), target], stdout=subprocess.PIPE, check=True, timeout=300).stdout
                self.assertEqual(png[:8], b"\x89PNG\r\n\x1a\n")
                size = (int.from_bytes(png[16:20], "big"), int.from_bytes(png[20:24], "big"))
                self.assertEqual(size[0], across)
                self.assertAlmostEqual(size[1], across * height / width, delta=2)

    def test_an_empty_book_has_empty_pictures(self):
        empty = self.folder / "empty.book"
        self.ok("new", empty)
        for what in ("stock", "history"):
            root = ElementTree.fromstring(self.ok("--book", empty, "picture", what).out)
            self.assertEqual([each for each in root.iter(SVG + "g") if each.get("class")], [])
        self.assertEqual(self.run_it("--book", empty, "picture", "timeline").code, 4)

    def test_what_is_refused(self):
        self.assertEqual(self.run_it("picture", "timeline").code, 2, "two kits, none named")
        self.assertEqual(self.run_it("picture", "history", "--kit", "home-kit").code, 2)
        self.assertEqual(self.run_it("picture", "stock", "--json").code, 2)
        wrong = self.run_it("picture", "stok")
        self.assertIn("stock", wrong.err)
        self.assertNotEqual(wrong.code, 0)
        self.assertIsNone(re.search("<svg", wrong.out))


if __name__ == "__main__":
    unittest.main()
