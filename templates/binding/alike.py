"""Parts with the same holes in the same face: one set of sheets serves them all.

Two faces are alike if their cards are: the same face, seen from the same hand, of the same size
and thickness, the same holes on the same hardware with the same outlines, edges and ladder; and
if their sheets say the same, cautions and findings too, save for names. A measured part that
came out otherwise is not alike. Left and right sides mirror each other and are not alike.

A paper card serves about ten parts before its corners wear (common practice, no source): of more
parts there are more sets, as even as can be.

>>> split_sets(23)
[8, 8, 7]
"""

import hashlib
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, fields, is_dataclass, replace

from jigs.box.parts import Layout
from jigs.ground.geometry import Face, Fitting, Hand
from templates.cards.ticks import Member
from templates.faces.faceview import FaceView, Served
from templates.sheets.panel import PartWords
from templates.words.facewords import drilled_words
from templates.words.payload import set_payload
from templates.words.sentence import Sentence

MOST = 10
"""Parts that one set of paper cards serves (common practice, no source)."""

_TENTHS_OF_MICRONS = 10_000
_NAME = re.compile(r"(?<![\w./-])[A-Z0-9][A-Z0-9-]*(?![\w/]|\.\d)")
"""What may be a part's name in a text that another worded; a number alone is a figure there."""
_SLOT = "\x00{}\x00"
_SLOTS = re.compile("\x00([0-9]+)\x00")

_FaceKey = tuple[str, tuple[Face, Hand | None]]
"""A part, and which of its faces."""

Part = tuple[str, PartWords, tuple[FaceView, ...]]
"""A part with sheets: its box, its words, its drilled faces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """Faces whose sheets follow each other: those of one part, or those of several parts that are
    alike. `whole`: they are all the faces of a part, drawn for it alone."""

    box: str
    words: PartWords
    views: tuple[FaceView, ...]
    whole: bool = True

    @property
    def parts(self) -> tuple[tuple[str, str], ...]:
        """Box and ID of each part that it serves."""
        own = ((self.box, self.words.part),)
        return tuple((m.box, m.part) for m in self.words.members) or own


@dataclass(frozen=True, slots=True, kw_only=True)
class _Face:
    """What is kept of a face while its like are sought; `names` fill the slots of its key."""

    member: Member
    face: tuple[Face, Hand | None]
    names: tuple[str, ...]
    own: tuple[Sentence, ...]
    reveals: str


def known_names(layout: Layout) -> frozenset[str]:
    """Give the names of all that a job's sheets may speak of."""
    names = {box.id for box in layout.boxes} | {front.id for front in layout.fronts}
    names |= {front.drawer.id for front in layout.fronts if front.drawer is not None}
    names |= {side.board for side in layout.sides} | {each.id for each in layout.rollouts}
    return frozenset(names)


