"""Cards: small templates at full scale."""

from collections import Counter

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.bench.benchpart import marks_of
from jigs.given.hardware import PullRecord
from jigs.given.job import BoxKind, FrontSpec, Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.cards.blank import Blanks
from templates.cards.card import NEIGHBOURS, Card, compose_card, make_cards
from templates.cards.likeness import card_key
from templates.cards.setout import CLEAR
from templates.faces.faceview import FaceView
from templates.faces.reference import FOLD_REACH, REACH
from templates.faces.views import view_of_drawer_box, view_of_side, views_of_front
from templates.page.marks import Area, Circle, Line, Text
from templates.page.paper import Paper
from templates.sheets.sheet import Placed
from templates.words.facewords import drilled_words
from tests import uneven
from tests.jigs.sample import SLIDE, box, front_of, job
from tests.jobs import jobs, papers
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards, worked_layout

WIDE = ((1000.0, 1000.0),)
SCREWS = ("front-fixing", "clearance")


def texts(card: Card) -> list[str]:
    return [mark.text for mark in card.marks if isinstance(mark, Text)]


def bold(card: Card) -> list[str]:
    return [mark.text for mark in card.marks if isinstance(mark, Text) and mark.bold]


# --- the worked sheets ------------------------------------------------------------------------


def test_the_lower_cup_is_set_on_hinge_edge_and_bottom() -> None:
    """A black corner lower right: 22.5 in, 97.75 up, as the back is seen."""
    bottom, top = only_cards("B3-2", "back")
    assert {reference.edge for reference in bottom.edges} == {"right", "bottom"}
    assert bottom.index == ()
    cup = next(hole for hole in bottom.holes if hole.purpose == "cup")
    assert [cup.x, cup.y] == pytest.approx([431.5, 97.75])
    assert {"97.8", "22.5", "32.0"} <= set(bold(bottom))
    assert [reference.edge for reference in top.edges] == ["right"]


def test_the_upper_cup_keeps_its_distance_from_the_bottom() -> None:
    """Its ladder says 611, 612, 613, 614, 615, the true height bold, and where to cut; the
    lines lie where they say, a millimetre apart."""
    bottom, top = only_cards("B3-2", "back")
    assert bottom.ladder is None
    assert top.ladder == pytest.approx(613.0)
    steps = [f"{613.0 + step:.1f}" for step in (-2, -1, 0, 1, 2)]
    assert [text for text in texts(top) if text in steps] == steps
    assert [text for text in bold(top) if text in steps] == ["613.0"]
    assert "EDGE LADDER: CUT AT YOUR HEIGHT" in texts(top)
    rungs = [
        mark.y1 for mark in top.marks
        if isinstance(mark, Line) and mark.y1 == mark.y2
        and abs(mark.x2 - mark.x1) > 0.9 * (top.box[2] - top.box[0] - 13.0)
    ]  # fmt: skip
    assert sorted({round(y, 6) for y in rungs} & {611.0, 612.0, 613.0, 614.0, 615.0}) == [
        611.0, 612.0, 613.0, 614.0, 615.0,
    ]  # fmt: skip
    assert "513.8" in bold(top)


def test_the_pull_of_a_door_hangs_from_its_free_top_corner() -> None:
    """50.8 from the free edge, 63.5 and 223.5 below the top (worked example)."""
    (card,) = only_cards("B3-2", "front")
    assert {reference.edge for reference in card.edges} == {"right", "top"}
    assert {"50.8", "63.5", "223.5"} <= set(bold(card))


def test_the_pull_of_a_drawer_is_set_on_the_middle() -> None:
    """80.0 left and right of it, 76.2 below the top."""
    (card,) = only_cards("B3-1", "front")
    assert [(r.kind, r.axis) for r in card.index] == [("middle", "x")]
    assert [r.edge for r in card.edges] == ["top"]
    assert bold(card).count("80.0") == 2
    assert "76.2" in bold(card)
    words = " ".join(texts(card))
    assert "set on the MIDDLE" in words


def test_a_drawer_box_is_placed_by_a_card_at_each_lower_corner() -> None:
    """22.2 from its end and 30.7 up (worked example), on a black bottom corner, without a hole."""
    left, right = only_cards("B1-4", "back")
    assert [card.fitting.stands for card in (left, right)] == [
        pytest.approx((22.2, 30.7), abs=0.05), pytest.approx((454 - 22.2, 30.7), abs=0.05),
    ]  # fmt: skip
    assert {r.edge for r in left.edges} == {"left", "bottom"}
    assert {r.edge for r in right.edges} == {"right", "bottom"}
    for card, corner in ((left, "LEFT"), (right, "RIGHT")):
        assert card.holes == ()
        assert {"22.2", "30.7"} <= set(bold(card))
        assert f"its {corner} LOWER CORNER stands" in " ".join(texts(card))


