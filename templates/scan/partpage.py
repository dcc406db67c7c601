"""The page of a part, in the order in which its questions come up at the bench: what is it, where
does it go, which way up, what next, what does it wait for, where are its holes.
"""

from collections.abc import Iterator

from jigs.bench.course import CUT
from jigs.bench.standing import Standing
from jigs.bench.tracked import Tracked
from jigs.box.bypart import findings_at
from jigs.box.drawerbox import AnyDrawer, Rollout
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import Unit, format_length, format_sizes
from jigs.ground.problems import OPEN_CODES
from jigs.room.seen import along_wall
from templates.labels.piecewords import HIDDEN, STICK
from templates.scan.drilled import drilled
from templates.scan.frame import Banner, banner, section, whole_page
from templates.scan.host import Host
from templates.scan.markup import Html, join, tag
from templates.scan.nextstep import next_step, way_down
from templates.scan.noted import noted
from templates.scan.scan import Scan, block_of
from templates.scan.standpicture import drawer_stand, front_stand, piece_stand, side_stand
from templates.words.boardfacts import drawer_box_facts, incomplete, side_facts
from templates.words.frontfacts import back_facts, face_facts, given_facts
from templates.words.pagewords import (
    DRAWER_STANDS,
    front_stands,
    kind_words,
    made_before,
    open_counts,
    piece_stands,
    side_stands,
    stale_words,
)
from templates.words.piecenotes import note_words
from templates.words.saying import reason_of, say
from templates.words.scanwords import NEIGHBOUR
from templates.words.sentence import closed
from templates.words.standinwords import stand_in_words
from templates.words.stepwords import key_words
from templates.words.wallwords import wall_title

SIZES = (4, 5, 6, 7, 8, 9, 10, 12, 14, 17, 20, 24, 30)
"""An ID is set as large as the width holds: one size of letters for up to so many signs."""


def part_page(scan: Scan, part: str, standing: Standing, host: Host) -> str:
    """Make the page of a part, or of one that the job no longer has."""
    return whole_page(part, part_body(scan, part, standing, host), host)


def part_body(scan: Scan, part: str, standing: Standing, host: Host) -> Html:
    """Make what stands on the page of a part."""
    tracked = scan.parts.get(part)
    if tracked is None:
        return join((_title(part, ""), *_banners_of(standing), noted(standing, host)))
    return join(
        (
            _title(part, kind_words(tracked)),
            *_banners(tracked, standing, scan.layout.job.shown),
            _where(scan, tracked, host),
            _stands(scan, tracked, standing),
            way_down(scan, tracked, standing, host),
            next_step(scan, tracked, standing, host),
            drilled(scan, tracked, host),
            _known(scan, tracked),
            noted(standing, host),
            _beside(scan, tracked, host),
            tag("p", tag("b", part), f" CODE {tracked.code}" if tracked.code else " HOLD",
                class_="code"),
        )
    )  # fmt: skip


def _title(part: str, kind: str) -> Html:
    size = next((size for size in SIZES if len(part) <= size), SIZES[-1])
    return join(
        (
            tag("h1", part, class_=f"id n{size}"),
            tag("p", kind, class_="kind") if kind else None,
        )
    )


def _banners(part: Tracked, standing: Standing, unit: Unit) -> Iterator[Html]:
    """Say on top what is held, open, stale."""
    for problem in part.held:
        yield banner(
            Banner.HOLD, closed(reason_of(problem, unit)), closed(say(problem, unit).remedy)
        )
    for face in part.faces:
        for fact in incomplete(face):
            yield banner(Banner.HOLD, fact.text, "")
    numbers = open_of(part)
    if numbers:
        yield banner(Banner.OPEN, open_counts(numbers), "")
    yield from _banners_of(standing)


def _banners_of(standing: Standing) -> Iterator[Html]:
    if standing.vanished:
        yield banner(Banner.HOLD, "The job has this part no more.", "What was noted of it is kept.")
    work = [step.key for step in standing.outdated_work]
    made = [
        key_words(standing.steps, key) for key in dict.fromkeys([*work, *sorted(standing.outdated)])
    ]
    if made:
        fact, remedy = made_before(made)
        yield banner(Banner.HOLD, fact, remedy)
    if standing.stale:
        yield banner(Banner.OPEN, *stale_words(standing.stale))


def open_of(part: Tracked) -> tuple[OpenNumber, ...]:
    """Give the open numbers that a part's holes and cuts rest on."""
    if part.drawer is not None:
        return part.drawer.open
    if part.front is not None:
        return part.front.open
    return tuple(dict.fromkeys(number for face in part.faces for number in face.open))


def _where(scan: Scan, part: Tracked, host: Host) -> Html:
    said = where_words(scan, part)
    wall = scan.wall(part)
    alt = f"{part.id} on its wall, seen from the room: {said or 'its place is not said'}"
    picture = None
    if wall is not None:
        picture = wall.picture(scan.black(part), alt, shared=host.book)
    return section("Where", tag("p", said, class_="said") if said else None, picture)


