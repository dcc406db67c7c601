"""What is believable: each key has its range, and a number typed in another unit is told."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import msgspec
import pytest

from jigs.given.build import Build
from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.given.job import Job, Material, Reveal
from jigs.ground.believable import MM_PER, Range, measure
from jigs.ground.errors import LengthError
from jigs.ground.lengths import BareUnit
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from jigs.reading.tomltables import FaultBook, TomlTable
from tests.jigs.jobtext import JOB, SMALL, faults_of, read
from tests.said import fact_of
from tests.test_jobfile_page import DEMO, FURTHER

INCH = 25.4
GETTERS = {"length": 1, "lengths": 1, "measure": 2, "number": 1}
"""The ways to take a number with its range, and the range's place among the arguments."""
UNITS: tuple[BareUnit, ...] = ("mm", "cm", "in")


Key = tuple[str, Range]
"""A number's place in the job file, without names and counts, and where it is believed there:
the sizes of a box or a front by its kind."""


@pytest.fixture(scope="module")
def ranges(tmp_path_factory: pytest.TempPathFactory) -> dict[Key, set[float]]:
    """Every number of the job file and of hardware with its range, as they are read; and what
    stands there in the demo, in the generic records and by default."""
    folder = tmp_path_factory.mktemp("job")
    found: dict[Key, set[float]] = {}
    with pytest.MonkeyPatch.context() as patch:
        for name, place in GETTERS.items():
            patch.setattr(TomlTable, name, noting(getattr(TomlTable, name), place, found))
        for name in ("fronts.csv", "delivered.csv"):
            (folder / name).write_bytes((DEMO / name).read_bytes())
        text = (DEMO / "job.toml").read_text(encoding="utf-8") + FURTHER
        (folder / "job.toml").write_text(text, encoding="utf-8")
        read_job(folder / "job.toml")
    for (key, _), values in found.items():
        values |= {value for name, value in USUAL if name == key}
    return found


def noting(getter: Any, place: int, found: dict[Key, set[float]]) -> Any:
    """A getter that notes which key it was asked for, with which range, and what it gave."""

    def asked(table: TomlTable, key: str, *arguments: Any, **named: Any) -> Any:
        within = (key, *arguments)[place]
        # `hinge.mine.tab` is read as `hinge.tab`, `box[1].front[2].width` as `box.front.width`.
        steps = [step for step in table.path if isinstance(step, str)]
        if steps and steps[0] in ("hinge", "slide", "pull", "printer", "stock"):
            del steps[1:2]
        values = found.setdefault((".".join([*steps, key]), within), set())
        given = getter(table, key, *arguments, **named)
        values |= set(given if isinstance(given, tuple) else (given,)) - {None, 0.0}
        return given

    return asked


def fields(prefix: str, *records: Any) -> Iterator[tuple[str, float]]:
    """Each number of some records, under the key that it has in a job file."""
    for record in records:
        for field in msgspec.structs.fields(record):
            value = getattr(record, field.name)
            for number in value if isinstance(value, tuple) else (value,):
                if isinstance(number, float) and number:
                    yield f"{prefix}.{field.name}", number


USUAL = frozenset(
    [
        *fields("hinge", *generic_hinges().values()),
        *fields("slide", *generic_slides().values()),
        *fields("pull", *generic_pulls().values()),
        *fields("material", Material()),
        *fields("reveal", Reveal()),
        *fields("build", Build()),
    ]
)


def probes(within: Range) -> Iterator[float]:
    """Lengths all over a range, in mm: tenths and sixteenths of an inch among them."""
    for step in range(7):
        yield round(within.low + (within.high - within.low) * step / 6, 1)
    for sixteenths in range(1, 16 * 40, 79):
        yield sixteenths * INCH / 16


def test_every_number_has_a_range(ranges: dict[Key, set[float]]) -> None:
    """None is empty, none asks for a length of 0, and what is usual lies in it."""
    assert len(ranges) > 150
    for (key, within), values in ranges.items():
        assert within.low < within.high, key
        assert within.low != 0 or within.takes_zero, key
        assert all(within.holds(value) for value in values), key
    assert len([value for values in ranges.values() for value in values]) > 220


