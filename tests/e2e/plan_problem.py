"""Planning problems as files (docs/planning.md): solved, judged by a second reader of that page, dumped, exported and solved by other solvers.

The cases of tests/oracle were reasoned out by hand; glpsol and cbc read the exported programs by themselves.
"""
import copy
import json
import re
import shutil
import subprocess
import unittest

from jsonschema import Draft7Validator

from _demo import DemoTest
from _plan_check import KINDS, judge
from _support import SOURCE, ProgramTest

CASES = sorted((SOURCE / "tests" / "oracle" / "cases").glob("*.json"))
SCHEMA = Draft7Validator(json.loads((SOURCE / "docs" / "schema" / "problem-1.schema.json").read_text(encoding="utf-8")))


def case_of(path):
    return json.loads(path.read_text(encoding="utf-8"))


def objects_of(value, at=()):
    if isinstance(value, dict):
        yield at
        for name, each in value.items():
            yield from objects_of(each, (*at, name))
    elif isinstance(value, list):
        for index, each in enumerate(value[:1]):
            yield from objects_of(each, (*at, index))


def spoiled(problem):
    """Copies of a problem with one fault of form each."""
    for at in objects_of(problem):
        if at and at[-1] in {"ratings", "appetite", "eaten_this_week"}:
            continue  # their names are ids
        place = problem
        for step in at:
            place = place[step]
        for name in ["", *place]:
            for value in ([None] if name == "" else ["", -1, [["no such type"]]]):
                wrong = copy.deepcopy(problem)
                inner = wrong
                for step in at:
                    inner = inner[step]
                if name == "":
                    inner["surprise"] = value
                else:
                    inner[name] = value
                yield wrong, f"/{'/'.join(map(str, at))}: {name or 'surprise'} = {value}"


