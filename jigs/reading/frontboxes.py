"""The boxes that the fronts of a list hang on: empty cells below a filled one, a left and a right
door on one box. What a list does not say of them is asked.
"""

from collections.abc import Sequence

from jigs.given.job import FrontSpec
from jigs.given.listspec import NOTHING
from jigs.ground.geometry import Hand
from jigs.ground.values import dataclass, replace
from jigs.reading.frontcells import FrontCells
from jigs.reading.listcolumns import column_letter
from jigs.reading.listquestions import answer, ask_apart, ask_both_hands, ask_box, name_rows
from jigs.reading.tables import ListRow


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedFront:
    """One row: the front as given, its box's ID, how many, and its place in the file.

    `spec.id` and `box` are "" where the row gives none.
    """

    spec: FrontSpec
    box: str
    count: int
    where: str


HungRow = tuple[ListRow, ListedFront, dict[Hand, int]]
"""A row, what was read of it, and how many of it hang left and how many right, if it says so."""


class FrontBoxes(FrontCells):
    """Hangs the fronts that were read on their boxes."""

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
        return self._pair_up(hung)

    def _ask_empty(self, empty: dict[int, str]) -> None:
        settled = self.spec.empty_box == "above" or (self.spec.empty_box == "own" and self._bare)
        if empty and not settled:
            what = ask_box(list(empty), next(iter(empty.values())), self._bare)
            self.note(self.header.row, self._heading("box"), what)
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
            self.note(self.header.row, self._heading("box"), what)

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

    def _pair_up(self, hung: Sequence[tuple[ListRow, ListedFront]]) -> list[ListedFront]:
        """Give the fronts, a left and a right door of one size on one box as a pair where the
        person says so."""
        fronts: list[ListedFront] = []
        question = ""
        at = 0
        while at < len(hung):
            row, front = hung[at]
            at += 1
            if at < len(hung) and _is_both(front, hung[at][1]):
                words = name_rows({row.number, hung[at][0].number})
                question = question or ask_both_hands(words, front.box, self._bare)
                if self.spec.both_hands == "pair":
                    at += 1
                    front = replace(front, spec=replace(front.spec, kind="pair", hinged=None))
                    self.remarks.append(f"{words}: a pair on box {front.box}")
            fronts.append(front)
        if question and self.spec.both_hands is None:
            self.note(self.header.row, None, question)
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