def test_a_number_typed_in_another_unit_is_told(ranges: dict[Key, set[float]]) -> None:
    """Over all keys: one in mm, cm or inches where a bare number is read in another unit. Where
    that leaves the key's range, the fault offers the unit that was meant."""
    told = 0
    for key, within in ranges:
        if within.unit != "mm":
            continue
        for mm in probes(within):
            for meant in UNITS:
                for unit in ("mm", "in"):
                    number = f"{mm / MM_PER[meant]:.6f}".lstrip("-")
                    value = float(number) * MM_PER[unit]
                    if unit == meant or not within.holds(float(number) * MM_PER[meant]):
                        continue
                    if within.holds(value):
                        continue
                    assert meant in measure(number, unit, within).meant, (key, number)
                    told += 1
    assert told > 2_500


MILLIMETRES_THAT_STAY = {"box.front.hole.x", "box.hole.x", "box.hole.y", "box.front.hinges_at",
                         "wall.left_reach"}  # fmt: skip
"""Keys whose usual numbers in mm are believed in a job in inches too."""
INCHES_THAT_STAY = {"box.x", "box.front.hole.x", "box.front.hole.y", "box.hole.x", "box.hole.y",
                    "slide.carry_at"}  # fmt: skip
"""Keys whose usual numbers in inches are believed in a job in mm too: places along something."""


@pytest.mark.parametrize(
    ("unit", "meant", "stay"),
    [("in", "mm", MILLIMETRES_THAT_STAY), ("mm", "in", INCHES_THAT_STAY)],
)
def test_few_usual_numbers_stay_in_range_in_another_unit(
    ranges: dict[Key, set[float]], unit: BareUnit, meant: BareUnit, stay: set[str]
) -> None:
    """Counted by key: whatever no range can tell."""
    found = {
        key
        for (key, within), values in ranges.items()
        if within.unit == "mm"
        for value in values
        if within.holds(value / MM_PER[meant] * MM_PER[unit])
    }
    assert found == stay


def test_a_space_left_out_is_told_over_all_keys(ranges: dict[Key, set[float]]) -> None:
    """`15 3/4` as `153/4`, of all lengths that each key may have: refused, or out of its range; of
    the rest (`1 1/16` as `11/16`: less than 1, and believed) there are few."""
    slips = stays = 0
    for _, within in ranges:
        if within.unit != "mm":
            continue
        for whole in (1, 2, 3, 5, 9, 14, 17, 30):
            for part, tape in ((1, 2), (3, 4), (7, 8), (1, 16), (5, 16), (9, 32)):
                if not within.holds((whole + part / tape) * INCH):
                    continue
                slips += 1
                run = f"{whole}{part}/{tape}"
                if int(f"{whole}{part}") >= tape:
                    with pytest.raises(LengthError, match=f"[; ]{whole} {part}/{tape}"):
                        measure(run, "in", within)
                else:
                    stays += measure(run, "in", within).usual
    assert slips > 2_000
    assert stays < 0.08 * slips


INCHES = JOB.replace('tolerance = "1.6 mm"', "tolerance = 1").replace(
    "[use]", "[build]\nshelf_play = 0\n[use]"
)


