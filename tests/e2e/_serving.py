"""The server of the calendar as a process of its own, and a client that sends just what it is told."""
import http.client
import re
import select
import socket
import subprocess
import time

from _support import BINARY

PATIENCE = 90  # seconds until something is called stuck; slow machines and instrumented builds included


class Serving:
    """Starts `larderloop serve` for a test; stop() ends it. `log()` is what it has said."""

    def __init__(self, test, *options, listen="127.0.0.1:0", env=None):
        self.test = test
        self.path = test.folder / f"serve-{time.monotonic_ns()}.log"
        with open(self.path, "wb") as log:
            self.process = subprocess.Popen([BINARY, "serve", "--listen", listen, *map(str, options)], stdin=subprocess.DEVNULL, stdout=log,
                                            stderr=log, env={**test.env, **(env or {})}, cwd=test.folder)
        test.addCleanup(self.end)
        self.until(lambda: re.search(r"serving the calendar at http://\S+:(\d+)/", self.log()) or self.process.poll() is not None)
        found = re.search(r"serving the calendar at http://\S+:(\d+)/", self.log())
        test.assertTrue(found, self.log())
        self.port = int(found.group(1))
        self.url = f"http://127.0.0.1:{self.port}"

    def until(self, condition):
        """Waits for something to become true."""
        end = time.monotonic() + PATIENCE
        while True:
            found = condition()
            if found:
                return found
            if time.monotonic() > end:
                raise AssertionError("stuck:\n" + self.log())
            time.sleep(0.02)

    def log(self):
        return self.path.read_text(encoding="utf-8")

    def stop(self, signal):
        self.process.send_signal(signal)
        return self.process.wait(timeout=PATIENCE)

    def end(self):
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()

    def ask(self, path, method="GET", **headers):
        """(status, headers, body); names of headers with _ for -."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        connection.request(method, path, headers={name.replace("_", "-"): value for name, value in headers.items()})
        answer = connection.getresponse()
        result = answer.status, dict(answer.getheaders()), answer.read()
        connection.close()
        return result

    def raw(self, data):
        """What comes back until the server closes."""
        with socket.create_connection(("127.0.0.1", self.port), timeout=PATIENCE) as connection:
            connection.sendall(data)
            return rest_of(connection)


def rest_of(connection):
    parts = []
    while True:
        part = connection.recv(65536)
        if not part:
            return b"".join(parts)
        parts.append(part)


def status_of(raw):
    return int(raw.split(b" ", 2)[1])


def was_answered(connection):
    """Has the server sent something, or closed?"""
    readable, _, _ = select.select([connection], [], [], 0)
    return bool(readable)
