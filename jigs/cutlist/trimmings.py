"""Fillers, end panels and island backs: what closes a run of boxes, cut from the fronts' board; and
the names of all that belongs to a wall.

A filler is cut wider than its place, to be scribed to the wall. An end panel flush with the faces
of the fronts is as deep as box, bumper and front together; one that the fronts cover, or beside
fronts that are all inset, is as deep as the box. Either is cut deeper at the wall edge for
scribing, but at an island, where a back closes the run and covers the panels' edges. Panels at
boxes that stand go down to the floor. All common practice, no source.

The golden box: 584.2 + 2 + 19.05, and 15 to scribe.

>>> flush = panel_depth(584.2, out=19.05 + 2.0, flush=True)
>>> round(flush, 4), round(flush + 15, 4)
(605.25, 620.25)

A wall's tag is its name in capitals without accents, its letters A-Z and digits alone, at most six
of them; a name that has none of these gives `WALL1`, `WALL2`. No two walls of a job have one tag,
and no wall has the ID of a box. A wall with an `id` of its own in the job has that.

>>> wall_tags(("north", "island", "northern", "Βόρειος"), taken=())["island"]
'ISLAND'
"""

from collections.abc import Collection, Iterable, Mapping

from msgspec.structs import replace

from jigs.cutlist.piece import Block, Piece, PieceKind, PieceNote
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import HIGHEST, boxes_at_end, faces_out, join_runs, place_job
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.latin import plain_capitals

LONGEST_TAG = 6


def wall_tags(
    walls: Iterable[str], taken: Collection[str], given: Mapping[str, str] | None = None
) -> dict[str, str]:
    """Give each wall's tag; `taken` are the IDs that none may have, `given` the walls' own IDs.
    "" for a wall unnamed."""
    own = given or {}
    tags: dict[str, str] = {}
    for number, wall in enumerate(dict.fromkeys(walls), start=1):
        if not wall:
            tags[wall] = ""
            continue
        if wall in own:
            tags[wall] = own[wall]
            continue
        plain = plain_capitals(wall)
        words = "".join(c for c in plain if c.isascii() and c.isalnum())[:LONGEST_TAG]
        tag = words or f"WALL{number}"
        used = {*tags.values(), *taken, *own.values()}
        more = 2
        while tag in used:
            ending = str(more)
            tag = f"{(words or 'WALL')[: LONGEST_TAG - len(ending)]}{ending}"
            more += 1
        tags[wall] = tag
    return tags


def name_wall_piece(tag: str, *words: str) -> str:
    """Name a piece of a wall: `NORTH-TOE-1-FRONT`."""
    return "-".join((*([tag] if tag else []), *words))


LETTERS: tuple[tuple[Hand, str], ...] = (("left", "L"), ("right", "R"))


def panel_depth(box_depth: float, *, out: float, flush: bool) -> float:
    """Give an end panel's depth before scribing: flush with the fronts' faces, which stand `out`
    before the box, or covered; mm."""
    return box_depth + out if flush else box_depth


def filler(
    job: Job, name: str, wall: str, *, width: float, height: float, scribed: bool = True
) -> Piece:
    """Give a filler for a place `width` wide, beside boxes `height` high; mm."""
    scribe = job.build.scribe if scribed else 0.0
    piece = _upright(job, name, "filler", wall, height=height, width=width + scribe)
    notes = (PieceNote(kind="spare-width", figures=(scribe,)),) if scribe else ()
    return replace(piece, notes=notes)


def wall_fillers(job: Job, tags: Mapping[str, str]) -> list[Piece]:
    """Give the fillers at the ends of all walls; only against a wall or a casing are they scribed.
    None stands beside a blind box in its corner, behind the other run, where nobody sees it.

    `tags`: the walls' short names.
    """
    return [
        piece
        for wall in job.walls
        for hand, _ in LETTERS
        for end in [wall.end(hand)]
        if end.filler
        for piece in end_fillers(
            job, tags[wall.name], wall.name, hand,
            width=end.filler, scribed=end.stands not in ("corner", "panel"),
            hidden=end.stands == "corner",
        )
    ]  # fmt: skip


