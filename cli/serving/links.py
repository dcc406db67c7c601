"""The links that are printed on labels and shown on the terminal.

They stay what they are from one start of the server to the next: the key, the port and the name on
the network are kept with the marks.
"""

from pathlib import Path
from urllib.parse import quote, urlsplit

from msgspec import Struct

from cli.serving.store import Store, open_store

PORT = 8032
"""Where the pages are served if nothing else is said: 32 mm, and no service is known to be there
(from memory)."""
USUAL_PORTS = {"http": ":80", "https": ":443"}
"""Of the kinds of address that a base may have."""
BASE = "base "
"""How the names begin under which bases are kept."""
LONGEST_NAME = 10
"""Letters of a job's name in that on the network: each makes the symbols larger."""


class Link(Struct, frozen=True):
    """Where a job's pages are, and the key to them.

    >>> Link("http://127.0.0.1:8032", "kuJ5").of("B1-2")
    'http://127.0.0.1:8032/p/B1-2?k=kuJ5'
    """

    base: str
    """Without a slash at its end."""
    key: str
    """Empty where the pages ask for none."""

    @property
    def home(self) -> str:
        """The address of the first page."""
        return f"{self.base}/?k={self.key}"

    def of(self, part: str) -> str:
        """Give the address of a part's page."""
        asked = f"?k={quote(self.key, safe='')}" if self.key else ""
        return f"{self.base}/p/{quote(part, safe='')}{asked}"


def printed_link(job: Path, name: str, base: str | None = None) -> Link:
    """Give the link that labels of a job carry; `name` is the job's own. Without a base of the
    user's own it is this computer's name on the network, as `serve --lan` says it there, and its
    port; whatever is not kept yet is kept from now on, a base too, under which the pages then
    answer. Raises Failure."""
    with open_store(job) as store:
        if base is None:
            return Link(f"http://{local_name(store, name)}.local:{kept_port(store)}", store.key)
        where = urlsplit(base.lower())
        # A browser leaves out the port that is the usual one.
        host = where.netloc.removesuffix(USUAL_PORTS[where.scheme])
        origin = f"{where.scheme}://{host}"
        store.keep_fact(f"{BASE}{origin}", origin)
        return Link(base.rstrip("/"), store.key)


def kept_bases(store: Store) -> tuple[str, ...]:
    """Give the bases of the user's own that links were printed with: scheme and host."""
    return store.facts(BASE)


def kept_port(store: Store) -> int:
    """Give the port of the printed links."""
    return int(store.fact("port", lambda: str(PORT)))


def local_name(store: Store, name: str) -> str:
    """Give the name on the network of the server of a job that is called so, before its `.local`.
    Two jobs have two names; a job that is renamed keeps what its labels say."""
    return store.fact("name", lambda: f"jig{_spelt(name)}")


def _spelt(name: str) -> str:
    from jigs.ground.latin import plain_capitals

    words = "".join(c if c.isascii() and c.isalnum() else " " for c in plain_capitals(name))
    said = ""
    for word in words.lower().split():
        if said and len(said) + len(word) > LONGEST_NAME:
            break
        said += word
    return f"-{said[:LONGEST_NAME]}" if said else ""
