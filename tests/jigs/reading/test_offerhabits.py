"""Habits of suppliers' lists, cell by cell: several heights in one, thousands, hands and pairs in
notes, rows that are no front. Each is read, or ends in a question whose answer works.
"""

from pathlib import Path

import pytest

from jigs.given.job import Reveal
from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import FrontList, read_front_list
from jigs.reading.listgiven import parse_columns

BETWEEN = Reveal().between


def read(folder: Path, text: str, columns: str = "", *, bare: bool = True) -> FrontList:
    """Write a list and read it."""
    path = folder / "fronts.csv"
    path.write_text(text, encoding="utf-8")
    return read_front_list(path, listed=parse_columns(columns), bare=bare)


def faults(folder: Path, text: str, columns: str = "") -> list[str]:
    """Give what is wrong with a list, or asked."""
    with pytest.raises(ReadingError) as caught:
        read(folder, text, columns)
    return [fault.what for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("text", "heights"),
    [
        ("box;n;kind;B x H\nU1;3;drawer;796,5 x 140,0 / 284,0 / 284,0\n", [140.0, 284.0, 284.0]),
        ("box;n;kind;w;h\nU1;3;drawer;796,5;140/284/284\n", [140.0, 284.0, 284.0]),
        ('box;n;kind;W x H\nU1;2;drawer;24" x 5-3/4", 11-7/8"\n', [5.75 * 25.4, 11.875 * 25.4]),
    ],
)
def test_several_heights_in_one_cell(tmp_path: Path, text: str, heights: list[float]) -> None:
    """As many as the row counts, from the top; else a fault."""
    text = text.replace(";n;", ";qty;")
    assert [row.spec.height for row in read(tmp_path, text).rows] == pytest.approx(heights)
    count = str(len(heights))
    (fault,) = faults(tmp_path, text.replace(f";{count};", ";4;"))
    assert f"{count} heights for 4 fronts" in fault


@pytest.mark.parametrize(
    ("text", "height"),
    [
        ("1 396,0", 1396.0), ("1\N{NO-BREAK SPACE}396,5", 1396.5),
        ("1\N{NARROW NO-BREAK SPACE}396", 1396.0), ("1.396,5", 1396.5), ("1,396.5", 1396.5),
        ("1.396", 1396.0),
    ],
)  # fmt: skip
def test_thousands(tmp_path: Path, text: str, height: float) -> None:
    """A space, both signs, or one sign beside another that is every decimal's: nothing is asked."""
    [row] = read(tmp_path, f"kind;w;h\ndoor;596,5;{text}\n").rows
    assert row.spec.height == height


@pytest.mark.parametrize(
    ("kind", "note", "hand"),
    [
        ("Tür", "rechts angeschlagen", "right"), ("Door", "hinge R", "right"),
        ("Door", "hinged on right", "right"), ("Porte D", "", "right"), ("Porte G", "", "left"),
        ("Tür", "Bandseite links", "left"), ("Door", "left of the range", None),
        ("Porte d'angle", "", None),
    ],
)  # fmt: skip
def test_hands_in_words(tmp_path: Path, kind: str, note: str, hand: str | None) -> None:
    """Where nothing but the hinges can be meant; other words with a hand are told, with the key."""
    text = f"kind;w;h;note\n{kind};597;713;{note}\n"
    listed = read(tmp_path, text, 'kinds."Porte d\'angle"=door' if "angle" in kind else "")
    assert [row.spec.hinged for row in listed.rows] == [hand]
    assert not note or note in listed.told


def test_a_hand_that_nobody_can_read_is_asked(tmp_path: Path) -> None:
    """And the answer holds for that word."""
    text = "kind;w;h;note\nTür;597;713;Anschlag evtl. rechts\n"
    (fault,) = faults(tmp_path, text)
    assert "'Anschlag evtl. rechts' has one" in fault
    answered = read(tmp_path, text, "hands.Anschlag evtl. rechts=left").rows
    assert [row.spec.hinged for row in answered] == ["left"]


@pytest.mark.parametrize(
    ("row", "columns", "made"),
    [
        ("B1;Tür;2;Paar", "", [("pair", 1)]),
        ("B1;Porte;2;1 ouvrant à gauche + 1 à droite", "both_hands=pair", [("pair", 1)]),
        ("B1;Porte;2;une à gauche, une à droite", "both_hands=stack", [("door", 1)] * 2),
        ("B1;Tür rechts;2;", "doors_alike=pair", [("pair", 1)]),
        ("B1;Tür rechts;2;", "doors_alike=stack", [("door", 2)]),
    ],
)
def test_two_doors_of_a_row(
    tmp_path: Path, row: str, columns: str, made: list[tuple[str, int]]
) -> None:
    """Side by side or one above the other: by the note, else asked."""
    text = f"box;w;h;kind;qty;note\n{row.replace(';', ';397;570;', 1)}\n"
    if columns:
        (fault,) = faults(tmp_path, text)
        assert columns.partition("=")[0] in fault
    rows = read(tmp_path, text, columns).rows
    assert [(one.spec.kind, one.count) for one in rows] == made


def test_a_kind_for_a_word_leaves_words_with_a_hand_alone(tmp_path: Path) -> None:
    """`Tür` may be a pair; `Tür links` is a door."""
    text = "box;kind;w;h\nB1;Tür;397;570\nB2;Tür links;397;570\n"
    rows = read(tmp_path, text, "kinds.Tür=pair,pairs=one-leaf").rows
    assert [(row.spec.kind, row.spec.hinged) for row in rows] == [("pair", None), ("door", "left")]


