"""A part's own words on its sheets: kind, place, size, and what applies to it."""

from collections.abc import Collection, Iterable

from jigs.box.bypart import findings_at, findings_in_face, hung_over, hung_under
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.ground.problems import OF_HINGES, OPEN_CODES, Problem
from templates.sheets.panel import PartWords
from templates.words.boardfacts import (
    drawer_box_facts,
    face_measure,
    incomplete,
    side_facts,
)
from templates.words.frontfacts import back_facts, face_facts, given_facts
from templates.words.openwords import assumed_line
from templates.words.saying import fact_of
from templates.words.scanwords import (
    drawer_box_payload,
    front_payload,
    rollout_payload,
    side_payload,
)
from templates.words.sentence import Sentence, closed
from templates.words.standinwords import stand_in_words
from templates.words.wallwords import wall_title
from templates.words.wording import FRONT_WORDS, side_words


def kind_of_front(front: Front) -> str:
    """Name a front by kind and hand: `DOOR, HINGES LEFT`."""
    name = FRONT_WORDS[front.kind].upper()
    if front.kind == "door" and front.hinged:
        return f"{name}, HINGES {front.hinged.upper()}"
    return name


def place_of(wall: str, box: str, part: str) -> str:
    """Name a part's place: `NORTH WALL`, and its box where its ID does not begin with it."""
    if not wall:
        return f"BOX {box}"
    return wall_title(wall) if part.startswith(box) else f"{wall_title(wall)}, BOX {box}"


def neighbour_of(layout: Layout, front: Front) -> str:
    """Say which front of the box it hangs under or over: `under B3-1`; empty if alone."""
    above, below = hung_under(layout, front), hung_over(layout, front)
    if above is not None:
        return f"under {above.id}"
    return f"over {below.id}" if below is not None else ""


def words_of_front(layout: Layout, front: Front) -> PartWords:
    """Give the words of a front's sheets."""
    place = place_of(front.wall, front.box, front.id)
    hinged = any(fitting.kind == "hinge" for fitting in front.fittings)
    elsewhere = OF_HINGES if hinged else frozenset[str]()
    neighbour = neighbour_of(layout, front)
    assumed = stand_in_words(front.assumed, layout.job)
    return PartWords(
        part=front.id,
        kind=kind_of_front(front),
        place=f"{place}, {neighbour}" if neighbour else place,
        job=layout.job.name,
        code=front.code,
        measure=face_measure(front.width, front.height),
        payload=front_payload(layout, front).text,
        facts={"back": back_facts(layout, front), "front": face_facts(layout, front)},
        notes=(*given_facts(front), *notes_for(layout, front.id, assumed)),
        face_notes=(*given_facts(front), *notes_for(layout, front.id, assumed, elsewhere)),
    )


def words_of_side(layout: Layout, side: Side) -> PartWords:
    """Give the words of a box side's sheets."""
    found = findings_in_face(layout, side.box, side.board, (side.column, side.side))
    return PartWords(
        part=side.board,
        kind=side_words(side).upper(),
        place=place_of(side.wall, side.box, side.board),
        job=layout.job.name,
        code=side.code,
        measure=face_measure(side.height, side.depth),
        payload=side_payload(layout, side).text,
        facts={"inside": side_facts(layout, side)},
        notes=(*incomplete(side), *_notes(layout, found, stand_in_words(side.assumed, layout.job))),
    )


def words_of_drawer_box(layout: Layout, drawer: DrawerBox, front: Front) -> PartWords:
    """Give the words of a drawer box's sheet."""
    return PartWords(
        part=drawer.id,
        kind="DRAWER BOX",
        place=place_of(front.wall, front.box, drawer.id),
        job=layout.job.name,
        code=drawer.code,
        measure=face_measure(drawer.width, drawer.height),
        payload=drawer_box_payload(layout, drawer, front).text,
        facts={"box-back" if drawer.rear else "box-front": drawer_box_facts(drawer)},
        notes=notes_for(layout, drawer.id, stand_in_words(drawer.assumed, layout.job)),
    )


def words_of_rollout(layout: Layout, rollout: Rollout) -> PartWords:
    """Give the words of the sheet for a rollout's back."""
    behind = f", behind {', '.join(rollout.behind)}" if rollout.behind else ""
    return PartWords(
        part=rollout.id,
        kind="ROLLOUT, DRAWER BOX",
        place=f"{place_of(rollout.wall, rollout.box, rollout.id)}{behind}",
        job=layout.job.name,
        code=rollout.code,
        measure=face_measure(rollout.width, rollout.height),
        payload=rollout_payload(layout, rollout).text,
        facts={"box-back": drawer_box_facts(rollout)},
        notes=notes_for(layout, rollout.id, ()),
    )


def notes_for(
    layout: Layout, part: str, assumed: tuple[str, ...], elsewhere: Collection[str] = ()
) -> tuple[Sentence, ...]:
    """Give the findings that are printed on a part's sheets, but for the codes that stand
    `elsewhere`; open numbers have a line of their own."""
    found = [each for each in findings_at(layout, part) if each.code not in elsewhere]
    return _notes(layout, found, assumed)


def _notes(
    layout: Layout, findings: Iterable[Problem], assumed: tuple[str, ...]
) -> tuple[Sentence, ...]:
    found = [problem for problem in findings if problem.code not in OPEN_CODES]
    # The facts alone: remedies stand in the check, where there is room for them. Four drawers on
    # one slide say the same of it.
    notes = list(dict.fromkeys(closed(fact_of(problem, layout.job.shown)) for problem in found))
    if assumed:
        notes.append(assumed_line(assumed))
    return tuple(Sentence(note) for note in notes)
