"""The boxes of a job file and their fronts: `[[box]]`, `[[box.front]]`, `[[box.front.hole]]`.

Fronts stand from top to bottom. What a front does not say is None here: its size is computed
from the box and the reveals, its hardware is the job's.
"""

from collections.abc import Collection, Mapping

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.hardware import NO_PULL, HingeRecord, PullRecord, SlideRecord
from jigs.given.ids import name_fronts, name_leaves, name_parts, names_board
from jigs.given.job import (
    BOX_KINDS,
    FRONT_KINDS,
    OVERLAYS,
    BoxKind,
    BoxSpec,
    FrontKind,
    FrontSpec,
)
from jigs.given.stated import (
    PANEL_KINDS,
    Boring,
    BoxRead,
    DrawerSize,
    EndPanels,
    FivePieceSpec,
    FrontEdges,
    FrontWords,
    Hung,
    OpenedBy,
    OwnReveals,
    Portion,
    RowRead,
    Taped,
)
from jigs.ground.believable import (
    DIAGONAL,
    END_REVEAL,
    IN_BOX,
    PANEL_GAP,
    PANEL_REVEAL,
    SHARE,
    SIDE_REVEAL,
)
from jigs.ground.geometry import Hand
from jigs.reading.fieldkeys import ANY_FRONT, BOXES, FRONTS, read_keys
from jigs.reading.frontwords import read_place
from jigs.reading.jobbuild import choose_frameless, refuse_frame_keys
from jigs.reading.jobhardware import Shelf, take_hinges
from jigs.reading.jobinside import (
    check_place,
    check_stacks,
    read_blind,
    read_columns,
    read_rollouts,
    read_shelves,
)
from jigs.reading.jobmeasured import (
    read_board_holes,
    read_both,
    read_built,
    read_front_holes,
    read_leaflet,
)
from jigs.reading.namedagain import RowFront, refuse_named_again
from jigs.reading.tomltables import TomlTable

MOST_ALIKE = 100
"""Fronts that one `count` may make."""
USUAL_ALIKE = 24
"""Fronts that one `count` makes in a kitchen; more are doubted (common practice, no source)."""

ABOVE_FLOOR: Mapping[BoxKind, float] = {
    "base": 100.0, "drawer": 100.0, "sink": 100.0, "tall": 100.0, "open": 100.0, "wall": 1370.0,
}  # fmt: skip
"""A box's bottom above the finished floor where none is given; mm (common practice, no source)."""

ASSUMED_DEPTH: Mapping[BoxKind, float] = {
    "base": 560.0, "drawer": 560.0, "sink": 560.0, "tall": 560.0, "open": 560.0, "wall": 320.0,
}  # fmt: skip
"""A box's depth where none is given; mm (common practice, no source)."""

BESIDE_KIT = ("hinge", "slide", "tab", "hinges_at", "bored", "drawer_width", "drawer_height")
"""What a front on a kit does not have."""

NAMELESS = "?"
"""What a box is called whose ID is at fault; no ID begins so."""

HAND_WORDS: Mapping[str, Hand] = {
    "left": "left", "l": "left", "lh": "left", "right": "right", "r": "right", "rh": "right",
}  # fmt: skip


class Shelves(Struct, frozen=True, kw_only=True):
    """The hardware records that fronts may name."""

    hinges: Shelf[HingeRecord]
    slides: Shelf[SlideRecord]
    pulls: Shelf[PullRecord]


class BoxesRead(Struct, frozen=True, kw_only=True):
    """The boxes as read; `assumed`: keys of the defaults that stand in; `claims`: each part's
    ID with the place where it was claimed."""

    boxes: tuple[BoxSpec, ...]
    assumed: frozenset[str]
    claims: tuple[tuple[str, str], ...]


def read_boxes(
    job: TomlTable, shelves: Shelves, board: float, listed: Mapping[str, RowFront] | None = None
) -> BoxesRead:
    """Read all `[[box]]` tables of a job; `board`: how thick that of its fronts and end panels is,
    mm; `listed`: the fronts of its list, by their IDs."""
    boxes: list[BoxSpec] = []
    with_rows = {front.box for front in listed.values()} if listed else set()
    assumed: set[str] = set()
    claims: list[tuple[str, str]] = []
    tables = job.tables("box")
    ids = [table.part_id("id") for table in tables]
    known = {box_id for box_id in ids if box_id}
    with_id: dict[str, TomlTable] = {}
    for table, box_id in zip(tables, ids, strict=True):
        table.require("id")
        if box_id and box_id in with_id:
            first = with_id[box_id]
            table.note(
                "id",
                f"duplicate ID ('{box_id}', first at {first.book.place((*first.path, 'id'))}); "
                "each box needs its own",
            )
            box_id = None  # its fronts' default names say nothing new
        elif box_id:
            with_id[box_id] = table
            claims.append((box_id, table.book.place((*table.path, "id"))))
        box = _read_box(table, box_id or NAMELESS, assumed, shelves)
        fronts: list[FrontSpec] = []
        rows: list[tuple[TomlTable, FrontSpec]] = []
        for number, row in enumerate(table.tables("front"), start=1):
            if listed and refuse_named_again(row, box.id, listed):
                continue
            made = _read_fronts(row, box.id, number, shelves)
            fronts += made
            claims += _claim(row, made, known)
            if made:
                check_place(row, made[0], box, board)
            rows += [(row, front) for front in made]
        check_stacks(rows, box)
        refuse_frame_keys(table)
        known_all = box.id not in with_rows
        names = [name for front in fronts for name in _names_of(front)] if known_all else []
        holes = read_board_holes(table, names)
        box = read_built(table, box)
        table.close()
        read = BoxRead(doubts=table.take_doubts())
        boxes.append(replace(box, fronts=tuple(fronts), holes=holes, read=read))
    return BoxesRead(boxes=tuple(boxes), assumed=frozenset(assumed), claims=tuple(claims))


