"""What a part's QR symbol says: its own text, read by any telephone without a network.

The ID stands first, because some telephones show only the beginning. Only characters of the
QR's dense mode are used (0-9, A-Z, space and `$%*+-./:`), no colon after the ID and no dot
between letters, which a telephone takes for a link. At most 90 characters, so that the symbol
is version 4 at most: 20.5 mm with its quiet zone at 0.5 mm a module, which the lowest label
takes. One text serves sheet and label.

>>> spell("Kitchen, Łódź side.door")
'KITCHEN LODZ SIDE DOOR'
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from jigs.box.boxparts import hung_over, hung_under
from jigs.box.parts import DrawerBox, Front, Layout, Side, size_of
from jigs.cutlist.piece import Piece
from jigs.given.rolloutspec import Rollout
from jigs.ground.latin import plain_capitals
from jigs.ground.lengths import format_mm
from templates.words.fittingwords import work_words
from templates.words.wallwords import without_wall
from templates.words.wording import FRONT_WORDS

LONGEST = 90
"""Characters of version 4-M in alphanumeric mode (ISO/IEC 18004:2015, table 7,
from memory)."""

HOLD = "HOLD"
"""What a part that is held back says after its kind, however small the symbol."""


def spell(text: str) -> str:
    """Write a name in capitals, digits and hyphens; accents go, other scripts vanish."""
    return " ".join(re.sub(r"[^A-Z0-9-]+", " ", plain_capitals(text)).split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Payload:
    """What a symbol says: the part's ID, what it is, word by word, whether it is held back, the
    phrases that follow, and its code behind them; a phrase is not empty, a code may be."""

    part: str
    words: tuple[str, ...]
    phrases: tuple[str, ...] = ()
    code: str = ""
    hold: bool = False

    @property
    def text(self) -> str:
        """All of it."""
        return _joined(self._head(self.words), *self.phrases, *self._coded)

    def fit(self, longest: int) -> str:
        """Give as much as a small symbol takes: the ID stays whole, and with it the code; then
        phrase by phrase as they stand what there is room for. HOLD is never lost.

        >>> door = Payload(
        ...     part="B3-2", words=("DOOR", "HINGES", "LEFT"), code="Q8RD",
        ...     phrases=("NORTH BOX B3", "BELOW B3-1"),
        ... )
        >>> door.text
        'B3-2 DOOR HINGES LEFT / NORTH BOX B3 / BELOW B3-1 / CODE Q8RD'
        >>> door.fit(38)
        'B3-2 DOOR HINGES LEFT / CODE Q8RD'
        """
        if len(self.text) <= longest:
            return self.text
        words = list(self.words)
        while words and len(_joined(self._head(words), *self._coded)) > longest:
            words.pop()
        head = self._head(words)
        if len(_joined(head, *self._coded)) > longest:
            coded: tuple[str, ...] = ()
        else:
            coded = self._coded
        kept: tuple[str, ...] = ()
        for phrase in self.phrases:
            if len(_joined(head, *kept, phrase, *coded)) <= longest:
                kept = (*kept, phrase)
        return _joined(head, *kept, *coded)

    @property
    def _coded(self) -> tuple[str, ...]:
        return (f"CODE {self.code}",) if self.code else ()

    def _head(self, words: Sequence[str]) -> str:
        return " ".join([self.part, *words, *([HOLD] if self.hold else [])])


def _joined(*phrases: str) -> str:
    return " / ".join(phrases)


def front_payload(layout: Layout, front: Front) -> Payload:
    """Say of a front: kind and hand, where it hangs, its size, and what is bored in it."""
    name = FRONT_WORDS[front.kind].upper()
    if front.kind == "door" and front.hinged:
        name += f" HINGES {front.hinged.upper()}"
    above, below = hung_under(layout, front), hung_over(layout, front)
    neighbour = f"BELOW {above.id}" if above else f"ABOVE {below.id}" if below else ""
    size = f"{_figure(front.width)}X{_figure(front.height)}"
    return _say(
        front.id, name, (_place(front.wall, front.box), 5), (neighbour, 4), (size, 6),
        (_back_work(front), 3), code=("" if front.withheld else front.code, 1),
        hold=front.withheld,
    )  # fmt: skip


def side_payload(layout: Layout, side: Side) -> Payload:
    """Say of a box side: which it is, how it stands, what is bored in it, and its code."""
    wall = _wall(side.wall)
    if side.partition:
        return _say(
            side.board, f"PARTITION BOX {side.box}", (wall, 3),
            (f"BETWEEN COLUMNS {side.partition} AND {side.partition + 1}", 4),
            ("HOLES TO COME" if side.missing else "", 6), code=(side.code, 5),
        )  # fmt: skip
    return _say(
        side.board, f"{side.side.upper()} SIDE BOX {side.box}", (wall, 3),
        ("THIS FACE OUT", 4), ("HOLES TO COME" if side.missing else "", 6),
        ("HOLES INSIDE" if side.holes else "" if side.missing else "NO HOLES", 1),
        (work_words(side.fittings), 2), code=(side.code, 5),
    )  # fmt: skip


def drawer_box_payload(layout: Layout, drawer: DrawerBox, front: Front) -> Payload:
    """Say of a drawer box: where it runs, behind which front, its size, and its code."""
    size = "X".join(map(_figure, size_of(drawer) or ()))
    return _say(
        drawer.id, "DRAWER BOX", (_place(front.wall, front.box), 3), (f"BEHIND {front.id}", 5),
        (size, 4), code=("" if front.withheld else drawer.code, 1), hold=front.withheld,
    )  # fmt: skip


def rollout_payload(rollout: Rollout) -> Payload:
    """Say of a rollout: in which box, behind which fronts, its size, and its code."""
    size = "X".join(map(_figure, size_of(rollout) or ()))
    behind = f"BEHIND {' '.join(rollout.behind)}" if rollout.behind else ""
    return _say(
        rollout.id, "ROLLOUT", (_place(rollout.wall, rollout.box), 3), (behind, 5), (size, 4),
        code=("" if rollout.withheld else rollout.code, 1), hold=rollout.withheld,
    )  # fmt: skip


def piece_payload(piece: Piece, name: str, number: int) -> Payload:
    """Say of a piece without holes: what it is, where it goes, its size as cut, and its code."""
    size = "X".join(_figure(size) for size in (piece.length, piece.width, piece.thickness))
    place = _place(piece.wall, piece.box) if piece.box else _wall(piece.wall)
    band = f"BAND {' '.join(piece.banded).upper()}" if piece.band else ""
    return _say(
        piece.id, name, (place, 5), (f"CUT {size}", 4),
        (f"{number} OF {piece.count}" if piece.count > 1 else "", 3), (band, 2),
        code=(piece.code, 1),
    )  # fmt: skip


def set_payload(parts: Sequence[str], drilled: str, code: str) -> str:
    """Say of sheets that serve several parts: as many of their names as find room, the face, and
    their code where they have one in common."""
    for named in range(len(parts), 1, -1):
        more = f" AND {len(parts) - named} MORE" if named < len(parts) else ""
        text = _joined(
            f"{' '.join(parts[:named])}{more}", "ONE SET", spell(drilled),
            *((f"CODE {code}",) if code else ()),
        )  # fmt: skip
        if len(text) <= LONGEST:
            return text
    return _say(
        parts[0], f"AND {len(parts) - 1} MORE", (spell(drilled), 1), code=(code, 2)
    ).text  # fmt: skip


def _say(
    part: str, name: str, *phrases: tuple[str, int], code: tuple[str, int], hold: bool = False
) -> Payload:
    """Join phrases and code, each with its worth, without as many of the least worth as it takes
    to keep the length."""
    kept = [(phrase, worth) for phrase, worth in phrases if phrase]
    while True:
        said = Payload(
            part=part,
            words=tuple(spell(name).split()),
            phrases=tuple(phrase for phrase, _ in kept),
            code=code[0],
            hold=hold,
        )
        least = min((worth for _, worth in kept), default=code[1])
        if len(said.text) <= LONGEST or not (kept or code[0]):
            return said
        if (code[0] and code[1] < least) or not kept:
            code = ("", 0)
        else:
            kept.remove(min(kept, key=lambda entry: entry[1]))


def _figure(size: float) -> str:
    return format_mm(size).removesuffix(".0")


def _wall(wall: str) -> str:
    return without_wall(spell(wall))[:24].strip()


def _place(wall: str, box: str) -> str:
    return f"{_wall(wall)} BOX {box}".strip()


def _back_work(front: Front) -> str:
    words = work_words([each for each in front.fittings if each.holes[0].face == "back"])
    return f"BACK: {words}" if words else ""
