"""Subscribes Evolution's data server to a calendar and answers, line by line, what it holds. Run inside dbus-run-session.

usage: _eds_client.py PORT PATH; each line on standard input asks for a fetch; the answer is one line of JSON:
{"events": [[uid, day, title, alarms]], "days": [[uid, day, title]]}; "days" holds every repetition in the days from the first to before the
second, for a line that names two days (2027-01-01 2029-01-01).
"""
import datetime
import json
import sys
import time

import gi

gi.require_version("EDataServer", "1.2")
gi.require_version("ECal", "2.0")
from gi.repository import ECal, EDataServer, GLib  # noqa: E402  (the versions are chosen first)

NOT_AT_ALL = 2**32 - 1  # how long to wait, as libecal writes it


def subscribed(port, path):
    source = EDataServer.Source.new_with_uid("kitfeed", None)
    source.set_parent("webcal-stub")
    source.get_extension("Calendar").set_backend_name("webcal")
    source.get_extension("WebDAV Backend").set_uri(GLib.Uri.parse(f"http://127.0.0.1:{port}{path}", GLib.UriFlags.NONE))
    login = source.get_extension("Authentication")
    login.set_method("none")
    login.set_host("127.0.0.1")
    login.set_port(port)
    registry = EDataServer.SourceRegistry.new_sync(None)
    registry.commit_source_sync(source, None)
    for _ in range(600):
        found = registry.ref_source("kitfeed")
        if found is not None:
            # A calendar of this machine never counts as connected where no network is; not waiting for that costs nothing.
            return ECal.Client.connect_sync(found, ECal.ClientSourceType.EVENTS, NOT_AT_ALL, None), registry
        time.sleep(0.1)
    sys.exit("the data server does not take the calendar")


def text_of(time_of):
    day = f"{time_of.get_year():04}-{time_of.get_month():02}-{time_of.get_day():02}"
    return day if time_of.is_date() else "not a day"


def held(client):
    _, components = client.get_object_list_as_comps_sync("#t", None)
    return sorted([each.get_uid(), text_of(each.get_dtstart().get_value()), each.get_summary().get_value(), len(each.get_alarm_uids() or [])]
                  for each in components)


def days(client, first, end):
    """Every repetition, as the data server works it out."""
    found = []

    def take(component, begins, ends, *_):
        found.append([component.get_uid(), text_of(begins), component.get_summary()])
        return True

    moments = [int(datetime.datetime.fromisoformat(each + "T00:00:00+00:00").timestamp()) for each in (first, end)]
    client.generate_instances_sync(*moments, None, take)
    return sorted(found)


def main():
    client, registry = subscribed(int(sys.argv[1]), sys.argv[2])
    for line in sys.stdin:
        client.refresh_sync(None)
        # The fetch itself goes on behind; it is over when nothing has moved for a while.
        before, still = None, 0
        for _ in range(40):
            time.sleep(0.25)
            now = held(client)
            still = still + 1 if now == before else 0
            before = now
            if still >= 4:
                break
        print(json.dumps({"events": before, "days": days(client, *line.split()) if line.split() else []}), flush=True)
    del registry


main()
