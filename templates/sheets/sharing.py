"""Which fields share a page.

Page after page takes the next fields in order, and of a few that follow those which still find
room, so that a part stands near its neighbours. A few ways to fill a page are tried: the paper
upright or lying, fields as small, as flat or as narrow as they go.

>>> halves = (((90.0, 120.0), (180.0, 60.0)),) * 4
>>> [[field for field, _, _ in page.fields] for page in share_pages(halves, ((180.0, 240.0),), 0.0)]
[[0, 1, 2, 3]]
"""

from collections.abc import Callable, Sequence

from msgspec import Struct

from jigs.ground.geometry import SLACK
from templates.page.packing import Size, place_sizes

SheetSizes = tuple[Size, ...]
"""The sizes that a field may have, the smallest first."""
AHEAD = 40
"""How many fields behind the first that finds no room are asked."""
Way = Callable[[Size], float]
WAYS: tuple[Way, ...] = (
    lambda size: size[0] * size[1],
    lambda size: size[1],
    lambda size: size[0],
)
"""By what the sizes of a field are tried: the smallest, the flattest, the narrowest first."""


class SharedPage(Struct, frozen=True):
    """A page: which room it has, and of each of its fields which it is, in which of its sizes,
    and where its lower left corner is in the room."""

    room: int
    fields: tuple[tuple[int, int, Size], ...]


def share_pages(
    fields: Sequence[SheetSizes], rooms: Sequence[Size], gap: float
) -> tuple[SharedPage, ...]:
    """Share fields among pages, in order as far as room goes; each finds room in one of `rooms`
    (mm), `gap` is what lies between two of them."""
    ways = [[_in_order(sizes, way) for sizes in fields] for way in WAYS]
    pages: list[SharedPage] = []
    rest = list(range(len(fields)))
    while rest:
        tries = [
            _fill(rest, fields, number, room, gap, way)
            for number, room in enumerate(rooms)
            for way in ways
        ]
        page = max(tries, key=lambda page: _worth(page, fields))
        assert page.fields, "each field finds room on a page by itself"
        pages.append(page)
        taken = {field for field, _, _ in page.fields}
        # No page takes one from far behind: what follows is left as it is.
        end = rest.index(max(taken)) + 1
        rest = [field for field in rest[:end] if field not in taken] + rest[end:]
    return tuple(pages)


def _in_order(sizes: SheetSizes, way: Way) -> Sequence[int]:
    """Give the sizes of a field in the order in which they are tried."""
    return sorted(range(len(sizes)), key=lambda size: way(sizes[size]))


def _worth(page: SharedPage, fields: Sequence[SheetSizes]) -> float:
    """Weigh a page by what its fields would take at the least; one that leaves out the first of
    those to come is worth nothing."""
    return sum(fields[field][0][0] * fields[field][0][1] for field, _, _ in page.fields)


def _fill(
    rest: Sequence[int],
    fields: Sequence[SheetSizes],
    number: int,
    room: Size,
    gap: float,
    way: Sequence[Sequence[int]],
) -> SharedPage:
    """Fill a page with the next fields, and with what follows them as far as it is looked;
    `way`: in which order the sizes of each field are tried."""
    room = (room[0] + SLACK, room[1] + SLACK)  # one that fills it is a sum of its pieces
    chosen: list[tuple[int, int]] = []
    places: tuple[Size, ...] = ()
    sizes: list[Size] = []
    area = 0.0
    left = AHEAD
    for field in rest:
        for size in way[field]:
            wide, high = fields[field][size]
            if area + wide * high > room[0] * room[1] + 1.0:  # too much for a close look
                continue
            found = place_sizes([*sizes, (wide, high)], room, gap)
            if found is not None:
                chosen.append((field, size))
                sizes.append((wide, high))
                area += wide * high
                places = found
                break
        else:
            left -= 1
            if not chosen or not left:
                break
    return SharedPage(
        number,
        tuple((field, size, place) for (field, size), place in zip(chosen, places, strict=True)),
    )