@pytest.mark.parametrize(
    ("was", "now", "fault"),
    [
        ('band = "0.6 mm"', "band = 0.6", r"material.band: 0.6 in is 15.2 mm, and 0.2 to 4 mm is"
         r" usual; 0.6 mm\? write the unit"),
        ('constant = "15 mm"', "fixing_inboard = 9.5", "9.5 in is 241.3 mm, and 3 to 15 mm"),
        ('back = "6 mm"', "back = 6", r"6 in is 152.4 mm, and 2 to 30 mm is usual; 6 mm\?"),
        ("shelf_play = 0", "shelf_play = 3", r"3 in is 76.2 mm, and 0.5 to 10 mm is usual; 3 mm\?"),
        ('fixing_height = "33 mm"', "notch_width = 38", r"38 in is 965.2 mm, .* 38 mm\?"),
        ('fixing_height = "33 mm"', "recess = 13", r"13 in is 330.2 mm, .* 13 mm\?"),
        ('front = "3/4"', "front = 19", r"19 in is 482.6 mm, .* 19 mm\?"),
    ],
)  # fmt: skip
def test_millimetres_in_a_job_in_inches(tmp_path: Path, was: str, now: str, fault: str) -> None:
    """A bare number that would be right in millimetres is a fault; with its unit it is not."""
    assert was in INCHES
    (told,) = faults_of(tmp_path, INCHES.replace(was, now).replace("tolerance = 1\n", ""))
    assert re.search(fault, told), told
    key, _, number = now.partition(" = ")
    written = INCHES.replace(was, f'{key} = "{number} mm"')
    assert not unlikely(read(tmp_path, written.replace("tolerance = 1\n", "")))


def unlikely(job: Job) -> list[Problem]:
    """The numbers of a job that the check doubts."""
    return [p for p in lay_out(job).problems if p.code == "unlikely-number"]


HUNG = '[use]\nhinge = "mine"\n[hinge.mine]\nlike = "cup35-full"\n'


def test_numbers_of_no_unit_are_a_warning_on_what_depends_on_them(tmp_path: Path) -> None:
    """A cup of 3.5 was meant in cm: a fault. A plate's hole of 50, a screw's of 30, a tolerance of
    16 in are right in no unit: a warning, at the fronts that hang on that hinge, or at all."""
    metric = SMALL.replace("schema = 1\n", "schema = 1\n" + HUNG)
    (told,) = faults_of(tmp_path, metric.replace("[[box]]", "cup_diameter = 3.5\n[[box]]", 1))
    assert "3.5 mm given, and 20 to 45 mm is usual; 3.5 cm? write the unit" in told
    job = read(tmp_path, metric.replace("[[box]]", "plate_diameter = 50\nfixing_diameter = 30\n"
                                        "[[box]]", 1))  # fmt: skip
    found = unlikely(job)
    assert [fact_of(p, "mm") for p in found] == [
        "hinge.mine.fixing_diameter: 30.0 mm (1 3/16- in); 1 to 12 mm is usual",
        "hinge.mine.plate_diameter: 50.0 mm (1 31/32 in); 1 to 12 mm is usual",
    ]
    drilled = ("B1-1", "B1-SIDE-L")
    assert {(p.level, p.part, p.also) for p in found} == {("warning", None, drilled)}
    (found16,) = unlikely(read(tmp_path, INCHES.replace("tolerance = 1\n", "tolerance = 16\n")))
    assert fact_of(found16) == "fronts.tolerance: 16 in (406.4 mm); 0.2 to 5 mm is usual"
    assert set(found16.also) == {"B1-1", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}


def test_a_slides_number_is_told_at_all_that_runs_on_it(tmp_path: Path) -> None:
    """The front, its drawer box, the rollout, and the boards that are drilled for them."""
    text = JOB.replace('drawer_rise = "14 mm"', 'drawer_rise = "14 mm"\nfixing_diameter = "15 mm"')
    text += '[[box.rollout]]\nat = "100 mm"\nheight = "100 mm"\n'
    (told,) = unlikely(read(tmp_path, text))
    assert fact_of(told).startswith("slide.runner.fixing_diameter: 19/32 in")
    assert set(told.also) == {"B1-1", "B1-1-BOX", "B1-ROLLOUT-1", "B1-SIDE-L", "B1-SIDE-R"}


def test_a_number_at_a_box_or_a_front_is_told_there(tmp_path: Path) -> None:
    """An unusual one with its unit: at the part itself, both leaves of a pair; nothing is held."""
    text = SMALL.replace('"door"\nhinged = "left"', '"pair"\nthickness = "50 mm"')
    job = read(tmp_path, text.replace("depth = 584.2", 'depth = 584.2\nrail = "400 mm"'))
    found = unlikely(job)
    assert [(p.part, fact_of(p, "mm").partition(":")[0]) for p in found] == [
        ("B1", "rail"), ("B1-1L", "thickness"), ("B1-1R", "thickness"),
    ]  # fmt: skip
    assert all(p.level == "warning" for p in found)


