"""What the tool makes of a job, on every paper, and the ways in which a mistake is met."""

import csv
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Literal

import pytest

from cli.jobs import read_in_hand
from jigs.box.unchecked import Subject, list_unchecked
from jigs.checks.cutting import with_cutting
from jigs.checks.rubbing import before_order, with_rubbing
from jigs.cutlist.cutlist import choose_parts
from jigs.ground.errors import ReadingError
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.binding.jobsheets import make_sheets
from templates.elevations.elevation import draw_elevations
from templates.labels.labellist import list_labels
from templates.labels.labelwords import LabelWords
from templates.lists.gaplist import gaps_text
from templates.lists.ordertables import order_text
from templates.lists.partstables import parts_text
from templates.lists.supplierlist import fronts_csv
from templates.page.marks import Page, Text
from templates.page.paper import PAPERS
from templates.words.findings import check_text
from templates.words.orderwords import RUBS
from templates.words.uncheckedwords import unchecked_words
from tests.said import fact_of

Paper = Literal["check", "order", "gaps", "parts", "sheet", "label", "elevation", "first page"]
COMMON = PAPERS["common"]


class Made:
    """A job that is read once; each of its papers is made when it is asked for."""

    def __init__(self, job: str, delivered: str = "", name: str = "job.toml") -> None:
        with tempfile.TemporaryDirectory() as folder:
            path, came = Path(folder) / name, Path(folder) / "delivered.csv"
            path.write_text(job, encoding="utf-8")
            came.write_text(delivered, encoding="utf-8")
            self.job = read_in_hand(path, delivered=came if delivered else None)
        layout, self.cut = with_cutting(lay_out(self.job))
        self.layout, self.gaps = with_rubbing(layout)

    def words(self, paper: Paper, part: str = "") -> str:
        """Give the words of a paper, of a sheet or a label those of one part, in one line."""
        return " ".join(self._write(paper, part).split())

    def _write(self, paper: Paper, part: str) -> str:
        layout = self.layout
        match paper:
            case "check":
                return check_text(before_order(layout))
            case "order":
                return order_text(make_order(layout, self.cut), layout.job)
            case "parts":
                return parts_text(choose_parts(layout, self.cut))
            case "gaps":
                return gaps_text(self.gaps, layout.job, None, ())
            case "label":
                label = self.labels[part]
                lines = [line.ways[0] for line in label.lines]
                return " ".join(["HOLD" if label.hold else "", part, *lines, label.code])
            case "elevation":
                return " ".join(_down_the_page(one.page) for one in draw_elevations(layout, COMMON))
            case "first page":
                return _words_of(next(make_sheets(layout, COMMON, only=()).pages))
            case "sheet":
                return " ".join(_words_of(page) for page in self.pages(part))

    @cached_property
    def labels(self) -> dict[str, LabelWords]:
        """All labels by their parts."""
        return {label.part: label for label in list_labels(self.layout, self.cut.pieces, ())}

    def pages(self, part: str) -> list[Page]:
        """Draw the pages of a part's sheets, without the first page."""
        return list(make_sheets(self.layout, COMMON, only={part}).pages)[1:]


def _words_of(page: Page) -> str:
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


def _down_the_page(page: Page) -> str:
    """Give its words line by line, as one reads."""
    texts = [mark for mark in page.marks if isinstance(mark, Text)]
    return " ".join(mark.text for mark in sorted(texts, key=lambda mark: (-mark.y, mark.x)))


@dataclass(frozen=True, slots=True)
class Refused:
    """The job file is refused at this place: nothing is made."""

    where: str


@dataclass(frozen=True, slots=True)
class Held:
    """Caught: the finding of this code holds the part back; its label says so."""

    code: str
    part: str


@dataclass(frozen=True, slots=True)
class Warned:
    """Warned: the finding of this code stands in the check, and its fact on this paper too."""

    code: str
    part: str | None
    on: Paper = "sheet"
    sheet: str = ""
    """Whose sheet, where it is another part's."""