class Solving(ProgramTest):
    def solve(self, path, *more, **also):
        return self.ok("plan", "--problem", path, *more, **also).json["data"]

    def assert_judged(self, problem, data):
        faults, levels = judge(problem, data["plan"])
        self.assertEqual(faults, [])
        self.assertEqual(list(levels), data["levels"])
        self.assertEqual(list(levels.values()), data["vector"])
        self.assertEqual(data["proven"], data["bounds"] == data["vector"])
        for bound, value in zip(data["bounds"], data["vector"]):
            self.assertTrue(bound is None or bound <= value, data)

    def test_the_cases_come_to_their_proven_optimum(self):
        self.assertEqual(len(CASES), 12)
        for path in CASES:
            with self.subTest(path.stem):
                case = case_of(path)
                data = self.solve(path)
                self.assertEqual(data["levels"], case["expected"]["levels"])
                self.assertEqual(data["vector"], case["expected"]["vector"])
                self.assertTrue(case["expected"]["proven"])
                self.assertTrue(data["proven"])
                self.assertEqual(data["stage"], case["instance"]["stage"])
                self.assert_judged(case["instance"], data)
                self.assertEqual(judge(case["instance"], case["expected"]["plan"]), ([], dict(zip(data["levels"], data["vector"]))))

    def test_the_second_judge_sees_broken_rules(self):
        for path in CASES:
            case = case_of(path)
            plan = case["expected"]["plan"]
            for part, lines in plan.items():
                for at, line in enumerate(lines):
                    wrong = copy.deepcopy(plan)
                    count = next(name for name in ("units", "servings", "packs") if name in line)
                    wrong[part][at][count] += 1
                    faults, levels = judge(case["instance"], wrong)
                    self.assertTrue(faults or list(levels.values()) != case["expected"]["vector"], f"{path.stem}: {part} {at}")
                    del wrong[part][at]
                    faults, levels = judge(case["instance"], wrong)
                    self.assertTrue(faults or list(levels.values()) != case["expected"]["vector"], f"{path.stem}: {part} {at}")

    def test_lists_are_sorted_and_the_order_of_a_file_does_not_count(self):
        for path in CASES:
            with self.subTest(path.stem):
                problem = case_of(path)["instance"]
                first = self.ok("plan", "--problem", "-", stdin=json.dumps(problem))
                turned = {name: value[::-1] if isinstance(value, list) else value for name, value in problem.items()}
                self.assertEqual(self.ok("plan", "--problem", "-", stdin=json.dumps(turned)).out, first.out)
                self.assertEqual(self.ok("plan", "--problem", path, "--json").out, first.out)
                plan = first.json["data"]["plan"]
                if problem["stage"] == "refill":
                    self.assertEqual(plan["packs"], sorted(plan["packs"], key=lambda each: each["offer"]))
                    self.assertEqual(plan["unmet"], sorted(plan["unmet"], key=lambda each: each["line"]))
                    continue
                meals = {meal["id"]: (meal["day"], KINDS.index(meal["kind"]), meal["id"]) for meal in problem["meals"]}
                self.assertEqual(plan["opened"], sorted(plan["opened"], key=lambda each: (meals[each["meal"]], each["lot"])))
                self.assertEqual(plan["servings"], sorted(plan["servings"], key=lambda each: (meals[each["meal"]], each["eater"], each["product"])))
                for part in ("donated", "wasted"):
                    self.assertEqual(plan[part], sorted(plan[part], key=lambda each: each["lot"]))

    def test_optional_members_count(self):
        """An open jar, somebody's own limits, a wish, what was shown: judged with them, and each changes the answer."""
        problem = {
            "stage": "eat-down", "today": 0, "week_start": 0, "horizon_days": 21, "params": {"tolerance": 8},
            "eaters": [{"id": "ana", "monotony": 3, "eaten_this_week": {"jam": 1}}, {"id": "ben", "avoid": ["nut"]}],
            "products": [{"id": "bar", "servings": 1, "kinds": ["snack"], "contains": ["nut"]},
                         {"id": "jam", "servings": 4, "open_days": 9, "kinds": ["breakfast"]}],
            "lots": [{"id": "bars", "product": "bar", "units": 2, "last_good_day": 9, "may_donate": False},
                     {"id": "jar", "product": "jam", "units": 1, "last_good_day": 5, "already_open": True, "open_servings": 3},
                     {"id": "jars", "product": "jam", "units": 1, "last_good_day": 18}],
            "meals": [{"id": f"{day:02} {kind}", "day": day, "kind": kind, "eaters": ["ana", "ben"]} for day in range(0, 12) for kind in ("breakfast", "snack")],
            "published": {"until": 6, "servings": [{"product": "bar", "meal": "03 snack", "eater": "ana", "servings": 1}]},
            "keep_published": True,
            "wished": [{"product": "jam", "meal": "04 breakfast", "eater": "ben", "servings": 1}],
        }
        data = self.solve("-", "--prove", stdin=json.dumps(problem))
        self.assert_judged(problem, data)
        self.assertEqual(data["levels"], ["wishes", "dropped", "wasted", "donated", "dislike", "late", "changed", "order"])
        self.assertEqual(data["vector"][:4], [0, 0, 0, 0])
        self.assertIn({"product": "bar", "meal": "03 snack", "eater": "ana", "servings": 1}, data["plan"]["servings"])
        self.assertIn({"product": "jam", "meal": "04 breakfast", "eater": "ben", "servings": 1}, data["plan"]["servings"])
        unwanted = copy.deepcopy(problem)
        next(meal for meal in unwanted["meals"] if meal["id"] == "04 breakfast")["without"] = ["jam"]
        data = self.solve("-", stdin=json.dumps(unwanted))
        self.assert_judged(unwanted, data)
        self.assertEqual(data["vector"][0], 1)

    def test_units_that_lie_well_stay_when_asked(self):
        case = case_of(SOURCE / "tests" / "oracle" / "cases" / "refill-6-handling-before-dates.json")["instance"]
        case["keep_in_place"] = True
        data = self.solve("-", "--nodes", 5, stdin=json.dumps(case))
        self.assertEqual(data["levels"][:2], ["unmet", "displaced"])
        self.assert_judged(case, data)

    def test_the_clock_is_said_and_the_proof_is_asked_for(self):
        self.assertIn("another answer", self.ok("plan", "--problem", CASES[0], "--seconds", "20").err)
        self.assertEqual(self.ok("plan", "--problem", CASES[0], "--prove").err, "")

    def test_a_proof_that_is_not_reached_is_said(self):
        """No time at all: what needs branching stays open, packs here."""
        path = SOURCE / "tests" / "oracle" / "cases" / "refill-2-packs-and-repeats.json"
        answer = self.run_it("plan", "--problem", path, "--prove", "--seconds", "0.000001")
        self.assertEqual(answer.code, 5, str(answer))
        self.assertIn("not proven best", answer.err)
        self.assertFalse(answer.json["data"]["proven"])
        self.assert_judged(case_of(path)["instance"], answer.json["data"])
        self.assertEqual(self.ok("plan", "--problem", path, "--seconds", "0.000001").out, answer.out)
        self.make_book()
        self.ok("food", "change", "oat-bar", "--pack", "Corner shop:6:3.90", "--pack", "Market:4:2.70", "--mass", "40g")
        self.ok("food", "change", "lentil-pouch", "--pack", "Corner shop:2:5.00")
        answer = self.run_it("plan", "--prove", "--seconds", "0.000001", "--json")
        self.assertEqual(answer.code, 5, str(answer))
        self.assertIn("not_proven", answer.err)
        self.assertIn("another answer", answer.err)
        self.assertEqual(self.ok("plan", "--prove").err, "")


