"""A front list looked at as a whole: which rows are fronts, where sizes and kinds stand, what the
numbers of a column may mean.

A row is no front if it has no size and says at most one thing: a title, a remark, a page's number;
if it begins as a sum does; or if its word is that of no front, a filler's or a plinth's.
"""

from collections.abc import Sequence

from msgspec.structs import replace

from jigs.given.listspec import NOTHING
from jigs.ground.believable import FRONT_BOARD, measure
from jigs.ground.errors import AskedBack, LengthError
from jigs.ground.geometry import Hand
from jigs.reading.frontboxes import FrontBoxes
from jigs.reading.frontcells import FrontCells
from jigs.reading.fronthands import HANDS
from jigs.reading.frontsaid import ALLOWED
from jigs.reading.frontwords import (
    count_hands,
    find_hand,
    is_sum,
    names_handle,
    read_box_title,
    read_hand,
)
from jigs.reading.headings import LENGTH, LIST_COLUMNS, OTHER, is_measure
from jigs.reading.jobboxes import USUAL_ALIKE
from jigs.reading.listasked import (
    asked_column,
    asked_hand_columns,
)
from jigs.reading.listcells import find_sizes, read_whole_number
from jigs.reading.listcolumns import ListHeading, Unread, column_letter, shorten
from jigs.reading.listnumbers import decimal_sign
from jigs.reading.listquestions import (
    answer,
    ask_column,
    ask_hand_columns,
    columns_asked,
    kinds_asked,
)
from jigs.reading.listtable import ListRow

SAYS_LITTLE = ("note", "description")
"""Columns that a title or a remark may stand in."""


