"""push over TLS to a real CalDAV server (radicale): the right certificates are trusted, all others are not, and nothing is said to a stranger.

Certificates of a household's own, made by openssl for the test. What has to be checked: RFC 9110 section 4.3.4 (the name in the certificate is the
one asked for), RFC 5280 section 6 (it leads to a trusted one).
"""
import ssl
import subprocess
import unittest

from _demo import DemoTest
from _server import Radicale, credentials


class Tls(DemoTest):
    def setUp(self):
        super().setUp()
        self.secret = credentials(self.folder)
        self.authority("home")
        self.authority("stranger")
        self.certificate("right", "home", "IP:127.0.0.1")
        self.certificate("elsewhere", "home", "DNS:calendar.example")

    def openssl(self, *arguments):
        subprocess.run(["openssl", *map(str, arguments)], cwd=self.folder, check=True, stdin=subprocess.DEVNULL, capture_output=True)

    def authority(self, name):
        self.openssl("req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2", "-subj", f"/CN={name}",
                     "-addext", "basicConstraints=critical,CA:TRUE", "-keyout", f"{name}.key", "-out", f"{name}.pem")

    def certificate(self, name, authority, subject):
        self.openssl("req", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-subj", f"/CN={name}", "-keyout", f"{name}.key", "-out", f"{name}.csr")
        (self.folder / f"{name}.ext").write_text(f"subjectAltName={subject}\n", encoding="utf-8")
        self.openssl("x509", "-req", "-in", f"{name}.csr", "-CA", f"{authority}.pem", "-CAkey", f"{authority}.key", "-CAcreateserial", "-days", "2",
                     "-extfile", f"{name}.ext", "-out", f"{name}.pem")

    def server(self, certificate, authority="home"):
        folder = self.folder / f"radicale-{certificate}"
        folder.mkdir()
        context = ssl.create_default_context(cafile=self.folder / f"{authority}.pem")
        context.check_hostname = False  # of the second client, which also has to look into the wrong server
        server = Radicale(folder, (self.folder / f"{certificate}.pem", self.folder / f"{certificate}.key"), context)
        self.addCleanup(server.stop)
        return server

    def not_safe(self, server, *more):
        answer = self.refused(8, "push", server.url("kit"), "--credentials", self.secret, *more)
        self.assertIn("--ca", answer.err, "what to do")
        self.assertEqual(server.items("kit"), {}, "nothing was sent")

    def test_the_right_certificate_is_taken(self):
        server = self.server("right")
        told = self.data("push", server.url("kit"), "--credentials", self.secret, "--ca", self.folder / "home.pem")
        self.assertEqual({each["result"] for each in told["items"]}, {"done"})
        self.assertEqual(len(server.items("kit")), len(told["items"]))
        self.assertGreater(len(told["items"]), 5)
        again = self.data("push", server.url("kit"), "--credentials", self.secret, "--ca", self.folder / "home.pem")
        self.assertEqual(again["items"], [])

    def test_all_others_are_not(self):
        server = self.server("right")
        self.not_safe(server)
        self.not_safe(server, "--ca", self.folder / "stranger.pem")
        self.not_safe(server, "--insecure")
        self.not_safe(server, "--insecure", "--ca", self.folder / "stranger.pem")

    def test_the_name_has_to_be_the_one_asked_for(self):
        server = self.server("elsewhere")
        self.not_safe(server, "--ca", self.folder / "home.pem")
        self.not_safe(server, "--insecure", "--ca", self.folder / "home.pem")

    def test_certificates_that_cannot_be_read_are_no_reason_to_trust(self):
        server = self.server("right")
        (self.folder / "empty.pem").write_text("", encoding="utf-8")
        for name in ("empty.pem", "nowhere.pem", "home.key"):
            self.refused(8, "push", server.url("kit"), "--credentials", self.secret, "--ca", self.folder / name)
            self.assertEqual(server.items("kit"), {})


if __name__ == "__main__":
    unittest.main()
