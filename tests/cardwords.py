"""The words that every sheet and card must carry, looked for on paper."""

import re
from decimal import ROUND_HALF_UP, Decimal

from jigs.box.parts import Layout
from templates.words.guidewords import EVERY, GUIDES
from tests.cardreading import (
    Ruler,
    Wanted,
    corners_of,
    face_of,
    faces_on,
    ruler_across,
    ruler_up,
    wanted_faces,
)
from tests.pinreading import card_number
from tests.readback import PrintedCard, PrintedPage


def _codes(layout: Layout) -> dict[str, str]:
    drawers = [front.drawer for front in layout.fronts if front.drawer]
    return {
        **{front.id: front.code for front in layout.fronts},
        **{drawer.id: drawer.code for drawer in drawers},
        **{side.board: side.code for side in layout.sides},
        **{rollout.id: rollout.code for rollout in layout.rollouts},
    }


SUM = re.compile(r"((?:(?:\d+ × )?-?\d+\.\d \+ )+(?:\d+ × )?\d+\.\d) = (\d+\.\d)")


def faults_in_words(pages: tuple[PrintedPage, ...], layout: Layout) -> list[str]:
    """Look on every page for the words it must carry; in words, nothing where all are there."""
    wanted, codes = wanted_faces(layout), _codes(layout)
    doors = {f.id: f for f in layout.fronts if f.kind == "door" and f.hinged and not f.bored}
    faults: list[str] = []
    titles = (EVERY, *(guide.title for guide in GUIDES.values()))
    guides = {str(page.number) for page in pages[1:] if any(t in page.text for t in titles)}
    for page in pages[1:]:
        if str(page.number) in guides and not page.cards:
            continue
        faults += [
            f"page {page.number}: {words!r} is missing"
            for words in ("100 %",)
            if words not in page.text
        ]
        for field in page.fields:
            face = face_of(field, wanted)
            if face is None:
                faults.append(f"page {page.number}: no part or face named")
                continue
            own, *rows = _told_beside(field)
            named = [face, *(wanted[row.split(",")[0], face.words] for row in rows)]
            fixed = [
                (door := doors.get(each.part)) is not None
                and each.face == "back"
                and not door.reversible
                for each in named
            ]
            # In a row only what the words above it do not say of all.
            faults += [
                f"{each.part}: NOT REVERSIBLE is {'missing' if is_so else 'wrong'}"
                for each, text, is_so, above in zip(
                    named, (own, *rows), fixed, (False, *(fixed[0] for _ in rows)), strict=True
                )
                if ("NOT REVERSIBLE" in text) is not (is_so and not above)
            ]
            found = _faults_beside(field, own, face, codes, guides)
            found += _faults_on_cards(field, face, codes, wanted)
            for row in rows:
                other = wanted[row.split(",")[0], face.words]
                found += [f"{other.part}: {each}" for each in _faults_told(row, other, codes)]
            faults += [f"page {page.number}: {face.part}: {fault}" for fault in found]
    return faults


def _told_beside(field: PrintedPage) -> list[str]:
    """Give what is said of a face beside its cards, and of each other that has a row with it."""
    on_cards = {run for card in field.cards for run in card.runs}
    told = " ".join(run.text for run in field.runs if run not in on_cards)
    return re.split(r"ALSO (?=\S+ ?\S*?(?:, sheet \d+/\d+)?, code )", told)


def _faults_beside(
    field: PrintedPage, own: str, face: Wanted, codes: dict[str, str], guides: set[str]
) -> list[str]:
    """Look for what is said of one face, `own`, beside its cards."""
    faults = ["'UP' is missing"] if "UP" not in own else []
    found = re.search(r"STEPS: pages? ([\d, and]+)\.", own)
    if found is None or not set(re.findall(r"\d+", found[1])) <= guides:
        faults.append("says no page of steps")
    strip = "Cut the pieces out" in field.text  # they fill the sheets that follow
    elsewhere = " on page " in field.text or "PIN CARD" in field.text
    if not field.cards and not strip and not elsewhere:
        faults.append("no cards, and nothing says where they are")
    return [*faults, *_faults_told(own, face, codes), *_false_ends(field, face)]


def _faults_told(text: str, face: Wanted, codes: dict[str, str]) -> list[str]:
    """Look for what is said of the part itself: code, size, blanks, sums."""
    size = (
        f"{_tenths(face.height)} × {_tenths(face.width)}"
        if face.face == "inside"
        else f"{_tenths(face.width)} × {_tenths(face.height)}"
    )
    faults = [
        f"{words!r} is missing"
        for words in (f"code {codes[face.part]}", "Yours ____", size)
        if words not in text
    ]
    sums = SUM.findall(re.sub(" (LEFT|RIGHT)(?= [+=])", "", text))
    if not sums:
        faults.append("no sum")
    for terms, total in sums:
        steps = [term.rpartition(" × ") for term in terms.split(" + ")]
        tenths = [int(times or 1) * round(float(step) * 10) for times, _, step in steps]
        if sum(tenths) != round(float(total) * 10):
            faults.append(f"{terms} is not {total}")
    if face.corners:
        faults += _false_place(text, face)
    return faults


