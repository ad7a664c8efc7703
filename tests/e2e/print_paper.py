"""What is printed, read back by others: poppler (pages, words, places, pictures), zbar (codes), Python's own reader of HTML.

Sizes of sheets: ISO 216 (A4, 210 x 297 mm) and US Letter (8.5 x 11 in).
"""
import html.parser
import json
import re
import subprocess
import unittest

from _demo import DemoTest
from _support import ProgramTest, household

PAPERS = ["labels", "box-card", "review-sheet", "menu-card", "household", "replacement-list"]
ISOLATES = re.compile("[\u2066-\u2069\u200e\u200f\u202a-\u202e]")
DOTS = 10  # a millimetre, in the pictures below


def tool(*arguments):
    return subprocess.run([str(each) for each in arguments], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=True, timeout=120).stdout


def about(path):
    text = tool("pdfinfo", path).decode("utf-8")
    width, height = map(float, re.search(r"Page size: +([0-9.]+) x ([0-9.]+) pts", text).groups())
    return int(re.search(r"Pages: +(\d+)", text).group(1)), width / 72 * 25.4, height / 72 * 25.4


def words(path, *options):
    return ISOLATES.sub("", tool("pdftotext", *options, path, "-").decode("utf-8"))


def squeezed(text):
    return re.sub(r"\s+", "", text)


def picture(path, sheet=1):
    """Grey values of a sheet, DOTS to a millimetre: a list of rows."""
    data = tool("pdftoppm", "-r", 25.4 * DOTS, "-gray", "-aa", "no", "-aaVector", "no", "-f", sheet, "-l", sheet, path)
    kind, size, depth, rest = data.split(b"\n", 3)
    assert kind == b"P5" and depth == b"255", data[:40]
    width, height = map(int, size.split())
    return [rest[row * width:(row + 1) * width] for row in range(height)]


class Page(html.parser.HTMLParser):
    def __init__(self, text):
        super().__init__()
        self.tags, self.attributes, self.text = [], [], ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs

    def handle_data(self, data):
        self.text += data


