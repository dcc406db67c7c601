"""The tables of JOBFILE.md, written from the fields that they are about.

`python -m tests.jobfilepage` writes them between their marks; `tests/test_jobfile_page.py` holds
them equal. A key's words are its field's docstring, its range and default stand beside the field.
"""

import ast
import inspect
from functools import cache
from pathlib import Path
from textwrap import dedent

from msgspec import NODEFAULT

from jigs.given.build import Build, Exactness, Paint, RoomAir, Wood
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.job import BoxSpec, FrontSpec, Material, Reveal
from jigs.given.listspec import ListSpec
from jigs.given.stated import (
    Boring,
    DrawerSize,
    FivePieceSpec,
    FrontEdges,
    FrontWords,
    Leaflet,
    OpenedBy,
    RolloutSpec,
)
from jigs.given.wallspec import Appliance, WallSpec
from jigs.ground.keys import FieldKey, keys_of

PAGE = Path(__file__).parents[1] / "jigs" / "JOBFILE.md"
RECORDS: dict[str, type] = {"hinge": HingeRecord, "slide": SlideRecord, "pull": PullRecord}
"""Tables whose values are inherited: what is not said is what the record has that it is like."""
VALUES: dict[str, tuple[type, ...]] = {
    "material": (Material,), "reveal": (Reveal,), "paint": (Paint,), "build": (Build,),
    "list": (ListSpec,), "gaps": (Exactness,), "wood": (Wood,), "room": (RoomAir,),
    "leaflet": (Leaflet,), "wall": (WallSpec,), "wall.appliance": (Appliance,),
    "box": (BoxSpec,), "box.rollout": (RolloutSpec,),
    "box.front": (
        FrontSpec, DrawerSize, FivePieceSpec, FrontEdges, OpenedBy, Boring, FrontWords,
    ),
}  # fmt: skip
"""The values that the keys of a table are read into."""


@cache
def docstrings(values: type) -> dict[str, str]:
    """Give the docstring of each field of a class, as one line."""
    [made] = ast.parse(dedent(inspect.getsource(values))).body
    assert isinstance(made, ast.ClassDef)
    return {
        field.target.id: " ".join(line.value.value.split())
        for field, line in zip(made.body, made.body[1:], strict=False)
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name)
        if isinstance(line, ast.Expr) and isinstance(line.value, ast.Constant)
        if isinstance(line.value.value, str)
    }


def write_table(name: str) -> str:
    """Write one table of the page."""
    made = (RECORDS[name],) if name in RECORDS else VALUES[name]
    heads = ["`" + name + "`", "what it is", "usual", "if not said"]
    rows = [
        [f"`{key}`", docstrings(values)[key].removesuffix("."), _usual(field), _default(field)]
        for values in made
        for key, field in keys_of(values).items()
        if field.key.stated
    ]
    count = 3 if name in RECORDS else 4
    lines = [heads, ["---"] * 4, *rows]
    return "\n".join(f"| {' | '.join(line[:count])} |" for line in lines)


def _usual(field: FieldKey) -> str:
    words = ", ".join(f'`"{word}"`' for word in field.allowed)
    if field.holds == "choice":
        return words
    if field.holds in ("text", "flag"):
        return "in words" if field.holds == "text" else "`true`, `false`"
    within = field.within
    figures = f"{'0, or ' if within.zero else ''}{within.low:g} to {within.high:g}"
    unit = within.unit.replace("mm", "")
    return ", or ".join(part for part in (words, f"{figures} {unit}".strip()) if part)


def _default(field: FieldKey) -> str:
    value = field.default
    if value is NODEFAULT:
        return "must be given"
    if value is None or value is False or value == "":
        return ""
    return f"{value:g}" if isinstance(value, int | float) else f'`"{value}"`'


def write_page(text: str) -> str:
    """Give the page's text with every table between its marks written anew."""
    for name in (*RECORDS, *VALUES):
        start, end = f"<!-- table {name} -->\n", f"\n<!-- end {name} -->"
        before, _, rest = text.partition(start)
        _, found, after = rest.partition(end)
        assert found, f"the marks of {name} are missing"
        text = f"{before}{start}{write_table(name)}{end}{after}"
    return text


if __name__ == "__main__":
    PAGE.write_text(write_page(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
