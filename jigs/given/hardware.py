"""Hardware, described by its geometry: what a fitting's leaflet or a caliper says.

A record is a frozen value. Generic records ship with the tool as data (`jigs/given/records/`),
each number with its standing; a job's own record is `like` one of them and overrides what differs.
Beside a number that differs from make to make stands what rests on it;
until `confirmed` names such a number, it is open (`jigs.given.confirming`), and whatever
rests on it says so.
"""

from collections.abc import Mapping
from typing import Annotated, Literal, final

from msgspec import Struct, field

from jigs.ground.believable import ALONG_BOARD, PLATE, SCREW_DEPTH, SCREW_HOLE, TAB, Range
from jigs.ground.keys import Key, Rests, keys_of

Confirmed = Literal["leaflet", "measured", "confirmed"]
"""How a number was found; `confirmed` where the person did not say how."""
NumberStanding = Literal["P", "C", "M", "D", "user"]
"""Published, common practice, from memory, derived, or given by the user."""

HingeKind = Literal["full", "half", "inset"]
"""Which overlay a hinge is made for."""

TAB_AND_PLATE: tuple[Rests, ...] = ("back", "inside", "order")
"""What rests on numbers that choose tab and plate together, one for the door, one for the side."""

NO_PULL = "none"
"""What a job says in a pull's place where there is none."""


class HingeRecord(Struct, frozen=True, kw_only=True):
    """A concealed cup hinge with its plates; mm."""

    name: str
    like: str | None = None
    kind: Annotated[HingeKind, Key()] = "full"
    """The overlay it is made for."""
    constant: Annotated[float, Key(Range(-12, 25, least=1), rests=TAB_AND_PLATE)] = 15.0
    """C0 in overlay = constant + tab - plate height. One cell of the leaflet's table may stand in
    its place, `overlay_at = { tab = "5 mm", plate = "0 mm", overlay = "20 mm" }`; or
    `overlay_measured`, the same from a scrap door with the side screw at its middle, which
    marks the constant measured."""
    plates: Annotated[tuple[float, ...], Key(PLATE, rests=TAB_AND_PLATE)] = ()
    """Plate heights at hand; none listed: the sheet names the one that is wanted."""
    tab: Annotated[float | None, Key(TAB)] = None
    """Door's edge to the rim of the cup; one that is stated, here or at a front, stands; else it is
    5, or what `tabs` has nearest to it."""
    tabs: Annotated[tuple[float, ...] | None, Key(TAB)] = None
    """Tabs that you can bore; where several are listed or none, 5 or the nearest to it, and if
    that misses the overlay by more than 0.5 mm the check says which was taken instead."""
    cup_diameter: Annotated[float, Key(Range(20, 45))] = 35.0
    """Cup diameter."""
    fixing_spacing: Annotated[float, Key(Range(25, 70), rests=("back",))] = 45.0
    """The two screws beside the cup, apart, along the hinge edge."""
    fixing_inboard: Annotated[float, Key(Range(3, 15, zero=True), rests=("back",))] = 9.5
    """How far inboard of the cup's centre they stand."""
    cup_depth: Annotated[float, Key(Range(8, 20), rests=("back",))] = 13.0
    """Cup depth."""
    bit_point: Annotated[float, Key(Range(0.3, 6, zero=True))] = 1.0
    """How far the bit's point goes ahead of the cup."""
    fixing_diameter: Annotated[float | None, Key(SCREW_HOLE)] = None
    """Diameter of these screws' holes; else by the front's material."""
    fixing_depth: Annotated[float, Key(SCREW_DEPTH)] = 11.0
    """Depth of these screws' holes."""
    plate_line: Annotated[float, Key(Range(20, 90))] = 37.0
    """Plate holes from the finished front edge."""
    plate_spacing: Annotated[float, Key(Range(16, 70))] = 32.0
    """Plate holes, apart."""
    plate_diameter: Annotated[float, Key(SCREW_HOLE)] = 5.0
    """Diameter of the plate's holes."""
    plate_depth: Annotated[float, Key(SCREW_DEPTH)] = 12.0
    """Depth of the plate's holes."""
    flange_length: Annotated[float, Key(Range(30, 110))] = 62.0
    """Length of what lies on the door; its outline on the sheet."""
    flange_width: Annotated[float, Key(Range(10, 60))] = 22.0
    """Width of what lies on the door."""
    least_reveal: Annotated[tuple[tuple[float, float], ...], Key(Range(0.2, 8))] = ()
    """The least gap that the hinge swings in, by the door's thickness: `[["19 mm", "0.9 mm"]]`;
    linear between rows, a row within 0.5 beyond them."""
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, NumberStanding] = field(default_factory=dict)


