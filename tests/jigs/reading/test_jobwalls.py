"""The walls of a job file: what stands at the ends of their runs, and every fault in it."""

from pathlib import Path

import pytest

from jigs.given.wallspec import Appliance, WallEnd
from tests.jigs.jobtext import JOB, faults_of, line_of, read

SOUTH = """
[[box]]
id = "C1"
wall = "south"
kind = "base"
width = "18"
height = "30 1/2"
depth = "23"
above_floor = "4"
"""


def wall(body: str) -> str:
    """Write the job with a wall of this body, and a box on another wall."""
    south = "" if 'name = "south"' in body else '[[wall]]\nname = "south"\n'
    return f'{JOB}{SOUTH}\n[[wall]]\nname = "north"\n{body}\n{south}'


def test_ends_are_read(tmp_path: Path) -> None:
    """Lengths are read as everywhere; what is not said stays open."""
    text = wall('left = "wall"\nleft_filler = "1 5/8"\nright = "corner"\nright_meets = "south"')
    north, _ = read(tmp_path, text).walls
    assert north.name == "north"
    assert north.end("left") == WallEnd(stands="wall", filler=1.625 * 25.4)
    assert north.end("right") == WallEnd(stands="corner", meets="south")


def test_the_room_is_read(tmp_path: Path) -> None:
    """Length, ceiling, counter and floor in the job's unit; appliances in their order."""
    text = wall(
        'length = "120"\nceiling = "96"\ncounter = "36"\ncounter_thickness = "1 1/2"\n'
        'floor_high = "1/4"\n[[wall.appliance]]\nid = "r1"\nname = "range"\nwidth = "30"\n'
        'height = "36"\nafter = "b1"\n[[wall.appliance]]\nid = "H1"\nwidth = "30"\n'
        'height = "15"\nabove_floor = "54"\nx = "0"'
    )
    north, _ = read(tmp_path, text).walls
    sizes = (north.length, north.ceiling, north.floor_high, north.underside)
    assert sizes == pytest.approx((120 * 25.4, 96 * 25.4, 0.25 * 25.4, (36 - 1.5) * 25.4))
    assert north.appliances == (
        Appliance(id="R1", name="range", width=30 * 25.4, height=36 * 25.4, after="B1"),
        Appliance(id="H1", width=30 * 25.4, height=15 * 25.4, above_floor=54 * 25.4, x=0.0),
    )


SIZES = 'width = "30"\nheight = "36"'


@pytest.mark.parametrize(
    ("body", "place", "what"),
    [
        ('length = "0"', "wall[1].length", "'0' given"),
        ('counter_thickness = "1"', "wall[1].counter_thickness", "stands without counter"),
        ('counter = "1"\ncounter_thickness = "1"', "wall[1].counter_thickness", "as thick as"),
        ('floor_high = "-1"', "wall[1].floor_high", "'-1' given"),
        (f'[[wall.appliance]]\n{SIZES}\nx = "0"', "wall[1].appliance[1]", "id is missing"),
        (f'[[wall.appliance]]\nid = ""\n{SIZES}\nx = "0"', "wall[1].appliance[1].id", "not an ID"),
        (f'[[wall.appliance]]\nid = "R 1"\n{SIZES}\nx = "0"', "wall[1].appliance[1].id", "A-Z"),
        (
            f'[[wall.appliance]]\nid = "C1"\n{SIZES}\nx = "0"',
            "wall[1].appliance[1].id",
            "taken already",
        ),
        (f'[[wall.appliance]]\nid = "R1"\n{SIZES}', "wall[1].appliance[1].id", "neither x nor"),
        (
            f'[[wall.appliance]]\nid = "R1"\n{SIZES}\nx = "0"\nafter = "B1"',
            "wall[1].appliance[1].after",
            "stands beside x",
        ),
        (
            f'[[wall.appliance]]\nid = "R1"\n{SIZES}\nafter = "C1"',
            "wall[1].appliance[1].after",
            "no box of this wall",
        ),
        (
            f'[[wall.appliance]]\nid = "R1"\n{SIZES}\nx = "0"\nwdth = "3"',
            "wall[1].appliance[1].wdth",
            "did you mean 'width'?",
        ),
    ],
)
def test_faults_of_the_room(tmp_path: Path, body: str, place: str, what: str) -> None:
    """Each stands at its line and says what is allowed."""
    [fault] = faults_of(tmp_path, wall(body))
    assert f"{place}: " in fault
    assert what in fault