def test_the_screws_of_a_drawer_front_have_a_card_at_each_end() -> None:
    """With pilots from paper: 70.1 from its end (worked example), on a black bottom corner."""
    view = views_of_front(front_of(worked_layout("in"), "B3-1"), "in", pilots=True)[0]
    left, right = make_cards(view, WIDE, Blanks())
    assert {r.edge for r in left.edges} == {"left", "bottom"}
    assert {r.edge for r in right.edges} == {"right", "bottom"}
    for card in (left, right):
        assert {"70.1", "55.7", "94.6"} <= set(bold(card))


@pytest.mark.parametrize(("side", "edge"), [("B1-SIDE-L", "left"), ("B1-SIDE-R", "right")])
def test_four_slides_stand_over_bottom_edge_and_whole_inches(side: str, edge: str) -> None:
    """Bottom edge, 10, 17 and 25 in; 33.0, 257.0, 449.0, 641.0 over the bottom panel, 18.3
    less than from the end; 37 - 0.6 = 36.4 from the raw edge (derived)."""
    cards = sorted(only_cards(side, "inside"), key=lambda card: card.number)
    assert [card.edges[0].edge for card in cards] == [edge] * 4
    ups = [next(r for r in (*card.edges, *card.index) if r.axis == "y") for card in cards]
    assert [(r.kind, r.edge, round(r.value / 25.4, 9)) for r in ups] == [
        ("edge", "bottom", 0),
        ("index", "bottom", 10),
        ("index", "bottom", 17),
        ("index", "bottom", 25),
    ]
    for card, line, over in zip(
        cards, (51.3, 275.3, 467.3, 659.3), (33.0, 257.0, 449.0, 641.0), strict=True
    ):
        assert f"{line:.1f}" in bold(card)
        words = " ".join(texts(card))
        assert f"{over:.1f} over" in words
        assert "36.4 raw edge" in words
        assert "164.4 raw" in words


def test_metric_index_lines_are_whole_tens() -> None:
    """250, 440 and 630."""
    cards = only_cards("B1-SIDE-L", "inside", "mm")
    assert [r.value for card in cards for r in card.index] == [250.0, 440.0, 630.0]


def test_the_lowest_card_of_a_side_is_cut_for_a_box_already_assembled() -> None:
    """A dashed line at 18.3 right across, on no other card."""
    for row, card in enumerate(only_cards("B1-SIDE-L", "inside")):
        # The slide lies on the panel: its own outline, thinner, may run along the same line.
        cuts = [
            mark for mark in card.marks
            if isinstance(mark, Line) and mark.dash == "dashed" and mark.width == 0.25
            and mark.y1 == mark.y2 == pytest.approx(18.3)
        ]  # fmt: skip
        assert len(cuts) == (1 if row == 0 else 0)
        assert ("BOX ASSEMBLED?" in " ".join(texts(card))) is (row == 0)
        for cut in cuts:
            assert abs(cut.x2 - cut.x1) == pytest.approx(card.box[2] - card.box[0] - 13.0, abs=1.0)


def test_black_lies_outside_the_part_and_ends_on_its_edge() -> None:
    """3 mm wide: white meets black at x = 454 and y = 0 on the back of the door."""
    card = only_cards("B3-2", "back")[0]
    bands = [
        tuple(zip(*mark.points, strict=True)) for mark in card.marks
        if isinstance(mark, Area) and len(mark.points) == 4
    ]  # fmt: skip
    boxes = [(min(xs), min(ys), max(xs), max(ys)) for xs, ys in bands]
    upright = next(box for box in boxes if box[2] - box[0] == pytest.approx(3.0))
    lying = next(box for box in boxes if box[3] - box[1] == pytest.approx(3.0))
    assert [upright[0], upright[2]] == pytest.approx([454.0, 457.0])
    assert [lying[1], lying[3]] == pytest.approx([-3.0, 0.0])
    fold = "no black on face, no white on edge"
    assert f"FOLD DOWN: HINGE EDGE; {fold}" in texts(card)
    assert {"FOLD DOWN: BOTTOM EDGE;", fold} <= set(texts(card))


