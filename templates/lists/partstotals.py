"""Under the tables of the cut list: what to buy, the thickness trap, and the legend."""

from collections.abc import Iterator

from jigs.cutlist.piece import Stuff
from jigs.cutlist.sheet import SHEET_WORDS
from jigs.cutlist.toe import stands
from jigs.cutlist.totals import PER_EDGE, WASTE, add_banding, add_boards, over_sheet
from jigs.cutlist.trap import find_trap
from jigs.given.confirming import rests_on
from jigs.ground.lengths import (
    MM_PER_INCH,
    SQUARE_FEET,
    Unit,
    format_inches,
    format_length,
    in_both,
)
from jigs.reading.assumed import list_assumed
from templates.lists.partslist import PartsList, drawers_of
from templates.words.openwords import STAMP, open_words
from templates.words.textlines import counted, wrapped
from templates.words.wording import nominal_words

STUFF_WORDS: dict[Stuff, str] = {
    "side": "sides",
    "partition": "partitions",
    "back": "backs",
    "front": "fronts",
    "drawer-side": "drawer sides",
    "drawer-bottom": "drawer bottoms",
    "spacer": "spacers",
}
"""What a board is for."""


def totals_lines(parts: PartsList) -> Iterator[str]:
    """Say what boards and band to buy."""
    job = parts.layout.job
    boards = add_boards(parts.pieces, job.units)
    if not boards:
        return
    yield "To buy"
    for board in boards:
        name = STUFF_WORDS[board.stuff]
        if board.stuff == "front":
            name += " (fillers, panels and backs; not the fronts themselves)"
        yield from wrapped(
            f"{name}, {exact(board.thickness, job.shown)}: {counted(board.pieces, 'piece')}, "
            f"{_area(board.area, job.shown)}; at least {counted(board.sheets, 'sheet')} of "
            f"{SHEET_WORDS[job.units]}",
            "  ", "    ",
        )  # fmt: skip
    for band in add_banding(parts.pieces):
        yield from wrapped(
            f"edge band for board of {exact(band.board, job.shown)}: "
            f"{counted(band.edges, 'edge')}, {_run(band.length, job.shown)}; to buy "
            f"{_run(band.to_buy, job.shown)}",
            "  ", "    ",
        )  # fmt: skip
    yield from wrapped(
        "Sheets are counted by area alone: cuts and offcuts come on top. "
        f"Band to buy has {format_length(PER_EDGE, job.shown)} more for each edge, and "
        f"{WASTE - 1:.0%} over all.",
        "  ", "  ",
    )  # fmt: skip
    if long := over_sheet(parts.pieces, job.units):
        yield from wrapped(
            f"Larger than a sheet of {SHEET_WORDS[job.units]}: "
            f"{', '.join(piece.id for piece in long)}.",
            "  ", "  ",
        )  # fmt: skip
    yield ""


def trap_lines(parts: PartsList) -> list[str]:
    """Say what a box would come to, cut for what its board is called."""
    job = parts.layout.job
    trap = find_trap(job, parts.cut_boxes)
    if trap is None:
        return []
    known = "as assumed" if "material.side" in job.assumed else "as measured"
    if any(doubt.nominal and doubt.path[-1] == "side" for doubt in job.doubts):
        known = "as given"
    called = f"{exact(trap.nominal, job.shown)}"
    source = (
        "the nearest trade size, a guess; sold_as in [build] says it" if trap.guessed
        else "what it is sold as"
    )  # fmt: skip
    if abs(trap.lost) < 0.05:
        if trap.guessed:
            return []
        words = f"This list is cut for sides of {called}, {known}, which is what they are sold as."
        return wrapped(words, "", "")
    loss = f"{format_length(abs(trap.lost), job.shown)} {'lost' if trap.lost > 0 else 'too wide'}"
    if trap.takes_a_reveal:
        loss += ", a whole reveal"
    return wrapped(
        f"Cut for {called} ({source}), a bottom of {format_length(trap.bottom, job.shown)} between "
        f"sides of {exact(trap.true, job.shown)}, {known}, would make {trap.box} "
        f"{format_length(trap.comes_to, job.shown)} wide instead of "
        f"{format_length(trap.width, job.shown)}: {loss}. This list is cut for "
        f"{exact(trap.true, job.shown)}.",
        "", "",
    )  # fmt: skip


