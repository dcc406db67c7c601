"""The order as text, CSV, JSON and workbook: all say the same, are safe to open, and read back."""

import csv
import io
import json
from pathlib import Path

import pytest
from python_calamine import CalamineWorkbook

from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.layout.layout import lay_out
from jigs.order.buying import Order, make_order
from templates.lists.orderlist import COLUMNS, order_csv, order_json, order_sheets
from templates.lists.ordertables import order_text
from templates.lists.supplierlist import fronts_csv
from templates.lists.workbook import write_workbook
from templates.words.orderwords import terms
from templates.words.textlines import WIDTH
from tests.said import reason_of

DEMO = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"
FORMULA = ("=", "+", "-", "@")


def _demo() -> tuple[Layout, Order]:
    layout = lay_out(read_in_hand(DEMO))
    return layout, make_order(layout, cut_job(layout))


def _changed(folder: Path, *changes: tuple[str, str]) -> tuple[Layout, Order]:
    """Order the demo with some of its lines changed."""
    text = DEMO.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    (folder / "fronts.csv").write_bytes((DEMO.parent / "fronts.csv").read_bytes())
    path = folder / "job.toml"
    path.write_text(text, encoding="utf-8")
    layout = lay_out(read_in_hand(path))
    return layout, make_order(layout, cut_job(layout))


def _rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_no_cell_begins_as_a_formula(tmp_path: Path) -> None:
    """A note, a finish or a record that begins with = is told as text, in CSV and workbook."""
    layout, order = _changed(
        tmp_path,
        ('note = "dishwasher"', 'note = "=1+1"\n  finish = "@x"'),
        ("[slide.side]", '[slide."=side"]'),
        ('slide = "side"', 'slide = "=side"'),
    )
    for text in (fronts_csv(order, layout.job), order_csv(order, layout.job)):
        cells = [cell for row in csv.reader(io.StringIO(text)) for cell in row]
        assert not any(cell.startswith(FORMULA) for cell in cells)
    (row,) = [row for row in _rows(fronts_csv(order, layout.job)) if row["id"] == "B4-1"]
    assert (row["note"], row["finish"]) == ("'=1+1", "'@x")
    written = write_workbook(order_sheets(order, layout.job))
    book = CalamineWorkbook.from_filelike(io.BytesIO(written))
    read = [cell for name in book.sheet_names for row in book.get_sheet_by_name(name).to_python()
            for cell in row]  # fmt: skip
    assert "'=1+1" in read
    assert not any(isinstance(cell, str) and cell.startswith(FORMULA) for cell in read)


def test_the_workbook_reads_back_and_is_the_same_each_time() -> None:
    """Heads, rows and numbers, by a library that had no part in writing them."""
    layout, order = _demo()
    sheets = order_sheets(order, layout.job)
    data = write_workbook(sheets)
    assert data == write_workbook(sheets)
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    assert book.sheet_names == list(sheets)
    for name, (heads, rows) in sheets.items():
        read = book.get_sheet_by_name(name).to_python()
        assert tuple(read[0]) == tuple(heads)
        assert [tuple(row) for row in read[1:]] == [tuple(row) for row in rows]


def test_every_format_carries_the_terms(tmp_path: Path) -> None:
    """Order of sizes, steps, tolerance, spares, boxes not measured, what is held back and why."""
    layout, order = _changed(
        tmp_path,
        ("[reveal]", '[fronts]\nincrement = "1/32"\n\n[reveal]'),
        ('  hinged = "left"                # as seen from the room; the tool never guesses it', ""),
    )
    job = layout.job
    said = terms(order, job)
    joined = " ".join(said)
    for words in (
        "WIDTH x HEIGHT x THICKNESS", "Sizes in steps of 1/32 in", "Accepted within 1/16 in",
        "one more to each ten begun", "NOT BUILT AND MEASURED YET: T1, B2", "in no sum here",
    ):  # fmt: skip
        assert words in joined
    assert said == tuple(json.loads(order_json(order, job))["terms"])
    rows = _rows(order_csv(order, job))
    assert said == tuple(row["note"] for row in rows if row["what"] == "terms")
    assert said == tuple(str(row[0]) for row in order_sheets(order, job)["terms"][1])
    flat = " ".join(order_text(order, job).split())
    assert all(" ".join(term.split()) in flat for term in said)
    # What is held back is named with its reason, and is in no sum.
    (held,) = order.held
    assert held.id == "B1-2"
    why = reason_of(held.why[0], "mm")
    data = json.loads(order_json(order, job))
    assert data["held"] == [{"id": "B1-2", "box": "B1", "why": [why]}]
    (row,) = [row for row in rows if row["part"] == "B1-2"]
    assert row["state"] == f"held back: {why}"
    assert (row["needed"], row["buy"]) == ("1", "0")
    assert f"HELD BACK: {why}" in flat


def test_each_front_says_what_it_is_ordered_from() -> None:
    """Tolerance, state of its box and sizes stand in its own row, and in the data alike."""
    layout, order = _demo()
    data = json.loads(order_json(order, layout.job))
    fronts = {front["id"]: front for front in data["fronts"]}
    assert data["tolerance_mm"] == 1.6
    assert fronts["T1-3"]["box_state"] == "planned"
    assert fronts["B1-1"]["box_state"] == "measured"
    for row in _rows(order_csv(order, layout.job)):
        if row["what"] != "front":
            continue
        front = fronts[row["part"]]
        planned = front["box_state"] == "planned"
        assert ("NOT BUILT AND MEASURED YET" in row["state"]) is planned
        assert float(row["tolerance_mm"]) == 1.6
        for column in ("width_mm", "height_mm", "thickness_mm"):
            assert float(row[column]) == front[column]
        assert row["bored"] == ("yes" if front["bored"] else "no")


