"""The project's dataclass against the standard library's: the same class from either."""

import dataclasses
import pickle
from collections.abc import Callable
from copy import deepcopy
from dataclasses import KW_ONLY, FrozenInstanceError, field
from typing import Any

import pytest

from jigs.ground import values


def make_classes(dataclass: Callable[..., Any]) -> tuple[Any, Any, Any, Any]:
    """Give classes made by one decorator: placed fields, named ones, one that adds to another."""

    @dataclass(frozen=True, slots=True)
    class Point:
        """Where."""

        x: float
        y: float = 1.0
        _: KW_ONLY
        name: str = ""

    @dataclass(frozen=True, slots=True, kw_only=True)
    class Made:
        """What has a default after what has none."""

        size: float = 2.0
        holes: list[int] = field(default_factory=list)
        id: str
        told: str = field(default="", compare=False)

    @dataclass(frozen=True, slots=True, kw_only=True)
    class More(Made):
        """What has a field more."""

        turned: bool = False

    @dataclass(frozen=True, slots=True)
    class Bare:
        """No field at all."""

    return Point, Made, More, Bare


OURS = make_classes(values.dataclass)
STANDARD = make_classes(dataclasses.dataclass)
MADE: list[Callable[[Any, Any, Any, Any], Any]] = [
    lambda point, made, more, bare: point(1.5),
    lambda point, made, more, bare: point(1.5, 2.5, name="here"),
    lambda point, made, more, bare: made(id="B1", told="once"),
    lambda point, made, more, bare: made(id="B1", holes=[1, 2], size=0.0),
    lambda point, made, more, bare: more(id="B1", turned=True),
    lambda point, made, more, bare: bare(),
]


@pytest.mark.parametrize("make", MADE)
def test_a_value_is_as_the_standard_library_makes_it(make: Callable[..., Any]) -> None:
    """Fields, defaults, matching and what is shown are the same."""
    ours, standard = make(*OURS), make(*STANDARD)
    assert dataclasses.asdict(ours) == dataclasses.asdict(standard)
    assert repr(ours) == repr(standard)
    assert type(ours).__match_args__ == type(standard).__match_args__
    assert not hasattr(ours, "__dict__")
    assert dataclasses.replace(ours) == values.replace(ours) == ours
    assert deepcopy(ours) == ours


@pytest.mark.parametrize("wrong", [{"size": 1.0}, {"id": "B1", "width": 1.0}, {}])
def test_what_is_missing_or_unknown_is_refused(wrong: dict[str, Any]) -> None:
    """As many fields as there are, by their names."""
    for made in (OURS[1], STANDARD[1]):
        with pytest.raises(TypeError):
            made(**wrong)


@pytest.mark.parametrize("classes", [OURS, STANDARD])
def test_values_are_compared_and_hashed_by_what_they_hold(classes: Any) -> None:
    """A field that is not compared makes no other value; another class does."""
    point, made, more, bare = classes
    assert point(1.0) == point(1.0, 1.0) != point(1.0, 2.0)
    assert len({point(1.0), point(1.0, 1.0), point(2.0)}) == 2
    assert made(id="A", told="x") == made(id="A", told="y") != made(id="B", told="x")
    assert made(id="A") != more(id="A")
    assert bare() == bare() != point(1.0)
    assert made(id="A").holes is not made(id="A").holes


@pytest.mark.parametrize("classes", [OURS, STANDARD])
def test_a_value_is_made_anew_with_a_field_changed(classes: Any) -> None:
    """Whoever made its class; a field that it has not is refused."""
    _, made, more, bare = classes
    changed = values.replace(more(id="A", size=1.0), id="B", turned=True)
    assert changed == more(id="B", size=1.0, turned=True)
    assert values.replace(bare()) == bare()
    with pytest.raises(TypeError, match="width"):
        values.replace(made(id="A"), width=1.0)


@pytest.mark.parametrize("classes", [OURS, STANDARD])
def test_a_value_is_frozen(classes: Any) -> None:
    """Nothing of it can be changed or taken away."""
    value = classes[0](1.0)
    with pytest.raises(FrozenInstanceError, match="cannot assign to field 'x'"):
        value.x = 2.0
    with pytest.raises(FrozenInstanceError, match="cannot delete field 'x'"):
        del value.x


def test_what_is_not_frozen_or_has_an_order_is_the_standard_librarys() -> None:
    """Nothing is taken from either."""

    @values.dataclass(slots=True)
    class Count:
        """What counts on."""

        count: int = 0

    @values.dataclass(frozen=True, slots=True, order=True)
    class Rank:
        """What stands in an order."""

        rank: int

    counted = Count()
    counted.count += 1
    assert counted == Count(1)
    assert Rank(1) < Rank(2)


@values.dataclass(frozen=True, slots=True)
class Kept:
    """At the module's top, where it is found again."""

    rank: int
    name: str = ""


def test_a_value_can_be_sent_to_another_process() -> None:
    """Written and read back it is equal."""
    assert pickle.loads(pickle.dumps(Kept(3, "x"))) == Kept(3, "x")
