"""Whatever the household document says can be said by commands: the demo household is built anew by hand, and exported as the same document.

What happened (entries beyond receiving, reviews, what was shown) comes from commands that have tests of their own.
"""
import json
import unittest

from _demo import DEMO, REVIEW_DAY, DemoTest
from _support import ProgramTest

FLAGS = ["needs_hot_water", "needs_opener", "needs_spoon", "refrigerate", "choking_risk", "honey", "is_opener", "is_cutlery",
         "infant_formula", "home_canned", "self_filled", "staple"]
LOTS = 40


def dashed(text):
    return text.replace("_", "-")


def money(cents):
    return f"{cents // 100}.{cents % 100:02}"


class Rebuild(ProgramTest):
    def setUp(self):
        super().setUp()
        self.demo = json.loads(DEMO.read_text(encoding="utf-8"))

    def on(self, day):
        self.env["LARDERLOOP_NOW"] = day

    def settings(self):
        for name, value in self.demo["settings"].items():
            self.ok("settings", "set", dashed(name), value)

    def label(self, label, reader):
        words = [reader, label["read_by"]]
        for name in ("contains", "may_contain"):
            if label[name]:
                words += ["--" + dashed(name), ",".join(label[name])]
        if label.get("suits"):
            words += ["--suits", ",".join(map(dashed, label["suits"]))]
        return words

    def food(self, food):
        words = [food["name"], "--key", food["key"]]
        for name, option in {"kind": "kind", "rotate": "rotate"}.items():
            if name in food:
                words += ["--" + option, dashed(food[name])]
        for name in ("species", "gtin", "unit", "servings", "note"):
            if name in food:
                words += ["--" + name, food[name]]
        for name, option, unit in (("mass_g", "mass", "g"), ("volume_ml", "volume", "ml"), ("energy_kcal", "energy", "kcal"),
                                   ("sodium_mg", "sodium", ""), ("needs_water_ml", "needs-water", "ml"), ("par_level", "par", "")):
            if name in food:
                words += ["--" + option, f"{food[name]}{unit}"]
        for name in ("meals", "roles"):
            if name in food:
                words += ["--" + name[:-1], ",".join(map(dashed, food[name]))]
        for pack in food.get("packs", []):
            words += ["--pack", f"{pack.get('shop', '')}:{pack.get('units', 1)}:{money(pack.get('price_cents', 0))}"]
        storage = food.get("storage", {})
        if "months_short" in storage:
            words += ["--keeps-months", "-".join(str(storage[name]) for name in ("months_short", "months_long") if name in storage)]
        if storage:
            words += ["--opened-days", storage["opened_days"]]
        if storage.get("source"):
            words += ["--storage-source", storage["source"]]
        if not food.get("no_cook", True):
            words.append("--needs-cooking")
        words += ["--" + dashed(flag) for flag in FLAGS if food.get(flag)]
        self.on(food["label"]["read_on"] if "label" in food else REVIEW_DAY)
        if "label" in food:
            words += self.label(food["label"], "--label-read-by")
        self.ok("food", "add", *words)

    def person(self, person):
        own = {each["key"]: each["since"] for each in self.demo["own_allergens"]}
        words = [person["name"], "--key", person["key"]]
        for name, option, unit in (("born", "born", ""), ("species", "species", ""), ("appetite", "appetite", ""), ("tolerance", "tolerance", ""),
                                   ("energy_kcal", "energy", ""), ("sex", "sex", ""), ("height_cm", "height", ""), ("mass_g", "body-mass", "g"),
                                   ("activity", "activity", ""), ("note", "note", "")):
            if name in person:
                words += ["--" + option, dashed(f"{person[name]}{unit}") if name == "activity" else f"{person[name]}{unit}"]
        self.on(REVIEW_DAY)
        for each in person.get("avoid", []):
            if each["key"] in own:
                self.on(own[each["key"]])
                words += ["--avoid-own", each["key"]]
            else:
                words += ["--avoid-accepting-may-contain" if each.get("accept_may_contain") else "--avoid", each["key"]]
        for diet in person.get("diets", []):
            words += ["--diet", dashed(diet)]
        self.ok("person", "add", *words)

    def ratings(self, person):
        for food, rating in person.get("ratings", {}).items():
            self.ok("person", "change", person["key"], f"--rate={food}:{rating}")

    def places(self):
        depth = {"kit": 0, "pantry": 0, "box": 1, "shelf": 1, "bag": 2}
        for place in sorted(self.demo["places"], key=lambda each: depth[each.get("kind", "shelf")]):
            words = [place["name"], "--key", place["key"], "--kind", place.get("kind", "shelf")]
            for name, option, unit in (("parent", "in", ""), ("mass_limit_g", "mass-limit", "g"), ("volume_limit_ml", "volume-limit", "ml"), ("note", "note", "")):
                if name in place:
                    words += ["--" + option, f"{place[name]}{unit}"]
            self.ok("place", "add", *words, *(["--hot"] if place.get("hot") else []))

    def menu(self):
        for line in self.demo["menu"]:
            words = [line["place"]]
            if line.get("everyone") or line.get("people"):
                words += ["--for", "everyone" if line.get("everyone") else ",".join(line["people"])]
            for name in ("day", "meal", "role", "food", "units", "priority"):
                if name in line:
                    words += ["--" + name, dashed(str(line[name])) if name == "role" else line[name]]
            if "ml" in line:
                words += ["--volume", f"{line['ml']}ml"]
            self.ok("kit", "add", *words)

    def week(self):
        for seat in self.demo["table"]:
            self.ok("meals", "set", seat["weekday"], seat["meal"], ",".join(seat["people"]))
        for each in self.demo["exceptions"]:
            words = ["--from", each["from"], "--through", each["through"]]
            if "meals" in each:
                words += ["--meal", ",".join(each["meals"])]
            if "note" in each:
                words += ["--note", each["note"]]
            if each.get("nobody"):
                self.ok("meals", "none", *words)
            elif "guests" in each:
                self.ok("meals", "guests", ",".join(each["guests"]), *words)
            else:
                self.ok("meals", "away", ",".join(each["away"]), *words)

    def lots(self):
        received = {}
        for entry in self.demo["entries"]:
            if entry["kind"] == "received":
                received.setdefault(entry["lot"], entry)
        pantry = {place["key"] for place in self.demo["places"] if place.get("kind", "shelf") in ("pantry", "shelf")}
        for lot in self.demo["lots"][:LOTS]:
            entry = received[lot["id"]]
            # Not into a bag: a command refuses what its people must not have, a document may tell of it.
            at = entry["place"] if entry["place"] in pantry else min(pantry)
            words = [lot["food"], "--units", entry["units"], "--at", at, "--received", lot["received"]]
            if lot["mark"]["kind"] != "none":
                words += ["--date", lot["mark"]["text"], "--kind", dashed(lot["mark"]["kind"])]
            else:
                words += ["--date", "none"]
            for name, option in (("lot_code", "lot-code"), ("note", "note")):
                if name in lot:
                    words += ["--" + option, lot[name]]
            if "paid_cents" in entry:
                words += ["--paid", money(entry["paid_cents"])]
            self.on(lot["label"]["read_on"] if "label" in lot else lot["received"])
            if "label" in lot:
                words += self.label(lot["label"], "--label-read-by")
            self.ok("lot", "add", *words)

    def test_the_demo_household_by_commands_alone(self):
        self.on("2025-01-01")
        self.ok("new", self.book)
        self.settings()
        for person in self.demo["people"]:  # first: an allergen of their own is known to labels from then on
            self.person(person)
        for food in self.demo["foods"]:
            self.food(food)
        for person in self.demo["people"]:
            self.ratings(person)
        self.on(REVIEW_DAY)
        self.places()
        for rule in self.demo["review_rules"]:
            self.ok("review", "rule", rule["kit"], rule["rule"], "--from", rule["starts"], *(["--slack", rule["slack_days"]] if "slack_days" in rule else []))
        self.menu()
        self.week()
        self.lots()
        self.on(REVIEW_DAY)
        self.ok("check")
        built = json.loads(self.export())
        for name in ("settings", "own_allergens", "people", "places", "review_rules", "table", "exceptions", "foods"):
            self.assertEqual(built[name], self.demo[name], name)
        without_ids = [[{key: value for key, value in line.items() if key != "id"} for line in document["menu"]] for document in (built, self.demo)]
        self.assertEqual(without_ids[0], without_ids[1])
        # What else stood on a package without a date is told in the document only.
        plain = [[{**lot, "id": 0, "mark": lot["mark"] if lot["mark"]["kind"] != "none" else None} for lot in document["lots"][:LOTS]]
                 for document in (built, self.demo)]
        self.assertEqual(plain[0], plain[1])
        # Nothing that the demo says of the household is left out above.
        told = {"format", "version", "book_id", "settings", "own_allergens", "people", "foods", "places", "review_rules", "menu", "table", "exceptions",
                "lots", "readings", "entries", "review_events", "review_marks", "shown_meals", "feed", "trials", "trial_notes", "trial_ends", "wishes"}
        self.assertEqual(set(self.demo) - told, set())