def test_no_table_no_walls(tmp_path: Path) -> None:
    """A job may leave its walls open."""
    assert read(tmp_path, JOB).walls == ()


@pytest.mark.parametrize(
    ("body", "place", "what"),
    [
        ('lft = "wall"', "wall[1].lft", "did you mean 'left'?"),
        ('left = "wal"', "wall[1].left", "did you mean 'wall'?"),
        ('left_filler = "1"', "wall[1].left_filler", "stands without left; say what stands there"),
        ('left_meets = "south"', "wall[1].left_meets", "stands without left"),
        ('right = "open"\nright_filler = "1"', "wall[1].right_filler", "where nothing stands"),
        ('left = "wall"\nleft_meets = "south"', "wall[1].left_meets", "alone"),
        ('left = "corner"', "wall[1].left", "left_meets, the other wall, or left_reach"),
        ('left = "corner"\nleft_meets = "suoth"', "wall[1].left_meets", "did you mean 'south'?"),
        ('left = "corner"\nleft_meets = "north"', "wall[1].left_meets", "the wall itself"),
        ('left = "wall"\nleft_filler = "-1"', "wall[1].left_filler", "'-1' given"),
        ('left = "wall"\n[[wall]]\nname = "north"', "wall[2].name", "write each wall once"),
        ('[[wall]]\nname = "soth"', "wall[2].name", "did you mean 'south'?"),
        ('[[wall]]\nleft = "open"', "wall[2]", "name is missing"),
        (
            'left = "corner"\nleft_meets = "south"\n[[wall]]\nname = "south"\nright = "panel"',
            "wall[1].left_meets",
            "says right = \"panel\"",
        ),
    ],
)  # fmt: skip
def test_faults(tmp_path: Path, body: str, place: str, what: str) -> None:
    """Each fault stands at its line and says what is allowed."""
    text = wall(body)
    [fault] = faults_of(tmp_path, text)
    assert f"{place}: " in fault
    assert what in fault
    assert int(fault.split(":")[1]) >= line_of(text, "[[wall]]")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("[material]", 'construction = "face-frame"\n[material]', "construction"),
        ("[material]", "face_frame = true\n[material]", "face_frame"),
        ('front_kind = "mdf"', 'front_kind = "mdf"\nface_frame = "3/4"', "material.face_frame"),
        ('kind = "base"', 'kind = "face-frame"', "box[1].kind"),
        ('kind = "base"', 'kind = "base"\nconstruction = "face frame"', "box[1].construction"),
        ('kind = "base"', 'kind = "base"\nface_frame = "1 1/2"', "box[1].face_frame"),
        ('kind = "base"', 'kind = "base"\noverlay = "partial"', "box[1].overlay"),
        ('hinged = "left"', 'hinged = "left"\noverlay = "Partial"', "box[1].front[2].overlay"),
    ],
)
def test_face_frames_are_refused_in_plain_words(
    tmp_path: Path, old: str, new: str, place: str
) -> None:
    """Their plates and slides need other numbers: said once, at the line."""
    [fault] = faults_of(tmp_path, JOB.replace(old, new, 1))
    assert f"{place}: face-frame boxes are not served" in fault