@dataclass(frozen=True, slots=True)
class Stops:
    """Told before the order: an error of check, marked on each of these fronts in the order and
    in the supplier's list; their sheets are made."""

    code: str
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Says:
    """Told: this paper says it, of every job or of this one."""

    on: Paper
    words: str
    part: str = ""


@dataclass(frozen=True, slots=True)
class Unchecked:
    """Told: order and check name the subject among what was not checked."""

    subject: Subject


@dataclass(frozen=True, slots=True)
class Drawn:
    """Prevented: what is drawn (mm) is what it must be."""

    fact: Callable[[Made], object]
    wanted: object


Expect = Refused | Held | Warned | Stops | Says | Unchecked | Drawn


def missed(made: Made, expect: Expect) -> str:
    """Say what is not as expected; nothing where it is."""
    layout = made.layout
    match expect:
        case Refused(where):
            return f"not refused at {where}"
        case Held(code, part):
            unit = next(unit for unit in layout.units if unit.id == part)
            if code not in [problem.code for problem in unit.held]:
                return f"{part} is not held for {code}"
            if "HOLD" not in made.words("label", part):
                return f"the label of {part} does not say HOLD"
            return f"{part} has a sheet" if made.pages(part) else ""
        case Warned(code, part, on, sheet):
            facts = [
                fact_of(p, layout.job.shown)
                for p in layout.problems
                if (p.code, p.part) == (code, part)
            ]
            if not facts:
                return f"no {code} at {part}"
            words = made.words(on, sheet or part or "")
            told = any(fact[1:].rstrip(".") in words for fact in facts)
            return "" if told else f"{code}: {facts[0]!r} stands not on {on}"
        case Stops(code, parts):
            return _not_stopped(made, code, parts)
        case Says(on, words, part):
            return "" if words in made.words(on, part) else f"{on} does not say {words!r}"
        case Unchecked(subject):
            found = [one for one in list_unchecked(layout) if one.subject == subject]
            if not found:
                return f"{subject} counts as checked"
            said = unchecked_words(found)[0].rpartition(": ")[2].rstrip(".")
            papers: tuple[Paper, ...] = ("check", "order")
            silent = [paper for paper in papers if said not in made.words(paper)]
            return f"{silent} do not say {said!r}" if silent else ""
        case Drawn(fact, wanted):
            drawn = fact(made)
            same = drawn == wanted or (_numbers(wanted) and drawn == pytest.approx(wanted))
            return "" if same else f"drawn {drawn}, wanted {wanted}"


def _not_stopped(made: Made, code: str, parts: tuple[str, ...]) -> str:
    found = [p for p in before_order(made.layout).problems if p.code == code and p.part in parts]
    if {p.part for p in found if p.level == "error"} != set(parts):
        return f"{code} is no error at all of {parts}"
    order = make_order(made.layout, made.cut)
    rows = list(csv.DictReader(fronts_csv(order, made.job).splitlines()))
    marked = {row["id"] for row in rows if RUBS in row["description"]}
    if any(part not in marked and part[:-1] not in marked for part in parts):
        return f"the supplier's list marks {marked}, not {parts}"
    if made.words("order").count(RUBS) < len(parts):
        return f"the order does not mark {parts}"
    withheld = {unit.id for unit in made.layout.units if unit.withheld}
    bare = [part for part in parts if part in withheld or not made.pages(part)]
    return f"{bare} have no sheet" if bare else ""


def _numbers(value: object) -> bool:
    return isinstance(value, float) or (
        isinstance(value, list) and all(isinstance(one, int | float) for one in value)
    )


def refusals(job: str) -> list[str]:
    """Give the places at which a job file is refused."""
    try:
        Made(job)
    except ReadingError as refused:
        return [fault.where.rpartition(": ")[2] for fault in refused.faults]
    return []
