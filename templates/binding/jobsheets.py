"""The drilling sheets of a job: a first page, then every front, drawer box and box side.

A part that an error holds back has no sheet. A card that is the same for several parts stands
with the first of them.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from jigs.bench.cost import PaperCost
from jigs.bench.firstarticle import first_articles, trial
from jigs.box.parts import Layout
from templates.binding.contents import MOST_BOXES, ContentsEntry, contents
from templates.binding.cover import begin_cover
from templates.binding.drilled import Drilled, drilled_parts
from templates.binding.firstpage import first_pages
from templates.binding.once import Cards, Use
from templates.binding.pageorder import in_order_of_work
from templates.binding.pincards import PinCard, PinCards
from templates.binding.planning import make_face_cards
from templates.page.marks import Page
from templates.page.paper import Paper
from templates.sheets.field import Field, NoRoomError, fields_of
from templates.sheets.guide import guides_for
from templates.sheets.sheet import Placed, Plan, Sheet, Spot, draw_plan, plan_pages, rooms_of
from templates.sheets.sheetwords import SheetWords
from templates.words.coverwords import SHEETS
from templates.words.fittingwords import Work


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The sheets of a job, planned; drawn one after the other when they are asked for.

    `before`: the pages that stand before the parts' own; `strip`: whether tall parts may have one;
    `no_room`: the parts whose cards or words find no room on this paper, and have no pages.
    """

    layout: Layout
    paper: Paper
    before: tuple[Page, ...]
    plans: tuple[Plan, ...]
    strip: bool = False
    no_room: tuple[str, ...] = ()

    def __iter__(self) -> Iterator[Sheet]:
        """Draw the first page, then part after part in the order of the job."""
        for page in self.before:
            yield Sheet(page=self.paper.scaled(page))
        for number, plan in enumerate(self.plans, start=len(self.before) + 1):
            sheet = draw_plan(plan, self.paper, number)
            yield replace(sheet, page=self.paper.scaled(sheet.page))

    @property
    def pages(self) -> Iterator[Page]:
        """The pages alone, as a writer takes them."""
        return (sheet.page for sheet in self)

    @property
    def cards(self) -> Iterator[tuple[int, Placed]]:
        """Every card with the number of its page, counted from 1."""
        for number, plan in enumerate(self.plans, start=len(self.before) + 1):
            for placed in plan.cards:
                yield number, placed

    @property
    def cost(self) -> PaperCost:
        """Count what they cost at the bench; nothing is drawn for it."""
        cards = [placed.card for plan in self.plans for placed in plan.cards]
        struck = {line for card in cards for line in card.struck}
        return PaperCost(
            pages=len(self.before) + len(self.plans),
            cards=len(cards),
            folds=sum(card.folds for card in cards),
            lines=len(struck),
        )


def make_sheets(
    layout: Layout,
    paper: Paper,
    *,
    only: Collection[str] | None = None,
    first: bool = False,
    each: bool = False,
    strip: bool = False,
    pilots: bool = False,
) -> Sheets:
    """Plan the sheets of a laid-out job on a paper.

    `only` names the parts wanted (fronts, box sides, drawer boxes, whole boxes or walls); None
    for all. `first` adds the pass marks of those parts that are tried on scrap, and leaves out the
    holes that the trial does not ask for; `each`: no card serves two parts; `strip` gives tall
    parts a strip along their edge; `pilots`: drawer fronts have pilots from paper, where they would
    be marked through their boxes.
    """
    shown = trial(layout) if first else layout
    parts = list(drilled_parts(shown, only, pilots=pilots))
    cover = begin_cover(shown, paper, SHEETS)
    guides = guides_for((view for part in parts for view in part.views), cover.count + 1, paper)
    steps, at = guides.pages(), guides.at
    marks: tuple[Page, ...] = ()
    if first:
        number = cover.count + len(steps) + 1
        marks = tuple(first_pages(first_articles(layout), paper, number))
    start = cover.count + len(steps) + len(marks) + 1
    no_room: list[str] = []
    while True:
        kept = [part for part in parts if part.words.part not in no_room]
        try:
            fields = _fields(shown, kept, paper, at, each=each, strip=strip)
            break
        except NoRoomError as error:
            no_room.append(error.part)
    plans = in_order_of_work(plan_pages(fields, paper))
    listed = list(_list_pages(plans, parts, start)) if len(shown.boxes) <= MOST_BOXES else []
    before = (*cover.pages(partial(contents, listed)), *steps, *marks)
    told = tuple(_told(plans, start))
    return Sheets(
        layout=shown, paper=paper, before=before, plans=told, strip=strip, no_room=tuple(no_room)
    )


def _fields(
    layout: Layout,
    parts: Iterable[Drilled],
    paper: Paper,
    guides: Mapping[Work, int],
    *,
    each: bool,
    strip: bool,
) -> list[Field]:
    """Give the fields of all parts in order; `guides`: the page of each kind of work's steps."""
    rooms = rooms_of(paper)
    cards = Cards(each=each)
    pins = PinCards(layout, cards)
    faces: list[tuple[SheetWords, list[Use], list[PinCard]]] = []
    for part in parts:
        for view in part.views:
            words = SheetWords(view=view, part=part.words, guides=guides)
            made, own, sizes = make_face_cards(words, paper, rooms, cards.count + 1, strip=strip)
            uses = cards.use(made, sizes)
            faces.append((replace(words, own=own), uses, pins.use(view, made, sizes)))
    fields: list[Field] = []
    for face, uses, crosses in faces:
        words = replace(face, pins=tuple(row for each in crosses
                                         for row in pins.rows(each, face.view)))  # fmt: skip
        elsewhere = tuple(use.elsewhere for use in uses if not use.own)
        here = [use.card for use in uses if use.own]
        here += [pins.drawn(each) for each in crosses if each.stands_with(face.view)]
        fields += fields_of(replace(words, elsewhere=elsewhere), here, rooms)
    return fields


def _told(plans: Sequence[Plan], start: int) -> Iterator[Plan]:
    """Tell each field which of its part's it is, and on which pages its other cards are, and the
    drawer box that it is marked through; the first plan's page is `start`."""
    cards: dict[int, int] = {}
    boxes: dict[str, int] = {}
    sheets = Counter(spot.field.words.view.part for plan in plans for spot in plan.spots)
    told: Counter[str] = Counter()
    for page, plan in enumerate(plans, start=start):
        cards |= {placed.card.number: page for placed in plan.cards}
        for view in (spot.field.words.view for spot in plan.spots):
            if view.face == "box-front":
                boxes.setdefault(view.part, page)
    for plan in plans:
        spots: list[Spot] = []
        for spot in plan.spots:
            part = spot.field.words.view.part
            told[part] += 1
            spots.append(spot.told(cards, boxes).numbered(told[part], sheets[part]))
        yield replace(plan, spots=tuple(spots))


def _list_pages(
    plans: Sequence[Plan], parts: Iterable[Drilled], start: int
) -> Iterator[ContentsEntry]:
    """List parts and pages, the first of them page `start`, in the order of the job."""
    pages: dict[str, list[int]] = {}
    for number, plan in enumerate(plans, start=start):
        for part in dict.fromkeys(spot.field.words.view.part for spot in plan.spots):
            pages.setdefault(part, []).append(number)
    for each in parts:
        if each.words.part in pages:
            found = tuple(pages.pop(each.words.part))
            yield ContentsEntry(box=each.box, part=each.words.part, pages=found)
