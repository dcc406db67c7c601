"""What tells stations from each other, and which of them a board has besides."""

from functools import cache

from msgspec.structs import replace

from jigs.bench.station import Station
from jigs.bench.stations import plan_stations
from jigs.given.job import FrontSpec
from jigs.ground.geometry import Hand
from templates.faces.views import views_of_front
from templates.words.stationsteps import steps
from templates.words.stationwords import (
    MARKED_WORDS,
    PILOTS_WORDS,
    by_hand_words,
    drilled_faces,
    lying_words,
    reason_words,
)
from tests.jigs.bench.test_rows import kitchen


@cache
def stations(*, pilots: bool = False) -> tuple[Station, ...]:
    layout = kitchen(
        FrontSpec(id="B-1", kind="drawer", height=150.0),
        FrontSpec(id="B-2", kind="drawer", height=250.0),
        FrontSpec(id="B-3", kind="door", hinged="left"),
    )
    return tuple(plan_stations(layout, pilots=pilots))


def of(work: str, *, pilots: bool = False) -> Station:
    return next(each for each in stations(pilots=pilots) if each.work == work)


def test_fronts_marked_through_are_told_from_fronts_with_pilots() -> None:
    """Where both are in one job; one alone needs no reason."""
    marked, paper = of("fronts-on-boxes"), of("fronts-on-boxes", pilots=True)
    assert marked.marked
    assert not paper.marked
    assert reason_words(marked, (marked, paper)) == MARKED_WORDS
    assert reason_words(paper, (marked, paper)) == PILOTS_WORDS
    assert reason_words(marked, (marked,)) == ""


def test_the_sides_name_where_their_holes_by_hand_are() -> None:
    """Those inside a box, of whatever kit; what is drilled by hand in a front concerns no side."""
    sides = of("sides")
    inside = replace(sides, name="by-hand-b-3", work="by-hand", pattern="B-3")
    front = replace(inside, face="back")
    (words,) = {by_hand_words(sides, (sides, inside, front))}
    boards = dict.fromkeys(row.part.id for row in sides.rows)
    assert words == f"Holes by hand in {', '.join(boards)}: BY HAND B-3."
    assert by_hand_words(sides, (sides, front)) == ""
    assert by_hand_words(of("cups"), (sides, inside)) == ""


def test_the_face_line_of_boards_names_what_is_there() -> None:
    """Left and right sides, partitions, or what there is of them; how the boards lie is said of
    pairs and of boxes that are together apart."""
    sides = of("sides")
    board = next(row.part.board for row in sides.rows if row.part.board is not None)

    def station(*boards: tuple[Hand, int], together: bool = False) -> Station:
        rows = []
        for hand, partition in boards:
            each = replace(board, side=hand, partition=partition, assembled=together)
            rows.append(replace(sides.rows[0], part=replace(sides.rows[0].part, board=each)))
        return replace(sides, rows=tuple(rows))

    views = [view for front in kitchen().fronts for view in views_of_front(front, "mm")]
    kinds: list[tuple[list[tuple[Hand, int]], str]] = [
        ([("left", 0), ("right", 0)], "LEFT AND RIGHT SIDES"),
        ([("left", 0), ("right", 0), ("left", 1)], "LEFT AND RIGHT SIDES, AND PARTITIONS"),
        ([("right", 0), ("left", 1)], "RIGHT SIDES, AND PARTITIONS"),
        ([("left", 1), ("right", 1)], "PARTITIONS"),
    ]
    for boards, told in kinds:
        assert drilled_faces(station(*boards), views) == f"INSIDE OF {told}"
    pair: list[tuple[Hand, int]] = [("left", 0), ("right", 0)]
    apart, together = station(*pair), station(*pair, together=True)
    assert "like an open book" in lying_words(apart)
    assert "open book" not in lying_words(together)
    assert "from the BOTTOM ends" in " ".join(steps(apart))
    assert "BOTTOM ends" not in " ".join(steps(together))
    assert "TURNED" in " ".join(steps(together))


def test_the_counterbore_is_a_step_before_the_box_is_fixed() -> None:
    """Whether the front is marked through its box or has pilots; where none is, none is asked."""
    for pilots in (False, True):
        station = of("fronts-on-boxes", pilots=pilots)
        said = " ".join(steps(station, counterbored=True)).lower()
        assert said.index("counterbore") < said.index("screw the box on")
        assert "counterbore" not in " ".join(steps(station)).lower()
