"""A door planned: how many hinges, which tab and plate, and the heights of both.

The plates stand on the side at the door's bottom edge plus the cups' heights, so that the two
agree whatever the door measures.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from jigs.box.carcass import Carcass
from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import five_piece_of, glass_door_mass
from jigs.fittings.hinge import (
    PLATE_BEYOND,
    HingeChoice,
    choose_tab_and_plate,
    least_reveal,
)
from jigs.fittings.hingecount import DENSITIES, compute_mass, count_hinges
from jigs.fittings.placing import (
    FROM_PANEL,
    Against,
    Door,
    HingeHeights,
    find_against,
    place_hinges,
)
from jigs.given.hardware import HingeRecord
from jigs.given.job import Material

BESIDE_SLIDE = 2.0
"""Between a hinge plate and a rollout's slide or its spacer; mm (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorPlan:
    """What a door needs of its hinges. `plates` are heights on the side from its bottom end,
    `cups` the same above the door's bottom edge; mm."""

    record: HingeRecord
    choice: HingeChoice
    mass: float
    """The door's mass; kg."""
    needed: int
    """How many hinges its size and mass ask for."""
    plates: tuple[float, ...]
    cups: tuple[float, ...]
    least_reveal: float | None
    placing: HingeHeights | None = None
    """What came of placing its hinges by the rule; None where their heights are stated, or must
    be."""
    against: tuple[Against, ...] = ()
    """The heights given by hand that something stands in the way of."""
    beside_slides: bool = False
    """Whether slides of rollouts lie on its side too."""


def door_mass(front: PlacedFront, material: Material, thickness: float) -> float:
    """Give a door's mass in kg, at the job's density or its material's usual one."""
    density = material.front_density
    if density is None:
        density = DENSITIES[material.front_kind]
    frame = five_piece_of(front.spec, front.width, front.height)
    if frame is not None and frame.glass:
        return glass_door_mass(frame, thickness, density)
    return compute_mass(front.width, front.height, thickness, density)


def plan_door(
    front: PlacedFront,
    carcass: Carcass,
    record: HingeRecord,
    *,
    material: Material,
    thickness: float,
    grid: float | None,
    holes: Sequence[tuple[float, float]],
    slides: Sequence[tuple[float, float]] = (),
) -> DoorPlan:
    """Plan the hinges of a door whose hand is known.

    `holes` are the places (x, y) of the holes that its side already has; `grid` the first hole's
    height, None where plates need not keep to it; `slides` lower and upper edge of each rollout's
    slide there; mm.
    """
    spec = front.spec
    tab = spec.boring.tab if spec.boring.bored_tab is None else spec.boring.bored_tab
    mass = door_mass(front, material, thickness)
    asked = Door(
        bottom=front.place.y,
        height=front.height,
        count=count_hinges(width=front.width, height=front.height, mass=mass),
        plate_line=record.plate_line + front.set_back(thickness),
        plate_spacing=record.plate_spacing,
    )
    panels = (*carcass.panels, *_as_panels(slides, record))
    plates: tuple[float, ...] = ()
    placing: HingeHeights | None = None
    against: tuple[Against, ...] = ()
    if spec.hung.hinges_at:
        plates = tuple(sorted(front.place.y + height for height in spec.hung.hinges_at))
        against = find_against(plates, asked, panels=panels, holes=holes)
    elif not spec.boring.bored:
        placing = place_hinges(asked, grid=grid, panels=panels, holes=holes)
        plates = placing.heights
    return DoorPlan(
        record=record,
        choice=choose_tab_and_plate(record, front.lap, tab, fixed=spec.boring.bored),
        mass=mass,
        needed=asked.count,
        plates=plates,
        cups=tuple(height - front.place.y for height in plates),
        least_reveal=least_reveal(record, thickness),
        placing=placing,
        against=against,
        beside_slides=bool(slides),
    )


def _as_panels(
    slides: Sequence[tuple[float, float]], record: HingeRecord
) -> Iterator[tuple[float, float]]:
    """Give the slides of rollouts as a hinge on their side sees them: as panels.

    As a plate needs less room beside a slide than a hinge beside a panel, they are thinner ones.
    """
    less = FROM_PANEL - (record.plate_spacing / 2 + PLATE_BEYOND + BESIDE_SLIDE)
    for low, high in slides:
        yield low + less, high - less
