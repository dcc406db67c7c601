"""The drilling sheets of a job: a first page, then every front, drawer box and box side.

A part that an error holds back has no sheet.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from itertools import groupby

from jigs.bench.firstarticle import FirstArticle, first_articles, trial
from jigs.bench.marking import Marks, marks_of
from jigs.box.boxparts import parts_of_box
from jigs.box.drawerbox import Rollout
from jigs.box.parts import Front, Layout
from templates.binding.alike import Batch, batch_alike, batch_each, known_names
from templates.binding.contents import MOST_BOXES, ContentsEntry, contents
from templates.binding.cover import cover_pages
from templates.binding.firstpage import first_pages
from templates.binding.planning import AnyPlan, plan_view
from templates.binding.tight import Leaf, draw_leaf, leaves_of_box, leaves_of_part
from templates.cards.ticks import JIG, JIG_SHORT
from templates.faces.faceview import FaceView
from templates.faces.views import (
    view_of_drawer_back,
    view_of_drawer_box,
    view_of_side,
    views_of_front,
)
from templates.page.marks import Page
from templates.page.paper import Paper
from templates.sheets.guide import Guides, guides_for
from templates.sheets.panel import PartWords
from templates.sheets.partwords import (
    words_of_drawer_box,
    words_of_front,
    words_of_rollout,
    words_of_side,
)
from templates.sheets.pattern import SheetWords
from templates.sheets.sheet import Placed, Sheet
from templates.words.coverwords import SHEETS

NO_GUIDES = Guides(wanted={}, first=0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The sheets of a job, drawn one after the other when they are asked for.

    `only` names the parts wanted (fronts, box sides, drawer boxes, whole boxes or walls); None
    for all. `articles` are tried on scrap: their pass marks follow the first page. `strip`: tall
    parts have a strip along their edge. `guides`: the pages of steps that parts point to. Each
    iteration draws anew, so that a long job is never held in memory; the plans of a job of
    few boxes are, for the contents on its first page. `same`: parts with the same holes in the
    same face share one set of sheets. `tight`: small parts of one box share pages. `pilots`: drawer
    fronts have pilots from paper, where they would be marked through their boxes.
    """

    layout: Layout
    paper: Paper
    only: Collection[str] | None = None
    articles: tuple[FirstArticle, ...] = ()
    same: bool = False
    tight: bool = False
    strip: bool = False
    guides: Guides = NO_GUIDES
    pilots: bool = False

    def __iter__(self) -> Iterator[Sheet]:
        """Draw the first page, then part after part in the order of the job."""
        for sheet in self._draw():
            yield replace(sheet, page=self.paper.scaled(sheet.page))

    def _draw(self) -> Iterator[Sheet]:
        covers = self._covers()
        marks = self._marks(covers)
        number = 1 + covers + len(self.guides.at) + len(marks)
        leaves: Iterable[Leaf] = self._leaves()
        listed: list[ContentsEntry] = []
        if len(self.layout.boxes) <= MOST_BOXES:
            leaves = list(leaves)
            listed = list(_list_pages(self.layout, leaves, number))
        first = cover_pages(
            self.layout, self.paper, SHEETS, partial(contents, listed), same=self.same
        )
        for page in (*first, *self.guides.pages(self.paper), *marks):
            yield Sheet(page=page, cards=())
        for leaf in leaves:
            yield draw_leaf(leaf, self.paper, number)
            number += 1

    @property
    def pages(self) -> Iterator[Page]:
        """The pages alone, as a writer takes them."""
        return (sheet.page for sheet in self)

    @property
    def cards(self) -> Iterator[tuple[int, Placed]]:
        """Every card with the number of its page, counted from 1."""
        for number, sheet in enumerate(self, start=1):
            for placed in sheet.cards:
                yield number, placed

    @property
    def views(self) -> Iterator[FaceView]:
        """Every face that has sheets, in their order."""
        return (view for _, _, views in self._parts() for view in views)

    @property
    def any_part(self) -> bool:
        """Whether any of the parts wanted has a sheet."""
        return any(views for _, _, views in self._parts())

    def count_other(self, drawn: Mapping[str, int] | None = None) -> int:
        """Count the pages there would be if parts alike shared their sheets; if they do, those
        there would be if they did not; if small parts share pages, those there would be if they
        did not. Nothing is drawn for it.

        `drawn` are the pages there are, by their entry: with them, what stays as it is is not
        planned again.
        """
        if self.tight:
            return replace(self, tight=False).count()
        if drawn is None:
            return replace(self, same=not self.same).count()
        shared = [batch for batch in self._batches(True) if not batch.whole]
        concerned = {part for batch in shared for _, part in batch.parts}
        apart = (b for b in self._batches(False) if b.words.part in concerned)
        come = apart if self.same else iter(shared)
        entries = {batch.words.entry for batch in shared} if self.same else concerned
        pages = sum(drawn.values()) - sum(drawn.get(entry, 0) for entry in entries)
        return pages + self._count(come)

    def count(self) -> int:
        """Count the pages without drawing them."""
        covers = self._covers()
        before = covers + len(self.guides.at) + len(self._marks(covers))
        if self.tight:
            return before + sum(1 for _ in self._leaves())
        return before + self._count(self._batches(self.same))

    def _covers(self) -> int:
        """Count the first page, and those that its open numbers take."""
        return len(cover_pages(self.layout, self.paper, SHEETS, same=self.same))

    def _marks(self, covers: int) -> list[Page]:
        """Draw the pages of pass marks, which follow the first pages."""
        return (
            list(first_pages(self.articles, self.paper, 1 + covers + len(self.guides.at)))
            if self.articles
            else []
        )

    def _leaves(self) -> Iterator[Leaf]:
        """Plan page after page; with `tight`, the small parts of each box together."""
        if not self.tight:
            for batch, plans in self._planned():
                yield from leaves_of_part(batch, plans)
            return
        for _, planned in groupby(self._planned(), key=lambda each: each[0].box):
            yield from leaves_of_box(list(planned), self.paper)

    def _planned(self) -> Iterator[tuple[Batch, list[AnyPlan]]]:
        """Plan the sheets of part after part, or of parts alike together."""
        for batch in self._batches(self.same):
            yield batch, self._plan(batch)

    def _batches(self, same: bool) -> Iterator[Batch]:
        return (
            batch_alike(self._parts, known_names(self.layout))
            if same
            else batch_each(self._parts())
        )

    def _plan(self, batch: Batch) -> list[AnyPlan]:
        """Plan the sheets of a batch. What a set of several parts says besides is said as fully
        as it can be without a further page, and without cards that are parted for it."""
        planned: list[AnyPlan] = []
        jigs: tuple[tuple[str, ...], ...] = (JIG, JIG_SHORT, ()) if batch.words.members else ()
        for view in batch.views:
            plans = self._plan_least(batch, view)
            for jig in jigs:
                fuller = self._plan_face(view, replace(batch.words, jig=jig))
                if len(fuller) == len(plans) and _cost(fuller) <= _cost(plans):
                    plans = fuller
                    jigs = ((),) if jig else jigs  # told once
                    break
            planned += plans
        return planned

    def _plan_least(self, batch: Batch, view: FaceView) -> list[AnyPlan]:
        """Plan the sheets of a face with no more words than it takes: as many pages as it has."""
        return self._plan_face(view, replace(batch.words, brief=bool(batch.words.members)))

    def _count(self, batches: Iterable[Batch]) -> int:
        return sum(len(self._plan_least(batch, v)) for batch in batches for v in batch.views)

    def _plan_face(self, view: FaceView, words: PartWords) -> list[AnyPlan]:
        return plan_view(
            SheetWords(view=view, part=words, guides=self.guides.at),
            self.paper,
            strip=self.strip,
        )

    def _parts(self) -> Iterator[tuple[str, PartWords, tuple[FaceView, ...]]]:
        layout, unit = self.layout, self.layout.job.units
        for box in layout.boxes:
            parts = parts_of_box(layout, box.id)
            for front in parts.fronts:
                if front.withheld:
                    continue
                marks = None if self.pilots else marks_of(front)
                if marks is not None:  # the box is bored first
                    yield from self._drawer_box(front, marks)
                if self._wanted(front.id, front.box, front.wall):
                    views = views_of_front(front, unit, pilots=self.pilots)
                    yield box.id, words_of_front(layout, front), views
                if marks is None:
                    yield from self._drawer_box(front, None)
            for rollout in layout.rollouts:
                if rollout.box == box.id and not rollout.withheld:
                    yield from self._rollout(rollout)
            for side in parts.sides:
                view = view_of_side(side, unit)
                if view is not None and self._wanted(side.board, side.box, side.wall):
                    yield box.id, words_of_side(layout, side), (view,)

    def _drawer_box(
        self, front: Front, marks: Marks | None
    ) -> Iterator[tuple[str, PartWords, tuple[FaceView, ...]]]:
        drawer = front.drawer
        if drawer is None or not (
            self._wanted(drawer.id, front.box, front.wall)
            or self._wanted(front.id, front.box, front.wall)
        ):
            return
        unit = self.layout.job.units
        views = tuple(
            view
            for view in (
                view_of_drawer_box(drawer, drawer.side, unit, marks),
                view_of_drawer_back(drawer.id, drawer.code, drawer, unit),
            )
            if view is not None
        )
        if views:
            yield front.box, words_of_drawer_box(self.layout, drawer, front), views

    def _rollout(self, rollout: Rollout) -> Iterator[tuple[str, PartWords, tuple[FaceView, ...]]]:
        view = view_of_drawer_back(rollout.id, rollout.code, rollout, self.layout.job.units)
        if view is not None and self._wanted(rollout.id, rollout.box, rollout.wall):
            yield rollout.box, words_of_rollout(self.layout, rollout), (view,)

    def _wanted(self, *names: str) -> bool:
        return self.only is None or any(
            name.upper() == wish.upper() for name in names if name for wish in self.only
        )


