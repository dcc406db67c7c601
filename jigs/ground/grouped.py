"""Values put together by what they have in common."""

from collections.abc import Iterable
from typing import TypeVar

KeyT = TypeVar("KeyT")
ValueT = TypeVar("ValueT")


def grouped(pairs: Iterable[tuple[KeyT, ValueT]]) -> dict[KeyT, list[ValueT]]:
    """Put the values of one key together, keys and values in the order in which they come.

    >>> grouped([("B1", 16.0), ("B2", 18.0), ("B1", 19.0)])
    {'B1': [16.0, 19.0], 'B2': [18.0]}
    """
    found: dict[KeyT, list[ValueT]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found
