"""The rows of a front list below its header: which are fronts and which are not, what the list has
to be asked, and the fronts one by one.

A row is no front if it has no size and says at most one thing: a title, a remark, a page's number;
or if it begins as a sum does. It is named and left alone; one that is a kind in words (`Doors`) is
the kind of the rows below that say none.
"""

from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.listspec import NOTHING
from jigs.ground.errors import AskedBack
from jigs.ground.geometry import Hand
from jigs.ground.lengths import ends_with_unit, format_length
from jigs.reading.frontboxes import HungRow, ListedFront
from jigs.reading.frontdoubts import FrontDoubts, find_title_unit
from jigs.reading.frontlook import filled
from jigs.reading.frontsaid import ALLOWED, ListAsGiven
from jigs.reading.frontwords import find_box_kind, says_pair
from jigs.reading.headings import LIST_COLUMNS
from jigs.reading.listasked import (
    asked_merged_count,
    asked_order,
    asked_pairs,
    asked_thousands,
)
from jigs.reading.listcells import find_sizes, split_sizes
from jigs.reading.listcolumns import FRONT_LIST, ListHeading, column_letter, shorten
from jigs.reading.listnumbers import split_heights
from jigs.reading.listquestions import (
    answer,
    ask_columns,
    ask_merged_count,
    ask_order,
    ask_pairs,
    ask_thousands,
)
from jigs.reading.listrows import INCH_SIGNS
from jigs.reading.listtable import MOST_ROWS, ListRow
from jigs.reading.statedcolumns import settle_columns


