"""The words on a delivery: what has arrived, what has not, what was found by its size."""

from jigs.layout.layout import lay_out
from templates.words.deliverywords import delivery_words
from tests.jigs.order.test_matching import DOOR, GALLEY, W, deliver, row


def test_without_a_list_nothing_is_said() -> None:
    """No line at all."""
    assert delivery_words(lay_out(GALLEY)) == ()


def test_each_line_stands_only_where_it_is_needed() -> None:
    """All arrived as ordered, ticked off: one line."""
    ids = ("B1-1", "B1-2", "B2-1", "B3-2")
    words = delivery_words(lay_out(deliver(*(row(n, id) for n, id in enumerate(ids, 2)))))
    assert words == (
        "Delivered: 6 of 6 fronts, none measured (list.csv); 1/16 in (1.6 mm) off the order is "
        "accepted.",
    )


def test_what_is_open_is_named() -> None:
    """Missing, held, found by size, alike, left over; rows in the list's order."""
    drawer = GALLEY.boxes[2]
    height = (drawer.height - 200.0 - 2 * 1.6 - 2 * 3.2) / 2
    layout = lay_out(
        deliver(
            row(10, "", drawer.width - 2 * 1.6, height),
            row(9, "", drawer.width - 2 * 1.6, height + 0.5),
            row(11, "", 300.0, 300.0, count=2),
            row(12, "B1-2", W + 3.0, DOOR),
        )
    )
    assert delivery_words(layout)[1:] == (
        "Not yet: B1-1, B2-1L, B2-1R.",
        "Held back because of what arrived: B1-2.",
        "Found by size, without an ID: row 9: B3-2-2; row 10: B3-2-1. Mark each piece with its ID.",
        "Alike, so that one serves for the other until drilled: B3-2-1, B3-2-2.",
        "Left over: row 11 (2 pieces).",
    )