class Form(ProgramTest):
    def test_the_schema_and_the_program_accept_and_refuse_the_same(self):
        for stem in ("eat-down-5-published-plan", "refill-1-pull-and-move-in"):
            problem = case_of(SOURCE / "tests" / "oracle" / "cases" / f"{stem}.json")["instance"]
            self.assertTrue(SCHEMA.is_valid(problem))
            seen = {True: 0, False: 0}
            for wrong, what in spoiled(problem):
                answer = self.run_it("plan", "--problem", "-", "--nodes", 1, stdin=json.dumps(wrong))
                self.assertIn(answer.code, (0, 3), str(answer))
                read = answer.code == 0
                # What names something else may have the form and still name nothing.
                dangling = not read and "of this problem" in answer.err
                self.assertTrue(SCHEMA.is_valid(wrong) == read or dangling, f"{stem} {what}\n{answer.err}")
                seen[read] += 1
            self.assertGreater(seen[False], 60)
            self.assertGreater(seen[True], 3)

    def test_every_case_has_the_form(self):
        for path in CASES:
            self.assertEqual([error.message for error in SCHEMA.iter_errors(case_of(path)["instance"])], [], path.stem)

    def test_all_faults_are_told_at_once(self):
        problem = case_of(CASES[0])["instance"]
        problem["today"] = "today"
        problem["lots"][0]["units"] = -1
        problem["lots"][1]["product"] = "no-such-thing"
        problem["eaters"][0]["id"] = "a|b"
        problem["meals"][0]["when"] = 1
        path = self.folder / "wrong.json"
        path.write_text(json.dumps(problem), encoding="utf-8")
        answer = self.refused(3, "plan", "--problem", path, "--json")
        told = [each["where"] for each in answer.error["problems"]]
        for where in ("/today", "/lots/0/units", "/lots/1/product", "/eaters/0/id", "/meals/0/when"):
            self.assertIn(where, told)
        self.assertTrue(all(each["hint"] for each in answer.error["problems"]))
        self.assertIn("/lots/0/units", self.refused(3, "plan", "--problem", path).err)
        for option in (("--dump-problem", "-"), ("--export-model", self.folder / "x.lp")):
            self.refused(3, "plan", "--problem", path, *option)
        self.assertFalse((self.folder / "x.lp").exists())

    def test_what_is_no_problem_is_refused(self):
        self.refused(3, "plan", "--problem", "-", stdin="{")
        self.refused(3, "plan", "--problem", "-", stdin="[]")
        self.refused(4, "plan", "--problem", self.folder / "none.json")
        case = CASES[0]
        for wrong in (["--export-model", "x.txt"], ["--export-model", ".lp"], ["--export-model", "x.lp", "--level", "cost"], ["--level", "late"],
                      ["--plain-names"], ["--stage", "refill"], ["--kit", "home-kit"], ["--all"], ["--compare"],
                      ["--dump-problem", "x.json", "--export-model", "x.lp"], ["--dump-problem", "x.json", "--stage", "refill"]):
            self.refused(2, "plan", "--problem", case, *wrong)
        for wrong in (["--nodes", "0"], ["--nodes", "many"], ["--seconds", "0"], ["--seconds", "-1"], ["--seconds", "1e3"], ["--seconds", "nan"]):
            self.refused(3, "plan", "--problem", case, *wrong)
        self.refused(4, "plan", "--dump-problem", "x.json")  # there is no book


