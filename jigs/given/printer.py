"""A printer's error, measured on its test page, and what undoes it.

The paper's short side lies across the printer, its long side along the feed. A bar drawn at its
nominal length comes out at the length one measures; drawn at nominal/measured times its length
it comes out true. The bars are 180 mm (7 in) across and 200 mm (8 in) along: 200 mm do not fit
across the page that A4 and letter share, and unlike bars show when the two were exchanged.

>>> garage = Printer(name="garage", across=180.0, along=199.4)
>>> round(garage.scale_across, 4), round(garage.scale_along, 4)
(1.0, 1.003)
"""

from typing import Annotated

from msgspec import Struct

from jigs.ground.believable import Range
from jigs.ground.geometry import SLACK
from jigs.ground.keys import Key
from jigs.ground.lengths import MM_PER_INCH, Unit

BARS: dict[Unit, tuple[float, float]] = {
    "mm": (180.0, 200.0), "in": (7 * MM_PER_INCH, 8 * MM_PER_INCH),
}  # fmt: skip
"""The nominal bars across and along, by the rule they are measured with; mm."""
BAR = Range(150, 260)
"""What a bar of the test page may measure; mm."""
SHIFT = Range(-25, 25)
"""How far labels may lie off; mm."""

MOST = 0.08
"""A printer further off than this part of a length is not corrected: something else is wrong."""
UNEVEN = 0.02
"""Axes that differ by more than this part are worth a word."""
SAME = 0.003
"""A length this near to another bar's was read off that bar."""
MOST_SHIFT = 10.0
"""Labels further off their place than this are not moved: the sheet lies wrong; mm."""
SKEW = 0.5
"""Diagonals of the test page's frame that differ by more than this show a skewed feed; mm."""


class Printer(Struct, frozen=True, kw_only=True):
    """A printer with its paper and tray; mm."""

    name: str
    """What it is called."""
    across: Annotated[float | None, Key(BAR)] = None
    """What its bar across the feed measures; None where nobody measured it."""
    along: Annotated[float | None, Key(BAR)] = None
    """What its bar along the feed measures."""
    bars: Annotated[Unit, Key()] = "mm"
    """Which bars these were."""
    paper: Annotated[str, Key()] = ""
    """The paper that was in it, in words."""
    tray: Annotated[str, Key()] = ""
    """The tray it was fed from, in words."""
    dots: int | None = None
    """Its dots per inch."""
    labels_right: Annotated[float, Key(SHIFT)] = 0.0
    """How far its labels are moved to the right, so that they meet their stock."""
    labels_up: Annotated[float, Key(SHIFT)] = 0.0
    """How far they are moved up."""

    @property
    def corrected(self) -> bool:
        """Whether its bars were measured."""
        return self.across is not None and self.along is not None

    @property
    def scale_across(self) -> float:
        """Factor by which everything across the paper is drawn, so that it comes out true."""
        return 1.0 if self.across is None else BARS[self.bars][0] / self.across

    @property
    def scale_along(self) -> float:
        """Factor by which everything along the feed is drawn."""
        return 1.0 if self.along is None else BARS[self.bars][1] / self.along

    @property
    def uneven(self) -> bool:
        """Whether the axes differ by more than a printer's usually do."""
        return abs(self.scale_across - self.scale_along) > UNEVEN


def find_faults(printer: Printer) -> tuple[str, ...]:
    """Say what cannot be right about what was measured; nothing where it can be used."""
    faults = []
    for name, off in (("right", printer.labels_right), ("up", printer.labels_up)):
        if abs(off) > MOST_SHIFT + SLACK:
            faults.append(
                f"labels_{name}: {off:.4g} mm, and {MOST_SHIFT:g} mm is the most that labels are "
                "moved; feed the sheet anew, or look which stock it is"
            )
    if printer.across is not None and printer.along is not None:
        faults += _bar_faults(printer, (printer.across, printer.along))
    elif printer.across is not None or printer.along is not None:
        faults.append("across and along go together; measure both bars of the test page")
    return tuple(faults)


def _bar_faults(printer: Printer, measured: tuple[float, float]) -> tuple[str, ...]:
    nominal = BARS[printer.bars]
    if all(_near(got, bar) for got, bar in zip(measured, nominal, strict=True)):
        other: Unit = "in" if printer.bars == "mm" else "mm"
        if all(_same(got, bar) for got, bar in zip(measured, BARS[other], strict=True)):
            return (
                f"these are the lengths of the other two bars, {_bars(other)}: measure those of "
                f"{_bars(printer.bars)}, or say --bars {other}",
            )
        return ()
    if _near(measured[0], nominal[1]) and _near(measured[1], nominal[0]):
        return (
            f"across and along are exchanged: the bar across the paper is "
            f"{_bar(nominal[0], printer.bars)}, the one along it {_bar(nominal[1], printer.bars)}",
        )
    faults = []
    for name, got, bar in zip(("across", "along"), measured, nominal, strict=True):
        if _near(got, bar):
            continue
        faults.append(
            f"{name}: {_bar(got, printer.bars)} for a bar of {_bar(bar, printer.bars)}: "
            f"{_guess(got, bar)}"
        )
    return tuple(faults)


def skew_of(diagonals: tuple[float, float]) -> float:
    """Give the difference of the frame's diagonals where it is more than measuring leaves; mm."""
    apart = abs(diagonals[0] - diagonals[1])
    return apart if apart > SKEW + SLACK else 0.0


def _guess(got: float, bar: float) -> str:
    if _near(got * MM_PER_INCH, bar):
        return "inches typed for millimetres? write the unit, and --bars in for the inch bars"
    if _near(got / MM_PER_INCH, bar):
        return "millimetres typed for inches? write the unit, and --bars mm for the mm bars"
    if _near(got * 10, bar):
        return "centimetres? write the unit, cm"
    percent = (got / bar - 1) * 100
    return (
        f"{percent:+.0f} %, and {100 * MOST:.0f} % is the most that is corrected; print the test "
        "page again at 100 %, actual size"
    )


def _near(got: float, bar: float) -> bool:
    return abs(bar / got - 1) <= MOST + SLACK


def _same(got: float, bar: float) -> bool:
    return abs(got / bar - 1) <= SAME + SLACK


def _bar(length: float, unit: Unit) -> str:
    return f"{length:.4g} mm" if unit == "mm" else f"{length / MM_PER_INCH:.4g} in"


def _bars(unit: Unit) -> str:
    return " and ".join(_bar(bar, unit) for bar in BARS[unit])
