"""What a part's QR symbol says: its own text, read by any telephone without a network.

The ID stands first, because some telephones show only the beginning. Only characters of the
QR's dense mode are used (0-9, A-Z, space and `$%*+-./:`), no colon after the ID and no dot
between letters, which a telephone takes for a link. How long a text may be, the symbol says at its
module: 122 characters make version 5, 61 version 3. What is too long goes by its worth; ID, what
the part is, its hand, its place and its code stay, however small the symbol.

>>> spell("Kitchen, Łódź side.door")
'KITCHEN LODZ SIDE DOOR'
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from jigs.box.boxparts import hung_over, hung_under
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import Piece
from jigs.ground.latin import plain_capitals
from jigs.ground.lengths import format_mm
from templates.words.fittingwords import work_words
from templates.words.wallwords import without_wall
from templates.words.wording import FRONT_WORDS

LONGEST = 90
"""Characters of a symbol on a sheet."""
LENGTHS = (122, LONGEST, 61, 38)
"""Characters of versions 5, 4, 3 and 2 at level M, in alphanumeric mode (ISO/IEC 18004:2015,
table 7, from memory)."""

HOLD = "HOLD"
"""What a part that is held back says after its kind, however small the symbol."""

Phrase = tuple[str, int]
"""What may be left out, and its worth: of two the lesser goes first."""


def spell(text: str) -> str:
    """Write a name in capitals, digits and hyphens; accents go, other scripts vanish."""
    return " ".join(re.sub(r"[^A-Z0-9-]+", " ", plain_capitals(text)).split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Payload:
    """What a symbol says: the part's ID, what it is, word by word, whether it is held back, its
    wall and box, what else there is to say, in order, and its code; anything but the ID may be
    empty."""

    part: str
    words: tuple[str, ...]
    wall: str = ""
    box: str = ""
    phrases: tuple[Phrase, ...] = ()
    code: str = ""
    hold: bool = False

    @property
    def text(self) -> str:
        """As much as the symbol on a sheet takes."""
        return self.fit(LONGEST)

    @property
    def core(self) -> str:
        """What no label leaves out."""
        return replace(self, phrases=())._all

    def fit(self, longest: int) -> str:
        """Give as much as a symbol takes: what is worth least goes first. Where not even the core
        fits (a tag, or names that are long), the wall is shortened from its end, then the place
        goes, then words of what it is, at last the code; the ID stays whole, and HOLD with it.

        >>> door = Payload(
        ...     part="B3-2", words=("DOOR", "HINGES", "LEFT"), wall="NORTH", box="B3",
        ...     phrases=(("BELOW B3-1", 4), ("454X613", 6)), code="Q8RD",
        ... )
        >>> door.fit(90)
        'B3-2 DOOR HINGES LEFT / NORTH BOX B3 / BELOW B3-1 / 454X613 / CODE Q8RD'
        >>> door.fit(61)
        'B3-2 DOOR HINGES LEFT / NORTH BOX B3 / 454X613 / CODE Q8RD'
        >>> door.fit(38)
        'B3-2 DOOR HINGES LEFT / CODE Q8RD'
        """
        said = self
        while len(said._all) > longest and (shorter := said._shorter):
            said = shorter
        return said._all

    @property
    def _shorter(self) -> "Payload | None":
        if self.phrases:
            least = min(self.phrases, key=lambda phrase: phrase[1])
            return replace(self, phrases=tuple(each for each in self.phrases if each != least))
        if self.wall:
            return replace(self, wall=self.wall[:-1].rstrip())
        if self.box:
            return replace(self, box="")
        if self.words:
            return replace(self, words=self.words[:-1])
        return replace(self, code="") if self.code else None

    @property
    def _all(self) -> str:
        head = " ".join([self.part, *self.words, *([HOLD] if self.hold else [])])
        place = f"{self.wall} BOX {self.box}".strip() if self.box else self.wall
        phrases = [place, *(text for text, _ in self.phrases)]
        return " / ".join(filter(None, [head, *phrases, self.code and f"CODE {self.code}"]))


def front_payload(layout: Layout, front: Front) -> Payload:
    """Say of a front: kind and hand, where it hangs, its size, and what is bored in it."""
    name = FRONT_WORDS[front.kind].upper()
    if front.kind == "door" and front.hinged:
        name += f" HINGES {front.hinged.upper()}"
    above, below = hung_under(layout, front), hung_over(layout, front)
    neighbour = f"BELOW {above.id}" if above else f"ABOVE {below.id}" if below else ""
    back = work_words([each for each in front.fittings if each.holes[0].face == "back"])
    return _say(
        front.id, name, front.wall, front.box, front.code, (neighbour, 4),
        (_figures(front.width, front.height), 6), (f"BACK: {back}" if back else "", 3),
        hold=front.withheld,
    )  # fmt: skip


def side_payload(layout: Layout, side: Side) -> Payload:
    """Say of a box side: which it is, how it stands, what is bored in it, and its code."""
    come = ("HOLES TO COME" if side.missing else "", 6)
    if side.partition:
        return _say(
            side.board, f"PARTITION BOX {side.box}", side.wall, "", side.code,
            (f"BETWEEN COLUMNS {side.partition} AND {side.partition + 1}", 4), come,
        )  # fmt: skip
    bored = "HOLES INSIDE" if side.holes else "" if side.missing else "NO HOLES"
    return _say(
        side.board, f"{side.side.upper()} SIDE BOX {side.box}", side.wall, "", side.code,
        ("THIS FACE OUT", 4), come, (bored, 1), (work_words(side.fittings), 2),
    )  # fmt: skip


def drawer_box_payload(layout: Layout, drawer: DrawerBox, front: Front) -> Payload:
    """Say of a drawer box: where it runs, behind which front, its size, and its code."""
    return _say(
        drawer.id, "DRAWER BOX", front.wall, front.box, drawer.code, (f"BEHIND {front.id}", 5),
        (_figures(*(drawer.size or ())), 4), hold=front.withheld,
    )  # fmt: skip


def rollout_payload(rollout: Rollout) -> Payload:
    """Say of a rollout: in which box, behind which fronts, its size, and its code."""
    return _say(
        rollout.id, "ROLLOUT", rollout.wall, rollout.box, rollout.code,
        (f"BEHIND {' '.join(rollout.behind)}" if rollout.behind else "", 5),
        (_figures(*(rollout.size or ())), 4), hold=rollout.withheld,
    )  # fmt: skip


def piece_payload(piece: Piece, name: str, number: int) -> Payload:
    """Say of a piece without holes: what it is, where it goes, its size as cut, and its code."""
    return _say(
        piece.id, name, piece.wall, piece.box or "", piece.code,
        (f"CUT {_figures(piece.length, piece.width, piece.thickness)}", 4),
        (f"{number} OF {piece.count}" if piece.count > 1 else "", 3),
        (f"BAND {' '.join(piece.banded).upper()}" if piece.band else "", 2),
    )  # fmt: skip


def set_payload(parts: Sequence[str], drilled: str, code: str) -> str:
    """Say of sheets that serve several parts: as many of their names as find room, the face, and
    their code where they have one in common."""
    for named in range(len(parts), 0, -1):
        more = f" AND {len(parts) - named} MORE" if named < len(parts) else ""
        said = Payload(
            part=f"{' '.join(parts[:named])}{more}", words=(), code=code,
            phrases=(("ONE SET", 1), (spell(drilled), 2)),
        )  # fmt: skip
        if named == 1 or len(said._all) <= LONGEST:
            break
    return said.text


def _say(
    part: str, name: str, wall: str, box: str, code: str, *phrases: Phrase, hold: bool = False
) -> Payload:
    """Say of a part what there is to say; of one that is held back no code."""
    return Payload(
        part=part,
        words=tuple(spell(name).split()),
        wall=without_wall(spell(wall)),
        box=box,
        phrases=tuple(phrase for phrase in phrases if phrase[0]),
        code="" if hold else code,
        hold=hold,
    )


def _figures(*sizes: float) -> str:
    return "X".join(format_mm(size).removesuffix(".0") for size in sizes)
