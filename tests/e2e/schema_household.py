"""The household document against its JSON Schema, read by python3-jsonschema: what the program writes is valid, and what the schema refuses the
program refuses too."""
import copy
import json
import unittest

import jsonschema

from _demo import DEMO, DemoTest
from _support import SOURCE

SCHEMA = json.loads((SOURCE / "docs" / "schema" / "household-1.schema.json").read_text(encoding="utf-8"))
# JSON Schema draft 7, sections 6 and 10 of the validation text and the core vocabulary.
DRAFT_7 = {
    "$schema", "$id", "$ref", "title", "description", "default", "definitions", "type", "enum", "const", "multipleOf", "maximum",
    "minimum", "maxLength", "minLength", "pattern", "items", "minItems", "uniqueItems", "required", "properties", "additionalProperties",
    "propertyNames", "if", "then", "else", "allOf", "anyOf", "oneOf", "not",
}


def keywords(node, found):
    """Keywords used anywhere in a schema; names of properties and definitions are not keywords."""
    if isinstance(node, list):
        for each in node:
            keywords(each, found)
    elif isinstance(node, dict):
        for name, value in node.items():
            found.add(name)
            if name in ("properties", "definitions"):
                for each in value.values():
                    keywords(each, found)
            elif name not in ("default", "const", "enum", "required"):
                keywords(value, found)
    return found


def put(*path_and_value):
    *path, last, value = path_and_value

    def change(document):
        for step in path:
            document = document[step]
        document[last] = value

    return change


def drop(*path):
    *path, last = path

    def change(document):
        for step in path:
            document = document[step]
        del document[last]

    return change


def first(document, name, wanted):
    return next(each for each in document[name] if wanted(each))


def into_first(name, wanted, change):
    """Changes the first record of a list for which `wanted` holds."""
    return lambda document: change(first(document, name, wanted))


def kind(name):
    return lambda entry: entry["kind"] == name


BROKEN = {
    "format": put("format", "other"),
    "version": put("version", 2),
    "no book": drop("book_id"),
    "unknown at the top": put("peoples", []),
    "unknown in a person": put("people", 0, "apetite", 1),
    "unknown in a label": into_first("foods", lambda food: "label" in food, put("label", "contain", [])),
    "person without name": drop("people", 0, "name"),
    "key with capitals": put("people", 0, "key", "Ansa"),
    "quarter portion": put("people", 0, "appetite", 0.25),
    "negative portion": put("people", 0, "appetite", -1),
    "number as text": put("people", 0, "energy_kcal", "1750"),
    "fraction of a gram": put("foods", 0, "mass_g", 1.5),
    "text as list": put("people", 0, "diets", "vegan"),
    "unknown diet": put("people", 0, "diets", ["carnivore"]),
    "diet twice": put("people", 0, "diets", ["vegan", "vegan"]),
    "rating of three": put("people", 0, "ratings", {"oat-bar": 3}),
    "unknown kind": put("foods", 0, "kind", "petfood"),
    "no servings": put("foods", 0, "servings", 0),
    "label without its warnings": into_first("foods", lambda food: "label" in food, drop("label", "may_contain")),
    "label read by nobody": into_first("foods", lambda food: "label" in food, put("label", "read_by", "")),
    "kit menu line with role and food": into_first("menu", lambda line: "role" in line, put("food", "oat-bar")),
    "kit menu line with neither": into_first("menu", lambda line: "role" in line, drop("role")),
    "water in units and ml": into_first("menu", lambda line: "ml" in line, put("units", 2)),
    "wish without food": put("wishes", [{"id": 1, "kind": "want", "from": "2026-12-01", "through": "2026-12-01", "meal": "dinner"}]),
    "wish without meal": put("wishes", [{"id": 1, "kind": "want", "food": "oat-bar", "from": "2026-12-01", "through": "2026-12-01"}]),
    "wish without a last day": put("wishes", [{"id": 1, "kind": "not", "food": "oat-bar", "from": "2026-12-01"}]),
    "wish for nothing at all": put("wishes", [{"id": 1, "kind": "not", "meal": "dinner"}]),
    "wish of no kind": put("wishes", [{"id": 1, "food": "oat-bar"}]),
    "lot without mark": drop("lots", 0, "mark"),
    "mark without day": into_first("lots", lambda lot: lot["mark"]["kind"] != "none", drop("mark", "day")),
    "date as number": put("lots", 0, "received", 20260101),
    "date with slashes": put("lots", 0, "received", "2026/01/01"),
    "month 13": put("lots", 0, "received", "2026-13-01"),
    "moment without zone": put("entries", 0, "written_at", "2026-01-01T00:00:00"),
    "entry id 0": put("entries", 0, "id", 0),
    "entry of no kind": drop("entries", 0, "kind"),
    "received with to": into_first("entries", kind("received"), put("to", "pantry")),
    "received without amount": into_first("entries", lambda entry: kind("received")(entry) and "units" in entry, drop("units")),
    "two amounts": into_first("entries", lambda entry: kind("received")(entry) and "units" in entry, put("half_servings", 2)),
    "moved nowhere": into_first("entries", kind("moved"), drop("to")),
    "count without change": into_first("entries", kind("counted"), drop("change_half_servings")),
    "correction of nothing": into_first("entries", kind("corrected"), drop("corrects")),
    "correction with a lot": into_first("entries", kind("corrected"), put("lot", 1)),
    "list as object": put("entries", {}),
}


