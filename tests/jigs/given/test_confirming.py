"""Numbers of hardware that are open until the record that writes them says how they were found."""

import tomllib
from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.catalogue import derive, generic_hinges, generic_slides
from jigs.given.confirming import (
    heading_of,
    how_confirmed,
    number_words,
    numbers_that_matter,
    open_keys,
    open_numbers,
)
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.layout.layout import lay_out
from tests.jigs.jobtext import JOB, faults_of, read
from tests.jigs.sample import SURE
from tests.said import fact_of, remedy_of

HINGE = 'plates = ["0 mm", "3 mm"]'
ALL_OF_HINGE = ("constant", "plates", "fixing_spacing", "fixing_inboard", "cup_depth")


def with_hinge(line: str) -> str:
    """The usual job, this line added to its hinge."""
    return JOB.replace(HINGE, f"{HINGE}\n{line}")


def test_what_differs_from_make_to_make_is_open() -> None:
    """Whatever its standing: a pattern is common practice, and yet the make's."""
    assert open_keys(generic_hinges()["cup35-full"]) == ALL_OF_HINGE
    assert open_keys(HingeRecord(name="a", confirmed=SURE)) == ()
    under = generic_slides()["undermount-533"]
    assert set(open_keys(under)) >= {
        "fixing_height", "drawer_rise", "width_less", "depth_allowance", "drawer_shorter",
        "fixing_at",
    }  # fmt: skip
    assert "centre_height" not in open_keys(under)
    side = generic_slides()["sidemount-500"]
    assert "centre_height" in open_keys(side)
    assert not {"fixing_height", "drawer_rise"} & set(open_keys(side))
    assert open_keys(PullRecord(name="bar")) == ("centers",)
    assert open_keys(PullRecord(name="knob", centers=None)) == ()


def test_a_number_that_a_fitting_has_not_is_not_open() -> None:
    """No places through the slide, no hooks; a slide that has hooks has four numbers more."""
    bare = SlideRecord(name="s", carry_at=())
    assert not {"carry_at", "hook_height"} & set(numbers_that_matter(bare))
    hooked = replace(bare, hook_diameter=6.0, hook_depth=10.0, hook_height=24.0, hook_inset=8.0)
    assert len(numbers_that_matter(hooked)) == len(numbers_that_matter(bare)) + 4


def test_an_open_number_is_a_value() -> None:
    """What it is a number of, its key, and what is drawn with it."""
    slide = SlideRecord(name="s", fixing_at=(37.0, 165.0), confirmed={"fixing_height": "leaflet"})
    only = open_numbers(slide, "inside")[-1]
    assert (only.kind, only.record, only.key, only.value) == (
        "slide", "s", "fixing_at", (37.0, 165.0),
    )  # fmt: skip
    assert number_words([only]) == "fixing_at 37, 165 mm"
    assert number_words([replace(only, value=())]) == "fixing_at none stated"


def test_a_word_covers_what_this_record_writes(tmp_path: Path) -> None:
    """Pattern and cup depth are inherited: nobody has looked these up."""
    job = read(tmp_path, with_hinge('confirmed = "leaflet"'))
    assert open_keys(job.hinges["mine"]) == ("fixing_spacing", "fixing_inboard", "cup_depth")
    assert how_confirmed(job.hinges["mine"], "plates") == "leaflet"
    [found] = [p for p in lay_out(job).problems if p.code == "unconfirmed-hinge"]
    assert fact_of(found) == (
        "hinge 'mine' has open numbers: fixing_spacing 45 mm, fixing_inboard 9.5 mm, "
        "cup_depth 13 mm"
    )
    assert remedy_of(found).startswith(
        "write fixing_spacing, fixing_inboard and cup_depth in [hinge.mine] as your leaflet has "
        "them"
    )
    written = 'cup_depth = "13 mm"\nfixing_spacing = "45 mm"\nfixing_inboard = "9.5 mm"\n'
    job = read(tmp_path, with_hinge(f'{written}confirmed = "leaflet"'))
    assert open_keys(job.hinges["mine"]) == ()
    assert not [p for p in lay_out(job).problems if p.code == "unconfirmed-hinge"]


def test_the_heading_to_write_below_is_toml(tmp_path: Path) -> None:
    """A name with other letters or a space stands in it between quotes, as it does in the job."""
    for name, heading in (("long-bar", "[pull.long-bar]"), ("bügel 2", '[pull."bügel 2"]')):
        assert heading_of("pull", name) == heading
        assert tomllib.loads(heading) == {"pull": {name: {}}}
    own = with_hinge('confirmed = "leaflet"').replace("hinge.mine]", 'hinge."für Türen"]')
    job = read(tmp_path, own.replace('"mine"', '"für Türen"'))
    [found] = [p for p in lay_out(job).problems if p.code == "unconfirmed-hinge"]
    assert ' in [hinge."für Türen"] as your leaflet' in remedy_of(found)


def test_a_list_names_numbers_one_by_one_inherited_ones_too(tmp_path: Path) -> None:
    """And covers no other, written or not."""
    job = read(tmp_path, with_hinge('confirmed = ["fixing_spacing", "fixing_inboard"]'))
    assert open_keys(job.hinges["mine"]) == ("constant", "plates", "cup_depth")
    assert how_confirmed(job.hinges["mine"], "fixing_spacing") == "confirmed"


def test_a_table_says_how_each_was_found(tmp_path: Path) -> None:
    """`leaflet` for one, `measured` for another."""
    text = with_hinge('confirmed = { constant = "leaflet", fixing_spacing = "measured" }')
    mine = read(tmp_path, text).hinges["mine"]
    assert mine.confirmed == {"constant": "leaflet", "fixing_spacing": "measured"}
    assert open_keys(mine) == ("plates", "fixing_inboard", "cup_depth")


def test_a_record_like_it_inherits_no_confirmation(tmp_path: Path) -> None:
    """The word says that this very piece of hardware was looked up; so does it in the next."""
    text = with_hinge('confirmed = "leaflet"').replace(
        "[slide.runner]", '[hinge.other]\nlike = "mine"\nconfirmed = "leaflet"\n[slide.runner]'
    )
    other = read(tmp_path, text).hinges["other"]
    assert other.confirmed == {}
    assert open_keys(other) == ALL_OF_HINGE
    sure = HingeRecord(name="sure", confirmed=SURE)
    assert open_keys(derive(sure, name="new", given={})) == ALL_OF_HINGE


@pytest.mark.parametrize(
    ("key", "confirmed", "found"),
    [
        ("overlay_at", 'confirmed = "leaflet"', "leaflet"),
        ("overlay_at", 'confirmed = ["overlay_at"]', "confirmed"),
        ("overlay_at", "", None),
        ("overlay_measured", "", "measured"),
    ],
)
def test_a_cell_of_the_table_stands_for_the_constant(
    tmp_path: Path, key: str, confirmed: str, found: str | None
) -> None:
    """C0 = OV + Hp - K, from OV = C0 + K - Hp (common practice): 16.6 + 3 - 5. An overlay that was
    measured says so itself."""
    cell = f'{key} = {{ tab = "5 mm", plate = "3 mm", overlay = "16.6 mm" }}\n{confirmed}'
    mine = read(tmp_path, with_hinge(cell).replace('constant = "15 mm"\n', "")).hinges["mine"]
    assert mine.constant == pytest.approx(16.6 + 3 - 5)
    assert how_confirmed(mine, "constant") == found
    assert ("constant" in open_keys(mine)) == (found is None)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('confirmed = ["constnat"]', "did you mean 'constant'?"),
        ('confirmed = ["overlay_at"]', "not a number of this record"),
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
