"""A door planned: how many hinges, which tab and plate, and the heights of both.

The plates stand on the side at the door's bottom edge plus the cups' heights, so that the two
agree whatever the door measures.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.box.carcass import Carcass
from jigs.box.fronts import PlacedFront
from jigs.checks.doors import (
    check_constant,
    check_given_heights,
    check_hinge_reveal,
    check_overlay,
    check_placing,
    check_skin,
    check_spread,
    check_tab,
)
from jigs.checks.fivepiece import check_stile
from jigs.fittings.fivepiece import frame_of, glass_door_mass
from jigs.fittings.hinge import HingeChoice, choose_tab_and_plate, least_reveal
from jigs.fittings.hingecount import DENSITIES, compute_mass, count_hinges
from jigs.fittings.placing import Door, place_hinges
from jigs.given.hardware import HingeRecord
from jigs.given.job import Material
from jigs.ground.finding import error, warning
from jigs.ground.lengths import Unit
from jigs.ground.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorPlan:
    """What a door needs of its hinges. `plates` are heights on the side from its bottom end,
    `cups` the same above the door's bottom edge; mm."""

    choice: HingeChoice
    plates: tuple[float, ...]
    cups: tuple[float, ...]
    least_reveal: float | None
    problems: tuple[Problem, ...]


def door_mass(front: PlacedFront, material: Material, thickness: float) -> float:
    """Give a door's mass in kg, at the job's density or its material's usual one."""
    density = material.front_density
    if density is None:
        density = DENSITIES[material.front_kind]
    frame = frame_of(front.spec, front.width, front.height)
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
    unit: Unit,
) -> DoorPlan:
    """Plan the hinges of a door whose hand is known.

    `holes` are the places (x, y) of the holes that its side already has; `grid` the first hole's
    height, None where plates need not keep to it.
    """
    spec = front.spec
    tab = spec.tab if spec.bored_tab is None else spec.bored_tab
    choice = choose_tab_and_plate(record, front.lap, tab, fixed=spec.bored)
    mass = door_mass(front, material, thickness)
    count = count_hinges(width=front.width, height=front.height, mass=mass)
    asked = Door(
        bottom=front.y,
        height=front.height,
        count=count,
        plate_line=record.plate_line + front.set_back(thickness),
        plate_spacing=record.plate_spacing,
    )
    problems: list[Problem] = []
    if spec.bored and tab is None and record.tab is None:
        problems.append(
            warning(
                "bored-tab-missing",
                front.id,
                "its cups are bored by the supplier, but not stated how far from the edge: a tab "
                f"of {choice.tab:g} mm is taken",
                "measure from the hinge edge to the rim of a cup, give it as bored_tab",
            )
        )
    plates: tuple[float, ...] = ()
    if not spec.bored:
        problems.extend(check_skin(front, record, thickness, unit))
        problems.extend(check_stile(front, record, choice.tab, unit))
    problems.extend(check_constant(front, record, choice))
    # What the search did to reach an overlay that no tab reaches says nothing more.
    missed = check_overlay(front, record, choice, unit)
    problems.extend(missed or check_tab(front, record, choice))
    problems.extend(check_hinge_reveal(front, record, thickness, unit))
    if spec.hinges_at:
        plates = tuple(sorted(front.y + height for height in spec.hinges_at))
        problems.extend(check_given_heights(front, carcass, asked, plates, holes, unit))
    elif spec.bored:
        problems.append(
            error(
                "bored-heights-missing",
                front.id,
                "its cups are bored by the supplier, but their heights are not stated",
                "measure the cups' centres from the door's bottom edge, give them as hinges_at",
            )
        )
    else:
        placing = place_hinges(
            asked,
            grid=grid,
            panels=carcass.panels,
            holes=holes,
        )
        plates = placing.heights
        board = carcass.board(front.hinged or "left")
        problems.extend(check_placing(front, placing, (board,), unit))
    if plates:
        problems.extend(check_spread(front, plates, mass, count, unit))
    return DoorPlan(
        choice=choice,
        plates=plates,
        cups=tuple(height - front.y for height in plates),
        least_reveal=least_reveal(record, thickness),
        problems=tuple(problems),
    )