class Models(ProgramTest):
    def solved_by_glpsol(self, path):
        kind = "--lp" if path.suffix == ".lp" else "--freemps"
        result = self.folder / "glpsol.txt"
        done = subprocess.run(["glpsol", kind, path, "-w", result], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=120, check=False)
        self.assertEqual(done.returncode, 0, done.stdout.decode())
        words = re.search(r"^s (\S+ .*)$", result.read_text(), re.MULTILINE).group(1).split()
        self.assertIn(words[:1] + words[3:-1], (["mip", "o"], ["bas", "f", "f"]), words)
        return float(words[-1])

    def solved_by_cbc(self, path):
        result = self.folder / "cbc.txt"
        done = subprocess.run(["cbc", path, "-ratio", "0", "-allow", "0", "-solve", "-solu", result], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=120, check=False)
        found = re.match(r"Optimal - objective value (\S+)", result.read_text())
        self.assertTrue(found, done.stdout.decode())
        return float(found.group(1))

    def test_other_solvers_find_the_value_of_every_level(self):
        self.assertTrue(shutil.which("glpsol") and shutil.which("cbc"), "contrib/packages.txt names them")
        for path in CASES:
            expected = case_of(path)["expected"]
            for name, value in zip(expected["levels"], expected["vector"]):
                for ending in ("lp", "mps"):
                    with self.subTest(f"{path.stem} {name} {ending}"):
                        target = self.folder / f"model.{ending}"
                        answer = self.ok("plan", "--problem", path, "--export-model", target, "--level", name)
                        self.assertEqual(answer.out, "")
                        self.assertAlmostEqual(self.solved_by_glpsol(target), value, places=5)
                        self.assertAlmostEqual(self.solved_by_cbc(target), value, places=5)

    def test_the_first_level_is_the_default_and_dry_runs_write_nothing(self):
        first, named = self.folder / "a.lp", self.folder / "b.lp"
        self.ok("plan", "--problem", CASES[0], "--export-model", first)
        self.ok("plan", "--problem", CASES[0], "--export-model", named, "--level", "wasted")
        self.assertEqual(first.read_text(), named.read_text())
        dry = self.folder / "c.mps"
        self.ok("plan", "--problem", CASES[0], "--export-model", dry, "-n")
        self.assertFalse(dry.exists())


