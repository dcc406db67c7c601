"""One row of a front list, cell by cell: its sizes, in columns of their own or in one cell; its
kind and hand, in words; its ID; how it is made.
"""

from collections.abc import Sequence

from msgspec.structs import replace

from jigs.given.ids import LONGEST_NAME, check_id, spell_id
from jigs.given.job import FRONT_KINDS, FrontKind, FrontSpec
from jigs.given.stated import FrontWords, OpenedBy, RowRead
from jigs.ground.believable import FRONT_BOARD, Range, measure
from jigs.ground.errors import JigsheetError, LengthError
from jigs.ground.geometry import Hand
from jigs.ground.lengths import BareUnit
from jigs.reading.fieldkeys import ANY_FRONT, FRONTS
from jigs.reading.frontcounts import count_alone, count_beside_sizes, count_in_words
from jigs.reading.fronthands import FrontHands
from jigs.reading.frontsaid import ALLOWED, KIND_COLUMNS, ListAsGiven, whole_words
from jigs.reading.frontwords import FrontWord, read_place, says_glass
from jigs.reading.headings import SIZE_COLUMNS, ListColumn
from jigs.reading.listcells import Part, find_sizes, part_sizes, split_sizes
from jigs.reading.listcolumns import column_letter, shorten
from jigs.reading.listnumbers import Sign, may_be_thousands, plain_number, split_heights
from jigs.reading.listquestions import answer
from jigs.reading.listtable import ListRow

EMPTY = frozenset(("-", "–", "—", "./.", "n/a", "--"))
"""What stands in a cell that says nothing."""
_HINGED: tuple[FrontKind, ...] = ("door", "pair", "lift")
"""What has a pane where its words say glass: of a drawer they may mean its sides."""
ORDERS = {
    "width-first": ("width", "height", "thickness"),
    "height-first": ("height", "width", "thickness"),
}


