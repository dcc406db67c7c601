"""Other words in the tables of templates/words: they stand on sheets, labels and the order, and
nothing that is decided is decided otherwise. No translation: a dozen words of another language.
"""

from dataclasses import dataclass
from typing import Any

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_job
from jigs.order.buying import make_order
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.labels.labellist import list_labels
from templates.lists.holelist import holes_csv, holes_json
from templates.lists.ordertables import order_text
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.sheets.guide import guides_for
from templates.words import payload, saying
from templates.words.facewords import FACE_WORDS
from templates.words.guidewords import GUIDES
from templates.words.holewords import HOLE_WORDS
from templates.words.orderwords import ITEM_WORDS
from templates.words.piecenames import PIECE_WORDS
from templates.words.wording import FRONT_SHORT, FRONT_WORDS
from tests.templates.printed import laid_out

BOXES = "".join(
    f"""
[[box]]
id = "B{number}"
kind = "base"
wall = "north"
width = 457.2
height = 774.7
depth = 584.2
front = [{{kind = "drawer", height = 152.4}}, {{kind = "door"{hand}, finish = "{finish}"}}]
"""
    for number, hand, finish in (
        (1, ', hinged = "left"', "sage"),
        (2, ', hinged = "left"', "chalk"),
        (3, "", "sage"),
    )
)
"""Two boxes that are alike but for their paint; one whose door is held: nobody says its hand."""

SWAPPED = {
    "door": "tür",
    "drawer front": "schubladenfront",
    "BACK OF {}": "RÜCKSEITE {}",
    "INSIDE OF {}": "INNEN {}",
    "FRONT OF DRAWER BOX": "KASTENFRONT",
    "Cup": "Topf",
    "Plate": "Platte",
    "BOTTOM": "BODEN",
    "DRAWER BOX SIDE": "KASTENSEITE",
    "hinge": "scharnier",
    "pair of slides": "paar auszüge",
    "HOLD": "HALT",
}


@dataclass(frozen=True, slots=True)
class Made:
    """What is printed, as words; and what was decided, as values."""

    sheets: str
    labels: str
    scanned: str
    order: str
    decided: tuple[object, ...]


def make() -> Made:
    """Make sheets, labels, the order and the holes of the boxes anew."""
    layout = laid_out(BOXES)
    cut = cut_job(layout)
    sheets = make_sheets(layout, PAPERS["common"])
    labels = list_labels(layout, cut.pieces, ())
    order = make_order(layout, cut)
    parts = list(drilled_parts(layout))
    said = [
        sentence
        for words in (part.words for part in parts)
        for sentences in (words.notes, *words.facts.values())
        for sentence in sentences
    ]
    return Made(
        sheets=" ".join(m.text for page in sheets.pages for m in page.marks if isinstance(m, Text)),
        labels=" ".join(way for label in labels for line in label.lines for way in line.ways),
        scanned=" ".join(label.payload.fit(40) for label in labels),
        order=order_text(order, layout.job),
        decided=(
            holes_json(layout),
            holes_csv(layout),
            tuple(
                guides_for(
                    (view for part in parts for view in part.views), 2, PAPERS["common"]
                ).wanted
            ),
            [placed.card.parts for _, placed in sheets.cards],
            [sentence.bold for sentence in said],
            [(label.part, label.hold, label.code) for label in labels],
            [front.front.id for front in order.fronts],
            [(held.id, held.box) for held in order.held],
            [(item.group, item.name, item.count) for item in order.items],
        ),
    )


@pytest.fixture
def swapped(monkeypatch: pytest.MonkeyPatch) -> None:
    """Put other words into the tables."""
    tables: tuple[dict[Any, str], ...] = (FRONT_WORDS, FRONT_SHORT, FACE_WORDS, ITEM_WORDS)
    for table in tables:
        for key, word in table.items():
            monkeypatch.setitem(table, key, SWAPPED.get(word, word))
    for kind, ways in PIECE_WORDS.items():
        monkeypatch.setitem(PIECE_WORDS, kind, tuple(SWAPPED.get(way, way) for way in ways))
    for purpose in ("cup", "plate"):
        words = HOLE_WORDS[purpose]
        monkeypatch.setitem(HOLE_WORDS, purpose, replace(words, name=SWAPPED[words.name]))
    monkeypatch.setattr(payload, "HOLD", SWAPPED[payload.HOLD])
    for work, guide in GUIDES.items():
        steps = tuple(f"Schritt {row}" for row, _ in enumerate(guide.steps))
        monkeypatch.setitem(GUIDES, work, replace(guide, title=f"ANLEITUNG {work}", steps=steps))


def test_other_words_change_no_decision(swapped: None, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same holes, the same parts alike, the same held, ordered and set bold; each of the other
    words stands where the first stood."""
    other = make()
    monkeypatch.undo()
    first = make()
    assert other.decided == first.decided
    parts = first.decided[3]
    assert isinstance(parts, list)
    assert max(len(each) for each in parts) > 1, "parts that are alike"
    for text, words in (
        (first.sheets, ("BACK OF DOOR", "INSIDE OF LEFT SIDE", "FRONT OF DRAWER BOX")),
        (first.sheets, ("DRAWER FRONT", "Cup", "Plate:")),
        (first.labels, ("DOOR", "BOTTOM", "DRAWER BOX SIDE")),
        (first.scanned, ("DOOR HINGES", "HOLD")),
        (first.order, ("door", "hinge", "pair of slides")),
        (other.sheets, ("RÜCKSEITE TÜR", "INNEN LEFT SIDE", "KASTENFRONT", "Topf", "Platte")),
        (
            first.sheets,
            ("DOORS, FROM BEHIND: HINGES", "Measure both bars with a steel rule; wrong"),
        ),
        (other.sheets, ("ANLEITUNG hinges", "Schritt 0")),
        (other.labels, ("TÜR, HINGES LEFT", "SCHUBLADENFRONT", "BODEN", "KASTENSEITE")),
        (other.scanned, ("TUR HINGES", "HALT")),
        (other.order, ("tür", "schubladenfront", "scharnier", "paar auszüge")),
    ):
        for word in words:
            assert word in text


def test_a_finding_says_itself_in_other_words(monkeypatch: pytest.MonkeyPatch) -> None:
    """Its code and what it holds back stay; fact and remedy are those of the table."""
    said = {"fact": "einzelne Tür, und keiner sagte die Seite", "remedy": "nenne hinged"}
    others = saying.words_of
    words = {"hand-not-stated": said}
    monkeypatch.setattr(saying, "words_of", lambda code: words.get(code) or others(code))
    saying.say.cache_clear()
    try:
        text = make().order
    finally:
        saying.say.cache_clear()
    assert "HELD BACK: hand not stated: einzelne Tür, und keiner sagte die Seite" in text