def split_sets(count: int) -> list[int]:
    """Give the sizes of the sets that serve so many parts, as even as can be."""
    sets = -(-count // MOST)
    return [count // sets + (row < count % sets) for row in range(sets)]


def batch_each(parts: Iterable[Part]) -> Iterator[Batch]:
    """Give each part a set of sheets of its own."""
    for box, words, views in parts:
        yield Batch(box=box, words=words, views=views)


def batch_alike(parts: Callable[[], Iterable[Part]], known: frozenset[str]) -> Iterator[Batch]:
    """Give each set of faces that are alike its sheets, where the first of them stands.

    `parts` gives all parts, and is asked twice: no more than names is kept of them meanwhile.
    `known` are the names of all that is in the job.
    """
    sets: dict[_FaceKey, tuple[int, int, tuple[_Face, ...]]] = {}
    for faces in _find_alike(parts(), known):
        start, sizes = 0, split_sets(len(faces))
        for number, size in enumerate(sizes, start=1):
            several = faces[start : start + size]
            sets |= {(f.member.part, f.face): (number, len(sizes), several) for f in several}
            start += size
    for box, words, views in parts():
        yield from _batches_of(box, words, views, sets, known)


def _batches_of(
    box: str,
    words: PartWords,
    views: tuple[FaceView, ...],
    sets: dict[_FaceKey, tuple[int, int, tuple[_Face, ...]]],
    known: frozenset[str],
) -> Iterator[Batch]:
    """Give the sets that a part is the first of; its faces stay together where their sets are
    of the same parts."""
    together: dict[tuple[str, ...], list[FaceView]] = {}
    for view in views:
        faces = sets[words.part, view.key][2]
        together.setdefault(tuple(f.member.part for f in faces), []).append(view)
    for ids, own in together.items():
        if ids[0] != words.part:
            continue
        other = ", ".join(drilled_words(view) for view in views if view not in own)
        more = (Sentence(f"ALSO DRILLED, on other sheets: {other}."),) if other else ()
        said = replace(words, notes=(*words.notes, *more))
        if len(ids) == 1:
            yield Batch(box=box, words=said, views=tuple(own), whole=not other)
            continue
        shared = [_share(said, view, sets[words.part, view.key], known) for view in own]
        merged = replace(
            shared[0][0], facts={face: facts for w, _ in shared for face, facts in w.facts.items()}
        )
        yield Batch(box=box, words=merged, views=tuple(view for _, view in shared), whole=False)


def _find_alike(parts: Iterable[Part], known: frozenset[str]) -> Iterable[tuple[_Face, ...]]:
    found: dict[bytes, list[_Face]] = {}
    for box, words, views in parts:
        faces = tuple((view.face, view.side, view.partition, view.kind) for view in views)
        for view in views:
            key, names, own = _key(words, view, faces, known)
            face = _Face(
                member=Member(part=words.part, code=words.code, box=box),
                face=view.key,
                names=names,
                own=own,
                reveals=words.reveals,
            )
            found.setdefault(key, []).append(face)
    return [tuple(alike) for alike in found.values()]


class _Mask:
    """Takes the names of parts out of sentences: each in its order, so that what is said of other
    parts in the same way reads the same."""

    def __init__(self, known: frozenset[str]) -> None:
        self.known = known
        self.names: list[str] = []

    def name(self, name: str) -> str:
        if name not in self.names:
            self.names.append(name)
        return _SLOT.format(self.names.index(name))

    def sentence(self, said: Sentence) -> Sentence:
        slots = tuple(map(self.name, said.names))
        words = _NAME.sub(self._slot, said.words) if said.free else said.words
        return replace(said, words=words, names=slots)

    def _slot(self, found: re.Match[str]) -> str:
        named = found[0] in self.known and not found[0].isdigit()
        return self.name(found[0]) if named else found[0]


def _masked(
    words: PartWords, view: FaceView, known: frozenset[str]
) -> tuple[_Mask, tuple[Fitting, ...], tuple[Sentence, ...], tuple[Sentence, ...]]:
    """Give a face's fittings, facts and notes without names, its own words left out."""
    mask = _Mask(known)
    mask.name(words.part)
    fittings = tuple(
        replace(fitting, part=mask.name(fitting.part) if fitting.part else None)
        for fitting in view.fittings
    )
    facts, notes = (
        tuple(mask.sentence(each) for each in said if not each.own)
        for said in (words.facts.get(view.face, ()), words.notes)
    )
    return mask, fittings, facts, notes


def _key(
    words: PartWords, view: FaceView, faces: tuple[object, ...], known: frozenset[str]
) -> tuple[bytes, tuple[str, ...], tuple[Sentence, ...]]:
    """Give what faces that are alike have in common, the names that stand in it, own words.

    `faces` are all that are drilled of the part. Of what they have in common only a digest is
    kept: of a long job it would fill the memory.
    """
    mask, fittings, facts, notes = _masked(words, view, known)
    # A partition's words name its column; of a side it says only how many its box has.
    column = view.column if view.partition else None
    marks = view.marks and replace(view.marks, box="")
    plain = replace(view, part="", code="", column=column, fittings=fittings, marks=marks)
    common = (_steps(plain), faces, words.kind, words.size, facts, notes)
    key = hashlib.sha256(repr(common).encode()).digest()
    own = tuple(each for each in (*words.facts.get(view.face, ()), *words.notes) if each.own)
    return key, tuple(mask.names), own


def _steps(value: object) -> object:
    """Give a value with its lengths in whole steps of 0.0001 mm, as part codes count them."""
    if isinstance(value, float):
        return round(value * _TENTHS_OF_MICRONS)
    if isinstance(value, tuple):
        return tuple(_steps(each) for each in value)
    if isinstance(value, dict):
        return tuple((key, _steps(each)) for key, each in value.items())
    if is_dataclass(value):
        return tuple(_steps(getattr(value, field.name)) for field in fields(value))
    return value


def _share(
    words: PartWords,
    view: FaceView,
    group: tuple[int, int, tuple[_Face, ...]],
    known: frozenset[str],
) -> tuple[PartWords, FaceView]:
    """Give words and face of a set that serves several parts, drawn as its first one's."""
    number, count, faces = group
    members = tuple(face.member for face in faces)
    codes = {member.code for member in members}
    code = members[0].code if len(codes) == 1 else ""
    which = f"set {number} of {count}" if count > 1 else ""
    served = f"{len(members)} parts with the same holes in this face"
    _, fittings, facts, notes = _masked(words, view, known)

    def name(slot: str, most: int, more: str) -> str:
        return join_names([face.names[int(slot)] for face in faces], most, more)

    def named(masked: Sentence) -> Sentence:
        text = _SLOTS.sub(lambda found: name(found[1], 4, "and {} alike"), masked.text)
        return Sentence(text, bold=masked.bold)

    shared = replace(
        words,
        members=members,
        set_words=which,
        code=code,
        reveals=words.reveals if len({face.reveals for face in faces}) == 1 else "",
        place=f"{which}: {served}" if which else served,
        payload=set_payload([m.part for m in members], drilled_words(view), code),
        facts={view.face: (*map(named, facts), *_own_words(faces))},
        notes=tuple(map(named, notes)),
    )
    drawn = replace(
        view,
        code=code,
        served=Served(
            parts=tuple(m.part for m in members),
            name=shared.name,
            alike=()
            if code and shared.name == shared.entry
            else tuple(m.part if code else f"{m.part} ({m.code})" for m in members),
        ),
        fittings=tuple(
            replace(each, part=_SLOTS.sub(lambda found: name(found[1], 2, "+ {}"), each.part))
            if each.part
            else each
            for each in fittings
        ),
    )
    return shared, drawn


def join_names(names: Iterable[str], most: int, more: str) -> str:
    """List names; of more than `most` the first alone, and in the words `more` how many others.

    >>> join_names(["B1-2", "B3-2", "B4-2"], 2, "and {} alike")
    'B1-2 and 2 alike'
    """
    each = list(dict.fromkeys(names))
    return ", ".join(each) if len(each) <= most else f"{each[0]} {more.format(len(each) - 1)}"


def _own_words(faces: tuple[_Face, ...]) -> Iterator[Sentence]:
    """Give what is said of the parts themselves: once where all agree, else with their names."""
    said: dict[Sentence, list[str]] = {}
    for face in faces:
        for words in face.own:
            said.setdefault(words, []).append(face.member.part)
    for words, parts in said.items():
        yield words if len(parts) == len(faces) else Sentence(f"{', '.join(parts)}: {words.text}")