class FrontRows(FrontDoubts):
    """Reads the rows of fronts."""

    def __init__(self, given: ListAsGiven, between: float) -> None:
        widest = max((len(row.cells) for row in given.table.rows), default=0)
        settled, wrong = settle_columns(given.header, FRONT_LIST, given.spec.columns, widest)
        said = bool(given.units or given.spec.units or any(h.unit for h in settled.headings))
        titled = None if said else find_title_unit(given.table, settled)
        unstated = titled[0] if titled else given.unstated
        super().__init__(replace(given, header=settled, unstated=unstated))
        self._unit_said = said or titled is not None
        if titled:
            self.remarks.append(f"sizes in {titled[0]}, as '{shorten(titled[1])}' says above them")
        self._between = between
        for what in wrong:
            self.note(self.header.row, None, what)

    def read_rows(self) -> list[ListedFront]:
        """Read every row; what is wrong in one is noted and left open in it."""
        self._look_for_sizes()
        self._leave_prices()
        for heading, what, asked in ask_columns(self.header, self._bare):
            self.note(self.header.row, heading, what, asked)
        if not self._bare:
            for column in ("kind", "box"):
                named = column == "box" and self.spec.titles == "boxes"
                if self.header.find(column) is None and not (named or self._has_kinds(column)):
                    self.note(self.header.row, None, f"no column '{column}'; {ALLOWED[column]}")
        self.left = [row for row in self.rows() if not self._is_front(row)]
        self.read = [row for row in self.rows() if row not in self.left]
        self._look_over()
        self._tell_single()
        self._tell_comments()
        self._tell_hidden()
        self._ask_titles()
        self._tell_unboxed()
        self._ask_dropped()
        rows = [one for row in self.rows() for one in self._read_row(row)]
        if not self.read:
            self.note(self.header.row, None, "a list without rows; one row a front is needed")
        if sum(row.count for _, row, _ in rows) > MOST_ROWS:
            self.note(self.header.row, None, f"over {MOST_ROWS} fronts, which are allowed")
        if not self._unit_said and self.all_in_inches():
            self.unit = "in"
        self.note_kinds()
        self.note_hands()
        self._ask_cells()
        self.check_units()
        return self.hang(rows)

    def _has_kinds(self, column: str) -> bool:
        return column == "kind" and bool(self.header.find("description") or self.spec.unnamed)

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
                AskedBack(
                    f"Column {letter} has no heading ('{shorten(row.cells[place])}' in "
                    f"{self.row_words(row.number)}): what is it?",
                    (("nothing that is read: leave it alone", f"{NOTHING}={letter}"),),
                ),
            )
        if self.grouped:
            row, text = self.grouped
            words = self.row_words(row.number)
            self.note(
                self.header.row, None, ask_thousands(words, text, self._bare), asked_thousands(text)
            )
        if self.merged and self.spec.merged_count is None:
            row, text = self.merged
            words = self.row_words(row.number)
            what = ask_merged_count(words, text, self._bare)
            asked = asked_merged_count(words, text)
            self.note(self.header.row, self._heading("count"), what, asked)
        if self.unordered:
            row, text = self.unordered
            words = self.row_words(row.number)
            self.note(self.header.row, None, ask_order(words, text, self._bare), asked_order(text))
        if self.doubled and self.spec.pairs is None:
            row, text = self.doubled
            words = self.row_words(row.number)
            asked = asked_pairs(words, text, self._pairs_made(row))
            self.note(self.header.row, None, ask_pairs(words, text, self._bare), asked)

    def _pairs_made(self, row: ListRow) -> tuple[str, str, str]:
        """Say what each reading of a double door's row makes."""
        count = self.read_count(row) or 1
        _, width, _ = self.sizes_read.get(self.place(row.number), (None, None, None))
        gap = self._between

        def made(pairs: int, leaf: float | None) -> str:
            many = f"{pairs} double doors, one above the other" if pairs > 1 else "one double door"
            if leaf is None:
                return many
            return f"{many}, {format_length(2 * leaf + gap, self.unit)} wide"

        half = None if width is None else (width - gap) / 2
        return (
            made(count, width),
            made(count, half),
            made(count // 2, width) if count % 2 == 0 else "an odd count does not go",
        )

    def _read_row(self, row: ListRow) -> list[HungRow]:
        if row in self.left:
            if len(filled(row)) == 1:
                self.take_title(row)
            return []
        count = self.read_count(row) or 1
        heights = self.heights_of(row)
        if heights and len(heights) != count:
            self.note_at(
                row, "height",
                f"{len(heights)} heights for {count} front{'s' if count > 1 else ''} "
                f"('{shorten(self._raw(row, 'height') or self._raw(row, 'size'))}' given); "
                "allowed: one, or as many as there are fronts, from the top",
            )  # fmt: skip
            heights = heights[:1]
        if len(heights) > 1:
            said = f"{count} fronts of the heights that it says, from the top"
            self.remarks.append(f"{self.row_words(row.number)}: {said}")
            fronts = [(*self.read_sized(row, 1, sizes), 1) for sizes in heights]
            fronts = self._as_pairs(row, fronts)
            fronts = [
                (replace(front, id=front.id and f"{front.id}-{at}"), hands, one)
                for at, (front, hands, one) in enumerate(fronts, start=1)
            ]
        else:
            front, hands = (
                self.read_sized(row, count, heights[0]) if heights else self.read_front(row, count)
            )
            front, count, noted = self._noted_pair(row, front, count, hands)
            if front.kind == "pair" and not noted:
                front, count = self._as_pair(row, front, count)
            fronts = [(front, hands, count)]
        box = self.read_name(row, "box") or self.titled
        where = self.place(row.number)
        words = (self.cell(row, column) for column in ("description", "note"))
        kind = next((found for text in words if (found := find_box_kind(text))), None)
        return [
            (
                row,
                ListedFront(spec=front, box=box, count=count, where=where, box_kind=kind),
                hands,
            )
            for front, hands, count in fronts
        ]

    def _noted_pair(
        self, row: ListRow, front: FrontSpec, count: int, hands: dict[Hand, int]
    ) -> tuple[FrontSpec, int, bool]:
        """Give doors of which a note says that they are a pair as that, with the count of pairs;
        whether it was so. Of one door with such a note it is asked what its width is of."""
        if front.kind != "door" or hands or front.hinged or not says_pair(self.cell(row, "note")):
            return front, count, False
        front = replace(front, kind="pair")
        note = shorten(self.cell(row, "note"))
        if count % 2:
            self.doubled = self.doubled or (row, note)
            return front, count, False
        pairs = "a pair" if count == 2 else f"{count // 2} pairs"
        self.remarks.append(f"{self.row_words(row.number)}: {count} doors, {pairs} ('{note}')")
        return front, count // 2, True

    def _as_pair(self, row: ListRow, front: FrontSpec, count: int) -> tuple[FrontSpec, int]:
        """Give a pair with the width of one leaf and the count of pairs."""
        if self.spec.pairs == "both-leaves" and front.width is not None:
            return replace(front, width=(front.width - self._between) / 2), count
        if self.spec.pairs == "pieces":
            if count % 2:
                self.note_at(row, "count", f"{count} leaves, and a pair has two")
            return front, max(1, count // 2)
        return front, count

    def _as_pairs(
        self, row: ListRow, fronts: list[tuple[FrontSpec, dict[Hand, int], int]]
    ) -> list[tuple[FrontSpec, dict[Hand, int], int]]:
        """Give the fronts of a row of several heights, its pairs with the width of one leaf."""
        if not any(front.kind == "pair" for front, _, _ in fronts):
            return fronts
        if self.spec.pairs == "pieces":
            self.note_at(
                row, "count", "single leaves of several heights in one row; give each pair its row"
            )
            return fronts
        return [(self._as_pair(row, front, 1)[0], hands, 1) for front, hands, _ in fronts]

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
        """Name the unit that a column of lengths is in: what all its cells say, else that of its
        bare numbers; "" for any other."""
        if heading.column not in self._ranges and heading.column != "size":
            return ""
        bare = str(self._units.get(heading.column, self._bare_unit))
        return self._signed_unit(heading.column) or bare

    def _signed_unit(self, column: str) -> str:
        """Name the unit that every cell of a column says itself, "" where one says none, or they
        say several."""
        units: set[str] = set()
        for row in self.read:
            text = self._raw(row, column)
            parts = split_sizes(text) or split_sizes(find_sizes(text))
            sizes = [part.size for part in parts] or list(split_heights(text)) or [text]
            signs = (ends_with_unit(size).lower() for size in sizes if size)
            units |= {"in" if sign in INCH_SIGNS else sign for sign in signs}
        return units.pop() if len(units) == 1 else ""
