"""What the words in a cell say of a front: its kind, its hand; that a row is a sum; how many hang
left and how many right; where in its box it hangs. The words stand in `frontwords.toml`.

A cell may say more than its kind (`Shaker door, white`); one that says two kinds, or a word that is
of no front (`drawer box`, `flap`), says none.

>>> read_front("Türe links"), read_front("Façade de tiroir").kind, read_front("drawer box").kind
(FrontWord(kind='door', hand='left', doubled=False), 'drawer', None)
>>> count_hands("je 1x L + 1x R"), count_hands("left of the range")
({'left': 1, 'right': 1}, {})
>>> find_hand("rechts angeschlagen"), find_hand("left of the range"), read_place("Vorrat unten")
('right', None, 'below')
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache

from msgspec import Struct

from jigs.given.hangsat import PLACES, NotedPlace
from jigs.given.job import BOX_KINDS, FRONT_KINDS, BoxKind, FrontKind
from jigs.ground.geometry import Hand
from jigs.reading.headings import fold, read_heading, read_words

_PLURALS = ("", "s", "n", "en", "er", "r", "e", "es")
_SHORTEST = 3
"""Letters of a word that has a plural, or that says a hand among others."""
_MOST_WORDS = 4
"""Words that belong together."""
_LONGEST_SHORT = 4
"""Letters of a word for a box that is too short to be told in a note."""
_NONE = "none"
_END_PANEL = "end-panel"
_NOTHING = frozenset(("nothing", _END_PANEL))
"""What words of no front mean."""


class FrontWord(Struct, frozen=True):
    """What a cell says of its front; `doubled`: it says a pair in another word than this."""

    kind: FrontKind | None = None
    hand: Hand | None = None
    doubled: bool = False


@cache
def _words() -> Mapping[str, Mapping[str, str]]:
    return read_words("frontwords.csv")


@cache
def read_front(text: str) -> FrontWord:
    """Give what a cell says of its front."""
    folded = fold(text)
    if kind := _kind(_words()["kind"].get(folded, "")):
        return FrontWord(kind, None, kind == "pair" and folded != "pair")
    tokens = folded.split()
    for start in range(len(tokens)):
        # The letter of a hand stands last: `Porte d'angle` says none.
        if hand := _hand(_words()["handed"].get(" ".join(tokens[start:]), "")):
            before = set(_meanings(tokens[:start], _known()))
            return FrontWord() if before - {"door", hand} else FrontWord("door", hand)
    meant = tuple(_meanings(tokens, _known()))
    kinds = {kind for word in meant if (kind := _kind(word))}
    hands = {hand for word in meant if (hand := _hand(word))}
    if len(kinds) != 1 or _NONE in meant or _NOTHING & {*meant}:
        return FrontWord()
    [kind] = kinds
    return FrontWord(kind, next(iter(hands)) if len(hands) == 1 else None, kind == "pair")


@cache
def is_kind(text: str) -> bool:
    """Tell whether a cell is a word for a kind of front and nothing else, or several of that kind.

    >>> is_kind("drawer fronts"), is_kind("Deuren"), is_kind("door base cabinet")
    (True, True, False)
    """
    return _kind(_meaning(fold(text), _words()["kind"])) is not None


@cache
def _known() -> Mapping[str, str]:
    words = _words()
    return {**words["none"], **words["hand"], **words["nothing"], **words["kind"]}


@cache
def says_glass(text: str) -> bool:
    """Tell whether words say that a door has a pane.

    >>> says_glass("Glass door, white"), says_glass("Glasdeur links"), says_glass("Hochglanz")
    (True, True, False)
    >>> says_glass("door, without glass")
    False
    """
    return "glass" in _meanings(fold(text).split(), _words()["glass"])


@cache
def is_nothing(text: str) -> bool:
    """Tell whether a cell names what is no front, and no front beside it.

    >>> is_nothing("Passleiste, weiß"), is_nothing("Door beside the filler")
    (True, False)
    """
    meant = set(_meanings(fold(text).split(), _known()))
    return bool(_NOTHING & meant) and not any(map(_kind, meant))


@cache
def is_end_panel(text: str) -> bool:
    """Tell whether a cell names an end panel.

    >>> is_end_panel("Wange, weiß"), is_end_panel("filler")
    (True, False)
    """
    return is_nothing(text) and _END_PANEL in _meanings(fold(text).split(), _known())


@cache
def read_box_kind(text: str) -> BoxKind | None:
    """Give the kind of box that a word names.

    >>> read_box_kind("Oberschrank"), read_box_kind("évier"), read_box_kind("shed")
    ('wall', 'sink', None)
    """
    word = _words()["box"].get(fold(text), "")
    return next((kind for kind in BOX_KINDS if kind == word), None)


@cache
def find_box_kind(text: str) -> BoxKind | None:
    """Give the kind of box that one of the words in a note names; a short one may be anything."""
    known = {word: kind for word, kind in _words()["box"].items() if len(word) > _LONGEST_SHORT}
    found = set(_meanings(fold(text).split(), known))
    named = [kind for kind in BOX_KINDS if kind in found]
    return named[0] if len(named) == 1 else None


@cache
def read_box_title(text: str) -> str:
    """Give the name of the box that a title names, "" where it names none.

    >>> read_box_title("Kast A1"), read_box_title("Oberschrank W-2"), read_box_title("Soft close 2")
    ('A1', 'W-2', '')
    """
    tokens = text.replace(":", " ").split()
    named = [word for word in tokens if not _names_box(word)]
    numbered = any(letter.isdigit() for word in named for letter in word)
    if len(named) < len(tokens) and numbered and len(named) <= _MOST_WORDS:
        return " ".join(named)
    return text if re.fullmatch(r"[^\W\d_]{1,3}[-. ]?[0-9]{1,3}", text) else ""


def _names_box(word: str) -> bool:
    found = read_heading(word)
    return (found is not None and found.column == "box") or read_box_kind(word) is not None


@cache
def read_place(text: str) -> NotedPlace | None:
    """Give where a cell says that its front hangs, or from where the rows stand; None where it says
    neither, both, or says it of a handle."""
    tokens = fold(text).split()
    if _NONE in _meanings(tokens, _words()["none"]):
        return None
    meant = set(_meanings(tokens, _words()["place"]))
    found = [place for place in PLACES if place in meant]
    return found[0] if len(found) == 1 else None


def _meanings(tokens: list[str], known: Mapping[str, str]) -> Iterator[str]:
    """Yield what the words mean that are known; of several that belong together, together."""
    start = 0
    while start < len(tokens):
        end = min(start + _MOST_WORDS, len(tokens))
        while end > start + 1 and " ".join(tokens[start:end]) not in known:
            end -= 1
        phrase = " ".join(tokens[start:end])
        if meaning := _meaning(phrase, known):
            yield meaning
        start = end


def _meaning(word: str, known: Mapping[str, str]) -> str:
    stems = (word.removesuffix(end) for end in _PLURALS)
    least = {word: _SHORTEST - 1}
    fit = (stem for stem in stems if len(stem) >= least.get(stem, _SHORTEST))
    return next((known[stem] for stem in fit if stem in known), "")


def _kind(word: str) -> FrontKind | None:
    return next((kind for kind in FRONT_KINDS if kind == word), None)


def _hand(word: str) -> Hand | None:
    return "left" if word == "left" else "right" if word == "right" else None


def read_hand(text: str) -> Hand | None:
    """Give the hand that a cell names."""
    return _hand(_words()["hand"].get(fold(text), ""))


@cache
def find_hand(text: str) -> Hand | None:
    """Give the hand that a cell says in words about hinges and no others: `hinged on right`."""
    if hand := read_hand(text):
        return hand
    tokens = fold(text).split()
    beside = {**_words()["hinging"], **_words()["linking"]}
    hands = {read_hand(token) for token in tokens if token not in beside}
    if len(hands) != 1 or not any(token in _words()["hinging"] for token in tokens):
        return None
    return hands.pop()


@cache
def find_handle_side(text: str) -> Hand | None:
    """Give the side on which a cell says that the handle is, and nothing else.

    >>> find_handle_side("Griff rechts oben"), find_handle_side("links")
    ('right', None)
    """
    tokens = fold(text).split()
    words = _words()
    beside = {**words["linking"], **words["place"], **words["handle"]}
    hands = {read_hand(token) for token in tokens if token not in beside}
    if len(hands) != 1 or not any(token in words["handle"] for token in tokens):
        return None
    return hands.pop()


@cache
def names_handle(text: str) -> bool:
    """Tell whether a heading names a handle, or begins with one: `Greepkant`."""
    words = _words()["handle"]
    return any(token.startswith(word) for token in fold(text).split() for word in words)


@cache
def speaks_of_handles(text: str) -> bool:
    """Tell whether a cell has a word for a handle: `Griff`, and not `Pullout`."""
    return any(token in _words()["handle"] for token in fold(text).split())


def opens_upward(text: str) -> bool:
    """Tell whether a cell in a column of hands says that its front goes up.

    >>> opens_upward("naar boven"), opens_upward("links")
    (True, False)
    """
    return fold(text) in _words()["upward"]


def read_doubt(text: str) -> bool:
    """Tell whether a cell says that its row may not be ordered: it is optional, or cancelled.

    >>> read_doubt("Optie: glasdeur"), read_doubt("utgår"), read_doubt("Shaker door")
    (True, True, False)
    """
    return any(_meanings(fold(text).split(), _words()["dropped"]))


@cache
def mentions_hand(text: str) -> bool:
    """Tell whether a cell has a word for a hand, whatever it says with it."""
    known = _words()["hand"]
    return any(len(token) > 1 and token in known for token in fold(text).split())


@cache
def speaks_of_hinges(text: str) -> bool:
    """Tell whether a cell has a word about hinges or the way a door opens."""
    return any(token in _words()["hinging"] for token in fold(text).split())


@cache
def says_pair(text: str) -> bool:
    """Tell whether a note says that its doors are a pair."""
    folded = fold(text)
    return folded in _words()["paired"] or "pair" in _meanings(folded.split(), _words()["kind"])


def count_hands(text: str) -> dict[Hand, int]:
    """Give how many of a row hang left and how many right; empty where it does not say both."""
    tokens = [
        token
        for token in fold(text).split()
        if token not in _words()["hinging"] and token not in _words()["linking"]
    ]
    found: dict[Hand, int] = {}
    number = 0
    for token in tokens:
        digits = len(token) - len(token.lstrip("0123456789"))
        if digits:
            number = int(token[:digits][:3])
        word = token[digits:]
        if number and (hand := read_hand(word)):
            found[hand] = found.get(hand, 0) + number
            number = 0
        elif _words()["one"].get(word):
            number = number or 1
        elif word not in ("", "x"):
            number = 0
    return found if len(found) == len(("left", "right")) else {}


def read_yes(text: str) -> bool | None:
    """Give whether a cell says yes or no, None for neither."""
    word = _words()["yes"].get(fold(text), "")
    return True if word == "yes" else False if word == "no" else None


def is_sum(text: str) -> bool:
    """Tell whether a cell begins as a sum does."""
    tokens = fold(text).split()
    return any(" ".join(tokens[:end]) in _words()["sum"] for end in range(1, _MOST_WORDS))
