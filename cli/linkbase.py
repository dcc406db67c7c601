"""The address that a person's own links begin with: `labels --payload link --base URL`.

>>> read_base("https://kitchen.example/boxes/")
'https://kitchen.example/boxes'
"""

import re
from collections.abc import Iterator
from urllib.parse import SplitResult, urlsplit

LONGEST = 100
"""Characters of an address. How many a label has room for, its stock says."""
_SIGNS = r"(?:[A-Za-z0-9._~!$&'()*+,;=:@/\[\]-]|%[0-9A-Fa-f]{2})*"
"""What stands in an address without a query (RFC 3986, 3.3 and appendix A)."""
_HOST = r"([A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?\.?|\[[0-9A-Fa-f:.]+\])(:\d*)?"


def read_base(text: str) -> str:
    """Give an address without a slash at its end. Raises ValueError with all that is wrong."""
    if faults := list(_faults(text)):
        raise ValueError(
            f"{'; '.join(faults)} ({text[: LONGEST + 20]!r} given); such as "
            "http://192.168.1.20:8032 or https://kitchen.example/boxes is allowed"
        )
    return text.rstrip("/")


def _faults(text: str) -> Iterator[str]:
    if len(text) > LONGEST:
        yield f"{len(text)} characters are too many, {LONGEST} at most"
    bare, mark, _ = text.partition("#")
    if mark:
        yield "no '#' and what follows it: each link has its own end"
    bare, mark, _ = bare.partition("?")
    if mark:
        yield "no '?' and what follows it: each link has its own"
    if not re.fullmatch(_SIGNS, bare):
        yield "letters without accents, figures and -._~/:%XX alone, no space"
    try:
        parts = urlsplit(bare)
    except ValueError:  # half a bracket
        yield "no such host"
        return
    if parts.scheme.lower() not in ("http", "https"):
        yield "begins with http:// or https://"
    _, at, host = parts.netloc.rpartition("@")
    if at:
        yield "no name and password before the host: everybody reads a label"
    if not re.fullmatch(_HOST, host):
        yield "no such host" if host else "no host behind http://"
    elif not _has_port(parts):
        yield "no such port"
    if {".", ".."} & set(parts.path.split("/")):
        yield "no '.' or '..' as a folder"


def _has_port(parts: SplitResult) -> bool:
    """Tell whether a port is left out, or is one."""
    try:
        return parts.port != 0
    except ValueError:
        return False
