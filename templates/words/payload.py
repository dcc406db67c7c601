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
import unicodedata
from collections.abc import Sequence

from jigs.box.parts import DrawerBox, Front, Layout, Side, size_of
from jigs.cutlist.piece import Piece
from jigs.given.rolloutspec import Rollout
from jigs.ground.lengths import format_mm
from jigs.layout.boxparts import hung_over, hung_under
from templates.words.wording import FRONT_WORDS

LONGEST = 90
"""Characters of version 4-M in alphanumeric mode (ISO/IEC 18004:2015, table 7,
from memory)."""

_LETTERS = str.maketrans({"Ł": "L", "Ø": "O", "Đ": "D", "Æ": "AE", "Œ": "OE", "Þ": "TH"})
"""Capitals that do not come apart into a letter and an accent."""


def spell(text: str) -> str:
    """Write a name in capitals, digits and hyphens; accents go, other scripts vanish."""
    capitals = text.upper().translate(_LETTERS)
    apart = unicodedata.normalize("NFKD", capitals)
    plain = "".join(letter for letter in apart if not unicodedata.combining(letter))
    return " ".join(re.sub(r"[^A-Z0-9-]+", " ", plain).split())


def front_payload(layout: Layout, front: Front) -> str:
    """Say of a front: kind and hand, where it hangs, its size, and what is bored in it."""
    head = f"{front.id} {FRONT_WORDS[front.kind].upper()}"
    if front.kind == "door" and front.hinged:
        head += f" HINGES {front.hinged.upper()}"
    if front.withheld:
        head += " HOLD"
    above, below = hung_under(layout, front), hung_over(layout, front)
    neighbour = f"BELOW {above.id}" if above else f"ABOVE {below.id}" if below else ""
    size = f"{_figure(front.width)}X{_figure(front.height)}"
    code = "" if front.withheld else f"CODE {front.code}"
    return _join(
        head, (_place(front.wall, front.box), 5), (neighbour, 4), (size, 6),
        (_back_work(front), 3), (code, 1),
    )  # fmt: skip


def side_payload(layout: Layout, side: Side) -> str:
    """Say of a box side: which it is, how it stands, what is bored in it, and its code."""
    wall = _wall(side.wall)
    if side.partition:
        return _join(
            f"{side.board} PARTITION BOX {side.box}", (wall, 3),
            (f"BETWEEN COLUMNS {side.partition} AND {side.partition + 1}", 4),
            ("HOLES TO COME" if side.missing else "", 6), (f"CODE {side.code}", 5),
        )  # fmt: skip
    return _join(
        f"{side.board} {side.side.upper()} SIDE BOX {side.box}", (wall, 3),
        ("THIS FACE OUT", 4), ("HOLES TO COME" if side.missing else "", 6),
        ("HOLES INSIDE" if side.holes else "" if side.missing else "NO HOLES", 1),
        (_side_work(side), 2), (f"CODE {side.code}", 5),
    )  # fmt: skip


def drawer_box_payload(layout: Layout, drawer: DrawerBox, front: Front) -> str:
    """Say of a drawer box: where it runs, behind which front, its size, and its code."""
    size = "X".join(map(_figure, size_of(drawer) or ()))
    return _join(
        f"{drawer.id} DRAWER BOX{' HOLD' if front.withheld else ''}",
        (_place(front.wall, front.box), 3), (f"BEHIND {front.id}", 5), (size, 4),
        ("" if front.withheld else f"CODE {drawer.code}", 1),
    )  # fmt: skip


def rollout_payload(rollout: Rollout) -> str:
    """Say of a rollout: in which box, behind which fronts, its size, and its code."""
    size = "X".join(map(_figure, size_of(rollout) or ()))
    behind = f"BEHIND {' '.join(rollout.behind)}" if rollout.behind else ""
    return _join(
        f"{rollout.id} ROLLOUT{' HOLD' if rollout.withheld else ''}",
        (_place(rollout.wall, rollout.box), 3), (behind, 5), (size, 4),
        ("" if rollout.withheld else f"CODE {rollout.code}", 1),
    )  # fmt: skip


