"""What lies between the stop and a board that stands higher than the one it is struck with."""

from jigs.ground.lengths import format_mm


def lift_words(raised: float, *, on_legs: bool) -> str:
    """Say what lifts a partition, which stands on the bottom panel, `raised` mm off the stop: an
    offcut of the bottom's board; where the box's sides run to the floor, their legs come on top.

    >>> lift_words(18.0, on_legs=False)
    "an offcut of the bottom's board (18.0)"
    >>> lift_words(119.6, on_legs=True)
    'a block 119.6 long'
    """
    lift = format_mm(abs(raised))
    return f"a block {lift} long" if on_legs else f"an offcut of the bottom's board ({lift})"
