"""Which way the doors of a row hang, wherever it says so: in a column of hands, in one for left and
one for right, in the words of its kind, in a note that says nothing else. Two that say otherwise
are a fault: nobody may choose between them.
"""

from collections.abc import Iterator

from jigs.given.job import FrontKind
from jigs.given.listspec import HandMeant
from jigs.ground.geometry import Hand
from jigs.reading.frontsaid import FrontSaid, longest_word, whole_words
from jigs.reading.frontwords import (
    count_hands,
    find_hand,
    find_handle_side,
    mentions_hand,
    opens_upward,
    read_hand,
    read_place,
    read_yes,
    says_pair,
    speaks_of_hinges,
)
from jigs.reading.headings import fold
from jigs.reading.jobboxes import needless_hand
from jigs.reading.listasked import asked_hand
from jigs.reading.listcells import read_whole_number
from jigs.reading.listcolumns import shorten
from jigs.reading.listquestions import answer_rows, typed_key
from jigs.reading.listtable import ListRow

HANDS: tuple[Hand, ...] = ("left", "right")
ACROSS: dict[Hand, Hand] = {"left": "right", "right": "left"}
"""The side of the hinges, by that of the handle."""
MARKS = frozenset(("x", "✓", "✔", "✗", "*", "+"))
"""What stands in a cell that is ticked."""
_SHORTEST_NOTE = 2
"""Letters of a note that says a hand: one letter may be anything."""