def piece_payload(piece: Piece, name: str, number: int) -> str:
    """Say of a piece without holes: what it is, where it goes, its size as cut, and its code."""
    size = "X".join(_figure(size) for size in (piece.length, piece.width, piece.thickness))
    place = _place(piece.wall, piece.box) if piece.box else _wall(piece.wall)
    band = f"BAND {' '.join(piece.band).upper()}" if piece.band else ""
    return _join(
        f"{piece.id} {name}", (place, 5), (f"CUT {size}", 4),
        (f"{number} OF {piece.count}" if piece.count > 1 else "", 3), (band, 2),
        (f"CODE {piece.code}", 1),
    )  # fmt: skip


def fit_payload(text: str, longest: int) -> str:
    """Shorten what a symbol says, for a small one: the ID stays whole, and with it the code;
    then phrase by phrase as they stand what there is room for. HOLD is never lost.

    >>> fit_payload("B3-2 DOOR HINGES LEFT / NORTH BOX B3 / BELOW B3-1 / CODE Q8RD", 38)
    'B3-2 DOOR HINGES LEFT / CODE Q8RD'
    """
    if len(text) <= longest:
        return text
    head, *phrases = text.split(" / ")
    code = [phrase for phrase in phrases if phrase.startswith("CODE ")]
    name, *words = head.split(" ")
    tail = [word for word in words if word == "HOLD"]
    words = [word for word in words if word != "HOLD"]
    while words and len(" / ".join([" ".join([name, *words, *tail]), *code])) > longest:
        words.pop()
    text = " ".join([name, *words, *tail])
    kept: list[str] = []
    for phrase in [*code, *(phrase for phrase in phrases if phrase not in code)]:
        wish = [p for p in phrases if p in (*kept, phrase)]
        if len(" / ".join([text, *wish])) <= longest:
            kept.append(phrase)
    return " / ".join([text, *(phrase for phrase in phrases if phrase in kept)])


def set_payload(parts: Sequence[str], drilled: str, code: str) -> str:
    """Say of sheets that serve several parts: as many of their names as find room, the face, and
    their code where they have one in common."""
    tail = f" / ONE SET / {spell(drilled)}{f' / CODE {code}' if code else ''}"
    for named in range(len(parts), 1, -1):
        more = f" AND {len(parts) - named} MORE" if named < len(parts) else ""
        text = f"{' '.join(parts[:named])}{more}{tail}"
        if len(text) <= LONGEST:
            return text
    head = f"{parts[0]} AND {len(parts) - 1} MORE"
    return _join(head, (spell(drilled), 1), (f"CODE {code}" if code else "", 2))


def _join(head: str, *phrases: tuple[str, int]) -> str:
    """Join the phrases, without as many of the least worth as it takes to keep the length."""
    kept = [(phrase, worth) for phrase, worth in phrases if phrase]
    while kept:
        text = " / ".join([head, *(phrase for phrase, _ in kept)])
        if len(text) <= LONGEST:
            return text
        kept.remove(min(kept, key=lambda entry: entry[1]))
    return head


def _figure(size: float) -> str:
    return format_mm(size).removesuffix(".0")


def _wall(wall: str) -> str:
    return spell(wall).removesuffix("WALL").strip()[:24].strip()


def _place(wall: str, box: str) -> str:
    return f"{_wall(wall)} BOX {box}".strip()


def _back_work(front: Front) -> str:
    cups = sum(hole.purpose == "cup" for hole in front.holes)
    screws = sum(hole.purpose == "front-fixing" for hole in front.holes)
    if cups:
        return f"BACK: {cups} {'CUP' if cups == 1 else 'CUPS'}"
    return f"BACK: {screws} SCREWS" if screws else ""


def _side_work(side: Side) -> str:
    words = []
    for kind, name in (("plate", "PLATE"), ("slide", "SLIDE")):
        count = sum(fitting.kind == kind for fitting in side.fittings)
        if count:
            words.append(f"{count} {name}{'' if count == 1 else 'S'}")
    return " ".join(words)