class HouseholdSchemaTest(DemoTest):
    def setUp(self):
        super().setUp()
        self.validator = jsonschema.Draft7Validator(SCHEMA)
        self.demo = json.loads(DEMO.read_text(encoding="utf-8"))

    def faults(self, document):
        return [f"{'/'.join(map(str, each.absolute_path))}: {each.message[:200]}" for each in self.validator.iter_errors(document)]

    def test_the_schema_is_draft_7_and_nothing_newer(self):
        jsonschema.Draft7Validator.check_schema(SCHEMA)
        self.assertEqual(keywords(SCHEMA, set()) - DRAFT_7, set())

    def test_every_object_is_closed(self):
        def check(node, where):
            if isinstance(node, dict):
                if node.get("type") == "object" and "properties" in node:
                    self.assertIs(node.get("additionalProperties"), False, where)
                for name, value in node.items():
                    check(value, f"{where}/{name}")
            elif isinstance(node, list):
                for number, value in enumerate(node):
                    check(value, f"{where}/{number}")

        check(SCHEMA, "")

    def test_the_demo_household_is_valid(self):
        self.assertEqual(self.faults(self.demo), [])

    def test_the_export_is_valid_and_the_demo_household_to_the_byte(self):
        text = self.export()
        self.assertEqual(self.faults(json.loads(text)), [])
        self.assertEqual(text, DEMO.read_text(encoding="utf-8"))

    def test_a_lived_in_book_exports_a_valid_document(self):
        self.ok("review", "start", "home-kit")
        self.ok("plan")
        self.feed()
        document = json.loads(self.export())
        self.assertEqual(self.faults(document), [])
        self.assertGreater(len(document["review_events"]), len(self.demo.get("review_events", [])))
        self.assertTrue(document["shown_meals"])
        self.assertTrue(document["feed"])

    def test_what_the_schema_refuses_the_program_refuses(self):
        for name, change in BROKEN.items():
            with self.subTest(name):
                document = copy.deepcopy(self.demo)
                change(document)
                self.assertNotEqual(self.faults(document), [])
                answer = self.refused(3, "new", "broken.book", "--from", "-", "--json", stdin=json.dumps(document))
                self.assertTrue(answer.error["problems"], str(answer))
                self.assertFalse((self.folder / "broken.book").exists())

    def test_members_and_names_of_the_schema_are_those_of_the_program(self):
        """An unknown member makes the program list the members it knows: they are the schema's."""
        document = copy.deepcopy(self.demo)
        records = {"people": "person", "foods": "food", "places": "place", "review_rules": "review_rule", "menu": "menu_line",
                   "table": "seat", "lots": "lot", "readings": "reading", "review_events": "review_event"}
        for each in records:
            document[each][0]["qqqqqqqqqqqq"] = 1
        error = self.refused(3, "new", "broken.book", "--from", "-", "--json", stdin=json.dumps(document)).error
        hints = {each["where"].split("/")[1]: each["hint"] for each in error["problems"] if "qqqq" in each["where"]}
        self.assertEqual(set(hints), set(records))
        for each, definition in records.items():
            known = hints[each].removeprefix("members here are ").split(", ")
            self.assertEqual(sorted(known), sorted(SCHEMA["definitions"][definition]["properties"]), each)


if __name__ == "__main__":
    unittest.main()
