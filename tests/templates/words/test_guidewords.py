"""The steps of each kind of work, said once on the guide pages."""

from typing import get_args

import pytest
from msgspec.structs import replace

from jigs.ground.geometry import Fitting, FittingKind, Hole
from templates.faces.faceview import FaceView
from templates.faces.views import view_of_drawer_box, views_of_front
from templates.words.fittingwords import GuidedWork, words_of
from templates.words.guidewords import (
    GUIDES,
    TRUE_FOLD,
    Trait,
    every_steps,
    guide_line,
    guide_steps,
    traits_of,
    works_of,
)
from tests.jigs.sample import front_of
from tests.templates.worked import only_cards, worked_layout

WORKS: tuple[GuidedWork, ...] = get_args(GuidedWork)


def view_of(part: str, face: str) -> FaceView:
    """Give a face of the worked example."""
    return only_cards(part, face)[0].view


@pytest.mark.parametrize(("part", "face", "work", "words"), [
    ("B3-2", "back", "hinges", "Hold the door at its box, arrow up: the cups must face"),
    ("B3-2", "front", "pulls", "Lay your pull on the drawing"),
    ("B1-4", "back", "marking", "on BOTH drawn corners"),
    ("B3-1-BOX", "box-front", "drawer-box", "the face to drill towards you"),
    ("B3-SIDE-L", "inside", "sides", "LEFT and RIGHT like an open book"),
])  # fmt: skip
def test_a_face_has_the_steps_of_its_work(
    part: str, face: str, work: GuidedWork, words: str
) -> None:
    """They say what is peculiar to the work, and name each lettered step at most once."""
    assert works_of(view_of(part, face)) == (work,)
    steps = guide_steps(work, (), ())
    assert words in " ".join(steps)
    assert 3 <= len(steps) <= 8
    assert sum(step.count("Set the cards: A to E.") for step in steps) == 1


def test_there_is_one_way_to_fold_and_to_block() -> None:
    """Flap first, then a block against it; nobody pushes a fold into a block. Edges that are
    rounded are said where there are any."""
    steps = every_steps(())
    assert steps[0].startswith("Measure both bars")
    (step,) = [step for step in steps if TRUE_FOLD in step]
    assert step.index("Fold each flap down") < step.index("block against the flap")
    assert "push" not in " ".join(steps)
    (more,) = set(every_steps({"rounded"})) - set(steps)
    assert more.startswith(step)
    assert "butt the paper to a straight block" in more


def test_each_kind_of_fitting_has_a_guide() -> None:
    """And each guide a kind."""
    works = {words_of(kind).work for kind in get_args(FittingKind)}
    assert works | {"marking"} == set(GUIDES) == set(WORKS)


@pytest.mark.parametrize(("trait", "work", "words"), [
    ("standing", "sides", "stand the paper on the panel"),
    ("partition", "sides", "its own bottom end"),
    ("marked", "drawer-box", "before its front, which is marked through"),
])  # fmt: skip
def test_what_some_parts_want_is_said_where_there_are_any(
    trait: Trait, work: GuidedWork, words: str
) -> None:
    """One step more, and no other."""
    (step,) = set(guide_steps(work, (trait,), ())) - set(guide_steps(work, (), ()))
    assert words in step


def test_pilots_come_before_the_box_where_they_are_printed() -> None:
    """Both patterns then stand on paper."""
    front = front_of(worked_layout("in"), "B3-1")
    assert front.drawer is not None
    assert works_of(views_of_front(front, "in", pilots=True)[0]) == ("front-screws",)
    box = view_of_drawer_box(front.drawer, front.drawer.side, "in")
    assert box is not None
    assert traits_of(box) == {"pilots"}
    steps = guide_steps("drawer-box", traits_of(box), ())
    assert "each hole over its pilot" in " ".join(steps)
    assert traits_of(view_of("B3-1-BOX", "box-front")) == {"marked"}


def test_a_front_is_marked_through_its_box_by_its_own_bit() -> None:
    """Never by an awl, which leans in a hole of 5; and who says when."""
    steps = " ".join(guide_steps("marking", (), ()))
    for words in ("Bore the drawer box first", "5 mm brad-point bit turned by hand", "transfer "
                  "punch, never an awl", "25 to 32 up: an extended bit", "Try it on the first "
                  "drawer", "in the kitchen", "Adjusters"):  # fmt: skip
        assert words in steps


def test_a_face_says_what_it_is() -> None:
    """Edges rounded; nothing of a plain door."""
    view = view_of("B3-2", "back")
    assert traits_of(view) == frozenset()
    assert traits_of(replace(view, rounded=True)) == {"rounded"}


def test_holes_by_hand_beside_hinges_have_a_guide_of_their_own() -> None:
    """The hinges' steps speak of cups alone; a bracket beside them is no cup."""
    view = view_of("B3-2", "back")
    hole = Hole(purpose="manual", face="back", x=60.0, y=300.0, diameter=5.0, depth=12.0)
    bracket = Fitting(kind="manual", index=1, count=1, part="B3-2", record=None, holes=(hole,))
    both = replace(view, fittings=(*view.fittings, bracket))
    assert set(works_of(both)) == {"hinges", "by-hand"}
    pages: dict[GuidedWork, int] = {"hinges": 2, "by-hand": 5}
    assert guide_line(both, pages) == "STEPS: pages 2 and 5."
    assert guide_line(view, pages) == "STEPS: page 2."
    assert guide_line(view, {}) == ""
    assert "Check each place against the leaflet" in " ".join(guide_steps("by-hand", (), ()))
