"""The lines of contrib/unattended/larderloop.cron: read by the parser of Debian's cron and by croniter, and run by cron itself where that may be done.

Cron is run as it is, in a mount namespace of its own (util-linux unshare): with a folder for crontabs, a /usr/sbin and a /usr/local/bin that only it
sees, so that neither this machine's jobs nor its mail are touched. Its clock (libfaketime) stands seven seconds before the time of a line; jobs have the
real one, as cron gives its own environment to none. Only root may do that; whoever runs the tests otherwise has the two parsers and the
lines run by the shell in unattended.py.
"""
import datetime
import email
import email.policy
import os
import pathlib
import re
import subprocess
import time
import unittest

import croniter

from _demo import REVIEW_DAY, DemoTest
from _serving import PATIENCE
from _support import BINARY, SOURCE

UNATTENDED = SOURCE / "contrib" / "unattended"
CLOCK = next(map(str, pathlib.Path("/usr/lib").glob("*/faketime/libfaketime.so.1")), "")
LINES = UNATTENDED / "larderloop.cron"
RUN = """set -e
cp /usr/sbin/cron sbin/cron
mount --make-rprivate /
mount -t tmpfs none /run
mount --bind "$PWD/none" /etc/cron.d
mount --bind /dev/null /etc/crontab
mount --bind "$PWD/spool" /var/spool/cron/crontabs
mount --bind "$PWD/bin" /usr/local/bin
mount --bind "$PWD/sbin" /usr/sbin
crontab crontab
echo ready >&2
export LD_PRELOAD="$1" FAKETIME="@$2"
exec /usr/sbin/cron -f
"""


def may_run_cron():
    return os.geteuid() == 0 and CLOCK and subprocess.run(["unshare", "-m", "mount", "--make-rprivate", "/"], check=False, stderr=subprocess.DEVNULL).returncode == 0


class Cron:
    """Cron with one crontab and a clock that starts at a moment (YYYY-MM-DD HH:MM:SS, UTC)."""

    def __init__(self, test, name, crontab, moment):
        self.test, self.folder = test, test.folder / name
        for part in ("none", "spool", "bin", "sbin", "mails", "home", "home/larderloop"):
            (self.folder / part).mkdir(parents=True)
        (self.folder / "bin" / "larderloop").symlink_to(BINARY)
        (self.folder / "bin" / "larderloop-mail").symlink_to(UNATTENDED / "larderloop-mail")
        sendmail = self.folder / "sbin" / "sendmail"
        sendmail.write_text(f'#!/bin/sh\ncat >"{self.folder}/writing.$$"\nmv "{self.folder}/writing.$$" "{self.folder}/mails/$$"\n', encoding="utf-8")
        sendmail.chmod(0o755)
        instruments = {key: value for key, value in test.env.items() if key.endswith("SAN_OPTIONS")}
        own = "".join(f"{key}={value}\n" for key, value in {
            "HOME": self.folder / "home", "TZ": "UTC", "LARDERLOOP_BOOK": test.book, "LARDERLOOP_NOW": REVIEW_DAY, **instruments}.items())
        (self.folder / "crontab").write_text(own + crontab, encoding="utf-8")
        (self.folder / "run").write_text(RUN, encoding="utf-8")
        self.log = self.folder / "log"
        with open(self.log, "wb") as log:
            self.process = subprocess.Popen(["unshare", "-m", "/bin/sh", "run", CLOCK, moment], cwd=self.folder, stdin=subprocess.DEVNULL, stdout=log, stderr=log,
                                            env={"PATH": "/usr/bin:/bin:/usr/sbin:/sbin", "HOME": "/root", "TZ": "UTC", "LC_ALL": "C.UTF-8"})
        test.addCleanup(self.end)

    def end(self):
        self.process.terminate()
        self.process.wait(timeout=PATIENCE)

    def until(self, condition):
        end = time.monotonic() + PATIENCE
        while not condition():
            self.test.assertIsNone(self.process.poll(), self.log.read_text(encoding="utf-8"))
            self.test.assertLess(time.monotonic(), end, self.log.read_text(encoding="utf-8"))
            time.sleep(0.05)

    def idle(self):
        """No job is running."""
        return not pathlib.Path(f"/proc/{self.process.pid}/task/{self.process.pid}/children").read_text(encoding="ascii").split()

    @property
    def calendar(self):
        return self.folder / "home" / "larderloop" / "feed.ics"

    def mails(self):
        return [email.message_from_bytes(path.read_bytes(), policy=email.policy.default) for path in (self.folder / "mails").iterdir()]


class CronLines(DemoTest):
    def lines(self):
        """{command: times}, the commented choice included."""
        found = re.findall(r"^(?:# )?((?:[0-9*]+ ){4}[0-9*])  (.*)$", LINES.read_text(encoding="utf-8"), re.MULTILINE)
        return {command: times for times, command in found}

    def test_the_parsers_of_others_take_the_lines(self):
        done = subprocess.run(["crontab", "-n", str(LINES)], capture_output=True, text=True, check=False)
        self.assertEqual(done.returncode, 0, done.stderr)
        broken = self.folder / "broken"
        broken.write_text(LINES.read_text(encoding="utf-8").replace("10 3 * * *", "10 3 * *"), encoding="utf-8")
        self.assertEqual(subprocess.run(["crontab", "-n", str(broken)], capture_output=True, check=False).returncode, 1, "a fault is seen")
        lines = self.lines()
        self.assertEqual(len(lines), 3)
        begin = datetime.datetime(2027, 4, 1, 12)
        for command, times in lines.items():
            following = croniter.croniter(times, begin).get_next(datetime.datetime)
            self.assertEqual(following, datetime.datetime(2027, 4, 2, 3, 10) if " calendar " in command else datetime.datetime(2027, 4, 2, 18), "the next night; on Friday")

    def test_cron_itself_runs_them(self):
        if not may_run_cron():
            print("cron itself was not run: that takes root and mount namespaces")
            return
        text = LINES.read_text(encoding="utf-8")
        night = Cron(self, "night", text, "2027-04-02 03:09:53")
        friday = Cron(self, "friday", text, "2027-04-02 17:59:53")
        html = Cron(self, "html", re.sub(r"^0 18 .* nudge .*$", "", text, flags=re.MULTILINE).replace("# 0 18", "0 18"), "2027-04-02 17:59:53")
        night.until(night.calendar.exists)
        night.until(night.idle)
        self.assertEqual(night.calendar.read_bytes(), self.feed())
        self.assertEqual(night.mails(), [], "who says nothing sends no mail")
        friday.until(lambda: friday.mails() and friday.idle())
        (mail,) = friday.mails()
        self.assertEqual(mail["To"], "you@example.org")
        self.assertEqual(mail.get_content(), self.ok("nudge").out)
        self.assertFalse(friday.calendar.exists(), "that line was not due")
        html.until(lambda: html.mails() and html.idle())
        (both,) = html.mails()
        self.assertEqual([part.get_content_type() for part in both.iter_parts()], ["text/plain", "text/html"])
        self.assertIn("Review the", both.get_body(("plain",)).get_content())


if __name__ == "__main__":
    unittest.main()
