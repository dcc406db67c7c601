"""The layers: cli reads, calls and writes; templates prints; jigs knows the trade."""

import ast
import re
import sys
import tomllib
from functools import cache
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

from tests.rooms import ROOMS, find_arrows, find_upward, nodes_of, tree_of

ROOT = Path(__file__).parents[1]
LAYERS = ("jigs", "templates", "cli")
"""From the bottom up: a layer may import itself and those before it."""


def modules(layer: str) -> list[Path]:
    return sorted((ROOT / layer).rglob("*.py"))


@cache
def imports(path: Path) -> tuple[tuple[str, int], ...]:
    """Give the full name of every module that a file uses, and the line."""
    found: list[tuple[str, int]] = []
    for node in nodes_of(path):
        if isinstance(node, ast.Import):
            found += ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: a relative import"
            found.append((node.module or "", node.lineno))
        elif (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id in {"files", "find_spec"}
        ):
            # A package that is data alone is opened by its name.
            [package] = node.args
            if isinstance(package, ast.Constant):
                found.append((str(package.value), node.lineno))
    return tuple(found)


def dotted(node: ast.expr) -> str:
    """Give the name that is called, as it is written: `sys.stdout.write`."""
    match node:
        case ast.Name():
            return node.id
        case ast.Attribute():
            return f"{dotted(node.value)}.{node.attr}"
    return ""


def top(name: str) -> str:
    return name.partition(".")[0]


def users_of_third_parties() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for layer in LAYERS:
        for path in modules(layer):
            for name, _ in imports(path):
                if top(name) not in sys.stdlib_module_names and top(name) not in LAYERS:
                    found.setdefault(top(name), set()).add(path.relative_to(ROOT).as_posix())
    return found


@pytest.mark.parametrize("layer", LAYERS)
def test_imports_go_one_way(layer: str) -> None:
    """jigs imports neither templates nor cli, templates never imports cli."""
    above = LAYERS[LAYERS.index(layer) + 1 :]
    wrong = [
        f"{path.relative_to(ROOT)}:{line}: {name}"
        for path in modules(layer)
        for name, line in imports(path)
        if top(name) in above
    ]
    assert wrong == []


@pytest.mark.parametrize("package", ROOMS)
def test_a_room_imports_only_those_before_it(package: str) -> None:
    """Whoever looks for a thing finds it by its room, and reads in one direction."""
    folders = {path.name for path in (ROOT / package).iterdir() if any(path.glob("*.py"))}
    assert folders - {"demo"} == set(ROOMS[package])
    assert list((ROOT / package).glob("[!_]*.py")) == []
    assert find_upward(package) == set()


@pytest.mark.parametrize("package", ROOMS)
def test_few_rooms_know_of_each_other(package: str) -> None:
    """A new arrow from room to room is a thing that stands in the wrong one, or has to replace
    another. In `jigs` eight of them are those of `changes`, which keeps what all others make."""
    assert len(find_arrows(package)) <= 45


def test_a_plan_says_nothing_and_a_check_plans_nothing() -> None:
    """Findings are made in the checks, and where wishes go from front to front, before boxes are
    laid out; what plans a box makes none."""
    makers = {
        path.parent.name
        for path in modules("jigs")
        for node in nodes_of(path)
        if isinstance(node, ast.ImportFrom) and node.module == "jigs.ground.problems"
        if {alias.name for alias in node.names} & {"error", "warning"}
    }
    assert makers == {"checks", "layout"}
    planners = {"plan_box", "plan_door", "plan_drawers", "plan_rollouts", "fit_front", "set_pulls"}
    asked = {
        path.stem
        for path in (ROOT / "jigs/checks").glob("*.py")
        for node in nodes_of(path)
        if isinstance(node, ast.Name) and node.id in planners
    }
    assert asked == set()


def test_each_third_party_library_has_one_user() -> None:
    """A library stands behind one module; but all values are structs of msgspec, and click is the
    whole command line's."""
    users = users_of_third_parties()
    click_users = users.pop("click", set())
    del users["msgspec"]
    assert all(path.startswith("cli/") for path in click_users)
    assert {name: paths for name, paths in users.items() if len(paths) > 1} == {}