@final
class SlideRecord(Struct, frozen=True, kw_only=True):
    """A pair of drawer slides; mm.

    A flat record of what a leaflet says, as it says it: each number is a key of the slide's own
    table, may be had from the record that it is `like`, and is open or confirmed by its name. So
    the four numbers of the rear hooks are no value of their own, though they come all or none.
    """

    name: str
    like: str | None = None
    mount: Annotated[Literal["under", "side"], Key()] = "under"
    """Under the drawer, or at its sides."""
    length: Annotated[float, Key(Range(150, 900))] = 533.0
    """Nominal length; several records of one series are chosen from by the box's depth."""
    fixing_height: Annotated[float, Key(Range(4, 120), rests=("inside",))] = 33.0
    """Its holes above the floor line, slide set on a flat board."""
    drawer_rise: Annotated[
        float, Key(Range(2, 80, zero=True), rests=("back", "inside", "box-front", "cut"))
    ] = 14.0
    """The drawer side's underside above the floor line, slide set on a flat board."""
    centre_height: Annotated[float, Key(Range(5, 150, zero=True), rests=("inside",))] = 0.0
    """A side mount's centre line above the drawer's underside."""
    width_less: Annotated[
        float, Key(Range(4, 90, zero=True), rests=("back", "box-front", "box-back", "cut"))
    ] = 42.0
    """The opening less the drawer's inside width, both sides together; of a side mount less its
    outside width."""
    width_tolerance: Annotated[float, Key(Range(0.2, 5, zero=True))] = 1.5
    """How much narrower the drawer may be."""
    depth_allowance: Annotated[float, Key(Range(1, 60, zero=True), rests=("order",))] = 16.0
    """Inside depth wanted beyond the length."""
    drawer_shorter: Annotated[float, Key(Range(1, 60, zero=True), rests=("cut",))] = 0.0
    """How much the drawer is shorter than the length."""
    fixing_at: Annotated[tuple[float, ...], Key(ALONG_BOARD, rests=("inside",))] = (37.0,)
    """Holes back from the finished front edge; 37 alone where nothing is said."""
    carry_at: Annotated[tuple[float, ...], Key(ALONG_BOARD, rests=("inside",))] = ()
    """Further holes, marked through the slide."""
    fixing_diameter: Annotated[float, Key(SCREW_HOLE)] = 5.0
    """Diameter of these holes."""
    fixing_depth: Annotated[float, Key(SCREW_DEPTH)] = 12.0
    """Depth of these holes."""
    least_rise: Annotated[float, Key(Range(1, 60, zero=True))] = 0.0
    """Room wanted under an undermount drawer."""
    recess: Annotated[float, Key(Range(4, 40, zero=True))] = 13.0
    """Recess under the drawer's bottom."""
    end_height: Annotated[float, Key(Range(8, 150))] = 40.0
    """How high the slide's end is drawn."""
    load: Annotated[float | None, Key(Range(5, 150, unit="kg"), most=500.0)] = None
    """What its leaflet says the pair bears, kg; the check warns of a drawer or rollout that, at
    15 lb/ft2 (KCMA A161.1, second hand), would carry more."""
    notch_width: Annotated[float, Key(Range(8, 100))] = 38.0
    """Width of the notches in the drawer's back."""
    notch_height: Annotated[float | None, Key(Range(4, 80))] = None
    """Height of these notches; else as the recess."""
    hook_diameter: Annotated[float | None, Key(Range(3, 15), rests=("box-back",))] = None
    """Diameter of the holes in the drawer's back that the slide's rear hooks enter; undermount;
    all four or none, each drawer box then has a sheet for its back."""
    hook_depth: Annotated[float | None, Key(SCREW_DEPTH, rests=("box-back",))] = None
    """Depth of these holes."""
    hook_height: Annotated[float | None, Key(Range(2, 60), rests=("box-back",))] = None
    """Their height above the drawer's underside."""
    hook_inset: Annotated[float | None, Key(Range(1, 60, zero=True), rests=("box-back",))] = None
    """How far in they stand from the drawer side's inner face."""
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, NumberStanding] = field(default_factory=dict)


HOOK_KEYS = ("hook_diameter", "hook_depth", "hook_height", "hook_inset")
"""The numbers of a hook's hole; none of them says anything without the others."""
UNDER_ALONE = frozenset(("fixing_height", "drawer_rise"))
SIDE_ALONE = frozenset(("centre_height",))
"""Which of the numbers that differ from make to make are an undermount slide's alone, which a side
mount's: how far a side mount's drawer stands above the bottom panel is a clearance, not the make's.
"""


class PullRecord(Struct, frozen=True, kw_only=True):
    """A pull (two holes, `centers` apart) or a knob (`centers` None); mm."""

    name: str
    like: str | None = None
    centers: Annotated[float | None, Key(Range(25, 1500), rests=("front", "order"))] = 160.0
    """From screw to screw; absent: a knob."""
    door_inset: Annotated[float, Key(Range(10, 200), called="from a door's free edge")] = 50.0
    """A door's free edge to the pull's line; of a five-piece front half of the stile."""
    door_corner: Annotated[
        float, Key(Range(15, 400), called="from the corner to the near screw")
    ] = 64.0
    """A door's corner to the near screw."""
    tall_height: Annotated[float, Key(Range(600, 1500), called="above the floor on tall doors")] = (
        1000.0
    )
    """A tall door's pull above the floor."""
    two_from: Annotated[float, Key(Range(300, 1600), called="of width and more: two pulls")] = 762.0
    """The front's width from which there are two."""
    drawer: Annotated[
        Literal["center", "upper-third"] | float, Key(Range(10, 500), called="centred on drawers")
    ] = "center"
    """Where it stands on a drawer's front: such a word, or a length below its top edge."""
    screws: Annotated[Literal["front", "through"], Key(called="screws through the front alone")] = (
        "front"
    )
    """Through the front alone, or through the drawer box too."""
    hole_diameter: Annotated[float, Key(Range(2, 15))] = 5.0
    """Hole diameter."""
    foot: Annotated[float, Key(Range(3, 60))] = 12.0
    """Length of one foot along the pull."""
    projection: Annotated[float, Key(Range(6, 90, zero=True))] = 35.0
    """Projection out from the face."""
    confirmed: Mapping[str, Confirmed] = field(default_factory=dict)
    standing: Mapping[str, NumberStanding] = field(default_factory=dict)


def _rests(values: type) -> Mapping[str, frozenset[Rests]]:
    """Give the numbers that differ from make to make, and what rests on each."""
    return {name: frozenset(of.key.rests) for name, of in keys_of(values).items() if of.key.rests}


HINGE_RESTS = _rests(HingeRecord)
SLIDE_RESTS = _rests(SlideRecord)
PULL_RESTS = _rests(PullRecord)
