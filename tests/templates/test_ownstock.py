"""Labels on whatever stock a person has: any size that is not refused takes every label."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.given.labelstock import Stock, faults_of_stock
from jigs.ground.sheetsizes import SheetSize
from templates.page.marks import Text
from templates.page.raster import Raster
from templates.writers.pdf import write_pdf
from tests.templates.kitchens import galley, one_of_each, workshop
from tests.templates.labelpages import label_pages
from tests.templates.labels.test_labels import check_pages

LAYOUTS = {
    "every kind of piece": workshop(),
    "long names": galley("SCULLERY-N-12", wall="Südwestliche Längswand am Herd"),
}


def roll(width: float, height: float, margin: float) -> Stock:
    return Stock(
        name="own", sheet=SheetSize(name="roll", width=width, height=height), roll=True,
        width=width, height=height, pitch_x=width, pitch_y=height, margin=margin,
    )  # fmt: skip


@pytest.mark.slow
@given(
    st.one_of(
        st.tuples(st.floats(37, 130), st.floats(27, 70)),
        st.tuples(st.floats(47, 130), st.floats(17, 30)),
    ),
    st.sampled_from([0.0, 0.5, 1.0, 1.5, 3.0, 5.0]),
    st.sampled_from([None, 203, 300, 600]),
    st.sampled_from([(0.0, 0.0), (0.7, -0.4)]),
    st.sampled_from(sorted(LAYOUTS)),
)
# Found cases are not made smaller: each costs the drawing of some pages.
@settings(max_examples=3)
def test_whatever_the_size_nothing_is_clipped_and_id_and_code_stay(
    size: tuple[float, float],
    margin: float,
    dots: int | None,
    shift: tuple[float, float],
    kitchen: str,
) -> None:
    """What is printed lies on the label, apart; the ID is whole, 1.5 mm high or more; the code
    stands beside the symbol, or HOLD does."""
    stock = roll(size[0] + 2 * margin, size[1] + 2 * margin, margin)
    assert faults_of_stock(stock) == ()
    raster = Raster(dots=dots, shift=shift)
    layout = LAYOUTS[kitchen]
    for page in label_pages(layout, one_of_each(layout), stock, raster=raster):
        drawn = replace(stock, width=page.width, height=page.height,
                        sheet=SheetSize(name="roll", width=page.width,
                                        height=page.height))  # fmt: skip
        check_pages([page], write_pdf([page]), drawn)
        texts = [mark for mark in page.marks if isinstance(mark, Text)]
        at = next(i for i, mark in enumerate(texts) if page.entry.startswith(mark.text))
        names = texts[at : at + 1 if texts[at].text == page.entry else at + 2]
        assert "".join(mark.text for mark in names) == page.entry
        assert min(mark.size for mark in names) >= 1.5
        assert any(mark.text.startswith("code") or mark.text == "HOLD" for mark in texts)


@pytest.mark.parametrize(
    ("width", "height", "key"),
    [
        (38.9, 30.0, "label_width"),
        (60.0, 18.9, "label_height"),
        (48.9, 28.9, "label_height"),
        (39.0, 29.0, ""),
        (49.0, 19.0, ""),
    ],
)
def test_a_label_below_the_least_is_refused(width: float, height: float, key: str) -> None:
    """37 x 27 or 47 x 17 within margins of 1 mm are the least."""
    faults = faults_of_stock(roll(width, height, 1.0))
    assert [at for at, _ in faults] == ([key] if key else [])
    assert all("want 39 x 29 or 49 x 19 mm" in fact for _, fact in faults)
