"""Every JSON document that the program prints has the form that docs/schema says (JSON Schema draft 7, read by python3-jsonschema).

The demo household goes through its loop; each document seen is validated, and then spoiled in every object: a member taken away, a member
added. A schema that accepts a spoiled document would not notice drift either.
"""
import copy
import json
import pathlib
import unittest

from jsonschema import Draft7Validator

from _demo import DemoTest
from _server import Radicale, credentials
from _support import SOURCE

SCHEMAS = SOURCE / "docs" / "schema"
# Objects whose members are data: keys of foods.
OPEN_OBJECTS = {"ratings"}


def load_schema(path):
    schema = json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
    Draft7Validator.check_schema(schema)
    return Draft7Validator(schema)


def all_schemas():
    """The checkers of the output documents by their names; what is read, the household document and planning problems, has tests of its own."""
    found = {path.name[: -len("-1.schema.json")]: load_schema(path) for path in sorted(SCHEMAS.glob("*-1.schema.json"))}
    found.pop("household")
    found.pop("problem")
    return found


def objects_of(value, at=(), shape=()):
    """One (path, shape) for every shape of object in a document: items of one list have one shape."""
    if isinstance(value, dict):
        yield at, shape
        for name, each in value.items():
            yield from objects_of(each, (*at, name), (*shape, name))
    elif isinstance(value, list):
        for index, each in enumerate(value):
            yield from objects_of(each, (*at, index), (*shape, "[]"))


def shortened(value):
    """The document with at most three items a list: every shape of object stays, and the check takes seconds."""
    if isinstance(value, dict):
        return {name: shortened(each) for name, each in value.items()}
    return [shortened(each) for each in value[:3]] if isinstance(value, list) else value


def spoiled(document):
    """Copies of the document, each with one fault, and what the fault is."""
    document = shortened(document)
    seen = {}
    for at, shape in objects_of(document):
        seen.setdefault(shape, at)
    for shape, at in seen.items():
        if shape and shape[-1] in OPEN_OBJECTS:
            continue
        for fault in ("a member added", "a member taken away", "a member of a wrong type"):
            wrong = copy.deepcopy(document)
            place = wrong
            for step in at:
                place = place[step]
            name = sorted(place)[0]
            if fault == "a member added":
                place["surprise"] = 1
            elif fault == "a member taken away":
                del place[name]
            else:
                place[name] = [[["no such type"]]]
            yield wrong, f"{fault} at /{'/'.join(map(str, at))} ({name})"


