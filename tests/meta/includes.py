"""The rooms of docs/decisions/0001-layers.md, kept true by reading the source.

What is checked: who includes whom; libraries only in their rooms; SQL only in store; no notes of unfinished work; no long files; nothing
else at the top. Each check is also run on a planted fault, so that a check that sees nothing is itself a failure.
"""
import os
import pathlib
import re
import subprocess
import unittest

SOURCE = pathlib.Path(os.environ["LARDERLOOP_SRC"])
HERE = pathlib.Path(__file__).name

# core <- calendar, plan, intake, store (never each other) <- app <- render, paper <- cli; core <- dav, web <- cli
MAY_INCLUDE = {
    "core": {"core"},
    "calendar": {"core", "calendar"},
    "plan": {"core", "plan"},
    "intake": {"core", "intake"},
    "store": {"core", "store"},
    "dav": {"core", "dav"},
    "app": {"core", "calendar", "plan", "intake", "store", "app"},
    "render": {"core", "calendar", "plan", "intake", "store", "app", "render"},
    "paper": {"core", "app", "paper"},
    "web": {"core", "web"},
    "cli": {"core", "calendar", "plan", "intake", "store", "app", "render", "paper", "web", "dav", "cli"},
}

# Header of a library -> the rooms that may name it; None is every room.
LIBRARIES = {
    "libical/ical.h": {"calendar"},
    "uuid/uuid.h": {"calendar"},
    "nettle/base64.h": {"app"},
    "nettle/sha2.h": {"app"},
    "sqlite3.h": {"store"},
    "iconv.h": {"intake"},
    "curl/curl.h": {"dav"},
    "pugixml.hpp": {"dav"},
    "dlfcn.h": {"cli", "dav"},
    "nlohmann/json.hpp": {"intake", "render"},
    "CLI/CLI.hpp": {"cli"},
    "cairo-pdf.h": {"paper"},
    "pango/pangocairo.h": {"paper"},
    "qrencode.h": {"paper"},
    "httplib.h": {"web"},
    "zlib.h": {"web"},
    "CbcModel.hpp": {"plan"},
    "CbcSolver.hpp": {"plan"},
    "ClpSimplex.hpp": {"plan"},
    "CoinPackedMatrix.hpp": {"plan"},
    "OsiClpSolverInterface.hpp": {"plan"},
    "date/date.h": {"core"},
    "tl/expected.hpp": {"core"},
    "fmt/core.h": None,
    "fmt/format.h": None,
}
# Public headers are seen by everyone, so they may only name what everyone may.
PUBLIC_LIBRARIES = {"date/date.h", "tl/expected.hpp"}
# The operating system is for the rooms that touch files and terminals.
SYSTEM = {"fcntl.h", "link.h", "malloc.h", "netdb.h", "poll.h", "sys/eventfd.h", "sys/ioctl.h", "sys/mman.h", "sys/random.h", "sys/socket.h", "sys/stat.h", "sys/types.h", "termios.h", "unistd.h"}
SYSTEM_ROOMS = {"store", "cli", "web"}

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
STRING = re.compile(r'R"(\w*)\((.*?)\)\1"|"((?:[^"\\\n]|\\.)*)"', re.DOTALL)
SQL = re.compile(
    r"\b(select\s.+\sfrom\s|insert\s+(or\s+\w+\s+)?into\s|update\s+\w+\s+set\s|delete\s+from\s|"
    r"(create|drop|alter)\s+(table|index|trigger|view)\b|pragma\s+\w|begin\s+(immediate|exclusive|deferred))",
    re.IGNORECASE | re.DOTALL)
UNFINISHED = re.compile(r"\b(" + "TO" + "DO|FIX" + "ME|X" + "XX)\\b")
MAX_LINES = 499

TOP = {"CMakeLists.txt", "CMakePresets.json", "DEVELOPERS.md", "LICENSE", "README.md", "contrib", "data", "docs", "include", "src", "tests"}


def include_faults(room, public, text):
    """What the includes of one file of a room break; `public` is a header below include/."""
    faults = []
    for quote, name in INCLUDE.findall(text):
        parts = name.split("/")
        if name.startswith("larderloop/"):
            parts = parts[1:]
        if quote == '"':
            other = parts[0]
            if other not in MAY_INCLUDE:
                faults.append(f'"{name}" names no room')
            elif other not in MAY_INCLUDE[room]:
                faults.append(f'"{name}": {room} may not include {other}')
            elif public and not name.startswith("larderloop/"):
                faults.append(f'"{name}": a public header includes a private one')
            elif not name.startswith("larderloop/") and other != room:
                faults.append(f'"{name}": a private header of another room')
        elif name in SYSTEM:
            if room not in SYSTEM_ROOMS or public:
                faults.append(f"<{name}>: the operating system is for sources of {sorted(SYSTEM_ROOMS)}")
        elif "." in name or "/" in name:
            if name not in LIBRARIES:
                faults.append(f"<{name}>: an unknown library; say in {HERE} which room it is for")
            elif LIBRARIES[name] is not None and room not in LIBRARIES[name]:
                faults.append(f"<{name}>: only for {sorted(LIBRARIES[name])}")
            elif public and name not in PUBLIC_LIBRARIES:
                faults.append(f"<{name}>: not in a public header")
    return faults


def sql_faults(text):
    """SQL statements in the string literals of a source text; neighbouring literals count as one."""
    code = re.sub(r"//[^\n]*", "", text)
    joined = re.sub(r'"\s*\n\s*"', "", code)
    found = []
    for match in STRING.finditer(joined):
        literal = match.group(2) if match.group(2) is not None else match.group(3)
        if literal and SQL.search(literal + " "):
            found.append(literal[:60])
    return found


