"""Boxes, fronts and walls in one line each, as one says them.

>>> form = BoxForm("in", frozenset())
>>> box = form.read("B1 base 18 x 30 1/2 x 23: drawer 6, door left")
>>> box.id, box.width.text, [front.kind for front in box.fronts], box.fronts[1].hinged
('B1', '18', ['drawer', 'door'], 'left')
>>> [fix.kind for fix in FixesForm("in", ("W1", "W2")).read("W1 W2 wall")]
['wall', 'wall']
>>> [wall.boxes for wall in WallsForm("in", ("B1", "B2")).read("north: B1 range=30x36 B2")]
[('B1', 'B2')]
"""

import re
from collections.abc import Collection, Sequence

from msgspec import Struct

from jigs.asking.draft import BoxDraft, FrontDraft, StandingThing, WallDraft
from jigs.asking.forms import PARTED, LengthForm, TypedLength
from jigs.given.ids import check_id, spell_id
from jigs.given.job import BOX_KINDS, FRONT_KINDS, BoxKind, BoxSpec, FrontKind
from jigs.given.wallspec import Appliance
from jigs.ground.believable import Range
from jigs.ground.errors import JigsheetError
from jigs.ground.geometry import Hand
from jigs.ground.keys import keys_of
from jigs.ground.lengths import Unit
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import BOXES, FRONTS
from jigs.reading.frontwords import read_box_kind
from jigs.reading.jobboxes import HAND_WORDS, MOST_ALIKE, needless_hand

_TIMES = r"(?i)\s*[x×*]\s*"
_NEXT_FRONT = r"(?i)[,;]\s*(?=[0-9]*\s*[a-z])"
"""Behind a comma that is no decimal one stands a kind of front, or how many there are."""
_COUNT = r"(?i)([0-9]{1,3})\s+(?=[a-z])"

BOX_LINE = "ID KIND WIDTH x HEIGHT x DEPTH: FRONTS from top to bottom"
TURN = "turn"
"""What turns the fronts of a box upside down."""
FIX_LINE = f"ID [ID ...] [{TURN}] [KIND] [WIDTH x HEIGHT [x DEPTH]] {PARTED} ..."
_WORD = r"'([^']+)'(?!\S)|(\S+)"
"""A word, or several between quotes: the name that a list has for a box."""
WALL_LINE = f"NAME: ID ID [NAME=WIDTHxHEIGHT] ID [ID@X] {PARTED} NAME: ..."


class Fix(Struct, frozen=True, kw_only=True):
    """What is otherwise of a box than it was worked out."""

    id: str
    kind: BoxKind | None
    sizes: tuple[TypedLength, ...]
    turned: bool = False
    """Whether its fronts hang the other way round: the first row is its lowest."""


class BoxForm(Struct, frozen=True):
    """A box with its fronts; `taken` are the IDs of those before it."""

    unit: Unit
    taken: Collection[str]

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"{BOX_LINE} (B1 base 18 x 30 1/2 x 23: drawer 6, door left)"

    def read(self, text: str) -> BoxDraft:
        """Give the box. Raises JigsheetError."""
        head, _, tail = text.partition(":")
        words = head.split(maxsplit=2)
        if len(words) < 3:
            raise JigsheetError(f"not a whole box ('{text[:40]}' given); allowed: {self.allowed}")
        name = check_id(words[0])
        if name in self.taken:
            raise JigsheetError(f"the ID is taken ('{name}' given); every box has its own")
        kind = _box_kind(words[1])
        sizes = _sizes(words[2], kind, self.unit)
        fronts = tuple(
            _front(part, self.unit) for part in re.split(_NEXT_FRONT, tail) if part.strip()
        )
        width, height = sizes[:2]
        depth = sizes[2] if len(sizes) > 2 else None
        return BoxDraft(id=name, kind=kind, width=width, height=height, depth=depth, fronts=fronts)


class FixesForm(Struct, frozen=True):
    """What is otherwise of some boxes, these."""

    unit: Unit
    known: Sequence[str]

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"{FIX_LINE} (W1 W2 wall{PARTED} B3 sink 36 x 30 1/2 x 23)"

    def read(self, text: str) -> tuple[Fix, ...]:
        """Give what is otherwise, box by box. Raises JigsheetError."""
        return tuple(fix for part in text.split(PARTED) if part.strip() for fix in self._fix(part))

    def _fix(self, text: str) -> tuple[Fix, ...]:
        words = text.split()
        count = next(
            (i for i, word in enumerate(words) if word.upper() not in self.known), len(words)
        )
        if not count:
            raise JigsheetError(
                f"no such box ('{words[0][:40]}' given); {suggest(words[0].upper(), self.known)}; "
                f"allowed: {self.allowed}"
            )
        kind: BoxKind | None = None
        rest = words[count:]
        turned = bool(rest) and rest[0].lower() == TURN
        rest = rest[1:] if turned else rest
        if rest and rest[0][:1].isalpha():
            kind = _box_kind(rest[0])
            rest = rest[1:]
        if not rest and kind is None and not turned:
            raise JigsheetError(
                f"nothing said of it ('{text.strip()[:40]}' given); allowed: {self.allowed}"
            )
        sizes = _sizes(" ".join(rest), kind, self.unit) if rest else ()
        return tuple(
            Fix(id=word.upper(), kind=kind, sizes=sizes, turned=turned) for word in words[:count]
        )


