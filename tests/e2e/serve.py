"""The calendar over HTTP: what is answered, to whom, and what never is; the log; the book that changes meanwhile; the end.

Sections are of RFC 9110 (HTTP Semantics) where nothing else is said. The client is Python's own, or sends its bytes by hand.
"""
import gzip
import os
import re
import shutil
import signal
import socket
import subprocess
import time
import unittest

from _demo import DemoTest
from _serving import PATIENCE, Serving, rest_of, status_of, was_answered
from _support import BINARY


class ServeTest(DemoTest):
    def address(self, name, *options):
        """The path of a new address."""
        return self.data("feed", "add", name, *options)["path"]

    def view(self, *options):
        target = self.folder / "view.ics"
        self.ok("calendar", "-o", target, *options)
        return target.read_bytes()


class Answers(ServeTest):
    def setUp(self):
        super().setUp()
        self.path = self.address("Mira's phone")
        self.server = Serving(self)

    def test_the_calendar_is_that_of_the_calendar_command(self):
        views = {self.path: (), self.address("Jorik", "--person", "jorik"): ("--person", "jorik"), self.address("Hall", "--detail", "private"): ("--detail", "private")}
        bodies = set()
        for path, options in views.items():
            status, headers, body = self.server.ask(path)
            self.assertEqual((status, body), (200, self.view(*options)))
            self.assertEqual(headers["Content-Type"], "text/calendar; charset=utf-8")
            self.assertEqual(headers["Content-Length"], str(len(body)))
            bodies.add(body)
        self.assertEqual(len(bodies), 3, "three views")

    def test_headers(self):
        _, headers, _ = self.server.ask(self.path)
        self.assertEqual({name: headers.get(name) for name in ("Cache-Control", "X-Content-Type-Options", "Referrer-Policy", "X-Robots-Tag", "Vary", "Server", "Accept-Ranges")},
                         {"Cache-Control": "private, no-cache", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "X-Robots-Tag": "noindex",
                          "Vary": "Accept-Encoding", "Server": None, "Accept-Ranges": None})
        for name in ("Date", "Last-Modified"):
            time.strptime(headers[name], "%a, %d %b %Y %H:%M:%S GMT")
        self.assertRegex(headers["ETag"], r'^"[0-9a-f]{32}"$', "a strong one")

    def test_conditions(self):
        _, first, body = self.server.ask(self.path)
        tag, date = first["ETag"], first["Last-Modified"]
        for headers in ({"If_None_Match": tag}, {"If_None_Match": "W/" + tag}, {"If_None_Match": f'"x", {tag}'}, {"If_None_Match": "*"}, {"If_Modified_Since": date},
                        {"If_None_Match": tag, "If_Modified_Since": "Sat, 01 Jan 2000 00:00:00 GMT"}):
            for method in ("GET", "HEAD"):
                status, told, nothing = self.server.ask(self.path, method, **headers)
                self.assertEqual((status, nothing), (304, b""), headers)
                self.assertEqual((told["ETag"], told["Last-Modified"]), (tag, date))
                self.assertNotIn("Content-Length", told, "it would say that the calendar is empty (section 8.6)")
        for headers in ({"If_None_Match": '"x"'}, {"If_None_Match": '"x"', "If_Modified_Since": date}, {"If_Modified_Since": "Sat, 01 Jan 2000 00:00:00 GMT"},
                        {"If_Modified_Since": "yesterday"}, {"Range": "bytes=0-9"}, {"Range": "bytes=9-0"}, {"Expect": "100-continue"}):
            self.assertEqual(self.server.ask(self.path, **headers)[::2], (200, body), headers)

    def test_head_says_what_get_would(self):
        _, whole, _ = self.server.ask(self.path)
        status, told, body = self.server.ask(self.path, "HEAD")
        self.assertEqual((status, body), (200, b""))
        for each in (whole, told):
            del each["Date"]
        self.assertEqual(told, whole)

    def test_gzip(self):
        _, plain, body = self.server.ask(self.path)
        status, headers, packed = self.server.ask(self.path, Accept_Encoding="br, gzip")
        self.assertEqual((status, headers["Content-Encoding"], gzip.decompress(packed)), (200, "gzip", body))
        self.assertLess(len(packed), len(body) / 3)
        self.assertNotEqual(headers["ETag"], plain["ETag"], "two representations, two strong tags (section 8.8.3)")
        self.assertEqual(self.server.ask(self.path, Accept_Encoding="gzip", If_None_Match=headers["ETag"])[0], 304)
        self.assertNotIn("Content-Encoding", self.server.ask(self.path, Accept_Encoding="br, deflate, gzip;q=0")[1])
        self.assertNotIn("Content-Encoding", plain)

    def test_only_reading(self):
        for method in ("POST", "PUT", "DELETE", "OPTIONS", "PROPFIND", "TRACE", "CONNECT", "BREW"):
            for path in (self.path, "/", "/nobody.ics"):
                raw = self.server.raw(f"{method} {path} HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\n\r\nabcd".encode())
                self.assertEqual(status_of(raw), 405, method)
                self.assertIn(b"\r\nAllow: GET, HEAD\r\n", raw)

    def test_many_requests_of_one_connection(self):
        ask = f"GET {self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode()
        with socket.create_connection(("127.0.0.1", self.server.port), timeout=PATIENCE) as connection:
            connection.sendall(ask * 5 + b"\r\n" + ask.replace(b"\r\n\r\n", b"\r\nConnection: close\r\n\r\n"))
            raw = rest_of(connection)
        self.assertEqual(raw.count(b"HTTP/1.1 200 OK\r\n"), 6, "sent all at once, with an empty line between (RFC 9112 section 2.2)")
        self.assertEqual(raw.count(b"END:VCALENDAR\r\n"), 6)

    def test_a_body_is_not_taken_for_a_request(self):
        inner = f"GET {self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n"
        for field in (f"Content-Length: {len(inner)}", "Transfer-Encoding: chunked"):
            raw = self.server.raw(f"GET /nobody.ics HTTP/1.1\r\nHost: localhost\r\n{field}\r\n\r\n{inner}".encode())
            self.assertEqual((status_of(raw), raw.count(b"HTTP/1.1 ")), (404, 1))

    def test_old_clients(self):
        raw = self.server.raw(f"GET {self.path} HTTP/1.0\r\nHost: 127.0.0.1\r\n\r\n".encode())
        self.assertEqual(status_of(raw), 200)
        self.assertTrue(raw.endswith(b"END:VCALENDAR\r\n"))
        self.assertEqual(status_of(self.server.raw(f"GET http://localhost:1{self.path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n".encode())), 200)


