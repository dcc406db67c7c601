"""Every hole of a job as a list: for people, for a spreadsheet, and as data.

All three list the same holes in the axes of their parts (a front and a drawer box as seen from the
room, a box side back from its finished front edge): fronts, then sides, then drawer boxes, in the
job's order. A part that is held back is named and has no holes.
"""

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jigs.bench.benchpart import marked_holes
from jigs.box.drawerbox import AnyDrawer, DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.fittings.hinge import HingeChoice
from jigs.given.confirming import StandIn, rests_on
from jigs.given.job import Job
from jigs.given.kinds import kind_of
from jigs.ground.geometry import Fitting, Hole, collect_holes, other_hand
from jigs.ground.lengths import Unit, format_inches, format_mm, format_sizes, in_both
from templates.lists.cells import csv_text, in_mm, number
from templates.words.findings import held_words, problems_data
from templates.words.holewords import LIST_LEGEND
from templates.words.openwords import STAMP, open_cell, open_data, open_words
from templates.words.standinwords import stand_in_words
from templates.words.textlines import WIDTH, columned, line_width, wrapped
from templates.words.wording import FRONT_WORDS, side_words

COLUMNS = (
    "part", "box", "kind", "code", "purpose", "face", "serves",
    "x_mm", "y_mm", "diameter_mm", "depth_mm", "open", "assumed",
)  # fmt: skip
"""The columns of the CSV list; an empty depth means right through. `open`: the open numbers that
decide the hole, each as `hinge.main.constant`."""