class FrontCells(FrontHands):
    """Reads the cells of fronts."""

    def __init__(self, given: ListAsGiven) -> None:
        super().__init__(given)
        self.names: dict[str, str] = {}
        """The IDs that were made of names that are none."""
        self.unordered: tuple[ListRow, str] | None = None
        """The first cell of several sizes of which nobody says which is the width."""
        self.doubled: tuple[ListRow, str] | None = None
        """The first row that says a pair in another word."""
        self.grouped: tuple[ListRow, str] | None = None
        """The first number in which a sign may part thousands, or be a decimal's."""
        self.merged: tuple[ListRow, str] | None = None
        """The first count that stands in one cell for several rows."""
        self.unheaded: dict[int, ListRow] = {}
        """Columns without a heading, each with the first front that has a cell there."""
        self.unsettled: set[str] = set()
        """The boxes of which it is asked whether two doors stand side by side."""
        self.glazed: dict[int, str] = {}
        """The stile of each row whose words alone say that its door has a pane, "" where none is
        said."""
        self.sizes_read: dict[str, tuple[FrontKind | None, float | None, float | None]] = {}
        """Kind, width and height (mm) of each row that was read, by its place."""
        self.decimal: Sign = ""
        """The sign before all decimals of its sizes."""
        self._now: tuple[int, dict[str, str]] = (-1, {})
        """The row of several heights that is read, and the sizes of one of its fronts."""
        self._sizes: tuple[int, dict[str, str]] = (-1, {})

    def scale_remedy(self, meant: Sequence[BareUnit]) -> str:
        return f"; or {' or '.join(answer(('units', unit), bare=self._bare) for unit in meant)}"

    def column_remedy(self, column: str, meant: Sequence[BareUnit]) -> str:
        heading = self.header.find(column)
        if heading is None:
            return ""
        letter = column_letter(heading.place)
        said = (answer((column, f"{letter} ({unit})"), bare=self._bare) for unit in meant)
        return f"; or {' or '.join(said)}"

    def cell(self, row: ListRow, column: str) -> str:
        """Give the text of a row's cell in a column, "" where there is none, or it says nothing; of
        sizes in one cell, the one that is asked for."""
        if row.number == self._now[0] and column in self._now[1]:
            return self._now[1][column]
        text = super().cell(row, column)
        if not text and column in SIZE_COLUMNS and self.header.find(column) is None:
            return self._parts(row).get(column, "")
        return "" if text in EMPTY else text

    def check_headings(self, row: ListRow) -> None:
        """Keep the columns in which a front has a cell without a heading."""
        known = {heading.place for heading in self.header.headings}
        for place, cell in enumerate(row.cells):
            headed = place < len(self.header.cells) and self.header.cells[place]
            if cell and not headed and place not in known and self.header.row:
                self.unheaded.setdefault(place, row)

    def read_count(self, row: ListRow) -> int | None:
        """Read how many alike, in its own column or among the words of the row; of one that stands
        for several rows it is asked what it counts."""
        if self.is_merged(row, "count"):
            self.merged = self.merged or (row, self.cell(row, "count"))
        count = super().read_count(row)
        said, text = self._count_said(row)
        if said is None or said == count:
            return count
        if self.cell(row, "count"):
            if count is not None:
                self.note_at(row, "count", f"{count} given, and '{text}' says {said}: keep one")
            return count
        remark = f"{self.row_words(row.number)}: {said} alike ('{text}')"
        if said > 1 and remark not in self.remarks:
            self.remarks.append(remark)
        return said

    def _count_said(self, row: ListRow) -> tuple[int | None, str]:
        """Give how many the words of a row say there are, and these words."""
        texts = [(self.cell(row, column), count_in_words) for column in KIND_COLUMNS]
        texts += [
            (self.cell(row, "note"), count_alone),
            (self._raw(row, "size"), count_beside_sizes),
        ]
        found = ((read(text), shorten(text)) for text, read in texts if text)
        return next(((count, text) for count, text in found if count is not None), (None, ""))

    def _raw(self, row: ListRow, column: str) -> str:
        """Give a cell as it stands, before sizes are parted in it."""
        return super().cell(row, column)

    def measure(
        self, row: ListRow, column: str, text: str, within: Range | None = None
    ) -> float | None:
        """Read a length; of a number that may be a thousand it is asked which sign parts them."""
        if self.in_metres(column):
            return super().measure(row, column, text, within)
        text = plain_number(text, self.spec.thousands or "", self.decimal)
        if not self.spec.thousands and may_be_thousands(text):
            usual = within or self._ranges[column]
            try:
                plain = measure(text, self._unit_of(column), usual).usual
            except LengthError:
                plain = False
            if not plain:
                self.grouped = self.grouped or (row, text)
                return None
        return super().measure(row, column, text, within)

    def _parts(self, row: ListRow) -> dict[str, str]:
        if self._sizes[0] != row.number:
            self._sizes = (row.number, self._part_sizes(row))
        return self._sizes[1]

    def heights_of(self, row: ListRow) -> tuple[dict[str, str], ...]:
        """Give the sizes of each of several fronts that one row has in its cell of heights, from
        the top; empty for any other row."""
        if self.header.find("height"):
            return tuple({"height": one} for one in split_heights(super().cell(row, "height")))
        parts = part_sizes(super().cell(row, "size"))
        if len(parts) != 2 or not any(map(split_heights, parts)):
            return ()
        order = self._order(tuple(map(Part, parts)))
        if not order:
            self.unordered = self.unordered or (row, super().cell(row, "size"))
            return ()
        sizes = dict(zip(order, parts, strict=False))
        heights = split_heights(sizes.get("height", ""))
        return tuple({"width": sizes.get("width", ""), "height": one} for one in heights)

    def read_sized(
        self, row: ListRow, count: int, sizes: dict[str, str]
    ) -> tuple[FrontSpec, dict[Hand, int]]:
        """Read one of the fronts of a row with the sizes that it has there."""
        self._now = (row.number, sizes)
        try:
            return self.read_front(row, count)
        finally:
            self._now = (-1, {})

    def _part_sizes(self, row: ListRow) -> dict[str, str]:
        """Part the sizes in one cell; where nobody says which is which, that is kept to be asked,
        and there are none."""
        text = super().cell(row, "size")
        parts = split_sizes(text) or split_sizes(find_sizes(text))
        order = self._order(parts)
        if parts and not order and self.unordered is None:
            self.unordered = (row, text)
        return {column: part.size for column, part in zip(order, parts, strict=False)}

    def _order(self, parts: tuple[Part, ...]) -> tuple[str, ...]:
        named = tuple(part.column for part in parts)
        if {"width", "height"} <= set(named) and named.count("") <= 1:
            return tuple(column or "thickness" for column in named)
        if self.spec.order:
            return ORDERS[self.spec.order]
        heading = self.header.find("size")
        order = heading.order if heading else ()
        return (*order, "thickness") if len(order) == len(SIZE_COLUMNS) - 1 else order

    def read_front(self, row: ListRow, count: int) -> tuple[FrontSpec, dict[Hand, int]]:
        """Read a front, and how many of several alike hang left and how many right."""
        self.check_headings(row)
        word = self._read_kind(row)
        kind = word.kind
        opening = kind == "opening"
        sizes = FRONTS[kind] if kind else ANY_FRONT
        self._check_parts(row)
        width = self._read_needed(row, "width", sizes.width, needed=self._bare and not opening)
        height = self._read_needed(row, "height", sizes.height, needed=self._bare)
        self.sizes_read[self.place(row.number)] = (kind, width, height)
        if not opening:
            self.check_both(row)
        hands = self.read_hands(row, kind, count)
        front = FrontSpec(
            id=self.read_name(row, "id"),
            kind=kind or "door",
            # Of an unknown kind nobody can say how wide it hangs.
            width=width if kind else None,
            height=height,
            hinged=None if hands else self.read_hand(row, kind, word.hand),
            thickness=self.read_size(row, "thickness"),
            opened_by=OpenedBy(pull=self.read_text(row, "pull") or None),
            words=FrontWords(
                finish=self.read_text(row, "finish"),
                note=(note := self.read_text(row, "note")),
                hangs=read_place(note),
            ),
        )
        front = self.with_making(row, front)
        if self._says_glass(row, kind):
            front = replace(front, five_piece=replace(front.five_piece, glass=True))
        front = replace(
            front,
            row=RowRead(doubts=self.take_doubts(), hidden=self.hidden_of(row), listed=True),
        )
        return front, hands

    def _says_glass(self, row: ListRow, kind: FrontKind | None) -> bool:
        """Tell whether a door's words say that it has a pane, where nobody says yes or no to that,
        nor what the row is."""
        if kind not in _HINGED or self.cell(row, "glass") or self.row_meant(row):
            return False
        said = any(says_glass(self.cell(row, column)) for column in (*KIND_COLUMNS, "note"))
        if said:
            self.glazed[row.number] = self.cell(row, "stile")
        return said

    def _read_needed(
        self, row: ListRow, column: ListColumn, within: Range, *, needed: bool
    ) -> float | None:
        allowed = ALLOWED[column] if needed else ""
        return self.read_size(row, column, needed=allowed, within=within)

    def _check_parts(self, row: ListRow) -> None:
        """Note a cell of sizes that holds none, or is empty, or begins with a count."""
        text = super().cell(row, "size")
        if (
            self._now[0] == row.number
            or self.header.find("size") is None
            or self.header.find("width")
        ):
            return
        if self._is_counted(row):
            self.note_at(
                row,
                "size",
                f"three sizes, and the last is no board ('{shorten(text)}' given); a count stands "
                "in a column of its own",
            )
        elif not text and self._bare:
            self.note_at(row, "size", "missing; a list without a job file gives every front's size")
        elif text and not (split_sizes(text) or split_sizes(find_sizes(text))):
            self.note_at(
                row, "size", f"no two sizes ('{shorten(text)}' given); 597 x 713 is allowed"
            )

    def _is_counted(self, row: ListRow) -> bool:
        """Tell whether the first of three sizes in a cell is a count: the last is no thickness."""
        text = self._parts(row).get("thickness", "")
        try:
            return bool(text) and not measure(text, self._unit_of("thickness"), FRONT_BOARD).usual
        except LengthError:
            return False

    def _read_kind(self, row: ListRow) -> FrontWord:
        """Read what a front is: from its kind, else its description or name, else the heading of
        its section, else as the person says of such rows; what is said of this row holds first."""
        meant = next((kind for kind in FRONT_KINDS if kind == self.row_meant(row)), None)
        if meant:
            words = [self.word_of(self.cell(row, column)) for column in KIND_COLUMNS]
            hand = next((word.hand for word in words if word.hand), None)
            return self._doubling(row, meant, FrontWord(meant, hand, meant == "pair"))
        for column in KIND_COLUMNS:
            if text := self.cell(row, column):
                word = self.word_of(text)
                if word.kind:
                    self.kinds.setdefault(shorten(text), word.kind)
                    return self._doubling(row, text, word)
                if column == "kind" and not self.kindless:
                    self._unknown[whole_words(text)].append(row.number)
                    return word
        if self.section.kind:
            return self._doubling(row, self.section.kind, replace(self.section, hand=None))
        if kind := self.spec.unnamed:
            return self._doubling(row, kind, FrontWord(kind, doubled=kind == "pair"))
        self._unknown[whole_words(self.cell(row, "description"))].append(row.number)
        return FrontWord()

    def _doubling(self, row: ListRow, text: str, word: FrontWord) -> FrontWord:
        """Give the word; the first row that says a pair in another word is kept to be asked."""
        if word.doubled and self.doubled is None:
            self.doubled = (row, text)
        return word

    def read_name(self, row: ListRow, column: ListColumn) -> str:
        """Read an ID; a name that is none is written in its signs, and cut where it is too long."""
        return self.spell_name(row, column, self.cell(row, column))

    def spell_name(self, row: ListRow, column: ListColumn, text: str) -> str:
        """Write a name as an ID, as `read_name` does."""
        try:
            return check_id(text) if text else ""
        except JigsheetError as error:
            if text not in self.names:
                name = spell_id(text)
                taken = set(self.names.values())
                more = 2
                while name in taken:
                    name = f"{spell_id(text, LONGEST_NAME - 3)}-{more}"
                    more += 1
                if not name:
                    self.note_at(row, column, str(error))
                    return ""
                self.names[text] = name
            return self.names[text]
