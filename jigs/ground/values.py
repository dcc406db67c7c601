"""Values: `@dataclass(frozen=True, slots=True)`, made in a third of the time.

The standard library writes and compiles six methods for each frozen class, and a command makes 170
to 300 classes before it does anything. Only `__init__` must differ from class to class: it alone is
compiled here, when its class has its first value, the others are shared; and `replace`, asked for
40 times a front, takes what a value holds at once. All else is the standard library's, and to the
type checker these are too.

>>> @dataclass(frozen=True, slots=True, kw_only=True)
... class Size:
...     width: float
...     height: float = 2.0
>>> Size(width=1.0), Size(width=1.0) == Size(width=1.0, height=2.0)
(Size(width=1.0, height=2.0), True)
>>> Size(width=1.0).width = 3.0
Traceback (most recent call last):
    ...
dataclasses.FrozenInstanceError: cannot assign to field 'width'
"""

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import MISSING, Field, FrozenInstanceError
from operator import attrgetter
from reprlib import recursive_repr
from typing import TYPE_CHECKING, Any

Fields = Sequence[Field[Any]]


def _dataclass(*, frozen: bool = False, **options: bool) -> Callable[[type], type]:
    """Make a class a dataclass, as `dataclasses.dataclass` does."""
    if not frozen or "order" in options:
        return dataclasses.dataclass(frozen=frozen, **options)
    bare = dataclasses.dataclass(init=False, repr=False, eq=False, **options)

    def make(plain: type) -> type:
        made: Any = bare(plain)
        fields = dataclasses.fields(made)
        made.__init__ = _first_init(made, fields)
        made.__names__ = [field.name for field in fields]
        made.__held__ = _getter(made.__names__)
        made.__compared__ = _getter([field.name for field in fields if field.compare])
        for method in _SHARED:
            setattr(made, method.__name__, method)
        return made  # type: ignore[no-any-return]

    return make


def _replace(value: Any, /, **changes: Any) -> Any:
    """Give a value like this one but for these fields, as `dataclasses.replace` does."""
    made = type(value)
    if not hasattr(made, "__held__"):
        return dataclasses.replace(value, **changes)
    return made(**{**dict(zip(made.__names__, made.__held__(value), strict=True)), **changes})


def _first_init(made: Any, fields: Fields) -> Callable[..., None]:
    """Give the method that has the one of the class written, as its first value is made: a fourth
    of the classes has none in a run."""

    def __init__(self: object, *args: object, **named: object) -> None:
        made.__init__ = _write_init(made, fields)
        made.__init__(self, *args, **named)

    return __init__


def _write_init(made: type, fields: Fields) -> Callable[..., None]:
    """Compile the method that takes a value for each field, or its default, and keeps it in its
    slot."""
    known: dict[str, Any] = {"MISSING": MISSING}
    placed: list[str] = []
    named: list[str] = []
    lines: list[str] = []
    for field in fields:
        name, default = field.name, ""
        if field.default is not MISSING:
            known[f"default_{name}"] = field.default
            default = f"=default_{name}"
        elif field.default_factory is not MISSING:
            known[f"make_{name}"] = field.default_factory
            default = "=MISSING"
            lines.append(f" if {name} is MISSING: {name} = make_{name}()")
        (named if field.kw_only else placed).append(name + default)
        known[f"keep_{name}"] = getattr(made, name).__set__
        lines.append(f" keep_{name}(self, {name})")
    taken = ["self", *placed, *(["*", *named] if named else [])]
    exec(f"def __init__({', '.join(taken)}):\n" + ("\n".join(lines) or " pass"), known)
    written: Callable[..., None] = known["__init__"]
    return written


def _getter(names: Sequence[str]) -> Callable[[object], tuple[Any, ...]]:
    """Give the function from a value to what it holds under these names."""
    if len(names) > 1:
        return attrgetter(*names)
    return staticmethod(lambda value: tuple(getattr(value, name) for name in names))


def __setattr__(self: Any, name: str, value: object) -> None:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def __delattr__(self: Any, name: str) -> None:
    raise FrozenInstanceError(f"cannot delete field {name!r}")


def __eq__(self: Any, other: Any) -> bool:
    if other.__class__ is not self.__class__:
        return NotImplemented
    return bool(self.__compared__(self) == self.__compared__(other))


def __hash__(self: Any) -> int:
    return hash(self.__compared__(self))


@recursive_repr()
def __repr__(self: Any) -> str:
    held = zip(self.__names__, self.__held__(self), strict=True)
    shown = [f"{name}={value!r}" for name, value in held]
    return f"{self.__class__.__qualname__}({', '.join(shown)})"


def __getstate__(self: Any) -> Sequence[object]:
    return list(self.__held__(self))


def __setstate__(self: Any, state: Sequence[object]) -> None:
    for name, value in zip(self.__names__, state, strict=True):
        object.__setattr__(self, name, value)


_SHARED = (__setattr__, __delattr__, __eq__, __hash__, __repr__, __getstate__, __setstate__)

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
    from dataclasses import replace as replace
else:
    dataclass, replace = _dataclass, _replace