def end_fillers(
    job: Job, tag: str, wall: str, hand: Hand, *, width: float, scribed: bool = True,
    hidden: bool = False,
) -> list[Piece]:  # fmt: skip
    """Give the fillers, `width` wide before scribing, at one end of a wall: one beside each box
    that stands nearest to that end, from the floor up; mm. Beyond an end panel it goes down as far
    as that, to the floor: no front of a toe platform closes what is under it. `hidden`: beside a
    blind end none."""
    places = place_job(job)
    beside = [
        box
        for box in sorted(boxes_at_end(job, wall, hand), key=lambda box: box.above_floor)
        if not (hidden and box.blind is not None and box.blind.hand == hand)
    ]
    letter = dict(LETTERS)[hand]
    names = [letter] if len(beside) == 1 else [f"{letter}{k}" for k in range(1, len(beside) + 1)]
    made = []
    spare = job.build.scribe if scribed else 0.0
    for box, name in zip(beside, names, strict=True):
        piece = filler(
            job, name_wall_piece(tag, "FILLER", name), wall,
            width=width, height=filler_height(box, hand), scribed=scribed,
        )  # fmt: skip
        high, panel = filler_height(box, hand), job.material.front if box.panels.at(hand) else 0.0
        over = 0.0 if box.panels.at(hand) is None else floor_under(job, box)
        x = places[box.id]
        x += -panel - width if hand == "left" else box.width + panel
        made.append(
            replace(
                piece,
                notes=(
                    PieceNote(kind="beside", names=(box.id,)), *piece.notes, *scribe_foot(over),
                ),
                beside=(box.id,),
                hand=hand,
                scribe=hand if spare else None,
                spare=spare,
                over=over,
                on_wall=(
                    Block(
                        x=x, y=box.above_floor + box.height - high,
                        z=-job.material.front - job.build.bumper,
                        dx=width, dy=high, dz=job.material.front,
                    ),
                ),
            )
        )  # fmt: skip
    return made


def end_panel(
    job: Job, name: str, *, box: str, wall: str, box_depth: float, height: float, flush: bool,
    out: float, reached: bool = False, scribed: bool = True, over: float = 0.0,
) -> Piece:  # fmt: skip
    """Give an end panel at a box `box_depth` deep, `height` high, whose fronts stand `out` before
    it; mm. `reached`: these reach over its front edge; `over`: as much of its height is more than
    it needs where the floor is highest."""
    scribe = job.build.panel_scribe if scribed else 0.0
    deep = panel_depth(box_depth, out=out, flush=flush)
    covered = not flush and out > SLACK
    notes = [PieceNote(kind=("covered" if reached else "edge-seen") if covered else "flush")]
    notes += [PieceNote(kind="spare-depth", figures=(scribe,))] if scribe else []
    piece = _upright(job, name, "end-panel", wall, height=height, width=deep + scribe)
    return replace(
        piece, box=box, scribe="rear" if scribe else None, spare=scribe, over=over,
        notes=(*notes, *scribe_foot(over)),
    )  # fmt: skip


def island_back(job: Job, name: str, wall: str, *, width: float, height: float) -> Piece:
    """Give the panel behind a run of island boxes; mm."""
    return _upright(job, name, "island-back", wall, height=height, width=width)


