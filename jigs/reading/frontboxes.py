"""The boxes that the fronts of a list hang on: empty cells below a filled one, a left and a right
door on one box. What a list does not say of them is asked, and what looks upside down where its
rows stand from the top: a drawer or a false front under doors, in a tall box a longer door above a
shorter one.
"""

from collections import defaultdict
from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.hangsat import NotedPlace, RowsFrom, notes_say
from jigs.given.job import BoxKind, FrontSpec
from jigs.given.listspec import NOTHING, shares_width
from jigs.ground.errors import AskedBack
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.lengths import format_length
from jigs.reading.frontcells import FrontCells
from jigs.reading.frontwords import read_place
from jigs.reading.listasked import (
    asked_apart,
    asked_both_hands,
    asked_box,
    asked_doors_alike,
    asked_rows,
)
from jigs.reading.listcolumns import column_letter, shorten
from jigs.reading.listquestions import (
    answer,
    ask_apart,
    ask_both_hands,
    ask_box,
    ask_doors_alike,
    ask_rows,
    name_rows,
)
from jigs.reading.listtable import ListRow

TALL = 1500.0
"""Fronts that come to more are before a tall box, mm (common practice, no source)."""
SAME = 1.0
"""Doors whose heights differ by less are alike, mm (common practice)."""
_HUNG = ("door", "pair")
_ON_TOP = ("drawer", "false-front")


class ListedFront(Struct, frozen=True, kw_only=True):
    """One row: the front as given, its box's ID, how many, and its place in the file.

    `spec.id` and `box` are "" where the row gives none.
    """

    spec: FrontSpec
    box: str
    count: int
    where: str
    box_kind: BoxKind | None = None
    """The kind of its box, where the row names it."""


PLACED = ("note", "description", "kind", "id")
"""Columns whose words may say where in its box a front hangs."""
ReadFront = tuple[ListRow, ListedFront]
HungRow = tuple[ListRow, ListedFront, dict[Hand, int]]
"""A row, what was read of it, and how many of it hang left and how many right, if it says so."""