class FrontHands(FrontSaid):
    """Reads the cells that say which way a front hangs."""

    handless = False
    """Whether its column of hands holds numbers alone: how many hinges a front has."""

    def read_count(self, row: ListRow) -> int | None:
        """Read how many alike; where a column says how many hang left and one how many right, they
        are as many as both say."""
        count = super().read_count(row)
        sides = [number for number in self._sides(row).values() if number]
        if sides and count is not None and sum(sides) != count:
            self.note_at(
                row, "count",
                f"{sum(sides)} hands for {count} doors ('{self.cell(row, 'left')}' left, "
                f"'{self.cell(row, 'right')}' right)",
            )  # fmt: skip
            return count
        return sum(sides) if sides else count

    def read_hands(self, row: ListRow, kind: FrontKind | None, count: int) -> dict[Hand, int]:
        """Read how many of a row's doors hang left and how many right, where it is both."""
        if kind != "door" or count < len(HANDS):
            return {}
        sides = self._sides(row)
        if len(sides) == len(HANDS):
            if all(sides.values()):
                return {hand: number for hand, number in sides.items() if number}
            if count == len(HANDS):
                return dict.fromkeys(HANDS, 1)
            self.note_at(row, "left", f"left and right for {count} doors: how many are each?")
        for column in ("hinged", "note", "description"):
            if hands := count_hands(self.cell(row, column)):
                if sum(hands.values()) == count:
                    return hands
                self.note_at(
                    row,
                    column,
                    f"{sum(hands.values())} hands for {count} doors "
                    f"('{shorten(self.cell(row, column))}' given)",
                )
        return {}

    def read_hand(self, row: ListRow, kind: FrontKind | None, word: Hand | None) -> Hand | None:
        """Read which way a front hangs; `word`: what the word of its kind says of it."""
        stated = self._read_column(row, kind)
        said: dict[str, Hand] = {}
        if stated:
            said[f"'{shorten(self.cell(row, 'hinged'))}'"] = stated
        if word:
            said.setdefault("its kind", word)
        if kind == "door":
            for text, across in self._handles(row):
                if not said:
                    words = f"hinged {across}, for the handle is across ('{text}')"
                    self.remarks.append(f"{self.row_words(row.number)}: {words}")
                said.setdefault(f"the handle ('{text}')", across)
            sides = self._sides(row)
            if len(sides) == 1:
                [side] = sides
                said.setdefault(f"column '{self._heading(side)}'", side)
            note = "" if says_pair(self.cell(row, "note")) else self.cell(row, "note")
            meant = self._meant_hand(note)
            hand = find_hand(note) if meant is None and len(fold(note)) >= _SHORTEST_NOTE else meant
            if hand in HANDS:
                if not said:
                    words = f"hinged {hand} ('{shorten(note)}')"
                    self.remarks.append(f"{self.row_words(row.number)}: {words}")
                said.setdefault(f"'{shorten(note)}'", "left" if hand == "left" else "right")
            elif not said and meant is None and not self.cell(row, "hinged"):
                self._keep_mention(row, note)
        if len(set(said.values())) > 1:
            words = " and ".join(f"{hand} by {text}" for text, hand in said.items())
            self.note(row.number, None, f"it hangs {words}: keep one")
            return None
        return next(iter(said.values()), None)

    def _handles(self, row: ListRow) -> Iterator[tuple[str, Hand]]:
        """Yield what says on which side the handle is, each with the hand that it makes."""
        text = self.cell(row, "pull side")
        side = find_hand(text) or find_handle_side(text)
        if side:
            yield shorten(text), ACROSS[side]
        elif text and not read_place(text):
            self.note_at(
                row, "pull side", f"not a side ('{shorten(text)}' given); allowed: left, right"
            )
        note = self.cell(row, "note")
        side = find_handle_side(note) if self._meant_hand(note) is None else None
        if side:
            yield shorten(note), ACROSS[side]

    def _sides(self, row: ListRow) -> dict[Hand, int | None]:
        """Read the two columns of hands: how many hang each way, None for a mark alone."""
        sides: dict[Hand, int | None] = {}
        for hand in HANDS:
            text = self.cell(row, hand)
            if not text or text == "0" or read_yes(text) is False:
                continue
            number = read_whole_number(text)
            if not number and text.lower() not in MARKS and not read_yes(text):
                self.note_at(row, hand, f"not a count, nor a mark ('{shorten(text)}' given)")
            sides[hand] = number if text.lower() not in MARKS else None
        return sides

    def _keep_mention(self, row: ListRow, note: str) -> None:
        """Keep a note that has a hand: to be asked where it speaks of hinges too, else told."""
        word = whole_words(note)
        if mentions_hand(note) and speaks_of_hinges(note):
            self._handed[word].append(row.number)
        elif mentions_hand(note):
            key = f"hands.{typed_key(word)}"
            said = f"no hand is said; '{word}' names one: {key}=left or {key}=right if it is that"
            self.remarks.append(f"{self.row_words(row.number)}: {said}")

    def _meant_hand(self, text: str) -> HandMeant | None:
        """Give the hand that the person says a text has."""
        found = longest_word(text, self.spec.hands)
        return self.spec.hands[found] if found else None

    def _read_column(self, row: ListRow, kind: FrontKind | None) -> Hand | None:
        text = self.cell(row, "hinged")
        meant = self._meant_hand(text)
        if meant == "nothing":
            return None
        hand = meant or find_hand(text)
        if self.handless or (kind == "pair" and not hand):
            return None  # of a pair the one leaf hangs left, the other right: it says nothing else
        if kind == "lift" and opens_upward(text):
            return None
        needless = needless_hand(kind) if text else ""
        if needless:
            self.note_at(row, "hinged", f"{needless} ('{shorten(text)}' given)")
            return None
        if text and hand is None and not _both(text) and not count_hands(text):
            asked = asked_hand(self.row_words(row.number), whole_words(text))
            up = answer_rows([row.number], "lift", bare=self._bare)
            more = f"; {up} where it goes up" if opens_upward(text) else ""
            what = f"not a hand ('{shorten(text)}' given); allowed: left, right{more}"
            self.note(row.number, self._heading("hinged"), what, asked)
        return hand


def _both(text: str) -> bool:
    """Tell whether a cell names both hands: it is open which.

    >>> _both("L/R"), _both("left or up")
    (True, False)
    """
    hands = [read_hand(token) for token in fold(text).split()]
    return len(hands) > 1 and None not in hands and len(set(hands)) > 1
