"""The job file: every fault at its line, all of them at once, and nothing but faults."""

from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.ground.errors import ReadingError
from jigs.reading.jobfile import read_job_file
from tests.jigs.jobtext import JOB, SMALL, faults_of, line_of, read

# Each row: text of the full job to replace, with what, where the fault stands, what it says.
FAULTS = [
    ("schema = 1", "schema = 2", "schema: ", "(2 given); 1 is allowed"),
    ("schema = 1", "schema = true", "schema: ", "(true given)"),
    ('units = "in"', 'units = "cm"', "units: ", "allowed: mm, in"),
    ('front_kind = "mdf"', 'front_kind = "MFD"', "material.front_kind: ", "did you mean 'mdf'?"),
    ('front_kind = "mdf"', 'side_kind = "osb"', "material.side_kind: ", "allowed: plywood, mdf"),
    ('side = "18.3 mm"', "side = true", "material.side: ", "(true given)"),
    ('side = "18.3 mm"', 'side = "0 mm"', "material.side: ", "'0 mm' given"),
    ('side = "18.3 mm"', "side = [18]", "material.side: ", "not a length"),
    ('side = "18.3 mm"', "side = 1979-05-27", "material.side: ", "not a length"),
    ('side = "18.3 mm"', "side = nan", "material.side: ", "not a finite number"),
    ('band = "0.6 mm"', 'band = "-0.6 mm"', "material.band: ", "'-0.6 mm' given"),
    ("front_density = 750", 'front_density = "750"', "material.front_density: ", "'750' given"),
    ("front_density = 750", "front_density = 0", "material.front_density: ", "(0 given)"),
    ('side = "1/16"', 'syde = "1/16"', "reveal.syde: ", "did you mean 'side'?"),
    ("[reveal]", "[reveals]", "reveals: ", "did you mean 'reveal'?"),
    ("hinges = true", 'hinges = "yes"', "grid.hinges: ", "neither true nor false"),
    ('start = "balanced"', 'start = "even"', "grid.start: ", "'even' given"),
    ('increment = "1/32"', 'increment = "1/0"', "fronts.increment: ", "denominator"),
    ('hinge = "mine"', 'hinge = "mien"', "use.hinge: ", "did you mean 'mine'?"),
    ('slide = "runner"', 'slide = "undermount-534"', "use.slide: ", "'undermount-533'?"),
    ('like = "cup35-full"', 'like = "cup35-ful"', "hinge.mine.like: ", "'cup35-full'?"),
    ('like = "cup35-full"', 'like = "mine"', "hinge.mine.like: ", "circle (mine -> mine given)"),
    ('like = "undermount-533"\n', "\n", "slide.runner: ", "like is missing"),
    ('constant = "15 mm"', 'konstant = "15 mm"', "hinge.mine.konstant: ", "'constant'?"),
    ('plates = ["0 mm", "3 mm"]', "plates = []", "hinge.mine.plates: ", "list of lengths"),
    ('plates = ["0 mm", "3 mm"]', 'plates = ["0", "x"]', "hinge.mine.plates[2]: ", "'x' given"),
    ('confirmed = "measured"', 'confirmed = "yes"', "slide.runner.confirmed: ", "leaflet, meas"),
    ('drawer = "center"', 'drawer = "middle"', "pull.bar.drawer: ", "upper-third"),
    ('screws = "front"', 'screws = "back"', "pull.bar.screws: ", "allowed: front, through"),
    ("[hinge.mine]", "[hinge.cup35-half]", "hinge.cup35-half: ", "the name is taken"),
    ('id = "B1"', 'id = "B 1"', "box[1].id: ", "not an ID"),
    ('id = "B1"\n', "\n", "box[1]: ", "id is missing"),
    ('kind = "base"', 'kind = "basement"', "box[1].kind: ", "did you mean 'base'?"),
    ('width = "18"', "width = 0", "box[1].width: ", "(0 given)"),
    ('width = "18"', "width = -18", "box[1].width: ", "(-18 given)"),
    ('width = "18"', 'width = "11 m"', "box[1].width: ", "10 m"),
    ('width = "18"', "width = 1e400", "box[1].width: ", "10 m"),
    ('width = "18"\n', "\n", "box[1]: ", "width is missing"),
    ('depth = "23"\n', "\n", "box[1]: ", "depth is missing"),
    ('kind = "drawer"', 'kind = "drawr"', "box[1].front[1].kind: ", "did you mean 'drawer'?"),
    ('hinged = "left"', 'hinged = "middle"', "box[1].front[2].hinged: ", "allowed: left, right"),
    (
        'height = "6"',
        'hinged = "left"',
        "box[1].front[1].hinged: ",
        "is for doors; this is a drawer ('left' given)",
    ),
    ('hinged = "left"', 'hinge_side = "left"', "box[1].front[2].hinge_side: ", "unknown key"),
    ('hinged = "left"', 'leaflet = "lost"', "box[1].front[2].leaflet: ", "nor a table ('lost'"),
    ('hinged = "left"', "count = 0", "box[1].front[2].count: ", "(0 given)"),
    ('hinged = "left"', "modules = 2.5", "box[1].front[2].modules: ", "(2.5 given)"),
    ('hinged = "left"', "share = -1", "box[1].front[2].share: ", "(-1 given)"),
    ('hinged = "left"', 'bored = "yes"', "box[1].front[2].bored: ", "neither true nor false"),
    ('hinged = "left"', 'pull = "rod"', "box[1].front[2].pull: ", "unknown pull"),
    ('hinged = "left"', 'id = "B1-1"', "box[1].front[2].id: ", "duplicate ID ('B1-1'"),
    ('hinged = "left"', 'id = "B1-1-BOX"', "box[1].front[2].id: ", "duplicate ID ('B1-1-BOX'"),
    ('hinged = "left"', 'id = "B1-SIDE-L"', "box[1].front[2].id: ", "a part of the box"),
    ('hinged = "left"', "hinges_at = [4, 4]", "box[1].front[2].hinges_at: ", "twice"),
    ('hinged = "left"', "hole = 3", "box[1].front[2].hole: ", "[[box.front.hole]]"),
]


