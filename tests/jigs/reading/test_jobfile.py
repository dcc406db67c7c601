"""The job file: what is read, and what stands in."""

from pathlib import Path

import pytest

from jigs.given.stated import NOTED
from jigs.reading.jobfile import read_job_file
from templates.words.assumedwords import assumed_lines
from tests.jigs.jobtext import JOB, SMALL, read

DRAWERS = SMALL.replace('"door"', '"drawer"').replace('hinged = "left"\n', "")
"""The small job with a drawer in place of its door."""


def test_the_golden_job(tmp_path: Path) -> None:
    """A full job file is read in its own units, and nothing of it is assumed."""
    job = read(tmp_path, JOB)
    assert (job.name, job.units, job.increment) == ("Ferry-house galley", "in", 25.4 / 32)
    assert (job.tolerance, job.delivery) == (1.6, None)
    assert (job.material.side, job.material.front, job.material.band) == (18.3, 19.05, 0.6)
    assert (job.reveal.side, job.reveal.between) == (25.4 / 16, 25.4 / 8)
    assert (job.grid.hinges, job.grid.slides, job.grid.start) == (True, False, None)
    assert job.hinges["mine"].plates == (0.0, 3.0)
    assert job.slides["runner"].confirmed["fixing_height"] == "measured"
    assert (job.pulls["bar"].centers, job.pulls["bar"].door_inset) == (160.0, 50.8)
    (box,) = job.boxes
    assert (box.width, box.height, box.depth) == (457.2, 774.7, 584.2)
    assert [(f.id, f.kind, f.height) for f in box.fronts] == [
        ("B1-1", "drawer", 152.4),
        ("B1-2", "door", None),
    ]
    assert box.fronts[1].hinged == "left"
    assert (job.assumed, assumed_lines(job)) == (frozenset(), ())


@pytest.mark.parametrize(
    ("reveal", "base", "wall", "assumed"),
    [
        ("top = 2", 2.0, 2.0, set()),
        ("under_counter = 4", 4.0, 1.6, {"reveal.top"}),
        ("top = 2\nunder_counter = 4", 4.0, 2.0, set()),
        ("side = 2", 3.0, 1.6, {"reveal.top", "reveal.under_counter"}),
    ],
)
def test_the_top_reveal_under_a_counter(
    tmp_path: Path, reveal: str, base: float, wall: float, assumed: set[str]
) -> None:
    """It stands apart where it is said; of `top` alone every box has it."""
    hung = '[[box]]\nid = "W9"\nkind = "wall"\nwidth = 400\nheight = 700\ndepth = 300\n'
    front = '[[box.front]]\nkind = "door"\nhinged = "left"\n'
    job = read(tmp_path, f"{SMALL}\n{hung}{front}[reveal]\n{reveal}\n")
    assert (job.reveal.top_of("base"), job.reveal.top_of("wall")) == (base, wall)
    assert job.assumed & {"reveal.top", "reveal.under_counter"} == assumed


def test_defaults_are_stamped(tmp_path: Path) -> None:
    """Each default that stands in is named by its key and in words."""
    job = read(tmp_path, SMALL)
    assert (job.name, job.units) == ("job", "mm")
    assert (job.material.side, job.material.front, job.material.band) == (18.0, 19.0, 0.0)
    assert (job.reveal.side, job.reveal.top_of("base"), job.reveal.between) == (1.6, 3.0, 3.2)
    assert "top reveal under a counter 3.0 mm" in assumed_lines(job)
    assert job.boxes[0].above_floor == 100.0
    assert {
        *(f"material.{k}" for k in ("side", "front", "back", "band")),
        *(f"reveal.{k}" for k in ("side", "under_counter", "bottom", "between")),
        "box.B1.above_floor",
        "pull.bar-160.door_inset",
        "use.hinge",
    } <= job.assumed
    assert "box.B1.depth" not in job.assumed
    # No drawer: nothing is made of a slide, a drawer side, or a pull of drawers.
    idle = {"material.drawer_side", "use.slide", "use.drawer_pull"}
    assert not idle & job.assumed
    said = ("slide", "drawer side", "pull of drawers")
    assert not [words for words in assumed_lines(job) if words.startswith(said)]
    drawers = read(tmp_path, DRAWERS)
    assert idle <= drawers.assumed
    assert not {"use.hinge", "use.door_pull"} & drawers.assumed
    assert "side thickness 18.0 mm" in assumed_lines(job)
    assert "box B1: bottom 100.0 mm above the floor" in assumed_lines(job)


