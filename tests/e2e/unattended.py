"""What contrib/unattended offers, tried: units judged by systemd-analyze, cron lines run as cron runs them, the calendar fetched through nginx."""
import http.client
import os
import pathlib
import plistlib
import re
import shlex
import socket
import subprocess
import time
import unittest

from _demo import DemoTest
from _support import SOURCE

UNATTENDED = SOURCE / "contrib" / "unattended"
PROGRAM = pathlib.Path(os.environ["LARDERLOOP_BIN"])


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class Unattended(DemoTest):
    def path(self):
        return f"{PROGRAM.parent}:/usr/bin:/bin"

    def test_units_are_sound(self):
        for name in ("larderloop-calendar.service", "larderloop-calendar.timer", "larderloop-serve.service"):
            done = subprocess.run(["systemd-analyze", "verify", "--user", "--man=no", str(UNATTENDED / name)], stdout=subprocess.PIPE,
                                  stderr=subprocess.STDOUT, check=False, env={**os.environ, "XDG_RUNTIME_DIR": str(self.folder)})
            told = [line for line in done.stdout.decode().splitlines() if "larderloop" in line]
            self.assertEqual((done.returncode, told), (0, []), done.stdout.decode())
        broken = self.folder / "larderloop-calendar.service"
        broken.write_text((UNATTENDED / broken.name).read_text().replace("ExecStart=", "ExecStrat="))
        done = subprocess.run(["systemd-analyze", "verify", "--user", "--man=no", str(broken)], stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              check=False, env={**os.environ, "XDG_RUNTIME_DIR": str(self.folder)})
        self.assertIn("ExecStrat", done.stdout.decode(), "a fault is seen")

    def test_the_command_of_the_unit_writes_the_calendar(self):
        line = re.search(r"^ExecStart=(.*)$", (UNATTENDED / "larderloop-calendar.service").read_text(), re.MULTILINE).group(1)
        (self.folder / "larderloop").mkdir()
        words = [word.replace("%h", str(self.folder)) for word in shlex.split(line)]
        done = subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=True,
                              env={**self.env, "PATH": self.path(), "LARDERLOOP_BOOK": str(self.book)})
        self.assertEqual(done.stdout, b"")
        self.assertEqual((self.folder / "larderloop" / "feed.ics").read_bytes(), self.feed())

    def test_cron_lines_are_silent_when_nothing_is_due(self):
        lines = [line for line in (UNATTENDED / "larderloop.cron").read_text().splitlines() if line and line[0] in "0123456789*"]
        self.assertEqual(len(lines), 2)
        (self.folder / "larderloop").mkdir()
        env = {**self.env, "PATH": self.path(), "LARDERLOOP_BOOK": str(self.book), "HOME": str(self.folder)}
        said = []
        for line in lines:
            command = line.split(None, 5)[5]
            self.assertNotIn("%", command, "cron takes a percent sign for the end of the line")
            said.append(subprocess.run(["/bin/sh", "-c", command], env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=True).stdout)
        self.assertEqual(said[0], b"")
        self.assertIn(b"Review the", said[1], "the demo household has something to do in that week")
        empty = self.folder / "empty.book"
        self.ok("new", empty, "--book", empty)
        env["LARDERLOOP_BOOK"] = str(empty)
        for line in lines:
            command = line.split(None, 5)[5]
            self.assertEqual(subprocess.run(["/bin/sh", "-c", command], env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=True).stdout, b"")

    def test_the_property_list_says_the_same(self):
        told = plistlib.loads((UNATTENDED / "org.example.larderloop.calendar.plist").read_bytes())
        self.assertEqual(told["ProgramArguments"][1:4], ["calendar", "--quiet", "-o"])
        self.assertEqual(told["Umask"], 0o077)

    def test_nginx_serves_the_calendar(self):
        port, word = free_port(), "f4Tq0Yx1wTnPq3bWm7"
        target = self.folder / "feed.ics"
        bytes_of_feed = self.feed()
        piece = (UNATTENDED / "nginx-feed.conf").read_text().replace("REPLACE-BY-AN-UNGUESSABLE-WORD", word)
        piece = piece.replace("/srv/larderloop/feed.ics", str(target))
        own = "\n".join(f"{name}_temp_path {self.folder}/{name};" for name in ("client_body", "proxy", "fastcgi", "uwsgi", "scgi"))
        user = "user root;" if os.geteuid() == 0 else ""
        (self.folder / "nginx.conf").write_text(f"{user} daemon off; pid {self.folder}/pid; error_log {self.folder}/error.log;\nevents {{}}\nhttp {{\n{own}\n"
                                                f"access_log {self.folder}/access.log;\nserver {{ listen 127.0.0.1:{port};\n{piece}\n}} }}\n")
        command = ["/usr/sbin/nginx", "-p", str(self.folder), "-c", str(self.folder / "nginx.conf")]
        subprocess.run([*command, "-t"], check=True, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        server = subprocess.Popen(command, stderr=subprocess.DEVNULL)
        try:
            first = self.fetch(port, f"/feed/{word}.ics")
            self.assertEqual((first.status, first.body), (200, bytes_of_feed))
            self.assertEqual(first.headers["Content-Type"], "text/calendar; charset=utf-8")
            self.assertEqual(first.headers["Cache-Control"], "private, no-cache")
            again = self.fetch(port, f"/feed/{word}.ics", {"If-None-Match": first.headers["ETag"]})
            self.assertEqual((again.status, again.body), (304, b""))
            packed = self.fetch(port, f"/feed/{word}.ics", {"Accept-Encoding": "gzip"})
            self.assertEqual(packed.headers["Content-Encoding"], "gzip")
            head = self.fetch(port, f"/feed/{word}.ics", method="HEAD")
            self.assertEqual((head.status, head.body), (200, b""))
            self.assertEqual(self.fetch(port, "/feed/other.ics").status, 404)
            self.assertNotIn(word, (self.folder / "access.log").read_text(), "the address is not logged")
        finally:
            server.terminate()
            server.wait(timeout=20)

    def fetch(self, port, path, headers=None, method="GET"):
        for _ in range(100):
            try:
                connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
                connection.request(method, path, headers=headers or {})
                answer = connection.getresponse()
                answer.body = answer.read()
                connection.close()
                return answer
            except ConnectionRefusedError:
                time.sleep(0.1)
        raise AssertionError("the web server does not answer")


if __name__ == "__main__":
    unittest.main()