def built_lines(parts: PartsList) -> list[str]:
    """Say which boxes stand already, so that their pieces are in no table and in no sum."""
    if not parts.built:
        return []
    whose = "its" if len(parts.built) == 1 else "their"
    text = (
        f"Built already, {whose} own pieces in no table and no sum here: {', '.join(parts.built)}."
    )
    job = parts.layout.job
    held = {drawer.box for drawer in drawers_of(parts)} & set(parts.built)
    if held:
        widths = ", ".join(
            f"{box.id} {format_length(box.width, job.shown)}" for box in job.boxes if box.id in held
        )
        text += (
            " Drawer boxes stay in the list, reckoned for the width in the job, not the measured "
            f"one: {widths}."
        )
    return [*wrapped(text, "", "  ")]


def drawer_lines(parts: PartsList) -> Iterator[str]:
    """Say which slide each drawer box runs on, by its nominal length."""
    found: dict[tuple[str, float], list[str]] = {}
    for drawer in drawers_of(parts):
        found.setdefault((drawer.slide, drawer.slide_length), []).append(drawer.id)
    if not found:
        return
    yield "Drawer boxes and their slides"
    chosen = "use.slide" in parts.layout.job.assumed
    for (name, length), ids in found.items():
        by_depth = ", chosen by the box's depth where the job names none" if chosen else ""
        slide = f"'{name}', {nominal_words(length)} long{by_depth}"
        yield from wrapped(f"{slide}: {', '.join(ids)}", "  ", "    ")
    numbers = [n for d in drawers_of(parts) for n in d.open if rests_on(n, "cut")]
    for words in open_words(numbers):
        yield from wrapped(f"{STAMP}: {words}: sizes of drawer boxes rest on them", "  ", "    ")
    yield ""


def legend_lines(parts: PartsList) -> list[str]:
    """Say what the columns mean, and what is assumed."""
    job = parts.layout.job
    words = [
        "cut: what the saw is set to, before the edge band; length runs along the grain, or is "
        "the longer way where the grain does not matter. finished: the same with its band, where "
        "it has one.",
        "screws: pocket screws at each end of the piece, from the finished front edge of the box; "
        "of a side, where they come in; of what stands on edge (rail, nailer, sleeper, a drawer's "
        "front and back), from its lower edge.",
        "A + or - after inches: a little more or less.",
    ]
    keys = [f"material.{key}" for key in ("side", "back", "band", "drawer_side")]
    assumed = [*list_assumed(job, keys)]
    cut = parts.list_boxes()
    guessed = [
        box.id
        for box in job.boxes
        if box.id in cut
        and any(f"box.{box.id}.{key}" in job.assumed for key in ("width", "height", "depth"))
    ]
    if guessed:
        assumed.append(f"sizes of {', '.join(guessed)}")
    standing = {piece.wall for piece in parts.pieces if piece.kind == "toe-front"}
    low = [
        box.id
        for box in job.boxes
        if box.wall in standing and stands(box) and f"box.{box.id}.above_floor" in job.assumed
    ]
    if low:
        assumed.append(f"height above the floor of {', '.join(low)}")
    if assumed:
        words.append(f"ASSUMED, because the job does not say: {'; '.join(assumed)}.")
    if any(p.kind == "drawer-side" for p in parts.pieces) and job.build.drawer_boxes is None:
        words.append(
            'Drawer boxes are listed as made here; drawer_boxes = "ordered" in [build] leaves '
            "them out."
        )
    return [line for text in words for line in wrapped(text, "", "  ")]


def exact(mm: float, unit: Unit) -> str:
    """Write a thickness in both units, its millimetres to 0.01."""
    return in_both(f"{round(mm, 2):g} mm", f"{format_inches(mm)} in", unit)


def _area(square_metres: float, unit: Unit) -> str:
    feet = f"{square_metres * SQUARE_FEET:.1f} sq ft"
    return in_both(f"{square_metres:.2f} m2", feet, unit)


def _run(mm: float, unit: Unit) -> str:
    return in_both(f"{mm / 1000:.2f} m", f"{mm / MM_PER_INCH / 12:.1f} ft", unit)