@pytest.mark.parametrize(("old", "new", "where", "what"), FAULTS)
def test_faults(tmp_path: Path, old: str, new: str, where: str, what: str) -> None:
    """Each fault is reported once, at its line and its path, with the value given."""
    assert JOB.count(old) >= 1
    text = JOB.replace(old, new, 1)
    # A key that is missing stands at the line of its table.
    missing = not new.strip()
    header = {"slide.runner: ": "[slide.runner]", "box[1]: ": "[[box]]"}.get(where, "")
    line = line_of(text, header) if missing else line_of(JOB, old)
    faults = [f for f in faults_of(tmp_path, text) if f.split(": ", 1)[1].startswith(where)]
    assert len(faults) == 1, faults_of(tmp_path, text)
    assert faults[0].startswith(f"job.toml:{line}: {where}")
    assert what in faults[0]


def test_height_modules_and_share_exclude_each_other(tmp_path: Path) -> None:
    """A front's height is given in one way only."""
    (fault,) = faults_of(tmp_path, SMALL + "height = 300\nshare = 2\n")
    assert fault.startswith("job.toml:12: box[1].front[1].share: stands beside height")


def test_duplicates_after_expansion(tmp_path: Path) -> None:
    """Counts and leaves are expanded before IDs are compared."""
    text = SMALL.replace('hinged = "left"', "count = 2") + (
        '[[box.front]]\nkind = "door"\nid = "B1-1-2"\n'
        '[[box.front]]\nkind = "pair"\n'
        '[[box.front]]\nkind = "drawer"\nid = "b1-3r"\n'
    )
    first, second = faults_of(tmp_path, text)
    assert first.startswith("job.toml:13: box[1].front[2].id: duplicate ID ('B1-1-2'")
    assert second.startswith("job.toml:18: box[1].front[4].id: duplicate ID ('B1-3R'")


def test_duplicate_boxes(tmp_path: Path) -> None:
    """Two boxes of one ID are a fault at the second."""
    text = SMALL + SMALL.split("schema = 1\n")[1].replace('"B1"', '"b1"')
    assert faults_of(tmp_path, text)[0].startswith("job.toml:12: box[2].id: duplicate ID ('B1'")


def test_a_front_has_no_boxs_id(tmp_path: Path) -> None:
    """A default name, or a given one, that is a box's: an ID names one thing."""
    box = SMALL.split("schema = 1\n")[1]
    (fault,) = faults_of(tmp_path, SMALL + box.replace('"B1"', '"B1-1"'))
    assert fault.startswith("job.toml:12: box[2].id: duplicate ID ('B1-1', first at job.toml:")
    (fault,) = faults_of(tmp_path, SMALL.replace('hinged = "left"', 'id = "b1"'))
    assert "box[1].front[1].id: duplicate ID ('B1', first at job.toml:" in fault


