"""What all pages have: the head, the way home, sections, the words that stand on top, the look.

What is held, open or worth a look is told apart by word and by shape, never by colour alone.
"""

from enum import Enum
from pathlib import Path

from templates.scan.host import Host
from templates.scan.markup import Html, join, tag

_HERE = Path(__file__).parent
STYLE = _HERE.joinpath("style.css").read_text(encoding="utf-8")
SCRIPT = _HERE.joinpath("scan.js").read_text(encoding="utf-8")
"""The few lines without which the pages work as well. Shows of a list of parts, while one types,
only those whose ID has what is typed; makes a photo small before it is sent."""
SHAPES = {
    "HOLD": "M8 1h8l7 7v8l-7 7H8l-7-7V8z",
    "OPEN": "M12 2 23 22H1z",
    "LOOK": "M12 1 23 12 12 23 1 12z",
}
"""An octagon, a triangle, a diamond."""


class Banner(Enum):
    """What a line on top is about."""

    HOLD = "HOLD"
    OPEN = "OPEN"
    LOOK = "LOOK"


def banner(kind: Banner, fact: str, more: str) -> Html:
    """Make a line that is seen first: its shape, its word, the fact, what to do."""
    shape = tag(
        "svg", tag("path", d=SHAPES[kind.value]), viewBox="0 0 24 24", aria_hidden="true",
        class_="shape",
    )  # fmt: skip
    words = tag("p", tag("b", f"{kind.value}: "), fact, f" {more}" if more else None)
    return tag("div", shape, words, class_=f"banner {kind.value.lower()}")


def section(title: str, *content: str | None, kind: str = "", anchor: str = "") -> Html:
    """Make a section with its heading; `nav` is one of links. `anchor`: by which a link leads
    there."""
    name = "nav" if kind == "nav" else "section"
    label = title if kind == "nav" else None
    return tag(
        name, tag("h2", title), *content,
        class_=kind or None, aria_label=label, id=anchor or None,
    )  # fmt: skip


def whole_page(title: str, body: Html, host: Host) -> str:
    """Make a page of its own, with the links that every page has."""
    return document(
        title,
        join(
            (
                tag("link", rel="stylesheet", href="/style.css"),
                tag("link", rel="icon", href="data:,"),
                tag("script", src="/scan.js", defer=True),
            )
        ),
        join((header(host), tag("main", *faults(host), body, class_="page"))),
    )


def document(title: str, head: Html, body: Html) -> str:
    """Make a document."""
    return "<!doctype html>\n" + tag(
        "html",
        tag(
            "head",
            tag("meta", charset="utf-8"),
            tag("meta", name="viewport", content="width=device-width, initial-scale=1"),
            tag("meta", name="color-scheme", content="light dark"),
            tag("title", title),
            head,
        ),
        tag("body", body),
        lang="en",
    )


def header(host: Host) -> Html:
    """Make the way home, and the search that every page has on a server."""
    search = tag(
        "form",
        tag("label", tag("span", "Find a part", class_="heard"),
            tag("input", type="search", name="q", placeholder="Find a part", autocomplete="off",
                autocapitalize="characters")),
        tag("button", "Find"),
        action=host.home, role="search",
    )  # fmt: skip
    return tag("header", tag("a", "All walls", href=host.home, class_="home"), search)


def faults(host: Host) -> list[Html]:
    """Say what is wrong with the job itself, on every page."""
    return [banner(Banner.HOLD, fault, "") for fault in host.faults]


def plain_page(title: str, text: str, host: Host) -> str:
    """Make a page that only tells something: what was asked for is not there, or refused."""
    return whole_page(title, join((tag("h1", title), tag("p", text))), host)
