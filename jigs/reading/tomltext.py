"""A TOML document from a file: its text, its values, and the slips people make in lengths.

An unquoted `15 3/4`, a doubled quote `"15 3/4""` and a text without straight quotes are no TOML.
All are common, so the message shows the corrected line, and reading goes on behind it: all slips
are reported at once.
"""

import re
import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

from jigs.ground.errors import Fault, LengthError, ReadingError, refusal
from jigs.ground.lengths import parse_length
from jigs.reading.stream import read_whole

LARGEST = 2_000_000
"""Bytes a job file may have: a kitchen has a few thousand."""

LONGEST_LINE = 2_000
MOST_DOTS = 100
"""Characters and dots of one line: longer dotted keys would take the reader minutes."""

MOST_SLIPS = 20

_LINE = r"\(at line (\d+), column (\d+)\)"
_PAIR = r"(?P<head>\s*[A-Za-z0-9_.\"'-]+\s*=\s*)(?P<value>[^#]*?)(?P<tail>\s*(?:#.*)?)"
_NAME = (
    r"(?P<head>\s*\[{0,2}\s*)(?P<name>[^\s\[\]=\"'#][^\[\]=\"'#]*?)"
    r"(?P<tail>\s*[\]=].*)"
)
_TEXT = r"[“”„‘’‚«»'\"]?(?P<text>[^\W\d_][^\[\]{}=,\"'“”„‘’‚«»]*)[“”„‘’‚«»'\"]?"
_TEXT_QUOTED = 'a text stands between straight quotes, "'
_SMALL = "true and false are written in small letters"
_LENGTH_QUOTED = "a length stands between quotes"
_UNIT_QUOTED = "its unit stands between the quotes too"
_UNIT_BEHIND = (
    r"(?P<head>[^#]*?)([\"'])(?P<length>[0-9][^\"']*)\2\s*(?P<unit>mm|cm|m|in|ft)\b(?P<tail>.*)"
)
"""A length between quotes with its unit behind them."""
_NAME_QUOTED = "a name with letters other than A to Z stands between quotes"
_DOUBLED = r"\"(?P<length>[0-9][^\"]*)\"\""
_HEADING = r"\s*\[{1,2}(?P<name>[^\[\]]+)\]{1,2}\s*(?:#.*)?"
_TWICE = ("Cannot overwrite", "Cannot declare")
"""How the library begins where a key or a table is given a second time."""
_LISTS = frozenset(
    ("box", "box.front", "box.front.hole", "box.hole", "box.rollout", "box.shelf", "wall",
     "wall.appliance")
)  # fmt: skip
"""Tables that a job may have several of, each below its own `[[...]]`."""


def read_text(path: Path) -> str:
    """Read a UTF-8 file without its byte-order mark. Raises ReadingError if that cannot be."""
    try:
        if path.is_dir():
            raise refusal(path, "is a folder; a job file (.toml) is wanted")
        if not path.exists():
            raise refusal(path, "no such file")
        content = read_whole(path, LARGEST)
        if len(content) > LARGEST:
            raise refusal(path, f"too large; at most {LARGEST} bytes are read")
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise refusal(path, f"cannot be read: {reason}") from error
    if b"\0" in content[:4096] and not content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise refusal(path, "not a text file; a job file is TOML, written in UTF-8")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise refusal(f"{path}:{line}", "not written in UTF-8; save the file as UTF-8") from error
    if not text.strip():
        raise refusal(path, "is empty; a job file has at least schema = 1 and one [[box]]")
    text = text.replace("\r\n", "\n")
    for number, line_text in enumerate(text.split("\n"), start=1):
        if len(line_text) > LONGEST_LINE or line_text.count(".") > MOST_DOTS:
            what = (
                f"line too long ({len(line_text)} characters, {line_text.count('.')} dots); "
                f"at most {LONGEST_LINE} characters and {MOST_DOTS} dots are read"
            )
            raise refusal(f"{path}:{number}", what)
    return text