class WallsForm(Struct, frozen=True):
    """Which of these boxes stand along which wall."""

    unit: Unit
    known: Sequence[str]

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"{WALL_LINE} (north: B1 range=30x36 B2{PARTED} east: B3)"

    def read(self, text: str) -> tuple[WallDraft, ...]:
        """Give the walls. Raises JigsheetError."""
        walls: list[WallDraft] = []
        taken: set[str] = set()
        for part in (part for part in text.split(PARTED) if part.strip()):
            name, colon, tail = (word.strip() for word in part.partition(":"))
            if not colon or not name or not tail:
                raise JigsheetError(
                    f"not a wall ('{part.strip()[:40]}' given); allowed: {self.allowed}"
                )
            if not name.isprintable():
                raise JigsheetError(f"not a name ({name[:40]!r} given); letters are allowed")
            if name in (wall.name for wall in walls):
                raise JigsheetError(f"a wall twice ('{name[:40]}' given); say each once")
            at: dict[str, TypedLength] = {}
            words = (quoted or word for quoted, word in re.findall(_WORD, tail))
            things = tuple(self._thing(word, taken, at) for word in words)
            wall = WallDraft(name=name, things=things, at=at)
            if not wall.boxes:
                raise JigsheetError(f"no box stands on it ('{name[:40]}' given); name one there")
            walls.append(wall)
        if missing := [name for name in self.known if name not in taken]:
            raise JigsheetError(f"on no wall: {', '.join(missing)}; name every box once")
        return tuple(walls)

    def _called(self, name: str) -> str:
        """Give the ID that a word means: of a box also by the name that it has in the list, where
        no other box of the list may be written so. Raises JigsheetError."""
        spelt = spell_id(name)
        if spelt in self.known and f"{spelt}-2" not in self.known:
            return spelt
        return check_id(name)

    def _thing(self, word: str, taken: set[str], at: dict[str, TypedLength]) -> str | StandingThing:
        name, equals, sizes = word.partition("=")
        name, placed, x = name.partition("@")
        given = self._called(name)
        if given in taken:
            raise JigsheetError(f"named twice ('{given}' given); each stands at one place")
        if not equals and given not in self.known:
            raise JigsheetError(
                f"no such box ('{given}' given); {suggest(given, self.known)}; of an appliance "
                "say its width and height, range=30x36"
            )
        taken.add(given)
        if placed and equals:
            raise JigsheetError(
                f"an appliance follows what is named before it ('{word[:40]}' given)"
            )
        if placed:
            at[given] = LengthForm(keys_of(BoxSpec)["x"].within, self.unit).read(x)
        if not equals:
            return given
        if given in self.known:
            raise JigsheetError(f"a box is called so ('{given}' given); name it otherwise")
        keys = keys_of(Appliance)
        within = [keys[key].within for key in ("width", "height")]
        width, height = _read_sizes(sizes, within, self.unit, word)
        return StandingThing(given, width, height)


def _box_kind(word: str) -> BoxKind:
    named = next((kind for kind in BOX_KINDS if kind == word.lower()), None)
    kind = named or read_box_kind(word)
    if kind is None:
        raise JigsheetError(
            f"unknown kind of box ('{word[:40]}' given); {suggest(word, BOX_KINDS)}"
        )
    return kind


def _sizes(text: str, kind: BoxKind | None, unit: Unit) -> tuple[TypedLength, ...]:
    """Read width and height of a box, and its depth if it is there."""
    sizes = BOXES[kind or "open"]
    ranges = [sizes.width, sizes.height, sizes.depth]
    count = len(re.split(_TIMES, text.strip()))
    return _read_sizes(text, ranges if count == len(ranges) else ranges[:2], unit, text)


def _read_sizes(
    text: str, ranges: Sequence[Range], unit: Unit, said: str
) -> tuple[TypedLength, ...]:
    parts = re.split(_TIMES, text.strip())
    if len(parts) != len(ranges):
        raise JigsheetError(
            f"not the sizes ('{said.strip()[:40]}' given); allowed: {len(ranges)} lengths with x "
            "between them, 18 x 30 1/2"
        )
    pairs = zip(parts, ranges, strict=True)
    return tuple(LengthForm(within, unit).read(part) for part, within in pairs)


def _front(text: str, unit: Unit) -> FrontDraft:
    text = text.strip()
    count = 1
    if found := re.match(_COUNT, text):
        count, text = int(found[1]), text[found.end() :]
    words = text.split()
    kind: FrontKind | None = next((k for k in FRONT_KINDS if k == words[0].lower()), None)
    if kind is None:
        raise JigsheetError(
            f"unknown kind of front ('{words[0][:40]}' given); {suggest(words[0], FRONT_KINDS)}"
        )
    if not 1 <= count <= MOST_ALIKE:
        raise JigsheetError(f"not a count ({count} given); 1 to {MOST_ALIKE} are allowed")
    hand: Hand | None = None
    if (last := words[-1].lower()) in HAND_WORDS:
        hand = HAND_WORDS[last]
        words = words[:-1]
        if needless := needless_hand(kind):
            raise JigsheetError(f"{last} {needless}")
    height = " ".join(words[1:])
    return FrontDraft(
        kind=kind,
        height=LengthForm(FRONTS[kind].height, unit).read(height) if height else None,
        hinged=hand,
        count=count,
    )
