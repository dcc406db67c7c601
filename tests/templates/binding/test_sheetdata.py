"""The cards as data."""

import json
from typing import Any

import pytest
from msgspec.structs import replace

from jigs.ground.geometry import Fitting
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.lists.holelist import holes_json
from templates.page.paper import PAPERS
from tests.jobtexts import box_text
from tests.sheetholes import by_part, faults_of_marks
from tests.templates.printed import laid_out
from tests.templates.worked import worked_sheets
from tests.uneven import IN_LEFT, IN_RIGHT, RISE, UNEVEN

TOGETHER = "assembled = true"


def cards(part: str, face: str) -> list[dict[str, Any]]:
    data = json.loads(sheets_json(worked_sheets("in")))
    return [card for card in by_part(data) if (card["part"], card["face"]) == (part, face)]


def test_the_data_name_schema_and_paper() -> None:
    """Schema 1."""
    data = json.loads(sheets_json(worked_sheets("in")))
    assert (data["schema"], data["paper"]) == (1, "common")
    assert list(data) == ["schema", "paper", "cards"]


def test_a_card_is_described_on_its_page() -> None:
    """Places on the page less the face's origin are places on the face, to 0.0001: cups at 431.5
    from the left of the back, 97.75 and 513.75 up (worked example)."""
    bottom, top = cards("B3-2", "back")
    for card, height in ((bottom, 97.75), (top, 513.75)):
        cup = next(hole for hole in card["holes"] if hole["purpose"] == "cup")
        assert cup["x_mm"] - card["origin_mm"][0] == pytest.approx(431.5, abs=2e-4)
        assert cup["y_mm"] - card["origin_mm"][1] == pytest.approx(height, abs=2e-4)
        assert cup["diameter_mm"] == 35.0
        (right,) = [edge for edge in card["edges"] if edge["edge"] == "right"]
        assert right["at_mm"] - card["origin_mm"][0] == pytest.approx(454.0, abs=2e-4)
    assert bottom["index"] == []
    assert "ladder" not in bottom
    assert top["ladder"]["edge"] == "top"
    assert top["ladder"]["at_mm"] - top["origin_mm"][1] == pytest.approx(613.0, abs=2e-4)


def test_an_index_line_has_its_round_figure_and_a_middle_has_none() -> None:
    """10 in from the bottom; a middle is named by its axis."""
    second = next(
        card
        for card in cards("B1-SIDE-L", "inside")
        if [line["value_mm"] for line in card["index"]] == [254.0]
    )
    (line,) = second["index"]
    assert (line["from"], line["value_mm"]) == ("bottom", 254.0)
    assert line["at_mm"] == pytest.approx(second["origin_mm"][1] + 254.0, abs=2e-4)
    (pull,) = cards("B3-1", "front")
    (middle,) = pull["index"]
    assert (middle["from"], middle["value_mm"]) == ("middle-x", None)
    assert middle["at_mm"] == pytest.approx(pull["origin_mm"][0] + 454.0 / 2, abs=2e-4)


def test_heights_count_from_the_faces_own_end_in_a_box_already_together() -> None:
    """On paper 0 is the bottom panel, 18.3 above the side's end; in data a line that stands 460
    over the panel is 478.3 up the face."""
    layout = laid_out(box_text("B1", "base", 'kind = "door"\nhinged = "left"', more=TOGETHER))
    data = json.loads(sheets_json(make_sheets(layout, PAPERS["common"], only={"B1-SIDE-L"})))
    (side, _) = json.loads(holes_json(layout))["sides"]
    heights, lines = set(), []
    for card in data["cards"]:
        up = card["origin_mm"][1]
        heights |= {round(hole["y_mm"] - up, 3) for hole in card["holes"]}
        for line in card["index"]:
            assert line["at_mm"] - up == pytest.approx(line["value_mm"], abs=2e-4)
            lines.append(line["value_mm"] - 18.3)
    assert heights == {round(hole["y_mm"], 3) for hole in side["holes"]}
    assert lines
    assert lines == pytest.approx([round(line, -1) for line in lines])


def test_the_faces_of_a_partition_are_told_apart() -> None:
    """By column and side, as in the list of holes; the part is the board."""
    layout = laid_out(UNEVEN)
    boards = {side.board for side in layout.sides}
    data = json.loads(sheets_json(make_sheets(layout, PAPERS["common"], only=boards)))
    seen = {(card["column"], card["side"]): card["part"] for card in by_part(data)}
    listed = json.loads(holes_json(layout))["sides"]
    assert seen == {(side["column"], side["side"]): side["board"] for side in listed}
    assert seen[1, "right"] == seen[2, "left"] == "B1-PARTITION-1"


