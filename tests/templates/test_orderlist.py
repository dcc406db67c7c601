"""The order as text, CSV, JSON and workbook: safe to open, and read back."""

import csv
import io
import json
from pathlib import Path

from python_calamine import CalamineWorkbook

from jigs.buying import Order, make_order
from jigs.cutlist.cutlist import cut_job
from jigs.layout import lay_out
from jigs.parts import Layout
from jigs.reading import read_job
from templates import orderlist
from templates.workbook import write_workbook

DEMO = Path(__file__).parents[2] / "templates" / "demo" / "job.toml"


def _demo() -> tuple[Layout, Order]:
    layout = lay_out(read_job(DEMO))
    return layout, make_order(layout, cut_job(layout))


def test_the_suppliers_list_come_back_as_delivered_is_complete(tmp_path: Path) -> None:
    """Every front of the demo is matched with itself, and nothing is said of any."""
    _, order = _demo()
    path = tmp_path / "delivered.csv"
    path.write_text(orderlist.fronts_csv(order), encoding="utf-8")
    job = read_job(DEMO, delivered=path)
    layout = lay_out(job)
    assert not [problem for problem in layout.problems if "deliver" in problem.code]
    assert not any(front.withheld for front in layout.fronts)


def test_no_cell_begins_as_a_formula(tmp_path: Path) -> None:
    """A note or a finish that begins with = is told as text, in CSV and in the workbook."""
    job = DEMO.read_text(encoding="utf-8").replace('note = "dishwasher"', 'note = "=1+1"')
    for name in ("fronts.csv",):
        (tmp_path / name).write_bytes((DEMO.parent / name).read_bytes())
    path = tmp_path / "job.toml"
    path.write_text(job, encoding="utf-8")
    layout = lay_out(read_job(path))
    order = make_order(layout, cut_job(layout))
    for text in (orderlist.fronts_csv(order), orderlist.order_csv(order)):
        cells = [cell for row in csv.reader(io.StringIO(text)) for cell in row]
        assert not any(cell.startswith(("=", "+", "-", "@")) for cell in cells)
    assert "'=1+1" in orderlist.fronts_csv(order)


def test_the_workbook_reads_back_and_is_the_same_each_time() -> None:
    """Heads, rows and numbers, by a library that had no part in writing them."""
    _, order = _demo()
    sheets = {
        "fronts": (orderlist.FRONT_COLUMNS, orderlist.front_rows(order)),
        "hardware": (orderlist.ITEM_COLUMNS, orderlist.item_rows(order)),
    }
    data = write_workbook(sheets)
    assert data == write_workbook(sheets)
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    for name, (heads, rows) in sheets.items():
        read = book.get_sheet_by_name(name).to_python()
        assert tuple(read[0]) == tuple(heads)
        assert [tuple(row) for row in read[1:]] == [tuple(row) for row in rows]


def test_the_data_says_what_the_text_says() -> None:
    """Counts and paint are alike in both."""
    layout, order = _demo()
    data = json.loads(orderlist.order_json(order, layout.job))
    text = orderlist.order_text(order, layout.job)
    assert data["schema"] == 1
    assert len(data["fronts"]) == len(order.fronts)
    for item in order.items:
        assert f"= {item.count + item.spare}" in text
    assert f"{data['paint'][0]['area_m2']:.2f} m2" in text
    assert "NOT MEASURED YET" in text
    assert data["not_measured"] == list(order.unbuilt)


def test_it_says_how_a_front_is_made() -> None:
    """Frames, rounded edges and the supplier's boring go with the order, not slabs."""
    layout, order = _demo()
    rows = {front.front.id: row for front, row in zip(order.fronts, orderlist.front_rows(order),
                                                      strict=True)}  # fmt: skip
    made = orderlist.FRONT_COLUMNS.index("description")
    for front in layout.fronts:
        told = str(rows[front.id][made])
        assert ("five-piece" in told) is (front.frame is not None), front.id
        assert ("rounded" in told) is bool(front.edge_radius), front.id
    (bored,) = [front for front in order.fronts if front.bored]
    assert bored.cups_at == (100.0, 358.0, 615.0)
    assert bored.tab == 5.0
    assert "cups 100.0 358.0 615.0 mm" in orderlist.order_text(order, layout.job)