class ByHand(DemoTest):
    def test_menu_lines_are_changed_and_removed(self):
        before = self.data("kit", "list", "home-kit", "--for", "ansa")
        line = next(each for each in before if each["place"] == "bag-ansa" and each["units"] == 1)["menu_line"]
        self.ok("kit", "change", line, "--units", 2, "--priority", 20)
        changed = next(each for each in self.data("kit", "list") if each["menu_line"] == line)
        self.assertEqual((changed["units"], changed["priority"]), (2, 20))
        self.ok("kit", "remove", line)
        self.assertNotIn(line, [each["menu_line"] for each in self.data("kit", "list")])
        self.refused(4, "kit", "remove", line)
        self.assert_unchanged("kit", "add", "bag-ansa", "--for", "tomte", "--role", "main", code=4)
        self.assert_unchanged("kit", "add", "tins", "--for", "ansa", "--role", "main")
        self.assert_unchanged("kit", "add", "bag-ansa", "--for", "ansa", "--role", "main", "--food", "muesli-pot", code=2)

    def test_the_week_and_who_is_away(self):
        self.ok("meals", "set", "daily", "snack", "nobody")
        self.assertFalse([each for each in self.data("meals", "show")["table"] if each["meal"] == "snack"])
        self.ok("meals", "set", "weekends", "snack", "everyone")
        self.assertEqual([each["weekday"] for each in self.data("meals", "show")["table"] if each["meal"] == "snack"], ["saturday", "sunday"])
        before = len(self.data("meals", "show")["exceptions"])
        self.ok("meals", "away", "jorik", "--day", "tomorrow", "--meal", "dinner")
        self.assert_unchanged("meals", "away", "jorik", "--day", "tomorrow", "--meal", "dinner")
        after = self.data("meals", "show")["exceptions"]
        self.assertEqual(len(after), before + 1)
        number = next(each["number"] for each in after if each["from"] == "2027-04-04" and each["away"] == ["jorik"])
        self.ok("meals", "remove", number)
        self.assertEqual(len(self.data("meals", "show")["exceptions"]), before)
        self.assert_unchanged("meals", "none", code=2)
        self.assert_unchanged("meals", "none", "--from", "2027-05-02", "--through", "2027-05-01")

    def test_a_guest_is_at_the_table(self):
        self.ok("person", "add", "Uma")
        # She keeps house while the others are away: what would go off in these weeks is hers to eat.
        for person in ("ansa", "jorik", "mira", "odil", "tove", "wim"):
            self.ok("meals", "away", person, "--from", "today", "--through", "+20d")
        served = lambda: {each["person"] for meal in self.data("plan")["eat_down"]["meals"] for each in meal["helpings"]}
        self.assertNotIn("uma", served())
        self.ok("meals", "guests", "uma", "--from", "today", "--through", "+20d")
        self.assertIn("uma", served())
        # Nobody read what every allergen that a label knows would mean for her: she gets nothing that declares one.
        self.ok("person", "change", "uma", "--avoid-own", "moonbeam")
        self.assertNotIn("uma", served())

    def test_settings(self):
        self.ok("settings", "set", "date-order", "dmy")
        self.ok("settings", "set", "tolerance", "3.5")
        self.assertEqual(self.data("settings", "show")["tolerance"], "3.5")
        self.assertIn("did you mean 'slack_days'?", self.refused(4, "settings", "set", "slak-days", 3).err)
        for name, value in (("slack-days", "many"), ("slack-days", "9999"), ("region", "mars"), ("currency", "euro"), ("tolerance", "0.3"), ("week-starts", "someday")):
            self.assert_unchanged("settings", "set", name, value)
        self.assert_unchanged("settings", "set", "time-zone", "Europe/Atlantis", code=9)

    def test_review_rules(self):
        self.ok("review", "rule", "home-kit", "four-times-a-year", "--from", "2027-05-01", "--slack", 21)
        rule = self.data("review", "rule", "home-kit")[0]
        self.assertEqual((rule["starts"], rule["slack_days"]), ("2027-07-03", 21))  # the first Saturday of July 2027
        self.assertIn("did you mean 'twice-a-year'?", self.refused(3, "review", "rule", "home-kit", "twice-a-yeer").err)
        self.assert_unchanged("review", "rule", "home-kit", "FREQ=YEARLY;COUNT=3")
        self.assert_unchanged("review", "rule", "home-kit", "FREQ=DAILY;BYHOUR=3")

    def test_what_is_retired_is_offered_nowhere(self):
        self.ok("food", "add", "Plain crackers", "--role", "snack", "--meal", "snack", "--par", 3)
        self.assertIn("Plain crackers", self.ok("shop", "--pantry").out)
        self.ok("food", "retire", "plain-crackers")
        self.assertNotIn("Plain crackers", self.ok("shop", "--pantry").out)
        self.assert_unchanged("lot", "add", "plain-crackers", "--units", 1, "--at", "tins", "--date", "none")
        self.assert_unchanged("food", "retire", "plain-crackers")
        self.ok("food", "retire", "plain-crackers", "--back")
        self.ok("lot", "add", "plain-crackers", "--units", 1, "--at", "tins", "--date", "none")
        answer = self.assert_unchanged("food", "retire", "plain-crackers")
        self.assertIn("still on hand", answer.err)
        self.assertIn("still lies there", self.assert_unchanged("place", "retire", "tins").err)
        self.assertIn("/menu/", self.assert_unchanged("person", "retire", "ansa").err)

    def test_a_person_who_moves_out_leaves_menu_and_table(self):
        for line in self.data("kit", "list", "--for", "odil"):
            if line["everyone"]:
                continue
            others = [each for each in line["people"] if each != "odil"]
            if others:
                self.ok("kit", "change", line["menu_line"], "--for", ",".join(others))
            else:
                self.ok("kit", "remove", line["menu_line"])
        self.ok("person", "retire", "odil")
        self.assertFalse([each for each in self.data("meals", "show")["table"] if "odil" in each["people"]])
        self.assertNotIn('"odil"', self.ok("plan", "--json").out)  # her bag is still a place, she is nobody
        self.ok("person", "retire", "odil", "--back")