def with_slides(box: BoxSpec) -> BoxSpec:
    """Give a box whose drawers, pullouts and rollouts name the box's slide where they name none."""
    if box.slide is None:
        return box
    fronts = (
        replace(front, slide=front.slide or box.slide)
        if front.kind in ("drawer", "pullout")
        else front
        for front in box.fronts
    )
    rollouts = (replace(each, slide=each.slide or box.slide) for each in box.rollouts)
    return replace(box, fronts=tuple(fronts), rollouts=tuple(rollouts))


def _claim(
    row: TomlTable, fronts: tuple[FrontSpec, ...], boxes: Collection[str]
) -> list[tuple[str, str]]:
    """Claim the IDs of the parts that one table of a front makes; `boxes`: the IDs of all."""
    place = row.book.place((*row.path, "id") if "id" in row else row.path)
    for front in fronts:
        if names_board(front.id, boxes):
            row.note(
                "id",
                f"duplicate ID ('{front.id}' given): a part of the box is called so; "
                "choose another",
            )
    return [
        (part, place)
        for front in fronts
        if not front.id.startswith(NAMELESS)
        for part in name_parts(front.id, front.kind)
    ]


def _names_of(front: FrontSpec) -> tuple[str, ...]:
    """Give the names by which a hole in a board may call a front."""
    return (front.id, *name_leaves(front.id)) if front.kind == "pair" else (front.id,)


def _read_box(table: TomlTable, box_id: str, assumed: set[str], shelves: Shelves) -> BoxSpec:
    kind = choose_frameless(table, "kind", BOX_KINDS)
    table.require("width", "height", kind=BOX_KINDS)
    sizes = BOXES[kind or "open"]
    width, height = table.length("width", sizes.width), table.length("height", sizes.height)
    depth = table.length("depth", sizes.depth)
    above_floor = table.length("above_floor", sizes.above_floor)
    if "depth" not in table:
        if kind == "open":
            assumed.add(f"box.{box_id}.depth")
        else:
            table.require("depth")
    given = read_keys(table, BoxSpec)
    legs = given.get("legs", 0.0)
    if height is not None and legs >= height:
        table.note(
            "legs",
            f"as high as the box or higher ({table.given('legs')} given, {table.given('height')} "
            "the height); that counts from the sides' end on the floor",
        )
    if legs and above_floor is None:
        above_floor = 0.0
    elif "above_floor" not in table:
        assumed.add(f"box.{box_id}.above_floor")
    kind = kind or "base"
    # A size that is missing or wrong is noted; the stand-in lets the reading go on.
    return BoxSpec(
        id=box_id,
        kind=kind,
        width=width or 1.0,
        height=height or 1.0,
        depth=depth or ASSUMED_DEPTH[kind],
        above_floor=ABOVE_FLOOR[kind] if above_floor is None else above_floor,
        **given,
        overlay=choose_frameless(table, "overlay", OVERLAYS) or "full",
        columns=(columns := read_columns(table)),
        shelves=read_shelves(table, height or 1.0, len(columns), legs=legs),
        no_shelf=table.pick("shelf") == [],
        slide=shelves.slides.take_name(table, "slide"),
        rollouts=read_rollouts(table, height or 1.0, len(columns), shelves.slides),
        blind=read_blind(table, width or 1.0, len(columns)),
        panels=EndPanels(
            left=table.choice("panel_left", PANEL_KINDS),
            right=table.choice("panel_right", PANEL_KINDS),
            back=table.flag("island_back") or False,
        ),
    )


def _read_fronts(row: TomlTable, box: str, place: int, shelves: Shelves) -> tuple[FrontSpec, ...]:
    """Read one table of a front: as many fronts as its `count` says."""
    front = _read_front(row, shelves)
    count = row.whole("count", usual=USUAL_ALIKE, most=MOST_ALIKE) or 1
    names = name_fronts(row.part_id("id") or "", box=box, place=place, count=count)
    row.close()
    doubts = row.take_doubts()
    read = RowRead(alike=count, doubts=doubts)
    return tuple(replace(front, id=name, row=read) for name in names)


