"""The words of a cut list: what its boards are for, what to buy, the thickness trap, the legend."""

from collections.abc import Iterator

from jigs.box.assumed import list_assumed
from jigs.cutlist.cutlist import STAMPED, PartsList, drawers_of
from jigs.cutlist.piece import Groove, Piece, Stuff
from jigs.cutlist.toe import stands
from jigs.cutlist.totals import (
    BAND_WASTE,
    PER_EDGE,
    SHEET_WORDS,
    BoardTotal,
    Trap,
    add_banding,
    add_boards,
    find_trap,
    over_sheet,
)
from jigs.given.confirming import rests_on
from jigs.given.job import BoxSpec, Job
from jigs.ground.lengths import (
    MM_PER_INCH,
    SQUARE_FEET,
    Unit,
    format_inches,
    format_length,
    in_both,
)
from templates.words.openwords import STAMP, open_words
from templates.words.standinwords import stand_in_words
from templates.words.textlines import counted
from templates.words.wallwords import wall_phrase
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
BUILT_NOTE = "built already: its own pieces are not cut again"
HELD_NOTE = "left out, because its front or it is held back"
"""What a spreadsheet says of boxes and drawer boxes without pieces here."""
SLIDES = "Drawer boxes and their slides"


def board_title(job: Job, stuff: Stuff, thickness: float) -> str:
    """Name the board that pieces are cut from, and say where its thickness was not given."""
    assumed = ", ASSUMED: measure it" if STAMPED.get(stuff) in job.assumed else ""
    return f"Board of the {STUFF_WORDS[stuff]}: {_exact(thickness, job.shown)} thick{assumed}"


def assumed_in(piece: Piece, job: Job) -> tuple[str, ...]:
    """Say what of a piece's own board and box nobody gave, in words."""
    keys = [STAMPED[piece.stuff]] if piece.stuff in STAMPED else []
    keys += [f"box.{piece.box}.{key}" for key in ("width", "height", "depth")] if piece.box else []
    return stand_in_words(list_assumed(job, keys), job)


def box_title(box: BoxSpec) -> str:
    """Name a box with its kind and its wall: `B1, base box, north wall`."""
    words = f"{box.id}, {box.kind} box"
    return f"{words}, {wall_phrase(box.wall)}" if box.wall else words


def wall_of_pieces(wall: str) -> str:
    """Name the wall that pieces belong to."""
    return wall_phrase(wall) if wall else "No wall named"


def cut_head(unit: Unit) -> str:
    """Head the column of cut sizes."""
    return f"cut: length by width, {unit} ({'mm' if unit == 'in' else 'in'})"


def groove_words(groove: Groove, unit: Unit, *, in_side: bool) -> str:
    """Say what a groove is for, and where it runs."""
    wide, deep, at = (format_length(v, unit) for v in (groove.width, groove.depth, groove.at))
    shape = f"{wide} wide, {deep} deep"
    if in_side:
        return (
            f"for the back, from end to end: {shape}, from "
            f"{format_length(groove.at - groove.width, unit)} to {at} behind the finished front "
            "edge"
        )
    return (
        f"for the drawer bottom, along the inner face: {shape}, its lower edge {at} above the "
        "lower edge"
    )


def totals_words(parts: PartsList) -> Iterator[str]:
    """Say what boards and band to buy; nothing where no board is cut."""
    unit = parts.layout.job.shown
    for board in add_boards(parts.pieces, parts.layout.job.units):
        yield _board_words(board, parts.layout.job)
    for band in add_banding(parts.pieces):
        yield (
            f"edge band for board of {_exact(band.board, unit)}: {counted(band.edges, 'edge')}, "
            f"{_run(band.length, unit)}; to buy {_run(band.to_buy, unit)}"
        )


def counting_words(parts: PartsList) -> Iterator[str]:
    """Say how boards and band are counted, and what no sheet holds."""
    job = parts.layout.job
    yield (
        "Sheets are counted by area alone: cuts and offcuts come on top. "
        f"Band to buy has {format_length(PER_EDGE, job.shown)} more for each edge, and "
        f"{BAND_WASTE - 1:.0%} over all."
    )
    if long := over_sheet(parts.pieces, job.units):
        names = ", ".join(piece.id for piece in long)
        yield f"Larger than a sheet of {SHEET_WORDS[job.units]}: {names}."


def _board_words(board: BoardTotal, job: Job) -> str:
    name = STUFF_WORDS[board.stuff]
    if board.stuff == "front":
        name += " (fillers, panels and backs; not the fronts themselves)"
    feet = f"{board.area * SQUARE_FEET:.1f} sq ft"
    return (
        f"{name}, {_exact(board.thickness, job.shown)}: {counted(board.pieces, 'piece')}, "
        f"{in_both(f'{board.area:.2f} m2', feet, job.shown)}; at least "
        f"{counted(board.sheets, 'sheet')} of {SHEET_WORDS[job.units]}"
    )