def test_sizes_that_stand_in_of_a_frame_are_stamped(tmp_path: Path) -> None:
    """Rail as the stile, groove 11, panel 6, pane 4 (common practice); fronts alike together."""
    framed = SMALL.replace('"door"', '"door"\nstile = 57')
    job = read(tmp_path, framed)
    said = "five-piece front B1-1: rail width 57.0 mm, groove depth 11.0 mm, panel thickness 6.0 mm"
    assert said in assumed_lines(job)
    glass = framed.replace("stile = 57", "stile = 57\nrail = 70\ngroove = 9\nglass = true")
    assert "five-piece front B1-1: glass thickness 4.0 mm" in assumed_lines(read(tmp_path, glass))
    stated = framed.replace("stile = 57", "stile = 57\nrail = 70\ngroove = 9\npanel = 7")
    for text in (stated, SMALL):
        assert not [words for words in assumed_lines(read(tmp_path, text)) if "five-piece" in words]


def test_default_hardware(tmp_path: Path) -> None:
    """A job that names no hardware gets generic records, unconfirmed, and a slide that fits."""
    job = read(tmp_path, SMALL)
    assert (job.use.hinge, job.use.drawer_pull, job.use.door_pull) == (
        "cup35-full",
        "bar-160",
        "bar-160",
    )
    # Inside depth 584.2 - 19 - 6 = 559.2; 550 + 16 does not go in, 500 + 16 does.
    assert job.use.slide == "undermount-500"
    assert job.hinges["cup35-full"].confirmed == {}


def test_default_slides_follow_the_depth_of_the_box(tmp_path: Path) -> None:
    """Drawers of a box of another depth name their own slide."""
    second = DRAWERS.split("[[box]]")[1].replace('"B1"', '"B2"').replace("584.2", "400")
    first = DRAWERS + '[[box.front]]\nkind = "drawer"\n'
    job = read(tmp_path, first + "[[box]]" + second)
    assert job.use.slide == "undermount-500"
    assert [front.slide for front in job.boxes[0].fronts] == [None, None]
    # 400 - 19 - 6 = 375; 350 + 16 = 366.
    assert [front.slide for front in job.boxes[1].fronts] == ["undermount-350"]
    assert "undermount-350" in job.slides


@pytest.mark.parametrize(
    ("kind", "above_floor"),
    [("base", 100), ("drawer", 100), ("sink", 100), ("tall", 100), ("wall", 1370), ("open", 100)],
)
def test_boxes_stand_above_the_floor(tmp_path: Path, kind: str, above_floor: float) -> None:
    """The default height above the floor goes by the kind of box (common practice, no source)."""
    job = read(tmp_path, SMALL.replace('"base"', f'"{kind}"'))
    assert job.boxes[0].above_floor == above_floor


def test_an_open_box_needs_no_depth(tmp_path: Path) -> None:
    """The depth of an open box may be left out, and is then assumed."""
    job = read(tmp_path, SMALL.replace('"base"', '"open"').replace("depth = 584.2\n", ""))
    assert "box.B1.depth" in job.assumed


def test_units_given_beside_the_file_only_show(tmp_path: Path) -> None:
    """Stated units say how numbers are read; other units given beside them only show."""
    path = tmp_path / "job.toml"
    path.write_text(JOB)
    job = read_job_file(path, "mm")
    assert (job.units, job.shown, job.boxes[0].width) == ("in", "mm", 18 * 25.4)
    path.write_text(SMALL.replace("457.2", "18").replace("774.7", "30.5").replace("584.2", "23"))
    assert read_job_file(path, "in").boxes[0].width == 18 * 25.4


def test_a_front_takes_all_its_keys(tmp_path: Path) -> None:
    """Every key of a front arrives in its value."""
    keys = """\
id = "hall-1"
count = 2
width = 400
modules = 5
thickness = 22
stile = 57
rail = 60
groove = 9
panel = 7
glass = true
edge_radius = 2
profile = "finger-bevel"
measured_width = [400.5, 401]
measured_height = [156, 157]
diagonals = [430, 430.4]
bored_tab = 4
tab = 4.5
hinge = "cup35-half"
slide = "sidemount-300"
pull = "none"
hinges_at = [600, 100]
leaflet = "noted"
bored = true
drawer_width = 390
drawer_height = 120
finish = "oak"
note = "left of the sink"
[[box.front.hole]]
x = 10
y = 0
diameter = 8
depth = "through"
face = "front"
purpose = "spring"
[[box.front.hole]]
x = 20
y = 30
diameter = 8
depth = 12
face = "back"
"""
    first, second = read(tmp_path, SMALL + keys).boxes[0].fronts
    assert (first.id, second.id) == ("HALL-1-1", "HALL-1-2")
    assert (first.width, first.portion.modules, first.height, first.thickness) == (400, 5, None, 22)
    assert (first.five_piece.stile, first.boring.tab, first.hung.hinge, first.slide) == (
        57,
        4.5,
        "cup35-half",
        "sidemount-300",
    )
    assert (
        first.five_piece.rail,
        first.five_piece.groove,
        first.five_piece.panel,
        first.five_piece.glass,
    ) == (60, 9, 7, True)
    assert (first.edges.edge_radius, first.edges.profile) == (2, "finger-bevel")
    assert first.measured.width == (400.5, 401)
    assert first.measured.diagonals == (430, 430.4)
    assert (first.measured.height, first.boring.bored_tab) == ((156, 157), 4)
    assert (first.opened_by.pull, first.hung.hinges_at, first.leaflet, first.boring.bored) == (
        "none",
        (100, 600),
        NOTED,
        True,
    )
    assert (first.drawer_box.drawer_width, first.drawer_box.drawer_height) == (390, 120)
    assert (first.words.finish, first.words.note) == ("oak", "left of the sink")
    through, blind = first.holes
    assert (through.x, through.y, through.depth, through.purpose) == (10, 0, None, "spring")
    assert (blind.depth, blind.face, blind.purpose) == (12, "back", "manual")