class FrontBoxes(FrontCells):
    """Hangs the fronts that were read on their boxes."""

    _between: float
    """The gap between the leaves of a pair, mm."""

    from_bottom: set[str]
    """Boxes whose rows were turned."""

    def hang(self, rows: Sequence[HungRow]) -> list[ListedFront]:
        """Give the fronts with their boxes, those of both hands apart, or as pairs."""
        above = ""
        empty: dict[int, str] = {}
        hung: list[tuple[ListRow, ListedFront]] = []
        for row, front, hands in rows:
            above = front.box or above
            if not front.box and self.header.find("box"):
                if above and not self.cell(row, "box"):
                    empty[row.number] = above
                elif not self._bare:
                    what = "missing; it names the job's box the front hangs on"
                    self.note(row.number, self._heading("box"), what)
                if self.spec.empty_box == "above":
                    front = replace(front, box=above)
            hung += [(row, one) for one in self._by_hand(row, front, hands)]
        self._ask_empty(empty)
        self._ask_apart(hung)
        self._check_names([front for _, front in hung])
        return [front for _, front in self._turn(self._pair_up(self._pair_alike(hung)))]

    def _ask_empty(self, empty: dict[int, str]) -> None:
        settled = self.spec.empty_box == "above" or (self.spec.empty_box == "own" and self._bare)
        if empty and not settled:
            what = ask_box(list(empty), next(iter(empty.values())), self._bare)
            asked = asked_box(list(empty), next(iter(empty.values())), self._bare)
            self.note(self.header.row, self._heading("box"), what, asked)
        elif empty and self.spec.empty_box == "above":
            self.remarks.append(f"{name_rows(empty)}: on the box above")

    def _ask_apart(self, hung: Sequence[tuple[ListRow, ListedFront]]) -> None:
        """Ask about a box between whose rows those of another stand: which of its fronts is above
        which, and whether it is one box."""
        rows: dict[str, set[int]] = {}
        apart: dict[str, set[int]] = {}
        last = ""
        for row, front in hung:
            if front.box and front.box != last and front.box in rows:
                apart[front.box] = rows[front.box]
            if front.box:
                rows.setdefault(front.box, set()).add(row.number)
                last = front.box
        for box, numbers in apart.items():
            if self.spec.apart == "one-box":
                self.remarks.append(f"{name_rows(numbers)}: one box {box}, from top to bottom")
        if apart and self.spec.apart is None:
            box, numbers = next(iter(apart.items()))
            what = ask_apart(name_rows(numbers), box, list(apart)[1:], self._bare)
            asked = asked_apart(name_rows(numbers), box)
            self.note(self.header.row, self._heading("box"), what, asked)

    def _check_names(self, fronts: Sequence[ListedFront]) -> None:
        """Note a column of IDs that are those of boxes."""
        same = sorted({front.spec.id for front in fronts} & {f.box for f in fronts if f.box})
        heading = self.header.find("id")
        if same and heading:
            self.note(
                self.header.row,
                heading.name,
                f"it names fronts as boxes are named ('{same[0]}' is both); each needs its own "
                f"name: {answer((NOTHING, column_letter(heading.place)), bare=self._bare)} "
                "leaves it out",
                AskedBack(
                    f"Column {column_letter(heading.place)} names fronts as boxes are named "
                    f"('{same[0]}' is both); each needs a name of its own.",
                    (("leave that column out", f"{NOTHING}={column_letter(heading.place)}"),),
                ),
            )

    def _by_hand(
        self, row: ListRow, front: ListedFront, hands: dict[Hand, int]
    ) -> list[ListedFront]:
        """Part doors of which a row says how many hang left and how many right."""
        if not hands:
            return [front]
        said = ", ".join(f"{count} hinged {hand}" for hand, count in hands.items())
        self.remarks.append(f"{self.row_words(row.number)}: {said}")
        name = front.spec.id
        return [
            replace(
                front,
                spec=replace(front.spec, hinged=hand, id=name and f"{name}-{hand[0].upper()}"),
                count=count,
            )
            for hand, count in hands.items()
        ]

    def _pair_alike(self, hung: Sequence[ReadFront]) -> list[ReadFront]:
        """Give several doors of one row on one box as pairs, where the widths of that box or the
        person say so; where neither does, it is asked."""
        made: list[ReadFront] = []
        asked = False
        for row, front in hung:
            spec, count = front.spec, front.count
            if not front.box or spec.kind != "door" or count < 2 or None in (
                spec.width, spec.height
            ):  # fmt: skip
                made.append((row, front))
                continue
            pair = replace(spec, kind="pair", hinged=None)
            others = [f.spec for r, f in hung if f.box == front.box and r is not row]
            fits = [
                way
                for way, one in (("stack", spec), ("pair", pair))
                if others and all(shares_width(one, other, self._between) for other in others)
            ]
            way = self.spec.doors_alike or (fits[0] if len(fits) == 1 else None)
            words = self.row_words(row.number)
            if way == "pair" and count % 2:
                self.note_at(row, "count", f"{count} leaves, and a pair has two")
            elif way == "pair":
                front = replace(front, spec=pair, count=count // 2)
                self.remarks.append(f"{words}: {'a pair' if count == 2 else f'{count // 2} pairs'}")
            elif way is None and not asked:
                asked = True
                self.note(
                    row.number, None, ask_doors_alike(words, count, front.box, self._bare),
                    asked_doors_alike(words, count, front.box),
                )  # fmt: skip
            made.append((row, front))
        return made

    def _turn(self, hung: Sequence[ReadFront]) -> list[ReadFront]:
        """Give the rows of each box from the top; where it is open which end is first, it is
        asked, once for the list."""
        boxes: defaultdict[str, list[int]] = defaultdict(list)
        for at, (_, front) in enumerate(hung):
            boxes[front.box].append(at)
        turned = list(hung)
        self.from_bottom = set()
        doubts: list[tuple[str, list[ReadFront], str, bool]] = []
        own = {name.upper(): way for name, way in self.spec.box_rows.items()}
        for name in own.keys() - boxes.keys():
            self.note(self.header.row, None, f"rows.{name}: no such box in the list")
        for box, places in boxes.items():
            rows = [hung[at] for at in places]
            if not box or len(rows) < 2:
                continue
            notes = [self._place_said(row) for row, _ in rows]
            way, sure = notes_say(notes)
            usual: RowsFrom = self.spec.rows or "from-top"
            words = self._doubt(rows, notes, way, sure, usual)
            if box in own:
                usual = own[box]
            elif words:
                # Notes that say both ways, or one against what is said of the list, are settled box
                # by box.
                doubts.append((box, rows, words, self.spec.rows is None and way is None))
            elif sure and way:
                usual = way
            if usual == "from-bottom":
                self.from_bottom.add(box)
                for at, one in zip(places, reversed(rows), strict=True):
                    turned[at] = one
                numbers = name_rows({row.number for row, _ in rows})
                by_note = box not in own and sure
                said = f" ('{self._said_at(rows, notes)}')" if by_note else ""
                self.remarks.append(f"box {box}, {numbers}: from the bottom{said}")
        self._ask_rows(doubts)
        return turned

    def _doubt(
        self, rows: Sequence[ReadFront], notes: Sequence[NotedPlace | None], way: RowsFrom | None,
        sure: bool, usual: RowsFrom,
    ) -> str:  # fmt: skip
        """Say what is strange in the rows of a box; "" where nothing is."""
        if sure:
            return "" if way else f"its notes say both ways ('{self._said_at(rows, notes)}')"
        if way and way != usual:
            return f"'{self._said_at(rows, notes)}' is said in it, and its rows stand {usual}"
        if way or self.spec.rows:
            return ""
        found = looks_turned([front.spec for _, front in rows])
        if not found:
            return ""
        at, strange = found
        upper, lower = rows[at][0].number, rows[at + 1][0].number
        return f"row {upper} above row {lower} ({strange})"

    def _said_at(self, rows: Sequence[ReadFront], notes: Sequence[NotedPlace | None]) -> str:
        row = next(row for (row, _), said in zip(rows, notes, strict=True) if said)
        return next(
            shorten(text) for c in PLACED if (text := self.cell(row, c)) and read_place(text)
        )

    def _place_said(self, row: ListRow) -> NotedPlace | None:
        found = (read_place(text) for c in PLACED if (text := self.cell(row, c)))
        return next((place for place in found if place), None)

    def _ask_rows(self, doubts: Sequence[tuple[str, list[ReadFront], str, bool]]) -> None:
        if not doubts:
            return
        box, rows, words, _ = doubts[0]
        more = [name for name, *_ in doubts[1:]]
        free = all(one[3] for one in doubts)
        question = ask_rows(box, words, more, free=free, bare=self._bare)
        self.note(rows[0][0].number, None, question, self._asked_rows(box, rows, words))

    def _asked_rows(self, box: str, rows: Sequence[ReadFront], words: str) -> AskedBack:
        """Ask a person which end is the first row's, with the box by either answer."""
        said = [
            f"{front.count if front.count > 1 else ''} {front.spec.kind} "
            f"{format_length(front.spec.height, self.unit) if front.spec.height else ''}".strip()
            for _, front in rows
        ]
        stacks = {"from-bottom": ", ".join(reversed(said)), "from-top": ", ".join(said)}
        return asked_rows(box, words, stacks)

    def _pair_up(self, hung: Sequence[ReadFront]) -> list[ReadFront]:
        """Give the fronts, a left and a right door of one size on one box as a pair where the
        person says so."""
        fronts: list[ReadFront] = []
        question = ""
        asked: AskedBack | None = None
        at = 0
        while at < len(hung):
            row, front = hung[at]
            at += 1
            if at < len(hung) and _is_both(front, hung[at][1]):
                words = name_rows({row.number, hung[at][0].number})
                asked = asked or asked_both_hands(words, front.box)
                question = question or ask_both_hands(words, front.box, self._bare)
                if self.spec.both_hands is None:
                    self.unsettled.add(front.box)
                if self.spec.both_hands == "pair":
                    at += 1
                    front = replace(front, spec=replace(front.spec, kind="pair", hinged=None))
                    self.remarks.append(f"{words}: a pair on box {front.box}")
            fronts.append((row, front))
        if question and self.spec.both_hands is None:
            self.note(self.header.row, None, question, asked)
        return fronts


def _is_both(first: ListedFront, second: ListedFront) -> bool:
    """Tell whether two fronts are a left and a right door of one size on one box."""
    one, other = first.spec, second.spec
    return (
        bool(first.box)
        and first.box == second.box
        and one.kind == other.kind == "door"
        and (first.count, second.count) == (1, 1)
        and None not in (one.width, one.height)
        and (one.width, one.height) == (other.width, other.height)
        and {one.hinged, other.hinged} == {"left", "right"}
    )


def looks_turned(fronts: Sequence[FrontSpec]) -> tuple[int, str] | None:
    """Find what is strange in a box whose fronts stand so from the top: the place of the upper one
    of two, and what it is in words; None where nothing is."""
    known = [front.height for front in fronts if front.height is not None]
    tall = sum(known) > TALL
    for at, (upper, lower) in enumerate(pairwise(fronts)):
        if upper.kind not in _HUNG:
            continue
        if lower.kind == "false-front" or (lower.kind in _ON_TOP and not tall):
            return at, f"a {lower.kind.replace('-', ' ')} below a door"
        if not (tall and lower.kind in _HUNG and upper.height and lower.height):
            continue
        if upper.height > lower.height + SAME + SLACK:
            return at, "the longer door above the shorter one"
    return None
