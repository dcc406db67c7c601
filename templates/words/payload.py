"""What a QR symbol says: its own text, read by any telephone without a network.

The ID stands first, because some telephones show only the beginning. Only characters of the
QR's dense mode are used (0-9, A-Z, space and `$%*+-./:`), no colon after the ID and no dot
between letters, which a telephone takes for a link. How long a text may be, the symbol says at its
module: 122 characters make version 5, 61 version 3. What is too long goes by its worth; ID, what
the part is, its hand, its wall, its place and its code stay. What each kind of part says is in
`scanwords.py`.

>>> spell("Kitchen, Łódź side.door")
'KITCHEN LODZ SIDE DOOR'
"""

import re
from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.cutlist.trimmings import LONGEST_TAG
from jigs.ground.latin import plain_capitals
from templates.words.wallwords import wall_title, without_wall

LONGEST = 90
"""Characters of a symbol on a sheet."""
LENGTHS = (122, LONGEST, 61, 38)
"""Characters of versions 5, 4, 3 and 2 at level M, in alphanumeric mode (ISO/IEC 18004:2015,
table 7, from memory)."""

HOLD = "HOLD"
"""What a part that is held back says after its ID, however small the symbol."""

Phrase = tuple[str, int]
"""What may be left out, and its worth: of two the lesser goes first."""


def spell(text: str) -> str:
    """Write a name in capitals, digits and hyphens; accents go, and what has no such letters."""
    return " ".join(re.sub(r"[^A-Z0-9-]+", " ", plain_capitals(text)).split())


class Payload(Struct, frozen=True, kw_only=True):
    """What a symbol says: the part's ID, what it is, word by word, whether it is held back, its
    wall, its place along it, in full and in short, what else there is to say, in order, and its
    code; anything but the ID may be empty."""

    part: str
    words: tuple[str, ...]
    wall: str = ""
    place: tuple[str, str] = ("", "")
    phrases: tuple[Phrase, ...] = ()
    code: str = ""
    hold: bool = False
    hand: tuple[str, ...] = ()
    """What is said of its hand, behind what it is."""
    brief: int = 0
    """How shortly the core is said: 1 wall and place, 2 the code beside them, 3 the hand alone
    for what it is, 4 no wall whose name begins as the ID does (LACZNI-TOE-1, of LACZNIK WALL)."""

    @property
    def text(self) -> str:
        """As much as the symbol on a sheet takes."""
        return self.fit(LONGEST)

    @property
    def core(self) -> str:
        """What no label leaves out."""
        return replace(self, phrases=(), brief=4)._all

    def fit(self, longest: int) -> str:
        """Give as much as a symbol takes: what is worth least goes first. Where not even the core
        fits (a tag, or names that are long), the wall is shortened from its end, then the place
        goes, then words of what it is, at last the code; the ID stays whole, and HOLD with it.

        >>> door = Payload(
        ...     part="B3-2", words=("DOOR",), hand=("HINGES", "LEFT"), wall="NORTH WALL",
        ...     place=("3RD BOX FROM LEFT", "3RD FROM LEFT"),
        ...     phrases=(("UNDER B3-1", 4), ("CUPS RIGHT 97.8 513.8 UP", 3)), code="Q8RD",
        ... )
        >>> door.fit(90)
        'B3-2 DOOR HINGES LEFT / NORTH WALL / 3RD BOX FROM LEFT / UNDER B3-1 / CODE Q8RD'
        >>> door.fit(61)
        'B3-2 DOOR HINGES LEFT / NORTH WALL 3RD FROM LEFT / CODE Q8RD'
        >>> door.fit(38)
        'B3-2 DOOR HINGES LEFT / CODE Q8RD'
        """
        return self.fits([longest])[0]

    def fits(self, lengths: Sequence[int]) -> list[str]:
        """Give as much as each of several symbols takes, the largest first."""
        said, text = self, self._all
        found: list[str] = []
        for longest in lengths:
            while len(text) > longest and (shorter := said._shorter):
                said, text = shorter, shorter._all
            found.append(text)
        return found

    @property
    def _shorter(self) -> "Payload | None":
        if self.phrases:
            least = min(reversed(range(len(self.phrases))), key=lambda at: self.phrases[at][1])
            return replace(self, phrases=self.phrases[:least] + self.phrases[least + 1 :])
        if self.brief < 4:
            return replace(self, brief=self.brief + 1)
        if self.wall:
            bare = without_wall(self.wall)[:-1].rstrip()
            return replace(self, wall=bare and wall_title(bare))
        if any(self.place):
            return replace(self, place=("", ""))
        if self.words:
            return replace(self, words=self.words[:-1])
        if self.hand:
            return replace(self, hand=())
        return replace(self, code="") if self.code else None

    @property
    def _where(self) -> list[str]:
        """Wall, then place; the other way about where the ID spells the wall, so that what is
        read first says nothing twice; in short it is not said again."""
        where = [each for each in (self.wall, self.place[self.brief > 0]) if each]
        spelt = set(self.part.split("-"))
        if not spelt.isdisjoint(self.wall.split()):
            where.reverse()
        if not self.brief:
            return where
        named = without_wall(self.wall).split()
        most = LONGEST_TAG if self.brief > 3 else None
        if not any(self.place) or any(word[:most] not in spelt for word in named):
            return [" ".join(where)]
        return [" ".join(each for each in where if each != self.wall)]

    @property
    def _all(self) -> str:
        words = () if self.hand and self.brief > 2 and any(self.place) else self.words
        head = " ".join([self.part, *([HOLD] if self.hold else []), *words, *self.hand])
        phrases = [*self._where, *(text for text, _ in self.phrases)]
        said = " / ".join(filter(None, [head, *phrases]))
        between = " " if self.brief > 1 and any(self.place) else " / "
        return f"{said}{between}CODE {self.code}" if self.code else said
