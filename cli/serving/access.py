"""Who may see and mark: the key, and where a request says it goes to and comes from.

The key stands in the printed links; after the first one a browser has it as a cookie. A page of
somebody else's can make a browser send a request here, with the cookie: so what is asked for under
a name that is not this computer's is refused, and so is a mark that a page from elsewhere sends.

>>> is_ours("127.0.0.1:8032", 8032), is_ours("kitchen.example:8032", 8032)
(True, False)
"""

import hmac
import ipaddress
from collections.abc import Callable, Collection, Mapping
from typing import Any, Literal
from urllib.parse import parse_qs

from msgspec import Struct

OPEN = ("/style.css", "/scan.js")
"""What any page is drawn with, a refusal too: no key is asked for it."""
HEADERS = (
    ("Content-Security-Policy", "default-src 'none'; style-src 'self'; script-src 'self'; "
     "img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"),
    ("X-Content-Type-Options", "nosniff"),
    ("X-Frame-Options", "DENY"),
    # Not "no-referrer": with it browsers say no origin when a form is sent.
    ("Referrer-Policy", "same-origin"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("Permissions-Policy", "camera=(), geolocation=(), microphone=()"),
    ("Cache-Control", "no-store"),
)  # fmt: skip
"""What every answer says to the browser: nothing comes from elsewhere, nothing runs in the page but
what is served here, nobody else may frame it, nothing is kept."""


class Refused(Exception):
    """A request that is not answered as it wishes; the text is complete, and has no key in it."""

    def __init__(self, status: int, title: str, text: str) -> None:
        super().__init__(text)
        self.status, self.title, self.text = status, title, text


def is_ours(host: str, port: int, names: Collection[str] = (), *, lan: bool = False) -> bool:
    """Tell whether a request's Host header names this server.

    `names` are the computer's names on the network. On the network any address in figures is
    ours: a stranger's page can send a browser here by a name alone.
    """
    name, colon, number = host.lower().rpartition(":")
    if not colon and port == 80:  # a browser leaves out the usual one
        name, number = number, "80"
    if number != str(port):
        return False
    if name in ("127.0.0.1", "localhost", "[::1]"):
        return True
    if not lan:
        return False
    try:
        ipaddress.ip_address(name.removeprefix("[").removesuffix("]"))
    except ValueError:
        return name in {each.lower() for each in names}
    return True


def is_from_here(environ: Mapping[str, object], origins: Collection[str]) -> bool:
    """Tell whether a page of this server, which has one of these origins, sends a request that
    changes something. What is no browser says neither where it comes from nor whether that is the
    same site."""
    origin = environ.get("HTTP_ORIGIN")
    if origin is not None:
        return origin in origins
    return environ.get("HTTP_SEC_FETCH_SITE") in (None, "same-origin", "none")


def is_key(given: str, key: str) -> bool:
    """Compare a key in a time that does not tell how much of it is right."""
    return hmac.compare_digest(given.encode(errors="replace"), key.encode())


Judgement = Literal["marks", "reads"]
"""What a request may do: mark and read, or read alone."""


class Gate(Struct, frozen=True, kw_only=True):
    """What a server lets in."""

    key: str
    port: int
    names: tuple[str, ...] = ()
    """This computer's names on the network."""
    bases: Callable[[], Collection[str]] = tuple
    """Gives scheme and host of the user's own that links were printed with by now: what leads here
    by them is let in."""
    lan: bool = False
    open_reading: bool = False
    """Whether reading needs no key."""

    def judge(self, environ: Mapping[str, Any]) -> Judgement:
        """Say what a request may do, by WSGI's names. Raises Refused."""
        host = str(environ.get("HTTP_HOST", ""))
        printed = [base for base in self.bases() if base.partition("://")[2] == host.lower()]
        if not printed and not is_ours(host, self.port, self.names, lan=self.lan):
            raise Refused(403, "Not under this name", "These pages are not served under that name.")
        reading = environ["REQUEST_METHOD"] in ("GET", "HEAD")
        if not reading and not is_from_here(environ, [f"http://{host}", *printed]):
            raise Refused(403, "Not from there", "Another site's page sent this; nothing was done.")
        given = given_key(environ)
        if given is None:
            given = self._cookie(environ)
        elif not is_key(given, self.key):
            raise Refused(403, "Not the key", "The key in this link is not that of this job. "
                          "Its labels may be older than its key.")  # fmt: skip
        if given is not None and is_key(given, self.key):
            return "marks"
        if reading and (self.open_reading or environ.get("PATH_INFO") in OPEN):
            return "reads"
        raise Refused(403, "A key is wanted", "Scan a label, or open the link that the computer "
                      "shows where these pages are served.")  # fmt: skip

    def cookie_for(self, environ: Mapping[str, Any]) -> tuple[str, str] | None:
        """Give the header that lets a browser keep the key of the link that it followed; out of
        the reach of any script, and sent from no other site's forms."""
        if given_key(environ) is None:
            return None
        said = f"{self._name}={self.key}; Path=/; Max-Age=31536000; HttpOnly; SameSite=Lax"
        return "Set-Cookie", said

    @property
    def _name(self) -> str:
        """Cookies are the same for all ports of a computer."""
        return f"jigsheet-{self.port}"

    def _cookie(self, environ: Mapping[str, Any]) -> str | None:
        for pair in str(environ.get("HTTP_COOKIE", "")).split(";"):
            name, _, value = pair.strip().partition("=")
            if name == self._name:
                return value
        return None


def given_key(environ: Mapping[str, Any]) -> str | None:
    """Give the key that stands in the address of a request; None where none does."""
    try:
        found = parse_qs(environ.get("QUERY_STRING", ""), keep_blank_values=True, max_num_fields=20)
    except ValueError as error:
        raise Refused(400, "Not understood", "That address has too many parts.") from error
    return found["k"][0] if "k" in found else None
