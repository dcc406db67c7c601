"""What is written on a station's card: its titles, and each hole's distances."""

from collections.abc import Sequence

from msgspec import Struct

from jigs.bench.station import Station, StationCard
from jigs.ground.geometry import Axis
from jigs.ground.lengths import format_inches, format_mm
from templates.cards.cardplan import ARM
from templates.cards.figures import HoleFigures, free_spot, write_figures
from templates.cards.lettering import CardHeading, Label, hole_note
from templates.page.marks import Text
from templates.page.space import Box, Space
from templates.page.typeface import shorten, text_width, wrap
from templates.stations.cardframe import WORDS, edge_along
from templates.stations.halfround import half_round
from templates.stations.stationview import CardFaces
from templates.words.stationwords import (
    card_words,
    corner_words,
    station_title,
    turned_words,
    way_words,
)


class Title(Struct, frozen=True):
    """A title of a card, and whether it stands upside down, for the card that is turned."""

    heading: CardHeading
    turned: bool


def titles_of(
    faces: CardFaces, station: Station, card: StationCard, copy: int
) -> tuple[Title, ...]:
    """Give the titles of a card: a second one, upside down, where it is also set turned."""
    return tuple(
        Title(_heading(faces, station, card, copy, turned=turned), turned) for turned in faces.names
    )


def write_titles(space: Space, card: StationCard, titles: Sequence[Title], room: Box) -> bool:
    """Write the titles of a card where there is room; say whether there was."""
    for title in titles:
        heading = title.heading
        width, height = heading.width, heading.height + 1.0
        near = (room[0], room[1] if title.turned or card.stands else room[3])
        spot = free_spot(space, width, height, near, room)
        if spot is None:
            return False
        left, top = spot
        marks = heading.marks(left, top)
        if title.turned:
            marks = half_round(marks, left + width / 2, top - height / 2)
        space.add(*marks)
        space.keep((left, top - height, left + width, top))
    return True


def _heading(
    faces: CardFaces, station: Station, card: StationCard, copy: int, *, turned: bool
) -> CardHeading:
    """Lay out a title: name and letter, face, code and copy; on the first its operations too."""
    names = WORDS - 10.0
    title = f"{station_title(station)}: {card.letter}"
    size = next((s for s in (5.0, 3.5) if text_width(title, s, True) <= names), 2.5)
    where = faces.names[turned]
    corner = corner_words(card, turned=turned) if station.face in ("front", "back") else ""
    fresh = f"copy {copy} of {card.copies}" if card.copies > 1 else ""
    last = ", ".join(filter(None, (f"code {card.code}", fresh, corner)))
    words = turned_words(card) if turned else card_words(card, faces.hand)
    if text_width(last, 2.5) > names:
        last, words = f"code {card.code}, {corner}", (f"{fresh}.".capitalize(), *words)
    lines = (
        (shorten(title, size, True, names), size, True),
        (shorten(where, 2.5, True, names), 2.5, True),
        (last, 2.5, False),
    )
    body = tuple(line for text in words for line in wrap(text, 2.5, False, WORDS))
    return CardHeading(width=WORDS, lines=lines, beside=(), body=body, with_bar=not turned)


def write_distances(
    space: Space,
    card: StationCard,
    titles: Sequence[Title],
    room: Box,
    *,
    apart: bool,
    crossing: bool,
) -> bool:
    """Write each hole's distances from what the card is set by, or its number on the pin card.
    `titles`: the ways in which the card lies.
    `apart`: where holes are too close for a line to each, figures may stand near them without one.
    `crossing`: such a line may cross the outline round its hole.
    """
    ways = [title.turned for title in titles]
    if card.numbered:
        return write_numbers(space, card, room) and _corner_figures(space, card, ways, room)
    inward = 1 if edge_along(card, "x") is None or _x_edge_is_left(card) else -1
    for hole in card.holes:
        figures = HoleFigures(
            up=_label(card, "y", hole.y, ways),
            across=_label(card, "x", hole.x, ways),
            note=hole_note(hole),
        )
        if write_figures(space, hole, figures, inward, room, crossing=crossing):
            continue
        size = (figures.width, figures.height)
        spot = free_spot(space, *size, (hole.x, hole.y), room) if apart else None
        if spot is None:
            return False
        space.add(*figures.marks(*spot))
    return card.stands is None or _corner_figures(space, card, ways, room)


def _x_edge_is_left(card: StationCard) -> bool:
    edge = edge_along(card, "x")
    return edge is not None and edge.edge == "left"


def write_numbers(space: Space, card: StationCard, room: Box) -> bool:
    """Number the crosses of the pin card from the one on its line, +1 above it; once more upside
    down, for the card that is turned half round: the number that reads right holds."""
    middle = min(range(len(card.holes)), key=lambda index: abs(card.holes[index].y))
    for index, hole in enumerate(card.holes):
        for turned in (False, True):
            number = middle - index if turned else index - middle
            words = f"{number:+d}" if number else "0"
            way = -1 if turned else 1
            spots = (
                Text(x=hole.x + way * side * (ARM + 1.0), y=hole.y + way * up, text=words,
                     bold=True, size=3.5, anchor="start" if side > 0 else "end",
                     angle=180 if turned else 0)
                for side in (1, -1)
                for up in (2.2, 1.6, -5.2, -5.8)
            )  # fmt: skip
            if not space.add_where_free(spots, room):
                return False
    return True


def _corner_figures(space: Space, card: StationCard, ways: Sequence[bool], room: Box) -> bool:
    """Write how far in and up the drawer box's corner stands, or the pin row's distance in."""
    if card.stands is not None:
        texts = [
            "DRAWER BOX, lower",
            f"{card.stands.side.upper()} corner:",
            f"{_figure(card.stands.y)} {way_words(card, 'y', ways)}",
            f"{_figure(abs(card.stands.x))} {way_words(card, 'x', ways)}",
        ]
        near = (card.stands.x, card.stands.y + 14.0)
    else:
        label = _label(card, "x", card.holes[0].x, ways)
        texts = [f"{label.mm}, {label.inches}", hole_note(card.holes[0])]
        near = (card.holes[0].x, 12.0)
    width = max(text_width(text, 2.5, True) for text in texts)
    spot = free_spot(space, width, len(texts) * 4.0, near, room)
    if spot is None:
        return False
    for row, text in enumerate(texts):
        space.add(Text(x=spot[0], y=spot[1] - 2.9 - row * 4.0, text=text, bold=True))
    return True


def _figure(value: float) -> str:
    return f'{format_mm(value)} ({format_inches(value)}")'


def _label(card: StationCard, axis: Axis, value: float, ways: Sequence[bool]) -> Label:
    """Label a hole's distance from the line or the edge that the card is set by."""
    edge = edge_along(card, axis)
    if edge is None and abs(value) < 1e-6:
        return Label(mm="0.0", inches="on line")
    name = "line" if edge is None else "edge"
    if edge is not None and len(card.edges) == 2:
        name = way_words(card, axis, ways)
    return Label(mm=format_mm(abs(value)), inches=f'{format_inches(abs(value))}" {name}')
