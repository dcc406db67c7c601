"""What is engraved in a plate cut from hardboard: what its holes guide, and what lies under it."""

from jigs.bench.station import PUNCHED, Station, StationCard, is_guided
from jigs.ground.geometry import Hand
from templates.words.holewords import bare_mm
from templates.words.stationwords import bit_words, card_words

STRIP = "STRIP UNDER HERE"
"""Where the straight strip is screwed on that takes a fold's place."""


def plate_words(station: Station, card: StationCard, hand: Hand | None) -> tuple[str, ...]:
    """Say how a plate is used: what its holes are for and what they guide. `hand`: of the boards
    that it lies on unturned, where they are of one hand."""
    if card.stands is not None:
        on_line = ("Its inner edge without a strip lies on the pencil line.",) if card.lines else ()
        push = "Push the drawer box into the corner and clamp it; mark through its holes."
        return (*on_line, push)
    guided = sorted({hole.diameter for hole in card.holes if is_guided(hole)})
    bores = {(hole.diameter, hole.depth) for hole in card.holes}
    words = [
        bit_words(bit, brief=True) for bit in station.bits if (bit.diameter, bit.depth) in bores
    ]
    words += card_words(card, hand)
    if not all(is_guided(hole) for hole in card.holes):
        words.append(f"Holes of {bare_mm(PUNCHED)}: punch, lift the plate, bore.")
    for diameter in guided:
        words.append(
            f"Holes of {bare_mm(diameter)} guide the bit: set its stop with the plate under it."
        )
    return tuple(words)


def plate_edge_words(name: str) -> tuple[str, ...]:
    """Say what lies at an edge of a plate, in full and shorter."""
    return (f"{STRIP}, AGAINST THE {name}", f"{STRIP}: {name}", f"STRIP: {name}")