@pytest.mark.parametrize("pilots", [False, True])
def test_clearance_holes_are_set_from_the_end_they_are_near(pilots: bool) -> None:
    """Fold on fold, the same corner cards for drawer boxes of two heights; a front that has its
    pilots from paper has both patterns from below."""
    text = uneven.UNEVEN.replace("height = 200", "height = 240")
    cards: list[Card] = []
    for front in laid_out(text).fronts:
        if front.drawer is not None:
            marks = None if pilots else marks_of(front)
            view = view_of_drawer_box(front.drawer, uneven.DRAWER_SIDE, "mm", marks)
            assert view is not None
            cards += make_cards(view, WIDE, Blanks())
    upper = [card for card in cards if all(h.y > card.view.height / 2 + 1 for h in card.holes)]
    assert upper
    for card in upper:
        (up,) = (r for r in (*card.edges, *card.index) if r.axis == "y")
        assert up.edge == ("bottom" if pilots else "top")
        assert pilots or up.kind == "edge"
    keys = Counter(card_key(card) for card in cards)
    assert sum(count > 1 for count in keys.values()) == (2 if pilots else 4)


# --- whatever a kitchen has -------------------------------------------------------------------


def test_a_fitting_that_no_paper_holds_is_divided() -> None:
    """Each hole once, on several cards."""
    view = only_cards("B3-1", "front")[0].view
    cards = make_cards(view, ((120.0, 170.0),), Blanks())
    assert len(cards) == 2
    assert [hole for card in cards for hole in card.holes] == list(view.fittings[0].holes)
    assert len(make_cards(view, WIDE, Blanks())) == 1


@pytest.mark.parametrize(("kind", "height"), [("tall", 2200.0), ("base", 774.7), ("wall", 700.0)])
def test_a_long_pull_is_never_on_two_cards(kind: BoxKind, height: float) -> None:
    """Its screws 192 apart, far from both ends or 64 from a corner: the card's own words stand
    between them, so that the page beside a column of words holds it."""
    pull = PullRecord(name="long", centers=192.0)
    door = FrontSpec(id="A", kind="door", hinged="left")
    layout = lay_out(job(replace(box(door, kind=kind), height=height), pull=pull))
    face = views_of_front(front_of(layout, "A"), "mm")[1]
    (card,) = make_cards(face, ((136.8, 253.1),), Blanks())
    assert len(card.holes) == 2
    plan = card.plan
    low, high = sorted(plan.rows)
    assert low < plan.heading_v < plan.heading_v + plan.heading.height < high


def test_a_slide_that_no_paper_holds_is_divided_alike_on_both_sides() -> None:
    """Its holes at 37 and 165 on a fold over the front edge, that at 261 on lines."""
    slide = replace(SLIDE, fixing_at=(37.0, 165.0, 261.0))
    layout = lay_out(job(box(FrontSpec(id="A", kind="drawer")), slide=slide))
    for side in layout.sides:
        face = view_of_side(side, "mm")
        assert face is not None
        cards = make_cards(face, ((189.0, 253.0), (257.0, 184.0)), Blanks())
        assert [len(card.holes) for card in cards] == [2, 1], side.side
        assert [any(e.axis == "x" for e in card.edges) for card in cards] == [True, False]


