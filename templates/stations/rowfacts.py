"""What holds for a part besides its holes, at its stations: the same as on its sheets."""

from collections.abc import Collection, Iterator

from msgspec.structs import replace

from jigs.bench.station import Row, Station
from jigs.given.confirming import OpenNumber
from jigs.ground.grouped import grouped
from jigs.ground.problems import OF_HINGES, OF_PULLS
from templates.stations.stationview import Shop
from templates.words.boardfacts import drawer_box_facts
from templates.words.cautions import SPRUNG
from templates.words.facewords import NOT_REVERSIBLE
from templates.words.frontfacts import (
    back_facts,
    face_facts,
    frame_facts,
    hanging_facts,
    hinge_facts,
    measured_facts,
    noted_facts,
)
from templates.words.ownwords import where_box_stands
from templates.words.rowwords import open_names, warning_words
from templates.words.sentence import Sentence

SEVERAL = 3
"""What so many rows have to say is said once above them, and of which."""


def said_above(shop: Shop, station: Station) -> dict[str, list[str]]:
    """Give what all rows of a station have to say that are not held back, or several of them, as
    it stands above the rows: what is said of the same parts together, what is said of all first,
    of a few before that of the others. The key says for which parts it is."""
    ready = [row for row in station.rows if not row.held]
    stamped = len({row.open for row in ready if row.open}) == 1
    said = [
        (
            row.part.id,
            (*said_in_row(shop, row), open_line_of(station, row.open) if stamped else ""),
        )
        for row in ready
    ]
    above: dict[str, list[str]] = {"": []}
    saying = grouped((text, part) for part, facts in said for text in dict.fromkeys(facts) if text)
    for text, mine in saying.items():
        if len(mine) == len(said):
            above[""].append(text)
        elif len(mine) >= SEVERAL and len(said) <= 2 * len(mine):
            others = [part for part, facts in said if text not in facts]
            above.setdefault(f"All but {', '.join(others)}: ", []).append(text)
        elif len(mine) >= SEVERAL:
            above.setdefault(f"{', '.join(mine)}: ", []).append(text)
    return {who: texts for who, texts in above.items() if texts}


def open_line_of(station: Station, numbers: Collection[OpenNumber]) -> str:
    """Name what is open for a row, or for a block of them: each says its own unless all rows of
    the station rest on the same numbers, which its title then names; "" where none is."""
    return open_names(numbers) if numbers and not station.rests_alike else ""


def said_in_row(shop: Shop, row: Row) -> tuple[str, ...]:
    """Give the facts that hold for a row's part and its findings; nothing where it is held back."""
    if row.held:
        return ()
    facts = [fact.text for fact in _facts(shop, row)]
    warnings = warning_words(row, shop.layout.job.shown, _elsewhere(shop, row))
    return tuple(dict.fromkeys([*facts, *warnings]))


def _elsewhere(shop: Shop, row: Row) -> Collection[str | tuple[str, str]]:
    """Give what is said at a front's cups alone, or at its pull: what concerns these, where they
    are bored."""
    front = shop.fronts.get(row.part.id)
    if front is None:
        return ()
    bored = {each.kind for each in front.fittings}
    of_pulls = OF_PULLS if row.purpose != "pull" and "pull" in bored else frozenset()
    if row.purpose == "cup":
        return of_pulls
    return of_pulls | (OF_HINGES if "hinge" in bored else {"tab-moved"})


def _facts(shop: Shop, row: Row) -> Iterator[Sentence]:
    part, view = row.part, shop.view(row.part)
    front = shop.fronts.get(part.id)
    if view is not None and view.reversible is False and row.purpose == "cup":
        yield Sentence(NOT_REVERSIBLE)
    if front is not None:
        told = face_facts if part.face == "front" else back_facts
        left_out = [*measured_facts(front), *hanging_facts(shop.layout, front), *frame_facts(front)]
        left_out += () if row.purpose == "cup" else hinge_facts(shop.layout, front)
        yield from (fact for fact in told(shop.layout, front) if fact not in left_out)
        yield from frame_facts(front, brief=True)
        yield from noted_facts(front)
        if view is not None and row.purpose == "front-fixing" and row.marks is None:
            yield from (Sentence(text) for text in where_box_stands(replace(view, marks=None)))
    elif part.id in shop.drawers:
        drawer = shop.drawers[part.id]
        if row.purpose == "hook" or not drawer.rear:
            yield from drawer_box_facts(drawer)
    elif row.serves and row.serves in shop.fronts and shop.fronts[row.serves].kind == "lift":
        yield Sentence(SPRUNG)
