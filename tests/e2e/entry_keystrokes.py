"""The demo household's kit, typed from a paper list into a book that has only its foods, people and places: one quick line a lot. What was
typed is in the book, lot by lot, and a lot costs few keystrokes; the count is printed."""
import itertools
import json
import re
import unittest

from _support import SOURCE, ProgramTest

DAY = "2027-04-03"
HAPPENED = ("lots", "entries", "readings", "review_events", "review_marks")


def words_of(food):
    return re.split(r"[\s,()-]+", f"{food['name']} {food['key']} {food.get('unit', 'unit')}".lower())


def typed_for(food, foods):
    """The shortest beginnings of words that only this food has, at least two letters each, as somebody who knows the shelf would type them."""
    words = [word for word in dict.fromkeys(words_of(food)) if word.isalpha()]
    others = [words_of(each) for each in foods if each["key"] != food["key"] and not each.get("retired")]

    def fits(begins, name):
        return all(any(word.startswith(begin) or begin in (word + "s", word + "es") for word in name) for begin in begins)

    best = food["key"]
    for count in (1, 2, 3):
        for chosen in itertools.combinations(words, count):
            for lengths in itertools.product(*(range(2, len(word) + 1) for word in chosen)):
                begins = [word[:length] for word, length in zip(chosen, lengths)]
                text = " ".join(begins)
                if len(text) < len(best) and not any(fits(begins, other) for other in others):
                    best = text
    return best


class Keystrokes(ProgramTest):
    def setUp(self):
        super().setUp()
        self.env["LARDERLOOP_NOW"] = DAY
        home = json.loads((SOURCE / "data/demo/household.json").read_text(encoding="utf-8"))
        whole = self.folder / "whole.book"
        self.ok("new", whole, "--from", SOURCE / "data/demo/household.json")
        self.lots = self.ok("--book", whole, "lot", "list", "--at", "home-kit", "--json").json["data"]
        self.foods = home["foods"]
        self.labels = {each["id"]: each.get("label") for each in home["lots"]}
        for name in HAPPENED:
            home.pop(name, None)
        empty = self.folder / "empty.json"
        empty.write_text(json.dumps(home), encoding="utf-8")
        self.ok("new", self.book, "--from", empty)

    def test_the_kit_typed_from_a_paper_list(self):
        by_key = {each["key"]: each for each in self.foods}
        wanted, bags = [], {}
        for lot in self.lots:
            mark = lot["mark"]
            for lies in lot["lies"]:
                if lies["opened_on"] or not mark["day"] or mark["kind"] not in ("best_before", "use_by") or mark["day"] < DAY:
                    continue  # what is open, has no date, or is past is not packed
                food = by_key[lot["food"]]
                units = int(float(lies["amount"]["value"])) // food.get("servings", 1)
                if units < 1 or any(each["reason"] != "label_unknown" for each in lies["must_not"]):
                    continue
                own, last = self.labels[lot["lot"]] or {}, food.get("label") or {}
                if any(own.get(each, []) != last.get(each, []) for each in ("contains", "may_contain")):
                    continue  # its label says something else than the last one: that takes more than a word
                same = " same" if food.get("label") else ""
                bags.setdefault(lies["place"], []).append(f"{units} {typed_for(food, self.foods)} {mark['text']}{same}")
                wanted.append((lot["food"], mark["day"], mark["kind"], lies["place"], units))
        self.assertGreater(len(wanted), 40)
        text = "read by Ansa\n" + "".join(f"@{place}\n" + "\n".join(lines) + "\n" for place, lines in bags.items())
        lots = self.ok("quick", "-y", "--json", stdin=text).json["data"]["lots"]
        got = [(each["food"], each["mark"]["day"], each["mark"]["kind"], each["entry"]["place"],
                int(float(each["entry"]["amount"]["value"])) // by_key[each["food"]].get("servings", 1)) for each in lots]
        self.assertEqual(sorted(got), sorted(wanted))
        mean = len(text) / len(wanted)
        dates = sum(len(lot["mark"]["text"]) for lot in self.lots) / len(self.lots)
        print(f"\n{len(wanted)} lots, {mean:.1f} keystrokes a lot; the dates as printed are {dates:.1f} of them")
        self.assertLess(mean, 35)


if __name__ == "__main__":
    unittest.main()
