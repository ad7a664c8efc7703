"""One calendar over HTTP on this machine, with an ETag over its bytes (RFC 9110 section 8.8.3), as any web server gives a file."""
import hashlib
import http.server
import threading


class FeedServer:
    """`raw` is what it serves and may be changed at any time; `asked` says what clients sent."""

    def __init__(self):
        outer = self
        self.raw, self.asked = b"", []

        class Handler(http.server.BaseHTTPRequestHandler):
            protocol_version = "HTTP/1.1"

            def do_GET(self):
                raw, mark = outer.raw, f'"{hashlib.sha256(outer.raw).hexdigest()}"'
                outer.asked.append((self.command, self.headers.get("If-None-Match"), self.headers.get("User-Agent")))
                same = self.headers.get("If-None-Match") == mark
                self.send_response(304 if same else 200)
                self.send_header("ETag", mark)
                self.send_header("Content-Type", "text/calendar; charset=utf-8")
                if not same:
                    self.send_header("Content-Length", str(len(raw)))
                self.end_headers()
                if not same and self.command == "GET":
                    self.wfile.write(raw)

            do_HEAD = do_GET

            def log_message(self, *_):
                pass

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.port = self.server.server_address[1]
        self.url = f"http://127.0.0.1:{self.port}/kit.ics"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self):
        self.server.shutdown()
        self.server.server_close()
