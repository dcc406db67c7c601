"""Hardware, described by its geometry: what a fitting's leaflet or a caliper says.

A record is a frozen value. Generic records ship with the tool as data (`jigs/fittings/records/`),
each number with its standing; a job's own record is `like` one of them and overrides what differs.
Numbers that differ from make to make stand beside each record's keys with what rests on them;
until `confirmed` names such a number, it is open (`jigs.given.confirming`), and whatever
rests on it says so.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from jigs.ground.geometry import Face

Confirmed = Literal["leaflet", "measured", "confirmed"]
"""How a number was found; `confirmed` where the person did not say how."""
Standing = Literal["P", "C", "M", "D", "user"]
"""Published, common practice, from memory, derived, or given by the user."""
Rests = Face | Literal["cut", "order"]
"""What rests on a number: the holes of a face or what is mounted there, a cut, what is bought."""

HingeKind = Literal["full", "half", "inset"]
"""Which overlay a hinge is made for."""

NO_PULL = "none"
"""What a job says in a pull's place where there is none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeRecord:
    """A concealed cup hinge with its plates; mm.

    `tab`: free edge of the door to the rim of the cup (K), None where neither record nor person
    fixed it (then 5). `tabs`: what the person can bore. `constant`: C0 in OV = C0 + K - Hp.
    `plates`: plate heights Hp at hand, () where nobody said which. `fixing_spacing` (a) runs along
    the hinge edge, `fixing_inboard` (b) from the cup's centre away from it. `fixing_diameter`
    None: by the front's material. `flange_*`: outline of the part that lies on the door. `kind`:
    overlay.
    """

    name: str
    like: str | None = None
    kind: HingeKind = "full"
    cup_diameter: float = 35.0
    cup_depth: float = 13.0
    bit_point: float = 1.0
    fixing_spacing: float = 45.0
    fixing_inboard: float = 9.5
    fixing_diameter: float | None = None
    fixing_depth: float = 11.0
    tab: float | None = None
    tabs: tuple[float, ...] | None = None
    constant: float = 15.0
    plates: tuple[float, ...] = ()
    plate_line: float = 37.0
    plate_spacing: float = 32.0
    plate_diameter: float = 5.0
    plate_depth: float = 12.0
    flange_length: float = 62.0
    flange_width: float = 22.0
    least_reveal: tuple[tuple[float, float], ...] = ()
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, Standing] = field(default_factory=dict)


HINGE_RESTS: Mapping[str, frozenset[Rests]] = {
    # Constant and plate heights choose tab and plate together, one for the door, one for the side.
    "constant": frozenset(("back", "inside", "order")),
    "plates": frozenset(("back", "inside", "order")),
    "fixing_spacing": frozenset(("back",)),
    "fixing_inboard": frozenset(("back",)),
    "cup_depth": frozenset(("back",)),
}
"""The numbers of a hinge that differ from make to make, and what rests on each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlideRecord:
    """A pair of drawer slides; mm.

    `mount` `under` or `side`. `length` nominal. `fixing_height` (a): fixing-hole centre above
    the floor line; `drawer_rise` (b): underside of the drawer side above it, both with the slide
    set on a flat board. For a side mount, `centre_height` (s): centre line above the drawer
    box's underside. `width_less`: taken from the opening; from the inside width for `under`
    (42), from the outside width for `side` (26). `width_tolerance`: how much narrower it may be.
    `depth_allowance`: inside depth must reach length plus this. `drawer_shorter`: drawer length
    is nominal less this. `fixing_at`: x of the holes on the box side; `carry_at`: further ones
    that are marked through the slide. `least_rise`: clearance needed under an undermount drawer.
    `load`: what the pair bears by its leaflet, kg; None where nobody said. `notch_width`,
    `notch_height`: of the notches in a drawer's back, the height None as the recess. `hook_*`: the
    holes in its back that the slide's rear hooks enter, None where it has none: diameter, depth,
    height above the drawer's underside, inset from the drawer side's inner face.
    """

    name: str
    like: str | None = None
    mount: Literal["under", "side"] = "under"
    length: float = 533.0
    fixing_height: float = 33.0
    drawer_rise: float = 14.0
    centre_height: float = 0.0
    width_less: float = 42.0
    width_tolerance: float = 1.5
    depth_allowance: float = 16.0
    drawer_shorter: float = 0.0
    fixing_at: tuple[float, ...] = (37.0,)
    carry_at: tuple[float, ...] = ()
    fixing_diameter: float = 5.0
    fixing_depth: float = 12.0
    least_rise: float = 0.0
    recess: float = 13.0
    end_height: float = 40.0
    load: float | None = None
    notch_width: float = 38.0
    notch_height: float | None = None
    hook_diameter: float | None = None
    hook_depth: float | None = None
    hook_height: float | None = None
    hook_inset: float | None = None
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, Standing] = field(default_factory=dict)


SLIDE_RESTS: Mapping[str, frozenset[Rests]] = {
    "fixing_height": frozenset(("inside",)),
    "drawer_rise": frozenset(("back", "inside", "box-front", "cut")),
    "centre_height": frozenset(("inside",)),
    "width_less": frozenset(("back", "box-front", "box-back", "cut")),
    "depth_allowance": frozenset(("order",)),
    "drawer_shorter": frozenset(("cut",)),
    "fixing_at": frozenset(("inside",)),
    "carry_at": frozenset(("inside",)),
    "hook_diameter": frozenset(("box-back",)),
    "hook_depth": frozenset(("box-back",)),
    "hook_height": frozenset(("box-back",)),
    "hook_inset": frozenset(("box-back",)),
}
"""The numbers of a slide that differ from make to make, and what rests on each."""
UNDER_ALONE = frozenset(("fixing_height", "drawer_rise"))
SIDE_ALONE = frozenset(("centre_height",))
"""Which of them are an undermount slide's alone, which a side mount's: how far a side mount's
drawer stands above the bottom panel is a clearance, not the make's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PullRecord:
    """A pull (two holes, `centers` apart) or a knob (`centers` None); mm.

    `drawer`: `center`, `upper-third`, or a length below the front's top edge. `door_inset`: free
    edge to the pull's line. `door_corner`: corner to the near screw. `tall_height`: a tall
    door's pull centre above the floor. `two_from`: front width from which two pulls are set.
    `screws`: through the `front` alone, or `through` the drawer box as well. `foot`: outline
    of one foot along the pull, `projection`: out from the face.
    """

    name: str
    like: str | None = None
    centers: float | None = 160.0
    drawer: Literal["center", "upper-third"] | float = "center"
    door_inset: float = 50.0
    door_corner: float = 64.0
    tall_height: float = 1000.0
    two_from: float = 762.0
    screws: Literal["front", "through"] = "front"
    hole_diameter: float = 5.0
    foot: float = 12.0
    projection: float = 35.0
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, Standing] = field(default_factory=dict)


PULL_RESTS: Mapping[str, frozenset[Rests]] = {"centers": frozenset(("front", "order"))}
"""The numbers of a pull that differ from make to make, and what rests on each."""
