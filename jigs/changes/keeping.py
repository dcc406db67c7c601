"""What a job makes as data, as a pack keeps it, and read back.

A value that is as usual is left out. A digest stands beside the values, so that figures that
somebody edited, or that a disk lost, are never taken for what is on paper; whatever is of another
shape than it should be is refused.
"""

import json
import types
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from msgspec import NODEFAULT, Struct
from msgspec.structs import asdict, fields

from jigs.changes.made import Made, Value

T = TypeVar("T")
FORM = 6
"""Of the data: another one as soon as a value is kept otherwise, or one more is."""


def made_data(made: Made) -> dict[str, Any]:
    """Give what a job makes as data, without what a pack says of itself: job and version."""
    data = _data(made)
    assert isinstance(data, dict)
    said = {key: value for key, value in data.items() if key not in ("job", "tool")}
    return {"form": FORM, _DIGEST: _digest(said)} | said


_DIGEST = "digest"


def is_known(data: object) -> bool:
    """Tell whether it is kept as this version keeps it."""
    return isinstance(data, dict) and data.get("form") == FORM


def is_untouched(data: Mapping[str, Any]) -> bool:
    """Tell whether it is value for value what was kept."""
    said = {key: value for key, value in data.items() if key not in ("form", _DIGEST)}
    return data.get(_DIGEST) == _digest(said)


def _digest(said: Mapping[str, Any]) -> str:
    """Give the SHA-256 of values, however they are spaced and in whichever order they stand."""
    return sha256(json.dumps(said, sort_keys=True, separators=(",", ":")).encode()).hexdigest()


def read_made(data: object, *, job: str, tool: str) -> Made:
    """Read it back. Raises ValueError for what was not written so."""
    if not isinstance(data, dict):
        raise ValueError("no table")
    return _read(Made, {**data, "job": job, "tool": tool})


def _data(value: object) -> object:
    if value is None or isinstance(value, str | int | float):  # nearly all are
        return value
    if isinstance(value, Struct):
        usual = _usual(type(value))
        return {name: _data(own) for name, own in asdict(value).items() if own != usual[name]}
    if isinstance(value, Mapping):
        return {key: _data(each) for key, each in value.items()}
    if isinstance(value, tuple):
        return [_data(each) for each in value]
    return value


@cache
def _usual(kind: type[Struct]) -> Mapping[str, object]:
    """Give what each field of a struct has where nothing else is said."""
    return {
        each.name: each.default if each.default_factory is NODEFAULT else each.default_factory()
        for each in fields(kind)
    }


def _read(kind: type[T], data: object) -> T:
    if not isinstance(data, dict):
        raise ValueError(f"{data!r:.40} is no {kind.__name__}")
    hints = _hints(kind)  # type: ignore[arg-type]  # a type is hashable
    given = {key: _value(hints[key], raw) for key, raw in data.items() if key in hints}
    try:
        return kind(**given)
    except TypeError as error:
        raise ValueError(str(error)) from error


@cache
def _hints(kind: Any) -> Mapping[str, Any]:
    return get_type_hints(kind)


def _value(hint: Any, raw: object) -> object:
    """Give a value of this type; ValueError for one that is none."""
    kind, inner = get_origin(hint), get_args(hint)
    if kind in (Union, types.UnionType):
        return _plain(raw) if {bool, str} <= set(inner) else _either(inner, raw)
    if kind is Literal:
        if raw in inner:
            return raw
    elif kind is tuple:
        if isinstance(raw, list):
            return _row(inner, raw)
    elif inner:
        if isinstance(raw, dict):
            return {str(key): _value(inner[1], each) for key, each in raw.items()}
    elif issubclass(hint, Struct):
        return _read(hint, raw)
    elif hint is float and isinstance(raw, int | float) and not isinstance(raw, bool):
        return float(raw)
    elif isinstance(raw, hint):
        return raw
    raise ValueError(f"{raw!r:.40} stands where it cannot")


def _row(inner: tuple[Any, ...], raw: list[object]) -> tuple[object, ...]:
    if inner[-1] is Ellipsis:
        return tuple(_value(inner[0], each) for each in raw)
    if len(inner) != len(raw):
        raise ValueError(f"{len(raw)} values in place of {len(inner)}")
    return tuple(_value(hint, each) for hint, each in zip(inner, raw, strict=True))


def _either(hints: tuple[Any, ...], raw: object) -> object:
    for hint in hints:
        if hint is type(None):
            if raw is None:
                return None
            continue
        try:
            return _value(hint, raw)
        except ValueError:
            continue
    raise ValueError(f"{raw!r:.40} stands where it cannot")


def _plain(raw: object) -> Value:
    match raw:
        case bool() | str():
            return raw
        case int() | float():
            return float(raw)
        case list():
            return tuple(_plain(each) for each in raw)
    raise ValueError(f"{raw!r:.40} is no value")
