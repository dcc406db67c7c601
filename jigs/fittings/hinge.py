"""The concealed cup hinge: a 35 mm bore in the back of the door, a plate on the box side.

The cup's centre stands `tab` plus half its diameter from the hinge edge. How far the closed door
covers the side is the *overlay*, OV = C0 + K - Hp: the hinge's constant plus the tab less the
height of the plate (common practice). How many hinges a door needs: `jigs.fittings.placing`.

>>> from jigs.given.hardware import HingeRecord
>>> mine = HingeRecord(name="mine", plates=(0.0, 2.0, 3.0))
>>> choice = choose_tab_and_plate(mine, needed=18.3 - 1.6)
>>> choice.tab, choice.plate, round(choice.error, 4)
(5.0, 3.0, 0.3)
"""

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from jigs.given.hardware import HingeKind, HingeRecord
from jigs.given.job import FrontMaterial
from jigs.ground.geometry import SLACK, Fitting, Hand, Hole, rectangle

USUAL_TAB = 5.0
"""The tab bored where nothing else is said; mm (common practice, no source)."""
BORABLE_TABS = tuple(3.0 + 0.5 * step for step in range(9))
"""Tabs that are tried where neither record nor front lists any, 3 to 7; mm (common practice)."""
NEAR_ENOUGH = 0.5
"""An overlay this near is taken with the usual tab; mm."""
OVERLAY_LIMIT = 1.0
"""What no tab and plate bring nearer than this is an error; mm. The side screw takes the rest
(about 2 either way, from memory)."""
USUAL_CONSTANTS: dict[HingeKind, tuple[float, float]] = {
    "full": (11.0, 16.0), "half": (5.5, 8.0), "inset": (-4.0, -4.0),
}  # fmt: skip
BELIEVABLE_CONSTANTS: dict[HingeKind, tuple[float, float]] = {
    "full": (8.0, 20.0), "half": (2.0, 12.0), "inset": (-8.0, 0.0),
}  # fmt: skip
"""What a hinge's constant usually is, and between which values it is believed; mm (the first
common practice, the second from memory)."""
LEAST_SKIN = 2.5
"""Wood left under the cup; mm (common practice, no source)."""
SKIN_UNDER_POINT = 1.0
"""Wood left under the bit's centre point; mm (common practice, no source)."""
LEAST_REVEALS = ((19.0, 0.9), (20.0, 1.1), (21.0, 1.4), (22.0, 1.6), (24.0, 2.4))
"""Front thickness and the smallest reveal at its hinge edge; mm (from memory; the leaflet's own
table replaces it)."""
SAME_THICKNESS = 0.5
"""A front this near to a row of such a table is as thick as the row says: leaflets count in whole
millimetres, boards do not; mm (common practice, no source)."""
PILOTS: dict[FrontMaterial, float] = {
    "mdf": 3.0, "hardwood": 3.0, "softwood": 2.5, "plywood": 2.5,
}  # fmt: skip
"""Pilot diameters for the hinge's screws; mm (common practice, no source)."""
PLATE_BEYOND = 10.0
"""How far the drawn plate reaches beyond its holes all round; mm (common practice)."""


class HingeChoice(Struct, frozen=True, kw_only=True):
    """The tab to bore and the plate to buy; mm.

    `error`: overlay got less overlay needed. `plate_stated`: False where nobody said which plates
    there are; `plate` is then the one that this wants. `instead`: where the search moved the tab,
    the usual one, and overlay got less overlay needed with it; `next_best`: the same of the tab at
    hand that comes nearest but for the one taken.
    """

    record: str
    tab: float
    plate: float
    error: float
    plate_stated: bool = True
    instead: tuple[float, float] | None = None
    next_best: tuple[float, float] | None = None


def cup_from_edge(record: HingeRecord, tab: float) -> float:
    """Give the cup's centre from the hinge edge, mm: the tab plus half the cup."""
    return tab + record.cup_diameter / 2


def overlay_got(record: HingeRecord, tab: float, plate: float) -> float:
    """Give the overlay, mm, of this tab and plate: OV = C0 + K - Hp (common practice)."""
    return record.constant + tab - plate


def choose_tab_and_plate(
    record: HingeRecord, needed: float, tab: float | None = None, fixed: bool = False
) -> HingeChoice:
    """Choose the tab to bore and the plate to buy for an overlay of `needed` mm.

    A tab that is stated stands: the front's (`tab`), the record's, or the only one that it lists;
    so does that of a cup which is bored already (`fixed`). A wrong constant must not move a bore.
    The plate is then the one that comes nearest, a tie to the lower. Where several tabs or none
    are stated, it is 5, or the listed one nearest 5; if that misses by more than 0.5, every tab
    the person can bore is tried with every plate at hand: least error, then the tab nearest 5,
    then the lower plate. Where no plates are stated the plate is what this tab wants. Compare the
    error with `OVERLAY_LIMIT`.
    """
    stated = _stated_tab(record, tab)
    first = _usual_tab(record) if stated is None else stated
    if not record.plates:
        plate = overlay_got(record, first, 0.0) - needed
        return HingeChoice(
            record=record.name, tab=first, plate=plate, error=0.0, plate_stated=False
        )

    def miss(pair: tuple[float, float]) -> float:
        return overlay_got(record, *pair) - needed

    def rank(pair: tuple[float, float]) -> tuple[float, float, float]:
        return round(abs(miss(pair)), 6), round(abs(pair[0] - USUAL_TAB), 6), pair[1]

    usual = min(((first, plate) for plate in record.plates), key=rank)
    ranked = [usual]
    if stated is None and not fixed and abs(miss(usual)) > NEAR_ENOUGH + SLACK:
        tabs = record.tabs or BORABLE_TABS
        ranked = sorted(((value, plate) for value in tabs for plate in record.plates), key=rank)
    best = ranked[0]
    moved = best[0] != usual[0]
    return HingeChoice(
        record=record.name,
        tab=best[0],
        plate=best[1],
        error=miss(best),
        instead=(usual[0], miss(usual)) if moved else None,
        next_best=next(((pair[0], miss(pair)) for pair in ranked if pair[0] != best[0]), None)
        if moved
        else None,
    )


