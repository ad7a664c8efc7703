"""The manual, the README and the page on the household document say what the program really has.

Compared with the program itself: its help names the commands, options and exit codes, its source the variables it reads.
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

BINARY = os.environ["LARDERLOOP_BIN"]
SOURCE = pathlib.Path(os.environ["LARDERLOOP_SRC"])
MANUAL = SOURCE / "docs" / "man" / "larderloop.1"
SECTIONS = ["NAME", "SYNOPSIS", "DESCRIPTION", "COMMANDS", "OPTIONS", "EXIT STATUS", "ENVIRONMENT", "FILES", "EXAMPLES", "SEE ALSO"]


def run(*arguments, **more):
    env = {"PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8", "TZ": "UTC"}
    for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS", "LSAN_OPTIONS"):
        if name in os.environ:
            env[name] = os.environ[name]
    return subprocess.run([BINARY, *map(str, arguments)], env={**env, **more}, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=120, check=False, encoding="utf-8")


def ok(*arguments, **more):
    done = run(*arguments, **more)
    if done.returncode != 0:
        raise AssertionError(f"{arguments}: {done.returncode}\n{done.stderr}")
    return done.stdout


OVERVIEW = ok("help")


def commands():
    """{command: its group}, as the overview lists them."""
    found, group = {}, ""
    for line in OVERVIEW.splitlines():
        if re.fullmatch(r"[A-Z][^:]*:", line):
            group = line[:-1]
        match = re.match(r"  ([a-z][a-z-]*(?: [a-z][a-z-]*)?)(?: {2,}|$)", line)
        if match and not group.startswith(("Options", "Exit")):
            found[match.group(1)] = group
    return found


def options_of(text):
    """The long options that lines of a help text declare."""
    return set(re.findall(r"^ +(?:-\w, )?(--[a-z][a-z-]*)", text, re.MULTILINE))


def plain(roff):
    """The words of the manual without its markup, as {section: text}; sub-sections stay as lines '.SS ...'."""
    text = re.sub(r"\\f[BIRP]", "", roff).replace("\\-", "-").replace("\\&", "").replace("\\(aq", "'").replace("\\e", "\\")
    parts = re.split(r"^\.SH (.*)$", text, flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2]))


class Manual(unittest.TestCase):
    page = plain(MANUAL.read_text(encoding="utf-8"))
    commands = commands()

    def group(self, name):
        parts = re.split(r"^\.SS (.*)$", self.page["COMMANDS"], flags=re.MULTILINE)
        return dict(zip(parts[1::2], parts[2::2]))[name]

    def test_the_readers_below_find_something(self):
        self.assertGreater(len(self.commands), 40)
        self.assertIn("record given-away", self.commands)
        self.assertEqual(self.commands["lot add"], "Lots")
        self.assertIn("--label-same-as-food", options_of(ok("help", "lot", "add")))

    def test_sections_in_their_order(self):
        self.assertEqual(list(self.page), SECTIONS)

    def test_every_command_is_told_in_its_group_and_no_other(self):
        for group in sorted(set(self.commands.values())):
            heads = re.findall(r"^\.TP\n([a-z][^\n]*)", self.group(group), re.MULTILINE)
            told = {re.match(r"[a-z][a-z-]*(?: [a-z][a-z-]*)?", head).group(0) for head in heads}
            self.assertEqual(told, {name for name, its in self.commands.items() if its == group})

    def test_every_option_of_every_command_is_told(self):
        everywhere = options_of(OVERVIEW)
        missing = []
        for name, group in self.commands.items():
            words = set(re.findall(r"--[a-z][a-z-]*", self.group(group)))
            missing += [f"{name} {each}" for each in options_of(ok("help", *name.split())) - everywhere - words
                        if not (each.startswith("--no-") and "--" + each[len("--no-"):] in words)]
        self.assertEqual(missing, [])

    def test_no_option_is_told_that_no_command_has(self):
        known = options_of(OVERVIEW)
        for name in self.commands:
            text = ok("help", *name.split())
            known |= options_of(text)
            if "each also as --no-" in text:
                known |= {"--no-" + each[2:] for each in options_of(text)}
        told = set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", "".join(self.page.values())))
        self.assertEqual(told - known, set())

    def test_options_that_work_everywhere(self):
        lines = OVERVIEW.split("Options that work everywhere:")[1].split("Exit codes:")[0]
        declared = set(re.findall(r"^ +(-\w, )?(--[a-z-]+)", lines, re.MULTILINE))
        self.assertGreater(len(declared), 8)
        for short, name in declared:
            self.assertRegex(self.page["OPTIONS"], rf"(?m)^{short}{name}\b", "under OPTIONS")

    def test_exit_codes(self):
        said = dict(re.findall(r"^  (\d+) +(.*)$", OVERVIEW.split("Exit codes:")[1], re.MULTILINE))
        told = set(re.findall(r"^\.TP\n(\d+)$", self.page["EXIT STATUS"], re.MULTILINE))
        self.assertEqual(told, set(said))
        in_source = set(re.findall(r"\{(\d+), \"", (SOURCE / "src/cli/exit_status.cpp").read_text(encoding="utf-8").split("exit_meanings")[1]))
        self.assertEqual(told, in_source)

    def test_variables(self):
        read = set()
        for path in (SOURCE / "src").rglob("*.cpp"):
            text = path.read_text(encoding="utf-8")
            read |= set(re.findall(r'\b(?:variable|getenv|secure_getenv)\("([A-Z_]+)"\)', text))
        self.assertIn("LARDERLOOP_BOOK", read)
        told = set(re.findall(r"^\.TP\n([A-Z_]+)$", self.page["ENVIRONMENT"], re.MULTILINE))
        self.assertEqual(told, read)

    def test_allergens_and_diets_are_those_of_the_help(self):
        text = " ".join(ok("help", "person", "add").split())
        keys, diets = re.search(r"Allergen keys: (.*?)\. Diets: (.*?)\.", text).groups()
        part = self.group("Words for allergens and diets")
        self.assertIn(keys, part)
        self.assertIn(diets, part)

    def test_the_formatter_has_no_complaint(self):
        """By groff or man where there is one; by rules of our own (man(7)) everywhere."""
        requests = re.findall(r"^\.([A-Za-z\\]\S*)", MANUAL.read_text(encoding="utf-8"), re.MULTILINE)
        self.assertEqual(set(requests) - {"\\\"", "TH", "SH", "SS", "PP", "TP", "RS", "RE", "BR", "br", "nf", "fi"}, set())
        self.assertEqual(requests.count("RS"), requests.count("RE"))
        self.assertEqual(requests.count("nf"), requests.count("fi"))
        for command in (["groff", "-man", "-ww", "-Tutf8", str(MANUAL)], ["man", "--warnings", "-l", str(MANUAL)]):
            if shutil.which(command[0]):
                done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, env={**os.environ, "LC_ALL": "C.UTF-8", "MANPAGER": "cat"}, check=False)
                self.assertEqual((done.returncode, done.stderr), (0, b""), command)

    def test_examples_name_real_commands(self):
        for line in re.findall(r"^larderloop (.*)$", self.page["EXAMPLES"], re.MULTILINE):
            self.assertTrue(any((line + " ").startswith(name + " ") for name in self.commands), line)


class Pages(unittest.TestCase):
    def test_every_command_of_the_readme_exists_with_its_options(self):
        text = (SOURCE / "README.md").read_text(encoding="utf-8")
        lines = re.findall(r"(?:^|`)larderloop ([^#`\n]*)", text, re.MULTILINE)
        lines = [line for line in lines if re.match(r"[a-z-]", line) and not line.startswith(("keeps", "never"))]
        self.assertGreater(len(lines), 15)
        for line in lines:
            name = next((each for each in sorted(commands(), key=len, reverse=True) if (line + " ").startswith(each + " ")), None)
            self.assertIsNotNone(name, f"larderloop {line}")
            helped = ok("help", *name.split())
            for option in re.findall(r"(?<!\S)--?[a-z][a-z-]*", line):
                self.assertRegex(helped, rf"(?m)^ +(-\w, )?{option}\b", f"larderloop {line}")

    def test_links_of_the_pages_lead_somewhere(self):
        checked = 0
        for page in [SOURCE / "README.md", SOURCE / "DEVELOPERS.md", *sorted((SOURCE / "docs").rglob("*.md"))]:
            for target in re.findall(r"\]\(([^)#]+)", page.read_text(encoding="utf-8")):
                if not target.startswith("http"):
                    self.assertTrue((page.parent / target).exists(), f"{page.name}: {target}")
                    checked += 1
        self.assertGreater(checked, 5)

    def test_files_that_the_developers_page_names_exist(self):
        text = (SOURCE / "DEVELOPERS.md").read_text(encoding="utf-8")
        paths = set(re.findall(r"`((?:src|include|tests|docs|data|contrib|\.ci)/[\w./-]*)`", text))
        self.assertGreater(len(paths), 20)
        self.assertEqual({path for path in paths if not (SOURCE / path).exists()}, set())

    def test_the_example_of_the_household_page_makes_a_sound_book(self):
        page = (SOURCE / "docs" / "household-document.md").read_text(encoding="utf-8")
        examples = re.findall(r"^```json\n(.*?)^```", page, re.MULTILINE | re.DOTALL)
        self.assertEqual(len(examples), 1)
        with tempfile.TemporaryDirectory(prefix="larderloop-test-") as folder:
            book, document = pathlib.Path(folder) / "a.book", pathlib.Path(folder) / "a.json"
            document.write_text(examples[0], encoding="utf-8")
            more = {"HOME": folder, "LARDERLOOP_NOW": "2027-04-03"}
            ok("new", book, "--from", document, **more)
            ok("--book", book, "check", **more)
            self.assertEqual(json.loads(ok("--book", book, "export", **more)), json.loads(examples[0]))
            document.write_text(examples[0].replace('"lentil-pouch", "mark"', '"no-such-food", "mark"'), encoding="utf-8")
            self.assertEqual(run("new", pathlib.Path(folder) / "b.book", "--from", document, **more).returncode, 3)


if __name__ == "__main__":
    unittest.main()