def where_words(scan: Scan, part: Tracked) -> str:
    """Say where a part goes, in the words of its label; how high its box hangs in both units."""
    payload = scan.payload(part)
    beside = [text for text, worth in payload.phrases if worth == NEIGHBOUR]
    found = along_wall(scan.layout.job, part.boxes[0]) if len(part.boxes) == 1 else None
    if found is not None and found.height is not None:
        beside.append(f"HANGS AT {format_length(found.height, scan.layout.job.shown)}")
    wall = wall_title(part.wall) if payload.wall else ""
    return ", ".join(filter(None, (wall, payload.place[0], *beside)))


def _stands(scan: Scan, part: Tracked, standing: Standing) -> Html:
    """Show which way up a part goes, and which face is towards whoever holds it."""
    words: tuple[str, ...]
    if part.drawer is not None:
        words = (DRAWER_STANDS,)
        holes = () if isinstance(part.drawer, Rollout) else part.drawer.holes
        size = part.drawer.size or (1.0, 1.0, 1.0)
        picture = drawer_stand(size[0], size[1], holes, words[0])
    elif part.front is not None:
        words = front_stands(part.front)
        picture = front_stand(part.front, " ".join(words))
    elif part.faces:
        words = side_stands(part.faces[0])
        picture = side_stand(part.faces[0], " ".join(words))
    else:
        assert part.piece is not None
        block = block_of(part.piece)
        stuck = STICK.get(part.piece.kind, HIDDEN).lower()
        words = (piece_stands(part.piece, block), f"Its label is on the {stuck}.")
        picture = piece_stand(part.piece, block, words[0])
    unit = scan.layout.job.shown
    return section(
        "Which way up",
        tag("div", picture, tag("div", *(tag("p", text) for text in words)), class_="pair"),
        tag("p", tag("b", sizes_words(part, standing, unit)), class_="size"),
    )


def sizes_words(part: Tracked, standing: Standing, unit: Unit) -> str:
    """Say how large a part is: what is to be cut, as it is cut, all else as it is."""
    if part.drawer is not None:
        return f"{format_sizes(part.drawer.size, unit)}" if part.drawer.size else "no size"
    if part.front is not None:
        front = part.front
        return format_sizes((front.width, front.height, front.make.thickness), unit)
    if part.piece is not None and CUT in standing.steps:
        piece = part.piece
        return f"CUT {format_sizes((piece.length, piece.width, piece.thickness), unit)}"
    if part.piece is not None:
        made = part.piece
        return format_sizes((made.finished_length, made.finished_width, made.thickness), unit)
    side = part.faces[0]
    return format_sizes((side.height, side.depth, side.thickness), unit)


def _known(scan: Scan, part: Tracked) -> Html | None:
    """Say what else holds for a part: its facts, and what the check says of it."""
    layout = scan.layout
    facts: list[str] = []
    if isinstance(part.drawer, AnyDrawer):
        facts += (fact.text for fact in drawer_box_facts(part.drawer))
    elif part.front is not None:
        front = part.front
        told = (*back_facts(layout, front), *face_facts(layout, front), *given_facts(front))
        facts += (fact.text for fact in told)
    for face in part.faces:
        facts += (fact.text for fact in side_facts(layout, face))
    if part.piece is not None and part.piece.notes:
        facts.append(note_words(part.piece.notes))
    held = set(part.held)
    warnings = [
        f"{closed(said.fact)} {closed(said.remedy)}"
        for problem in findings_at(layout, part.id)
        for said in (say(problem, layout.job.shown),)
        if problem not in held and problem.code not in OPEN_CODES
    ]
    assumed = part.front.assumed if part.front is not None else ()
    assumed = assumed or tuple(dict.fromkeys(one for each in part.faces for one in each.assumed))
    if assumed:
        warnings.append(f"ASSUMED: {'; '.join(stand_in_words(assumed, layout.job))}.")
    if not facts and not warnings:
        return None
    return section(
        "To know",
        *(banner(Banner.LOOK, text, "") for text in dict.fromkeys(warnings)),
        tag("ul", *(tag("li", text) for text in dict.fromkeys(facts))) if facts else None,
    )


def _beside(scan: Scan, part: Tracked, host: Host) -> Html:
    """Link to the parts that a part has to do with, and to all of its box."""
    said: dict[str, list[str]] = {}
    for each in scan.beside(part):
        said.setdefault(each.what, []).append(each.part)
    lines = [
        tag("li", f"{what} ", *_links(dict.fromkeys(names), scan, host))
        for what, names in said.items()
    ]
    others = [name for name in scan.box_of(part) if name != part.id]
    boxes = ", ".join(part.boxes)
    listed = None
    if others:
        listed = tag(
            "details",
            tag("summary", f"All of box {boxes}" if len(part.boxes) == 1 else f"All of {boxes}"),
            tag("ul", *(tag("li", *_links([name], scan, host)) for name in others), class_="chips"),
        )
    return section(
        "Neighbours", tag("ul", *lines, class_="beside") if lines else None, listed, kind="nav"
    )


def _links(names: "dict[str, None] | list[str]", scan: Scan, host: Host) -> Iterator[Html | str]:
    for number, name in enumerate(names):
        if number:
            yield " "
        yield tag("a", name, href=host.href(name)) if name in scan.parts else name
