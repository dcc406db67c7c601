"""What a label's symbol says of every kind of part: all that a scan without a network answers."""

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

import templates.demo
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.trimmings import LONGEST_TAG
from jigs.given.build import Paint
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.wallspec import WallSpec
from jigs.ground.problems import error
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.labels.labellist import list_labels
from templates.labels.labelwords import LabelWords
from templates.words.payload import LENGTHS
from templates.words.scanwords import (
    drawer_box_payload,
    front_payload,
    side_payload,
    spell_wall,
    tell_walls,
)
from templates.words.stationwords import station_title
from templates.writers.qr import qr_matrix
from tests.anytext import ANY
from tests.jigs.sample import box, lay
from tests.jobtexts import box_text
from tests.pages import COMMANDS_PAGE
from tests.templates.kitchens import galley, labels_of, workshop, workshop_looks
from tests.templates.printed import laid_out
from tests.templates.writers.test_qr import read_back
from tests.test_sound_kitchens import NAMES
from tests.test_sound_kitchens import laid_out as sound

DEMO = Path(templates.demo.__path__[0]) / "job.toml"
DENSE = re.compile(r"[0-9A-Z $%*+\-./:]+")
PLACE = re.compile(
    r"/ ((UNDER|BESIDE|BEHIND) )?\d+(ST|ND|RD|TH)( TO \d+(ST|ND|RD|TH))? "
    r"(UPPER )?BOX FROM LEFT( /|$)"
)
FIRST = 28
"""So many characters some telephones show."""
GIVEN = (
    FrontSpec(id="B3-1", kind="drawer", height=152.4),
    FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
)


def texts_of(labels: Iterable[LabelWords], longest: int = LENGTHS[0]) -> dict[str, str]:
    """Give the text of each part's symbol."""
    return {words.part: words.payload.fit(longest) for words in labels}


@cache
def scanned(layout_of: str) -> dict[str, str]:
    """Give those of a kitchen by its name."""
    return texts_of(labels_of({"workshop": workshop, "galley": galley}[layout_of]()))


def said(*boxes: BoxSpec, longest: int = LENGTHS[0]) -> dict[str, str]:
    return texts_of(labels_of(lay(*boxes)), longest)


def first_said(text: str) -> list[str]:
    """Give the words that stand whole in the first characters, those of the ID apart; no bare
    numbers."""
    whole = (
        text[:FIRST] if text[FIRST : FIRST + 1] in ("", " ") else text[:FIRST].rpartition(" ")[0]
    )
    return [word for word in re.split("[ -]", whole) if re.search("[A-Z]", word)]


def hold_all(texts: dict[str, str], walls: dict[str, str]) -> None:
    """Each text has the wall, the place along it and the code, says nothing twice at its beginning,
    has dense characters alone, and nothing that a telephone takes for a link."""
    assert texts
    for part, text in texts.items():
        assert DENSE.fullmatch(text), text
        assert text.startswith((f"{part} ", f"{part}/")), text
        assert not re.match(r"[^ ]+ ?:", text), text
        assert not re.search(r"[A-Z]\.[A-Z]", text), text
        words = first_said(text)
        assert len(words) == len(set(words)), text
        assert f"/ {walls[part]} /" in text, text
        assert PLACE.search(text), text
        held = text.startswith(f"{part} HOLD ")
        assert re.search(r" / CODE [0-9A-Z]{4}$", text) or held, text


def walls_of(layout: Layout) -> dict[str, str]:
    walls = {piece.id: piece.wall for piece in cut_list(layout)}
    walls |= {part.id: part.wall for part in layout.units}
    walls |= {front.drawer.id: front.wall for front in layout.fronts if front.drawer}
    walls |= {side.board: side.wall for side in layout.sides}
    return {part: f"{wall.upper().removesuffix(' WALL')} WALL" for part, wall in walls.items()}


# --- the worked examples ------------------------------------------------------------------------


def test_a_doors_text_is_that_of_the_worked_example() -> None:
    """Third on its wall, under its drawer; at the station by its name, lines and all; where there
    is room, what the hand of that name is: it is the other one of the door."""
    others = (box(FrontSpec(id=f"B{n}-1", kind="door", hinged="left"), name=f"B{n}",
                  wall="North wall") for n in (1, 2))  # fmt: skip
    last = box(*GIVEN, name="B3", wall="North wall")
    text = said(*others, last, longest=106)["B3-2"]
    assert re.fullmatch(
        "B3-2 DOOR HINGES LEFT / NORTH WALL / 3RD BOX FROM LEFT / UNDER B3-1 / "
        r"CUPS RIGHT 97\.8 513\.8 UP / CODE [0-9A-Z]{4}",
        text,
    )
    text = said(last, longest=200)["B3-2"]
    assert "DOOR HINGES LEFT" in text
    assert " / CUPS RIGHT 97.8 513.8 UP / HINGE EDGE ON YOUR RIGHT / " in text


