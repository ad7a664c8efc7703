"""Evolution's data server (3.46), subscribed to the calendar, follows every step: new, changed, moved, withdrawn, all withdrawn."""
import signal
import unittest

from _demo import DemoTest
from _eds import DataServerClient
from _feed_server import FeedServer
from _serving import Serving


class DataServer(DemoTest):
    def setUp(self):
        super().setUp()
        self.client = DataServerClient(self, *self.start())

    def start(self):
        """(port, path) of any web server with the calendar as a file."""
        self.server = FeedServer()
        self.addCleanup(self.server.stop)
        self.server.raw = self.feed()
        return self.server.port, "/kit.ics"

    def publish(self):
        self.server.raw = self.feed()

    def asked_with_mark(self):
        return any(mark for _, mark, _ in self.server.asked)

    def follows(self, truth):
        """It comes to hold what is published now."""
        self.publish()
        self.client.must_hold(truth)

    def truth(self):
        return sorted((each["uid"], each["begin"], each["summary"]) for each in self.data("calendar")["events"])

    def test_it_follows_every_step(self):
        self.follows(self.truth())
        self.follows(self.truth())
        self.assertTrue(self.asked_with_mark(), "it asks with the ETag")
        self.on("2027-04-03T10:00:00Z")
        self.ok("review", "move", "home-kit", "--to", "2027-04-10")
        moved = self.truth()
        self.follows(moved)
        self.on("2027-04-03T11:00:00Z")
        self.ok("place", "change", "home-kit", "--name", "Box by the door")
        changed = self.truth()
        self.assertNotEqual(changed, moved)
        self.follows(changed)
        self.on("2027-04-10T11:00:00Z")
        self.ok("review", "start", "home-kit")
        self.ok("review", "finish", "home-kit")
        withdrawn = self.truth()
        self.assertLess({uid for uid, _, _ in withdrawn} & {uid for uid, _, _ in changed}, {uid for uid, _, _ in changed})
        self.follows(withdrawn)
        self.nothing_left()

    def alone(self):
        """The cancelled event of long ago is the only one."""
        self.publish()
        self.client.must_hold([("2000-01-01", "Nothing planned")], lambda: [(day, title) for _, day, title in self.client.held()])

    def nothing_left(self):
        # Nothing at all: a household without a kit publishes one cancelled event of long ago, and everything else goes.
        empty = self.folder / "empty.book"
        self.ok("new", empty)
        self.env["LARDERLOOP_BOOK"] = str(empty)
        self.alone()


class Served(DataServer):
    """The same, from larderloop serve."""

    def start(self):
        path = self.data("feed", "add", "Desk")["path"]
        self.serving, self.day = Serving(self), self.env["LARDERLOOP_NOW"][:10]
        return self.serving.port, path

    def publish(self):
        """On another day the server is started anew: the day of the tests is that of its start."""
        today = self.env["LARDERLOOP_NOW"][:10]
        if today != self.day:
            self.assertEqual(self.serving.stop(signal.SIGTERM), 0)
            self.serving, self.day = Serving(self, listen=f"127.0.0.1:{self.serving.port}"), today

    def asked_with_mark(self):
        return '"Desk" 304 0' in self.serving.log()

    def nothing_left(self):
        # Only kinds of which there is nothing now: the cancelled event of long ago stands alone.
        self.ok("meals", "none", "--from", "today", "--through", "+200d")
        self.ok("settings", "set", "feed-kinds", "eat-soon")
        self.alone()
        self.ok("settings", "set", "feed-kinds", "review,eat-soon")
        back = self.truth()
        self.follows(back)
        # A revoked address is not found, which is no empty calendar: what was fetched stays with the phone.
        self.ok("feed", "revoke", "Desk")
        self.follows(back)


if __name__ == "__main__":
    unittest.main()
