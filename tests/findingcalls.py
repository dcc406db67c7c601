"""The calls that state a finding, read from the source: level, code, case, and what is given."""

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import get_args

from jigs.checks.faces import Waiting
from jigs.fittings.placing import Obstacle
from jigs.given.job import Overlay
from tests.rooms import tree_of

ROOT = Path(__file__).parents[1]
STATERS = ("error", "warning")
LITERALS = {"hung": Overlay, "obstacle": Obstacle, "where": Waiting}
"""Cases that are a value's own: the words that it may be, by its name."""

Assigned = Mapping[str, list[ast.expr]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """One way in which a finding is stated in a line; `values`: the names of what it tells."""

    line: int
    level: str
    code: str
    case: str
    values: frozenset[str]


def stated_in(tree: ast.Module) -> Iterator[Stated]:
    """Give each way in which a module states a finding."""
    imported = {
        alias.name
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and node.module == "jigs.ground.problems"
        for alias in node.names
    }
    if not imported & set(STATERS):
        return
    own = _assigned(tree.body)
    inside = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]
    told: set[ast.Call] = set()
    for scope in (*inside, tree):
        names = {**own, **_assigned([*ast.walk(scope)])} if scope is not tree else own
        for node in ast.walk(scope):
            if isinstance(node, ast.Call) and node not in told:
                levels = [] if isinstance(node.func, ast.Attribute) else _levels(node.func, names)
                told |= {node} if levels else set()
                for level in levels:
                    yield from _ways(level, node, names)


def _assigned(nodes: list[ast.AST] | list[ast.stmt]) -> dict[str, list[ast.expr]]:
    found: dict[str, list[ast.expr]] = {}
    for node in nodes:
        targets = node.targets if isinstance(node, ast.Assign) else []
        if isinstance(node, ast.AnnAssign):
            targets = [node.target]
        for target in targets:
            if isinstance(target, ast.Name) and isinstance(node, ast.Assign | ast.AnnAssign):
                found.setdefault(target.id, []).extend([node.value] if node.value else [])
    return found


def _levels(func: ast.expr, names: Assigned) -> list[str]:
    match func:
        case ast.Name(id=name) if name in STATERS:
            return [name]
        case ast.IfExp(body=body, orelse=orelse):
            return [*_levels(body, names), *_levels(orelse, names)]
        case ast.Name(id=name) if name in names:
            return [level for value in names[name] for level in _levels(value, names)]
        case _:
            return []


def _ways(level: str, call: ast.Call, names: Assigned) -> Iterator[Stated]:
    given = {keyword.arg: keyword.value for keyword in call.keywords if keyword.arg}
    values = frozenset(given.keys() - {"case", "also"})
    cases = [*words(given["case"], names)] if "case" in given else [""]
    for code in words(call.args[0], names):
        for case in cases:
            yield Stated(line=call.lineno, level=level, code=code, case=case, values=values)


def words(expr: ast.expr, names: Assigned) -> Iterator[str]:
    """The words that an expression may be: one, one of two, what a name was set to."""
    match expr:
        case ast.Constant(value=str(word)):
            yield word
        case ast.IfExp(body=body, orelse=orelse):
            yield from words(body, names)
            yield from words(orelse, names)
        case ast.Name(id=name) | ast.Attribute(attr=name) if name in LITERALS:
            yield from get_args(LITERALS[name])
        case ast.Name(id=name) if name in names:
            for value in names[name]:
                yield from words(value, names)
        case ast.Subscript(value=ast.Name(id=name)) if name in names:
            for table in names[name]:
                for value in table.values if isinstance(table, ast.Dict) else []:
                    yield from words(value, names)
        case _:
            raise AssertionError(f"line {expr.lineno}: the code of a finding cannot be read")


@cache
def all_stated() -> frozenset[Stated]:
    """Each way in which the project states a finding."""
    paths = [
        path
        for path in (ROOT / "jigs").rglob("*.py")
        if "jigs.ground.problems" in path.read_text(encoding="utf-8")
    ]
    return frozenset(each for path in paths for each in stated_in(tree_of(path)))
