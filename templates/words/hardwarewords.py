"""Hardware in words: each number of a record with its letter, its value and its standing."""

from collections.abc import Iterable, Mapping
from string import ascii_lowercase

from msgspec import Struct

from jigs.given.confirming import Record, how_confirmed, open_keys, record_kind
from jigs.given.hardware import (
    HOOK_KEYS,
    HingeKind,
    HingeRecord,
    NumberStanding,
    PullRecord,
    SlideRecord,
)
from templates.words.textlines import columned

STANDINGS: Mapping[NumberStanding, str] = {
    "P": "published", "C": "common practice", "M": "from memory: confirm it", "D": "derived",
    "user": "given by you",
}  # fmt: skip

HUNG: Mapping[HingeKind, str] = {
    "full": "full overlay", "half": "half overlay", "inset": "inset",
}  # fmt: skip
"""How the door of a hinge lies on its box."""

_HINGE = (
    ("tab", "tab: door's edge to the rim of the cup"),
    ("constant", "constant: rim of the cup to the plate's face"),
    ("plates", "plate heights at hand"),
    ("cup_diameter", "cup diameter"),
    ("cup_depth", "cup depth"),
    ("fixing_spacing", "screws of the cup, apart"),
    ("fixing_inboard", "their line inboard of the cup's centre"),
    ("plate_line", "plate holes from the finished front edge"),
    ("plate_spacing", "plate holes, apart"),
)
_UNDER = (
    ("fixing_height", "fixing height: hole above the floor line"),
    ("drawer_rise", "drawer rise: drawer side above the floor line"),
    ("width_less", "opening less inside width, both sides together"),
    ("recess", "recess under the drawer's bottom"),
    ("fixing_at", "holes back from the finished front edge"),
    ("carry_at", "further holes, marked through the slide"),
    ("length", "nominal length"),
    ("depth_allowance", "inside depth wanted beyond the length"),
    ("drawer_shorter", "drawer shorter than the length by"),
)
_SIDE = (
    ("centre_height", "centre line above the drawer's underside"),
    ("drawer_rise", "drawer rise: drawer side above the floor line"),
    ("width_less", "opening less outside width, both sides together"),
    *_UNDER[4:],
)
_PULL = (
    ("centers", "hole centres"),
    ("door_inset", "inset: free edge to the pull's line"),
    ("door_corner", "corner to the near screw"),
    ("projection", "projection out from the face"),
    ("hole_diameter", "hole diameter"),
)
LETTERS = ascii_lowercase
"""What the numbers of a drawing are called there, in the order of the drawing."""

UNCONFIRMED = "NO"
"""What is said of a number that nobody confirmed, and somebody should."""

_OWN = {
    "hinge": ("fixing_spacing", "fixing_inboard"),
    "slide": ("length",),
    "pull": ("centers",),
}
"""What the members of a family differ in."""

_NAMES = {"centers": "hole centres"}
"""What a number is called in words, where it is not its key."""


class Number(Struct, frozen=True, kw_only=True):
    """One number of a record, ready to print; `standing` is a letter or `user`, "" for none.
    `open`: nobody confirmed it, and somebody should."""

    letter: str
    key: str
    name: str
    value: str
    standing: str
    confirmed: str
    open: bool = False


def described(record: Record) -> str:
    """Describe a record by its geometry: `concealed cup hinge, full overlay`."""
    match record:
        case HingeRecord():
            return f"concealed cup hinge, {HUNG[record.kind]}"
        case SlideRecord():
            return "undermount slide" if record.mount == "under" else "side-mount slide"
        case PullRecord():
            return "knob, one hole" if record.centers is None else "pull, two holes"


def _rows(record: Record) -> tuple[tuple[str, str], ...]:
    """Give keys and names of the numbers that a drawing of the record dimensions."""
    match record:
        case HingeRecord():
            return _HINGE
        case SlideRecord():
            return _UNDER if record.mount == "under" else _SIDE
        case PullRecord():
            return _PULL


def lettered(record: Record, key: str, value: float | None = None) -> str:
    """Give a number's letter in the drawing of its record, and its value, or the one that is drawn
    for it: `f 45`."""
    letter = LETTERS[[name for name, _ in _rows(record)].index(key)]
    shown: float = getattr(record, key) if value is None else value
    return f"{letter} {shown:.1f}".removesuffix(".0")