def trim_boxes(job: Job, tags: Mapping[str, str]) -> list[Piece]:
    """Give the end panels and island backs of a job; `tags`: the walls' short names."""
    places, thick = place_job(job), job.material.front
    made = [
        replace(
            end_panel(
                job, f"{box.id}-PANEL-{letter}", box=box.id, wall=box.wall, box_depth=box.depth,
                height=panel_height(box), flush=kind == "flush", out=faces_out(job, box),
                reached=any(front.reveals.reaches(hand) > 0 for front in box.fronts),
                scribed=not box.panels.back,
                over=floor_under(job, box),
            ),
            hand=hand,
            blocks=(_panel_block(job, box, hand, flush=kind == "flush"),),
        )
        for box in job.boxes
        for hand, letter in LETTERS
        for kind in [box.panels.at(hand)]
        if kind is not None
    ]  # fmt: skip
    numbers: dict[str, int] = {}
    for run in find_island_runs(job):
        wall = run[0].wall
        numbers[wall] = numbers.get(wall, 0) + 1
        ends = (run[0].panels.left, run[-1].panels.right)
        panels = sum(end is not None for end in ends) * job.material.front
        back = island_back(
            job, name_wall_piece(tags[wall], "BACK", str(numbers[wall])), wall,
            width=sum(box.width for box in run) + panels, height=panel_height(run[0]),
        )  # fmt: skip
        first, high = run[0], panel_height(run[0])
        block = Block(
            x=places[first.id] - (thick if ends[0] is not None else 0.0),
            y=first.above_floor + first.height - high, z=max(each.depth for each in run),
            dx=sum(each.width for each in run) + panels, dy=high, dz=thick,
        )  # fmt: skip
        behind = tuple(each.id for each in run)
        over = floor_under(job, first)
        made.append(
            replace(
                back,
                notes=(PieceNote(kind="behind", names=behind), *scribe_foot(over)),
                beside=behind,
                over=over,
                on_wall=(block,),
            )
        )
    return made


def _panel_block(job: Job, box: BoxSpec, hand: Hand, *, flush: bool) -> Block:
    """Give where the end panel at one side of a box stands, scribed."""
    thick, out = job.material.front, faces_out(job, box)
    high = panel_height(box)
    return Block(
        x=-thick if hand == "left" else box.width, y=box.height - high,
        z=-out if flush else 0.0,
        dx=thick, dy=high, dz=panel_depth(box.depth, out=out, flush=flush),
    )  # fmt: skip


def panel_height(box: BoxSpec) -> float:
    """Give the height of a panel at a box: to the floor, where the box does not hang; mm."""
    hangs = box.kind == "wall" or box.above_floor > HIGHEST
    return box.height if hangs else box.height + max(0.0, box.above_floor)


def filler_height(box: BoxSpec, hand: Hand) -> float:
    """Give the height of a filler at one side of a box: its own, or that of the end panel between
    them; mm."""
    return box.height if box.panels.at(hand) is None else panel_height(box)


def floor_under(job: Job, box: BoxSpec) -> float:
    """Give how far the floor's highest point stands into a panel at a box, 0 where that ends
    above the floor; mm."""
    floors = {wall.name: wall.floor_high for wall in job.walls}
    return floors.get(box.wall, 0.0) if panel_height(box) > box.height + SLACK else 0.0


def scribe_foot(over: float) -> tuple[PieceNote, ...]:
    """Note what comes off a panel's lower end; nothing on a level floor."""
    return (PieceNote(kind="scribe-foot", figures=(over,)),) if over > SLACK else ()


def find_island_runs(job: Job) -> tuple[tuple[BoxSpec, ...], ...]:
    """Give the boxes that share a back, each run from left to right: side by side, equally high."""
    backed = (box for box in job.boxes if box.panels.back)
    return join_runs(
        backed,
        place_job(job),
        lambda run, box: abs(panel_height(run[-1]) - panel_height(box)) < SLACK,
    )


def _upright(
    job: Job, name: str, kind: PieceKind, wall: str, *, height: float, width: float
) -> Piece:  # fmt: skip
    """Cut a piece from the fronts' board; its grain, where it has one, stands upright."""
    grained = job.material.front_kind != "mdf"
    return Piece(
        id=name,
        kind=kind,
        box=None,
        wall=wall,
        stuff="front",
        length=height if grained else max(height, width),
        width=width if grained else min(height, width),
        thickness=job.material.front,
        grain="length" if grained else None,
    )
