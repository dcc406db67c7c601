"""Twice the fronts is twice the work: ten thousand of them are a matter of seconds.

Lines run are counted, not seconds, so that it is the same on every machine. Work that is linear
grows from 8 boxes to 16 by twice of what it grows from 4 to 8; if each box were held against
each other it would be four times.
"""

import sys
from collections import Counter
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path
from types import CodeType, FrameType
from typing import Any

import pytest

from jigs.bench.stations import plan_stations
from jigs.checks.cutting import with_cutting
from jigs.checks.rubbing import with_rubbing
from jigs.cutlist.cutlist import choose_parts
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from jigs.reading.inputs import read_job
from templates.binding.jobstations import bind_stations
from templates.labels.labellist import list_labels
from templates.lists.holelist import holes_csv, holes_json, holes_text
from templates.lists.orderlist import order_csv, order_json
from templates.lists.ordertables import order_text
from templates.lists.partslist import parts_csv, parts_json
from templates.lists.partstables import parts_text
from templates.lists.supplierlist import fronts_csv
from templates.page.paper import PAPERS
from templates.words.findings import check_text

MOST = 2.1
MOST_OF_ONE = 3.5
"""Of one function: how often it runs may grow in steps (a card is worn after eight settings)."""
FEW = 200
"""So many lines more are no growth yet."""


def count_lines(run: Callable[[], object]) -> Counter[str]:
    """Count the lines of Python that a run goes through in each function, comprehensions time by
    time."""
    count: Counter[CodeType] = Counter()

    def trace(frame: FrameType, event: str, arg: Any) -> Any:
        count[frame.f_code] += 1
        return trace

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        run()
    finally:
        sys.settrace(before)
    named: Counter[str] = Counter()
    for code, lines in count.items():
        named[f"{code.co_filename}:{code.co_firstlineno} {code.co_name}"] += lines
    return named


def too_many(counts: Sequence[Counter[str]]) -> list[str]:
    """Name the functions that run more than in proportion, of runs each twice as long as the one
    before it: the work of one alone may hide in that of all."""
    few, more, many = counts
    return [
        name
        for name in many
        if many[name] - more[name] > MOST_OF_ONE * (more[name] - few[name]) + FEW
    ]


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
        "stations": lambda: bind_stations(layout, plan_stations(layout), PAPERS["common"]),
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
    counts = [count_lines(runs(folder, boxes)[what]) for boxes in (4, 8, 16)]
    few, more, many = (count.total() for count in counts)
    assert (many - more) / (more - few) < MOST
    assert too_many(counts) == []


@pytest.mark.slow
def test_no_part_of_the_stations_grows_faster_than_the_fronts(folder: Path) -> None:
    """A card has the more copies the more fronts it is set on, a station the more pages: nothing
    looks through all fronts for each of them."""
    runs(folder, 160)["stations"]()  # what is measured of letters once for all is measured
    # A table that may find room below its cards is tried in more ways: fewer boxes have such.
    counts = [count_lines(runs(folder, boxes)["stations"]) for boxes in (40, 80, 160)]
    assert too_many(counts) == []


def test_the_count_sees_what_is_quadratic() -> None:
    """Held each against each other, twice as many are four times the work."""

    def each_against_each(count: int) -> None:
        [a == b for a in range(count) for b in range(count)]

    counts = [count_lines(lambda n=n: each_against_each(n)) for n in (24, 48, 96)]  # type: ignore[misc]
    few, more, many = (count.total() for count in counts)
    assert (many - more) / (more - few) > 3
    (found,) = too_many(counts)
    assert found.endswith("<listcomp>")