def sources():
    """(room, is it public, path) of every C++ file of the program."""
    for base, public in (("src", False), ("include/larderloop", True)):
        for path in sorted((SOURCE / base).rglob("*")):
            if path.suffix in {".cpp", ".h"}:
                yield path.relative_to(SOURCE / base).parts[0], public, path


def written_files():
    """Every text that people write: all of the tree without data, what is built, and what git keeps."""
    for top in ("src", "include", "tests", "contrib", "docs", ".ci"):
        for path in sorted((SOURCE / top).rglob("*")):
            if path.is_file() and path.suffix not in {".pyc"} and "__pycache__" not in path.parts:
                yield path
    for path in sorted(SOURCE.iterdir()):
        if path.is_file() and path.name != ".git":
            yield path


def is_data(path):
    """Tables, recorded cases, schemas, dumps of old books, the manual and the licence are data: as long as they must be."""
    return path.suffix in {".csv", ".json", ".ics", ".1"} or path.name == "LICENSE" or "store_fixtures" in path.parts


class Rooms(unittest.TestCase):
    def test_every_file_stands_in_a_known_room(self):
        rooms = {room for room, _, _ in sources()}
        self.assertEqual(rooms, set(MAY_INCLUDE))

    def test_includes_go_in_one_direction(self):
        faults = [f"{path.relative_to(SOURCE)}: {fault}" for room, public, path in sources()
                  for fault in include_faults(room, public, path.read_text(encoding="utf-8"))]
        self.assertEqual(faults, [], "\n".join(faults))

    def test_every_library_of_the_table_is_used(self):
        used = {name for _, _, path in sources() for _, name in INCLUDE.findall(path.read_text(encoding="utf-8"))}
        self.assertEqual(set(LIBRARIES) - used, set(), "take it off the table")
        self.assertEqual(SYSTEM - used, set(), "take it off the table")

    def test_planted_faults_are_seen(self):
        for room, public, line in (
            ("core", False, '#include "larderloop/store/book.h"'),
            ("plan", False, '#include "larderloop/calendar/rule.h"'),
            ("store", False, '#include "larderloop/intake/document.h"'),
            ("calendar", False, '#  include "larderloop/plan/planner.h"'),
            ("app", False, '#include "larderloop/render/table.h"'),
            ("render", False, '#include "larderloop/cli/program.h"'),
            ("app", False, '#include "store/sqlite_handle.h"'),
            ("app", True, '#include "app/book_view.h"'),
            ("core", False, '#include "elsewhere/x.h"'),
            ("app", False, "#include <sqlite3.h>"),
            ("core", False, "#include <nlohmann/json.hpp>"),
            ("intake", True, "#include <nlohmann/json.hpp>"),
            ("store", True, "#include <sqlite3.h>"),
            ("plan", False, "#include <uuid/uuid.h>"),
            ("app", False, "#include <date/date.h>"),
            ("core", False, "#include <unistd.h>"),
            ("cli", False, "#include <curl/curl.h>"),
        ):
            self.assertEqual(len(include_faults(room, public, line)), 1, line)
        self.assertEqual(include_faults("cli", False, '#include "larderloop/core/date.h"\n#include <vector>\n#include <CLI/CLI.hpp>'), [])


class Sources(unittest.TestCase):
    def test_sql_is_only_in_store(self):
        faults = [f"{path.relative_to(SOURCE)}: {found}" for room, _, path in sources() if room != "store"
                  for found in sql_faults(path.read_text(encoding="utf-8"))]
        self.assertEqual(faults, [], "\n".join(faults))

    def test_sql_is_recognised(self):
        in_store = [found for room, _, path in sources() if room == "store" for found in sql_faults(path.read_text(encoding="utf-8"))]
        self.assertGreater(len(in_store), 10, "the store's own statements must be seen")
        for text in ('run("SELECT a FROM lot");', 'run("DELETE "\n    "FROM lot");', 'run(R"(update lot set a = 1)");', 'run("PRAGMA user_version");'):
            self.assertEqual(len(sql_faults(text)), 1, text)
        self.assertEqual(sql_faults('say("taken from the pantry"); // select a from b'), [])

    def test_nothing_is_left_unfinished(self):
        faults = []
        for path in written_files():
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                if UNFINISHED.search(line):
                    faults.append(f"{path.relative_to(SOURCE)}:{number}: {line.strip()}")
        self.assertEqual(faults, [], "\n".join(faults))
        self.assertTrue(UNFINISHED.search("// TO" + "DO: later"))

    def test_files_are_short(self):
        long_ones = {str(path.relative_to(SOURCE)): len(path.read_text(encoding="utf-8").splitlines()) for path in written_files() if not is_data(path)}
        self.assertGreater(len(long_ones), 200, "the walk over the tree finds too little")
        long_ones = {path: lines for path, lines in long_ones.items() if lines > MAX_LINES}
        self.assertEqual(long_ones, {}, "one idea a file")

    def test_nothing_else_stands_at_the_top(self):
        found = set()
        if (SOURCE / ".git").exists():
            listed = subprocess.run(["git", "-c", f"safe.directory={SOURCE}", "-C", str(SOURCE), "ls-files", "-z"],
                                    stdout=subprocess.PIPE, check=True).stdout
            found = {name.split("/")[0] for name in listed.decode("utf-8").split("\0") if name}
        else:
            found = {path.name for path in SOURCE.iterdir()} - {"build"}
        self.assertEqual({name for name in found if not name.startswith(".")} - TOP, set())
        self.assertEqual({name for name in TOP if not (SOURCE / name).exists()}, set())


if __name__ == "__main__":
    unittest.main()