def holes_json(layout: Layout) -> str:
    """Give all parts with their holes and findings as JSON text, numbers to 0.0001 mm."""
    import json  # the other two lists do without

    data = {
        "schema": 1,
        "job": layout.job.name,
        "units": layout.job.units,
        "fronts": [_front_data(front, layout.job) for front in layout.fronts],
        "sides": [_side_data(side, layout.job) for side in layout.sides],
        "boxes": [_box_data(box, layout.job) for box in layout.drawers],
        **(
            {"rollouts": [_rollout_data(rollout) for rollout in layout.rollouts]}
            if layout.rollouts
            else {}
        ),
        "problems": problems_data(layout.problems, layout.job.shown),
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


class _Part(Struct, frozen=True, kw_only=True):
    """A part as rows and tables name it, and what is bored into it."""

    given: Front | Side | AnyDrawer
    id: str
    kind: str
    title: str
    """What it is, behind its ID on a screen."""
    fittings: tuple[Fitting, ...]
    assumed: tuple[str, ...]
    held: str = ""
    """Why it is held back; "" where it is not."""


def holes_csv(layout: Layout) -> str:
    """Give all holes as CSV text, one a line; no cell is ever taken for a formula."""
    return csv_text(COLUMNS, (row for part in _parts(layout) for row in _rows(part)))


def holes_text(layout: Layout) -> str:
    """Give all holes as tables for people, places in the unit shown first."""
    unit = layout.job.shown
    return "\n".join([*(_block(part, unit) for part in _parts(layout)), _legend()]) + "\n"


def _legend() -> str:
    """Give the legend in its own lines, or in those of a narrow terminal."""
    if line_width() >= WIDTH:
        return LIST_LEGEND
    return "\n".join(wrapped(LIST_LEGEND, "", "  "))


def _parts(layout: Layout) -> Iterator[_Part]:
    """Give all that holes are listed of: fronts, sides with holes, drawer boxes."""
    unit = layout.job.shown
    for front in layout.fronts:
        hinged = f", hinges {front.hinged}" if front.hinged else ""
        size = format_sizes((front.width, front.height), unit)
        yield _Part(
            given=front, id=front.id, kind=front.kind,
            title=f"{FRONT_WORDS[front.kind]}{hinged}, {size}, code {front.code}",
            fittings=front.fittings, assumed=stand_in_words(front.assumed, layout.job),
            held=f": {held_words(front, unit)}" if front.withheld else "",
        )  # fmt: skip
    for side in filter(lambda side: side.holes, layout.sides):
        inside = "" if side.partition else "inside of the "
        size = format_sizes((side.depth, side.height), unit)
        yield _Part(
            given=side, id=side.board, kind=_side_kind(side),
            title=f"{inside}{side_words(side)}, {size}, code {side.code}",
            fittings=side.fittings, assumed=stand_in_words(side.assumed, layout.job),
        )  # fmt: skip
    held_fronts = {front.id for front in layout.fronts if front.withheld}
    for box in layout.drawers:
        kind = _box_kind(box)
        size = f", {format_sizes(box.size, unit)}, code {box.code}" if box.size else ""
        if isinstance(box, DrawerBox):
            held = f" with {box.front}" if box.front in held_fronts else ""
        else:
            held = f": {held_words(box, unit)}" if box.held else ""
        yield _Part(
            given=box, id=box.id, kind=kind, title=f"{kind.replace('-', ' ')}{size}",
            fittings=box.bored, assumed=stand_in_words(_assumed_in(box), layout.job), held=held,
        )  # fmt: skip


def _side_kind(side: Side) -> str:
    """Name a box side, or one face of a partition, as data: `left-side`."""
    if not side.partition:
        return f"{side.side}-side"
    face = other_hand(side.side)
    return f"{face}-face-of-partition-{side.partition}"


def _depth(hole: Hole) -> float | None:
    return None if hole.depth is None else number(hole.depth)


def _hinge_data(hinge: HingeChoice) -> dict[str, Any]:
    """Give a door's tab and plate; where its record lists no plates, the height it wants."""
    data: dict[str, Any] = {
        "record": hinge.record,
        **in_mm(tab=hinge.tab, plate=hinge.plate, overlay_error=hinge.error),
    }
    if not hinge.plate_stated:
        data |= {"plate_mm": None, "overlay_error_mm": None, "plate_wanted_mm": number(hinge.plate)}
    return data


def _hole_data(hole: Hole) -> dict[str, Any]:
    return {
        "purpose": hole.purpose,
        "face": hole.face,
        **in_mm(x=hole.x, y=hole.y, diameter=hole.diameter, depth=hole.depth),
    }


def _front_data(front: Front, job: Job) -> dict[str, Any]:
    hinge = front.hinge
    return {
        "id": front.id,
        "box": front.box,
        "kind": front.kind,
        "hinged": front.hinged,
        "code": front.code,
        "withheld": front.withheld,
        **in_mm(
            width=front.width,
            height=front.height,
            thickness=front.make.thickness,
            x=front.place.x,
            y=front.place.y,
        ),
        "hinge": None if hinge is None else _hinge_data(hinge),
        "holes": _front_holes(front),
        "open": open_data(front.open),
        "assumed": list(stand_in_words(front.assumed, job)),
    }


def _front_holes(front: Front) -> list[dict[str, Any]]:
    """Give a front's holes; those marked through its drawer box say so."""
    marked = marked_holes(front)
    through = {"marked_from": front.drawer.id if front.drawer else ""}
    return [_hole_data(hole) | (through if hole in marked else {}) for hole in front.holes]


def _side_data(side: Side, job: Job) -> dict[str, Any]:
    return {
        "box": side.box,
        "column": side.column,
        "side": side.side,
        "board": side.board,
        "code": side.code,
        **in_mm(height=side.height, depth=side.depth),
        # A partition is counted from its own bottom end, which stands so high in the box.
        **({"bottom_mm": number(side.ends.base)} if side.partition else {}),
        "holes": [
            {
                "purpose": hole.purpose,
                "part": fitting.part,
                **in_mm(x=hole.x, y=hole.y, diameter=hole.diameter, depth=hole.depth),
            }
            for fitting in side.fittings
            for hole in fitting.holes
        ],
        "open": open_data(side.open),
        "assumed": list(stand_in_words(side.assumed, job)),
    }


def _box_data(box: AnyDrawer, job: Job) -> dict[str, Any]:
    return {
        "part": box.id,
        "front": box.front if isinstance(box, DrawerBox) else None,
        "code": box.code,
        **_sizes_data(box),
        "holes": [_hole_data(hole) for hole in collect_holes(box.bored)],
        "open": open_data(box.open),
        "assumed": list(stand_in_words(_assumed_in(box), job)),
    }


def _sizes_data(box: AnyDrawer) -> dict[str, float | None]:
    """Give a drawer box's three sizes; null where it came to none."""
    sizes = box.size
    keys = ("width_mm", "height_mm", "length_mm")
    return dict(zip(keys, map(number, sizes), strict=True)) if sizes else dict.fromkeys(keys)


def _box_kind(box: AnyDrawer) -> str:
    return "drawer-box" if isinstance(box, DrawerBox) else "rollout"


def _rollout_data(rollout: Rollout) -> dict[str, Any]:
    return {
        "id": rollout.id,
        "box": rollout.box,
        "column": rollout.column,
        "behind": list(rollout.behind),
        "slide": rollout.slide,
        "code": rollout.code,
        "withheld": rollout.withheld,
        **_sizes_data(rollout),
        **in_mm(x=rollout.x, y=rollout.y),
        "spacer_left_mm": number(rollout.spacer_left),
        "spacer_right_mm": number(rollout.spacer_right),
    }


def _assumed_in(box: AnyDrawer) -> tuple[StandIn, ...]:
    return box.assumed if isinstance(box, DrawerBox) else ()


def _rows(part: _Part) -> Iterator[tuple[str | float | None, ...]]:
    for fitting in part.fittings:
        kind = kind_of(fitting).record
        for hole in fitting.holes:
            decide = [
                number
                for number in part.given.open
                if number.kind == kind
                and fitting.record in (None, number.record)
                and rests_on(number, hole.face)
            ]
            yield (
                part.id,
                part.given.box,
                part.kind,
                part.given.code,
                hole.purpose,
                hole.face,
                fitting.part or "",
                number(hole.x),
                number(hole.y),
                number(hole.diameter),
                _depth(hole),
                open_cell(decide),
                "; ".join(part.assumed),
            )


def _block(part: _Part, unit: Unit) -> str:
    """Give a part's holes as a table, or why there are none."""
    head = f"{part.id}  {part.title}\n"
    if part.held:
        return f"{head}  HELD{part.held}\n"
    inside = isinstance(part.given, Side)  # of these no hole says its face, but what it serves
    rows = [
        (hole.purpose, fitting.part or "" if inside else hole.face, *_places(hole, unit))
        for fitting in part.fittings
        for hole in fitting.holes
    ]
    if not rows:
        return f"{head}  no holes\n"
    stamps = [f"{STAMP}: {words}" for words in open_words(part.given.open)]
    stamps += [f"ASSUMED: {'; '.join(part.assumed)}"] if part.assumed else []
    table = columned(
        [("purpose", "for" if inside else "face", "x", "y", "dia", "deep"), *rows],
        right=range(2, 6),
    )
    return head + "".join(f"{line}\n" for line in (*(f"  {each}" for each in stamps), *table))


def _places(hole: Hole, unit: Unit) -> tuple[str, str, str, str]:
    return (
        _place(hole.x, unit),
        _place(hole.y, unit),
        f"{hole.diameter:g}",
        "through" if hole.depth is None else f"{hole.depth:g}",
    )


def _place(value: float, unit: Unit) -> str:
    return in_both(format_mm(value), f"{format_inches(value)} in", unit)