def numbers(record: Record) -> tuple[Number, ...]:
    """Give the numbers that a drawing of the record dimensions, in its order."""
    told = tuple(
        Number(
            letter=letter,
            key=key,
            name=name,
            value=_value(record, own),
            standing=record.standing.get(own, ""),
            confirmed=how_confirmed(record, own) or (UNCONFIRMED if _is_open(record, own) else ""),
            open=_is_open(record, own),
        )
        for letter, (key, name) in zip(LETTERS, _rows(record), strict=False)
        for own in (_stated_key(record, key),)
    )
    return told + (_hooks(record) if isinstance(record, SlideRecord) else ())


def _is_open(record: Record, key: str) -> bool:
    return key in open_keys(record) and not how_confirmed(record, key)


def _stated_key(record: Record, key: str) -> str:
    """Give the key that states a number: of a hinge without one tab, the tabs that it lists."""
    listed = isinstance(record, HingeRecord) and record.tab is None and record.tabs
    return "tabs" if key == "tab" and listed else key


def _hooks(record: SlideRecord) -> tuple[Number, ...]:
    """Give the rear hooks' holes of a slide that has them in one line: they are drawn on the
    drawer box's own sheet."""
    if record.hook_diameter is None:
        return ()
    deep, up, inset = (
        f"{value or 0.0:g}" for value in (record.hook_depth, record.hook_height, record.hook_inset)
    )
    ways = {how_confirmed(record, key) for key in HOOK_KEYS}
    way = ways.pop() if len(ways) == 1 else None
    return (
        Number(
            letter="",
            key="hook_height",
            name="rear hooks: hole, up the back, in from the side",
            value=f"{record.hook_diameter:g} x {deep}, {up}, {inset}",
            standing=record.standing.get("hook_height", ""),
            confirmed=way or UNCONFIRMED,
            open=way is None,
        ),
    )


def _value(record: Record, key: str) -> str:
    value: object = getattr(record, key)
    if isinstance(value, tuple):
        # Places that a slide has not; plates that nobody listed.
        empty = "none stated" if key == "plates" else "none"
        return ", ".join(f"{item:g}" for item in value) or empty
    if value is None:
        return "none" if key == "centers" else "open"
    return f"{value:g}"


def record_text(record: Record) -> str:
    """Give a record's numbers as a table."""
    rows: list[tuple[str, ...]] = [("", "number (mm)", "value", "standing", "confirmed")]
    rows += [(n.letter, n.name, n.value, n.standing, n.confirmed) for n in numbers(record)]
    lines = [f"{record_kind(record)} '{record.name}': {described(record)}", *columned(rows)]
    if isinstance(record, HingeRecord):
        lines.append("overlay = constant + tab - plate height")
    return "\n".join([*lines, legend()]) + "\n"


def list_text(records: Iterable[Record]) -> str:
    """List records by kind and by family: what its members share stands above them once."""
    lines: list[str] = []
    shared: tuple[str, ...] | None = None
    for record in records:
        own = _OWN[record_kind(record)]
        common = (described(record), *(_short(n) for n in numbers(record) if n.key not in own))
        if common != shared:
            shared = common
            lines += ["", f"{common[0].capitalize()}, mm", *_wrapped(common[1:])]
        told = ", ".join(_short(n) for n in numbers(record) if n.key in own)
        lines.append(f"  {record.name:<16}  {told}".rstrip())
    return "\n".join([*lines[1:], "", legend()]) + "\n"


def legend() -> str:
    """Say what the standings mean."""
    return "; ".join(f"{key} {words}" for key, words in STANDINGS.items()) + "."


def _short(number: Number) -> str:
    standing = f" ({number.standing})" if number.standing else ""
    name = _NAMES.get(number.key, number.key.replace("_", " "))
    return f"{name} {number.value}{standing}"


def _wrapped(words: Iterable[str]) -> list[str]:
    lines = ["   "]
    for word in words:
        if len(lines[-1]) + len(word) > 92:
            lines.append("   ")
        lines[-1] += f" {word};"
    return [line.rstrip(";") for line in lines]