def test_the_data_says_what_the_text_says() -> None:
    """Counts, drawer boxes and paint are alike in all."""
    layout, order = _demo()
    job = layout.job
    data = json.loads(order_json(order, job))
    text = order_text(order, job)
    rows = _rows(order_csv(order, job))
    assert tuple(rows[0]) == COLUMNS
    assert data["schema"] == 1
    assert len(data["fronts"]) == len(order.fronts) == sum(row["what"] == "front" for row in rows)
    bought = [
        (int(row["needed"]), int(row["spare"]), int(row["buy"]))
        for row in rows
        if row["unit"] in ("piece", "pair") and row["what"] not in ("front", "drawer box")
    ]
    assert bought == [(i.count, i.spare, i.count + i.spare) for i in order.items]
    assert bought == [(i["needed"], i["spare"], i["buy"]) for i in data["hardware"]]
    for item in order.items:
        assert f"= {item.count + item.spare}" in text
    assert f"{data['paint'][0]['area_m2']:.2f} m2" in text
    boxes = [row for row in rows if row["what"] == "drawer box"]
    assert [row["part"].split() for row in boxes] == [list(b.parts) for b in order.drawer_boxes]
    assert [
        tuple(float(row[c]) for c in ("width_mm", "height_mm", "length_mm", "thickness_mm"))
        for row in boxes
    ] == [
        tuple(b[c] for c in ("width_mm", "height_mm", "length_mm", "side_mm"))
        for b in data["drawer_boxes"]
    ]
    assert {row["record"] for row in boxes} == {"runner", "side"}


def test_it_says_what_nobody_has_confirmed_or_said(tmp_path: Path) -> None:
    """Plates bought for an unconfirmed hinge may be the wrong ones; nothing is said of others."""
    layout, order = _demo()
    assert {(n.record, n.key) for n in order.open} >= {("spare", "constant"), ("spare", "plates")}
    text = " ".join(order_text(order, layout.job).split())
    assert "hinge 'spare' (constant, plates, fixing_spacing, fixing_inboard, cup_depth)" in text
    data = json.loads(order_json(order, layout.job))
    spare = {row["key"]: row["value_mm"] for row in data["open"] if row["record"] == "spare"}
    assert spare["fixing_spacing"] == 48
    assert data["assumed"] == []
    layout, order = _changed(tmp_path, ('side = "18.3 mm" ', "#"))
    text = " ".join(order_text(order, layout.job).split())
    assert "ASSUMED, because the job does not say: side thickness 18.0 mm" in text


def test_no_line_is_wider_than_the_terminal() -> None:
    """Drawer boxes and five-piece fronts too."""
    layout, order = _demo()
    assert max(map(len, order_text(order, layout.job).splitlines())) <= WIDTH


@pytest.mark.parametrize(
    ("said", "buys"),
    [('drawer_boxes = "made"', False), ("", False), ('drawer_boxes = "ordered"', True)],
)
def test_drawer_boxes_are_cut_or_bought_and_never_both(
    tmp_path: Path, said: str, buys: bool
) -> None:
    """They are listed, to be made from the cut list unless they are ordered."""
    layout, order = _changed(tmp_path, ("[build]", f"[build]\n{said}"))
    rows = [r for r in _rows(order_csv(order, layout.job)) if r["what"] == "drawer box"]
    assert rows
    data = json.loads(order_json(order, layout.job))["drawer_boxes"]
    assert all(row["buy"] == (row["needed"] if buys else "0") for row in rows)
    assert all(b["buy"] == (b["needed"] if buys else 0) for b in data)
    assert ("made from the parts list" in order_text(order, layout.job)) is not buys
    head = "to be bought" if buys else "made as the parts list says, not bought"
    assert f"Drawer boxes, {head}; outside WIDTH" in order_text(order, layout.job)
    cut = any(piece.kind == "drawer-side" for piece in cut_job(layout).pieces)
    assert cut is not buys


def test_grain_runs_with_the_height_unless_it_is_mdf(tmp_path: Path) -> None:
    """Of a board with a grain each front says so, in the supplier's list too."""
    layout, order = _demo()
    assert {row["grain"] for row in _rows(fronts_csv(order, layout.job))} == {""}
    layout, order = _changed(tmp_path, ('front_kind = "mdf"', 'front_kind = "plywood"'))
    assert {row["grain"] for row in _rows(fronts_csv(order, layout.job))} == {"height"}
    assert "Grain runs with the height" in order_text(order, layout.job)


def test_a_framed_front_says_how_thick_what_fills_it_is(tmp_path: Path) -> None:
    """A pane of 5, a panel of 1/4 in = 6.35: never a unit without its figure."""
    panes = ('panel = "1/4"', 'panel = "5 mm"\n  glass = true')
    for changes, wanted in (((panes,), "glass 5.0 mm"), ((), "panel 6.4 mm")):
        layout, order = _changed(tmp_path, *changes)
        (row,) = [row for row in _rows(order_csv(order, layout.job)) if row["part"] == "W2-1L"]
        assert wanted in row["note"]