def test_a_bad_box_id_breeds_no_other_fault(tmp_path: Path) -> None:
    """Fronts of boxes that have no name cannot clash by their names."""
    box = SMALL.split("schema = 1\n")[1]
    faults = faults_of(tmp_path, SMALL.replace('"B1"', '"B 1"') + box.replace('"B1"', '"B 2"'))
    assert len(faults) == 2
    assert all("not an ID" in fault for fault in faults)
    (fault,) = faults_of(tmp_path, SMALL + box)
    assert "box[2].id: duplicate ID ('B1'" in fault


def test_a_record_is_never_offered_itself(tmp_path: Path) -> None:
    """`like` names another record: the nearest one there is."""
    text = SMALL + '[slide.undermount-530]\nlike = "undermount-530x"\n'
    (fault,) = faults_of(tmp_path, text)
    assert "did you mean 'undermount-5" in fault
    assert "'undermount-530'?" not in fault


def test_a_name_with_an_umlaut_wants_quotes(tmp_path: Path) -> None:
    """The corrected line is shown, in a heading and before an equals sign."""
    (fault,) = faults_of(tmp_path, SMALL + '[hinge.unbestätigt]\nlike = "cup35-full"\n')
    assert fault.startswith("job.toml:11: not TOML ([hinge.unbestätigt] given)")
    assert fault.endswith('stands between quotes, write: [hinge."unbestätigt"]')
    (fault,) = faults_of(tmp_path, SMALL + 'höhe = "3"\n')
    assert fault.endswith('write: "höhe" = "3"')


def test_a_circle_is_reported_once(tmp_path: Path) -> None:
    """Records that are like each other in a circle are one fault, whoever else is like them."""
    text = SMALL + '[hinge.a]\nlike = "b"\n[hinge.b]\nlike = "a"\n[hinge.c]\nlike = "a"\n'
    (fault,) = faults_of(tmp_path, text)
    assert fault.startswith("job.toml:12: hinge.a.like: goes round in a circle (a -> b -> a")


def test_both_constant_and_overlay(tmp_path: Path) -> None:
    """The constant is given in one way only; a cell needs its three numbers."""
    text = SMALL + '[hinge.a]\nlike = "cup35-full"\nconstant = 15\noverlay_at = {tab = 5}\n'
    faults = faults_of(tmp_path, text)
    assert faults[0].startswith("job.toml:14: hinge.a.overlay_at: plate is missing")
    assert any("stands beside constant" in fault for fault in faults)


def test_fixing_places(tmp_path: Path) -> None:
    """Fixing places rise, and none lies beyond the slide."""
    text = SMALL + '[slide.a]\nlike = "undermount-300"\nfixing_at = [165, 37]\ncarry_at = [400]\n'
    first, second = faults_of(tmp_path, text)
    assert first.startswith("job.toml:13: slide.a.fixing_at: places do not rise")
    assert second.startswith("job.toml:14: slide.a.carry_at: lies beyond the slide (400.0 mm")


def test_all_faults_at_once(tmp_path: Path) -> None:
    """All faults are reported together, in the order of their lines."""
    text = JOB.replace('"18.3 mm"', '"x"').replace('"base"', '"x"').replace('"left"', '"x"')
    lines = [int(fault.split(":")[1]) for fault in faults_of(tmp_path, text)]
    assert len(lines) == 3
    assert lines == sorted(lines)


@pytest.mark.parametrize(
    ("old", "new", "corrected"),
    [
        ('height = "30 1/2"', "height = 30 1/2", 'height = "30 1/2"'),
        ('height = "30 1/2"', "height = 3/4  # tall", 'height = "3/4"  # tall'),
        ('height = "30 1/2"', "height = 774 mm", 'height = "774 mm"'),
        ('height = "30 1/2"', 'height = "30 1/2""', "height = '30 1/2\"'"),
        ('height = "30 1/2"', 'height = 30 1/2"', "height = '30 1/2\"'"),
        ('height = "30 1/2"', "height = 2' 6 1/2\"", 'height = "2 ft 6 1/2 in"'),
        ('tabs = ["5 mm"]', 'tabs = ["1/4""]', "tabs = ['1/4\"']"),
    ],
)
def test_slips_in_lengths_are_corrected(tmp_path: Path, old: str, new: str, corrected: str) -> None:
    """A length without quotes, or with a quote too many, is shown as it should stand."""
    (fault,) = faults_of(tmp_path, JOB.replace(old, new))
    assert fault.startswith(f"job.toml:{line_of(JOB, old)}: not TOML ({new.strip()} given)")
    assert fault.endswith(f"write: {corrected}")
    fixed = read(tmp_path, JOB.replace(old, corrected))
    assert fixed.boxes[0].id == "B1"