def test_a_sides_text_is_that_of_the_worked_example() -> None:
    """What its ID spells is not spelt again."""
    text = said(box(*(FrontSpec(id=f"B1-{n}", kind="drawer") for n in range(1, 5))))["B1-SIDE-L"]
    assert re.fullmatch(
        "B1-SIDE-L / NORTH WALL / 1ST BOX FROM LEFT / OUTER FACE OUT / 4 SLIDES / "
        "THEN ASSEMBLE / CODE [A-Z0-9]{4}",
        text,
    )


@pytest.mark.parametrize(
    ("part", "text"),
    [
        ("B1-1", "B1-1 DRAWER FRONT / NORTH WALL / 2ND BOX FROM LEFT / OVER B1-2 / PULLS D / "
         "FRONTS ON BOXES AFTER ITS BOX / "),
        ("B1-1-BOX", "B1-1-BOX DRAWER / NORTH WALL / 2ND BOX FROM LEFT / "),
        ("B1-1-BOX-SIDE", "B1-1-BOX-SIDE / NORTH WALL / 2ND BOX FROM LEFT / 2 OF 2 "
         "/ CUT "),
        ("B2-1L", "B2-1L HOLD DOOR HINGES LEFT / NORTH WALL / 3RD BOX FROM LEFT / HINGE NO ROOM"),
        ("S1-2", "S1-2 DOOR HINGES RIGHT / ISLAND WALL / 1ST BOX FROM LEFT / "
         "CUPS LEFT 97.8 673.8 UP / PULLS B / CODE "),
        ("W1-1R", "W1-1R DOOR HINGES RIGHT / NORTH WALL / 1ST UPPER BOX FROM LEFT / "
         "HANGS AT 1370 / CUPS LEFT "),
        ("W1-BACK", "W1-BACK / NORTH WALL / 1ST UPPER BOX FROM LEFT / HANGS AT 1370 / CUT "),
        ("T1-SIDE-R", "T1-SIDE-R / NORTH WALL / 1ST BOX FROM LEFT / OUTER FACE OUT / "
         "94 PINS / THEN "),
        ("T1-SHELF-1", "T1-SHELF-1 / NORTH WALL / 1ST BOX FROM LEFT / 2 OF 2 / CUT "),
        ("B1-STRETCHER-1", "B1-STRETCHER-1 FRONT / NORTH WALL / 2ND BOX FROM LEFT / CUT "),
        ("S1-PARTITION-1", "S1-PARTITION-1 / ISLAND WALL / 1ST BOX FROM LEFT / BETWEEN COLUMNS 1 "
         "AND 2 / LABEL FACES LEFT / "),
        ("S2-ROLLOUT-1", "S2-ROLLOUT-1 / ISLAND WALL / 2ND BOX FROM LEFT / BEHIND S2-1 / "
         "UNDERSIDE 150 UP / "),
        ("NORTH-FILLER-L", "NORTH-FILLER-L / BESIDE 1ST BOX FROM LEFT / NORTH WALL / CUT "),
        ("S2-PANEL-R", "S2-PANEL-R / ISLAND WALL / BESIDE 2ND BOX FROM LEFT / CUT "),
        ("L1-1", "L1-1 DOOR HINGES LEFT / CUPS RIGHT "),
    ],
)  # fmt: skip
def test_every_kind_of_part_says_its_own(part: str, text: str) -> None:
    """Where, then what the drill or the saw needs."""
    assert scanned("workshop")[part].startswith(text)


def test_a_held_part_says_hold_after_its_id_and_why_and_has_no_code() -> None:
    """Who scans it knows at once that it is not to be drilled."""
    assert scanned("galley")["B9-1"] == (
        "B9-1 HOLD DOOR / NORTH WALL / 2ND BOX FROM LEFT / HAND NOT STATED"
    )


def test_an_assumed_height_is_not_told() -> None:
    """A wall box whose height nobody gave says none."""
    given_box = box_text("W1", "wall", 'id = "W1-1"\nkind = "door"\nhinged = "left"')
    for text, told in ((given_box, True), (given_box.replace("above_floor = 1370\n", ""), False)):
        texts = texts_of(labels_of(laid_out(text))).values()
        assert all((" HANGS AT 1370 " in each) is told for each in texts)


