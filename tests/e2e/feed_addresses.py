"""Addresses of the calendar: told once, kept as a hash, revoked, and as a code that zbarimg reads from the drawn characters.

SHA-256 by Python's hashlib; the picture of a terminal is drawn here, eight dots a module, from the characters alone.
"""
import hashlib
import json
import re
import subprocess
import unittest

from _demo import DemoTest

BASE = "https://kit.example:8443/feed"


def picture(rows, path):
    """A grey picture (PGM) of rows of dark (True) and light modules."""
    dots = 8
    lines = [b"".join((b"\x00" if dark else b"\xff") * dots for dark in row) * dots for row in rows]
    path.write_bytes(f"P5\n{len(rows[0]) * dots} {len(rows) * dots}\n255\n".encode() + b"".join(lines))


def modules_of(text, style):
    """The modules as a terminal shows them: blocks light on dark, paint black on white, plain two characters a module."""
    if style == "plain":
        return [[line[at] == "#" for at in range(0, len(line), 2)] for line in text]
    rows = []
    for line in text:
        ink = re.sub(r"\x1b\[[0-9;]*m", "", line)
        upper, lower = [each in "█▀" for each in ink], [each in "█▄" for each in ink]
        for row in (upper, lower):
            rows.append([each if style == "paint" else not each for each in row])
    return rows


class Addresses(DemoTest):
    def code_lines(self, out, style):
        drawn = re.compile(r"^[# ]{60,}$" if style == "plain" else r"^(\x1b\[30;107m)?[█▀▄ ]{30,}(\x1b\[0m)?$")
        return [line for line in out.splitlines() if drawn.match(line)]

    def test_the_code_is_read_back_from_the_terminal(self):
        for number, (style, options) in enumerate((("blocks", ()), ("plain", ("--plain",)), ("paint", ("--color", "always")))):
            for code in ("webcals", "https"):
                out = self.ok("feed", "add", f"Phone {number} {code}", "--base", BASE, "--code", code, *options).out
                told = re.search(rf"{code}://\S+", out).group(0)
                path = self.folder / "code.pgm"
                picture(modules_of(self.code_lines(out, style), style), path)
                read = subprocess.run(["zbarimg", "-q", "--raw", str(path)], stdout=subprocess.PIPE, check=True, timeout=60).stdout
                self.assertEqual(read.decode().strip(), told, style)
        self.assertEqual(self.code_lines(self.ok("feed", "add", "None", "--base", BASE, "--code", "none").out, "blocks"), [])

    def test_only_the_hash_stays(self):
        made = self.ok("feed", "add", "Mira's phone", "--person", "mira", "--base", BASE, "--json").json["data"]
        token = re.fullmatch(r"/([A-Za-z0-9_-]{43})\.ics", made["path"]).group(1)
        self.assertEqual((made["url"], made["subscribe"]), (f"{BASE}/{token}.ics", f"webcals{BASE[5:]}/{token}.ics"))
        kept = json.loads(self.export())["feed_addresses"]
        self.assertEqual([each["token_sha256"] for each in kept], [hashlib.sha256(token.encode()).hexdigest()])
        self.assertNotIn(token.encode(), self.book.read_bytes())
        self.assertNotIn(token, self.ok("feed", "list").out + self.ok("feed", "list", "--json").out)
        other = self.ok("feed", "add", "Hall", "--json").json["data"]
        self.assertNotEqual(other["path"], made["path"])
        self.assertIsNone(other["url"])

    def test_list_and_revoke(self):
        self.ok("feed", "add", "Mira's phone", "--person", "Mira")
        self.ok("feed", "add", "Hall", "--detail", "private")
        self.on("2027-04-05")
        revoked = self.ok("feed", "revoke", "Hall")
        self.assertIn("revoked address 2 (Hall)", revoked.err)
        listed = self.data("feed", "list")
        self.assertEqual([(each["address"], each["person"], each["detail"], each["revoked_at"]) for each in listed],
                         [(1, "mira", "full", None), (2, None, "private", "2027-04-05T00:00:00Z")])
        self.assertRegex(self.ok("feed", "list").out, r"2 +Hall +everyone +private +Sat 3 Apr 2027 +revoked Mon 5 Apr 2027")
        self.assert_unchanged("feed", "revoke", "Hall")
        self.assert_unchanged("feed", "revoke", "9", code=4)
        self.assert_unchanged("feed", "add", "Mira's phone")
        self.assert_unchanged("feed", "add", "Ned", "--person", "nobody", code=4)
        self.assert_unchanged("feed", "add", "Ned", "--base", "kit.example", code=2)
        before = self.export()
        self.ok("feed", "add", "Ned", "--dry-run")
        self.assertEqual(self.export(), before)

    def test_plain_http_is_warned_of(self):
        self.assertIn("home network that you trust", self.ok("feed", "add", "A", "--base", "http://192.168.1.4:8467").err)
        for base in ("http://127.0.0.1:8467", BASE):
            self.assertEqual(self.ok("feed", "add", base[-9:], "--base", base).err, "")

    def test_settings_of_the_calendar(self):
        self.ok("settings", "set", "feed-kinds", "review, shop")
        self.ok("settings", "set", "feed-alarms", "review:7,shop:1")
        self.ok("settings", "set", "feed-detail", "private")
        feed = json.loads(self.export())["settings"]["feed"]
        self.assertEqual((feed["detail"], sorted(feed["kinds"]), feed["alarm_days"]), ("private", ["review", "shop"], {"review": 7, "shop": 1}))
        self.assertEqual(self.data("feed", "add", "Hall")["detail"], "private")
        for name, value in (("feed-kinds", ""), ("feed-kinds", "party"), ("feed-alarms", "review"), ("feed-alarms", "review:0"), ("feed-detail", "some")):
            self.assert_unchanged("settings", "set", name, value)
        self.ok("settings", "set", "feed-alarms", "none")
        self.assertNotIn("alarm_days", json.loads(self.export())["settings"]["feed"])


if __name__ == "__main__":
    unittest.main()