class Schemas(DemoTest):
    schemas = all_schemas()

    def setUp(self):
        super().setUp()
        self.seen = {}

    def take(self, text, name, what):
        """Validates one document, keeps it, and returns its data."""
        document = json.loads(text)
        self.assertEqual(document["schema"], f"larderloop.{name}/1", what)
        self.assertIn(name, self.schemas, f"{what}: no schema in docs/schema")
        errors = [f"/{'/'.join(map(str, each.absolute_path))}: {each.message[:300]}" for each in self.schemas[name].iter_errors(document)]
        self.assertEqual(errors, [], f"{what}\n" + "\n".join(errors))
        self.seen.setdefault(name, []).append(document)
        return document.get("data")

    def see(self, name, *arguments):
        return self.take(self.ok(*arguments, "--json").out, name, " ".join(map(str, arguments)))

    def see_error(self, code, *arguments):
        answer = self.run_it(*arguments, "--json")
        self.assertEqual(answer.code, code, str(answer))
        self.take(answer.err, "error", str(answer))
        self.assertEqual(answer.error["exit_code"], code)

    def walk(self):
        """The loop, with every command that answers in JSON."""
        self.see("findings", "check")
        self.see("people", "person", "list")
        self.see("foods", "food", "list")
        self.see("places", "place", "list")
        lots = self.see("lots", "lot", "list")
        self.see("lots", "lot", "list", "--all")
        self.see("entries", "record", "list")
        for person in self.seen["people"][0]["data"]:
            self.see("person", "person", "show", person["person"])
        for food in self.seen["foods"][0]["data"]:
            self.see("food", "food", "show", food["food"])
        for place in self.seen["places"][0]["data"]:
            self.see("place", "place", "show", place["place"])
        for lot in lots[::4]:
            self.see("lot", "lot", "show", lot["lot"])
        self.see("kit_proposal", "kit", "propose", "home-kit", "--person", "mira")
        self.see("what_if", "what-if", "--person", "mira", "--avoid", "milk")
        self.see("trial", "trial", "start", "home-kit", "--people", "mira,tove")
        self.see("trial", "trial", "note", "muesli-pot", "liked", "--person", "mira")
        self.see("trial", "trial", "note", "chicken-rice-pouch", "not-enough", "--person", "tove", "--note", "half")
        self.see("trial", "trial", "finish")
        self.see("trial", "trial", "show")
        for arguments in ([], ["home-kit"]):
            answer = self.run_it("kit", "check", *arguments, "--json")
            self.assertEqual(answer.code, 1)
            self.take(answer.out, "kit_check", str(answer))
        self.see("history", "history")
        self.see("history", "history", "--advice")
        self.see("picture", "picture", "stock", "-o", self.folder / "stock.svg")
        self.see("picture", "picture", "history", "-o", self.folder / "years.svg")
        self.see("history", "history", lots[0]["food"], "--year", "2026")

        self.see("review-dates", "review", "dates")
        self.see("review-dates", "review", "dates", "--all")
        sheet = self.see("review-sheet", "review", "start", "home-kit")
        line = next(each for place in sheet["places"] for each in place["lines"] if not each["leaves"])
        self.see("review_marked", "review", "mark", "home-kit", line["lot"], "damaged", "1", "--at", line["place"])
        self.see("plan", "plan", "--compare")
        self.see("review-sheet", "review", "sheet", "home-kit")
        self.see("review-finished", "review", "finish", "home-kit")
        self.see("review-finished", "review", "finish", "home-kit")
        self.see("plan", "plan", "--all")
        for case in ("eat-down-2-donate-rather-than-leave-over", "refill-2-packs-and-repeats"):
            self.see("solution", "plan", "--problem", SOURCE / "tests" / "oracle" / "cases" / f"{case}.json")
        self.see("why", "why", "2027-04-04", "lunch")
        for lot in (71, 116, 138, 207):
            self.see("why", "why", lot)
        self.see("why", "why", "apple-fruit-bar")
        self.see("shop", "shop")
        self.see("shop", "shop", "--pantry")
        self.see("nudge", "nudge")
        self.see("feed", "calendar")
        self.see("feed", "calendar", "--person", "mira", "--detail", "private", "--kind", "eat-soon")
        self.see("todos", "calendar", "--todos")
        self.ok("settings", "set", "feed-reviews", "series")
        self.see("feed", "calendar")
        self.ok("settings", "set", "feed-reviews", "dated")
        self.see("feed_address_made", "feed", "add", "Mira's phone", "--person", "mira", "--base", "https://kit.example/feed")
        self.see("feed_address_made", "feed", "add", "Hall", "--detail", "private")
        self.see("feed_addresses", "feed", "revoke", "Hall")
        self.see("feed_addresses", "feed", "list")
        self.with_a_server()

        added = self.see("lot_added", "lot", "add", "oat-bar", "--units", 4, "--at", "jars", "--date", "best before end 2028-03",
                         "--label-read-by", "Ansa", "--contains", "gluten,sesame", "--lot-code", "L1", "--paid", "3.20")
        self.see("lot_added", "lot", "add", "oat-bar", "--units", 1, "--at", "jars", "--date", "none")
        new = added["lot"]
        wrong = self.see("lot_added", "lot", "add", "oat-bar", "--units", 2, "--at", "jars", "--date", "BBE 04 2028", "--lot-code", "L6")["lot"]
        wrong = self.see("lot", "lot", "code", wrong, "L9")["lot"]
        self.see("lot", "lot", "retire", wrong)
        self.see("scan", "scan", "(01)09520000000110(17)280831(10)L1")
        self.see("lots_entered", "scan", "(01)09520000000110(17)280831(10)L1", "--at", "jars")
        typed = self.ok("quick", "--at", "jars", "--read-by", "Ansa", "-y", "--json", stdin="3 oat bar 2028-05 lot L2 =2.40\n2 oat bar bbe 2028-06\n")
        self.take(typed.out, "lots_entered", "quick")
        bought = self.ok("receive", "--read-by", "Ansa", "--json", stdin="1\n2029-05\n\n-\npantry\nq\n")
        self.take(bought.out, "lots_entered", "receive")
        sheet = self.folder / "lots.csv"
        sheet.write_text("food,units,place,date,contains,may_contain,colour\noat-bar,2,jars,2028-07,gluten,sesame,red\n", encoding="utf-8")
        self.see("imported", "import", sheet, "--as", "lots", "--read-by", "Ansa", "--column", "colour=", "--save-mapping", "list", "-y")
        self.see("imported", "import", sheet, "--as", "lots", "--read-by", "Ansa", "--mapping", "list", "-n")
        self.see("template", "template", "people")
        self.see("mappings", "mapping", "list")
        self.see("mappings", "mapping", "remove", "list")
        self.see("lot_read", "lot", "label", new, "--read-by", "Mira", "--contains", "gluten")
        self.see("lot_read", "lot", "date", new, "2028-02-01", "--by", "Mira")
        self.see("lot_read", "lot", "state", new, "doubtful", "--note", "torn")
        self.see("lot_read", "lot", "change", new, "--date", "BBE 02 2028", "--state", "ok", "--label-read-by", "Mira", "--contains", "gluten", "--by", "Mira")
        self.see("lot_read", "lot", "state", new, "doubtful")
        self.see("lot_read", "lot", "label", line["lot"], "--read-by", "Mira", "--contains", "milk,peanut,sesame,tree_nut:cashew", "--may-contain", "mollusc")
        self.see("lot_read", "lot", "state", new, "ok")
        self.see("lot", "lot", "show", new)
        self.see("recorded", "record", "received", new, 2, "--at", "jars", "--paid", "1.60")
        self.see("recorded", "record", "found", new, 1, "--at", "jars")
        self.see("recorded", "record", "counted", new, 5, "--at", "jars")
        self.see("recorded", "record", "moved", new, 1, "--at", "jars", "--to", "juice")
        self.see("recorded", "record", "opened", new, "--at", "jars")
        self.see("recorded", "record", "lost", new, 1, "--at", "jars", "--sealed")
        self.see("recorded", "record", "thrown-out", new, 1, "--at", "jars", "--sealed")
        self.see("recorded", "record", "given-away", new, 1, "--at", "juice")
        eaten = self.see("recorded", "record", "eaten", new, "half", "serving", "--at", "jars", "--who", "jorik", "--meal", "snack")
        self.see("corrected", "record", "corrected", eaten["entries"][-1]["entry"], "--note", "wrong lot")
        self.see("entries", "record", "list", "--lot", new)

        self.see("person_saved", "person", "change", "tove", "--avoid", "soy,egg", "--rate", "oat-bar:-1")
        self.see("person_saved", "person", "add", "Runa", "--born", "2019-02-03", "--appetite", "0.5", "--avoid-own", "lychee", "--diet", "vegan", "--energy", "1400kcal",
                 "--tolerance", "3")
        self.see("food_saved", "food", "add", "Barley soup", "--unit", "jar", "--servings", 2, "--mass", "400g", "--energy", "300kcal", "--pack", "Corner shop:2:5.00",
                 "--role", "main", "--meal", "dinner", "--contains", "barley", "--label-read-by", "Ansa", "--keeps-months", "12-18", "--par", 2)
        self.see("food_saved", "food", "change", "barley-soup", "--contains", "barley,milk", "--label-read-by", "Ansa")
        self.see("place_saved", "place", "add", "Box 9", "--kind", "box", "--in", "home-kit", "--mass-limit", "9kg", "--volume-limit", "40l")
        self.see("place_saved", "place", "change", "box-9", "--hot")

        self.see("wishes", "wish", "add", "want", "oat-bar", "--day", "tomorrow", "--meal", "snack", "--person", "tove")
        self.see("wishes", "wish", "add", "not", "--from", "tomorrow", "--through", "+4d")
        self.see("wishes", "wish", "list")
        self.see("plan", "plan")
        self.see("wishes", "wish", "remove", 2)
        self.see("printed", "print", "labels", "-o", self.folder / "labels.html")
        self.see("printed", "print", "menu-card", "-o", self.folder / "card.pdf")

        added = self.see("menu", "kit", "add", "bag-ansa", "--for", "ansa", "--day", 1, "--meal", "dinner", "--role", "main", "--priority", 5)
        line = added[0]["menu_line"]
        self.see("menu", "kit", "change", line, "--food", "muesli-pot")
        self.see("menu", "kit", "list")
        self.see("menu", "kit", "remove", line)
        self.see("meals", "meals", "away", "jorik", "--from", "today", "--through", "+3d", "--meal", "dinner")
        self.see("meals", "meals", "set", "monday", "snack", "jorik")
        self.see("meals", "meals", "show")
        self.see("settings", "settings", "set", "slack-days", 21)
        self.see("settings", "settings", "show")
        self.see("review_rules", "review", "rule", "home-kit", "twice-a-year", "--slack", 20)
        self.see("review_rules", "review", "rule")
        self.see("place_saved", "place", "add", "Box 8", "--kind", "box", "--in", "home-kit")
        self.see("retired", "place", "retire", "box-8")
        self.see("retired", "place", "retire", "box-8", "--back")

        self.see("review_changed", "review", "skip", "car-kit")
        self.see("book_made", "new", self.folder / "another.book")
        self.see("book_copied", "backup", self.folder / "copy.book")

        self.see_error(2, "lot", "add")
        self.see_error(2, "plan", "--now", "someday")
        self.see_error(3, "record", "eaten", new, 5000)
        self.see_error(4, "lot", "show", 99999)
        wrong = self.folder / "wrong.json"
        wrong.write_text('{"format": "larderloop.household", "version": 1, "surprise": 1, "people": [{"key": "A b"}]}', encoding="utf-8")
        self.see_error(3, "new", self.folder / "wrong.book", "--from", wrong)
        self.assertGreater(len(self.seen["error"][-1]["problems"]), 1)
        broken = self.folder / "broken.book"
        broken.write_bytes(b"not a book at all" * 100)
        self.see_error(6, "--book", broken, "plan")
        self.see_error(8, "shop", "-o", self.folder / "no" / "such" / "folder.csv")
        self.env["LARDERLOOP_NOW"] = "never"
        self.see_error(9, "plan")

    def with_a_server(self):
        folder = self.folder / "radicale"
        folder.mkdir()
        server = Radicale(folder)
        self.addCleanup(server.stop)
        where = (server.url("tasks"), "--credentials", credentials(self.folder))
        self.see("pushed", "push", *where, "--todos")
        path, text = next(iter(sorted(server.items("tasks").items())))
        server.tick(path, text)
        kept = self.run_it("push", *where, "--todos", "--json")
        self.assertEqual(kept.code, 1, str(kept))
        self.take(kept.out, "pushed", "push with something kept")
        self.see("pulled", "pull", *where)

    def test_every_document_has_the_form_of_its_schema_and_no_other(self):
        self.walk()
        self.assertEqual(sorted(self.schemas), sorted(self.seen), "a schema for each document, a document for each schema")
        accepted = []
        for name, documents in self.seen.items():
            largest = max(documents, key=lambda each: len(json.dumps(each)))
            faults = list(spoiled(largest))
            self.assertGreater(len(faults), 2)
            accepted += [f"{name}: {fault}" for wrong, fault in faults if self.schemas[name].is_valid(wrong)]
        self.assertEqual(accepted, [], "\n".join(accepted))


class TheDocuments(unittest.TestCase):
    def test_each_schema_names_itself(self):
        for path in sorted(SCHEMAS.glob("*.json")):
            schema = json.loads(path.read_text(encoding="utf-8"))
            self.assertEqual(schema["$id"], "larderloop:" + path.name[: -len(".schema.json")])
            self.assertEqual(schema["$schema"], "http://json-schema.org/draft-07/schema#")
            self.assertTrue(schema["title"])


if __name__ == "__main__":
    unittest.main()