class ThePapersOfTheDemo(DemoTest):
    def printed(self, what, *more, kind="pdf"):
        target = self.folder / f"{what}.{kind}"
        self.ok("print", what, "-o", target, *more)
        return target

    def test_every_paper_has_the_size_that_was_asked_for(self):
        for what in PAPERS:
            for sheet, width, height in (("a4", 210, 297), ("letter", 215.9, 279.4)):
                pages, wide, high = about(self.printed(what, "--sheet", sheet))
                self.assertAlmostEqual(wide, width, delta=0.1)
                self.assertAlmostEqual(high, height, delta=0.1)
                told = self.ok("print", what, "--sheet", sheet, "-o", self.folder / "again.pdf", "--json").json["data"]
                self.assertEqual(told["sheets"], pages)
        self.assertEqual(about(self.printed("household"))[0], 1)
        self.assertGreater(about(self.printed("menu-card", "--large"))[0], about(self.printed("menu-card"))[0])

    def test_same_day_same_bytes(self):
        for what in PAPERS:
            self.assertEqual(self.printed(what).read_bytes(), self.printed(what).read_bytes(), what)
            self.assertEqual(self.printed(what, kind="html").read_bytes(), self.printed(what, kind="html").read_bytes(), what)
        self.assertEqual(self.run_bytes("print", "household").stdout, self.printed("household").read_bytes())

    def test_everybody_and_every_bag_is_there(self):
        book = json.loads(self.export())
        bags = [each["name"] for each in book["places"] if each.get("kind") in ("bag", "box")]
        self.assertGreater(len(bags), 10)
        people = [each["name"] for each in book["people"]]
        for kind in ("pdf", "html"):
            read = words if kind == "pdf" else lambda path: Page(path.read_text(encoding="utf-8")).text
            for what in ("labels", "box-card", "menu-card"):
                text = squeezed(read(self.printed(what, kind=kind)))
                for bag in bags:
                    if what == "menu-card" and bag.startswith("Box"):
                        continue
                    self.assertIn(squeezed(bag), text, what)
            for what in ("household", "menu-card", "box-card"):
                text = squeezed(read(self.printed(what, kind=kind)))
                for person in people:
                    self.assertIn(person, text, what)

    def test_every_line_of_the_walk_is_there_and_can_be_ticked(self):
        text = squeezed(words(self.printed("review-sheet", "--kit", "home-kit"), "-layout"))
        markup = Page(self.printed("review-sheet", "--kit", "home-kit", kind="html").read_text(encoding="utf-8"))
        lines = self.sheet_lines()
        self.assertGreater(len(lines), 80)
        for line in lines:
            self.assertIn(str(line["lot"]), text)
            self.assertIn(squeezed(line["printed"] or "no date printed"), squeezed(markup.text))
        self.assertEqual(sum(value == "tick" for name, value in markup.attributes if name == "class"), 3 * len(lines))

    def test_what_is_bought_is_what_shop_says(self):
        text = squeezed(Page(self.printed("replacement-list", kind="html").read_text(encoding="utf-8")).text)
        groups = self.data("shop")["shops"] if "shops" in self.data("shop") else self.data("shop")["groups"]
        lines = [line for group in groups for line in group["lines"]]
        self.assertGreater(len(lines), 5)
        names = {each["key"]: each["name"] for each in json.loads(self.export())["foods"]}
        for line in lines:
            self.assertIn(squeezed(names[line["food"]]), text)

    def test_warnings_of_the_plan_stand_on_the_menu_card(self):
        plan = self.kit_plan()
        text = squeezed(words(self.printed("menu-card", "--kit", "home-kit")))
        found = 0
        for each in plan["wrong_bag"] + plan["read_label"]:
            self.assertIn(f"lot{each['lot']};", text)
            found += 1
        self.assertGreater(found, 2)
        self.assertIn("WARNING:", text)

    def test_private_paper_names_no_allergen_and_no_diet(self):
        health = re.compile("sesame|peanut|cashew|hazelnut|kiwi|mollusc|vegetarian|gluten")
        for what in ("labels", "box-card", "menu-card", "household", "review-sheet", "replacement-list"):
            self.assertIsNone(health.search(words(self.printed(what, "--private"))), what)
            self.assertIsNone(health.search(self.printed(what, "--private", kind="html").read_text(encoding="utf-8")), what)
        self.assertIsNotNone(health.search(words(self.printed("labels"))))
        self.assertIn("NOT for", words(self.printed("menu-card", "--private")))

    def test_the_code_is_read_back_from_the_picture(self):
        address = "https://kit.example/home?box=1&day=2"
        path = self.printed("box-card", "--url", address)
        for sheet in range(1, about(path)[0] + 1):
            stem = self.folder / f"code{sheet}"
            tool("pdftoppm", "-r", 150, "-png", "-singlefile", "-f", sheet, "-l", sheet, path, stem)
            self.assertEqual(tool("zbarimg", "-q", "--raw", f"{stem}.png").decode().strip(), address)
        self.assertIn("<svg", self.printed("box-card", "--url", address, kind="html").read_text(encoding="utf-8"))

    def test_labels_lie_where_the_numbers_say(self):
        grids = [(("--label", "63.5x38.1"), 210, 297, 63.5, 38.1, 3, 7, 7.25, 15.15, 66.0, 38.1, 1),
                 (("--sheet", "letter", "--label", "66.68x25.4"), 215.9, 279.4, 66.68, 25.4, 3, 10, 4.76, 12.7, 69.85, 25.4, 1),
                 (("--label", "80x50", "--columns", "2", "--rows", "5", "--left", "11", "--top", "9", "--pitch-x", "95", "--pitch-y", "55.5", "--start-at", "4"),
                  210, 297, 80, 50, 2, 5, 11, 9, 95, 55.5, 4)]
        for options, wide, high, width, height, columns, rows, left, top, pitch_x, pitch_y, start in grids:
            path = self.printed("labels", "--outlines", *options)
            count = self.ok("print", "labels", *options, "-o", self.folder / "n.pdf", "--json").json["data"]["labels"]
            sheet = picture(path)
            self.assertAlmostEqual(len(sheet) / DOTS, high, delta=0.2)
            self.assertAlmostEqual(len(sheet[0]) / DOTS, wide, delta=0.2)
            near = range(-DOTS // 2, DOTS // 2 + 1)  # half a millimetre either way
            for place in range(columns * rows):
                x, y = left + place % columns * pitch_x, top + place // columns * pitch_y
                dark = [any(sheet[round((y + 1.2) * DOTS)][round(x * DOTS) + each] < 128 for each in near),
                        any(sheet[round((y + 1.2) * DOTS)][round((x + width) * DOTS) + each] < 128 for each in near),
                        any(sheet[round(y * DOTS) + each][round((x + 1.2) * DOTS)] < 128 for each in near),
                        any(sheet[round((y + height) * DOTS) + each][round((x + 1.2) * DOTS)] < 128 for each in near)]
                if start - 1 <= place < start - 1 + count:
                    self.assertEqual(dark, [True] * 4, f"{options}, label {place + 1}")
                elif place < start - 2 - columns:
                    self.assertEqual(dark, [False] * 4, f"{options}, label {place + 1} is used up")

    def test_nothing_leaves_the_sheet(self):
        for what in PAPERS:
            for more in ((), ("--large",), ("--sheet", "letter")):
                path = self.printed(what, *more)
                _, wide, high = about(path)
                box = tool("pdftotext", "-bbox", path, "-").decode("utf-8")
                found = re.findall(r'<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">', box)
                self.assertGreater(len(found), 50)
                for each in found:
                    left, top, right, bottom = (float(value) / 72 * 25.4 for value in each)
                    self.assertTrue(left > 4 and top > 4 and right < wide - 4 and bottom < high - 4, f"{what} {more} {each}")

    def test_html_brings_everything_along(self):
        for what in PAPERS:
            text = self.printed(what, kind="html").read_text(encoding="utf-8")
            page = Page(text)
            self.assertFalse({"script", "link", "img", "iframe", "object"} & set(page.tags), what)
            self.assertFalse({"src", "href"} & {name for name, _ in page.attributes}, what)
            self.assertNotIn("url(", text)
            self.assertIn("@page", text)


class Names(ProgramTest):
    """Names of other writings, very long ones, and such as would break markup."""

    def make(self, name, food="Lentil stew"):
        document = household()
        document["people"][2]["name"] = name
        for each in document["places"]:
            if each["key"] == "bag-mira":
                each["name"] = f"{name} (1)"
        for each in document["foods"]:
            if each["key"] == "lentil-pouch":
                each["name"] = food
        path = self.folder / "names.json"
        path.write_text(json.dumps(document), encoding="utf-8")
        self.ok("new", self.book, "--from", path)
        self.add_lot("lentil-pouch", 1, "bag-mira", "--date", "best before 2028-01-01", "--contains", "mustard", "--label-read-by", "Jon")

    def test_names_of_other_writings(self):
        for name in ("נועה לוי", "ليلى", "Žofie Ěščř", "Ελένη", "Ирина"):
            self.book.unlink(missing_ok=True)
            self.make(name)
            answer = self.ok("print", "menu-card", "-o", self.folder / "card.pdf")
            self.assertNotIn("no font", answer.err)
            text = words(self.folder / "card.pdf")
            # Arabic letters may come back as the forms in which they were drawn, Hebrew in the order of sight.
            if name.isascii() or not re.search("[\u0600-\u06ff]", name):
                seen = squeezed(text)
                self.assertTrue(squeezed(name) in seen or squeezed(name)[::-1] in seen, text)
            self.assertIn(name, Page(self.print_html("menu-card")).text.replace("\u2068", "").replace("\u2069", ""))

    def print_html(self, what):
        self.ok("print", what, "-o", self.folder / "card.html")
        return (self.folder / "card.html").read_text(encoding="utf-8")

    def test_markup_in_names_stays_text(self):
        evil = "<script>alert(1)</script>&amp;\"'"
        self.make(evil)
        for what in ("menu-card", "labels", "box-card", "household", "review-sheet"):
            text = self.print_html(what)
            page = Page(text)
            self.assertNotIn("script", page.tags)
            self.assertIn(evil, page.text)

    def test_very_long_names_break_and_stay_on_the_sheet(self):
        long = "Maximiliana-Wilhelmina " * 8 + "W" * 70
        self.make(long.strip()[:200], "Stew with " + "a little more of everything and " * 5)
        for what in ("menu-card", "labels", "box-card", "household", "review-sheet"):
            self.ok("print", what, "-o", self.folder / "long.pdf", "--large")
            _, wide, _ = about(self.folder / "long.pdf")
            for right in re.findall(r'<word [^>]*xMax="([0-9.-]+)"', tool("pdftotext", "-bbox", self.folder / "long.pdf", "-").decode("utf-8")):
                self.assertLess(float(right) / 72 * 25.4, wide - 4, what)

    def test_headings_stand_again_on_every_sheet(self):
        self.make("Mira")
        for number in range(60):
            self.add_lot("lentil-pouch", 1, "bag-mira", "--date", f"best before 2028-02-{number % 28 + 1:02}", "--contains", "mustard", "--label-read-by", "Jon")
        self.ok("print", "review-sheet", "-o", self.folder / "sheet.pdf")
        pages = words(self.folder / "sheet.pdf").split("\f")[:-1]
        self.assertGreater(len(pages), 1)
        for page in pages:
            self.assertIn("Goodthrough", squeezed(page))
            self.assertIn("Mira(1)", squeezed(page))

    def test_no_heading_stands_alone_at_the_foot_of_a_sheet(self):
        """Whatever stands before the second table: on the sheet with its headings is its first row."""
        moved = set()
        for number in range(24):
            self.book.unlink(missing_ok=True)
            document = household()
            for each in range(number):
                document["people"].append({"key": f"zz{each:02}", "name": f"Zora {each:02}"})
            path = self.folder / "names.json"
            path.write_text(json.dumps(document), encoding="utf-8")
            self.ok("new", self.book, "--from", path)
            self.ok("print", "household", "-o", self.folder / "sheet.pdf", "--large")
            pages = [page for page in words(self.folder / "sheet.pdf").split("\f")[:-1] if "Contentslast" in squeezed(page)]
            self.assertTrue(pages)
            moved.add(len(words(self.folder / "sheet.pdf").split("\f")))
            kit = next(each["name"] for each in document["places"] if each.get("kind") == "kit" or "kit" in each["key"])
            self.assertIn(squeezed(kit), squeezed(pages[0].split("Contents", 1)[1]), f"{number} more people")
        self.assertGreater(len(moved), 1)

    def test_warnings_are_not_torn_apart_in_html(self):
        self.make("Mira")
        styles = self.print_html("menu-card")
        self.assertRegex(styles, r"\.warning\{[^}]*break-inside:avoid")

    def test_what_cannot_be_printed_is_refused(self):
        self.make("Mira")
        self.refused(3, "print", "poster", "-o", self.folder / "x.pdf")
        self.refused(2, "print")
        self.refused(2, "print", "labels", "--url", "https://kit.example/", "-o", self.folder / "x.pdf")
        self.refused(2, "print", "menu-card", "--rows", 3, "-o", self.folder / "x.pdf")
        self.refused(2, "print", "menu-card", "--json")
        self.refused(3, "print", "box-card", "--url", "file:///etc/passwd", "-o", self.folder / "x.pdf")
        self.refused(3, "print", "labels", "--label", "wide", "-o", self.folder / "x.pdf")
        self.refused(3, "print", "labels", "--label", "63,5x38.1", "-o", self.folder / "x.pdf")
        self.refused(3, "print", "labels", "--label", "300x40", "-o", self.folder / "x.pdf")
        self.refused(3, "print", "labels", "--start-at", 9, "-o", self.folder / "x.pdf")
        self.refused(4, "print", "labels", "--kit", "nowhere", "-o", self.folder / "x.pdf")
        self.refused(8, "print", "labels", "-o", self.folder / "no" / "such" / "x.pdf")
        self.assertFalse((self.folder / "x.pdf").exists())
        empty = self.folder / "empty.book"
        self.ok("new", empty)
        for what in PAPERS[:-1]:
            self.refused(3, "--book", empty, "print", what, "-o", self.folder / "x.pdf")


if __name__ == "__main__":
    unittest.main()
