"""Open numbers in words and as data: what is drawn or bought with numbers nobody looked up yet."""

from collections.abc import Iterable

from jigs.confirming import OpenNumber, Value, by_record
from jigs.parts import Layout


def open_of(layout: Layout) -> tuple[OpenNumber, ...]:
    """Give the open numbers that the parts of a job rest on, each once."""
    found = [number for front in layout.fronts for number in front.open]
    found += [number for front in layout.fronts if front.drawer for number in front.drawer.open]
    found += [number for side in layout.sides for number in side.open]
    found += [number for rollout in layout.rollouts for number in rollout.open]
    return tuple(dict.fromkeys(found))


def open_words(numbers: Iterable[OpenNumber]) -> tuple[str, ...]:
    """Name the open numbers record by record: `hinge 'mine' (constant, plates)`."""
    return tuple(
        f"{kind} '{name}' ({', '.join(number.key for number in of_it)})"
        for (kind, name), of_it in sorted(by_record(numbers).items())
    )


def open_data(numbers: Iterable[OpenNumber]) -> list[dict[str, str | float | list[float] | None]]:
    """Give open numbers as data, for what is written as JSON."""
    return [
        {
            "kind": number.kind,
            "record": number.record,
            "key": number.key,
            "value_mm": _as_data(number.value),
        }
        for number in numbers
    ]


def _as_data(value: Value) -> float | list[float] | None:
    return list(value) if isinstance(value, tuple) else value
