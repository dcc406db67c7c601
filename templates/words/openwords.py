"""Open numbers in words and as data: what is drawn or bought with numbers nobody looked up yet."""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from jigs.given.confirming import NumberValue, OpenNumber, by_record
from templates.words.textlines import counted

MOST_WORDS = 12
"""Words of the line on a page that says what is open."""
STAMP = "OPEN"
"""What the line begins with, and what a small label has room for."""


def open_words(numbers: Iterable[OpenNumber]) -> tuple[str, ...]:
    """Name the open numbers record by record: `hinge 'mine' (constant, plates)`."""
    return tuple(
        f"{kind} '{name}' ({', '.join(number.key for number in of_it)})"
        for (kind, name), of_it in sorted(by_record(numbers).items())
    )


def open_line(numbers: Iterable[OpenNumber], where: str = "", *, brief: bool = False) -> str:
    """Say in one line which records have open numbers, and how many; "" where none has.

    `where` says where they are listed: `OPEN: slide runner, 3 numbers: page 1`; `brief`: the
    records alone, where all pages say the rest once.
    """
    return _open_line(tuple(numbers), where, brief)


@lru_cache(maxsize=256)  # many parts have the same hardware
def _open_line(numbers: tuple[OpenNumber, ...], where: str, brief: bool) -> str:
    found = by_record(numbers)
    if not found:
        return ""
    tail = f": {where}" if where else ""
    counts = [(f"{kind} {name}", len(of_it)) for (kind, name), of_it in sorted(found.items())]
    if brief:
        said = ", ".join(name for name, _ in counts)
    else:
        first, *rest = (f"{name}, {count}" for name, count in counts)
        noun = "number" if counts[0][1] == 1 else "numbers"
        said = "; ".join([f"{first} {noun}", *rest])
    line = f"{STAMP}: {said}{tail}"
    if len(line.split()) <= MOST_WORDS:
        return line
    total = sum(count for _, count in counts)
    return f"{STAMP}: {total} numbers of {len(counts)} pieces of hardware{tail}"


def assumed_line(assumed: Sequence[str]) -> str:
    """Say in one line what was assumed of a part: all of it where it is little, else how much, and
    where it is listed.

    >>> assumed_line(["side thickness 18.0 mm"]), assumed_line(["front thickness 19.0 mm"] * 4)
    ('ASSUMED: side thickness 18.0 mm.', 'ASSUMED: 4 numbers: page 1.')
    >>> assumed_line(["rows of shelf pins to 100 mm from the ends of the opening of B1"])
    'ASSUMED: 1 number: page 1.'
    """
    line = f"ASSUMED: {'; '.join(assumed)}."
    if len(line.split()) <= MOST_WORDS:
        return line
    return f"ASSUMED: {counted(len(assumed), 'number')}: page 1."


def open_cell(numbers: Iterable[OpenNumber]) -> str:
    """Name open numbers by their places in the job, for one cell: `hinge.mine.constant`."""
    return " ".join(f"{number.kind}.{number.record}.{number.key}" for number in numbers)


def line_to_write(number: OpenNumber) -> str:
    """Give the line that states a number in its record: `constant = "15 mm"`."""
    value = number.value
    if value is None or value == ():
        return f"{number.key} = ..."
    if isinstance(value, tuple):
        return f"{number.key} = [{', '.join(_quoted(item) for item in value)}]"
    return f"{number.key} = {_quoted(value)}"


def _quoted(value: float) -> str:
    return f'"{value:g} mm"'


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


def _as_data(value: NumberValue) -> float | list[float] | None:
    return list(value) if isinstance(value, tuple) else value
