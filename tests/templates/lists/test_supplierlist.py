"""The supplier's list: how each front is made, and that it reads back, both as a front list and
as what was delivered."""

import csv
import io
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import assume, given, settings

from cli.jobs import read_in_hand
from jigs.cutlist.cutlist import cut_job
from jigs.given.ids import LONGEST_NAME
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.order.buying import Order, make_order
from jigs.order.matching import with_delivery
from jigs.reading.deliveredlist import read_delivered
from jigs.reading.frontlist import read_front_list
from templates.lists.orderlist import order_sheets
from templates.lists.supplierlist import fronts_csv
from templates.lists.workbook import write_workbook
from tests.jobs import jobs
from tests.jobtexts import HEAD, box_text

DEMO = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"


def _order(job: Job) -> Order:
    layout = lay_out(job)
    return make_order(layout, cut_job(layout))


def _write(job: Job, path: Path) -> Path:
    if path.suffix == ".xlsx":
        path.write_bytes(write_workbook(order_sheets(_order(job), job)))
    else:
        path.write_text(fronts_csv(_order(job), job), encoding="utf-8")
    return path


@pytest.mark.parametrize("name", ["fronts.csv", "order.xlsx"])
def test_come_back_as_delivered_it_is_complete(tmp_path: Path, name: str) -> None:
    """Every front of the demo is matched with itself, and nothing is said of any."""
    path = _write(read_in_hand(DEMO), tmp_path / name)
    layout = lay_out(read_in_hand(DEMO, delivered=path))
    delivery = layout.job.delivery
    assert delivery is not None
    assert (delivery.missing, delivery.surplus) == ((), ())
    assert not any(front.withheld for front in layout.fronts)


@pytest.mark.parametrize("name", ["fronts.csv", "order.xlsx"])
def test_read_as_a_front_list_it_has_the_same_fronts(tmp_path: Path, name: str) -> None:
    """Kinds, hands, sizes, frames, edges and bores; a pair as a pair; boxes but for those with
    an opening, which a list of fronts cannot say."""
    job = read_in_hand(DEMO)
    ordered = {front.front.id: front for front in _order(job).fronts}
    listed = read_front_list(_write(job, tmp_path / name))
    specs = {spec.id: (spec, box) for box in job.boxes for spec in box.fronts
             if spec.kind != "opening"}  # fmt: skip
    assert [row.spec.id for row in listed.rows] == list(specs)
    for row in listed.rows:
        spec, box = specs[row.spec.id]
        one = ordered.get(spec.id) or ordered[f"{spec.id}L"]
        assert row.spec.kind == spec.kind
        assert row.count == 1
        assert row.spec.hinged == (None if spec.kind == "pair" else spec.hinged)
        assert (row.spec.width, row.spec.height) == pytest.approx((one.width, one.height), abs=1e-4)
        assert row.spec.five_piece.stile == spec.five_piece.stile
        assert row.spec.five_piece.panel == spec.five_piece.panel
        assert row.spec.edges.edge_radius == spec.edges.edge_radius
        assert (row.spec.boring.bored, row.spec.hung.hinges_at) == (
            spec.boring.bored,
            spec.hung.hinges_at,
        )
        assert row.spec.boring.bored_tab == spec.boring.bored_tab
        assert row.box == ("" if box.id == "T1" else box.id)


