"""Flaps: where to fold is said on each, and corners where two meet are cut out."""

import pytest

from jigs.box.parts import Layout
from templates.binding.jobsheets import make_sheets
from templates.cards.card import Card
from templates.cards.flap import FLAP, flap_words, fullest
from templates.faces.faceview import FaceView
from templates.page.marks import Line, Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_width
from templates.strips.wholecard import whole_card
from templates.words.facewords import drilled_words
from tests.jobtexts import box_text
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards
from tests.uneven import UNEVEN

ROUNDED = box_text("B1", "base", 'kind = "door"\nhinged = "left"\nedge_radius = 3')
TOGETHER = box_text("B1", "drawer", 'kind = "drawer"', more="assembled = true")


def words(card: Card) -> str:
    """Give all that is written on a card."""
    return " ".join(mark.text for mark in card.marks if isinstance(mark, Text))


def corner_of(card: Card) -> tuple[float, float] | None:
    """Give the middle of the crossed corner, where its two words stand; None without one."""
    cut, out = (
        [(mark.x, mark.y) for mark in card.marks if isinstance(mark, Text) and mark.text == text]
        for text in ("CUT", "OUT")
    )
    if not cut and not out:
        return None
    ((x, high),), ((_, low),) = cut, out
    return x, (high + low) / 2 + 1.1  # the middle of two lines, letters 2.5 high


def cards_of(layout: Layout, *, strip: bool = False) -> list[Card]:
    """Give all cards of a job."""
    sheets = make_sheets(layout, PAPERS["common"], strip=strip)
    return [placed.card for _, placed in sheets.cards]


@pytest.mark.parametrize("edge", ["HINGE EDGE", "BOTTOM EDGE", "FREE EDGE"])
@pytest.mark.parametrize("length", [40.0, 68.0, 100.0, 250.0])
def test_where_to_fold_is_said_on_flaps_of_any_length(edge: str, length: float) -> None:
    """Neither black on the face nor white on the edge, in two lines at most, and it fits."""
    lines = fullest(flap_words(edge, False), length)
    said = " ".join(lines)
    assert "FOLD" in said
    assert "no black" in said
    assert "no white" in said
    assert edge in said
    assert len(lines) <= 2
    assert max(text_width(line, 2.5) for line in lines) < length


def test_every_flap_says_so() -> None:
    """As often as a card has black edges to fold at."""
    for card in cards_of(laid_out(UNEVEN)):
        assert words(card).count("no white on") == len(card.edges)


def test_the_corner_of_two_flaps_is_crossed() -> None:
    """A square as wide as a flap, outside both edges: of the lower hinge of a left-hung door at
    the lower right of its back, 454 wide."""
    for card in only_cards("B3-2", "back"):
        if len(card.edges) < 2:
            assert corner_of(card) is None
            continue
        assert corner_of(card) == pytest.approx((454.0 + FLAP / 2, -FLAP / 2), abs=0.1)
        edges = {
            (mark.x1, mark.y1, mark.x2, mark.y2)
            for mark in card.marks if isinstance(mark, Line)
        }  # fmt: skip
        assert (454.0, -FLAP, 454.0 + FLAP, -FLAP) in edges
        assert (454.0, 0.0, 454.0 + FLAP, 0.0) in edges


def test_every_card_with_two_flaps_has_its_corner() -> None:
    """Of whatever part, left or right."""
    for strip in (False, True):
        for card in cards_of(laid_out(UNEVEN), strip=strip):
            if card.own_frame:  # cut out are its windows too
                continue
            assert (corner_of(card) is not None) == (len(card.edges) == 2)


def test_where_nothing_folds_no_corner_is_crossed() -> None:
    """Rounded edges: cut where white meets black. A box together: the paper stands on the panel,
    cut, and one flap alone goes down."""
    backs = [card for card in cards_of(laid_out(ROUNDED)) if card.view.face == "back"]
    together = [card for card in cards_of(laid_out(TOGETHER)) if card.view.face == "inside"]
    assert any(len(card.edges) == 2 for card in backs)
    assert any(len(card.edges) == 2 for card in together)
    assert all(corner_of(card) is None for card in (*backs, *together))
    assert all("no white on" not in words(card) for card in backs)
    assert all(words(card).count("no white on") == 1 for card in together)


def test_a_whole_face_has_a_crossed_corner_wherever_a_flap_meets_other_paper() -> None:
    """A side's four edges: two set the paper, two are checks; no corner is left but that of two
    checks."""
    view = only_cards("B3-SIDE-L", "inside")[0].view
    card = whole_card(view, 1)
    assert card is not None
    assert sum(isinstance(mark, Text) and mark.text == "CUT" for mark in card.marks) == 3


def views() -> list[FaceView]:
    """Give faces of every kind."""
    views = [card.view for card in cards_of(laid_out(UNEVEN))]
    return [*views, *(card.view for card in cards_of(laid_out(TOGETHER)))]


def test_a_card_without_a_flap_says_how_it_is_set() -> None:
    """A pull in the middle of a drawer front 760 high: a line from its top edge, and the middle,
    how both are found."""
    layout = laid_out(box_text("B1", "drawer", 'kind = "drawer"'))
    (card,) = [card for card in cards_of(layout) if card.view.face == "front"]
    assert not card.edges
    assert "SET THIS EDGE 360.0" in words(card)
    assert "CUT DIAMONDS OUT; set on the MIDDLE" in words(card)


def test_an_edge_drawn_across_a_card_is_named() -> None:
    """The upper screws of a drawer box stand 32 below its top edge, set on a line from below: the
    dashed line across the card is that edge. The lower ones have a flap on the edge they name."""
    layout = laid_out(box_text("B1", "drawer", 'kind = "drawer"\nheight = 300', 'kind = "drawer"'))
    cards = [card for card in cards_of(layout) if card.view.face == "box-front"]
    across = [card for card in cards if card.box[1] < card.view.height < card.box[3]]
    assert across
    assert all("TOP EDGE" in words(card) for card in across)
    assert not any("TOP EDGE" in words(card) for card in cards if card not in across)


def test_no_card_folds_over_a_sides_end_on_the_floor() -> None:
    """On legs of 40 a lowest drawer's slide stands 40 + 18.3 + 33 up: near enough to fold, and set
    on a line instead; the front edge is folded over still, and so is the bottom edge without legs.
    A partition's own end, on the panel, is no foot."""
    folds = {}
    for legs in (0.0, 40.0):
        text = UNEVEN.replace("above_floor = 100\n", f"legs = {legs}\n" if legs else "")
        cards = cards_of(laid_out(text.replace("height = 774.7", f"height = {774.7 + legs}")))
        folds[legs] = {
            (drilled_words(card.view), edge.edge)
            for card in cards
            if card.view.face == "inside"
            for edge in card.edges
        }
    on_floor = {(face, "bottom") for face in ("INSIDE OF LEFT SIDE", "INSIDE OF RIGHT SIDE")}
    assert on_floor & folds[0.0]
    assert folds[0.0] - folds[40.0] == on_floor & folds[0.0]
    assert any("PARTITION" in face and edge == "bottom" for face, edge in folds[40.0])
