"""Completion in the real shells: bash by its completion function, fish by complete -C, zsh on a pseudo-terminal."""
import os
import pty
import select
import subprocess
import time
import unittest

from _demo import DemoTest
from _support import BINARY, SOURCE

SCRIPTS = SOURCE / "contrib" / "completions"


class Complete(DemoTest):
    def setUp(self):
        super().setUp()
        tools = self.folder / "bin"
        tools.mkdir()
        (tools / "larderloop").symlink_to(BINARY)
        self.env["PATH"] = f"{tools}:/usr/bin:/bin"

    def offered(self, *words):
        """What the program itself offers for the last word."""
        return dict(line.split("\t", 1) for line in self.ok("complete", "--", *words).out.splitlines())

    def bash(self, *words):
        script = f"""
            source {SCRIPTS / 'larderloop.bash'}
            COMP_WORDS=(larderloop "$@"); COMP_CWORD=$#
            _larderloop
            printf '%s\\n' "${{COMPREPLY[@]}}"
        """
        done = subprocess.run(["bash", "--noprofile", "--norc", "-c", script, "bash", *words], env=self.env, stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, encoding="utf-8", timeout=60, check=True)
        self.assertEqual(done.stderr, "")
        return [line for line in done.stdout.splitlines() if line]

    def fish(self, line):
        done = subprocess.run(["fish", "--no-config", "-c", f"source {SCRIPTS / 'larderloop.fish'}; complete -C '{line}'"], env=self.env,
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8", timeout=60, check=True)
        self.assertEqual(done.stderr, "")
        return [each.split("\t")[0] for each in done.stdout.splitlines()]

    def zsh(self, typed, wanted):
        """Types the words and a tab; waits until the line is completed to `wanted`."""
        child, terminal = pty.fork()
        if child == 0:
            os.execve("/usr/bin/zsh", ["zsh", "-f", "-i"], {**self.env, "TERM": "dumb", "PS1": "> "})
        seen = b""
        try:
            os.write(terminal, f"autoload -U compinit; compinit -D; source {SCRIPTS / '_larderloop'}; echo read''y\n".encode())
            deadline = time.monotonic() + 60
            sent = False
            while time.monotonic() < deadline and wanted.encode() not in seen:
                if select.select([terminal], [], [], 0.2)[0]:
                    seen += os.read(terminal, 65536)
                if not sent and b"ready" in seen.replace(b"read''y", b""):
                    os.write(terminal, f"{typed}\t".encode())
                    sent = True
        finally:
            os.kill(child, 9)
            os.waitpid(child, 0)
            os.close(terminal)
        self.assertIn(wanted, seen.decode("utf-8", "replace"))

    def test_commands_options_and_words(self):
        self.assertEqual(set(self.offered("rev")), {"review"})
        self.assertIn("move", self.offered("review", ""))
        self.assertEqual(set(self.offered("lot", "add", "--lab")), {"--label-read-by", "--label-same-as-food"})
        self.assertEqual(set(self.offered("kit", "add", "bag-ansa", "--meal", "")), {"breakfast", "lunch", "dinner", "snack"})
        self.assertEqual(set(self.offered("place", "add", "Box", "--kind", "b")), {"box", "bag"})
        self.assertEqual(set(self.offered("settings", "set", "sl")), {"slack-days"})
        self.assertEqual(self.offered("no", "such"), {})

    def test_what_the_book_has(self):
        foods = {each["food"]: each["name"] for each in self.data("food", "list")}
        self.assertEqual(self.offered("food", "show", ""), foods)
        self.assertEqual(set(self.offered("lot", "add", "apple")), {each for each in foods if each.startswith("apple")})
        people = {each["person"] for each in self.data("person", "list")}
        self.assertEqual(set(self.offered("record", "eaten", "17", "1", "--who", "")), people)
        self.assertEqual(set(self.offered("meals", "away", "ansa,jo")), {"ansa,jorik"})
        self.assertEqual(set(self.offered("review", "start", "")), {"car-kit", "home-kit"})
        lots = {str(each["lot"]) for each in self.data("lot", "list")}
        self.assertEqual(set(self.offered("record", "eaten", "")), lots)

    def test_what_is_retired_is_not_offered_where_it_cannot_be_used(self):
        self.ok("food", "add", "Zest")
        self.assertEqual(set(self.offered("lot", "add", "zes")), {"zest"})
        self.ok("food", "retire", "zest")
        self.assertEqual(self.offered("lot", "add", "zes"), {})
        self.assertEqual(set(self.offered("food", "retire", "zes")), {"zest"})

    def test_without_a_book_the_rest_is_offered_in_silence(self):
        answer = self.ok("complete", "--", "--book", self.folder / "none.book", "food", "sh")
        self.assertEqual((answer.out.split("\t")[0], answer.err), ("show", ""))
        answer = self.ok("complete", "--", "--book", self.folder / "none.book", "food", "show", "")
        self.assertEqual((answer.out, answer.err), ("", ""))

    def test_bash(self):
        self.assertEqual(self.bash("hist"), ["history"])
        self.assertEqual(sorted(self.bash("review", "s")), ["sheet", "skip", "start"])
        self.assertEqual(self.bash("person", "show", "jo"), ["jorik"])
        self.assertEqual(self.bash("shop", "--pan"), ["--pantry"])
        self.assertEqual(sorted(self.bash("picture", "")), ["history", "stock", "timeline"])

    def test_fish(self):
        self.assertEqual(self.fish("larderloop hist"), ["history"])
        self.assertEqual(sorted(self.fish("larderloop review s")), ["sheet", "skip", "start"])
        self.assertEqual(self.fish("larderloop person show jo"), ["jorik"])

    def test_zsh(self):
        self.zsh("larderloop hist", "larderloop history")
        self.zsh("larderloop person show jo", "larderloop person show jorik")


if __name__ == "__main__":
    unittest.main()