def test_frameless_needs_no_saying(tmp_path: Path) -> None:
    """Who says so is told that it is understood."""
    text = JOB.replace("[material]", 'construction = "frameless"\n[material]')
    [fault] = faults_of(tmp_path, text)
    assert "all boxes are frameless here" in fault


@pytest.mark.parametrize(
    ("new", "what"),
    [
        ('pull_over = "B 1"', "not an ID"),
        ("pull_level = 3", "not a text"),
        ("restrictor = 1", "neither true nor false"),
    ],
)
def test_keys_of_a_front(tmp_path: Path, new: str, what: str) -> None:
    """The keys that line pulls up are IDs, a restrictor is there or not."""
    [fault] = faults_of(tmp_path, JOB.replace('hinged = "left"', f'hinged = "left"\n{new}'))
    assert what in fault


def test_a_drawer_has_no_restrictor(tmp_path: Path) -> None:
    """Only doors open by an angle."""
    [fault] = faults_of(tmp_path, JOB.replace('height = "6"', 'height = "6"\nrestrictor = true'))
    assert "is for doors and pairs alone; this is a drawer" in fault


def test_a_wall_may_have_an_id(tmp_path: Path) -> None:
    """Its pieces are named by it; without one the tool makes it from the name."""
    north, _ = read(tmp_path, wall('id = "back-1"')).walls
    assert north.id == "BACK-1"
    north, _ = read(tmp_path, wall("")).walls
    assert north.id == ""


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("NORTHERN", "at most 6 characters"),
        ("βορρά", "'βορρά' given"),
        ("", "A-Z, 0-9 and -"),
        ("-A", "A-Z, 0-9 and - between"),
        ("C1", "taken already ('C1' given)"),
    ],
)
def test_an_id_that_no_wall_may_have(tmp_path: Path, name: str, what: str) -> None:
    """Another alphabet, too long a one, a hyphen at its end, or what a box is called."""
    text = wall(f'id = "{name}"')
    [fault] = faults_of(tmp_path, text)
    assert "wall[1].id: " in fault
    assert what in fault


def test_a_box_on_a_wall_that_no_wall_names(tmp_path: Path) -> None:
    """Where walls are stated a slip in a box's wall is refused, with the wall that is nearest; a
    box may leave its wall out, and a job without [[wall]] may call them as it likes."""
    slip = wall('left = "wall"').replace('wall = "north"', 'wall = "nroth"')
    [fault] = faults_of(tmp_path, slip)
    assert "box[1].wall: " in fault
    assert "no [[wall]] has that name ('nroth' given); did you mean 'north'?" in fault
    away = SOUTH.replace('wall = "south"\n', "").replace("C1", "C2")
    text = wall('left = "wall"').replace("[[wall]]", f"{away}[[wall]]", 1)
    assert read(tmp_path, text).boxes[-1].wall == ""
    free = f"{JOB}{SOUTH}".replace('wall = "north"', 'wall = "nroth"')
    assert read(tmp_path, free).boxes[0].wall == "nroth"


def test_a_slip_in_a_boxs_wall_is_told_at_the_box_alone(tmp_path: Path) -> None:
    """The corner that names the wall as it is called is right, and so is the wall."""
    text = wall('right = "corner"\nright_meets = "south"')
    slipped = text.replace('wall = "south"', 'wall = "suoth"')
    (fault,) = faults_of(tmp_path, slipped)
    assert "no [[wall]] has that name ('suoth' given); did you mean 'south'?" in fault


@pytest.mark.parametrize("typed", [r"north\twindow", "north  window", "north\u00a0window "])
def test_blanks_in_a_name_are_one_space(tmp_path: Path, typed: str) -> None:
    """A tab, two spaces or one that does not break look alike."""
    text = wall("").replace('name = "north"', 'name = "north window"')
    read_in = text.replace('wall = "north"', f'wall = "{typed}"')
    assert typed in read_in
    assert read(tmp_path, read_in).boxes[0].wall == "north window"