class Dumps(DemoTest):
    NAMES = re.compile(r"(eater|product|lot|tag|meal|container|kit|line|offer|food:item)-\d+")

    def dump(self, *more):
        answer = self.ok("plan", "--dump-problem", "-", *more)
        problem = answer.json
        self.assertEqual([error.message for error in SCHEMA.iter_errors(problem)], [])
        self.assertEqual(self.ok("plan", "--problem", "-", "--dump-problem", "-", stdin=answer.out).out, answer.out)
        return answer.out, problem

    def solved(self, text, *more):
        data = self.ok("plan", "--problem", "-", *more, stdin=text).json["data"]
        self.assertEqual(judge(json.loads(text), data["plan"]), ([], dict(zip(data["levels"], data["vector"]))))
        return data

    def told(self, levels):
        return {"levels": [each["name"] for each in levels], "vector": [each["value"] for each in levels], "bounds": [each["bound"] for each in levels]}

    def texts(self, value):
        if isinstance(value, str):
            yield value
        elif isinstance(value, dict):
            for name, each in value.items():
                if name in {"ratings", "appetite", "eaten_this_week"}:
                    yield from each
                elif name not in {"stage", "name", "kind", "kinds", "roles", "role", "place"}:
                    yield from self.texts(each)
                elif name in {"roles", "role"}:
                    yield from [role for role in ([each] if isinstance(each, str) else each) if ":" in role]
        elif isinstance(value, list):
            for each in value:
                yield from self.texts(each)

    def test_the_plan_of_the_book_is_the_solution_of_its_problems(self):
        for day in (self.env["LARDERLOOP_NOW"], "2027-04-08"):
            self.on(day)
            meals, _ = self.dump()
            kits = {kit: self.dump("--stage", "refill", "--kit", kit)[0] for kit in ("car-kit", "home-kit")}
            before = self.export()
            plan = self.data("plan", "--nodes", 20)
            self.assertNotEqual(self.export(), before, "a plan is kept, a dump is not")
            found = self.solved(meals, "--nodes", 20)
            self.assertEqual({name: found[name] for name in ("levels", "vector", "bounds")}, self.told(plan["eat_down"]["levels"]))
            for kit in plan["kits"]:
                found = self.solved(kits[kit["kit"]], "--nodes", 20)
                self.assertEqual({name: found[name] for name in ("levels", "vector", "bounds")}, self.told(kit["levels"]), kit["kit"])

    def test_plain_names_hide_the_household_and_keep_the_levels(self):
        for stage in ([], ["--stage", "refill", "--kit", "home-kit"]):
            named, _ = self.dump(*stage)
            plain, problem = self.dump(*stage, "--plain-names")
            texts = set(self.texts(problem))
            self.assertGreater(len(texts), 100)
            self.assertEqual({text for text in texts if not self.NAMES.fullmatch(text)}, set())
            self.assertEqual(problem["name"], problem["stage"])
            one, other = self.solved(named, "--nodes", 5), self.solved(plain, "--nodes", 5)
            for part in ("levels", "vector", "bounds", "proven"):
                self.assertEqual(one[part], other[part])
            self.assertEqual({part: len(lines) for part, lines in one["plan"].items()}, {part: len(lines) for part, lines in other["plan"].items()})

    def test_kits_have_to_be_named_and_to_be_there(self):
        self.refused(2, "plan", "--dump-problem", "-", "--stage", "refill")
        self.refused(4, "plan", "--dump-problem", "-", "--stage", "refill", "--kit", "no-such-kit")
        self.refused(2, "plan", "--dump-problem", "-", "--stage", "refil", "--kit", "car-kit")

    def test_a_kit_as_an_integer_program(self):
        target = self.folder / "kit.mps"
        self.ok("plan", "--export-model", target, "--stage", "refill", "--kit", "car-kit", "--level", "energy")
        levels = {level["name"]: level for level in self.kit_plan("car-kit")["levels"]}
        self.assertTrue(levels["energy"]["proven"])
        result = self.folder / "cbc.txt"
        subprocess.run(["cbc", target, "-ratio", "0", "-allow", "0", "-solve", "-solu", result], stdout=subprocess.DEVNULL, timeout=120, check=True)
        self.assertAlmostEqual(float(result.read_text().split()[4]), levels["energy"]["value"], places=5)


if __name__ == "__main__":
    unittest.main()
