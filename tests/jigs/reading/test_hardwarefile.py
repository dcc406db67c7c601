"""Records that several jobs share."""

from pathlib import Path

import pytest

from jigs.given.job import Job
from tests.jigs.jobtext import JOB, SMALL, faults_of, read

SHARED = """\
[hinge.shed]
like = "cup35-full-48"
constant = "14 mm"

[slide.shed-runner]
like = "undermount-457"
"""

NAMED = JOB.replace('units = "in"\n', 'units = "in"\nhardware_file = "my-hardware.toml"\n')


def write(tmp_path: Path, text: str) -> None:
    (tmp_path / "my-hardware.toml").write_text(text, encoding="utf-8")


def shared_job(tmp_path: Path, text: str, job: str = NAMED) -> Job:
    write(tmp_path, text)
    return read(tmp_path, job)


def test_a_job_uses_shared_records_as_its_own(tmp_path: Path) -> None:
    """It may also be like one of them; the file is one of those that are never written over."""
    job = shared_job(
        tmp_path,
        SHARED,
        NAMED.replace('hinge = "mine"', 'hinge = "shed"').replace(
            'like = "cup35-full"', 'like = "shed"'
        ),
    )
    assert job.use.hinge == "shed"
    assert (job.hinges["shed"].constant, job.hinges["mine"].fixing_spacing) == (14.0, 48.0)
    assert tmp_path / "my-hardware.toml" in job.sources


@pytest.mark.parametrize(("line", "mm"), [("", 30 * 25.4), ('units = "mm"\n', 30)])
def test_bare_numbers_have_the_units_of_their_file(tmp_path: Path, line: str, mm: float) -> None:
    """Without units of its own, the job's."""
    job = shared_job(tmp_path, f"{line}[pull.shed]\ncenters = 30\n")
    assert job.pulls["shed"].centers == mm


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ('[hinge.mine]\nlike = "cup35-full"\n', "job.toml:41: hinge.mine: the name is taken"),
        ('[hinge.shed]\nlike = "cup35-fulk"\n', "my-hardware.toml:2: hinge.shed.like: unknown"),
        ('[box]\nid = "B9"\n', "my-hardware.toml:1: box: unknown key"),
        ("schema = 2\n", "my-hardware.toml:1: schema: not known"),
        ("[hinge.shed\n", "my-hardware.toml:1"),
    ],
)
def test_faults_stand_at_their_own_file_and_line(tmp_path: Path, text: str, fault: str) -> None:
    """A name in both files is a fault as well."""
    write(tmp_path, text)
    faults = faults_of(tmp_path, NAMED)
    assert any(found.startswith(fault) for found in faults), faults


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    """It is looked for beside the job."""
    [said] = faults_of(tmp_path, NAMED)
    assert "hardware_file: no such file ('my-hardware.toml' given)" in said
    assert said.startswith("job.toml:")


def test_a_fault_of_a_record_says_what_draws_its_number(tmp_path: Path) -> None:
    """By the generic record that it is like; what is no number of it has no picture."""
    text = SMALL + '[hinge.mine]\nlike = "cup35-half"\nconstant = "x"\nplates = ["0", "y"]\n' + (
        '[slide.runner]\nlike = "undermount-45"\ndrawer_rise = "33 m"\n'
    )  # fmt: skip
    faults = faults_of(tmp_path, text)
    drawn = ["hardware cup35-half'" in fault for fault in faults]
    assert drawn == [True, True, False, False]
    assert faults[2].endswith("did you mean 'undermount-229'?")
    assert faults[3].endswith(" draws it)")
