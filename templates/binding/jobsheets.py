"""The drilling sheets of a job: a first page, then every front, drawer box and box side.

A part that an error holds back has no sheet. A card that is the same for several parts stands
with the first of them.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.cost import PaperCost
from jigs.bench.firstarticle import first_articles, trial
from jigs.box.parts import Layout
from jigs.ground.geometry import FittingKind
from jigs.ground.grouped import grouped
from templates.binding.contents import MOST_BOXES, ContentsEntry, contents
from templates.binding.cover import begin_cover
from templates.binding.drilled import Drilled, drilled_parts
from templates.binding.firstpage import first_pages
from templates.binding.once import Cards, CardUse
from templates.binding.pageorder import in_order_of_work
from templates.binding.pincards import PinCard, PinCards
from templates.binding.planning import make_face_cards, make_free_cards
from templates.cards.card import Card
from templates.page.marks import Page
from templates.page.packing import Size
from templates.page.paper import Paper
from templates.sheets.field import Field, NoRoomError, fields_of, single_field
from templates.sheets.guide import guides_for
from templates.sheets.sheet import Placed, Plan, Sheet, Spot, draw_plan, plan_pages, rooms_of
from templates.sheets.sheetwords import SheetWords
from templates.words.coverwords import SHEETS
from templates.words.fittingwords import GuidedWork


class Sheets(Struct, frozen=True, kw_only=True):
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
        for number, plan in enumerate(self.told, start=len(self.before) + 1):
            sheet = draw_plan(plan, self.paper, number)
            yield replace(sheet, page=self.paper.scaled(sheet.page))

    @property
    def told(self) -> Iterator[Plan]:
        """The planned pages as they are drawn: each tells where what it refers to stands."""
        return _told(self.plans, len(self.before) + 1)

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
    return Sheets(
        layout=shown,
        paper=paper,
        before=before,
        plans=tuple(plans),
        strip=strip,
        no_room=tuple(no_room),
    )


def _fields(
    layout: Layout,
    parts: Iterable[Drilled],
    paper: Paper,
    guides: Mapping[GuidedWork, int],
    *,
    each: bool,
    strip: bool,
) -> list[Field]:
    """Give the fields of all parts in order; `guides`: the page of each kind of work's steps."""
    rooms = rooms_of(paper)
    cards = Cards(each=each)
    pins = PinCards(layout, cards)
    faces: list[_Face] = []
    for part in parts:
        for view in part.views:
            words = SheetWords(view=view, part=part.words, guides=guides)
            free = make_free_cards(view, paper, cards.blanks, strip=strip)
            make = partial(
                make_face_cards, words, paper, rooms, cards.count + 1, cards.blanks, free,
                strip=strip,
            )  # fmt: skip
            # How much room its own page has is asked only where a card is to stand there.
            made, uses = free, cards.join(free) if free else None
            if uses is None:
                made, own, sizes = make()
                words, uses = replace(words, own=own), cards.use(made, sizes)
            faces.append(_Face(words=words, uses=uses, crosses=pins.use(view, made, make)))
    _lead(faces)
    led = grouped((face.leader, face) for face in faces if face.leader is not None)
    fields: list[Field] = []
    for number, face in enumerate(faces):
        if face.leader is None:
            fields += face.fields(led.get(number, []), pins, rooms)
    return fields


class _Face(Struct, kw_only=True):
    """A face with its cards, while it is seen with which others it stands. `leader`: which face
    has all its cards."""

    words: SheetWords
    uses: list[CardUse]
    crosses: list[PinCard]
    leader: int | None = None

    @property
    def kinds(self) -> set[FittingKind]:
        """Give the kinds of what is bored in it."""
        return {fitting.kind for fitting in self.words.view.fittings}

    @property
    def as_row(self) -> SheetWords:
        """Give its words with the cards that stand with other parts."""
        elsewhere = tuple(use.elsewhere for use in self.uses if not use.own)
        return replace(self.words, elsewhere=elsewhere)

    def fields(self, led: Sequence["_Face"], pins: PinCards, rooms: Sequence[Size]) -> list[Field]:
        """Give its fields; the faces that it leads, `led`, have rows in the first of them, where
        there is room for all, else fields of their own."""
        view = self.words.view
        lines = tuple(row for each in self.crosses for row in pins.rows(each, view))
        words = replace(self.as_row, pins=lines)
        here = [use.card for use in self.uses if use.own]
        here += [pins.drawn(each) for each in self.crosses if each.stands_with(view)]
        try:
            return _with_rows(words, [face.as_row for face in led], here, rooms)
        except NoRoomError:
            if not led:
                raise
            for face in led:
                face.leader = None
            return list(fields_of(words, here, rooms))


def _with_rows(
    words: SheetWords, rows: Sequence[SheetWords], cards: Sequence[Card], rooms: Sequence[Size]
) -> list[Field]:
    """Give the fields of a face with rows in the first of them: if it is the only one, all cards
    that they name are beside them."""
    own = {card.number for card in cards}
    beside = [
        replace(
            row,
            elsewhere=tuple(replace(card, here=card.number in own) for card in row.elsewhere),
        )
        for row in rows
    ]
    if beside != [*rows]:
        single = single_field(replace(words, also=tuple(beside)), cards, rooms)
        if single is not None:
            return [single]
    return list(fields_of(replace(words, also=tuple(rows)), cards, rooms))


def _lead(faces: Sequence[_Face]) -> None:
    """Find the faces that have no card of their own, and which other has most of theirs: the same
    things are bored in it."""
    owner = {
        use.card.number: number for number, face in enumerate(faces) for use in face.uses if use.own
    }
    for face in faces:
        if face.crosses or not face.uses or any(use.own for use in face.uses):
            continue
        owners = Counter(owner[use.card.number] for use in face.uses)
        leader = max(owners, key=lambda number: (owners[number], number))
        if len(owners) == 1 or face.kinds == faces[leader].kinds:
            face.leader = leader


def _told(plans: Sequence[Plan], start: int) -> Iterator[Plan]:
    """Tell each field which of its part's it is, and on which pages its other cards are, and the
    drawer box that it is marked through; the first plan's page is `start`."""
    cards: dict[int, int] = {}
    boxes: dict[str, int] = {}
    sheets = Counter(view.part for plan in plans for view in plan.views)
    told: Counter[str] = Counter()
    for page, plan in enumerate(plans, start=start):
        cards |= {placed.card.number: page for placed in plan.cards}
        for view in plan.views:
            if view.face == "box-front":
                boxes.setdefault(view.part, page)
    for page, plan in enumerate(plans, start=start):
        spots: list[Spot] = []
        for spot in plan.spots:
            names: list[str] = []
            for view in spot.field.words.views:
                told[view.part] += 1
                count = sheets[view.part]
                names.append(f"sheet {told[view.part]}/{count}" if count > 1 else "")
            spots.append(spot.told(page, cards, boxes).numbered(names))
        yield replace(plan, spots=tuple(spots))


def _list_pages(
    plans: Sequence[Plan], parts: Iterable[Drilled], start: int
) -> Iterator[ContentsEntry]:
    """List parts and pages, the first of them page `start`, in the order of the job."""
    pages: dict[str, list[int]] = {}
    for number, plan in enumerate(plans, start=start):
        for part in dict.fromkeys(view.part for view in plan.views):
            pages.setdefault(part, []).append(number)
    for each in parts:
        if each.words.part in pages:
            found = tuple(pages.pop(each.words.part))
            yield ContentsEntry(box=each.box, part=each.words.part, pages=found)
