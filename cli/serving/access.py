"""Who may see and mark: the key, and where a request says it goes to and comes from.

The key stands in the printed links; after the first one a browser has it as a cookie. A page of
somebody else's can make a browser send a request here, with the cookie: so what is asked for under
a name that is not this computer's is refused, and so is a mark that a page from elsewhere sends.

>>> is_ours("127.0.0.1:8032", 8032), is_ours("kitchen.example:8032", 8032)
(True, False)
"""

import hmac
import ipaddress
from collections.abc import Collection, Mapping

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


def is_from_here(environ: Mapping[str, object], host: str) -> bool:
    """Tell whether a page of this server sends a request that changes something. What is no
    browser says neither where it comes from nor whether that is the same site."""
    origin = environ.get("HTTP_ORIGIN")
    if origin is not None:
        return origin == f"http://{host}"
    return environ.get("HTTP_SEC_FETCH_SITE") in (None, "same-origin", "none")


def is_key(given: str, key: str) -> bool:
    """Compare a key in a time that does not tell how much of it is right."""
    return hmac.compare_digest(given.encode(errors="replace"), key.encode())
