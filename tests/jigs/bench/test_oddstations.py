"""What is out of the ordinary at the stations: pulls and slides longer than paper, screws through
the drawer box, edges that no paper folds over, boxes on legs."""

import pytest
from msgspec.structs import replace

from jigs.bench.station import Row, Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.hardware import PullRecord, SlideRecord
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.stated import FrontEdges, OpenedBy
from jigs.layout.layout import lay_out
from tests.jigs.bench.test_stations import check_holes
from tests.jigs.sample import PULL, SLIDE, box, job, lay

DRAWERS = (
    FrontSpec(id="A-1", kind="drawer", height=163.5), FrontSpec(id="A-2", kind="drawer"),
)  # fmt: skip
MIXED = (
    FrontSpec(id="A-1", kind="drawer", height=163.5),
    FrontSpec(id="A-2", kind="door", hinged="right"),
)


def lay_with(
    *boxes: BoxSpec, pull: PullRecord = PULL, slide: SlideRecord = SLIDE, checked: bool = True
) -> tuple[Layout, tuple[Station, ...]]:
    layout = lay_out(job(*boxes, pull=pull, slide=slide))
    if checked:
        check_holes(layout)
    return layout, plan_stations(layout)


def rows(stations: tuple[Station, ...], work: str) -> list[Row]:
    return [row for station in stations if station.work == work for row in station.rows]


@pytest.mark.parametrize("centers", [64.0, 224.0, 320.0, 480.0])
def test_a_pull_longer_than_paper_has_a_card_for_each_screw(centers: float) -> None:
    """A card holds 229; beyond it each screw is set by itself."""
    wide = box(*MIXED, name="A", width=600.0)
    _, stations = lay_with(wide, pull=replace(PULL, centers=centers))
    for row in rows(stations, "pulls"):
        assert len(row.settings) == (1 if centers <= 229.0 else 2)
        for setting in row.settings:
            station = next(s for s in stations if row in s.rows)
            ys = [hole.y for hole in station.card(setting.card).holes]
            assert max(ys) - min(ys) <= 229.0


def test_a_slides_far_hole_stands_on_lines_alone() -> None:
    """At 261 behind the front edge no card reaches it: on its line, 261 from the front edge."""
    _, stations = lay_with(
        box(*DRAWERS, name="A"), slide=replace(SLIDE, fixing_at=(37.0, 261.0), carry_at=())
    )
    (station,) = [station for station in stations if station.work == "sides"]
    for row in station.rows:
        near, far = row.settings
        assert station.card(near.card).edges
        assert station.card(far.card).lines == ("x", "y")
        assert near.y == far.y
        assert far.x is not None
        assert row.part.board is not None
        assert far.x.start == row.part.board.side
        assert far.x.value == pytest.approx(261.0)


def test_screws_through_the_box_come_last() -> None:
    """Drilled after the front is fixed, at a station of their own."""
    _, stations = lay_with(box(*DRAWERS, name="A"), pull=replace(PULL, screws="through"))
    assert [station.work for station in stations][-2:] == ["fronts-on-boxes", "pulls-through"]


def test_a_rounded_edge_is_butted() -> None:
    """The same pattern, another card: no flap goes over a rounded edge."""
    rounded = tuple(replace(front, edges=FrontEdges(edge_radius=3.0)) for front in MIXED)
    _, stations = lay_with(box(*rounded, name="A"))
    for work in ("cups", "pulls", "fronts-on-boxes"):
        for station in stations:
            if station.work == work:
                assert {edge.by for card in station.cards for edge in card.edges} <= {"butt"}


def test_a_bevelled_edge_is_no_reference() -> None:
    """Below a counter the top edge is bevelled: what is counted is counted from the bottom."""
    bevelled = tuple(
        replace(front, edges=FrontEdges(profile="finger-bevel"), opened_by=OpenedBy(pull="bar"))
        for front in MIXED
    )
    _, stations = lay_with(box(*bevelled, name="A"))
    for station in stations:
        if station.face in ("front", "back"):
            for card in station.cards:
                assert all(edge.edge != "top" for edge in card.edges)
            for row in station.rows:
                starts = [setting.y.start for setting in row.settings if setting.y]
                assert "top" not in starts


def test_a_bare_front_edge_lies_inside_the_face() -> None:
    """Band still to come, 0.6: the card folds over the board as it is now."""
    layout, stations = lay_with(replace(box(*MIXED, name="A"), band="later"))
    assert layout.sides[0].band == 0.6
    (station,) = [station for station in stations if station.work == "sides"]
    for card in station.cards:
        (edge,) = card.edges
        assert edge.inside == pytest.approx(0.6)
        assert min(abs(hole.x) for hole in card.holes) == pytest.approx(37.0 - 0.6)


def test_no_card_folds_over_the_end_of_a_side() -> None:
    """Neither on legs nor together, and no other: all heights are struck."""
    plain = box(*MIXED, name="A")
    for made in (plain, replace(plain, legs=101.6), replace(plain, assembled=True)):
        _, stations = lay_with(made)
        for station in stations:
            if station.face == "inside":
                for card in station.cards:
                    assert {edge.edge for edge in card.edges} <= {"left", "right"}
                    assert "y" in card.lines


def test_a_false_front_keeps_its_pilots() -> None:
    """No drawer box stands behind it."""
    sink = box(
        FrontSpec(id="A-1", kind="false-front", height=152.4, opened_by=OpenedBy(pull="none")),
        FrontSpec(id="A-2", kind="door", hinged="left"),
        name="A", kind="sink",
    )  # fmt: skip
    _, stations = lay_with(sink)
    (row,) = rows(stations, "false-fronts")
    assert row.marks is None
    (station,) = [station for station in stations if station.work == "false-fronts"]
    holes = sum(len(station.card(setting.card).holes) for setting in row.settings)
    assert holes == 4


def test_eight_settings_wear_out_a_card() -> None:
    """Ten doors of one hand, two cups each: three cards; corner cards of drawer boxes last."""
    boxes = [
        box(FrontSpec(id=f"{name}-1", kind="door", hinged="left"), name=name)
        for name in "ABCDEFGHIJ"
    ]
    stations = plan_stations(lay(*boxes))
    (cups,) = [station for station in stations if station.work == "cups"]
    (card,) = cups.cards
    assert (card.settings, card.copies) == (20, 3)
    assert [setting.copy for row in cups.rows for setting in row.settings] == [1] * 8 + [2] * 8 + [
        3
    ] * 4
    many = [
        box(FrontSpec(id=f"{name}-1", kind="drawer", height=163.5),
            FrontSpec(id=f"{name}-2", kind="drawer"), name=name)
        for name in "ABCDEFGHIJ"
    ]  # fmt: skip
    (corners,) = [s for s in plan_stations(lay(*many)) if s.work == "drawer-boxes"]
    assert all(card.copies == 1 for card in corners.cards)
    assert max(card.settings for card in corners.cards) > 8
