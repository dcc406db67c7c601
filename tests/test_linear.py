"""Twice the fronts is twice the work: ten thousand of them are a matter of seconds.

Lines run are counted, not seconds, so that it is the same on every machine. Work that is linear
grows from 8 boxes to 16 by twice of what it grows from 4 to 8; if each box were held against
each other it would be four times.
"""

import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path
from types import FrameType
from typing import Any

import pytest

from jigs.checks.cutting import with_cutting
from jigs.checks.rubbing import with_rubbing
from jigs.cutlist.cutlist import choose_parts
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from jigs.reading.inputs import read_job
from templates.labels.labellist import list_labels
from templates.lists.holelist import holes_csv, holes_json, holes_text
from templates.lists.orderlist import order_csv, order_json
from templates.lists.ordertables import order_text
from templates.lists.partslist import parts_csv, parts_json
from templates.lists.partstables import parts_text
from templates.lists.supplierlist import fronts_csv
from templates.words.findings import check_text

MOST = 2.1


def count_lines(run: Callable[[], object]) -> int:
    """Count the lines of Python that a run goes through, comprehensions time by time."""
    count = 0

    def trace(frame: FrameType, event: str, arg: Any) -> Any:
        nonlocal count
        count += 1
        return trace

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        run()
    finally:
        sys.settrace(before)
    return count


@cache
def runs(folder: Path, boxes: int) -> dict[str, Callable[[], object]]:
    """Give what is done with a list of so many boxes, each a drawer over a door; every fifth
    door has no hand and is held back."""
    path = folder / f"{boxes}.csv"
    rows = ["id,box,kind,width,height,hinged"]
    for number in range(boxes):
        hand = "left" if number % 5 else ""
        width = 400 + number % 3
        rows.append(f"B{number}-1,B{number},drawer,{width},150,")
        rows.append(f"B{number}-2,B{number},door,{width},570,{hand}")
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    job = read_job(path)
    layout, cut = with_cutting(lay_out(job))
    parts, order = choose_parts(layout, cut), make_order(layout, cut)
    return {
        "read": lambda: read_job(path),
        "lay out": lambda: lay_out(job),
        "cut": lambda: with_cutting(layout),
        "gaps": lambda: with_rubbing(layout),
        "check": lambda: check_text(layout),
        "holes": lambda: (holes_text(layout), holes_csv(layout), holes_json(layout)),
        "parts": lambda: parts_text(parts),
        "parts as data": lambda: (parts_csv(parts), parts_json(parts)),
        "order": lambda: make_order(layout, cut),
        "order as text": lambda: order_text(order, job),
        "order as data": lambda: (order_csv(order, job), order_json(order, job)),
        "supplier's list": lambda: fronts_csv(order, job),
        "labels": lambda: list_labels(layout, cut.pieces, ()),
    }


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a folder for the lists."""
    return tmp_path_factory.mktemp("linear")


@pytest.mark.parametrize(
    "what",
    [
        "read", "lay out", "cut", "gaps", "check", "holes", "parts", "parts as data", "order",
        "order as text", "order as data", "supplier's list", "labels",
    ],
)  # fmt: skip
def test_twice_the_fronts_is_twice_the_work(what: str, folder: Path) -> None:
    """The work grows as the number of fronts does."""
    runs(folder, 4)[what]()  # what is read once for all is read
    few, more, many = (count_lines(runs(folder, boxes)[what]) for boxes in (4, 8, 16))
    assert (many - more) / (more - few) < MOST


def test_the_count_sees_what_is_quadratic() -> None:
    """Held each against each other, twice as many are four times the work."""

    def each_against_each(count: int) -> None:
        [a == b for a in range(count) for b in range(count)]

    few, more, many = (count_lines(lambda n=n: each_against_each(n)) for n in (6, 12, 24))  # type: ignore[misc]
    assert (many - more) / (more - few) > 3
