"""What a person does at a station, step by step, and how a card is used at all of them."""

from collections.abc import Iterable

from jigs.bench.station import SETTINGS_A_CARD, SETTINGS_A_PIN_CARD, Station
from templates.words.guidewords import BORE_CROSSES, FOLD, LINE_SHOWS, ROUNDED
from templates.words.markingwords import (
    ADJUSTERS,
    BOX_STANDS,
    FALSE_HELD,
    FALSE_SCREWS,
    KITCHEN,
    MARK,
    SCREW,
    STAND,
)
from templates.words.rowwords import ACROSS, NEXT, UP

RIGHT_TURNED = "A RIGHT side takes the card TURNED, unless its row says otherwise."
ONE_STOP = "Mark all, then bore all with one stop."
CARDS = "EVERY CARD, AT EVERY STATION"
"""The title of the page that says so, before the first station."""


def card_steps(stations: Iterable[Station]) -> tuple[str, ...]:
    """Say how a card is used, with what some cards alone want where they are among these."""
    stations = tuple(stations)
    cards = [card for station in stations for card in station.cards]
    settings = [each for station in stations for row in station.rows for each in row.settings]
    works = {station.work for station in stations}
    ways = {edge.by for card in cards for edge in card.edges}
    boards = ", on a side FRONT," if "sides" in works else ""
    lines = any(card.lines for card in cards)
    steps: tuple[tuple[object, str], ...] = (
        (True, f"Write ID, TOP{boards} on the face you drill (its label is underneath). Measure "
            "the part; fill in its row."),
        (lines, f"Strike its lines, {UP} UP FROM BOTTOM unless its row says another end, with a "
         "sharp pencil, on tape if painted; carry them over the edge. Tick when the sums, "
         f"{UP} up and {ACROSS} across, close on the part you measured."),
        (True, "Cut out the card that the row names, its windows and crossed corners."),
        ("fold" in ways, FOLD),
        ("butt" in ways, ROUNDED),
        (lines, f"On a line: {LINE_SHOWS}."),
        (any(each.turned for each in settings), "TURNED: the card lies half round; its other "
         "title reads right."),
        (any(card.numbered for card in cards), f"Crosses -1 to +3: {BORE_CROSSES}."),
        (any(card.outline for card in cards), "Lay your hardware on the one drawn: it must "
         "match."),
        (True, "Punch lightly, then firmly. Lift the paper: a mark that is not on its pencil line "
         "is punched anew."),
        (True, "Try bit and stop on scrap. Clamp. Bore; tick; write DRILLED on the label."),
        (any(card.copies > 1 for card in cards), f"Folds wear: a card serves {SETTINGS_A_CARD} "
         f"settings (shelf pins {SETTINGS_A_PIN_CARD}, clearance all). {NEXT} cut out a copy."),
        (any(card.copies > 1 for card in cards), "Or glue one on hardboard, bore 2 mm guide "
         "holes, screw a straight strip along the black in the fold's place: it serves for all."),
    )  # fmt: skip
    return tuple(text for wanted, text in steps if wanted)


def as_on(page: int) -> str:
    """Say on which page of the file the same steps stand."""
    return f"Steps: page {page}."


def steps(station: Station, *, counterbored: bool = False) -> tuple[str, ...]:
    """Give the steps that are a station's own; its cautions stand beside its bits. `counterbored`:
    backs are for the pulls' screws, before the box hides them."""
    bored = ", counterbore" if counterbored else ""
    match station.work:
        case "sides" if not station.in_pairs:
            return (
                "Strike each board's lines from the bottom panel; a door's and its side's from one "
                "lath: as far apart here as on the door.",
                RIGHT_TURNED,
                ONE_STOP,
            )
        case "sides":
            return (
                "Strike a pair's lines across BOTH at once, from the BOTTOM ends; a door's and its "
                "side's from one lath: as far apart here as on the door.",
                f"Part the two. {RIGHT_TURNED}",
                ONE_STOP,
            )
        case "fronts-on-boxes" if station.marked:
            return (
                "Set both cards, one at each lower corner.",
                STAND,
                MARK,
                f"Take it off, bore{bored}. {SCREW} {ADJUSTERS}",
                KITCHEN,
            )
        case "cups":
            return (
                "Hold the first door at its box: cups must face plates, and stand as far apart: "
                "one lath marks both.",
            )
        case "fronts-on-boxes":
            backs = "Counterbore the back. " if counterbored else ""
            return (BOX_STANDS, f"{backs}{SCREW} {ADJUSTERS}", KITCHEN)
        case "false-fronts":
            return (FALSE_HELD, FALSE_SCREWS)
        case _:
            return ()
