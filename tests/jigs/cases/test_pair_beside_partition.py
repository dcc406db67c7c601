"""A pair before the end column of a full-overlay box: one leaf hangs on the box's side and wants a
full hinge, the other on the partition and wants a half one.

The box is asymmetric: a drawer column of 300 on the left, the pair before the rest.
"""

from pathlib import Path

import pytest

from jigs.cutlist.cutlist import cut_job
from jigs.order.buying import make_order
from tests.jigs.cases.kitchen import TS, G, R, box, check, codes, front, job, lay
from tests.jigs.jobtext import faults_of
from tests.jobtexts import HEAD

HALF = """
[hinge.mine-half]
like = "cup35-half"
constant = 5.5
plates = [0, 3]
tabs = [5]
confirmed = ["constant", "plates", "fixing_spacing", "fixing_inboard", "cup_depth"]
"""
DRAWERS = [f'kind = "drawer"\nheight = {high}' for high in (160, 240)] + ['kind = "drawer"']


def beside(pair: str) -> str:
    """Write the box, its pair with these keys."""
    rows = [*DRAWERS, f'kind = "pair"\nid = "P"\ncolumn = 2\n{pair}']
    return box(*rows, width=1000, more="columns = [{ width = 300 }, { share = 1 }]")


@pytest.mark.parametrize("name", ["mine", "mine-half"])
def test_one_hinge_for_both_leaves_holds_one_of_them_back(tmp_path: Path, name: str) -> None:
    """Its kind is wrong for the other leaf; the remedy names two."""
    told = check(tmp_path, beside(f'hinge = "{name}"'), head=HEAD + HALF)
    assert told.status == 1
    assert "[hinge-kind]" in told.text
    other = {"mine": "half", "mine-half": "full"}[name]
    assert f'hinge = ["{name}", "cup35-{other}"]' in told.text


@pytest.mark.parametrize("names", ['"mine", "mine-half"', '"mine-half", "mine"'])
def test_each_leaf_takes_the_hinge_of_its_kind(tmp_path: Path, names: str) -> None:
    """In whatever order they are named: OV = C0 + K - Hp. The left leaf laps the partition by
    (18.3 - 3.2) / 2 = 7.55: 5.5 + 5 - 3 = 7.5; the right one its side by 18.3 - 1.6 = 16.7:
    15 + 5 - 3 = 17.0 (derived)."""
    layout = lay(tmp_path, beside(f"hinge = [{names}]"), head=HEAD + HALF)
    left, right = front(layout, "PL").hinge, front(layout, "PR").hinge
    assert left is not None
    assert right is not None
    assert (left.record, left.tab, left.plate) == ("mine-half", 5.0, 3.0)
    assert left.error == pytest.approx(5.5 + 5 - 3 - (TS - G) / 2)
    assert (right.record, right.tab, right.plate) == ("mine", 5.0, 3.0)
    assert right.error == pytest.approx(15 + 5 - 3 - (TS - R))
    assert not codes(layout, "PL") & {"hinge-kind", "overlay"}


def test_what_the_job_uses_may_be_of_each_kind(tmp_path: Path) -> None:
    """`[use]` takes the list too, so that no front need name it."""
    layout = lay(tmp_path, beside(""), head=HEAD + HALF, hinge='["mine", "mine-half"]')
    records = [front(layout, name).hinge for name in ("PL", "PR")]
    assert [record and record.record for record in records] == ["mine-half", "mine"]


def test_the_order_counts_each_kind(tmp_path: Path) -> None:
    """As many of the one as of the other, with their plates."""
    layout = lay(tmp_path, beside('hinge = ["mine", "mine-half"]'), head=HEAD + HALF)
    items = make_order(layout, cut_job(layout)).items
    counts = {(item.group, item.name): item.count for item in items}
    assert counts["hinge", "mine"] == counts["hinge", "mine-half"] == 2
    assert counts["plate", "mine"] == counts["plate", "mine-half"] == 2


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ('["mine", "cup35-full"]', "several of the kind full (mine, cup35-full given)"),
        ('["mine", "mine-haf"]', "unknown hinge ('mine-haf' given)"),
        ("[]", "not a list of names"),
        ('["mine", 3]', "not a list of names"),
    ],
)
def test_a_list_of_hinges_that_is_none(tmp_path: Path, given: str, said: str) -> None:
    """Each is told at its line, whether a front names them or the whole job."""
    text = job(beside(f"hinge = {given}"), head=HEAD + HALF)
    (fault,) = faults_of(tmp_path, text)
    assert said in fault
    assert fault.startswith("job.toml:")
    (fault,) = faults_of(tmp_path, job(beside(""), head=HEAD + HALF, hinge=given))
    assert said in fault
    assert "use.hinge" in fault