def trap_words(parts: PartsList) -> str:
    """Say what a box would come to, cut for what its board is called; "" where nothing is lost."""
    job = parts.layout.job
    trap = find_trap(job, parts.cut_boxes)
    if trap is None:
        return ""
    known = "as assumed" if "material.side" in job.assumed else "as measured"
    if any(doubt.nominal and doubt.path[-1] == "side" for doubt in job.doubts):
        known = "as given"
    called = _exact(trap.nominal, job.shown)
    if abs(trap.lost) < 0.05:
        if trap.guessed:
            return ""
        return f"This list is cut for sides of {called}, {known}, which is what they are sold as."
    source = "what it is sold as"
    if trap.guessed:
        source = "the nearest trade size, a guess; sold_as in [build] says it"
    true = _exact(trap.true, job.shown)
    return (
        f"Cut for {called} ({source}), a bottom of {format_length(trap.bottom, job.shown)} between "
        f"sides of {true}, {known}, would make {trap.box} "
        f"{format_length(trap.comes_to, job.shown)} wide instead of "
        f"{format_length(trap.width, job.shown)}: {_loss(trap, job.shown)}. This list is cut for "
        f"{true}."
    )


def _loss(trap: Trap, unit: Unit) -> str:
    loss = f"{format_length(abs(trap.lost), unit)} {'lost' if trap.lost > 0 else 'too wide'}"
    return f"{loss}, a whole reveal" if trap.takes_a_reveal else loss


def built_words(parts: PartsList) -> str:
    """Say which boxes stand already, so that their pieces are in no table and in no sum."""
    if not parts.built:
        return ""
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
    return text


def left_out_words(parts: PartsList) -> Iterator[str]:
    """Say which drawer boxes are not cut yet, because their fronts or they are held back."""
    rollouts = {rollout.id for rollout in parts.layout.rollouts}
    for why, names in (
        ("their fronts", [name for name in parts.left_out if name not in rollouts]),
        ("they", [name for name in parts.left_out if name in rollouts]),
    ):
        if names:
            yield f"Left out, because {why} are held back: {', '.join(names)}."


def slides_words(parts: PartsList) -> Iterator[str]:
    """Say which slide each drawer box runs on, by its nominal length."""
    found: dict[tuple[str, float], list[str]] = {}
    for drawer in drawers_of(parts):
        found.setdefault((drawer.slide, drawer.slide_length), []).append(drawer.id)
    chosen = "use.slide" in parts.layout.job.assumed
    for (name, length), ids in found.items():
        by_depth = ", chosen by the box's depth where the job names none" if chosen else ""
        yield f"'{name}', {nominal_words(length)} long{by_depth}: {', '.join(ids)}"


def open_sizes_words(parts: PartsList) -> Iterator[str]:
    """Name the open numbers that sizes of drawer boxes rest on."""
    numbers = [n for drawer in drawers_of(parts) for n in drawer.open if rests_on(n, "cut")]
    for words in open_words(numbers):
        yield f"{STAMP}: {words}: sizes of drawer boxes rest on them"


def legend_words() -> Iterator[str]:
    """Say what the columns mean."""
    yield (
        "cut: what the saw is set to, before the edge band; length runs along the grain, or is "
        "the longer way where the grain does not matter. finished: the same with its band, where "
        "it has one."
    )
    yield (
        "screws: pocket screws at each end of the piece, from the finished front edge of the box; "
        "of a side, where they come in; of what stands on edge (rail, nailer, sleeper, a drawer's "
        "front and back), from its lower edge."
    )
    yield "A + or - after inches: a little more or less."


def assumed_words(parts: PartsList) -> str:
    """Say which sizes of the list nobody gave; "" where all were."""
    job = parts.layout.job
    keys = [f"material.{key}" for key in ("side", "back", "band", "drawer_side")]
    assumed = [*stand_in_words(list_assumed(job, keys), job)]
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
    return f"ASSUMED, because the job does not say: {'; '.join(assumed)}." if assumed else ""


def made_here_words(parts: PartsList) -> str:
    """Say that drawer boxes are made, where nobody said whether they are bought."""
    made = any(piece.kind == "drawer-side" for piece in parts.pieces)
    if not made or parts.layout.job.build.drawer_boxes is not None:
        return ""
    return (
        'Drawer boxes are listed as made here; drawer_boxes = "ordered" in [build] leaves them out.'
    )


def _exact(mm: float, unit: Unit) -> str:
    """Write a thickness in both units, its millimetres to 0.01."""
    return in_both(f"{round(mm, 2):g} mm", f"{format_inches(mm)} in", unit)


def _run(mm: float, unit: Unit) -> str:
    return in_both(f"{mm / 1000:.2f} m", f"{mm / MM_PER_INCH / 12:.1f} ft", unit)
