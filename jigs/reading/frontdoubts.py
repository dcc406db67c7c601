"""What stands about the fronts of a list and changes how they are read: a title that names the unit
of all sizes, titles that name the box of the rows below them, rows that are crossed out, optional
or cancelled; and what the person says of single rows.
"""

from collections.abc import Sequence

from jigs.given.listspec import NOTHING
from jigs.ground.lengths import BareUnit
from jigs.reading.frontlook import FrontLook, filled
from jigs.reading.frontwords import read_box_title, read_doubt
from jigs.reading.headings import title_unit
from jigs.reading.listasked import asked_dropped, asked_titles
from jigs.reading.listcolumns import Header, column_letter, shorten
from jigs.reading.listquestions import MOST_NAMED, answer_rows, ask_dropped, ask_titles, name_rows
from jigs.reading.listtable import ListRow, ListTable


def find_title_unit(table: ListTable, header: Header) -> tuple[BareUnit, str] | None:
    """Find the one unit that the titles above a header name, with the title that does: `Maten in
    cm`. None where they name none, or several."""
    titles = [row for row in table.rows if row.number < header.row]
    found = {unit: cell for row in titles for cell in filled(row) if (unit := title_unit(cell))}
    return next(iter(found.items())) if len(found) == 1 else None


class FrontDoubts(FrontLook):
    """Looks at titles, and at rows that may be none."""

    def _titles(self) -> list[ListRow]:
        """Give the titles of boxes that have fronts below them."""
        last = max((row.number for row in self.read), default=0)
        return [row for row in self.left if row.number < last and self.is_title(row)]

    def _ask_titles(self) -> None:
        """Ask about titles between the rows that seem to name boxes, where no column does."""
        titles = self._titles()
        if titles and self.spec.titles is None:
            words, text = name_rows([row.number for row in titles]), filled(titles[0])[0]
            what = ask_titles(words, text, self._bare)
            self.note(self.header.row, None, what, asked_titles(words, text))

    def _tell_unboxed(self) -> None:
        """Tell that a list which stands alone says of no front on which box it hangs."""
        unboxed = self.header.find("box") is None and self.spec.titles != "boxes"
        if self._bare and unboxed and len(self.read) > 1:
            said = "no column says on which box a front hangs: each gets one of its own"
            self.remarks.append(said)

    def take_title(self, row: ListRow) -> None:
        """Take a row that stands alone as what its title says of the rows below it."""
        [text] = filled(row)
        self.section = self.word_of(text)
        if self.spec.titles == "boxes" and self.is_title(row):
            self.titled = self.spell_name(row, "box", read_box_title(text))

    def _ask_dropped(self) -> None:
        """Ask about the rows that are crossed out, or whose words say that they may not be
        ordered."""
        found = {
            row.number: f"'{shorten(self.called(row))}', crossed out"
            if row.number in self._table.struck
            else f"'{said}'"
            for row in self.read
            if self.row_meant(row) is None
            and ((said := _doubted(filled(row))) or row.number in self._table.struck)
        }
        if found:
            what = ask_dropped(found, self._bare)
            self.note(self.header.row, None, what, asked_dropped(found))

    def _tell_single(self) -> None:
        """Tell what was said of single rows; note one that the list does not have."""
        rows = {row.number: row for row in self.rows()}
        for word, meant in self.spec.row.items():
            if (row := rows.get(int(word))) is None:
                reach = f"rows {min(rows)} to {max(rows)}" if rows else "no row"
                self.note(int(word), None, f"row.{word}: no such row; {reach} below its header")
                continue
            called = f"{self.row_words(row.number)} '{shorten(self.called(row))}'"
            said = {NOTHING: "left alone", "front": "read as it stands"}.get(meant, meant)
            self.remarks.append(f"{called}: {said}, as said")

    def _tell_hidden(self) -> None:
        """Tell which rows their owner does not see in the workbook."""
        rows = (row for row in self.read if self.row_meant(row) is None)
        hidden = [row.number for row in rows if row.number in self._table.hidden]
        if hidden:
            are, left = ("is", "it") if len(hidden) == 1 else ("are", "them")
            said = answer_rows(hidden, NOTHING, bare=self._bare)
            self.remarks.append(
                f"{name_rows(hidden)} {are} hidden in the workbook, and read as any other: "
                f"{said} leaves {left} alone"
            )

    def _tell_comments(self) -> None:
        """Tell which cells have a comment: it may say otherwise than the cell, and is not read."""
        last = max((row.number for row in self.read), default=0)
        cells = [
            f"{column_letter(column - 1)}{row}"
            for row, column in self._table.remarked
            if row <= last
        ]
        if cells:
            more = f" and {len(cells) - MOST_NAMED} more" if len(cells) > MOST_NAMED else ""
            said = f"{'a comment is' if len(cells) == 1 else 'comments are'} pinned to"
            self.remarks.append(
                f"{said} {', '.join(cells[:MOST_NAMED])}{more}, and not read: look whether the "
                "cell still holds"
            )

    def called(self, row: ListRow) -> str:
        """Give what a row is best told by: its word for a front or a thing, else its first cell."""
        texts = (self.cell(row, column) for column in ("kind", "description"))
        return next(filter(None, (*texts, *row.cells)))


def _doubted(texts: Sequence[str]) -> str:
    return next((shorten(text) for text in texts if read_doubt(text)), "")
