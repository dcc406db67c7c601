"""Which symbol a label takes, and what it leaves to the words."""

from functools import cache

import pytest

from jigs.ground.dotpitch import MODULES, READ
from templates.labels.labelplacing import LabelField
from templates.labels.labelsymbol import LabelSymbol, choose_symbol
from templates.labels.labelwords import LabelWords, words_of_front_label
from templates.page.raster import Raster
from templates.words.payload import LENGTHS
from tests.templates.kitchens import galley

ARROW = 6.0


@cache
def door_words() -> LabelWords:
    """Give the words of a door in the small kitchen, which have no stripe at an end."""
    layout = galley()
    words = words_of_front_label(layout, next(f for f in layout.fronts if f.kind == "door"))
    assert words.stripe is None
    return words


def chosen(width: float, height: float) -> LabelSymbol:
    """Give the symbol of that door on a label of this size."""
    field = LabelField(left=0.0, bottom=0.0, width=width, height=height, margin=2.0)
    return choose_symbol(door_words(), field, Raster(), ARROW)


@pytest.mark.parametrize(("width", "height"), [(99.1, 38.1), (101.6, 50.8), (66.7, 25.4)])
def test_words_have_what_symbol_arrow_and_margin_leave(width: float, height: float) -> None:
    """Derived: nothing else stands beside them."""
    symbol = chosen(width, height)
    assert not symbol.footed
    assert symbol.words == pytest.approx(width - symbol.wide - ARROW - 2.0)


@pytest.mark.parametrize(("height", "most", "largest"), [(38.0, 0, 0), (37.9, 1, 1), (29.9, 2, 1)])
def test_labels_of_38_say_most_with_the_largest_modules(
    height: float, most: int, largest: int
) -> None:
    """38 counts as such, 37.9 does not."""
    symbol = chosen(101.6, height)
    assert LENGTHS[most] >= len(symbol.text)
    assert symbol.module == MODULES[largest]
    fuller = [text for text in door_words().payload.fits(LENGTHS) if len(text) <= LENGTHS[most]]
    assert len(symbol.text) == max(map(len, fuller))


def test_on_a_small_label_the_arrow_makes_way_for_modules_that_are_read() -> None:
    """Before modules of 0.5 the arrow goes to the foot of the words."""
    symbol = chosen(40.0, 30.0)
    assert (symbol.module, symbol.footed) == (READ, True)
