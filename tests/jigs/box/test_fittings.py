"""What is drilled into a front: groups by hand, numbering, pulls by name."""

from jigs.box.fittings import group_by_hand, renumber
from jigs.box.frontpulls import pull_of
from jigs.box.fronts import PlacedFront
from jigs.fittings.hinge import plate_fittings
from jigs.fittings.slide import slide_fitting
from jigs.given.job import FrontKind, FrontSpec, Use
from jigs.given.stated import HandHole, OpenedBy
from jigs.ground.geometry import Face
from tests.jigs.sample import HINGE, SLIDE, box, job, one_column


def placed(kind: FrontKind = "panel", pull: str | None = None) -> PlacedFront:
    """Give a front alone in the golden box."""
    spec = box(FrontSpec(id="B1-1", kind=kind, opened_by=OpenedBy(pull=pull)))
    return one_column(spec).fronts[0]


def by_hand(x: float, y: float, face: Face = "back") -> HandHole:
    """Give a hole stated by hand."""
    return HandHole(x=x, y=y, diameter=5, depth=11, face=face, purpose="bracket")


def test_holes_near_each_other_are_one_fitting() -> None:
    """Two groups far apart stay two; a hole between them joins them; faces never join."""
    apart = [by_hand(50, 50), by_hand(82, 50), by_hand(400, 50)]
    assert [len(f.holes) for f in group_by_hand(apart, "B1-1", height=771.5)] == [2, 1]
    chain = [by_hand(50, 50), by_hand(240, 50), by_hand(145, 50)]
    assert [len(f.holes) for f in group_by_hand(chain, "B1-1", height=771.5)] == [3]
    faces = [by_hand(50, 50), by_hand(50, 50, "front")]
    fittings = group_by_hand(faces, "B1-1", height=771.5)
    assert [(f.index, f.count, f.note) for f in fittings] == [(1, 2, "bracket"), (2, 2, "bracket")]


def test_side_fittings_are_numbered_from_the_bottom_by_kind() -> None:
    """Plates and slides are counted apart, whichever front they serve."""
    fittings = [
        slide_fitting(SLIDE, 668.8, part="B1-1"),
        *plate_fittings(HINGE, [100, 500], part="B1-2"),
        slide_fitting(SLIDE, 51.3, part="B1-3"),
    ]
    assert [(f.kind, f.index, f.count, f.part) for f in renumber(fittings)] == [
        ("slide", 1, 2, "B1-3"),
        ("plate", 1, 2, "B1-2"),
        ("plate", 2, 2, "B1-2"),
        ("slide", 2, 2, "B1-1"),
    ]


def test_pulls_go_by_the_kind_of_front() -> None:
    """Doors and lift-ups take the doors' pull, drawers the drawers', panels only their own."""
    sample = job(use=Use(drawer_pull="bar"))
    assert pull_of(sample, placed("panel")) is None
    assert pull_of(sample, placed("panel", pull="bar")) == sample.pulls["bar"]
    assert pull_of(sample, placed("pullout")) == sample.pulls["bar"]
    assert pull_of(sample, placed("drawer")) == sample.pulls["bar"]
    assert pull_of(sample, placed("lift")) is None
    assert pull_of(sample, placed("lift", "bar")) == sample.pulls["bar"]
    assert pull_of(sample, placed("drawer", "none")) is None