def faults_of(placed: list[Placed], rooms: Paper) -> list[str]:
    """What is wrong with the cards of one face, whichever part it is."""
    cards = [spot.card for spot in placed]
    view: FaceView = cards[0].view
    faults: list[str] = []
    pins = any(fitting.kind == "shelf" for card in cards for fitting in card.fittings)
    fittings = [each for each in view.fittings if pins or each.kind != "shelf"]
    wanted = Counter(hole for fitting in fittings for hole in fitting.holes)
    if Counter(hole for card in cards for hole in card.holes) != wanted:
        faults.append("not every hole on exactly one card")
    stood = [each.stands for card in cards for each in card.fittings if each.stands]
    if stood != [each.stands for each in view.fittings if each.stands]:
        faults.append("not both corners of the drawer box on a card")
    for card in cards:
        circles = Counter((c.x, c.y, c.diameter) for c in card.marks if isinstance(c, Circle))
        if circles != Counter((h.x, h.y, h.diameter) for h in card.holes):
            faults.append(f"card {card.number}: circles that are not its holes")
        references = (*card.edges, *card.index)
        if sorted(r.axis for r in references) != ["x", "y"]:
            faults.append(f"card {card.number}: not one reference each way")
        for reference in references:
            ends = [
                reference.distance(x if reference.axis == "x" else y)
                for fitting in card.fittings
                for x, y in fitting.places
            ]
            extent, reach = max(ends) - min(ends), FOLD_REACH if reference.kind == "edge" else REACH
            # An index line gives way by up to a whole step, and to the heading below a ladder.
            if max(map(abs, ends)) > reach + 1e-6 and extent <= REACH - view.step - CLEAR:
                faults.append(f"card {card.number}: {max(ends):.1f} from its {reference.kind}")
            if reference.kind == "index":
                steps = reference.value / view.step
                if abs(steps - round(steps)) > 1e-9:
                    faults.append(f"card {card.number}: index line at {reference.value}")
        ladder = view.ladder and card.ladder is not None
        if ladder and abs((card.ladder or 0.0) - view.height) > 1e-9:
            faults.append(f"card {card.number}: its ladder stands at {card.ladder}")
    whole = {id(fitting): fitting for fitting in fittings}
    for fitting in whole.values():
        if not fitting.holes:
            continue
        mine = [card for card in cards if set(card.holes) & set(fitting.holes)]
        ys = [hole.y for hole in fitting.holes]
        apart = fitting.kind in SCREWS and max(ys) - min(ys) > NEIGHBOURS
        if len(mine) > 1 and not apart:
            # As much as a page has for a card: all but its head, its words and its bars.
            card = compose_card(
                view, fitting, ((rooms.height - 20.0, rooms.width - 90.0),), Blanks()
            )
            sizes = sorted((card.width, card.height))
            if sizes[0] < rooms.width - 95.0 and sizes[1] < rooms.width - 20.0:
                faults.append(f"{fitting.kind} {fitting.index} divided, {sizes} would fit")
    return faults


def check_cards(job: Job, paper: Paper) -> None:
    faces: dict[tuple[str, str], list[Placed]] = {}  # by part, and the face's name
    for _, placed in make_sheets(lay_out(job), paper, each=True).cards:
        if placed.card.own_frame:  # its settings are told in the table of its board
            continue
        faces.setdefault((placed.card.view.part, drilled_words(placed.card.view)), []).append(
            placed
        )
    for key, spots in faces.items():
        assert faults_of(spots, paper) == [], key


@given(jobs(), papers)
@settings(max_examples=2)
def test_cards_keep_their_rules(job: Job, paper: Paper) -> None:
    """Each hole on one card, whole fittings together, references near and at round figures."""
    check_cards(job, paper)


@pytest.mark.slow
@given(jobs(), papers)
@settings(max_examples=20)
def test_cards_of_many_jobs_keep_their_rules(job: Job, paper: Paper) -> None:
    """The same, at length."""
    check_cards(job, paper)


def test_a_card_that_fits_no_page_with_its_fold_is_cut_on_a_line_instead() -> None:
    """The index line takes the fold's place where that makes it fit."""
    card = only_cards("B1-SIDE-L", "inside")[0]
    whole = compose_card(card.view, card.fitting, WIDE, Blanks())
    assert whole.index == ()
    shifted = replace(
        card.fitting,
        holes=tuple(replace(hole, y=hole.y + 90.0) for hole in card.holes),
        outline=(),
    )
    tall = compose_card(card.view, shifted, WIDE, Blanks())
    assert tall.index == ()
    lower = compose_card(card.view, shifted, ((tall.width + 1.0, tall.height - 1.0),), Blanks())
    assert [r.axis for r in lower.index] == ["y"]
    assert lower.height < tall.height


@pytest.mark.parametrize(("width", "wanted"), [(180.0, 1), (235.0, 1), (260.0, 2)])
def test_the_back_of_a_narrow_drawer_front_is_one_card(width: float, wanted: int) -> None:
    """Its pilots share a card as long as they stand within 100 mm; then each end has its own."""
    fronts = FrontSpec(id="A", kind="drawer", height=163.5), FrontSpec(id="B", kind="drawer")
    layout = lay_out(job(box(*fronts, width=width, kind="drawer")))
    view = views_of_front(front_of(layout, "A"), "mm", pilots=True)[0]
    cards = make_cards(view, WIDE, Blanks())
    assert len(cards) == wanted
    assert Counter(h for card in cards for h in card.holes) == Counter(
        h for fitting in view.fittings for h in fitting.holes
    )
    for card in cards:
        for reference in (*card.edges, *card.index):
            ends = [reference.distance(h.x if reference.axis == "x" else h.y) for h in card.holes]
            assert max(map(abs, ends)) <= REACH
