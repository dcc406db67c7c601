"""Numbers of hardware confirmed one by one."""

from dataclasses import replace
from pathlib import Path

import pytest

from jigs.confirming import how_confirmed, numbers_that_matter, open_names, open_numbers, open_words
from jigs.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.layout import lay_out
from tests.jigs.jobtext import JOB, faults_of, read

HINGE = 'plates = ["0 mm", "3 mm"]'


def with_hinge(line: str) -> str:
    """The usual job, this line added to its hinge."""
    return JOB.replace(HINGE, f"{HINGE}\n{line}")


def test_a_word_speaks_for_the_whole_record() -> None:
    """Nothing is open of a record that was measured."""
    assert open_numbers(HingeRecord(name="a", confirmed="leaflet")) == ()
    assert open_numbers(SlideRecord(name="a", confirmed="measured")) == ()


def test_what_matters_is_told_with_its_value() -> None:
    """Spacing and inboard distance together are the pattern; one alone goes by its own name."""
    hinge = HingeRecord(name="a", constant=15, fixing_spacing=45, fixing_inboard=9.5)
    assert open_words(hinge) == "constant 15 mm, pattern 45/9.5 mm"
    one = replace(hinge, confirmed_numbers={"fixing_spacing": "leaflet"})
    assert open_words(one) == "constant 15 mm, fixing inboard 9.5 mm"
    assert open_names(one) == "constant, fixing inboard"
    side = SlideRecord(name="s", mount="side", centre_height=32, drawer_rise=15)
    assert open_words(side) == "centre height 32 mm, drawer rise 15 mm"
    assert numbers_that_matter(PullRecord(name="bar")) == ("centers",)
    assert numbers_that_matter(PullRecord(name="knob", centers=None)) == ()


def test_a_list_confirms_its_numbers_alone(tmp_path: Path) -> None:
    """The check names what is left."""
    job = read(tmp_path, with_hinge('confirmed = ["fixing_spacing", "fixing_inboard"]'))
    assert open_numbers(job.hinges["mine"]) == ("constant",)
    assert how_confirmed(job.hinges["mine"], "fixing_spacing") == "confirmed"
    [found] = [p for p in lay_out(job).problems if p.code == "unconfirmed-hinge"]
    assert found.text == "hinge 'mine': constant not confirmed (constant 15 mm)"


def test_a_table_says_how_each_was_found(tmp_path: Path) -> None:
    """`leaflet` for one, `measured` for another."""
    text = with_hinge('confirmed = { constant = "leaflet", fixing_spacing = "measured" }')
    mine = read(tmp_path, text).hinges["mine"]
    assert mine.confirmed_numbers == {"constant": "leaflet", "fixing_spacing": "measured"}
    assert open_numbers(mine) == ("fixing_inboard",)


def test_a_record_like_it_inherits_no_confirmation(tmp_path: Path) -> None:
    """It says that this very piece of hardware was looked up."""
    text = with_hinge('confirmed = ["constant"]').replace(
        "[slide.runner]", '[hinge.other]\nlike = "mine"\n[slide.runner]'
    )
    assert read(tmp_path, text).hinges["other"].confirmed_numbers == {}


def test_a_measured_overlay_solves_the_constant(tmp_path: Path) -> None:
    """C0 = OV + Hp - K, from OV = C0 + K - Hp (common practice): 16.6 + 3 - 5."""
    text = with_hinge('overlay_measured = { tab = "5 mm", plate = "3 mm", overlay = "16.6 mm" }')
    mine = read(tmp_path, text.replace('constant = "15 mm"\n', "")).hinges["mine"]
    assert mine.constant == pytest.approx(16.6 + 3 - 5)
    assert how_confirmed(mine, "constant") == "measured"
    assert open_names(mine) == "pattern"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('confirmed = ["constnat"]', "did you mean 'constant'?"),
        ("confirmed = [5]", "no key given"),
        ('confirmed = { constant = "guess" }', "allowed: leaflet, measured"),
        ('confirmed = { drawer_rise = "leaflet" }', "not a number of this record"),
        ('overlay_measured = { tab = "5 mm", plate = "3 mm" }', "overlay is missing"),
        (
            'overlay_measured = { tab = "5 mm", plate = "3 mm", overlay = "17 mm" }',
            "stands beside constant",
        ),
    ],
)
def test_faults_are_told(tmp_path: Path, line: str, said: str) -> None:
    """A key that the record has not, a word that is none, a constant given twice."""
    faults = faults_of(tmp_path, with_hinge(line))
    assert any(said in fault for fault in faults), faults
