"""Numbers as a list writes them: which sign parts thousands and which is a decimal's, and several
heights in one cell.

>>> plain_number("1.396,0", "", ""), plain_number("1 396,5", "", ""), plain_number("2.400", "", ",")
('1396.0', '1396,5', '2400')
>>> may_be_thousands("1.950"), may_be_thousands("1.950,5"), decimal_sign(["596,5", "2.400"])
(True, False, ',')
>>> split_heights("140,0 / 284,0 / 284,0"), split_heights('5-3/4", 11-7/8", 11-7/8"')
(('140,0', '284,0', '284,0'), ('5-3/4"', '11-7/8"', '11-7/8"'))
>>> split_heights("3/4"), split_heights("23 7/8")
((), ())
"""

import re
from collections.abc import Iterable
from typing import Literal

from jigs.ground.lengths import ends_with_unit, is_bare

Sign = Literal["", ".", ","]
_GROUPED = re.compile(r"(?<![0-9.,])[1-9][0-9]{0,2}[.,][0-9]{3}(?![0-9.,])")
_BOTH = re.compile(
    r"(?<![0-9.,])[1-9][0-9]{0,2}(?P<group>[.,])[0-9]{3}(?P<sign>(?!(?P=group))[.,])[0-9]+"
)
_SPACED = re.compile(
    "(?<![0-9.,/])(?P<whole>[1-9][0-9]{0,2})[ \N{NO-BREAK SPACE}\N{THIN SPACE}"
    "\N{NARROW NO-BREAK SPACE}](?P<rest>[0-9]{3})(?![0-9/])"
)
_DECIMAL = re.compile(r"(?<![0-9.,])[0-9]+(?P<sign>[.,])(?:[0-9]{1,2}|[0-9]{4,})(?![0-9.,])")
_BETWEEN_HEIGHTS = re.compile(r"\s+/\s+|\s*;\s*|,\s+|\s*\+\s*")
_SLASHED = re.compile(r"[0-9]{2,4}(?:[.,][0-9])?(?:/[0-9]{2,4}(?:[.,][0-9])?){2,}")
"""Three or more with bare slashes between them are no fraction."""


def plain_number(text: str, thousands: str, decimal: Sign) -> str:
    """Write a number without a sign between its thousands; `thousands` as `ListSpec` has it, ""
    where it is not said; `decimal`: the sign before all decimals of the list, "" for none."""
    text = _SPACED.sub(r"\g<whole>\g<rest>", text)
    if found := _BOTH.search(text):
        group = found["group"]
        whole = found[0].replace(group, "").replace(found["sign"], ".")
        return text[: found.start()] + whole + text[found.end() :]
    sign = {"point": ".", "comma": ","}.get(thousands, "")
    if not sign and decimal and (grouped := _GROUPED.search(text)) and decimal not in grouped[0]:
        sign = "," if decimal == "." else "."
    if not sign:
        return text
    return re.sub(rf"(?<=[0-9])\{sign}(?=[0-9]{{3}}(?![0-9]))", "", text).replace(",", ".")


def may_be_thousands(text: str) -> bool:
    """Tell whether a sign in a number may part thousands, and be a decimal's as well."""
    return bool(_GROUPED.search(text)) and not _BOTH.search(text)


def decimal_sign(texts: Iterable[str], *, workbook: bool = False) -> Sign:
    """Give the one sign that stands before decimals in all these cells, "" where none or two do; in
    a `workbook` a point says nothing: its own numbers have one whatever people write."""
    found: set[str] = set()
    for text in texts:
        found |= {match["sign"] for match in _DECIMAL.finditer(text)}
        found |= {match["sign"] for match in _BOTH.finditer(text)}
    if workbook:
        found.discard(".")
    if len(found) != 1:
        return ""
    return "," if "," in found else "."


def split_heights(text: str) -> tuple[str, ...]:
    """Part a cell of several heights, each of a front of its own; empty for any other cell."""
    text = text.strip()
    parts = text.split("/") if _SLASHED.fullmatch(text) else _BETWEEN_HEIGHTS.split(text)
    if len(parts) < 2 or not all(part[:1].isdigit() for part in parts):
        return ()
    unit = ends_with_unit(parts[-1])
    if unit and all(is_bare(part) for part in parts[:-1]):
        return (*(f"{part} {unit}" for part in parts[:-1]), parts[-1])
    return tuple(parts)
