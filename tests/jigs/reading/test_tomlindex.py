"""The lines of a TOML document's keys."""

import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.ground.believable import KeyPath, write_path
from jigs.reading.tomlindex import find_line, index_lines


@pytest.mark.parametrize(
    ("text", "path", "line"),
    [
        ("a = 1\nb = 2\n", ("b",), 2),
        ("# one\n\n[t]\nb = 2\n", ("t", "b"), 4),
        ("[t.u]\nb = 2\n", ("t", "u"), 1),
        ("[[box]]\n[[box]]\nid = 1\n", ("box", 2, "id"), 3),
        ("[[box]]\n[[box.front]]\n[[box.front]]\nk = 1\n", ("box", 1, "front", 2, "k"), 4),
        ("[[box]]\n[box.sub]\nk = 1\n", ("box", 1, "sub", "k"), 3),
        ("a = [\n 1,\n 2, # ]\n 3]\nb = 1\n", ("a", 3), 4),
        ("a = [\n 1,\n 2, # ]\n 3]\nb = 1\n", ("b",), 5),
        ("a = [[1, 2],\n[3, 4]]\n", ("a", 2, 1), 2),
        ('a = """\nx = 1\n"""\nb = 1\n', ("b",), 4),
        ("a = '''\n[t]\n'''\nb = 1\n", ("b",), 4),
        ("c = {x = 1, y = {z = 2}}\n", ("c", "y", "z"), 1),
        ('"a b".c = 1\n', ("a b", "c"), 1),
        ("box = [\n {id = 1},\n {id = 2}]\n", ("box", 2, "id"), 3),
    ],
)
def test_index_lines(text: str, path: KeyPath, line: int) -> None:
    """Each key, table and element has the line it begins on."""
    tomllib.loads(text)
    assert index_lines(text)[path] == line


def test_find_line_falls_back_on_what_is_around() -> None:
    """A key that is missing stands at its table."""
    assert find_line(index_lines("a = 1\n[t]\n"), ("t", "missing")) == 2


def test_write_path() -> None:
    """A path is written with its places in brackets, from 1."""
    assert write_path(("box", 2, "front", 1, "height")) == "box[2].front[1].height"


@settings(max_examples=150)
@given(st.text(alphabet="[]{}=,.\"'#\n\\ ab1", max_size=60))
def test_index_lines_ends_on_anything(text: str) -> None:
    """Indexing any text ends, and no line lies outside the text."""
    assert all(1 <= line <= text.count("\n") + 1 for line in index_lines(text).values())


KEYS = st.sampled_from(["a", "b", "c d", "e.f"])
VALUES: st.SearchStrategy[object] = st.recursive(
    st.integers(0, 9) | st.sampled_from(["x", "]", "#", "}\n"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(KEYS, inner, max_size=3),
    max_leaves=8,
)


def write(value: object) -> str:
    """Write a value as TOML, on one line but for lists."""
    if isinstance(value, dict):
        return "{" + ", ".join(f'"{k}" = {write_flat(v)}' for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[\n" + ",\n".join(write(item) for item in value) + "\n]"
    return write_flat(value)


def write_flat(value: object) -> str:
    """Write a value as TOML on one line."""
    if isinstance(value, dict):
        return write(value)
    if isinstance(value, list):
        return "[" + ",".join(write_flat(item) for item in value) + "]"
    return '"' + value.replace("\n", "\\n") + '"' if isinstance(value, str) else str(value)


def paths(value: object, path: KeyPath = ()) -> set[KeyPath]:
    """All paths in a value, itself included."""
    found = {path}
    if isinstance(value, dict):
        for key, item in value.items():
            found |= paths(item, (*path, key))
    if isinstance(value, list):
        for place, item in enumerate(value, start=1):
            found |= paths(item, (*path, place))
    return found


@settings(max_examples=100)
@given(st.dictionaries(KEYS, VALUES, max_size=4))
def test_index_knows_every_path_the_reader_knows(values: dict[str, object]) -> None:
    """The index has exactly the paths that the standard reader gives."""
    text = "".join(f'"{key}" = {write(value)}\n' for key, value in values.items())
    assert set(index_lines(text)) == paths(tomllib.loads(text)) - {()}
