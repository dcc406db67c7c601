"""The rows of a front list below its header: which are fronts and which are not, what the list has
to be asked, and the fronts one by one.

A row is no front if it has no size and says at most one thing: a title, a remark, a page's number;
or if it begins as a sum does. It is named and left alone; one that is a kind in words (`Doors`) is
the kind of the rows below that say none.
"""

from collections.abc import Sequence

from jigs.given.job import FrontSpec
from jigs.given.listspec import NOTHING, ListSpec
from jigs.ground.believable import FRONT_BOARD, measure
from jigs.ground.errors import LengthError
from jigs.ground.geometry import Hand
from jigs.ground.lengths import BareUnit, Unit
from jigs.ground.values import replace
from jigs.reading.frontboxes import FrontBoxes, HungRow, ListedFront
from jigs.reading.frontcells import ALLOWED, FrontCells
from jigs.reading.fronthands import HANDS
from jigs.reading.frontwords import count_hands, is_sum, read_hand
from jigs.reading.headings import LENGTH, LIST_COLUMNS, OTHER, is_measure
from jigs.reading.jobboxes import USUAL_ALIKE
from jigs.reading.listcells import find_sizes, read_whole_number
from jigs.reading.listcolumns import FRONT_LIST, Header, ListHeading, Unread, column_letter, shorten
from jigs.reading.listquestions import (
    answer,
    ask_column,
    ask_columns,
    ask_hand_columns,
    ask_merged_count,
    ask_order,
    ask_pairs,
    ask_thousands,
)
from jigs.reading.statedcolumns import settle_columns
from jigs.reading.tables import MOST_ROWS, ListRow, ListTable

SAYS_LITTLE = ("note", "description")
"""Columns that a title or a remark may stand in."""


