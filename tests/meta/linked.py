"""One run-time library of C++ in the program: a copy linked in and another one that a shared library brings along must not meet, and
looking up the symbols of the second one costs a good part of every start."""
import os
import re
import subprocess
import unittest

BINARY = os.environ["LARDERLOOP_BIN"]


def needed(binary):
    told = subprocess.run(["readelf", "--dynamic", "--wide", binary], capture_output=True, text=True, check=True).stdout
    return set(re.findall(r"\(NEEDED\).*\[(.*)\]", told))


def loaded(binary):
    told = subprocess.run(["ldd", binary], capture_output=True, text=True, check=True).stdout
    return {line.split()[0] for line in told.splitlines() if "=>" in line}


class Linked(unittest.TestCase):
    def test_only_what_the_program_asks_for_itself_brings_the_cpp_library(self):
        asked, there = needed(BINARY), loaded(BINARY)
        self.assertIn("libc.so.6", asked)
        if "libstdc++.so.6" not in asked:
            self.assertNotIn("libstdc++.so.6", there, f"one of these brings it along: {sorted(asked)}")


if __name__ == "__main__":
    unittest.main()
