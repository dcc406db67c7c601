"""Fronts stated well enough: what is asked about doors of one count."""

from pathlib import Path

from jigs.given.job import Job
from jigs.given.listspec import ListSpec
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jigs.jobtext import JOB, read


def codes(job: Job) -> list[tuple[str, str | None]]:
    return [(problem.code, problem.part) for problem in lay_out(job).problems]


def test_doors_of_one_count_are_asked_about(tmp_path: Path) -> None:
    """Two of them stand one above the other, though a pair may be meant."""
    two = JOB.replace('kind = "door"\n', 'kind = "door"\n  count = 2\n')
    found = codes(read(tmp_path, two))
    assert ("doors-stacked", "B1-2-1") in found
    assert ("doors-stacked", "B1-2-2") in found


def test_neither_a_pair_nor_a_single_door_nor_drawers_are(tmp_path: Path) -> None:
    """Drawers of one count always stand one above the other."""
    assert "doors-stacked" not in [code for code, _ in codes(read(tmp_path, JOB))]
    pair = JOB.replace('kind = "door"\n  hinged = "left"\n', 'kind = "pair"\n')
    assert "doors-stacked" not in [code for code, _ in codes(read(tmp_path, pair))]
    drawers = JOB.replace('kind = "drawer"\n', 'kind = "drawer"\n  count = 2\n', 1)
    assert "doors-stacked" not in [code for code, _ in codes(read(tmp_path, drawers))]


def test_a_list_is_asked_as_well(tmp_path: Path) -> None:
    """A row of two doors in one box, meant to stand one above the other; two rows are two doors
    and nothing is asked."""
    path = tmp_path / "fronts.csv"
    head = "id,box,kind,width (mm),height (mm),count,hinged\n"
    path.write_text(f"{head}D,B1,door,400,300,2,left\n", encoding="utf-8")
    stacked = read_job(path, listed=ListSpec(doors_alike="stack"))
    assert [part for code, part in codes(stacked) if code == "doors-stacked"] == ["D-1", "D-2"]
    path.write_text(f"{head}D,B1,door,400,300,,left\nE,B1,door,400,300,,left\n", encoding="utf-8")
    assert "doors-stacked" not in [code for code, _ in codes(read_job(path))]


def test_nothing_more_is_said_of_a_part_held_back(tmp_path: Path) -> None:
    """Its slide is too long for the box; where its pull meets the drawer box keeps till then."""
    high = 'kind = "drawer"\n  drawer_height = "80 mm"\n'
    edge = JOB.replace('drawer = "center"', 'drawer = "45 mm"').replace(
        'kind = "drawer"\n', high, 1
    )
    assert ("pull-at-box-edge", "B1-1") in codes(read(tmp_path, edge))
    shallow = edge.replace('depth = "23"', 'depth = "12"')
    held = [front for front in lay_out(read(tmp_path, shallow)).fronts if front.withheld]
    assert [front.id for front in held] == ["B1-1"]
    assert ("pull-at-box-edge", "B1-1") not in codes(read(tmp_path, shallow))
