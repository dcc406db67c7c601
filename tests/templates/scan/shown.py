"""Pages made for tests, and read back by the parser of the standard library."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser

from msgspec.structs import replace

from jigs.bench.course import Course
from jigs.bench.standing import Standing
from jigs.box.parts import Layout
from templates.scan.host import Host
from templates.scan.markup import VOID
from templates.scan.scan import Scan

SERVED = Host(
    href="/p/{}".format,
    marks=True,
    sheet="/p/{}/sheet.pdf".format,
    stations="/p/{}/stations.pdf".format,
    photo="/p/{}/photo".format,
)
"""As on a server, where one may mark."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A job ready to be shown, with nothing done yet."""

    layout: Layout
    scan: Scan
    courses: Mapping[str, Course]
    standings: Mapping[str, Standing]


@cache
def _shown(key: int) -> Shown:
    scan = Scan(_LAYOUTS[key])
    return Shown(layout=scan.layout, scan=scan, courses=scan.courses, standings=scan.standings({}))


_LAYOUTS: dict[int, Layout] = {}


def show(layout: Layout) -> Shown:
    """Make a layout ready to be shown; one that was asked for before is not made again."""
    _LAYOUTS[id(layout)] = layout
    return _shown(id(layout))


def done(standing: Standing, *keys: str) -> Standing:
    """Give a standing with some steps done, the last one last."""
    steps = {step.key: step for step in standing.steps}
    return replace(standing, done=frozenset(keys), last=steps[keys[-1]])


@dataclass(slots=True)
class Node:
    """An element that was read."""

    name: str
    given: dict[str, str | None]
    inside: "list[Node | str]" = field(default_factory=list)

    def all(self, name: str, class_: str = "") -> Iterator["Node"]:
        """Find all elements of a name below this one, in order."""
        for each in self.inside:
            if isinstance(each, Node):
                classes = (each.given.get("class") or "").split()
                if name in ("*", each.name) and (not class_ or class_ in classes):
                    yield each
                yield from each.all(name, class_)

    def one(self, name: str, class_: str = "") -> "Node":
        """Find the only such element."""
        [found] = self.all(name, class_)
        return found

    @property
    def text(self) -> str:
        """All text within, as it is read."""
        return "".join(each if isinstance(each, str) else each.text for each in self.inside)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open = [Node("", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert len({name for name, _ in attrs}) == len(attrs), f"an attribute twice in <{tag}>"
        node = Node(tag, dict(attrs))
        self.open[-1].inside.append(node)
        if tag not in VOID:
            self.open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].inside.append(Node(tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop().name == tag, f"</{tag}> closes another element"

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)


def read(page: str) -> Node:
    """Read a page; every element must be closed where it was opened."""
    reader = _Reader()
    reader.feed(page)
    reader.close()
    [root] = reader.open
    return root
