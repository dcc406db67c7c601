"""A front list: one row a front, as a shop orders them.

Rows of one box stand from top to bottom; its fronts share one width, and a pair's row gives the
width of one leaf. Sizes are in the unit that the person or the header names (`width (in)`), else in
mm. A bare list must give every front's width and height; a list that joins a job file's boxes may
leave them to be computed. All faults of a list are reported together, each with its row and column.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from jigs.given.ids import check_id, find_clashes, name_fronts, name_parts
from jigs.given.job import FRONT_KINDS, FrontKind, FrontSpec, Reveal
from jigs.given.stated import (
    PROFILES,
    Boring,
    FivePieceSpec,
    FrontEdges,
    FrontWords,
    Hung,
    OpenedBy,
    Profile,
    RowRead,
)
from jigs.ground.believable import Range
from jigs.ground.errors import Fault, JigsheetError, ReadingError
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.lengths import Unit, format_length
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import ANY_FRONT, FRONTS
from jigs.reading.jobboxes import HAND_WORDS, needless_hand
from jigs.reading.listcolumns import FRONT_LIST, Header, ListColumn, shorten
from jigs.reading.listrows import RowReader, choose_table
from jigs.reading.tables import MOST_ROWS, ListRow, ListTable, read_tables

SAME_WIDTH = 1.0
"""Fronts of one box whose widths differ by more do not belong together, mm (common practice)."""

SAME_WIDTH_PAIR = 3.5
"""The same where a pair is one of them: each leaf may be rounded down by 1/16 in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedFront:
    """One row: the front as given, its box's ID, how many, and its place in the file.

    `spec.id` and `box` are "" where the row gives none.
    """

    spec: FrontSpec
    box: str
    count: int
    where: str

    def clear_width(self, between: float) -> float | None:
        """Give what the row takes up across its box: both leaves of a pair with their gap; mm."""
        if self.spec.width is None:
            return None
        return self.spec.width if self.spec.kind != "pair" else 2 * self.spec.width + between


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontList:
    """The rows of a front list, its file, and the unit that its bare numbers are in."""

    file: str
    unit: Unit
    rows: tuple[ListedFront, ...]


def check_widths(rows: Sequence[ListedFront], between: float) -> list[Fault]:
    """Find the fronts whose width differs from that of the first front of their box."""
    first: dict[str, ListedFront] = {}
    faults = []
    for row in rows:
        width = row.clear_width(between)
        if not row.box or width is None:
            continue
        above = first.setdefault(row.box, row)
        wanted = above.clear_width(between) or width
        paired = "pair" in (row.spec.kind, above.spec.kind)
        if abs(width - wanted) > (SAME_WIDTH_PAIR if paired else SAME_WIDTH) + SLACK:
            turned = row.spec.height is not None and abs(row.spec.height - wanted) <= SAME_WIDTH
            faults.append(
                Fault(
                    row.where,
                    ("width and height exchanged? " if turned else "")
                    + f"different widths in box {row.box} ({format_length(width, 'mm')} given, "
                    f"{format_length(wanted, 'mm')} at {above.where}); the fronts of a box share "
                    "one width, and a pair's row gives the width of one leaf",
                )
            )
    return faults


_KINDS = {kind.replace("-", ""): kind for kind in FRONT_KINDS}


def read_front_list(
    path: Path,
    units: Unit | None = None,
    *,
    bare: bool = True,
    between: float = Reveal().between,
    unstated: Unit = "mm",
) -> FrontList:
    """Read a front list; `units` overrules what its header says, `unstated` holds if it is silent.

    `bare`: the list stands alone, so that width and height are needed and the widths in one box
    are compared, with the gap `between` the leaves of a pair (mm). Raises ReadingError.
    """
    table, header = choose_table(
        path,
        read_tables(path),
        FRONT_LIST,
        called="front list",
        needs="kind, width and height",
    )
    reader = _FrontRows(str(path), table, header, units, bare, unstated)
    rows = reader.read_rows()
    faults = [*reader.faults, *_check_names(rows)]
    if bare:
        faults += check_widths(rows, between)
    if faults:
        raise ReadingError(faults)
    return FrontList(file=str(path), unit=reader.unit, rows=tuple(rows))


def _check_names(rows: Sequence[ListedFront]) -> tuple[Fault, ...]:
    """Find the clashes among the IDs that were given."""
    return find_clashes(
        (part, row.where)
        for row in rows
        if row.spec.id
        for front in name_fronts(row.spec.id, box="", place=0, count=row.count)
        for part in name_parts(front, row.spec.kind)
    )


