"""What contrib/unattended offers around serve, tried: the unit's command, nginx and Caddy with TLS before it, and the mail."""
import email
import email.policy
import html.parser
import http.client
import os
import pathlib
import re
import shlex
import signal
import socket
import ssl
import subprocess
import time
import unittest

from _demo import DemoTest
from _serving import PATIENCE, Serving
from _support import BINARY, SOURCE

UNATTENDED = SOURCE / "contrib" / "unattended"
NAME = "kit.example"
BASE = f"https://{NAME}/feed"


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class Words(html.parser.HTMLParser):
    """The text of a page, element by element."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.lines = set(), []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        if tag in ("h1", "li", "p"):
            self.lines.append("")

    def handle_data(self, data):
        if self.lines and data.strip():
            self.lines[-1] += data


class Behind(DemoTest):
    def setUp(self):
        super().setUp()
        self.path = self.data("feed", "add", "Mira's phone", "--base", BASE)["url"].removeprefix(f"https://{NAME}")
        self.assertRegex(self.path, r"^/feed/[\w-]{43}\.ics$")

    def certificate(self):
        """A certificate of our own for the name, with its key."""
        subprocess.run(["openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj", f"/CN={NAME}", "-addext", f"subjectAltName=DNS:{NAME}",
                        "-keyout", str(self.folder / "key.pem"), "-out", str(self.folder / "cert.pem")], check=True, stderr=subprocess.DEVNULL, timeout=PATIENCE)

    def fetch(self, port, path, headers=None, method="GET"):
        """As a phone does: by name, over TLS, believing only that certificate."""
        trust = ssl.create_default_context(cafile=str(self.folder / "cert.pem"))
        end = time.monotonic() + PATIENCE
        while True:
            try:
                wire = socket.create_connection(("127.0.0.1", port), timeout=PATIENCE)
                break
            except ConnectionRefusedError:
                if time.monotonic() > end:
                    raise
                time.sleep(0.1)
        with trust.wrap_socket(wire, server_hostname=NAME) as secure:
            connection = http.client.HTTPConnection(NAME)
            connection.sock = secure
            connection.request(method, path, headers=headers or {})
            answer = connection.getresponse()
            return answer.status, answer.headers, answer.read()

    def through(self, port, server):
        """What a phone sees through the other server is what serve says."""
        self.assertEqual(self.fetch(port, self.path)[::2], (200, self.feed()))
        _, headers, _ = self.fetch(port, self.path)
        self.assertEqual(headers["Content-Type"], "text/calendar; charset=utf-8")
        self.assertEqual(headers["Cache-Control"], "private, no-cache")
        self.assertEqual(self.fetch(port, self.path, {"If-None-Match": headers["ETag"]})[::2], (304, b""))
        self.assertEqual(self.fetch(port, self.path, {"Accept-Encoding": "gzip"})[1]["Content-Encoding"], "gzip")
        self.assertEqual(self.fetch(port, self.path, method="HEAD")[::2], (200, b""))
        self.assertEqual(self.fetch(port, "/feed/" + "A" * 43 + ".ics")[0], 404)
        self.ok("feed", "revoke", "Mira's phone")
        self.assertEqual(self.fetch(port, self.path)[0], 404)
        self.assertEqual(server.stop(signal.SIGTERM), 0)
        self.assertEqual(self.fetch(port, self.path)[0], 502, "nobody there")
        for path in self.folder.rglob("*"):
            if path.is_file() and path.suffix in (".log", "") and path.stat().st_size < 1_000_000:
                self.assertNotIn(self.path[6:-4].encode(), path.read_bytes(), path)

    def run_beside(self, command, **more):
        with open(self.folder / "beside.log", "wb") as log:
            process = subprocess.Popen([str(each) for each in command], stdin=subprocess.DEVNULL, stdout=log, stderr=log, **more)

        def end():
            process.terminate()
            process.wait(timeout=PATIENCE)
        self.addCleanup(end)

    def test_nginx_with_tls(self):
        self.certificate()
        server, port = Serving(self, "--base", BASE), free_port()
        piece = (UNATTENDED / "nginx-serve.conf").read_text()
        self.assertEqual(piece.count("127.0.0.1:8467"), 1, "the usual place of serve")
        piece = piece.replace("127.0.0.1:8467", f"127.0.0.1:{server.port}")
        own = "\n".join(f"{name}_temp_path {self.folder}/{name};" for name in ("client_body", "proxy", "fastcgi", "uwsgi", "scgi"))
        user = "user root;" if os.geteuid() == 0 else ""
        conf = self.folder / "nginx.conf"
        conf.write_text(f"{user} daemon off; pid {self.folder}/pid; error_log {self.folder}/error.log;\nevents {{}}\nhttp {{\n{own}\naccess_log {self.folder}/access.log;\n"
                        f"server {{ listen 127.0.0.1:{port} ssl; server_name {NAME};\nssl_certificate {self.folder}/cert.pem; ssl_certificate_key {self.folder}/key.pem;\n{piece}\n}} }}\n")
        command = ["/usr/sbin/nginx", "-p", self.folder, "-c", conf]
        subprocess.run([*map(str, command), "-t"], check=True, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=PATIENCE)
        self.run_beside(command)
        self.through(port, server)

    def test_caddy_with_tls(self):
        self.certificate()
        server, port = Serving(self, "--base", BASE), free_port()
        text = (UNATTENDED / "Caddyfile").read_text()
        env = {"PATH": "/usr/bin:/bin", "HOME": str(self.home), "XDG_DATA_HOME": str(self.folder / "caddy"), "XDG_CONFIG_HOME": str(self.folder / "caddy")}
        shown = self.folder / "Caddyfile"
        shown.write_text(text)
        subprocess.run(["caddy", "validate", "--adapter", "caddyfile", "--config", str(shown)], check=True, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=PATIENCE)
        self.assertEqual(text.count("127.0.0.1:8467"), 1)
        text = text.replace("127.0.0.1:8467", f"127.0.0.1:{server.port}")
        text = re.sub(rf"^{NAME} {{$", f"https://{NAME}:{port} {{\n\ttls {self.folder}/cert.pem {self.folder}/key.pem", text, flags=re.MULTILINE)
        shown.write_text(re.sub(r"^{$", "{\n\tadmin off\n\tauto_https disable_redirects", text, count=1, flags=re.MULTILINE))
        self.run_beside(["caddy", "run", "--adapter", "caddyfile", "--config", shown], env=env)
        self.through(port, server)

    def test_the_command_of_the_unit(self):
        line = re.search(r"^ExecStart=(.*)$", (UNATTENDED / "larderloop-serve.service").read_text(), re.MULTILINE).group(1)
        port = free_port()
        log = self.folder / "unit.log"
        with open(log, "wb") as out:
            process = subprocess.Popen([*shlex.split(line), "--listen", f"127.0.0.1:{port}"], stdin=subprocess.DEVNULL, stdout=out, stderr=out,
                                       env={**self.env, "PATH": f"{pathlib.Path(BINARY).parent}:/usr/bin:/bin"})
        end = time.monotonic() + PATIENCE
        while "serving the calendar" not in log.read_text():
            self.assertIsNone(process.poll(), log.read_text())
            self.assertLess(time.monotonic(), end)
            time.sleep(0.05)
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
        connection.request("GET", self.path, headers={"Host": NAME})
        self.assertEqual(connection.getresponse().read(), self.feed(), "under the name and path that the unit tells")
        connection.close()
        process.send_signal(signal.SIGTERM)
        self.assertEqual(process.wait(timeout=PATIENCE), 0, "as systemd stops it")


class Mail(DemoTest):
    def setUp(self):
        super().setUp()
        self.sent = self.folder / "sent"
        post = self.folder / "sendmail"
        post.write_text(f'#!/bin/sh\nprintf "%s\\n" "$*" >{self.folder}/words\ncat >>{self.sent}\n')
        post.chmod(0o755)
        self.env |= {"SENDMAIL": str(post), "PATH": f"{pathlib.Path(BINARY).parent}:/usr/bin:/bin"}

    def mail(self, *words, env=None):
        return subprocess.run([str(UNATTENDED / "larderloop-mail"), *words], env={**self.env, **(env or {})}, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=PATIENCE, check=False)

    def test_both_halves_say_the_same(self):
        done = self.mail("mira@example.org", "kit@example.org")
        self.assertEqual((done.returncode, done.stdout, done.stderr), (0, b"", b""))
        self.assertEqual((self.folder / "words").read_text(), "-t -oi\n")
        message = email.message_from_bytes(self.sent.read_bytes(), policy=email.policy.default)
        self.assertEqual((message["To"], message["From"], message.get_content_type(), message.defects), ("mira@example.org", "kit@example.org", "multipart/alternative", []))
        text, page = message.iter_parts()
        self.assertEqual((text.get_content_type(), page.get_content_type()), ("text/plain", "text/html"))
        self.assertEqual((text.get_content_charset(), page.get_content_charset()), ("utf-8", "utf-8"))
        self.assertEqual(text.get_content(), self.ok("nudge").out)
        self.assertEqual(page.get_content(), self.ok("nudge", "--html").out)
        words = Words(page.get_content())
        self.assertEqual(words.lines, text.get_content().splitlines(), "the same facts, line by line")
        self.assertLessEqual(words.tags, {"html", "head", "meta", "title", "body", "h1", "ul", "li", "b", "p"}, "nothing that calls out")

    def test_nothing_due_sends_nothing(self):
        empty = self.folder / "empty.book"
        self.ok("new", empty, "--book", empty)
        done = self.mail("mira@example.org", "kit@example.org", env={"LARDERLOOP_BOOK": str(empty)})
        self.assertEqual((done.returncode, done.stdout, done.stderr, self.sent.exists()), (0, b"", b"", False))
        self.assertIn("nothing is due", Words(self.ok("nudge", "--html", "--book", empty).out).lines[0])
        self.assertEqual(self.ok("nudge", "--html", "--only-if-due", "--book", empty).out, "")

    def test_bad_words(self):
        for words in ((), ("mira@example.org",), ("a@b\nBcc: c@d", "kit@example.org"), ("-bs", "x;y@z")):
            self.assertEqual(self.mail(*words).returncode, 2, words)
        self.assertEqual(self.mail("a@b", "c@d", env={"LARDERLOOP_BOOK": "/no/such/book"}).returncode, 4)
        self.assertFalse(self.sent.exists())
        self.refused(2, "nudge", "--html", "--json")

    def test_names_are_text_in_the_page(self):
        self.ok("settings", "set", "name", "<b>Six</b> & \"a\" cat")
        page = self.ok("nudge", "--html").out
        self.assertIn("&lt;b&gt;Six&lt;/b&gt; &amp; &quot;a&quot; cat", page)
        self.assertTrue(Words(page).lines[0].startswith('<b>Six</b> & "a" cat, '))


if __name__ == "__main__":
    unittest.main()