class Strangers(ServeTest):
    def setUp(self):
        super().setUp()
        self.path = self.address("Mira's phone")
        self.word = self.path[1:-4]

    def test_what_is_no_address_is_nothing(self):
        revoked = self.address("Old")
        self.ok("feed", "revoke", "Old")
        server = Serving(self)
        self.assertEqual(server.ask(self.path)[0], 200)
        answers = set()
        for path in ("/", "/index.html", "/feed", revoked, "/" + "A" * 43 + ".ics", "/.ics", "/a.ics", self.path[:-5] + "x.ics", self.path[:-4], self.path + "/", "/" + self.path,
                     "/x" + self.path, self.path.lower(), "/../" + self.path[1:], "/%2e%2e" + self.path, "/%2e%2e/%2e%2e/etc/passwd", "/..;/x.ics", self.path + "%00",
                     self.path.replace(".ics", ".ICS"), "/" + self.word + "%2eics%0d%0aX:y", "/" + "%41" * 2000 + ".ics"):
            status, headers, body = server.ask(path)
            headers.pop("Date")
            answers.add((status, tuple(sorted(headers.items())), body))
        self.assertEqual([each[0] for each in answers], [404], "the same answer for all of them")
        for path in (self.path + "?a=b", self.path + "?" + "x" * 2000, "/" + "".join(f"%{ord(each):02X}" for each in self.word) + ".ics"):
            self.assertEqual(server.ask(path)[0], 200, "a query is nothing; percent signs are the same letters (RFC 3986 section 6.2.2.2)")

    def test_only_by_its_own_names(self):
        server = Serving(self, "--host", "Kit.Example", "--base", "https://feeds.example/kit")
        for host in ("localhost", f"127.0.0.1:{server.port}", "kit.example", "KIT.example:443", "feeds.example"):
            self.assertEqual(server.ask(self.path, Host=host)[0], 200, host)
        for host in ("evil.example", "kit.example.evil.example", "192.0.2.7", "127.0.0.2", "[::1]"):
            self.assertEqual(server.ask(self.path, Host=host)[0], 421, host)
        for bad in (b"", b"Host: a\r\nHost: localhost\r\n", b"Host: a b\r\n", b"Host: a/b\r\n"):
            self.assertEqual(status_of(server.raw(b"GET / HTTP/1.1\r\n" + bad + b"\r\n")), 400)
        self.assertEqual(status_of(server.raw(f"GET http://evil.example{self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())), 421)
        for path in (self.path, "/kit" + self.path):
            self.assertEqual(server.ask(path)[0], 200, "with and without the path before it")
        self.assertEqual(server.ask("/other" + self.path)[0], 404)

    def test_the_log_tells_no_address(self):
        server = Serving(self)
        server.ask(self.path + "?secret=1")
        server.ask(self.path[:-6] + ".ics")
        server.raw(f"DELETE {self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())
        server.raw(f"GET {self.path} HTTP/1.1\r\nHost: evil.example\r\n\r\n".encode())
        server.raw(f"\x1b[2J{self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())
        self.assertEqual(server.stop(signal.SIGTERM), 0)
        log = server.log()
        for secret in (self.word, self.word[:12], "secret", "evil", "\x1b"):
            self.assertNotIn(secret, log)
        stamp = r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ 127\.0\.0\.1 "
        for line in (r'GET "Mira\'s phone" 200 \d+$', r"GET - 404 0$", r"- - 405 0$", r"GET - 421 0$", r"- - 400 0$"):
            self.assertRegex(log, re.compile(stamp + line, re.MULTILINE))
        quiet = Serving(self, "--quiet")
        quiet.ask(self.path)
        self.assertEqual(quiet.stop(signal.SIGTERM), 0)
        self.assertEqual(len(quiet.log().splitlines()), 1, quiet.log())

    def test_too_much_is_refused(self):
        server = Serving(self)
        for raw, status in ((b"GET /" + b"a" * 9000 + b" HTTP/1.1\r\nHost: localhost\r\n\r\n", 414), (b"GET /" + b"a" * 40000, 414),
                            (b"GET / HTTP/1.1\r\nHost: localhost\r\nA: " + b"b" * 20000 + b"\r\n\r\n", 431),
                            (b"GET / HTTP/1.1\r\nHost: localhost\r\n" + b"A: b\r\n" * 200 + b"\r\n", 431),
                            (b"GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999\r\n\r\n" + b"x" * 50000, 404),
                            (b"PUT / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 99999999\r\n\r\n" + b"x" * 50000, 405),
                            (b"GET / HTTP/1.1\nHost: localhost\n\n", 400), (b"GET /\xc3\xa9.ics HTTP/1.1\r\nHost: localhost\r\n\r\n", 400), (b"\x16\x03\x01\x02\x00\x01\x00", 400), (b"GET / HTTP/3.0\r\nHost: localhost\r\n\r\n", 505)):
            self.assertEqual(status_of(server.raw(raw)), status, raw[:60])
        self.assertEqual(server.ask(self.path)[0], 200, "and it goes on")

    def test_slow_clients_disturb_nobody(self):
        server = Serving(self)
        slow = []
        for _ in range(300):  # more than it has places for
            connection = socket.create_connection(("127.0.0.1", server.port), timeout=PATIENCE)
            connection.sendall(b"GET / HTTP/1.1\r\nHost: loc")
            self.addCleanup(connection.close)
            slow.append(connection)
        for _ in range(20):
            self.assertEqual(server.ask(self.path)[0], 200)
        self.assertGreater(sum(was_answered(each) for each in slow), 100, "the longest waiting ones gave their places")
        last = slow[-1]
        self.assertEqual(status_of(rest_of(last)), 408, "ten seconds for a head")
        silent = socket.create_connection(("127.0.0.1", server.port), timeout=PATIENCE)
        self.addCleanup(silent.close)
        self.assertEqual(rest_of(silent), b"", "and who says nothing is told nothing")

    def test_a_client_that_does_not_read(self):
        server = Serving(self)
        deaf = socket.socket()
        self.addCleanup(deaf.close)
        deaf.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
        deaf.connect(("127.0.0.1", server.port))
        deaf.sendall(f"GET {self.path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode() * 100)
        for _ in range(20):
            self.assertEqual(server.ask(self.path)[0], 200)


class Running(ServeTest):
    def setUp(self):
        super().setUp()
        self.path = self.address("Mira's phone")

    def test_it_follows_the_book(self):
        server = Serving(self)
        _, first, body = server.ask(self.path)
        self.ok("record", "list")
        self.assertEqual(server.ask(self.path)[1]["ETag"], first["ETag"], "reading changes nothing")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        _, second, moved = server.ask(self.path, If_None_Match=first["ETag"])
        self.assertNotEqual(moved, body)
        self.assertEqual(moved, self.view())
        self.assertGreater(time.strptime(second["Last-Modified"], "%a, %d %b %Y %H:%M:%S GMT"), time.strptime(first["Last-Modified"], "%a, %d %b %Y %H:%M:%S GMT"))
        self.assertEqual(server.ask(self.path, If_Modified_Since=first["Last-Modified"])[0], 200)
        self.ok("settings", "set", "feed-kinds", "review")
        _, third, fewer = server.ask(self.path, If_Modified_Since=second["Last-Modified"])
        self.assertEqual(fewer, self.view(), "also what moves no stamp of an event")
        self.assertLess(len(fewer), len(moved))

    def test_addresses_come_and_go(self):
        server = Serving(self)
        self.assertEqual(server.ask(self.path)[0], 200)
        other = self.address("Hall")
        self.assertEqual(server.ask(other)[0], 200)
        self.ok("feed", "revoke", "Mira's phone")
        self.assertEqual((server.ask(self.path)[0], server.ask(other)[0]), (404, 200))

    def test_a_bad_book_is_a_pause(self):
        server = Serving(self)
        whole = self.book.read_bytes()
        self.book.write_bytes(b"not a book" * 1000)
        status, headers, _ = server.ask(self.path)
        self.assertEqual((status, headers["Retry-After"]), (503, "30"))
        self.assertEqual(server.ask("/nobody.ics")[0], 503, "nobody can say whether that is an address")
        self.book.unlink()
        self.assertEqual(server.ask(self.path)[0], 503)
        self.book.write_bytes(whole)
        server.until(lambda: server.ask(self.path)[0] == 200)
        self.assertEqual(server.ask("/nobody.ics")[0], 404)
        log = server.log()
        self.assertIn("the calendar cannot be given: ", log)
        self.assertIn("the calendar can be given again", log)

    def test_a_busy_book_is_a_pause(self):
        import sqlite3
        server = Serving(self)
        self.assertEqual(server.ask(self.path)[0], 200)
        writer = sqlite3.connect(self.book, isolation_level=None)
        writer.execute("BEGIN EXCLUSIVE")
        os.utime(self.book)
        self.assertEqual(server.ask(self.path)[0], 503)
        writer.execute("ROLLBACK")
        writer.close()
        server.until(lambda: server.ask(self.path)[0] == 200)

    def test_it_stops_cleanly(self):
        for number in (signal.SIGTERM, signal.SIGINT):
            server = Serving(self)
            with socket.create_connection(("127.0.0.1", server.port), timeout=PATIENCE) as idle:
                idle.sendall(b"GET / HT")
                self.assertEqual(server.ask(self.path)[0], 200)
                self.assertEqual(server.stop(number), 0)
            self.assertTrue(server.log().endswith("stopped\n"), server.log())
        self.ok("check")

    def test_the_port_is_taken(self):
        server = Serving(self)
        refused = self.refused(8, "serve", "--listen", f"127.0.0.1:{server.port}")
        self.assertIn("another program does already", refused.err)
        self.assertIn("--listen", refused.err)
        again = Serving(self, listen="127.0.0.1:0")
        self.assertNotEqual(again.port, server.port)
        port = server.port
        server.stop(signal.SIGTERM)
        self.assertEqual(Serving(self, listen=f"127.0.0.1:{port}").port, port, "free again at once")

    def test_what_it_says_at_the_start(self):
        self.address("Hall", "--detail", "private")
        self.address("Old")
        self.ok("feed", "revoke", "Old")
        log = Serving(self).log()
        self.assertIn("address 1, Mira's phone: the whole household, in full\n", log)
        self.assertIn("address 2, Hall: the whole household, without food, places and names\n", log)
        self.assertNotIn("Old", log)
        self.assertNotIn(self.path[1:-4], log)
        self.assertNotIn("not protected", log)
        self.assertIn("only for a home network that you trust", Serving(self, listen="0.0.0.0:0").log())

    def test_wrong_options_and_no_book(self):
        for options in (("--listen", "8467"), ("--listen", "127.0.0.1:99999"), ("--listen", "127.0.0.1:"), ("--listen", "a b:1"), ("--base", "kit"), ("--host", "a/b")):
            self.refused(2, "serve", *options)
        self.refused(8, "serve", "--listen", "192.0.2.1:0")  # an address for documents (RFC 5737), nobody's
        self.refused(4, "serve", "--listen", "127.0.0.1:0", env={"LARDERLOOP_BOOK": str(self.folder / "no.book")})

    def test_by_the_other_protocol(self):
        try:
            with socket.socket(socket.AF_INET6) as probe:
                probe.bind(("::1", 0))
        except OSError:
            self.assertNotIn("::1", subprocess.run(["cat", "/proc/net/if_inet6"], stdout=subprocess.PIPE, check=False).stdout.decode())
            return  # this machine has no IPv6
        server = Serving(self, listen="[::1]:0")
        with socket.create_connection(("::1", server.port), timeout=PATIENCE) as connection:
            connection.sendall(f"GET {self.path} HTTP/1.1\r\nHost: [::1]:{server.port}\r\nConnection: close\r\n\r\n".encode())
            self.assertEqual(status_of(rest_of(connection)), 200)

    def test_without_the_module(self):
        alone = self.folder / "alone"
        alone.mkdir()
        program = alone / "larderloop"
        shutil.copy(BINARY, program)
        done = subprocess.run([str(program), "serve"], env=self.env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=PATIENCE, check=False)
        self.assertEqual(done.returncode, 9, done.stderr)
        self.assertIn(b"larderloop-web.so is not beside the program", done.stderr)


if __name__ == "__main__":
    unittest.main()