@pytest.mark.parametrize(
    ("changed", "column", "cell"),
    [
        ("kind = 'door'\nhinged = 'left'\nstile = '60 mm'\ngroove = '2 mm'", "groove", "2 mm"),
        ("kind = 'door'\nhinged = 'left'\nstile = '60 mm'\ngroove = '8 mm'", "groove", "8.0"),
        ("kind = 'door'\nhinged = 'left'\nstile = '60 mm'\npanel = '1.5 mm'", "panel", "1.5 mm"),
        ("kind = 'panel'\nheight = '28 mm'\nleaflet = 'noted'", "height", "28 mm"),
    ],
)
def test_a_size_that_is_unusual_reads_back_too(
    tmp_path: Path, changed: str, column: str, cell: str
) -> None:
    """Bare, 2 mm of groove would be refused as 2 cm: it carries its unit."""
    path, below = tmp_path / "job.toml", "kind = 'door'\nhinged = 'left'"
    path.write_text(f"{HEAD}{box_text('B1', 'base', changed, below)}", encoding="utf-8")
    job = read_in_hand(path)
    fronts = _write(job, tmp_path / "fronts.csv")
    row, _ = csv.DictReader(io.StringIO(fronts.read_text(encoding="utf-8")))
    assert row[f"{column} (mm)"] == cell
    read, other = read_front_list(fronts).rows
    holder = read.spec if column == "height" else read.spec.five_piece
    assert getattr(holder, column) == float(cell.removesuffix(" mm"))
    arrived = read_delivered(fronts, "mm")
    assert arrived.faults == ()
    book = read_front_list(_write(job, tmp_path / "order.xlsx"))
    assert [one.spec for one in book.rows] == [read.spec, other.spec]


@pytest.mark.slow
@given(jobs())
@settings(max_examples=8)
def test_whatever_a_kitchen_has_reads_back(tmp_path: Path, job: Job) -> None:
    """As a front list of as many fronts, leaves of a pair together; as delivered, all of them."""
    order = _order(job)
    names = [front.spec.id for front in order.fronts]
    # A list's own IDs have 16 characters at most; those made from a long box's may have more.
    assume(names and max(map(len, names)) <= LONGEST_NAME)
    path = _write(job, tmp_path / "fronts.csv")
    written = list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))
    rows = [row for row in written if row["kind"]]  # without what is said of those held back
    assert sum(int(row["pieces to make"]) for row in rows) == len(order.fronts)
    read = read_in_hand(path)
    kinds = Counter(front.kind for box in read.boxes for front in box.fronts)
    assert kinds == Counter(row["kind"] for row in rows)
    taken = with_delivery(job, read_delivered(path, "mm"))
    assert taken.delivery is not None
    assert set(taken.delivery.arrivals) == {front.front.id for front in order.fronts}
    assert taken.delivery.surplus == ()


def test_it_says_how_a_front_is_made() -> None:
    """Frames, rounded edges and the supplier's boring go with the order, not slabs."""
    job = read_in_hand(DEMO)
    order = _order(job)
    rows = {row["id"]: row for row in csv.DictReader(io.StringIO(fronts_csv(order, job)))}
    for front in order.fronts:
        told = rows[front.front.id if front.front.id in rows else front.front.id[:-1]]
        made = told["description"]
        assert ("five-piece" in made) is (front.front.make.frame is not None), front.front.id
        assert ("rounded" in made) is bool(front.front.make.edge_radius), front.front.id
        assert ("TWO leaves" in made) is (told["pieces to make"] == "2")
        assert told["place"] == f"box {front.front.box}, {front.front.wall}"
    assert rows["S4-1"]["hinges at (mm)"] == "100; 358; 615"
    assert "cups 100.0 358.0 615.0 mm" in rows["S4-1"]["description"]
    assert rows["B1-1"]["description"].startswith("17 7/8 x 6 x 3/4 in (454.0 x 152.4 x 19.1 mm), ")
    assert rows["B1-1"]["state"] == "built and measured"
    assert rows["B2-1"]["state"] == "NOT BUILT AND MEASURED YET"


def test_what_is_held_back_is_named_in_the_list_that_is_mailed(tmp_path: Path) -> None:
    """In a row without a size: it is made by nobody, and reads back as no front."""
    path = tmp_path / "job.toml"
    path.write_text(
        HEAD + box_text("B1", "base", 'kind = "door"\nhinged = "left"')
        + box_text("B2", "base", 'kind = "door"')
    )  # fmt: skip
    job = read_in_hand(path)
    rows = list(csv.DictReader(io.StringIO(fronts_csv(_order(job), job))))
    assert [row["id"] for row in rows[:-1]] == ["B1-1"]
    assert rows[-1]["id"] == "HELD, not in this list of 1 of 2 fronts: B2-1 (hand not stated)"
    assert not any(value for key, value in rows[-1].items() if key != "id")
    listed = read_front_list(_write(job, tmp_path / "fronts.csv"))
    assert [row.spec.id for row in listed.rows] == ["B1-1"]