class FrontRows(FrontBoxes):
    """Reads the rows of fronts."""

    def __init__(
        self,
        file: str,
        table: ListTable,
        header: Header,
        spec: ListSpec,
        units: Unit | None,
        bare: bool,
        unstated: Unit,
        between: float,
    ) -> None:
        widest = max((len(row.cells) for row in table.rows), default=0)
        settled, wrong = settle_columns(header, FRONT_LIST, spec.columns, widest)
        overruling: BareUnit | None = units
        super().__init__(file, table, settled, spec, overruling, bare, unstated)
        self._unit_said = bool(units or spec.units or any(h.unit for h in settled.headings))
        self._between = between
        self.left: list[ListRow] = []
        """Rows that are no fronts."""
        self.read: list[ListRow] = []
        """Rows that are."""
        for what in wrong:
            self.note(self.header.row, None, what)

    def read_rows(self) -> list[ListedFront]:
        """Read every row; what is wrong in one is noted and left open in it."""
        self._look_for_sizes()
        for heading, what in ask_columns(self.header, self._bare):
            self.note(self.header.row, heading, what)
        if not self._bare:
            for column in ("kind", "box"):
                if self.header.find(column) is None and not self._has_kinds(column):
                    self.note(self.header.row, None, f"no column '{column}'; {ALLOWED[column]}")
        self.left = [row for row in self.rows() if not self._is_front(row)]
        self.read = [row for row in self.rows() if row not in self.left]
        self._look_over()
        rows = [one for row in self.rows() for one in self._read_row(row)]
        if not self.read:
            self.note(self.header.row, None, "a list without rows; one row a front is needed")
        if sum(row.count for _, row, _ in rows) > MOST_ROWS:
            self.note(self.header.row, None, f"over {MOST_ROWS} fronts, which are allowed")
        if not self._unit_said and self.all_in_inches():
            self.unit = "in"
        self.note_kinds()
        self._ask_cells()
        self.check_units()
        return self.hang(rows)

    def _has_kinds(self, column: str) -> bool:
        return column == "kind" and bool(self.header.find("description") or self.spec.unnamed)

    def _is_front(self, row: ListRow) -> bool:
        if self.is_nothing(row):
            return False
        kind = self.cell(row, "kind")
        sized = bool(self.cell(row, "width") or self.cell(row, "height")) or any(
            letter.isdigit() for letter in self.cell(row, "size")
        )
        if any(map(is_sum, _filled(row)[: 1 if sized else None])) and not self.word_of(kind).kind:
            return False
        if sized:
            return True
        said = [c for c in LIST_COLUMNS if c not in SAYS_LITTLE and self.cell(row, c)]
        known = bool(kind) and self.word_of(kind).kind is not None and len(_filled(row)) > 1
        return known or len(said) > 1 or (not self._bare and bool(said))

    def _look_over(self) -> None:
        """Look at whole columns: where sizes stand, where kinds do, what numbers may mean."""
        described = self.header.find("description")
        texts = [super(FrontCells, self).cell(row, "description") for row in self.rows()]
        self._look_for_kinds()
        self._look_for_units()
        kinds = [self.word_of(text).kind for row in self.rows() if (text := self.cell(row, "kind"))]
        self.kindless = not any(kinds) and any(self.word_of(text).kind for text in texts)
        hands = [text for row in self.read if (text := self.cell(row, "hinged"))]
        self.handless = bool(hands) and all(text.isdigit() for text in hands)
        sides = self._ask_hand_columns()
        for other in self.header.unread:
            if not other.like and not other.twice and other.place not in sides:
                self._ask_cells_of(other)
        if self.header.find("kind") is None and not described and self.spec.unnamed is None:
            titles = [self.word_of(_filled(row)[0]).kind for row in self.left if _filled(row)]
            named = [self.word_of(self.cell(row, "id")).kind for row in self.read]
            if not any((*titles, *named, self.kind_asked)):
                self.kind_asked = True
                self.note(
                    self.header.row, None,
                    f"no column 'kind'; {ALLOWED['kind']}; "
                    f"{answer(('kind', 'LETTER'), bare=self._bare)}, or unnamed=door for all",
                )  # fmt: skip

    def _look_for_sizes(self) -> None:
        """Take a column of descriptions for that of sizes too, where these stand nowhere else."""
        described = self.header.find("description")
        sized = any(self.header.find(column) for column in ("width", "height", "size"))
        texts = [super(FrontCells, self).cell(row, "description") for row in self.rows()]
        if described and not sized and any(map(find_sizes, texts)):
            size = replace(described, column="size", unit=described.unit)
            self.header = replace(self.header, headings=(*self.header.headings, size))

    def _look_for_kinds(self) -> None:
        """Take a column of names that are kinds and nothing else (`Front`: door, drawer) for what
        it is."""
        heading = self.header.find("id")
        texts = [text for row in self.read if (text := self.cell(row, "id"))]
        if self.header.find("kind") is None and heading and not heading.stated and texts:
            bare = not any(letter.isdigit() for text in texts for letter in text)
            if bare and self._are_kinds(texts):
                kind = replace(heading, column="kind")
                others = (h for h in self.header.headings if h is not heading)
                self.header = replace(self.header, headings=(*others, kind))

    def _look_for_units(self) -> None:
        """Leave a column of boxes alone that says what its counts or sizes are in: `Unit`, pcs."""
        heading = self.header.find("box")
        texts = [text for row in self.read if (text := self.cell(row, "box"))]
        if heading and not heading.stated and texts and all(map(is_measure, texts)):
            others = (h for h in self.header.headings if h is not heading)
            unit = replace(heading, column=OTHER)
            self.header = replace(self.header, headings=(*others, unit))

    def _ask_hand_columns(self) -> tuple[int, ...]:
        """Ask about two columns, one headed as a left hand and one as a right, with counts or marks
        in them. Gives their places."""
        headed: dict[Hand, ListHeading] = {}
        for place, text in enumerate(self.header.cells):
            read = next((h for h in self.header.headings if h.place == place), None)
            free = read is None or (read.column in (LENGTH, OTHER) and not read.stated)
            hand = read_hand(text)
            if free and hand and any(place < len(r.cells) and r.cells[place] for r in self.read):
                headed[hand] = ListHeading(column=hand, text=shorten(text), place=place)
        if len(headed) < len(HANDS):
            return ()
        left, right = headed["left"], headed["right"]
        self.note(self.header.row, None, ask_hand_columns(left, right, self._bare))
        return (left.place, right.place)

    def _ask_cells_of(self, other: Unread) -> None:
        """Ask about a column whose heading is not known and whose cells say what no other does:
        how many alike, which hand."""
        cells = [row.cells[other.place] for row in self.read if other.place < len(row.cells)]
        texts = list(filter(None, cells))
        what: str | None = None
        if self.header.find("count") is None and _are_counts(texts):
            what = "count"
        elif (
            self.header.find("hinged") is None
            and texts
            and all(read_hand(text) or count_hands(text) for text in texts)
        ):
            what = "hinged"
        elif self.header.find("thickness") is None and self._are_boards(other.text, texts):
            what = "thickness"
        elif self.header.find("kind") is None and texts and self._are_kinds(texts):
            what, self.kind_asked = "kind", True
        if what:
            letter = column_letter(other.place)
            question = ask_column(what, letter, texts, self._bare)
            self.note(self.header.row, other.text, question)

    def _are_kinds(self, texts: Sequence[str]) -> bool:
        return all(self.word_of(text).kind for text in texts)

    def _are_boards(self, heading: str, texts: Sequence[str]) -> bool:
        """Tell whether a column headed by a letter holds what a board of fronts may measure."""
        try:
            return (
                len(heading) <= len("D.")
                and bool(texts)
                and all(
                    measure(text, self._unit_of("thickness"), FRONT_BOARD).usual for text in texts
                )
            )
        except LengthError:
            return False

    def _ask_cells(self) -> None:
        shifted = {
            row.number: (place, row)
            for place, row in reversed(self.unheaded.items())
            # In a workbook, or under a heading that is empty, it is no shifted row: left alone.
            if not self._table.workbook and place >= len(self.header.cells)
        }
        for place, row in shifted.values():
            letter = column_letter(place)
            self.note(
                row.number,
                str(place + 1),
                f"a cell without a heading ('{shorten(row.cells[place])}' given); where commas "
                "part the cells, a decimal needs a point; or "
                f"{answer((NOTHING, letter), bare=self._bare)} leaves the column alone",
            )
        if self.grouped:
            row, text = self.grouped
            words = self.row_words(row.number)
            self.note(self.header.row, None, ask_thousands(words, text, self._bare))
        if self.merged and self.spec.merged_count is None:
            row, text = self.merged
            what = ask_merged_count(self.row_words(row.number), text, self._bare)
            self.note(self.header.row, self._heading("count"), what)
        if self.unordered:
            row, text = self.unordered
            words = self.row_words(row.number)
            self.note(self.header.row, None, ask_order(words, text, self._bare))
        if self.doubled and self.spec.pairs is None:
            row, text = self.doubled
            words = self.row_words(row.number)
            self.note(self.header.row, None, ask_pairs(words, text, self._bare))

    def _read_row(self, row: ListRow) -> list[HungRow]:
        if row in self.left:
            if len(texts := _filled(row)) == 1:
                self.section = self.word_of(texts[0]).kind
            return []
        count = self.read_count(row) or 1
        front, hands = self.read_front(row, count)
        if self.doubled and front.kind == "pair":
            front, count = self._as_pair(row, front, count)
        box = self.read_name(row, "box")
        where = self.place(row.number)
        return [(row, ListedFront(spec=front, box=box, count=count, where=where), hands)]

    def _as_pair(self, row: ListRow, front: FrontSpec, count: int) -> tuple[FrontSpec, int]:
        """Give a pair with the width of one leaf and the count of pairs."""
        if self.spec.pairs == "both-leaves" and front.width is not None:
            return replace(front, width=(front.width - self._between) / 2), count
        if self.spec.pairs == "pieces":
            if count % 2:
                self.note_at(row, "count", f"{count} leaves, and a pair has two")
            return front, max(1, count // 2)
        return front, count

    def left_headings(self) -> list[tuple[str, str]]:
        """Name the columns from which nothing is read: each letter with its heading."""
        read = {h.place for h in self.header.headings if h.column in LIST_COLUMNS}
        headed = [
            (column_letter(place), shorten(cell))
            for place, cell in enumerate(self.header.cells)
            if cell and place not in read
        ]
        return [*headed, *((column_letter(place), "") for place in sorted(self.unheaded))]

    def read_headings(self) -> list[ListHeading]:
        """Give the columns that are read, in their order."""
        read = (h for h in self.header.headings if h.column in LIST_COLUMNS)
        return sorted(read, key=lambda heading: heading.place)

    def units_of(self, heading: ListHeading) -> str:
        """Name the unit that the bare numbers of a column of lengths are in, "" for any other."""
        sized = heading.column in self._ranges or heading.column == "size"
        return str(self._units.get(heading.column, self._bare_unit)) if sized else ""


def _are_counts(texts: Sequence[str]) -> bool:
    """Tell whether cells may be counts: whole numbers, some over 1, and no mere numbering.

    >>> _are_counts(["2", "1", "4"]), _are_counts(["1", "2", "3"]), _are_counts(["48.50"])
    (True, False, False)
    """
    counts = [count for text in texts if (count := read_whole_number(text)) is not None]
    if not counts or len(counts) < len(texts) or not 1 < max(counts) <= USUAL_ALIKE:
        return False
    return counts != list(range(counts[0], counts[0] + len(counts)))


def _filled(row: ListRow) -> list[str]:
    return [cell for cell in row.cells if cell]