@pytest.mark.parametrize("columns", ["kinds.Twin=pair", "unnamed=pair"])
@pytest.mark.parametrize("bare", [True, False])
def test_a_pair_in_whatever_words_is_of_leaves_where_that_is_said(
    tmp_path: Path, columns: str, bare: bool
) -> None:
    """Two leaves in each row are one pair each, in whichever row the list's own word stands; the
    same word is asked about where it is not said."""
    text = "box;count;description;w;h\nT1;2;Twin;302;911\nT1;2;Twin;302;1216\nB4;2;Pairs;302;770\n"
    rows = read(tmp_path, text, f"{columns},pairs=pieces", bare=bare).rows
    assert [(row.spec.kind, row.count) for row in rows] == [("pair", 1)] * 3
    rows = read(tmp_path, text, f"{columns},pairs=one-leaf", bare=bare).rows
    assert [(row.spec.width, row.count) for row in rows] == [(302, 2)] * 3
    with pytest.raises(ReadingError) as caught:
        read(tmp_path, text, columns, bare=bare)
    assert any("does its count count pairs or leaves" in str(f) for f in caught.value.faults)


@pytest.mark.parametrize(("heading", "word"), [("Pairs", ""), ("", "pair")])
def test_what_pairs_are_of_holds_for_every_pair(tmp_path: Path, heading: str, word: str) -> None:
    """By the heading of a section, and by the tool's own word."""
    text = f"description;w;h;count\n{heading}\n{word};603;713;2\n"
    [row] = read(tmp_path, text, "pairs=both-leaves").rows
    assert (row.spec.kind, row.spec.width, row.count) == ("pair", (603 - BETWEEN) / 2, 2)
    [row] = read(tmp_path, text, "pairs=pieces").rows
    assert (row.spec.width, row.count) == (603, 1)


def test_pairs_of_several_heights_in_one_row(tmp_path: Path) -> None:
    """The width across both leaves is parted in each; single leaves cannot be told apart."""
    text = "description;w;h;count\nTwin;603;713 / 570;2\n"
    rows = read(tmp_path, text, "kinds.Twin=pair,pairs=both-leaves").rows
    assert [row.spec.width for row in rows] == [(603 - BETWEEN) / 2] * 2
    with pytest.raises(ReadingError) as caught:
        read(tmp_path, text, "kinds.Twin=pair,pairs=pieces")
    assert any("give each pair its row" in str(fault) for fault in caught.value.faults)


@pytest.mark.parametrize(
    "word", ["Passleiste", "Sockelblende", "Regalboden", "Wangenblende", "Filler strip",
             "End panel", "Plinthe", "Zócalo", "Widget"]
)  # fmt: skip
def test_rows_that_are_no_front(tmp_path: Path, word: str) -> None:
    """Left alone by their word, or because the person says so; named either way, job or none."""
    text = f"box;kind;w;h\nB1;door;397;570\n;{word};80;2400\n"
    columns = "kinds.Widget=nothing" if word == "Widget" else ""
    for bare in (True, False):
        listed = read(tmp_path, text, columns, bare=bare)
        assert len(listed.rows) == 1
        assert f"No fronts: row 3 '{word}'" in listed.told


@pytest.mark.parametrize(
    ("word", "kind"),
    [("Auszugsfront", "drawer"), ("Topfauszug", "drawer"), ("Klappe", "lift"), ("DF", "drawer"),
     ("Façade coulissant", "drawer"), ("Abattant relevable", "lift"),
     ("Façade lave-vaisselle", "panel"), ("Lüfterklappe", "lift")],
)  # fmt: skip
def test_words_of_offers(tmp_path: Path, word: str, kind: str) -> None:
    """What suppliers call drawers, lifts, panels."""
    [row] = read(tmp_path, f"kind;w;h\n{word};597;357\n").rows
    assert row.spec.kind == kind


@pytest.mark.parametrize(("word", "near"), [("doar", True), ("Auflagefront", False)])
def test_a_guess_is_a_slip_of_the_word(tmp_path: Path, word: str, near: bool) -> None:
    """And never another thing that sounds alike."""
    (fault,) = faults(tmp_path, f"kind;w;h\n{word};597;357\n")
    assert ("did you mean" in fault) is near


def test_a_footer_under_the_ids_is_no_front_in_a_job_either(tmp_path: Path) -> None:
    """Whoever reads the list reads the same rows."""
    text = "id;box;w;h\nF1;B1;397;570\nDevis valable 30 jours;;;\n"
    for bare in (True, False):
        assert len(read(tmp_path, text, "unnamed=door", bare=bare).rows) == 1


def test_a_column_of_prices_is_no_second_box(tmp_path: Path) -> None:
    """`Unit` beside `Cabinet`."""
    text = "Cabinet;kind;w;h;Unit\nB1;door;397;570;48.50\nB2;door;397;570;52\n;;;;100.50\n"
    assert [row.box for row in read(tmp_path, text).rows] == ["B1", "B2"]


def test_a_thing_with_a_count_alone_is_no_front_in_a_job_either(tmp_path: Path) -> None:
    """Handles and a delivery have no box and no size: a job that names the list reads it as `new`
    did, and hangs none of them on the box above. A door that takes what is left says what it is.
    """
    text = (
        "Pos;Skab;Betegnelse;Bredde;Højde;Antal\n1;U1;Skuffefront;497;140;1\n2;;Låge;;;1\n"
        "3;;Greb 160 mm;;;16\n4;;Levering;;;1\n"
    )
    alone, named = (
        read(tmp_path, text.replace("Låge;;", "Låge;497;632,5"), "empty_box=above"),
        read(tmp_path, text, "empty_box=above", bare=False),
    )
    for found in (alone, named):
        assert [(row.box, row.spec.kind) for row in found.rows] == [
            ("U1", "drawer"),
            ("U1", "door"),
        ]
        assert "No fronts: row 4 'Greb 160 mm', row 5 'Levering'." in found.told
