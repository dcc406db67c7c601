"""A browser's side of the pages: requests by WSGI, without a network."""

import io
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import quote, urlencode
from wsgiref.util import setup_testing_defaults
from wsgiref.validate import validator

from cli.jobs import Asked
from cli.serving.access import Gate
from cli.serving.answers import Answers
from cli.serving.current import Current
from cli.serving.site import make_site
from cli.serving.store import Store, open_store

PORT = 8032
HERE = f"127.0.0.1:{PORT}"
BOUNDARY = "edge-of-a-part"
FORM = "application/x-www-form-urlencoded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Got:
    """What was answered."""

    status: int
    headers: Mapping[str, str]
    body: bytes

    @property
    def text(self) -> str:
        return self.body.decode()


@dataclass(slots=True, kw_only=True)
class Browser:
    """Somebody who asks one site."""

    site: Any
    key: str
    store: Store
    job: Path
    cookie: str = ""

    def get(self, address: str, **headers: str) -> Got:
        """Ask for an address."""
        return self.ask("GET", address, **headers)

    def post(self, address: str, form: Mapping[str, str] | None = None, **headers: str) -> Got:
        """Send a form, as a page of the site does."""
        body = urlencode(form or {}).encode()
        headers.setdefault("ORIGIN", f"http://{HERE}")
        return self.ask("POST", address, body, kind=FORM, **headers)

    def send(self, address: str, data: bytes, name: str = "photo", file: str = "a.jpg") -> Got:
        """Send a file, as a page of the site does."""
        body = (
            (
                f'--{BOUNDARY}\r\nContent-Disposition: form-data; name="{name}"; '
                f'filename="{file}"\r\nContent-Type: image/jpeg\r\n\r\n'
            ).encode()
            + data
            + f"\r\n--{BOUNDARY}--\r\n".encode()
        )
        kind = f"multipart/form-data; boundary={BOUNDARY}"
        return self.ask("POST", address, body, kind=kind, ORIGIN=f"http://{HERE}")

    def ask(
        self, method: str, address: str, body: bytes = b"", /, *, kind: str = "", **headers: str
    ) -> Got:
        """Ask for anything; `headers` by their names in WSGI, without HTTP_."""
        path, _, query = address.partition("?")
        environ: dict[str, Any] = {
            "REQUEST_METHOD": method, "PATH_INFO": path, "QUERY_STRING": query,
            "SCRIPT_NAME": "", "CONTENT_LENGTH": str(len(body)), "wsgi.input": io.BytesIO(body),
            "HTTP_HOST": HERE, **({"CONTENT_TYPE": kind} if kind else {}),
            **({"HTTP_COOKIE": self.cookie} if self.cookie else {}),
            **{f"HTTP_{name}": value for name, value in headers.items()},
        }  # fmt: skip
        setup_testing_defaults(environ)
        started: list[tuple[str, list[tuple[str, str]]]] = []

        def start(status: str, said: list[tuple[str, str]], error: Any = None) -> Any:
            started.append((status, said))
            return lambda data: None

        # The standard's own checker: what it finds wrong, a server may stumble over.
        parts = validator(self.site)(environ, start)
        try:
            answer = b"".join(parts)
        finally:
            parts.close()  # type: ignore[attr-defined]
        [(status, said)] = started
        return Got(status=int(status[:3]), headers=dict(said), body=answer)

    def let_in(self) -> "Browser":
        """Follow the link with the key, and keep the cookie."""
        got = self.get(f"/?k={quote(self.key)}")
        assert got.status == 200
        self.cookie = got.headers["Set-Cookie"].partition(";")[0]
        return self


@contextmanager
def stranger(job: Path, **gate: Any) -> Iterator[Browser]:
    """Open the site of a job to a browser that has no key yet; `gate`: what else is let in."""
    with open_store(job) as store:
        asked = Asked(path=job)
        site = make_site(
            Answers(Current(asked, store, asked.lay_out()), store),
            Gate(key=store.key, port=PORT, **gate),
        )
        yield Browser(site=site, key=store.key, store=store, job=job)


def marks(browser: Browser, part: str = "B1-2") -> list[str]:
    """Give the steps of a part that are marked, by their keys."""
    kept = browser.store.kept().get(part)
    return [] if kept is None else [*kept.marks]