def _cost(plans: Iterable[AnyPlan]) -> tuple[int, int, bool]:
    """Count pages, then cards; then tell whether the steps stand on none in full."""
    plans = list(plans)
    cards = sum(len(plan.cards) for plan in plans)
    return len(plans), cards, not any(plan.first for plan in plans)


def _list_pages(layout: Layout, leaves: Iterable[Leaf], number: int) -> Iterator[ContentsEntry]:
    """List parts and pages, the first of them page `number`, box by box; a part without sheets
    is left out."""
    pages: dict[tuple[str, str], list[int]] = {}
    for row, leaf in enumerate(leaves, start=number):
        for part in leaf.parts:
            pages.setdefault(part, []).append(row)
    order = {box.id: row for row, box in enumerate(layout.boxes)}
    for box, name in sorted(pages, key=lambda each: order[each[0]]):
        yield ContentsEntry(box=box, part=name, pages=tuple(pages[box, name]))


def make_sheets(
    layout: Layout,
    paper: Paper,
    *,
    only: Collection[str] | None = None,
    first: bool = False,
    same: bool = False,
    tight: bool = False,
    strip: bool = False,
    pilots: bool = False,
) -> Sheets:
    """Give the sheets of a laid-out job on a paper; `first` adds the pass marks of those parts
    that are tried on scrap, and leaves out the holes that the trial does not ask for; `same`
    makes one set for all parts with the same holes in the same face; `tight` lets small parts of
    one box share pages; `strip` gives tall parts a strip along their edge; `pilots` gives drawer
    fronts pilots from paper."""
    articles = first_articles(layout) if first else ()
    shown = trial(layout) if first else layout
    sheets = Sheets(
        layout=shown,
        paper=paper,
        only=only,
        articles=articles,
        same=same,
        tight=tight,
        strip=strip,
        pilots=pilots,
    )
    first_guide = 1 + len(cover_pages(shown, paper, SHEETS, same=same))
    return replace(sheets, guides=guides_for(sheets.views, first_guide))
