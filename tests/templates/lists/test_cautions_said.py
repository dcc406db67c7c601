"""Cautions where boxes are cut, bought and hung: before anything is lifted or painted."""

import json

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import choose_parts, cut_job
from jigs.given.job import BoxKind, FrontSpec
from jigs.order.buying import make_order
from templates.elevations.elevation import draw_elevations
from templates.lists.orderlist import order_json
from templates.lists.ordertables import order_text
from templates.lists.partslist import parts_json
from templates.lists.partstables import parts_text
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.words.cautions import APPLIANCES, FASTEN, PAINT, TWO_PEOPLE
from tests.jigs.sample import box, lay


def said(layout: Layout) -> dict[str, str]:
    """Give what the order, the cut list and the elevations say, as one line each."""
    cut = cut_job(layout)
    order, parts = make_order(layout, cut), choose_parts(layout, cut)
    walls = [
        mark.text
        for drawn in draw_elevations(layout, PAPERS["common"])
        for mark in drawn.page.marks
        if isinstance(mark, Text)
    ]
    return {
        "order": order_text(order, layout.job),
        "order as data": " ".join(json.loads(order_json(order, layout.job))["cautions"]),
        "parts": parts_text(parts),
        "parts as data": " ".join(json.loads(parts_json(parts))["cautions"]),
        # The lowest line is drawn first.
        "elevations": " ".join(reversed(walls)),
    }


def one(kind: BoxKind, **given: float) -> Layout:
    """Lay out one box with a door."""
    door = FrontSpec(id="B1-1", kind="door", hinged="right")
    return lay(box(door, kind=kind, **given))  # type: ignore[arg-type]


@pytest.mark.parametrize("kind", ["wall", "tall"])
def test_what_is_heavy_or_hangs_is_said_everywhere(kind: BoxKind) -> None:
    """Two people, studs or blocking, fixed before loading; appliances to those who may."""
    for where, text in said(one(kind, height=900.0)).items():
        words = " ".join(text.split())
        for caution in (TWO_PEOPLE, FASTEN, APPLIANCES):
            assert caution in words, where


def test_a_base_box_alone_is_not_hung() -> None:
    """Of walls nothing is said; of the range, the sockets and local code it is."""
    for where, text in said(one("base")).items():
        words = " ".join(text.split())
        assert APPLIANCES in words, where
        assert FASTEN not in words, where


def test_paint_is_ordered_with_its_caution() -> None:
    """Exhaust, nothing that ignites it, rags; where nothing is painted, nothing is said."""
    texts = said(one("base"))
    for where in ("order", "order as data"):
        assert PAINT in " ".join(texts[where].split())
    bare = lay(box(FrontSpec(id="B1-1", kind="opening"), kind="open"))
    assert PAINT not in " ".join(said(bare)["order"].split())
