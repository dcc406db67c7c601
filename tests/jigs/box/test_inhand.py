"""The front in hand: measured sizes, what keeps its place, and what is said."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import Boring, HandHole, Hung, OpenedBy, Taped
from jigs.ground.geometry import Hole
from tests.jigs.sample import box, codes, front_of, lay
from tests.said import fact_of, remedy_of

W, H = 457.2 - 2 * 1.6, 774.7 - 2 * 1.6


def one(kind: str = "door", **given: object) -> Layout:
    """Lay out one front in a golden wall box."""
    hand = {"hinged": "left"} if kind == "door" and "hinged" not in given else {}
    front = FrontSpec(id="B1-1", kind=kind, **hand, **given)  # type: ignore[arg-type]
    return lay(replace(box(front, kind="wall"), no_shelf=True))


def holes(layout: Layout, purpose: str) -> list[Hole]:
    """Give the holes of the front that serve a purpose."""
    return [hole for hole in front_of(layout, "B1-1").holes if hole.purpose == purpose]


@pytest.mark.parametrize("hinged", ["left", "right"])
def test_a_door_in_hand_keeps_its_cups_and_plates(hinged: str) -> None:
    """A door 1.6 too long does not move its top cup; 1.4 too wide, its hinge edge stays."""
    plain = one(hinged=hinged)
    made = one(hinged=hinged, measured=Taped(width=(W + 1.2, W + 1.6), height=(H + 1.6, H + 1.6)))
    front = front_of(made, "B1-1")
    assert (front.width, front.height) == pytest.approx((W + 1.4, H + 1.6))
    assert front.ordered == pytest.approx((W, H))
    for purpose in ("cup", "cup-fixing", "pull"):
        for was, now in zip(holes(plain, purpose), holes(made, purpose), strict=True):
            assert now.y == pytest.approx(was.y)
            edge = (W - was.x, front.width - now.x) if hinged == "right" else (was.x, now.x)
            assert edge[1] == pytest.approx(edge[0])
    assert [side.holes for side in made.sides] == [side.holes for side in plain.sides]
    assert front.gaps.top == pytest.approx(1.6 - 1.6)
    free = front.gaps.right if hinged == "left" else front.gaps.left
    assert free == pytest.approx(1.6 - 1.4)
    assert codes(made) == []


def test_a_drawer_front_in_hand_has_its_own_middle() -> None:
    """2 wider: the pull stays about the middle, and the drawer box too."""
    front = front_of(one("drawer", measured=Taped(width=(W + 2, W + 2))), "B1-1")
    pulls = sorted(hole.x for hole in front.holes if hole.purpose == "pull")
    assert sum(pulls) / 2 == pytest.approx((W + 2) / 2)
    assert front.drawer is not None
    assert front.drawer.x == pytest.approx((W + 2 - front.drawer.width) / 2)
    assert (front.gaps.left, front.gaps.right) == pytest.approx((0.6, 0.6))


def test_neighbours_have_the_gap_that_is_left() -> None:
    """A lower front 1 too high leaves 1 less to the front above."""
    low = FrontSpec(id="B1-2", kind="drawer", height=300, measured=Taped(height=(301, 301)))
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer"), low))
    assert front_of(layout, "B1-2").gaps.top == pytest.approx(3.2 - 1)
    assert front_of(layout, "B1-1").gaps.bottom == pytest.approx(3.2 - 1)


def test_leaves_of_a_pair_meet_in_a_narrower_gap() -> None:
    """Each leaf 0.5 wider: 3.2 between them becomes 2.2."""
    spec = FrontSpec(id="B1-1", kind="pair", measured=Taped(width=(W + 0.5, W + 0.5)))
    layout = lay(box(spec, kind="wall", width=914.4))
    left, right = front_of(layout, "B1-1L"), front_of(layout, "B1-1R")
    assert left.gaps.right == pytest.approx(3.2 - 1.0)
    assert right.gaps.left == pytest.approx(3.2 - 1.0)
    assert right.place.x == pytest.approx(left.place.x + left.width + 2.2)


@pytest.mark.parametrize(
    ("width", "height", "found"),
    [((W, W + 1.0), (H, H), []), ((W, W + 1.1), (H, H), ["out-of-square"]),
     ((W - 1.6, W - 1.6), (H, H), []), ((W - 1.7, W - 1.7), (H, H), ["size-differs"]),
     ((W, W), (H - 3, H - 1.8), ["out-of-square", "size-differs"]),
     ((H, H), (W, W), ["sizes-exchanged"])],
)  # fmt: skip
def test_what_is_said(
    width: tuple[float, float], height: tuple[float, float], found: list[str]
) -> None:
    """More than 1 between two measures, more than 1.6 beside the order; width for height is an
    error (common practice, no source)."""
    layout = one(measured=Taped(width=width, height=height))
    assert codes(layout, "B1-1") == found
    assert front_of(layout, "B1-1").withheld is (found == ["sizes-exchanged"])


def test_holes_by_hand_stay_where_they_are_stated() -> None:
    """They are the person's own."""
    hole = HandHole(x=100, y=100, diameter=5, depth=None, face="front", purpose="catch")
    made = one(
        "lift", measured=Taped(width=(W + 2, W + 2)), holes=(hole,), opened_by=OpenedBy(pull="none")
    )
    assert [(h.x, h.y) for h in holes(made, "manual")] == [(100, 100)]


def test_plates_answer_the_tab_that_is_bored() -> None:
    """Tab 3 bored: 15 + 3 - 2 = 16, and 16.7 are needed; 15 + 3 - 0 = 18 is further off."""
    layout = one(boring=Boring(bored=True, bored_tab=3.0), hung=Hung(hinges_at=(100.0, 600.0)))
    hinge = front_of(layout, "B1-1").hinge
    assert hinge is not None
    assert (hinge.tab, hinge.plate) == (3.0, 2.0)
    assert hinge.error == pytest.approx(15 + 3 - 2 - (18.3 - 1.6))
    assert holes(layout, "cup") == []
    assert "bored-tab-missing" not in codes(layout)
    assert "bored-tab-missing" in codes(
        one(boring=Boring(bored=True), hung=Hung(hinges_at=(100.0, 600.0)))
    )


def test_both_measures_stand_where_they_differ() -> None:
    """What is too much is too much at one end: the mean of the two would not be off by it."""
    for widths, told in (
        ((W + 2.5, W - 0.5), "measured 17 27/32+ in (453.5 mm) to 17 31/32 in (456.5 mm) x"),
        ((W + 2.5, W + 2.5), "measured 17 31/32 in (456.5 mm) x"),
    ):
        (problem,) = [
            p for p in one(measured=Taped(width=widths)).problems if p.code == "size-differs"
        ]
        assert fact_of(problem).startswith(told)
        assert "(2.5 mm) too wide" in fact_of(problem)


def test_what_is_too_small_is_not_trimmed() -> None:
    """A front too narrow is ordered anew; one too wide may be trimmed."""
    for off, told in ((-3.0, "order it anew"), (3.0, "trim it")):
        layout = one(measured=Taped(width=(W + off, W + off)))
        (problem,) = [p for p in layout.problems if p.code == "size-differs"]
        assert told in remedy_of(problem)
        assert ("trim" in remedy_of(problem)) is (off > 0)
