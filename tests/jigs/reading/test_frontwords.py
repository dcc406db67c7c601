"""Words in the cells of a list: kinds, hands, sums. Common usage, from memory: no source."""

import pytest

from jigs.given.job import FRONT_KINDS
from jigs.reading.frontwords import count_hands, is_sum, read_front, read_hand, read_yes


@pytest.mark.parametrize(
    ("text", "kind", "hand"),
    [
        *((kind, kind, None) for kind in FRONT_KINDS),
        ("Doors", "door", None), ("Türe links", "door", "left"), ("Porte droite", "door", "right"),
        ("Anta dx", "door", "right"), ("Shaker door, white", "door", None), ("Låge", "door", None),
        ("Lucka höger", "door", "right"), ("Deur", "door", None), ("Puertas", "door", None),
        ("Ovi", "door", None), ("LH door", "door", "left"), ("Drawer front 140", "drawer", None),
        ("Schubladenfront", "drawer", None), ("Façade de tiroir", "drawer", None),
        ("Frente de cajón", "drawer", None), ("Frontale cassetto", "drawer", None),
        ("Ladefront", "drawer", None), ("Skuffefront", "drawer", None),
        ("Lådfront", "drawer", None),
        ("Double door", "pair", None), ("Doppeltür", "pair", None), ("Porte double", "pair", None),
        ("Puerta doble", "pair", None), ("Anta doppia", "pair", None), ("Pardörr", "pair", None),
        ("Pull-out", "pullout", None), ("False drawer front", "false-front", None),
        ("Wange", None, None), ("Dishwasher panel", "panel", None), ("Hochklappe", "lift", None),
        # Another thing, two things, nothing that is known.
        ("Drawer box", None, None), ("Door handle", None, None), ("Sliding door", None, None),
        ("Klappe", "lift", None), ("Auszug", "drawer", None), ("Front", None, None),
        ("Porte 2 vantaux", None, None), ("Anta a ribalta", None, None), ("Falttür", None, None),
        ("Door or drawer", None, None), ("Puerta de dos hojas", None, None), ("", None, None),
        ("Top hung flap door", None, None), ("Transport", None, None), ("Doorstop", None, None),
    ],
)  # fmt: skip
def test_what_a_cell_says_of_its_front(text: str, kind: str | None, hand: str | None) -> None:
    """Its kind by one of the words, and none where another says otherwise."""
    found = read_front(text)
    assert (found.kind, found.hand) == (kind, hand)


@pytest.mark.parametrize(
    ("text", "hand"),
    [
        ("L", "left"), ("links", "left"), ("gauche", "left"), ("izq.", "left"), ("SX", "left"),
        ("venstre", "left"), ("vänster", "left"), ("DIN links", "left"), ("rh", "right"),
        ("droite", "right"), ("derecha", "right"), ("destra", "right"), ("højre", "right"),
        ("höger", "right"), ("oikea", "right"), ("up", None), ("L/R", None), ("", None),
    ],
)  # fmt: skip
def test_hands(text: str, hand: str | None) -> None:
    """As the hinges are, seen from the room."""
    assert read_hand(text) == hand


@pytest.mark.parametrize(
    ("text", "hands"),
    [
        ("1L 1R", {"left": 1, "right": 1}), ("1 x links, 1 x rechts", {"left": 1, "right": 1}),
        ("one left and one right", {"left": 1, "right": 1}), ("2 G + 1 D", {"left": 2, "right": 1}),
        ("left of the range", {}), ("L/R", {}), ("2 left", {}), ("1 R by the range", {}),
    ],
)  # fmt: skip
def test_how_many_of_each_hand(text: str, hands: dict[str, int]) -> None:
    """Where a cell says both, each with a number."""
    assert count_hands(text) == hands


def test_sums_and_answers() -> None:
    """A row that begins as a sum is none of fronts; yes and no."""
    assert [is_sum(text) for text in ("Total HT", "Summe netto", "i alt", "Totem", "")] == [
        True, True, True, False, False,
    ]  # fmt: skip
    assert [read_yes(text) for text in ("yes", "Ja", "nein", "maybe")] == [True, True, False, None]