class _FrontRows(RowReader):
    """Reads the rows of fronts."""

    def __init__(
        self,
        file: str,
        table: ListTable,
        header: Header,
        units: Unit | None,
        bare: bool,
        unstated: Unit,
    ) -> None:
        super().__init__(file, table, header, FRONT_LIST, units, unstated)
        self._bare = bare

    def scale_remedy(self) -> str:
        return "; --units in does for inches"

    def read_rows(self) -> list[ListedFront]:
        """Read every row; what is wrong in one is noted and left open in it."""
        self.note_strange()
        needed: tuple[ListColumn, ...] = (
            ("kind", "width", "height") if self._bare else ("kind", "box")
        )
        for column in needed:
            if self.header.find(column) is None:
                self.note(self.header.row, None, f"no column '{column}'; {_ALLOWED[column]}")
        rows = [self._read_row(row) for row in self.rows()]
        if not rows:
            self.note(self.header.row, None, "a list without rows; one row a front is needed")
        if sum(row.count for row in rows) > MOST_ROWS:
            self.note(self.header.row, None, f"over {MOST_ROWS} fronts, which are allowed")
        self.check_units()
        return rows

    def _read_row(self, row: ListRow) -> ListedFront:
        self.check_headings(row)
        kind = self._read_kind(row)
        opening = kind == "opening"
        count = self.read_count(row) or 1
        sizes = FRONTS[kind] if kind else ANY_FRONT
        width = self._read_needed(row, "width", sizes.width, needed=self._bare and not opening)
        height = self._read_needed(row, "height", sizes.height, needed=self._bare)
        if not opening:
            self.check_both(row)
        front = FrontSpec(
            id=self._read_id(row, "id"),
            kind=kind or "door",
            # Of an unknown kind nobody can say how wide it hangs.
            width=width if kind else None,
            height=height,
            hinged=self._read_hand(row, kind),
            thickness=self.read_size(row, "thickness"),
            opened_by=OpenedBy(pull=self.read_text(row, "pull") or None),
            words=FrontWords(
                finish=self.read_text(row, "finish"), note=self.read_text(row, "note")
            ),
        )
        front = replace(
            self._with_making(row, front),
            row=RowRead(doubts=self.take_doubts(), hidden=self.hidden_of(row)),
        )
        box = self._read_id(row, "box")
        if not self._bare and not box and self.header.find("box"):
            self.note(row.number, "box", "missing; it names the job's box the front hangs on")
        return ListedFront(spec=front, box=box, count=count, where=self.place(row.number))

    def _with_making(self, row: ListRow, front: FrontSpec) -> FrontSpec:
        """Give a front with what its row says of its frame, its edges and its boring."""
        for column in ("rail", "groove", "panel"):
            if self.cell(row, column) and not self.cell(row, "stile"):
                self.note_at(
                    row, column, "stands without stile; a five-piece front states its stile's width"
                )
        bored = self._read_yes(row, "bored")
        if self.cell(row, "bored tab") and not bored:
            self.note_at(row, "bored tab", "stands without bored; say yes there if the cups are")
        return replace(
            front,
            five_piece=FivePieceSpec(
                stile=self.read_size(row, "stile"),
                rail=self.read_size(row, "rail"),
                groove=self.read_size(row, "groove"),
                panel=self.read_size(row, "panel"),
                glass=self._read_yes(row, "glass"),
            ),
            edges=FrontEdges(
                edge_radius=self.read_size(row, "edge radius"), profile=self._read_profile(row)
            ),
            boring=Boring(bored=bored, bored_tab=self.read_size(row, "bored tab")),
            hung=Hung(hinges_at=self._read_places(row)),
        )

    def _read_yes(self, row: ListRow, column: ListColumn) -> bool:
        text = self.cell(row, column).lower()
        if text not in ("", "yes", "no"):
            self.note_at(row, column, f"not yes or no ('{shorten(text)}' given); allowed: yes, no")
        return text == "yes"

    def _read_profile(self, row: ListRow) -> Profile | None:
        text = self.cell(row, "profile").lower()
        profile = next((word for word in PROFILES if word == text), None)
        if text and profile is None:
            self.note_at(
                row,
                "profile",
                f"unknown profile ('{shorten(text)}' given); allowed: {', '.join(PROFILES)}",
            )
        return profile

    def _read_places(self, row: ListRow) -> tuple[float, ...] | None:
        """Read the heights of the cups above the bottom edge, in one cell, parted by semicolons."""
        texts = [text.strip() for text in self.cell(row, "hinges at").split(";")]
        found = [self.measure(row, "hinges at", text) for text in texts if text]
        places = sorted(place for place in found if place is not None)
        if len(set(places)) < len(places):
            self.note_at(
                row, "hinges at", f"a height stands twice ('{'; '.join(texts)[:40]}' given)"
            )
        return tuple(places) or None

    def _read_needed(
        self, row: ListRow, column: ListColumn, within: Range, *, needed: bool
    ) -> float | None:
        allowed = _ALLOWED[column] if needed else ""
        return self.read_size(row, column, needed=allowed, within=within)

    def _read_kind(self, row: ListRow) -> FrontKind | None:
        text = self.cell(row, "kind")
        if self.header.find("kind") is None:
            return None
        kind = _KINDS.get(re.sub(r"[\s_-]", "", text.lower()))
        if kind is None and text:
            near = suggest(text, FRONT_KINDS)
            self.note_at(
                row, "kind", f"unknown kind ('{shorten(text)}' given); {near}; {_ALLOWED['kind']}"
            )
        elif kind is None:
            self.note_at(row, "kind", f"missing; {_ALLOWED['kind']}")
        return kind

    def _read_id(self, row: ListRow, column: ListColumn) -> str:
        text = self.cell(row, column)
        try:
            return check_id(text) if text else ""
        except JigsheetError as error:
            self.note_at(row, column, str(error))
            return ""

    def _read_hand(self, row: ListRow, kind: FrontKind | None) -> Hand | None:
        text = self.cell(row, "hinged")
        needless = needless_hand(kind) if text else ""
        if needless:
            self.note_at(row, "hinged", f"{needless} ('{shorten(text)}' given)")
            return None
        hand = HAND_WORDS.get(text.lower())
        if text and hand is None:
            self.note_at(
                row, "hinged", f"not a hand ('{shorten(text)}' given); allowed: left, right"
            )
        return hand


_ALLOWED: dict[str, str] = {
    "kind": f"allowed: {', '.join(FRONT_KINDS)}",
    "width": "a list without a job file gives every front's width (of a pair: of one leaf)",
    "height": "a list without a job file gives every front's height",
    "box": "it names the job's box that the front hangs on",
}
