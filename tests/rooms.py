"""Measure the house: rooms, the arrows between them, how deep they stack, imports that go upward,
modules that import across rooms, modules with one importer, and values of many fields.

`python -m tests.rooms` prints the measure; `tests/test_layers.py` holds the order.
"""

import ast
from collections import Counter
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

ROOT = Path(__file__).parents[1]
ROOMS: dict[str, tuple[str, ...]] = {
    "jigs": (
        "ground", "given", "fittings", "reading", "asking", "box", "cutlist", "room", "checks",
        "layout", "order", "bench", "changes",
    ),
    "templates": (
        "page", "faces", "words", "writers", "cards", "sheets", "strips", "stations",
        "lists", "labels", "elevations", "hardware", "binding", "scan",
    ),
}  # fmt: skip
"""Of each package from the top down: a room imports only those before it."""
MANY_FIELDS = 25

Import = tuple[str, str]
"""Two modules by their full names: the one that imports, and the one that is imported."""


@cache
def tree_of(path: Path) -> ast.Module:
    """Parse a module, once for all that ask."""
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def nodes_of(path: Path) -> tuple[ast.AST, ...]:
    """Give all that a module consists of, walked once for all that ask."""
    return tuple(ast.walk(tree_of(path)))


@cache
def _read(package: str) -> dict[str, Path]:
    """Give every module that stands in a room of a package, by its full name."""
    return {
        ".".join(path.relative_to(ROOT).with_suffix("").parts): path
        for room in ROOMS[package]
        for path in (ROOT / package / room).rglob("*.py")
    }


@cache
def list_imports(package: str) -> frozenset[Import]:
    """Give every import of one module of a package by another, those for types alone too."""
    modules = _read(package)
    found: set[Import] = set()
    for name, path in modules.items():
        for node in nodes_of(path):
            if isinstance(node, ast.ImportFrom) and node.module:
                for alias in node.names:
                    below = f"{node.module}.{alias.name}"
                    used = below if below in modules else node.module
                    if used in modules:
                        found.add((name, used))
    return frozenset(found)


def room_of(module: str) -> str:
    """Name the room of a module: `jigs.box.facework` stands in `box`."""
    return module.split(".")[1]


def find_across(package: str) -> set[Import]:
    """Give the imports from one room of a package into another."""
    return {(one, other) for one, other in list_imports(package) if room_of(one) != room_of(other)}


def find_arrows(package: str) -> set[tuple[str, str]]:
    """Give each pair of rooms of which the first imports the second."""
    return {(room_of(one), room_of(other)) for one, other in find_across(package)}


def find_upward(package: str) -> set[Import]:
    """Give the imports of a module in a room further down."""
    order = ROOMS[package].index
    return {
        (one, other)
        for one, other in list_imports(package)
        if order(room_of(one)) < order(room_of(other))
    }


def find_depth(package: str) -> int:
    """Give the length of the longest chain of modules, each importing the next, upward imports
    left out."""
    below: dict[str, set[str]] = {name: set() for name in _read(package)}
    upward = find_upward(package)
    for one, other in list_imports(package) - upward:
        below[one].add(other)
    deep: dict[str, int] = {}
    for name in TopologicalSorter(below).static_order():
        deep[name] = 1 + max((deep[other] for other in below[name]), default=0)
    return max(deep.values())


def find_single(package: str) -> set[str]:
    """Give the modules that one module alone imports, and that module stands in their room."""
    importers: dict[str, set[str]] = {}
    for one, other in list_imports(package):
        importers.setdefault(other, set()).add(one)
    return {
        name
        for name, users in importers.items()
        if len(users) == 1 and room_of(name) == room_of(next(iter(users)))
    }


def count_fields(package: str) -> dict[str, int]:
    """Give the values that have more than MANY_FIELDS fields, and how many they have."""
    found = {
        f"{name}.{node.name}": sum(isinstance(line, ast.AnnAssign) for line in node.body)
        for name, path in _read(package).items()
        for node in nodes_of(path)
        if isinstance(node, ast.ClassDef)
    }
    return {name: count for name, count in found.items() if count > MANY_FIELDS}


def count_lines() -> int:
    """Give the lines of the product's code, without blanks, comments and docstrings."""
    total = 0
    for package in ("jigs", "templates", "cli"):
        for path in (ROOT / package).rglob("*.py"):
            text = path.read_text(encoding="utf-8")
            words = {
                line
                for node in ast.walk(ast.parse(text))
                if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
                for line in range(node.lineno, (node.end_lineno or node.lineno) + 1)
            }
            total += sum(
                bool(line.strip()) and not line.lstrip().startswith("#") and number not in words
                for number, line in enumerate(text.splitlines(), 1)
            )
    return total


def main() -> None:
    """Print the measure."""
    for package, rooms in ROOMS.items():
        across = Counter(one for one, _ in find_across(package))
        print(
            f"{package}: {len(_read(package))} modules in {len(rooms)} rooms, "
            f"{len(find_arrows(package))} arrows, {find_depth(package)} deep, "
            f"{len(find_upward(package))} imports upward; {len(across)} modules import across "
            f"rooms, {across.total()} times; {len(find_single(package))} have one importer"
        )
        for one, other in sorted(find_upward(package)):
            print(f"  upward: {one} -> {other}")
        for name, count in sorted(count_fields(package).items()):
            print(f"  {count} fields: {name}")
    print(f"{count_lines()} lines of code")


if __name__ == "__main__":
    main()
