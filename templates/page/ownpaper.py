"""Paper that is not on the list: a plotter's roll by its width, a sheet by its two sizes.

A roll, `roll-610`, is cut to what each page needs; a sheet, `610x1500mm` or `24x60in`, is as it
is. The lengths follow the tool's own grammar, a bare number is in mm, and a unit after the second
size counts for both. On either a face is drawn whole where it fits.

>>> named_paper("roll-24in").sheet
'a roll, 609.6 mm wide'
>>> named_paper("24x60in").height
1512.0
"""

import re

from jigs.ground.errors import LengthError
from jigs.ground.lengths import LONGEST, MM_PER_INCH, parse_length
from jigs.ground.nearest import suggest_near
from templates.page.paper import MARGIN, PAPERS, Paper

LEAST_PAPER = (PAPERS["common"].width + 2 * MARGIN, PAPERS["common"].height + 2 * MARGIN)
"""The smallest sheet that the words of a page find room on, upright; mm."""
WIDEST = 72 * MM_PER_INCH
"""The widest roll that printers take; mm (common practice, no source)."""

ALLOWED = "a roll by its width (roll-610, roll-24in) or a sheet by its sizes (610x1500mm, 24x60in)"

_ROLL = r"roll-(?P<width>.+)"
_SIZES = r"(?P<first>[^x×]+)[x×](?P<second>[^x×]+)"
_UNIT = r"[^0-9./, -][^0-9]*$"


def named_paper(text: str) -> Paper:
    """Give the paper that a name or a size stands for. Raises LengthError."""
    name = text.strip().lower()
    if name in PAPERS:
        return PAPERS[name]
    if roll := re.fullmatch(_ROLL, name):
        return _roll(name, roll["width"])
    if sizes := re.fullmatch(_SIZES, name):
        return _sheet(name, sizes["first"], sizes["second"])
    near = suggest_near(name, PAPERS)
    raise LengthError(
        f"{text!r} is not one of {', '.join(PAPERS)}, nor {ALLOWED}."
        + (f" {near[0].upper()}{near[1:]}" if near else "")
    )


def _roll(name: str, text: str) -> Paper:
    width = _length(name, text)
    if width < LEAST_PAPER[0] - 1e-6:
        raise LengthError(
            f"{name!r}: a roll {width:.5g} mm wide is too narrow for a page; from "
            f"{LEAST_PAPER[0]:.5g} mm on."
        )
    _check_widest(name, width)
    return Paper(
        name=name,
        width=width - 2 * MARGIN,
        height=PAPERS["common"].height,
        sheet=f"a roll, {width:.5g} mm wide",
        longest=LONGEST - 2 * MARGIN,
        large=True,
    )


def _sheet(name: str, first: str, second: str) -> Paper:
    unit = re.search(_UNIT, second.strip())
    if unit and not re.search(_UNIT, first.strip()):
        first = f"{first.strip()} {unit.group()}"
    width, height = sorted((_length(name, first), _length(name, second)))
    if width < LEAST_PAPER[0] - 1e-6 or height < LEAST_PAPER[1] - 1e-6:
        raise LengthError(
            f"{name!r}: a sheet of {width:.5g} x {height:.5g} mm is too small for a page; from "
            f"{LEAST_PAPER[0]:.5g} x {LEAST_PAPER[1]:.5g} mm on. Inches are written so: 24x60in."
        )
    _check_widest(name, width)
    return Paper(
        name=name,
        width=width - 2 * MARGIN,
        height=height - 2 * MARGIN,
        sheet=f"a sheet of {width:.5g} x {height:.5g} mm",
        large=True,
    )


def _check_widest(name: str, width: float) -> None:
    if width > WIDEST + 1e-6:
        raise LengthError(
            f"{name!r}: no printer takes paper {width:.5g} mm wide; up to {WIDEST:.5g} mm, and "
            "10 m long."
        )


def _length(name: str, text: str) -> float:
    try:
        return parse_length(text, "mm")
    except LengthError as error:
        raise LengthError(f"{name!r}: {error}; {ALLOWED}.") from None
