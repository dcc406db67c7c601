"""What the words of a row say of its front: its kind, that it is none, its hand. What the person
has explained (`kinds`, `hands`) stands before the words that are known.
"""

from collections import defaultdict
from collections.abc import Iterable

from msgspec import Struct

from jigs.given.job import FRONT_KINDS, FrontKind
from jigs.given.listspec import KindMeant, ListSpec, RowMeant
from jigs.ground.lengths import BareUnit
from jigs.reading.frontmaking import FrontMaking
from jigs.reading.frontwords import (
    FrontWord,
    is_end_panel,
    is_nothing,
    read_front,
)
from jigs.reading.headings import fold
from jigs.reading.jobboxes import needless_hand
from jigs.reading.listasked import asked_hand
from jigs.reading.listcolumns import FRONT_LIST, Header
from jigs.reading.listquestions import (
    answer,
    answer_kind,
    ask_hand,
    kinds_asked,
    name_rows,
    typed_key,
)
from jigs.reading.listtable import ListRow, ListTable

KIND_COLUMNS = ("kind", "description", "id")
"""Columns whose words may say what a front is, in this order."""
_LIKE = 0.75
"""How like a word has to be to a kind to be taken for a slip of it (tried): what merely sounds
alike is another thing of the trade."""
ALLOWED: dict[str, str] = {
    "kind": f"allowed: {', '.join(FRONT_KINDS)}",
    "width": "a list without a job file gives every front's width (of a pair: of one leaf)",
    "height": "a list without a job file gives every front's height",
    "box": "it names the job's box that the front hangs on",
}


class ListAsGiven(Struct, frozen=True, kw_only=True):
    """A front list as it is given to be read: a table of a file, its header, and what is said of
    it. `units` overrules what the header says, `unstated` holds if nobody says one; `bare`: it
    stands alone, without a job file."""

    file: str
    table: ListTable
    header: Header
    spec: ListSpec
    units: BareUnit | None
    unstated: BareUnit
    bare: bool


class FrontSaid(FrontMaking):
    """Reads the words of fronts."""

    kindless = False
    """Whether its column of kinds names none: an article's number, a style."""

    def __init__(self, given: ListAsGiven) -> None:
        units = given.units or given.spec.units
        super().__init__(given.file, given.table, given.header, FRONT_LIST, units, given.unstated)
        self._bare = given.bare
        self.spec = given.spec
        self.remarks: list[str] = []
        """What else is told of what was taken for what."""
        self.section = FrontWord()
        """What the heading of the section says of its rows."""
        self.titled = ""
        """The box that the title above these rows names."""
        self.kinds: dict[str, FrontKind] = {}
        """What the words of its kinds were taken for."""
        self.kind_asked = False
        """Whether it is asked already where the list says what its fronts are."""
        self._unknown: defaultdict[str, list[int]] = defaultdict(list)
        self._handed: defaultdict[str, list[int]] = defaultdict(list)
        """Notes with a hand that may be their door's, each with its rows."""

    def row_meant(self, row: ListRow) -> RowMeant | None:
        """Give what the person says that this one row is."""
        return self.spec.row.get(str(row.number))

    def word_of(self, text: str) -> FrontWord:
        """Give what a cell says of its front, by the words that the person has explained first."""
        meant, said = self._meant(text), read_front(text)
        if meant is None:
            return said
        if meant == "nothing":
            return FrontWord(None, said.hand)
        # `Tür` may be a pair: of `Tür links` that says nothing.
        own = fold(text) in map(fold, self.spec.kinds)
        swallowed = said.kind and said.hand and needless_hand(meant) and not own
        return said if swallowed else FrontWord(meant, said.hand, meant == "pair")

    def _meant(self, text: str) -> KindMeant | None:
        """Give what the person says that a word in a cell means, of several the longest."""
        found = longest_word(text, self.spec.kinds)
        return self.spec.kinds[found] if found else None

    def is_nothing(self, row: ListRow) -> bool:
        """Tell whether a row is no front's: by what the person says of its word, else by the word;
        a kind of front beside it stands before that."""
        for column in KIND_COLUMNS:
            text = self.cell(row, column)
            if meant := self._meant(text):
                return meant == "nothing"
            if column != "id" and text:
                if is_nothing(text):
                    return True
                if read_front(text).kind:
                    return False
        return False

    def is_end_panel(self, row: ListRow) -> bool:
        """Tell whether a row that is no front's is an end panel's."""
        return any(is_end_panel(self.cell(row, column)) for column in KIND_COLUMNS)

    def note_kinds(self) -> None:
        """Note the words for kinds that are not known, each once."""
        for text, numbers in self._unknown.items():
            if not text and self.kind_asked:
                continue
            column = "kind" if self.header.find("kind") and not self.kindless else "description"
            more = f"; {name_rows(numbers[1:])} too" if len(numbers) > 1 else ""
            others = ", unnamed=KIND what all are that do not say it"
            what = f"missing; {ALLOWED['kind']}; {answer(('unnamed', 'door'), bare=self._bare)}"
            if text:
                what = (
                    f"unknown kind ('{text}' given); {_near_kind(text)}; "
                    f"{answer_kind(text, self._bare)} says what it is (nothing: no front)"
                    f"{others if column == 'description' else ''}"
                )
            rows = name_rows(numbers)
            asked = (
                kinds_asked(f"What is '{text}' ({rows})?", f"kinds.{typed_key(text)}", nothing=True)
                if text
                else kinds_asked(
                    f"What are the fronts that do not say it ({rows})?", "unnamed", nothing=False
                )
            )
            self.note(numbers[0], self._heading(column), f"{what}{more}", asked)
            self.faulty.update(numbers)

    def note_hands(self) -> None:
        """Note the words that may say a door's hand, each once."""
        for text, numbers in self._handed.items():
            rows = name_rows(numbers)
            what = ask_hand(rows, text, self._bare)
            self.note(numbers[0], None, what, asked_hand(rows, text))
            self.faulty.update(numbers)


def longest_word(text: str, words: Iterable[str]) -> str:
    """Give the longest of some words that stands in a text as a whole, "" for none."""
    padded = f" {fold(text)} "
    return max((w for w in words if fold(w) and f" {fold(w)} " in padded), key=len, default="")


def whole_words(text: str, most: int = 40) -> str:
    """Cut a text behind one of its words: what is left of it can be found in it again.

    >>> whole_words("Devis valable 30 jours. Cotes à vérifier par le client.")
    'Devis valable 30 jours. Cotes à vérifier'
    """
    words = " ".join(text[:200].split())
    if len(words) <= most:
        return words
    return words[: most + 1].rpartition(" ")[0] or words[:most]


def _near_kind(text: str) -> str:
    """Say of which kind a word is a slip; else what is known."""
    # Only a fault needs it.
    from difflib import get_close_matches

    as_long = [kind for kind in FRONT_KINDS if abs(len(kind) - len(text)) <= 1]
    near = get_close_matches(text.lower()[:64], as_long, n=1, cutoff=_LIKE)
    return f"did you mean '{near[0]}'?" if near else f"known: {', '.join(FRONT_KINDS)}"
