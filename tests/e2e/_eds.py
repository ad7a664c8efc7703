"""Evolution's data server (3.46) as a subscriber: it runs in a session of its own and tells what it holds."""
import json
import pathlib
import subprocess

CLIENT = pathlib.Path(__file__).parent / "_eds_client.py"
TRIES = 60  # fetches until what is published has to be there; each waits until the data server is still for a second


class DataServerClient:
    """Subscribed to a calendar of this machine from the beginning to the end of a test."""

    def __init__(self, test, port, path):
        self.test, self.log_path = test, test.folder / "eds.log"
        run = test.folder / "run"
        run.mkdir(mode=0o700)
        self.log = open(self.log_path, "wb")
        self.process = subprocess.Popen(
            ["dbus-run-session", "--", "/usr/bin/python3", str(CLIENT), str(port), path],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=self.log, text=True,
            env={"PATH": "/usr/bin:/bin", "HOME": str(test.home), "XDG_RUNTIME_DIR": str(run), "LC_ALL": "C.UTF-8", "TZ": "UTC", "GIO_USE_VFS": "local"})
        test.addCleanup(self.end)

    def end(self):
        self.process.stdin.close()
        self.process.wait(timeout=20)
        self.process.stdout.close()
        self.log.close()

    def ask(self, *window):
        """What it says after a fetch; with a window (first day, day behind the last) also the days of everything that repeats."""
        self.process.stdin.write(" ".join(window) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        self.test.assertTrue(line, self.log_path.read_text(encoding="utf-8"))
        return json.loads(line)

    def held(self):
        """[(uid, day, title)], sorted."""
        return sorted((uid, day, title) for uid, day, title, _ in self.ask()["events"])

    def must_hold(self, truth, read=None):
        """It comes to hold just this, however slow the machine is; what it held last is told otherwise."""
        for _ in range(TRIES):
            found = (read or self.held)()
            if found == truth:
                return
        self.test.assertEqual(found, truth)