def test_overlay_at_solves_the_constant(tmp_path: Path) -> None:
    """One cell of the leaflet's table stands for the constant: C0 = OV + Hp - K."""
    cell = 'overlay_at = {tab = "5 mm", plate = "0 mm", overlay = "20 mm"}'
    job = read(tmp_path, JOB.replace('constant = "15 mm"', cell))
    assert job.hinges["mine"].constant == 20 + 0 - 5
    assert job.hinges["mine"].standing["constant"] == "user"


def test_a_constant_may_be_negative(tmp_path: Path) -> None:
    """An inset hinge has a constant below 0."""
    job = read(tmp_path, JOB.replace('constant = "15 mm"', 'constant = "-4 mm"'))
    assert job.hinges["mine"].constant == -4


def test_records_may_be_like_each_other(tmp_path: Path) -> None:
    """A chain of records ends at a generic one, in whatever order they stand."""
    chain = '[hinge.b]\nlike = "a"\ntab = 4\n[hinge.a]\nlike = "cup35-full"\nconstant = 12\n'
    job = read(tmp_path, SMALL + chain)
    b = job.hinges["b"]
    assert (b.like, b.constant, b.tab) == ("a", 12, 4)
    assert b.standing["constant"] == "user"


def test_a_pull_without_centers_is_a_knob(tmp_path: Path) -> None:
    """A pull's record without hole centres is a knob, and its feet are a knob's."""
    job = read(tmp_path, SMALL + "[pull.k]\ndoor_inset = 40\n[pull.b]\ncenters = 96\n")
    assert (job.pulls["k"].centers, job.pulls["k"].like) == (None, "knob")
    assert (job.pulls["b"].centers, job.pulls["b"].foot) == (96, 12)
    assert "pull.k.door_inset" not in job.assumed
    assert "pull.k.door_corner" in job.assumed


def test_a_byte_order_mark_and_windows_lines_are_read(tmp_path: Path) -> None:
    """A file saved by a plain editor, with its mark and its line ends, is read."""
    path = tmp_path / "job.toml"
    path.write_bytes(b"\xef\xbb\xbf" + SMALL.replace("\n", "\r\n").encode())
    assert read_job_file(path).boxes[0].id == "B1"


def test_decimals_are_exact(tmp_path: Path) -> None:
    """A bare decimal is taken as it is written."""
    assert read(tmp_path, SMALL.replace("457.2", "396.9")).boxes[0].width == 396.9


def test_a_box_says_how_it_stands(tmp_path: Path) -> None:
    """Assembled, its band to come, on legs; then it stands on the floor itself."""
    keys = 'depth = 584.2\nassembled = true\nband = "later"\nlegs = 101.6'
    job = read(tmp_path, SMALL.replace("depth = 584.2", keys))
    box = job.boxes[0]
    assert (box.assembled, box.band, box.legs, box.above_floor) == (True, "later", 101.6, 0.0)
    assert "box.B1.above_floor" not in job.assumed


def test_a_pull_that_no_front_has_is_not_told(tmp_path: Path) -> None:
    """A job of doors alone says nothing of the pull of drawers, and one of drawers of doors'."""
    own = "[pull.mine]\ncenters = 96\n[use]\n"
    for text, key, other in (
        (SMALL, "door_pull", "drawer_pull"), (DRAWERS, "drawer_pull", "door_pull"),
    ):  # fmt: skip
        said = assumed_lines(read(tmp_path, f'{text}{own}{key} = "mine"\n'))
        assert not [words for words in said if "'bar-160'" in words]
        said = assumed_lines(read(tmp_path, f'{text}{own}{other} = "mine"\n'))
        assert [words for words in said if "'bar-160'" in words]