# --- whole kitchens -----------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["demo", *NAMES])
def test_every_label_of_a_kitchen_answers_by_itself(name: str) -> None:
    """Wall, place, code; each door's station is named as its page is, with its lines."""
    layout = lay_out(read_job(DEMO)) if name == "demo" else sound(name)
    stations = plan_stations(layout)
    labels, walls = list_labels(layout, cut_list(layout), stations), walls_of(layout)
    texts = texts_of(labels)
    hold_all(texts, walls)
    assert name != "demo" or texts["B1-2"] in COMMANDS_PAGE.read_text("utf-8")
    small = [words.payload for words in labels if len(words.payload.core) <= LENGTHS[2]]
    assert len(small) > len(labels) * 0.8
    for payload in small:  # the wall's name is in the text, or the ID begins as it does
        text, wall = payload.fit(LENGTHS[2]), walls[payload.part].removesuffix(" WALL")
        assert wall in text or payload.part.startswith(f"{wall[:LONGEST_TAG]}-")
        assert re.search(r"\d[A-Z]{2} (UPPER )?(BOX )?FROM LEFT", text), text
        assert f"CODE {payload.code}" in text or payload.hold, text
    titles = {
        (row.part.id, station_title(station))
        for station in stations
        if station.work == "cups"
        for row in station.rows
    }
    assert titles
    for part, title in titles:
        assert re.search(rf" / {title} (\d+\.\d )+UP / ", texts[part]), texts[part]
    assert all(len(text) <= LENGTHS[0] for text in texts.values())


@pytest.mark.parametrize(
    ("wall", "said"),
    [
        ("Βόρεια", "VOREIA WALL"),
        ("Северная", "SEVERNAYA WALL"),
        ("Łącznik", "LACZNIK WALL"),
        ("北", "WALL 1"),
    ],
)
def test_a_wall_of_another_script_does_not_vanish(wall: str, said: str) -> None:
    """It is written in our letters, or told by its place among the job's walls, as its pieces are
    (`WALL1-TOE-1`); then its person is told."""
    layout = galley(wall=wall)
    door = next(front for front in layout.fronts if front.id == "B3-2")
    assert f" / {said} / 1ST BOX FROM LEFT / " in front_payload(layout, door).text
    told = f"wall '{wall}': a symbol has no such letters and says {said}"
    assert tell_walls(layout) == ((told,) if wall == "北" else ())


def test_a_wall_of_no_letters_of_ours_is_called_by_its_own_id() -> None:
    """Where the job gives one, as in the IDs of its pieces."""
    layout = galley(wall="北")
    walls = (WallSpec(name="北", id="N1"),)
    assert spell_wall(replace(layout, job=replace(layout.job, walls=walls)), "北") == "N1 WALL"


def test_of_parts_of_no_wall_the_rest_holds() -> None:
    """The workshop has a box of no wall and a wall called Island."""
    walls = walls_of(workshop())
    texts = {p: t for p, t in scanned("workshop").items() if walls[p] != " WALL"}
    hold_all(texts, walls)


@pytest.mark.parametrize("longest", [LENGTHS[0], LENGTHS[2]])
def test_an_independent_reader_reads_them(longest: int) -> None:
    """One of each look, as much as a symbol of each size says; `test_hardprint.py` prints them."""
    for words in workshop_looks():
        text = words.payload.fit(longest)
        assert read_back(qr_matrix(text)) == text


@given(
    st.from_regex(r"[A-Z][A-Z0-9-]{0,8}", fullmatch=True, alphabet=ANY),
    st.text(ANY, max_size=40),
    st.booleans(),
)
@settings(max_examples=25)
def test_every_text_keeps_the_rules(name: str, wall: str, held: bool) -> None:
    """Dense alphabet, no more than the symbol holds, the ID in front, no dot between letters."""
    layout = lay(
        box(
            FrontSpec(id=f"{name}-DRAWER", kind="drawer", height=152.4),
            FrontSpec(id=f"{name}-2L", kind="door", hinged="right"),
            name=name,
            wall=wall,
        )
    )
    if held:
        why = (error("overlay", None),)
        fronts = tuple(replace(front, held=why, fittings=()) for front in layout.fronts)
        layout = replace(layout, fronts=fronts)
    made = [front_payload(layout, front) for front in layout.fronts]
    made += [side_payload(layout, side) for side in layout.sides]
    made += [
        drawer_box_payload(layout, front.drawer, front)
        for front in layout.fronts
        if front.drawer is not None
    ]
    for payload in made:
        for longest in LENGTHS[:3]:
            text = payload.fit(longest)
            assert DENSE.fullmatch(text)
            assert len(text) <= longest
            assert re.match(rf"{re.escape(payload.part)}( |$)", text)
            assert not re.search(r"[A-Z]\.[A-Z]", text)


def test_a_front_that_comes_painted_is_not_painted_next() -> None:
    """What comes after the drill is said by what the job says of its paint."""
    made = lay(box(FrontSpec(id="B1-1", kind="door", hinged="left")))
    painted = replace(made, job=replace(made.job, paint=Paint(fronts_come="painted")))
    [front] = made.fronts
    assert "THEN PAINT AND HANG" in front_payload(made, front).text
    assert "THEN HANG" in front_payload(painted, front).text
    assert "PAINT" not in front_payload(painted, front).text