def parse_toml(text: str, file: str) -> dict[str, Any]:
    """Give the values of a document, decimals exact. Raises ReadingError with every slip."""
    faults: list[Fault] = []
    while True:
        try:
            data = tomllib.loads(text, parse_float=Decimal)
        except (ValueError, RecursionError, ArithmeticError) as error:
            found = re.search(_LINE, str(error))
            # The reader names no line for a fault at the very end.
            line = int(found[1]) if found else max(1, text.rstrip("\n").count("\n") + 1)
            given, corrected, reason = _correct(text, line)
            if corrected is None or str(error).startswith(_TWICE):
                faults.append(Fault(f"{file}:{line}", _describe(error, given)))
                raise ReadingError(faults) from error
            faults.append(
                Fault(
                    f"{file}:{line}",
                    f"not TOML ({given.strip()} given); {reason}, write: {corrected.strip()}",
                )
            )
            if len(faults) >= MOST_SLIPS:
                raise ReadingError(faults) from error
            lines = text.split("\n")
            lines[line - 1] = corrected
            text = "\n".join(lines)
        else:
            if faults:
                raise ReadingError(faults)
            return data


def _describe(error: Exception, given: str) -> str:
    if isinstance(error, RecursionError):
        return "not TOML: nested too deep"
    reason = re.sub(_LINE, "", str(error)).replace("(at end of document)", "at the end").strip()
    shown = given.strip() if len(given) <= 80 else given.strip()[:77] + "..."
    if reason.startswith(_TWICE):
        heading = re.fullmatch(_HEADING, given)
        name = heading["name"].strip() if heading else given.split("=")[0].strip()
        if heading and name in _LISTS:
            several = f"'{name}' given more than once ({shown} given)"
            return f"not TOML: {several}; write [[{name}]] for each"
        return f"not TOML: '{name[:40]}' given above already ({shown} given); leave one of them"
    return f"not TOML: {reason[:200]} ({shown} given)"


def _correct(text: str, number: int) -> tuple[str, str | None, str]:
    """Give a faulty line and, if a usual slip explains the fault, how it should read, and why."""
    lines = text.split("\n")
    line = lines[number - 1] if number <= len(lines) else ""
    if len(line) > 400:
        return line, None, ""
    name = re.fullmatch(_NAME, line)
    if name and not name["name"].isascii():
        quoted = ".".join(
            part if part.isascii() else f'"{part.strip()}"' for part in name["name"].split(".")
        )
        return line, _if_valid(f"{name['head']}{quoted}{name['tail']}"), _NAME_QUOTED
    behind = re.fullmatch(_UNIT_BEHIND, line)
    if behind:
        length = _quote(f"{behind['length']} {behind['unit']}")
        return line, _if_valid(f"{behind['head']}{length}{behind['tail']}"), _UNIT_QUOTED
    pair = re.fullmatch(_PAIR, line)
    if pair and _is_length(pair["value"]):
        corrected = f"{pair['head']}{_quote(pair['value'])}{pair['tail']}"
        return line, _if_valid(corrected), _LENGTH_QUOTED
    word = re.fullmatch(_TEXT, pair["value"]) if pair else None
    if pair and pair["value"].lower() in ("true", "false"):
        return line, _if_valid(f"{pair['head']}{pair['value'].lower()}{pair['tail']}"), _SMALL
    if pair and word:
        corrected = f'{pair["head"]}"{word["text"].strip()}"{pair["tail"]}'
        return line, _if_valid(corrected), _TEXT_QUOTED
    corrected = re.sub(_DOUBLED, lambda found: _quote(found["length"] + '"'), line)
    return line, _if_valid(corrected) if corrected != line else None, _LENGTH_QUOTED


def _quote(length: str) -> str:
    """Write a length as a TOML string; single quotes where it has an inch mark and no foot's."""
    length = length.strip()
    if '"' not in length:
        return f'"{length}"'
    if "'" not in length:
        return f"'{length}'"
    return '"' + length.replace('"', " in").replace("'", " ft") + '"'


def _is_length(value: str) -> bool:
    try:
        parse_length(value, "mm", signed=True)
    except LengthError:
        return False
    return True


def _if_valid(line: str) -> str | None:
    try:
        tomllib.loads(line)
    except ValueError:
        return None
    return line
