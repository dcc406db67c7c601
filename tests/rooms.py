"""Measure the rooms of jigs/: how many, the arrows between them, and imports that go upward.

`python -m tests.rooms` prints the measure; `tests/test_layers.py` holds the order.
"""

import ast
from pathlib import Path

JIGS = Path(__file__).parents[1] / "jigs"
ROOMS = (
    "ground", "given", "fittings", "reading", "box", "cutlist", "room", "checks", "layout",
    "order", "bench",
)  # fmt: skip
"""From the top down: a room imports only those before it."""

Import = tuple[str, str]
"""Two modules by their full names: the one that imports, and the one that is imported."""


def list_imports() -> set[Import]:
    """Give every import of one module of jigs/ by another."""
    modules = {
        ".".join(("jigs", *path.relative_to(JIGS).with_suffix("").parts)): path
        for path in JIGS.rglob("*.py")
    }
    found: set[Import] = set()
    for name, path in modules.items():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                for alias in node.names:
                    below = f"{node.module}.{alias.name}"
                    used = below if below in modules else node.module
                    if used in modules:
                        found.add((name, used))
    return found


def room_of(module: str) -> str:
    """Name the room of a module: `jigs.box.doors` stands in `box`."""
    return module.split(".")[1]


def find_arrows(imports: set[Import]) -> set[tuple[str, str]]:
    """Give each pair of rooms of which the first imports the second."""
    pairs = {(room_of(one), room_of(other)) for one, other in imports}
    return {(one, other) for one, other in pairs if one != other}


def find_upward(imports: set[Import]) -> set[Import]:
    """Give the imports of a module in a room further down."""
    return {
        (one, other)
        for one, other in imports
        if ROOMS.index(room_of(one)) < ROOMS.index(room_of(other))
    }


def main() -> None:
    """Print the measure."""
    imports = list_imports()
    arrows, upward = find_arrows(imports), find_upward(imports)
    print(f"{len(ROOMS)} rooms, {len(arrows)} arrows, {len(upward)} imports upward")
    for one, other in sorted(upward):
        print(f"  {one} -> {other}")


if __name__ == "__main__":
    main()