def _read_front(row: TomlTable, shelves: Shelves) -> FrontSpec:
    row.require(kind=FRONT_KINDS)
    said = row.choice("kind", FRONT_KINDS)
    kind, sizes = said or "door", FRONTS[said] if said else ANY_FRONT
    wide = kind in ("panel", "opening")
    beside, below = (PANEL_GAP, PANEL_REVEAL) if wide else (SIDE_REVEAL, END_REVEAL)
    height = row.length("height", sizes.height)
    modules = row.whole("modules", usual=80, most=300)
    share = row.number("share", SHARE, most=1000.0)
    ways = [key for key in ("height", "modules", "share") if key in row]
    if len(ways) > 1:
        row.note(ways[1], f"stands beside {ways[0]}; give one of height, modules and share")
    for key in ("rail", "groove", "panel"):
        if key in row and "stile" not in row:
            row.note(key, "stands without stile; a five-piece front states the width of its stile")
    if "bored_tab" in row and "bored" not in row:
        row.note("bored_tab", "stands without bored; say bored = true if the cups are bored")
    leaflet = read_leaflet(row)
    hinges = take_hinges(row, shelves.hinges)
    return FrontSpec(
        id="?",
        kind=kind,
        width=row.length("width", sizes.width),
        height=height,
        portion=Portion(modules=modules, share=share),
        hinged=_read_hand(row, said),
        **read_keys(row, FrontSpec),
        edges=FrontEdges(**read_keys(row, FrontEdges)),
        drawer_box=DrawerSize(**read_keys(row, DrawerSize)),
        words=_read_words(row),
        boring=Boring(**read_keys(row, Boring)),
        five_piece=FivePieceSpec(**read_keys(row, FivePieceSpec)),
        measured=Taped(
            width=read_both(row, "measured_width", sizes.width),
            height=read_both(row, "measured_height", sizes.height),
            diagonals=read_both(row, "diagonals", DIAGONAL),
        ),
        hung=Hung(
            hinge=hinges[0] if hinges else None,
            other_hinges=hinges[1:],
            hinges_at=_read_hinges_at(row),
            restrictor=_read_restrictor(row, kind),
        ),
        slide=shelves.slides.take_name(row, "slide"),
        opened_by=OpenedBy(
            pull=shelves.pulls.take_name(row, "pull", words=(NO_PULL,)),
            pull_over=row.part_id("pull_over"),
            pull_level=row.part_id("pull_level"),
            **read_keys(row, OpenedBy),
        ),
        leaflet=leaflet,
        overlay=choose_frameless(row, "overlay", OVERLAYS),
        reveals=OwnReveals(
            left=row.length("reveal_left", beside),
            right=row.length("reveal_right", beside),
            top=row.length("reveal_top", beside),
            bottom=row.length("reveal_bottom", below),
        ),
        by_kit=_read_kit(row),
        holes=read_front_holes(row, kind),
    )


def _read_words(row: TomlTable) -> FrontWords:
    """Read what is noted of a front, and where by that it hangs."""
    words = FrontWords(**read_keys(row, FrontWords))
    return replace(words, hangs=read_place(words.note)) if words.note else words


def _read_hand(row: TomlTable, kind: FrontKind | None) -> Hand | None:
    value = row.pick("hinged")
    if value is None:
        return None
    if needless := needless_hand(kind):
        row.note("hinged", f"{needless} ({row.given('hinged')} given)")
        return None
    hand = HAND_WORDS.get(value.strip().lower()) if isinstance(value, str) else None
    if hand is None:
        row.note("hinged", f"not a hand ({row.given('hinged')} given); allowed: left, right")
    return hand


def needless_hand(kind: FrontKind | None) -> str:
    """Say why a front of a kind is hinged at neither hand; "" where it may be, or nobody says what
    it is."""
    if kind in (None, "door", "panel"):
        return ""
    if kind == "pair":
        return "is for a single door: of a pair the left leaf hangs left, the right one right"
    return f"is for doors; this is a {kind}"


def _read_hinges_at(row: TomlTable) -> tuple[float, ...] | None:
    """Read cup heights above the front's bottom edge, in rising order."""
    places = row.lengths("hinges_at", IN_BOX)
    if places is None:
        return None
    if len(set(places)) < len(places):
        row.note(
            "hinges_at",
            f"a height stands twice ({row.given('hinges_at')} given); one for each hinge",
        )
    return tuple(sorted(places))


def _read_restrictor(row: TomlTable, kind: FrontKind) -> bool:
    """Read whether a door is kept from opening to 90 degrees."""
    if "restrictor" in row and kind not in ("door", "pair"):
        row.note("restrictor", f"is for doors and pairs alone; this is a {kind}")
    return row.flag("restrictor") or False


def _read_kit(row: TomlTable) -> bool:
    """Read whether a front stands on a kit; then no other hardware holds it."""
    if row.choice("fixing", ("kit",)) is None:
        return False
    for key in BESIDE_KIT:
        if key in row:
            row.note(key, 'stands beside fixing = "kit", which holds the front by its own holes')
    return True