class FrontLook(FrontBoxes):
    """Looks at whole columns."""

    left: Sequence[ListRow] = ()
    """Rows that are no fronts."""
    read: Sequence[ListRow] = ()
    """Rows that are."""

    def _is_front(self, row: ListRow) -> bool:
        if meant := self.row_meant(row):
            return meant != NOTHING
        if self.is_nothing(row) or self.is_title(row):
            return False
        kind = self.cell(row, "kind")
        sized = bool(self.cell(row, "width") or self.cell(row, "height")) or any(
            letter.isdigit() for letter in self.cell(row, "size")
        )
        if any(map(is_sum, filled(row)[: 1 if sized else None])) and not self.word_of(kind).kind:
            return False
        if sized:
            return True
        said = [c for c in LIST_COLUMNS if c not in SAYS_LITTLE and self.cell(row, c)]
        known = bool(kind) and self.word_of(kind).kind is not None and len(filled(row)) > 1
        # A line that stands under the IDs alone is a remark, whoever reads the list; one that says
        # no more than how many of a thing is a front's where its description is a kind.
        counted = said == ["count"] and self.word_of(self.cell(row, "description")).kind is None
        alone = not self._bare and bool(said) and said != ["id"] and not counted
        return known or len(said) > 1 or alone

    def is_title(self, row: ListRow) -> bool:
        """Tell whether a row stands alone and names a box, in a list without a column of boxes."""
        texts = filled(row)
        unboxed = self.header.find("box") is None
        return unboxed and len(texts) == 1 and bool(read_box_title(texts[0]))

    def _look_over(self) -> None:
        """Look at whole columns: where sizes stand, where kinds do, what numbers may mean."""
        described = self.header.find("description")
        texts = [super(FrontCells, self).cell(row, "description") for row in self.rows()]
        self._look_for_kinds()
        self._look_for_units()
        self._look_for_signs()
        kinds = [self.word_of(text).kind for row in self.rows() if (text := self.cell(row, "kind"))]
        self.kindless = not any(kinds) and any(self.word_of(text).kind for text in texts)
        hands = [text for row in self.read if (text := self.cell(row, "hinged"))]
        self.handless = bool(hands) and all(text.isdigit() for text in hands)
        sides = self._ask_hand_columns()
        for other in self.header.unread:
            if not other.like and not other.twice and other.place not in sides:
                self._ask_cells_of(other)
        if self.header.find("kind") is None and not described and self.spec.unnamed is None:
            titles = [self.word_of(filled(row)[0]).kind for row in self.left if filled(row)]
            named = [self.word_of(self.cell(row, "id")).kind for row in self.read]
            if not any((*titles, *named, self.kind_asked)):
                self.kind_asked = True
                self.note(
                    self.header.row, None,
                    f"no column 'kind'; {ALLOWED['kind']}; "
                    f"{answer(('kind', 'LETTER'), bare=self._bare)}, or unnamed=door for all",
                    self._asked_kinds(),
                )  # fmt: skip

    def _look_for_sizes(self) -> None:
        """Take a column of descriptions for that of sizes too, where these stand nowhere else."""
        described = self.header.find("description")
        sized = any(self.header.find(column) for column in ("width", "height", "size"))
        texts = [super(FrontCells, self).cell(row, "description") for row in self.rows()]
        if described and not sized and any(map(find_sizes, texts)):
            size = replace(described, column="size", unit=described.unit)
            self.header = replace(self.header, headings=(*self.header.headings, size))

    def _asked_kinds(self) -> AskedBack:
        """Ask a person which column says what the fronts are, or what all are."""
        all_alike = kinds_asked("", "unnamed", nothing=False).choices
        columns = columns_asked("", "kind", self.header).choices
        return AskedBack(
            "Nothing says what the fronts are: which column does, or are all of them one kind?",
            (
                *((f"column {words}", said) for words, said in columns),
                *((f"each is {words}", said) for words, said in all_alike),
            ),
        )

    def _leave_prices(self) -> None:
        """Leave a second column that may name boxes alone where numbers stand in it: the price of a
        `Unit`."""
        for other in self.header.unread:
            fronts = [row for row in self.rows() if self._is_front(row)]
            cells = (row.cells[other.place] for row in fronts if other.place < len(row.cells))
            texts = list(filter(None, cells))
            if other.twice == "box" and not any(text[:1].isalpha() for text in texts):
                unread = tuple(one for one in self.header.unread if one is not other)
                self.header = replace(self.header, unread=unread)

    def _look_for_signs(self) -> None:
        """Look what sign stands before the decimals of its sizes."""
        columns = [c for c in ("width", "height", "size") if self.header.find(c)]
        texts = [text for row in self.read for c in columns if (text := self._raw(row, c))]
        self.decimal = decimal_sign(texts, workbook=self._table.workbook)

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
        what = ask_hand_columns(left, right, self._bare)
        self.note(self.header.row, None, what, asked_hand_columns(left, right))
        return (left.place, right.place)

    def _ask_cells_of(self, other: Unread) -> None:
        """Ask about a column whose heading is not known and whose cells say what no other does:
        how many alike, which hand."""
        cells = [row.cells[other.place] for row in self.read if other.place < len(row.cells)]
        texts = list(filter(None, cells))
        what: str | None = None
        if self.header.find("count") is None and _are_counts(texts):
            what = "count"
        elif self.header.find("hinged") is None and texts and _are_hands(texts):
            what = "pull side" if names_handle(other.text) else "hinged"
        elif self.header.find("thickness") is None and self._are_boards(other.text, texts):
            what = "thickness"
        elif self.header.find("kind") is None and texts and self._are_mostly_kinds(texts):
            what, self.kind_asked = "kind", True
        if what:
            letter = column_letter(other.place)
            question = ask_column(what, letter, texts, self._bare)
            asked = asked_column(what, letter, other.text, texts)
            self.note(self.header.row, other.text, question, asked)

    def _are_kinds(self, texts: Sequence[str]) -> bool:
        return all(self.word_of(text).kind for text in texts)

    def _are_mostly_kinds(self, texts: Sequence[str]) -> bool:
        return sum(bool(self.word_of(text).kind) for text in texts) > len(texts) / 2

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


def _are_hands(texts: Sequence[str]) -> bool:
    """Tell whether cells say which way doors hang, most of them: a flap's says that it goes up.

    >>> _are_hands(["links", "rechts", "naar boven"]), _are_hands(["left", "oak", "white"])
    (True, False)
    """
    said = [text for text in texts if find_hand(text) or count_hands(text)]
    return len(said) > len(texts) / 2


def _are_counts(texts: Sequence[str]) -> bool:
    """Tell whether cells may be counts: whole numbers, some over 1, and no mere numbering.

    >>> _are_counts(["2", "1", "4"]), _are_counts(["1", "2", "3"]), _are_counts(["48.50"])
    (True, False, False)
    """
    counts = [count for text in texts if (count := read_whole_number(text)) is not None]
    if not counts or len(counts) < len(texts) or not 1 < max(counts) <= USUAL_ALIKE:
        return False
    return counts != list(range(counts[0], counts[0] + len(counts)))


def filled(row: ListRow) -> list[str]:
    """Give the cells of a row that say something."""
    return [cell for cell in row.cells if cell]
