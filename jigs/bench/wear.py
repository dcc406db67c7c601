"""How often a card is set before a fresh copy is taken up."""

from jigs.bench.station import StationCard

SETTINGS_A_CARD = 8
"""So often a card is set before its folds are worn, where the place is critical (our choice)."""
SETTINGS_A_PIN_CARD = 24
"""The same of a card of shelf pins, which a shelf lies on with some play (our choice)."""


def settings_of(card: StationCard) -> int | None:
    """Give after how many settings a copy of a card is worn; None: never, since any place within 2
    mm does for a clearance hole."""
    if not card.critical:
        return None
    return SETTINGS_A_PIN_CARD if card.numbered else SETTINGS_A_CARD
