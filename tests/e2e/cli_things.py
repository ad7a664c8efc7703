"""person, food, place and lot: adding, changing, listing, showing; who must not have what."""
import unittest

from _support import ProgramTest


class People(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def test_add_with_everything(self):
        self.ok("person", "add", "Eva Lind", "--born", "1990-02-03", "--appetite", "1.5", "--tolerance", "6", "--energy", "2000",
                "--avoid", "egg,fish", "--avoid-accepting-may-contain", "soy", "--avoid-own", "kiwi", "--diet", "gluten-free", "--note", "n")
        data = self.ok("person", "show", "eva lind", "--json").json["data"]
        self.assertEqual(data["person"], "eva-lind")
        self.assertEqual(data["avoid"], [
            {"key": "egg", "accept_may_contain": False}, {"key": "fish", "accept_may_contain": False},
            {"key": "kiwi", "accept_may_contain": False}, {"key": "soy", "accept_may_contain": True}])
        self.assertEqual(data["appetite"], {"value": "1.5", "unit": "serving"})
        self.assertEqual(data["energy"], {"value": "2000", "unit": "kcal"})
        self.assertEqual(data["diets"], ["gluten_free"])
        self.assertIn("Eva Lind", self.ok("person", "list").out)

    def test_slips_are_refused(self):
        self.assertIn("'sesame'", self.assert_unchanged("person", "add", "Eva", "--avoid", "sesam").err)
        self.assertIn("vegan", self.assert_unchanged("person", "add", "Eva", "--diet", "vegna").err)
        self.assert_unchanged("person", "add", "Eva", "--born", "2027-02-30")
        self.assert_unchanged("person", "add", "Eva", "--born", "2027-03-02")
        self.assert_unchanged("person", "add", "Eva", "--appetite", "0.3")
        self.assert_unchanged("person", "add", "Mira")
        self.assert_unchanged("person", "add", "")
        self.assert_unchanged("person", "add", "Eva", "--key", "Eva!")
        self.assert_unchanged("person", "add", "Eva", "--avoid", "egg", "--avoid-accepting-may-contain", "egg")
        self.assert_unchanged("person", "change", "mira", "--no-avoid", "egg")
        self.assertIn("did you mean 'mira'", self.assert_unchanged("person", "show", "miro", code=4).err)

    def test_new_allergy_names_what_is_wrong_at_once(self):
        lot = self.add_lot("lentil-pouch", 2, "bag-jon", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        answer = self.ok("person", "change", "jon", "--avoid", "mustard")
        self.assertIn(f"lot {lot} lies where Jon eats", answer.err)
        self.assertIn("Lentil stew", self.ok("person", "show", "jon").out)

    def test_own_allergen_makes_earlier_labels_unread(self):
        lot = self.add_lot("lentil-pouch", 2, "bag-jon", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        answer = self.ok("person", "change", "jon", "--avoid-own", "kiwi", "--now", "2027-03-02")
        self.assertIn(f"lot {lot} lies where Jon eats", answer.err)

    def test_ambiguous_name_lists_the_keys(self):
        self.ok("person", "add", "jon", "--key", "jon-2")
        self.ok("person", "add", "JON", "--key", "jon-3")
        answer = self.refused(3, "person", "show", "JoN")
        self.assertIn("jon-2, jon-3", answer.err)


class Foods(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def test_add_with_everything(self):
        self.ok("food", "add", "Bean soup", "--gtin", "4006381333931", "--unit", "can", "--servings", "2", "--mass", "0.4kg", "--volume",
                "400ml", "--energy", "320kcal", "--needs-water", "200ml", "--meal", "lunch,dinner", "--role", "main", "--pack",
                "Corner shop:6:8.40", "--pack", "Market:1:1.60", "--keeps-months", "24-60", "--opened-days", "3", "--storage-source", "a table",
                "--rotate", "yes", "--par", "4", "--needs-opener", "--label-read-by", "Jon", "--contains", "celery", "--may-contain", "milk",
                "--suits", "vegan")
        data = self.ok("food", "show", "bean-soup", "--json").json["data"]
        self.assertEqual(data["gtin"], "04006381333931")
        self.assertEqual(data["mass"], {"value": "400", "unit": "g"})
        self.assertEqual(data["packs"][0], {"shop": "Corner shop", "units": 6, "price_cents": 840})
        self.assertEqual((data["months_short"], data["months_long"], data["opened_days"]), (24, 60, 3))
        self.assertTrue(data["needs_opener"])
        self.assertEqual(data["label"]["contains"], ["celery"])
        # Ada avoids milk and refuses "may contain".
        self.assertEqual({each["person"]: each["reason"] for each in data["must_not"]}, {"ada": "may_contain"})
        self.ok("food", "change", "bean-soup", "--no-needs-opener", "--mass", "410g")
        data = self.ok("food", "show", "bean-soup", "--json").json["data"]
        self.assertEqual((data["needs_opener"], data["mass"]["value"], data["unit"]), (False, "410", "can"))

    def test_wrong_values_are_refused(self):
        for more in (("--mass", "500"), ("--mass", "1,5kg"), ("--gtin", "4006381333932"), ("--servings", "0"), ("--servings", "9999"),
                     ("--pack", "shop"), ("--kind", "fod"), ("--meal", "diner"), ("--keeps-months", "9-3"), ("--energy", "5kJ"),
                     ("--label-read-by", "Jon", "--contains", "mlik"), ("--label-read-by", "Jon", "--contains", "milk", "--suits", "vegan"),
                     ("--kind", "pet-food")):
            with self.subTest(more=more):
                self.assert_unchanged("food", "add", "Soup", *more)
        self.assert_unchanged("food", "add", "Soup", "--contains", "milk", code=2)

    def test_lists_filter_by_kind(self):
        self.assertEqual([each["food"] for each in self.ok("food", "list", "--kind", "pet-food", "--json").json["data"]], ["cat-food"])
        self.assertIn("Cat food", self.ok("food", "list").out)


class Places(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def test_add_change_list_show(self):
        self.ok("place", "add", "Box 2", "--kind", "box", "--in", "home kit", "--mass-limit", "12kg", "--volume-limit", "40l", "--hot")
        data = self.ok("place", "show", "box-2", "--json").json["data"]
        self.assertEqual((data["path"], data["mass_limit"]["value"], data["hot"]), ("Home kit > Box 2", "12000", True))
        self.ok("place", "change", "box-2", "--no-hot")
        self.assertFalse(self.ok("place", "show", "box-2", "--json").json["data"]["hot"])
        found = self.ok("place", "list", "--kind", "bag", "--at", "home-kit", "--json").json["data"]
        self.assertEqual([each["place"] for each in found], ["bag-ada", "bag-jon", "bag-mira"])
        self.assertIn("Upper shelf", self.ok("place", "list").out)

    def test_wrong_nesting_is_refused(self):
        self.assert_unchanged("place", "add", "Bag", "--kind", "bag", "--in", "pantry")
        self.assert_unchanged("place", "add", "Bag", "--kind", "bga")
        self.assert_unchanged("place", "change", "box-1", "--in", "bag-jon")

    def test_eaters_of_a_communal_place_are_everyone(self):
        data = self.ok("place", "show", "box-1", "--json").json["data"]
        self.assertEqual(data["eaters"], ["ada", "jon", "mira"])


class Lots(ProgramTest):
    def setUp(self):
        super().setUp()
        self.make_book()

    def test_add_says_what_it_understood(self):
        answer = self.ok("lot", "add", "lentil-pouch", "--units", "4", "--at", "pantry", "--date", "best before end 2027-08",
                         "--lot-code", "L7", "--received", "2027-02-20", "--paid", "4.50")
        self.assertIn("best before end of August 2027: good through Tue 31 Aug 2027", answer.err)
        data = self.ok("lot", "show", "1", "--json").json["data"]
        self.assertEqual(data["good_through"], "2027-08-31")
        self.assertEqual(data["entries"][0]["paid_cents"], 450)
        self.assertIsNone(data["label"])
        # Unread: unsafe for whoever avoids anything, fine for Jon.
        self.assertEqual({each["person"]: each["reason"] for each in data["must_not"]},
                         {"ada": "label_unknown", "mira": "label_unknown"})

    def test_exp_is_use_by_and_the_region_says_what_that_means(self):
        """Codex CXS 1-1985 section 2 has one date under both names; in the US it is about safety for infant formula alone (21 CFR 107.20)."""
        add = ("lot", "add", "jam-jar", "--units", "1", "--at", "pantry", "--date", "EXP 10 MAY 2028", "-n")
        self.assertNotIn("safety", self.ok(*add).err)
        for region, words in (("us", "good through Wed 10 May 2028\n"), ("eu", "good through Wed 10 May 2028, a safety date, because EXP is taken for 'use by'\n")):
            self.ok("settings", "set", "region", region)
            self.assertIn(words, self.ok(*add).err)
        self.assertIn("a safety date\n", self.ok("lot", "add", "jam-jar", "--units", "1", "--at", "pantry", "--date", "use by 10 MAY 2028", "-n").err)

    def test_new_label_names_whom_it_concerns(self):
        answer = self.ok("lot", "add", "lentil-pouch", "--units", "1", "--at", "pantry", "--date", "2028-05", "--label-read-by", "Jon",
                         "--contains", "mustard,sesame")
        self.assertIn("differs", answer.err)
        self.assertIn("Mira must not have it", answer.err)
        self.assertNotIn("Ada must not", answer.err)
        # The food remembers the last label read.
        self.assertEqual(self.ok("food", "show", "lentil-pouch", "--json").json["data"]["label"]["contains"], ["mustard", "sesame"])

    def test_not_into_the_bag_of_somebody_who_must_not_have_it(self):
        unread = self.assert_unchanged("lot", "add", "lentil-pouch", "--units", "1", "--at", "bag-mira", "--date", "2028-05")
        self.assertIn("Mira must not have it", unread.err)
        self.assert_unchanged("lot", "add", "oat-bar", "--units", "1", "--at", "bag-mira", "--date", "2028-05", "--label-read-by", "Jon",
                              "--label-same-as-food")
        communal = self.assert_unchanged("lot", "add", "oat-bar", "--units", "1", "--at", "box-1", "--date", "2028-05", "--label-read-by",
                                         "Jon", "--label-same-as-food")
        self.assertIn("Ada must not have it", communal.err)
        self.add_lot("lentil-pouch", 1, "bag-mira", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")

    def test_wrong_values_are_refused(self):
        def add(*more, units="1", at="pantry", date="2028-05"):
            return ("lot", "add", "lentil-pouch", "--units", units, "--at", at, "--date", date, *more)

        for units in ("0", "1.5", "100001", "99999999999999999999", "many", "1e3", "0x10", " 3", "３"):
            with self.subTest(units=units):
                self.assert_unchanged(*add(units=units))
        for date in ("03/04/2028", "2028-02-30", "2028-13", "soon", "1999-01-01", "2099-01-01"):
            with self.subTest(date=date):
                self.assert_unchanged(*add(date=date))
        self.assert_unchanged(*add(date=""), code=2)  # as if it were left out
        self.assert_unchanged(*add("--received", "2027-03-02"))
        self.assert_unchanged(*add("--paid", "4,50"))
        self.assert_unchanged(*add("--kind", "best"))
        self.assert_unchanged(*add("--label-same-as-food"), code=2)
        self.assert_unchanged(*add(at="pantri"), code=4)
        self.assert_unchanged("lot", "add", "jam-jar", "--units", "1", "--at", "pantry", "--date", "2028-05", "--label-read-by", "Jon",
                              "--label-same-as-food")

    def test_past_day_is_said(self):
        self.assertIn("past", self.ok("lot", "add", "jam-jar", "--units", "1", "--at", "pantry", "--date", "2027-02-01").err)

    def test_list_is_soonest_first_and_filters(self):
        late = self.add_lot("lentil-pouch", 1, "pantry", "--date", "2029-05")
        soon = self.add_lot("jam-jar", 1, "shelf-1", "--date", "2027-05-01")
        none = self.add_lot("cat-food", 1, "pantry", "--date", "none")
        numbers = [each["lot"] for each in self.ok("lot", "list", "--json").json["data"]]
        self.assertEqual(numbers, [soon, late, none])
        self.assertEqual([each["lot"] for each in self.ok("lot", "list", "--food", "Plum jam", "--json").json["data"]], [soon])
        self.assertEqual([each["lot"] for each in self.ok("lot", "list", "--at", "shelf-1", "--json").json["data"]], [soon])
        self.assertEqual([each["lot"] for each in self.ok("lot", "list", "--kind", "pet-food", "--json").json["data"]], [none])
        self.ok("record", "thrown-out", soon, "all")
        self.assertNotIn(soon, [each["lot"] for each in self.ok("lot", "list", "--json").json["data"]])
        self.assertIn(soon, [each["lot"] for each in self.ok("lot", "list", "--all", "--json").json["data"]])
        table = self.ok("lot", "list").out.splitlines()
        self.assertRegex(table[0], r"LOT +FOOD +ON HAND +GOOD THROUGH")
        self.assertEqual(len(table), 3)

    def test_lots_are_named_by_number_or_by_the_only_one_of_a_food(self):
        lot = self.add_lot("lentil-pouch", 2, "pantry", "--date", "2028-05")
        for name in (lot, f"#{lot}", f"lot {lot}", "lentil-pouch", "lentil STEW"):
            self.assertIn("Lentil stew", self.ok("lot", "show", name).out)
        second = self.add_lot("lentil-pouch", 2, "pantry", "--date", "2028-06")
        self.assertIn(f"{lot}, {second}", self.refused(3, "lot", "show", "lentil-pouch").err)
        self.refused(4, "lot", "show", "99")
        self.refused(4, "lot", "show", "jam-jar")
        self.assertIn("lentil-pouch", self.refused(4, "lot", "show", "lentil-poch").err)

    def test_readings_are_appended(self):
        lot = self.add_lot("lentil-pouch", 2, "bag-jon", "--date", "2028-05")
        self.ok("lot", "label", lot, "--read-by", "Mira", "--same")
        answer = self.ok("lot", "label", lot, "--read-by", "Mira", "--contains", "milk")
        self.assertIn("Ada must not have it", answer.err)
        self.ok("lot", "state", lot, "doubtful", "--note", "dented")
        self.assertIn("apart", self.ok("lot", "state", lot, "recalled").err)
        self.ok("lot", "state", lot, "ok")
        self.assertIn("good through Sun 15 Aug 2027", self.ok("lot", "date", lot, "15", "Aug", "2027", "--kind", "use-by").err)
        data = self.ok("lot", "show", lot, "--json").json["data"]
        self.assertEqual(len(data["readings"]), 6)
        self.assertEqual((data["state"], data["good_through"], data["label"]["contains"]), ("ok", "2027-08-15", ["milk"]))
        self.assertIn("Learnt later", self.ok("lot", "show", lot).out)
        self.assert_unchanged("lot", "state", lot, "fine")
        self.assert_unchanged("lot", "label", lot, "--same", code=2)
        self.assert_unchanged("lot", "label", lot, code=2)
        self.assert_unchanged("lot", "date", lot, "03/04/2028")

    def test_label_that_makes_a_place_wrong_says_so(self):
        lot = self.add_lot("lentil-pouch", 1, "bag-mira", "--date", "2028-05", "--label-read-by", "Jon", "--label-same-as-food")
        answer = self.ok("lot", "label", lot, "--read-by", "Jon", "--may-contain", "sesame")
        self.assertIn("must leave there", answer.err)
        self.assertIn("WRONG HERE", self.ok("place", "show", "bag-mira").out)


if __name__ == "__main__":
    unittest.main()
