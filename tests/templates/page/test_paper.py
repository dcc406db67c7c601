"""Paper sizes and the pages drawn for them."""

import pytest

from jigs.ground.sheetsizes import COMMON, SHEET_SIZES
from templates.page.paper import MARGIN, PAPERS


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        ("a4", 210, 297),  # ISO 216:2007, table 1
        ("a3", 297, 420),  # ISO 216:2007, table 1
        ("letter", 8.5 * 25.4, 11 * 25.4),  # ASME Y14.1, size A
        ("tabloid", 11 * 25.4, 17 * 25.4),  # ASME Y14.1, size B
        ("legal", 8.5 * 25.4, 14 * 25.4),  # common practice, no source
    ],
)
def test_sheets_and_their_pages(name: str, width: float, height: float) -> None:
    """A page is its sheet less the margin on each side."""
    assert (SHEET_SIZES[name].width, SHEET_SIZES[name].height) == (width, height)
    assert PAPERS[name].width == pytest.approx(width - 2 * MARGIN)
    assert PAPERS[name].height == pytest.approx(height - 2 * MARGIN)


def test_the_common_page_fits_both_sheets() -> None:
    """It lies within the margins of A4 and of letter, on both axes."""
    common = PAPERS["common"]
    assert (common.width, common.height) == (198, 267) == (COMMON.width, COMMON.height)
    for sheet in (SHEET_SIZES["a4"], SHEET_SIZES["letter"]):
        assert common.width <= sheet.width - 2 * MARGIN
        assert common.height <= sheet.height - 2 * MARGIN