def _stated_tab(record: HingeRecord, tab: float | None) -> float | None:
    """Give the tab that somebody stated, the front's own before the record's; else None."""
    if tab is not None:
        return tab
    if record.tab is None and record.tabs and len(record.tabs) == 1:
        return record.tabs[0]
    return record.tab


def _usual_tab(record: HingeRecord) -> float:
    """Give the tab where none is stated: 5, or the listed one nearest 5, the lower of two."""
    if not record.tabs:
        return USUAL_TAB
    return min(record.tabs, key=lambda value: (round(abs(value - USUAL_TAB), 6), value))


def skin_under_cup(record: HingeRecord, thickness: float) -> float:
    """Give the wood left under the cup, mm."""
    return thickness - record.cup_depth


def least_skin(record: HingeRecord) -> float:
    """Give the least wood that must be left under the cup, mm: 2.5, or the bit's point and 1."""
    return max(LEAST_SKIN, record.bit_point + SKIN_UNDER_POINT)


def least_reveal(record: HingeRecord, thickness: float) -> float | None:
    """Give the smallest reveal at the hinge edge, mm, for a front of this thickness.

    Linear between the rows of the record's table, or of the common one. Beyond its ends the nearest
    row holds within `SAME_THICKNESS`; None farther out, where only the leaflet knows.
    """
    rows = sorted(record.least_reveal or LEAST_REVEALS)
    ends = rows[0][0], rows[-1][0]
    if not ends[0] - SAME_THICKNESS - SLACK <= thickness <= ends[1] + SAME_THICKNESS + SLACK:
        return None
    thickness = min(max(thickness, ends[0]), ends[1])
    for (low, below), (high, above) in pairwise(rows):
        if thickness <= high:
            return below + (above - below) * (thickness - low) / (high - low)
    return rows[-1][1]


def pilot_diameter(record: HingeRecord, material: FrontMaterial) -> float:
    """Give the diameter of the cup's fixing holes, mm: the record's, else the material's."""
    return PILOTS[material] if record.fixing_diameter is None else record.fixing_diameter


def cup_fittings(
    record: HingeRecord,
    heights: Sequence[float],
    *,
    part: str,
    width: float,
    hinged: Hand,
    tab: float,
    material: FrontMaterial,
) -> tuple[Fitting, ...]:
    """Give the cups of a door at `heights` above its bottom edge, each with its fixing holes.

    In the door's axes as seen from the room, drilled from the back. The outline is the flange,
    on the line of its screws.
    """
    cup = cup_from_edge(record, tab)
    line = cup + record.fixing_inboard
    half = record.fixing_spacing / 2
    pilot = pilot_diameter(record, material)

    def across(inward: float) -> float:
        return inward if hinged == "left" else width - inward

    def fixing(y: float) -> Hole:
        return Hole(
            purpose="cup-fixing", face="back", x=across(line), y=y,
            diameter=pilot, depth=record.fixing_depth,
        )  # fmt: skip

    fittings: list[Fitting] = []
    for index, y in enumerate(heights, start=1):
        bore = Hole(
            purpose="cup", face="back", x=across(cup), y=y,
            diameter=record.cup_diameter, depth=record.cup_depth,
        )  # fmt: skip
        edges = sorted(
            (across(line - record.flange_width / 2), across(line + record.flange_width / 2))
        )
        flange = rectangle(
            edges[0], y - record.flange_length / 2, edges[1], y + record.flange_length / 2
        )
        fittings.append(
            Fitting(
                kind="hinge",
                index=index,
                count=len(heights),
                part=part,
                record=record.name,
                holes=(bore, fixing(y - half), fixing(y + half)),
                outline=(flange,),
            )
        )
    return tuple(fittings)


def plate_fittings(
    record: HingeRecord, heights: Sequence[float], *, part: str, set_back: float = 0.0
) -> tuple[Fitting, ...]:
    """Give the plates of a door at `heights` above the side's bottom end, two holes each.

    In the side's axes: on the plate line, which an inset door sets back by its thickness, half
    the spacing below and above each height.
    """
    half = record.plate_spacing / 2
    line = record.plate_line + set_back
    return tuple(
        Fitting(
            kind="plate",
            index=index,
            count=len(heights),
            part=part,
            record=record.name,
            holes=tuple(
                Hole(
                    purpose="plate",
                    face="inside",
                    x=line,
                    y=height,
                    diameter=record.plate_diameter,
                    depth=record.plate_depth,
                )
                for height in (y - half, y + half)
            ),
            outline=(
                rectangle(
                    line - PLATE_BEYOND,
                    y - half - PLATE_BEYOND,
                    line + PLATE_BEYOND,
                    y + half + PLATE_BEYOND,
                ),
            ),
        )
        for index, y in enumerate(heights, start=1)
    )