@pytest.mark.parametrize("typed", ["B1", "“B1”", "„B1“", "‘B1’", "«B1»", '"B1', "B1 # of oak"])
def test_a_text_without_straight_quotes_is_shown_with_them(tmp_path: Path, typed: str) -> None:
    """Forgotten, or curled by the editor it was typed in; what is written there then reads."""
    (fault,) = faults_of(tmp_path, JOB.replace('id = "B1"', f"id = {typed}"))
    assert 'a text stands between straight quotes, ", write: id = "B1"' in fault
    assert read(tmp_path, JOB.replace('id = "B1"', fault.split("write: ")[1])).boxes[0].id == "B1"


def test_true_is_no_text(tmp_path: Path) -> None:
    """A yes or no in capitals wants no quotes."""
    (fault,) = faults_of(tmp_path, JOB.replace('id = "B1"', 'id = "B1"\nbuilt = True'))
    assert "write: built = true" in fault


def test_all_slips_at_once(tmp_path: Path) -> None:
    """Every slip of a file is reported, not the first alone."""
    text = JOB.replace('"30 1/2"', "30 1/2").replace('"2 1/2"', '"2 1/2""')
    assert len(faults_of(tmp_path, text)) == 2


@pytest.mark.parametrize(
    ("content", "where", "what"),
    [
        (b"", "job.toml: ", "is empty"),
        (b" \n\n", "job.toml: ", "is empty"),
        (b'schema = 1\nname = "\xe9"\n', "job.toml:2: ", "UTF-8"),
        (b"PK\x03\x04\0\0\0", "job.toml: ", "not a text file"),
        (b"schema = 1\n[[box]\n", "job.toml:2: ", "not TOML"),
        (b"schema = 1\nschema = 1\n", "job.toml:2: ", "not TOML"),
        (b"schema = 1\n" + b"a." * 20000 + b"b = 1", "job.toml:2: ", "line too long"),
        (b"a = " + b"[" * 1900, "job.toml:1: ", "nested too deep"),
        (b'name = "' + b"x" * 2_000_001, "job.toml: ", "too large"),
        (b"schema = 1\n", "job.toml:1: ", "without a box or a front"),
        (b'name = "a"\n', "job.toml:1: ", "schema is missing"),
    ],
)
def test_files_that_cannot_be_read(tmp_path: Path, content: bytes, where: str, what: str) -> None:
    """A file that is no job file is a reading fault that says what is the matter."""
    faults = faults_of(tmp_path, content)
    assert any(fault.startswith(where) and what in fault for fault in faults), faults


@pytest.mark.parametrize("depth", [10, 100, 150, 200, 250, 300, 400, 450, 480, 499])
@pytest.mark.parametrize(("opens", "closes"), [("[", "]"), ("{a = ", "}")])
def test_nested_values(tmp_path: Path, depth: int, opens: str, closes: str) -> None:
    """Values nested however deep are a reading fault, never another error."""
    text = SMALL + "bored = " + opens * depth + "1" + (closes * depth)
    assert faults_of(tmp_path, text)[0].startswith("job.toml:11: ")


def test_folders_and_missing_files(tmp_path: Path) -> None:
    """A folder and a file that is not there are reading faults."""
    with pytest.raises(ReadingError, match="is a folder"):
        read_job_file(tmp_path)
    with pytest.raises(ReadingError, match="no such file"):
        read_job_file(tmp_path / "none.toml")
    with pytest.raises(ReadingError, match="cannot be read"):
        read_job_file(tmp_path / ("x" * 300))


def test_inches_without_units_are_refused(tmp_path: Path) -> None:
    """A file without units whose boxes are all under 100 is asked: inches? Or centimetres."""
    text = SMALL.replace("457.2", "18").replace("774.7", "30.5").replace("584.2", "23")
    (fault,) = faults_of(tmp_path, text)
    assert "inches?" in fault
    assert "centimetres?" in fault
    assert "units is missing" in fault
    (fault,) = faults_of(tmp_path, 'units = "mm"\n' + text)
    assert "units: every box is under 100 mm" in fault
    assert 'write units = "in"' in fault


METRIC = """schema = 1
units = "mm"
[[box]]
id = "B1"
kind = "open"
width = 600
height = 762
[[box]]
id = "B2"
kind = "sink"
width = 800
height = 762
depth = 584
[[box.front]]
kind = "drawer"
height = 160
"""