def _faults_on_cards(
    field: PrintedPage,
    face: Wanted,
    codes: dict[str, str],
    wanted: dict[tuple[str, str], Wanted],
) -> list[str]:
    """Look for what each card of a face says, for each of the parts that it serves."""
    faults: list[str] = []
    for card in field.cards:
        if card_number(card) is not None:
            faults += _missing_on_pin_card(card)
            continue
        faces = faces_on(card, face, wanted)
        said = [words for each in faces for words in (each.part, codes[each.part])]
        faults += [
            f"a card without {words!r}"
            for words in (*said, face.words, "UP", "50.0")
            if words not in card.text
        ]
        for each in faces:
            faults += _figures_missing(card, each.width, each.height)
            faults += _false_over_panel(card, each)
    return faults


def _missing_on_pin_card(card: PrintedCard) -> list[str]:
    """How far its crosses stand from its black, how deep they are bored, which way it lies."""
    wanted = ["code", "UP", "50.0", " dia, "]
    if card.bands:
        across = ruler_across(card)
        wanted += [_tenths(abs(ring.x - across.at)) for ring in card.rings[:1]]
    return [f"a pin card without {words!r}" for words in wanted if words not in card.text]


def _figures_missing(card: PrintedCard, width: float, height: float) -> list[str]:
    """Each hole's distances from both references, large in mm; from an index line's edge."""
    large = [run.text for run in card.runs if run.size > 3.0 and _FIGURE.fullmatch(run.text)]
    faults: list[str] = []
    for x, y in (*((ring.x, ring.y) for ring in card.rings), *corners_of(card)):
        for ruler, coordinate, length in (
            (ruler_across(card), x, width),
            (ruler_up(card), y, height),
        ):
            place = ruler.place(coordinate, length)
            distance = length - place if ruler.from_far else place
            if ruler.kind == "middle":
                distance = abs(coordinate - ruler.at)
            told = [distance]
            if _is_whole(card, ruler):  # set on both edges: counted from either, or the middle
                told = [place, length - place, abs(place - length / 2)]
            if not any(_near(value, large) for value in told):
                faults.append(f"{distance:.2f} is not written on a card")
            if ruler.kind == "index":
                inner = abs(coordinate - ruler.at)
                if not _near(inner, _FROM_LINE.findall(card.text)):
                    faults.append(f"{inner:.2f} from its line is not written on a card")
    return faults


def _false_over_panel(card: PrintedCard, face: Wanted) -> list[str]:
    """Each height said to be over the bottom panel is that of a hole on the card, and none is said
    where there is no panel to stand on."""
    told = _OVER_PANEL.findall(card.text)
    heights = [
        face.place(ring.x, ring.y, ruler_across(card), ruler_up(card))[1] - (face.panel or 0.0)
        for ring in card.rings
    ]
    return [
        f"{figure} over panel is no hole's height"
        for figure in told
        if face.panel is None or not any(_near(height, [figure]) for height in heights)
    ]


def _false_ends(page: PrintedPage, face: Wanted) -> list[str]:
    """What is said of how far in a drawer box stands: one figure for both ends only where it is
    that of both, else each end's own, as the driller sees them."""
    left, right = (_tenths(end) for end in face.ends or (-1.0, -1.0))
    both = [(end, end) for end in _EACH_END.findall(page.text)]
    return [
        f"a drawer box {told[0]} in from the left and {told[1]} from the right stands not so"
        for told in (*both, *_FROM_ENDS.findall(page.text))
        if told != (left, right)
    ]


def _false_place(text: str, face: Wanted) -> list[str]:
    """Where a drawer box stands on the front that is marked through it: both ends, the wider one
    named, and how far up. Its sum must close as written: the box keeps its width, which is
    measured, and the last term takes the rounding."""
    assert face.ends is not None
    left, right = (_tenths(end) for end in face.ends)
    wide = Decimal(_tenths(face.width - sum(face.ends)))
    rest = Decimal(_tenths(face.width)) - Decimal(left) - wide
    gap = ""
    if left != right:
        gap = f", WIDE GAP ON YOUR {'LEFT' if face.ends[0] > face.ends[1] else 'RIGHT'}"
    up = _tenths(face.corners[0][1])
    told = [*_STANDS.findall(text)]
    return [] if told == [(left, str(rest), gap, up)] else [f"{told} is not where its box stands"]


def _is_whole(card: PrintedCard, ruler: Ruler) -> bool:
    """Say whether a card has a black edge at both sides along a ruler's axis."""
    wide = [band[2] - band[0] < 3.5 for band in card.bands]
    across = ruler == ruler_across(card)
    return sum(upright is across for upright in wide) > 1


_FIGURE = re.compile(r"\d+\.\d")
_OVER_PANEL = re.compile(r"(-?\d+\.\d) over panel")
_EACH_END = re.compile(r"(\d+\.\d) mm from each end")
_FROM_ENDS = re.compile(r"(\d+\.\d) mm in from the LEFT end as you look, (\d+\.\d) from the RIGHT")
_STANDS = re.compile(
    r"Its box: (\d+\.\d) LEFT \+ [\d.]+ \+ (\d+\.\d) RIGHT = [\d.]+"
    r"([^;]*); (\d+\.\d) up"
)
_FROM_LINE = re.compile(r"(\d+\.\d) from line")


def _near(value: float, figures: list[str]) -> bool:
    """Say whether one of some printed figures is a length, to the tenth they are written to."""
    return any(abs(float(figure) - value) < 0.0502 for figure in figures)


def _tenths(mm: float) -> str:
    """A figure to the tenth, halves up, rounded apart from the code under test."""
    exact = Decimal(repr(round(mm, 6)))
    return str(exact.quantize(Decimal("0.1"), rounding=ROUND_HALF_UP))