def test_what_is_imported_is_declared_and_the_other_way_round() -> None:
    """Every library that is imported is a dependency, every dependency is imported."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    declared = {
        re.split(r"[^A-Za-z0-9_.-]", line, maxsplit=1)[0].lower().replace("_", "-")
        for line in project["dependencies"]
    }
    owners = packages_distributions()
    imported = {
        owner.lower().replace("_", "-")
        for name in users_of_third_parties()
        for owner in owners.get(name, [name])
    }
    assert declared - imported == set()
    for name in users_of_third_parties():
        own = {owner.lower().replace("_", "-") for owner in owners.get(name, [name])}
        assert own & declared, f"{name} is imported but not declared"


def test_the_trade_neither_prints_nor_exits() -> None:
    """jigs and templates hand values back; only cli writes to the terminal or ends the run.

    A module that is a process of its own answers its parent on standard output.
    """
    wrong = []
    for layer in ("jigs", "templates"):
        for path in modules(layer):
            if 'if __name__ == "__main__":' in path.read_text(encoding="utf-8"):
                continue
            for node in nodes_of(path):
                if not isinstance(node, ast.Call) or not isinstance(
                    node.func, ast.Name | ast.Attribute
                ):
                    continue
                called = dotted(node.func)
                if called in {"print", "input", "exit", "quit", "sys.exit", "os._exit"} or (
                    called.startswith(("sys.stdout", "sys.stderr"))
                ):
                    wrong.append(f"{path.relative_to(ROOT)}:{node.lineno}: {called}")
    assert wrong == []


def test_the_command_line_loads_little_at_first() -> None:
    """At module level cli imports click, what values are made of, itself and the standard library,
    nothing slow."""
    light = {"click", "cli", "jigs.ground.errors", "jigs", "msgspec", "msgspec.structs"}
    wrong = []
    for path in modules("cli"):
        tree = tree_of(path)
        for node in tree.body:
            names = (
                [alias.name for alias in node.names]
                if isinstance(node, ast.Import)
                else [node.module or ""]
                if isinstance(node, ast.ImportFrom)
                else []
            )
            wrong += [
                f"{path.relative_to(ROOT)}:{node.lineno}: {name}"
                for name in names
                if name not in light
                and top(name) not in {"click", "cli"}
                and top(name) not in sys.stdlib_module_names
            ]
    assert wrong == []


def test_a_name_means_one_thing() -> None:
    """Who reads `Row` need not ask of which module: a value has its name alone. What two modules
    have word for word is one thing; a name with a line before it stays in its module."""
    found: dict[str, set[str]] = {}
    for layer in LAYERS:
        for path in modules(layer):
            for node in tree_of(path).body:
                if isinstance(node, ast.ClassDef):
                    found.setdefault(node.name, set()).add(path.as_posix())
                elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
                    name = node.targets[0].id
                    if name[0].isupper() and not name.isupper():
                        found.setdefault(name, set()).add(ast.unparse(node.value))
    assert {name: each for name, each in found.items() if len(each) > 1 and name[0] != "_"} == {}


def test_what_is_replaced_is_a_field_of_some_value() -> None:
    """`replace` takes any name, and the type checker lets it: one that no value has is a fault that
    only shows when it is run."""
    paths = [path for layer in LAYERS for path in modules(layer)]
    known = {
        line.target.id
        for path in paths
        for node in nodes_of(path)
        if isinstance(node, ast.ClassDef)
        for line in node.body
        if isinstance(line, ast.AnnAssign) and isinstance(line.target, ast.Name)
    }
    wrong = [
        f"{path.relative_to(ROOT)}:{node.lineno}: {word.arg}"
        for path in paths
        for node in nodes_of(path)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        if node.func.id == "replace"
        for word in node.keywords
        if word.arg is not None and word.arg not in known
    ]
    assert wrong == []


def test_modules_stay_short() -> None:
    """No module is over 400 lines: a longer one holds two concepts."""
    long = {
        path.relative_to(ROOT).as_posix(): count
        for layer in (*LAYERS, "tests")
        for path in modules(layer)
        if (count := len(path.read_text(encoding="utf-8").splitlines())) > 400
    }
    assert long == {}