def test_one_number_in_another_unit_is_one_fault(tmp_path: Path) -> None:
    """31.5 wide among boxes in mm is told, with how to write it; so is a front 6 high; a pull-out
    of 76 (3 in) and what states its unit stay."""
    for was, now, told in (
        ("width = 800", "width = 31.5", "31.5 mm given, and 200 to 1600 mm is usual"),
        ("depth = 584", "depth = 23", "23 cm or 23 in? write the unit"),
        ("height = 160", "height = 6", "6 cm or 6 in? write the unit"),
    ):
        (fault,) = faults_of(tmp_path, METRIC.replace(was, now))
        assert told in fault
    text = METRIC.replace("sink", "base")
    assert read(tmp_path, text.replace("800", "76")).boxes[1].width == 76
    assert read(tmp_path, text.replace("800", '"2 in"')).boxes[1].width == 50.8


def test_millimetres_in_a_job_in_inches_are_one_fault(tmp_path: Path) -> None:
    """All boxes over 200 in: the job's unit is wrong, not each size; one box alone is told too."""
    (fault,) = faults_of(tmp_path, METRIC.replace('"mm"', '"in"'))
    assert 'millimetres? write units = "mm"' in fault
    text = METRIC.replace('"mm"', '"in"').replace("600", "24").replace("762", "30")
    text = text.replace("584", "23").replace("160", "6").replace("800", "300")
    (fault,) = faults_of(tmp_path, text)
    assert "300 in is 7620.0 mm, and 200 to 1600 mm is usual; 300 mm? write the unit" in fault


MUTATED = st.lists(
    st.tuples(st.integers(0, len(JOB)), st.integers(0, 12), st.binary(max_size=6)),
    min_size=1,
    max_size=4,
)


@settings(max_examples=120)
@given(MUTATED)
def test_mutated_files_raise_nothing_else(
    tmp_path: Path, changes: list[tuple[int, int, bytes]]
) -> None:
    """A job file cut and pasted at random is read, or is a reading fault."""
    content = JOB.encode()
    for at, cut, put in changes:
        content = content[:at] + put + content[at + cut :]
    path = tmp_path / "job.toml"
    path.write_bytes(content)
    with suppress(ReadingError):
        assert read_job_file(path).boxes


@settings(max_examples=80)
@given(st.data())
def test_wrong_values_raise_nothing_else(tmp_path: Path, data: st.DataObject) -> None:
    """Whatever stands behind a key, the file is read or is a reading fault."""
    lines = JOB.split("\n")
    places = [i for i, line in enumerate(lines) if "=" in line]
    values = st.sampled_from(
        ["true", "0", "-1", "1e999999999", "nan", "inf", '""', "[]", "[[]]", "{}", "{a = 1}",
         "1979-05-27", '"\\u0000"', "0x" + "f" * 400, '"none"', "[true]", '"' + "9" * 70 + '"']
    )  # fmt: skip
    for place in data.draw(st.lists(st.sampled_from(places), min_size=1, max_size=3)):
        lines[place] = f"{lines[place].split('=')[0]}= {data.draw(values)}"
    path = tmp_path / "job.toml"
    path.write_text("\n".join(lines))
    with suppress(ReadingError):
        assert read_job_file(path).boxes


@settings(max_examples=60)
@given(st.binary(max_size=200))
def test_any_bytes_raise_nothing_else(tmp_path: Path, content: bytes) -> None:
    """Any bytes are a reading fault: no few bytes at random are a job."""
    path = tmp_path / "job.toml"
    path.write_bytes(content)
    with pytest.raises(ReadingError):
        read_job_file(path)


def test_a_size_is_measured_in_two_places(tmp_path: Path) -> None:
    """One length says nothing of squareness; and a tab is bored only where cups are."""
    faults = faults_of(tmp_path, SMALL + "measured_width = [400]\nbored_tab = 5\n")
    assert ["measured in two places, top, bottom: " in fault for fault in faults] == [True, False]
    assert "bored_tab: stands without bored" in faults[1]


def test_legs_are_lower_than_their_box(tmp_path: Path) -> None:
    """The height counts from the sides' end on the floor."""
    text = SMALL.replace("depth = 584.2", 'depth = 584.2\nlegs = 774.7\nband = "soon"')
    faults = faults_of(tmp_path, text)
    assert len(faults) == 2
    assert any("legs: as high as the box or higher" in fault for fault in faults)
    assert any("band: not known" in fault for fault in faults)


def test_a_rail_without_a_stile_is_a_fault(tmp_path: Path) -> None:
    """A five-piece front is known by its stile."""
    (fault,) = faults_of(tmp_path, SMALL + "rail = 60\n")
    assert "rail: stands without stile" in fault
