"""The demo household for the end-to-end tests of the loop, with the readers that they share."""
from _support import SOURCE, ProgramTest

DEMO = SOURCE / "data" / "demo" / "household.json"
REVIEW_DAY = "2027-04-03"
HOLD_UNTIL = "2027-10-16"


class DemoTest(ProgramTest):
    """A book of the demo household on the day of its spring review."""

    def setUp(self):
        super().setUp()
        self.env["LARDERLOOP_NOW"] = REVIEW_DAY
        self.ok("new", self.book, "--from", DEMO)

    def data(self, *arguments):
        return self.ok(*arguments, "--json").json["data"]

    def on(self, day):
        self.env["LARDERLOOP_NOW"] = day

    def kit_plan(self, kit="home-kit"):
        return next(each for each in self.data("plan")["kits"] if each["kit"] == kit)

    def sheet_lines(self, kit="home-kit"):
        return [line for place in self.data("review", "sheet", kit)["places"] for line in place["lines"]]

    def feed(self):
        target = self.folder / "feed.ics"
        self.ok("calendar", "-o", target)
        return target.read_bytes()