class Without(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def test_what_may_be_left_out_can_be_taken_away(self):
        """Whatever the household document can say, a command can say: also nothing, and none at all of the kit's food."""
        said = {"people": ("person", "jon", [("born", "born", "1982-11-02", "1982-11-02"), ("tolerance", "tolerance", "3", 3), ("energy", "energy_kcal", "2000kcal", 2000), ("sex", "sex", "male", "male"),
                                             ("height", "height_cm", "180", 180), ("body-mass", "mass_g", "80kg", 80000), ("activity", "activity", "inactive", "inactive"), ("note", "note", "x", "x")]),
                "foods": ("food", "jam-jar", [("mass", "mass_g", "450g", 450), ("volume", "volume_ml", "300ml", 300), ("energy", "energy_kcal", "900kcal", 900), ("sodium", "sodium_mg", "5", 5), ("par", "par_level", "3", 3),
                                              ("gtin", "gtin", "9520000000011", "09520000000011"), ("pack", "packs", "Shop:2:2.00", [{"shop": "Shop", "units": 2, "price_cents": 200}]), ("note", "note", "x", "x")]),
                "places": ("place", "box-1", [("mass-limit", "mass_limit_g", "12kg", 12000), ("volume-limit", "volume_limit_ml", "40l", 40000), ("note", "note", "x", "x")])}
        before = self.export()
        for section, (command, key, options) in said.items():
            for option, member, text, value in options:
                self.ok(command, "change", key, f"--{option}", text)
                thing = next(each for each in json.loads(self.export())[section] if each["key"] == key)
                self.assertEqual(thing[member], value, (command, option))
                self.ok(command, "change", key, f"--{option}", "none")
                self.assertEqual(self.export(), before, (command, option))
        self.ok("food", "change", "jam-jar", "--keeps-months", "12-18")
        self.ok("food", "change", "jam-jar", "--keeps-months", "none")
        self.assertEqual(self.export(), before)
        self.ok("person", "change", "ada", "--appetite", "0", "--tolerance", "0")
        ada = json.loads(self.export())["people"][0]
        self.assertEqual((ada["appetite"], ada["tolerance"]), (0, 0))
        for value in ("-1", "0.25", "none at all"):
            self.assertNotEqual(self.run_it("person", "change", "ada", "--appetite", value).code, 0)


class LotChange(ProgramTest):
    """Date, label and state of a lot in one go: one reading, with the checks of the three commands."""

    def test_all_at_once(self):
        self.make_book()
        lot = self.add_lot("oat-bar", 2, "bag-mira", "--date", "2028-05", "--label-read-by", "Jon", "--contains", "gluten")
        answer = self.ok("lot", "change", lot, "--date", "use by 15MAR28", "--state", "doubtful", "--label-read-by", "Ada", "--may-contain", "sesame", "--note", "torn")
        self.assertIn("must leave there: Mira must not have it", answer.err)
        show = self.ok("lot", "show", lot, "--json").json["data"]
        self.assertEqual((show["mark"]["kind"], show["mark"]["day"], show["state"], show["label"]["may_contain"], show["label"]["read_by"]), ("use_by", "2028-03-15", "doubtful", ["sesame"], "Ada"))
        readings = json.loads(self.export())["readings"]
        self.assertEqual([(each["lot"], each["by"], each["note"]) for each in readings], [(lot, "Ada", "torn")])
        for code, arguments in ((2, []), (2, ["--note", "x"]), (3, ["--date", "03/04/28"]), (3, ["--state", "fine"]), (2, ["--contains", "milk"]), (3, ["--label-read-by", "Jon", "--contains", "mlik"])):
            self.assert_unchanged("lot", "change", lot, *arguments, code=code)


if __name__ == "__main__":
    unittest.main()
