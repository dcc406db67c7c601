"""What a person does at a station, step by step, and what holds for all stations."""

from jigs.bench.station import Station
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

FIRST = "Write ID and TOP on the face you drill (its label is underneath)."
FIRST_ON_BOARD = (
    "Write ID, TOP and, at its front edge, FRONT on the face you drill (its label is underneath)."
)
LIFT = "Lift the paper: a mark that is not on its pencil line is punched anew."
PUNCH = f"Punch lightly, then firmly. {LIFT}"
GENERAL = (
    "Cut out the windows: the pencil line shows in both and runs on in the card's long line. "
    "TURNED: half round, the other title reads right.",
    "A card serves eight settings; then the table says TAKE THE NEXT CARD. Or glue it on hardboard "
    "and bore 2 mm guide holes: a straight strip screwed along the black takes the fold's place, "
    "and one serves for all.",
)
"""What holds for all stations, said once a file."""


def as_on(page: int) -> str:
    """Say on which page of the file the same steps stand."""
    return f"Steps: page {page}."


def steps(station: Station) -> tuple[str, ...]:
    """Give the steps of a station, five or six; its cautions stand beside its bits."""
    match station.work:
        case "sides":
            return (
                FIRST_ON_BOARD,
                "Strike every line of a pair across BOTH at once, from the bottom ends; those of a "
                "door and of its side from one lath. Check the sum; punch to punch is as on the "
                "door. Tick.",
                "Part the two. Set the card on its edge and its line; on a RIGHT side TURNED.",
                PUNCH,
                "Mark all, then bore all with one stop; tick, write DRILLED on the labels.",
            )
        case "fronts-on-boxes" if station.marked:
            return (
                FIRST,
                "Set both cards, one at each lower corner.",
                STAND,
                MARK,
                f"Take it off, bore. {SCREW} {ADJUSTERS}",
                KITCHEN,
            )
        case "cups":
            return (
                FIRST,
                "Hold the first door at its box: the cups must face the plates.",
                "Strike the lines, carry them over the edge; check the sum; tick. Mark the lines "
                "of a door and of its side from one lath.",
                "Set the card; lay your hinge on it: cup and both screws must match.",
                PUNCH,
                "Bore; tick.",
            )
        case work:
            lay = "Set the card; where it shows your hardware, lay yours on it: it must match."
            last: tuple[str, ...] = ("Bore; tick.",)
            if work == "fronts-on-boxes":
                lay = f"Set the card. {BOX_STANDS}"
                last = (*last, f"{SCREW} {ADJUSTERS}", KITCHEN)
            elif work == "false-fronts":
                lay, last = f"Set the card. {FALSE_HELD}", (*last, FALSE_SCREWS)
            return (
                FIRST_ON_BOARD if station.face == "inside" else FIRST,
                "Strike the lines, if there are any, and carry them over the edge. Check the sum "
                "on the part you measured; tick.",
                lay,
                PUNCH,
                *last,
            )
