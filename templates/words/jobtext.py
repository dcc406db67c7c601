"""A draft as the text of a job file: each key with what it is, what is not known yet behind a #.

>>> print(toml_value("18' 6\\""), toml_value(("0 mm", "3 mm")), toml_value(True))
"18' 6\\"" ["0 mm", "3 mm"] true
"""

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from jigs.asking.draft import Draft, DraftLine, DraftTable, DraftValue

BESIDE = 33
"""Where what stands beside a key begins, where the key leaves room; characters."""

HEAD = """\
# {name}: a job of jigsheet. Each key says what it is; jigs/JOBFILE.md explains them all.
#
# A length is written as you say it: "15 3/4", "3/4", "396.9 mm"; keep the quotes. A line that
# begins with a # is NOT SAID yet, and shows what is usual: where you know it, write it and take
# that # away.
#
# What no job file decides: building, gas, water and electrical code, and what an appliance's own
# instructions ask for. Range, oven, hood, dishwasher and sockets belong to licensed trades. Wall
# boxes want studs or solid blocking and two people; tall units are fixed before they are loaded.
"""


@cache
def _comments() -> Mapping[str, Mapping[str, str]]:
    text = (Path(__file__).parents[1] / "words/jobcomments.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def job_text(draft: Draft) -> str:
    """Write a job file."""
    name = next(line.value for line in draft.sections[0].lines if line.key == "name")
    head = HEAD.format(name=" ".join(_shown(str(name)).split()))
    blocks = [head, _block(draft.sections[0])]
    if draft.listed_by:
        blocks.append(draft.listed_by.rstrip("\n"))
    blocks += [_block(section) for section in draft.sections[1:]]
    return "\n".join(f"{block}\n" if not block.endswith("\n") else block for block in blocks)


def toml_value(value: DraftValue) -> str:
    """Write a value as TOML has it."""
    match value:
        case bool():
            return "true" if value else "false"
        case int():
            return str(value)
        case str():
            return f'"{_escaped(value)}"'
        case tuple():
            return f"[{', '.join(map(toml_value, value))}]"
    pairs = ", ".join(f"{key} = {toml_value(each)}" for key, each in value.items())
    return f"{{ {pairs} }}"


def _key(name: str) -> str:
    """Write a key, in quotes where a bare one may not be so (TOML 1.0.0, Keys)."""
    return name if re.fullmatch("[A-Za-z0-9_-]+", name) else toml_value(name)


def _escaped(text: str) -> str:
    """Write what a basic string of TOML does not take as it is (TOML 1.0.0, String)."""
    known = {'"': '\\"', "\\": "\\\\"}
    text = text.encode(errors="replace").decode()
    return "".join(
        known.get(letter) or (letter if letter.isprintable() else f"\\U{ord(letter):08X}")
        for letter in text
    )


def _shown(text: str) -> str:
    """Leave out what would end a comment, or is no letter of one."""
    return "".join(letter for letter in text if letter.isprintable())


def _block(section: DraftTable) -> str:
    indent = "  " if "." in section.name and section.many else ""
    hidden = "# " if section.open else ""
    comments = _comments().get(section.name or "top", {})
    lines: list[str] = []
    if section.name:
        name = f"{section.name}.{_key(section.own)}" if section.own else section.name
        header = f"[[{name}]]" if section.many else f"[{name}]"
        head = comments.get("later" if section.open else "head", "")
        lines.append(_beside(f"{indent}{hidden}{header}", head))
    for line in section.lines:
        begun = "# " if section.open or line.open else ""
        text = f"{indent}{begun}{line.key} = {toml_value(line.value)}"
        lines.append(_beside(text, _comment(line, comments)))
    return "\n".join(lines)


def _comment(line: DraftLine, comments: Mapping[str, str]) -> str:
    topic = (line.topic or line.key).rpartition(".")[2]
    said = comments.get(topic, "")
    return said


def _beside(text: str, comment: str) -> str:
    return f"{text:<{BESIDE - 1}} # {comment}" if comment else text