def test_only_boards_have_a_column_and_a_side() -> None:
    """Of a front or a drawer box nothing of the kind is said."""
    for card in by_part(json.loads(sheets_json(worked_sheets("in")))):
        assert ("side" in card) == ("column" in card) == (card["face"] == "inside")


def uneven_data(
    *, pilots: bool = False, each: bool = True
) -> tuple[dict[str, Any], dict[str, Any]]:
    """Give the cards of the uneven box, and its list of holes; of the first drawer box one hole
    is moved up, with the front's, so that it is alike to neither end nor hand."""
    layout = laid_out(UNEVEN)
    front, *others = layout.fronts
    assert front.drawer is not None
    moved = replace(
        front,
        fittings=_one_higher(front.fittings, "front-fixing"),
        drawer=replace(front.drawer, fittings=_one_higher(front.drawer.fittings, "clearance")),
    )
    layout = replace(layout, fronts=(moved, *others), sides=())
    sheets = make_sheets(layout, PAPERS["common"], pilots=pilots, each=each)
    return json.loads(sheets_json(sheets)), json.loads(holes_json(layout))


def _one_higher(fittings: tuple[Fitting, ...], kind: str) -> tuple[Fitting, ...]:
    (first, *rest), others = [f for f in fittings if f.kind == kind], [
        f for f in fittings if f.kind != kind
    ]  # fmt: skip
    low, *holes = first.holes
    return (replace(first, holes=(replace(low, y=low.y + 11.0), *holes)), *rest, *others)


def stood(data: dict[str, Any], part: str = "B1-1") -> list[dict[str, Any]]:
    """Give the cards that place the drawer box of a front."""
    return [card for card in by_part(data) if card["part"] == part and "stands" in card]


def test_a_drawer_box_is_placed_by_two_cards_without_holes() -> None:
    """Derived, see `tests.uneven`: as seen from the back 13.05 from the left, 17.8 from the
    right, 30.7 up."""
    data, _ = uneven_data()
    left, right = stood(data)
    assert left["holes"] == right["holes"] == []
    width = IN_RIGHT + 389 + IN_LEFT
    for card, x in ((left, IN_RIGHT), (right, width - IN_LEFT)):
        corner = card["stands"]
        assert corner["x_mm"] - card["origin_mm"][0] == pytest.approx(x, abs=2e-4)
        assert corner["y_mm"] - card["origin_mm"][1] == pytest.approx(RISE, abs=2e-4)


def test_marked_holes_follow_from_the_data_alone() -> None:
    """Each once, within 0.05; with pilots they stand on cards themselves: two rows of two, and
    three on the higher front."""
    data, listed = uneven_data()
    assert faults_of_marks(data, listed) == []
    assert sum("stands" in card for card in data["cards"]) == 4
    shared, _ = uneven_data(each=False)
    assert faults_of_marks(shared, listed) == []
    assert sum("stands" in card for card in shared["cards"]) == 2
    data, _ = uneven_data(pilots=True)
    assert not any("stands" in card for card in data["cards"])
    fixings = [h for c in data["cards"] for h in c["holes"] if h["purpose"] == "front-fixing"]
    marked = [h for front in listed["fronts"] for h in front["holes"] if "marked_from" in h]
    assert len(fixings) == len(marked) == 4 + 6


@pytest.mark.parametrize("wrong", ["mirrored", "exchanged", "upside down", "one too high"])
def test_a_drawer_box_that_stands_wrong_is_caught(wrong: str) -> None:
    """A front mirrored, its corners exchanged, a box upside down, one corner 0.1 too high."""
    data, listed = uneven_data()
    left, right = stood(data)
    box = next(box for box in listed["boxes"] if box["part"] == "B1-1-BOX")
    match wrong:
        case "mirrored":
            width = next(front for front in listed["fronts"] if front["id"] == "B1-1")["width_mm"]
            for card in (left, right):
                corner = card["stands"]
                x = corner["x_mm"] - card["origin_mm"][0]
                corner["x_mm"] = card["origin_mm"][0] + width - x
        case "exchanged":
            left["stands"], right["stands"] = right["stands"], left["stands"]
        case "upside down":
            for card in data["cards"]:
                if card["part"] == "B1-1-BOX":
                    low = card["origin_mm"][1]
                    for hole in card["holes"]:
                        hole["y_mm"] = 2 * low + box["height_mm"] - hole["y_mm"]
        case "one too high":
            right["stands"]["y_mm"] += 0.1
    assert faults_of_marks(data, listed)
