"""HTML put together so that no text can become markup: whatever is not an element is escaped.

An attribute always stands in quotes; no data goes into a script, because there is none with data.

>>> tag("p", "B1 < B2", tag("br"), class_="note", hidden=False)
'<p class="note">B1 &lt; B2<br></p>'
>>> tag("a", "W1", href='/p/W1"onclick="x', aria_label="to W1")
'<a href="/p/W1&quot;onclick=&quot;x" aria-label="to W1">W1</a>'
"""

from collections.abc import Iterable
from html import escape

VOID = frozenset({"br", "img", "input", "link", "meta"})
"""Elements that have no content and no end tag (HTML Living Standard, 13.1.2)."""


class Html(str):
    """Text that is HTML already."""

    __slots__ = ()


def tag(name: str, /, *content: str | None, **attributes: str | int | None) -> Html:
    """Make an element. Content that is no `Html` is escaped, None left out. An attribute that is
    None or False is left out, one that is True stands without a value; an underscore in its name
    is a hyphen, one at its end none."""
    said = "".join(
        f" {_name(key)}" if value is True else f' {_name(key)}="{escape(str(value))}"'
        for key, value in attributes.items()
        if value is not None and value is not False
    )
    if name in VOID:
        return Html(f"<{name}{said}>")
    return Html(f"<{name}{said}>{join(content)}</{name}>")


def join(content: Iterable[str | None]) -> Html:
    """Set content one after the other; what is no `Html` is escaped."""
    return Html(
        "".join(
            each if isinstance(each, Html) else escape(each) for each in content if each is not None
        )
    )


def _name(key: str) -> str:
    return key.rstrip("_").replace("_", "-")
