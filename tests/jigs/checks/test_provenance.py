"""Which open numbers each part rests on."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.confirming import OpenNumber
from jigs.given.job import FrontSpec, Reveal
from jigs.given.stated import Boring, Hung
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.layout.layout import lay_out
from templates.sheets.partwords import words_of_front
from tests.jigs.sample import HINGE, PULL, SLIDE, SURE, box, codes, front_of, job, side_of
from tests.said import fact_of

DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B1-2", kind="door", hinged="left")


def opened(door: FrontSpec = DOOR) -> Layout:
    """A drawer over a door, nothing of their hardware confirmed."""
    return lay_out(
        job(
            box(DRAWER, door),
            hinge=replace(HINGE, confirmed={}),
            slide=replace(SLIDE, confirmed={}),
            pull=replace(PULL, confirmed={}),
        )
    )


def keys(numbers: tuple[OpenNumber, ...], kind: str) -> set[str]:
    """The keys of the open numbers of one kind of record."""
    return {number.key for number in numbers if number.kind == kind}


def test_each_part_has_the_numbers_that_it_rests_on() -> None:
    """A side has no cup, a drawer box no fixing height."""
    layout = opened()
    drawer, door = front_of(layout, "B1-1"), front_of(layout, "B1-2")
    assert keys(drawer.open, "slide") == {"drawer_rise", "width_less"}
    assert keys(drawer.open, "pull") == {"centers"}
    assert drawer.drawer is not None
    assert keys(drawer.drawer.open, "slide") == {"drawer_rise", "width_less", "drawer_shorter"}
    assert keys(door.open, "hinge") == {
        "constant", "plates", "fixing_spacing", "fixing_inboard", "cup_depth",
    }  # fmt: skip
    left, right = side_of(layout, "B1-SIDE-L"), side_of(layout, "B1-SIDE-R")
    assert keys(left.open, "hinge") == {"constant", "plates"}
    assert keys(right.open, "hinge") == set()
    assert keys(right.open, "slide") == {"fixing_height", "drawer_rise", "fixing_at", "carry_at"}


def test_a_bored_door_has_no_pattern_to_open() -> None:
    """Only its plate is still to be chosen: the finding names no more."""
    bored = replace(
        DOOR, boring=Boring(bored=True, bored_tab=5.0), hung=Hung(hinges_at=(100.0, 400.0))
    )
    layout = opened(bored)
    assert keys(front_of(layout, "B1-2").open, "hinge") == set()
    assert keys(side_of(layout, "B1-SIDE-L").open, "hinge") == {"constant", "plates"}
    [found] = [p for p in layout.problems if p.code == "unconfirmed-hinge"]
    assert "constant" in fact_of(found)
    assert "plates" in fact_of(found)
    assert "fixing" not in fact_of(found)


def test_an_open_number_holds_nothing_back() -> None:
    """It is a warning, on whatever rests on it."""
    layout = opened()
    assert not any(front.withheld for front in layout.fronts)
    assert {problem.level for problem in layout.problems} == {"warning"}
    assert set(codes(layout, "B1-1")) >= {"unconfirmed-slide", "unconfirmed-pull"}
    assert "unconfirmed-hinge" in codes(layout, "B1-2")


def test_a_part_that_is_held_back_rests_on_nothing_yet() -> None:
    """It has no holes."""
    layout = opened(replace(DOOR, hinged=None))
    assert front_of(layout, "B1-2").withheld
    assert front_of(layout, "B1-2").open == ()


def test_nothing_is_open_where_all_is_confirmed() -> None:
    """Neither part nor finding."""
    layout = lay_out(job(box(DRAWER, DOOR)))
    assert not [
        *(f.open for f in layout.fronts if f.open),
        *(s.open for s in layout.sides if s.open),
    ]
    assert not [code for code in codes(layout) if code.startswith("unconfirmed")]


@pytest.mark.parametrize("confirmed", [False, True])
def test_a_verdict_by_a_figure_from_memory_says_so(confirmed: bool) -> None:
    """The least reveal decides a finding; nobody has looked it up unless the record says so."""
    sure = {**SURE, "least_reveal": SURE["constant"]} if confirmed else SURE
    hinge = replace(HINGE, least_reveal=((19.0, 0.9), (24.0, 2.4)), confirmed=sure)
    tight = Reveal(side=0.5, top=3.2, bottom=1.6, between=3.2)
    layout = lay_out(job(box(DRAWER, DOOR), hinge=hinge, reveal=tight))
    [found] = [p for p in layout.problems if p.code == "hinge-edge-reveal"]
    assert ("(open: the leaflet's own figure rules)" in fact_of(found)) is not confirmed
    facts = words_of_front(layout, front_of(layout, "B1-2")).facts["back"]
    said = [fact.text for fact in facts if fact.text.startswith("Hinge-edge reveal")]
    known = "Hinge-edge reveal 0.5; the least by the leaflet 0.9."
    assert said == ([known] if confirmed else [])


def test_how_far_a_pull_stands_out_is_open_till_it_is_measured() -> None:
    """A door at a wall: 35 is the generic pull's, from memory."""
    wall = WallSpec(name="north", left=WallEnd(stands="wall"))
    base = replace(job(box(DRAWER, DOOR)), walls=(wall,))
    for sure in (False, True):
        confirmed = {**SURE, "projection": SURE["centers"]} if sure else SURE
        pulls = {"bar": replace(PULL, confirmed=confirmed)}
        layout = lay_out(replace(base, pulls=pulls))
        [found] = [p for p in layout.problems if p.code == "wall-filler"]
        assert ("(open: the leaflet's own figure rules) for its pull" in fact_of(found)) is not sure
