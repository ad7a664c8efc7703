"""A radicale of its own for a test: on a free port of this machine, with one user, and a second client beside ours."""
import http.client
import os
import re
import socket
import subprocess
import sys
import time
import xml.etree.ElementTree as xml

USER, PASSWORD = "mira", "open: sesame 7"
CALENDARS = {"kit": "VEVENT", "tasks": "VTODO", "any": None}


class Radicale:
    """Starts the server in `folder`; stop() ends it. `tls`: files of its certificate and key; `context`: how the second client looks at those."""

    def __init__(self, folder, tls=None, context=None):
        self.folder, self.context = folder, context
        secure = f"ssl = True\ncertificate = {tls[0]}\nkey = {tls[1]}\n" if tls else ""
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        (folder / "users").write_text(f"{USER}:{PASSWORD}\n", encoding="utf-8")
        config = folder / "radicale.conf"
        config.write_text(
            f"[server]\nhosts = 127.0.0.1:{self.port}\n{secure}[auth]\ntype = htpasswd\nhtpasswd_filename = {folder}/users\n"
            f"htpasswd_encryption = plain\ndelay = 0\n[rights]\ntype = owner_only\n[storage]\nfilesystem_folder = {folder}/collections\n"
            "[web]\ntype = none\n[logging]\nlevel = warning\n", encoding="utf-8")
        self.log = open(folder / "radicale.log", "wb")
        self.process = subprocess.Popen(["/usr/bin/python3", "-m", "radicale", "--config", str(config)], stdout=self.log, stderr=self.log,
                                        env={"PATH": "/usr/bin:/bin", "HOME": str(folder), "LC_ALL": "C.UTF-8", "TZ": "UTC"})
        for _ in range(200):
            try:
                socket.create_connection(("127.0.0.1", self.port), timeout=1).close()
                break
            except OSError:
                time.sleep(0.05)
        else:
            sys.exit("radicale does not start")
        for name, component in CALENDARS.items():
            self.make(name, component)

    def stop(self):
        self.process.terminate()
        self.process.wait(timeout=20)
        self.log.close()

    def url(self, name):
        return f"http{'s' if self.context else ''}://127.0.0.1:{self.port}/{USER}/{name}/"

    def request(self, method, path, body=b"", **headers):
        """(status, headers, body) of the second client."""
        import base64
        connection = (http.client.HTTPSConnection("127.0.0.1", self.port, timeout=20, context=self.context) if self.context else
                      http.client.HTTPConnection("127.0.0.1", self.port, timeout=20))
        headers = {name.replace("_", "-"): value for name, value in headers.items()}
        headers["Authorization"] = "Basic " + base64.b64encode(f"{USER}:{PASSWORD}".encode()).decode()
        connection.request(method, path, body, headers)
        answer = connection.getresponse()
        result = answer.status, dict(answer.getheaders()), answer.read()
        connection.close()
        return result

    def make(self, name, component):
        kinds = "" if component is None else (
            f'<c:supported-calendar-component-set><c:comp name="{component}"/></c:supported-calendar-component-set>')
        status, _, text = self.request(
            "MKCALENDAR", f"/{USER}/{name}/",
            f'<c:mkcalendar xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"><d:set><d:prop><d:displayname>{name}</d:displayname>{kinds}'
            "</d:prop></d:set></c:mkcalendar>".encode())
        assert status == 201, (status, text)

    def items(self, name):
        """{path: text} of everything in a calendar."""
        status, _, text = self.request(
            "REPORT", f"/{USER}/{name}/",
            b'<c:calendar-query xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"><d:prop><d:getetag/><c:calendar-data/></d:prop>'
            b'<c:filter><c:comp-filter name="VCALENDAR"/></c:filter></c:calendar-query>', Depth="1")
        assert status == 207, (status, text)
        found = {}
        for response in xml.fromstring(text).iter("{DAV:}response"):
            data = response.find(".//{urn:ietf:params:xml:ns:caldav}calendar-data")
            if data is not None and data.text:
                found[response.find("{DAV:}href").text] = data.text
        return found

    def put(self, path, text):
        status, _, said = self.request("PUT", path, text.encode(), Content_Type="text/calendar; charset=utf-8")
        assert status in (200, 201, 204), (status, said)

    def delete(self, path):
        status, _, said = self.request("DELETE", path)
        assert status in (200, 204), (status, said)

    def tick(self, path, text, at="20270406T180000Z"):
        """As a task list does it: STATUS, COMPLETED, PERCENT-COMPLETE."""
        changed = re.sub(r"STATUS:NEEDS-ACTION", f"STATUS:COMPLETED\r\nCOMPLETED:{at}\r\nPERCENT-COMPLETE:100", text)
        assert changed != text
        self.put(path, changed)


def unfolded(text):
    return re.sub(r"\r?\n[ \t]", "", text)


def credentials(folder, mode=0o600, text=f"{USER}\n{PASSWORD}\n"):
    path = folder / "server"
    path.write_text(text, encoding="utf-8")
    os.chmod(path, mode)
    return path
