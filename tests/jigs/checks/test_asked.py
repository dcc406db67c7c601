"""Questions before anything is cut: a place or a box, an opening's sheet, a cupboard's shelf."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontKind, FrontSpec, ShelfSpec
from jigs.given.stated import NOTED, BoxRead, DrawerSize, HandHole, RolloutSpec
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jigs.sample import box, codes, lay

ASKED = {"appliance-place", "opening-not-noted", "no-shelf"}


def asked(spec: BoxSpec) -> dict[str, str | None]:
    """Give which of these questions are asked of a box, and of which part."""
    return {p.code: p.part for p in lay(spec).problems if p.code in ASKED}


def place(kind: FrontKind, width: float = 600.0, leaflet: bool = False) -> BoxSpec:
    """Give an open box with this one front and nothing in it."""
    front = FrontSpec(id="D1-1", kind=kind, hinged="left" if kind == "door" else None,
                      leaflet=NOTED if leaflet else None)  # fmt: skip
    return box(front, name="D1", kind="open", width=width)


@pytest.mark.parametrize(
    ("kind", "width", "part"),
    [
        ("opening", 400.0, "D1"), ("opening", 600.0, "D1"), ("opening", 650.0, "D1"),
        ("opening", 399.0, "D1"), ("opening", 651.0, "D1"), ("door", 399.0, None),
        ("false-front", 450.0, "D1-1"), ("door", 609.6, "D1-1"), ("drawer", 600.0, None),
    ],
)  # fmt: skip
def test_an_empty_open_box_as_wide_as_an_appliance(
    kind: FrontKind, width: float, part: str | None
) -> None:
    """An opening: is a box built here? A front before it: is it an appliance's panel?"""
    assert asked(place(kind, width)).get("appliance-place") == part


def test_an_open_box_without_anything_in_it() -> None:
    """Not even an opening: its sides are bored before it stands."""
    bare = box(name="D1", kind="open", width=300.0)
    assert asked(bare) == {"appliance-place": "D1"}
    assert asked(replace(bare, shelves=(ShelfSpec(at=300.0),))) == {}
    assert asked(replace(bare, no_shelf=True)) == {}


def test_what_stands_behind_a_pullout() -> None:
    """A drawer box is taken where nobody says it, and that is told with its height; none is told
    of one that is said, or that stands on a kit."""
    code = "pullout-drawer-box"
    front = FrontSpec(id="P1", kind="pullout")
    (found,) = [p for p in lay(box(front)).problems if p.code == code]
    (made,) = lay(box(front)).drawers
    assert (found.part, dict(found.values)["height"]) == ("P1", made.height)
    said = replace(front, drawer_box=DrawerSize(drawer_height=200.0))
    assert code not in [p.code for p in lay(box(said)).problems]
    hole = HandHole(x=60, y=480, diameter=3, depth=12, face="back", purpose="bracket")
    kit = replace(front, by_kit=True, holes=(hole,))
    assert code not in [p.code for p in lay(box(kit)).problems]


@pytest.mark.parametrize(
    ("slide", "told"),
    [
        ("", ["P1-1", "P2-1"]),
        ('slide = "mine"\n', ["P2-1"]),
        ('slide = "undermount-533"\n', ["P2-1"]),
    ],
)
def test_a_pullout_that_names_its_slide(tmp_path: Path, slide: str, told: list[str]) -> None:
    """Where no slide is named for the job: what is chosen by the depth of a box says nothing."""
    boxes = [
        f'[[box]]\nid = "P{number}"\nkind = "base"\nwidth = 400\nheight = 720\ndepth = {depth}\n'
        f'[[box.front]]\nkind = "pullout"\n{own}'
        for number, (depth, own) in enumerate(((584, slide), (400, "")), start=1)
    ]
    path = tmp_path / "job.toml"
    mine = '[slide.mine]\nlike = "undermount-457"\n'
    head = 'schema = 1\nname = "P"\nunits = "mm"\n'
    path.write_text("".join([head, mine, *boxes]), encoding="utf-8")
    problems = lay_out(read_job(path)).problems
    assert [p.part for p in problems if p.code == "pullout-drawer-box"] == told


def test_an_open_box_that_is_meant() -> None:
    """One with a shelf, one that says it has none, and a noted opening are not asked about."""
    bare = place("opening")
    assert asked(replace(bare, shelves=(ShelfSpec(at=300.0),))) == {}
    assert asked(replace(bare, no_shelf=True)) == {}
    assert asked(place("opening", leaflet=True)) == {}
    assert asked(place("panel", leaflet=True)) == {}


@pytest.mark.parametrize(
    ("height", "width", "leaflet", "told"),
    [
        (736.6, 609.6, False, True), (300.0, 609.6, False, True), (299.0, 609.6, False, False),
        (736.6, 609.6, True, False), (736.6, 380.0, False, False),
    ],
)  # fmt: skip
def test_an_ovens_opening_wants_its_sheet(
    height: float, width: float, leaflet: bool, told: bool
) -> None:
    """Until `leaflet = "noted"` stands at it."""
    opening = FrontSpec(
        id="T1-1", kind="opening", height=height, leaflet=NOTED if leaflet else None
    )
    spec = box(opening, FrontSpec(id="T1-2", kind="drawer"), name="T1", kind="tall",
               width=width, height=2100.0)  # fmt: skip
    assert asked(spec) == ({"opening-not-noted": "T1-1"} if told else {})


@pytest.mark.parametrize(
    ("kind", "height", "told"),
    [("wall", 774.7, True), ("tall", 2100.0, True), ("wall", 499.0, False), ("base", 774.7, False)],
)
def test_a_cupboard_without_a_shelf(kind: str, height: float, told: bool) -> None:
    """Its pins are bored before it is together; a low one over a fridge wants none."""
    spec = box(FrontSpec(id="B1-1", kind="pair"), kind=kind, width=800.0, height=height)  # type: ignore[arg-type]
    assert asked(spec) == ({"no-shelf": "B1"} if told else {})
    for settled in (
        replace(spec, no_shelf=True),
        replace(spec, shelves=(ShelfSpec(at=200.0),)),
        replace(spec, rollouts=(RolloutSpec(at=100.0, height=90.0),)),
        replace(spec, read=BoxRead(inferred=True)),
    ):
        assert asked(settled) == {}
    hole = HandHole(x=40, y=60, diameter=3, depth=12, face="back", purpose="arm")
    assert asked(box(FrontSpec(id="B1-1", kind="lift", holes=(hole,)), kind="wall")) == {}


def test_no_shelf_is_said_in_the_job_file(tmp_path: Path) -> None:
    """`shelf = []`: a box without fronts then is no open shelf either."""
    text = (
        'schema = 1\nunits = "mm"\n[[box]]\nid = "W1"\nkind = "wall"\nwidth = 600\n'
        "height = 720\ndepth = 320\n%s\n"
    )
    path = tmp_path / "job.toml"
    for line, shelves in (("", 1), ("shelf = []", 0)):
        path.write_text(text % line, encoding="utf-8")
        (read,) = read_job(path).boxes
        assert len(read.shelves) == shelves
    path.write_text(text % "shelf = []\n[[box.front]]\nkind = 'pair'", encoding="utf-8")
    assert "no-shelf" not in codes(lay_out(read_job(path)))