def test_weights_and_counts_have_ranges_too(tmp_path: Path) -> None:
    """A density of 75 kg/m3, forty fronts alike: doubted, not refused."""
    text = JOB.replace("front_density = 750", "front_density = 75")
    text = text.replace('kind = "drawer"\n', 'kind = "drawer"\ncount = 40\n')
    texts = {fact_of(p, "mm") for p in unlikely(read(tmp_path, text))}
    assert "material.front_density: 75 kg/m3; 250 to 1200 kg/m3 is usual" in texts
    assert "count: 40; 1 to 24 is usual" in texts


def test_zero_stands_where_it_may_mean_none() -> None:
    """A band of 0 is none; a side of 0 is refused."""
    book = FaultBook(file="job.toml", text="")
    table = TomlTable({"band": 0, "side": 0}, (), book, "mm")
    assert table.length("band", Range(0.2, 4, zero=True)) == 0
    assert not book.faults
    assert table.length("side", Range(9, 45)) is None
    assert "must be over 0" in str(book.faults[0][1])


def test_nothing_but_zero_lies_near_zero_where_a_sign_has_a_meaning() -> None:
    """A reveal of 1/8 in, typed in a job in mm, is 0.125 mm: no reveal."""
    top = Range(-30, 40, least=0.5)
    assert measure("1/8", "mm", top).meant == ("cm", "in")
    assert measure("-3", "mm", top).mm == -3
    assert measure("0", "mm", top).usual


@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_job_as_people_write_it_is_believed(tmp_path: Path, units: str) -> None:
    """Neither the demo nor the jobs of these tests have a number that is doubted."""
    assert not unlikely(read_job(DEMO / "job.toml", units))  # type: ignore[arg-type]
    assert not unlikely(read(tmp_path, JOB))
    assert not unlikely(read(tmp_path, SMALL))


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('side = "3/4"', 'material.side 3/4: measured with a caliper? A board called so is usually '
         "18.0 to 18.6 mm"),
        ('side = "3/4 in"', "material.side 3/4 in: measured with a caliper? A board called so is "
         "usually 18.0 to 18.6 mm"),
        ('side = "¾"', "material.side ¾: measured with a caliper?"),
        ('side = "3/4 inch"', "material.side 3/4 inch: measured with a caliper?"),
        ('side = "0 3/4″"', "usually 18.0 to 18.6 mm"),
        ('back = "3/16"', ""),
        ('drawer_side = "5/8"', "usually 14.6 to 15.5 mm"),
        ('back = "1/4"', "usually 4.8 to 5.8 mm"),
        ('partition = "3/4"', "18.0 to 18.6 mm"),
        ('side = "19.05 mm"', ""),
        ("side = 0.75", ""),
        ('side = "23/32"', ""),
        ('side = "3/4"\n[build]\nsold_as = "3/4"', ""),
        # MDF is what it is called; plywood is not.
        ('front = "3/4"', ""),
        ('front = "3/4"\nfront_kind = "plywood"', "material.front 3/4: measured with a caliper?"),
    ],
)  # fmt: skip
def test_what_a_board_is_called_is_asked_about(tmp_path: Path, line: str, told: str) -> None:
    """A bare trade fraction; the same value in mm or as a decimal, or with `sold_as` beside it,
    was measured. 3/4: common practice, the others from memory."""
    text = SMALL.replace("schema = 1\n", f'schema = 1\nunits = "in"\n[material]\n{line}\n')
    for size in ("457.2", "774.7", "584.2"):
        text = text.replace(f"= {size}", f'= "{size} mm"')
    found = [fact_of(p, "mm") for p in unlikely(read(tmp_path, text))]
    assert len(found) == bool(told)
    assert all(told in text for text in found), found
