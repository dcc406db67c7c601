"""No logic looks at words: what is decided hangs on values, and another language would decide so
too.

A method that searches or cuts a text, a comparison, a search for one text in another: none of
them has a literal with a capital or with words in it, and none has a finding's text before it.
"""

import ast
import re
from collections.abc import Iterator, Sequence

import pytest

from tests.rooms import ROOT, nodes_of

CUTS = {
    "startswith", "endswith", "removeprefix", "removesuffix", "replace", "split", "rsplit",
    "partition", "rpartition", "find", "rfind", "index", "rindex", "count", "splitlines",
    "translate", "strip", "lstrip", "rstrip",
}  # fmt: skip
"""Methods that find something in a text, or cut it."""
LOOKUPS = {"find", "rfind", "index", "rindex", "count"}
"""Those of them that look a key up in other values too."""
SEARCHES = {"match", "fullmatch", "search", "sub", "split", "findall", "finditer", "compile"}
"""Functions of `re` that do."""
TOLD = {"text", "fact", "remedy"}
"""What a finding says in words."""

ALLOWED: dict[str, tuple[str, set[str]]] = {
    "cli/output.py": ("how names of files end", {".marks.sqlite", "-wal", "-shm"}),
    "cli/serving/access.py": ("methods of HTTP", {"GET", "HEAD"}),
    "cli/serving/site.py": ("a method of HTTP", {"HEAD"}),
    "jigs/given/ids.py": (
        "the ends of IDs, which the tool itself gives, in any language",
        {"SIDE", "BOTTOM", "TOP", "STRETCHER", "BACK", "NAILER", "SHELF", "PARTITION", "RAIL",
         "FIXED", "BLIND", "FILLER", "PANEL", "TOE", "ROLLOUT"},
    ),
    "jigs/ground/latin.py": (
        "the scripts in the names of characters (Unicode)",
        {"LATIN ", "GREEK ", "CYRILLIC ", "ARMENIAN ", "GEORGIAN "},
    ),
    "jigs/ground/lengths.py": (
        "what the grammar of lengths refuses, and a unit", {"nan", "inf", "inch"},
    ),
    "jigs/reading/headings.py": (
        "keys of columns", {"edge radius", "hinges at", "bored tab", "pull side"},
    ),
    "jigs/reading/listcells.py": ("signs between two sizes", {" x", " ("}),
    "jigs/reading/listrows.py": (
        "keys of columns, and the cell of a date, which comes from another process as text",
        {" 2", "width", "height", "a date or time"},
    ),
    "jigs/reading/tables.py": ("a mark that names the separator", {'" '}),
    "jigs/reading/tomltext.py": (
        "the library's own message, and units in a corrected line",
        {"(at end of document)", "at the end", "Cannot overwrite", "Cannot declare", " ft", " in"},
    ),
    "jigs/reading/workbook_reader.py": (
        "the name of a library's error, and names of ECMA-376",
        {"PasswordError", "cellXfs", "/comments"},
    ),
    "templates/cards/outlines.py": ("the key of a face of a drawer box", {"box-"}),
    "templates/page/typeface.py": (
        "classes of characters, signs that no text ends with before its dots, and the x that is "
        "printed as the sign for times",
        {"C", "Cc", "Cf", "Mn", "Me", " ,;:/-(", " x "},
    ),
    "templates/words/wallwords.py": (
        "the word that the person may have said too, and letters of one script",
        {"WALL", "ήΉ", "GREEK", "ιυΙΥ"},
    ),
    "templates/writers/pdf.py": ("operators of the format", {" l ", " m "}),
    "cli/drawing.py": ("the ending of a file", {".svg"}),
    "templates/writers/svg.py": ("classes of characters", {"Cc", "Cf", "Cs", "Co", "Cn"}),
}  # fmt: skip
"""Where a literal has a capital or words all the same: why, and which."""


Nodes = Sequence[ast.AST]
"""All that a module consists of, itself first."""


def modules() -> Iterator[tuple[str, Nodes]]:
    for package in ("jigs", "templates", "cli"):
        for path in sorted((ROOT / package).rglob("*.py")):
            yield path.relative_to(ROOT).as_posix(), nodes_of(path)


def nodes_in(text: str) -> Nodes:
    return [*ast.walk(ast.parse(text))]


def constants(nodes: Nodes) -> dict[str, ast.expr]:
    """Give what the names of a module stand for, where that is said at its top level."""
    found: dict[str, ast.expr] = {}
    assert isinstance(nodes[0], ast.Module)
    for node in nodes[0].body:
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            found[node.targets[0].id] = node.value
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.value:
            found[node.target.id] = node.value
    return found


def literals(node: ast.expr, known: dict[str, ast.expr]) -> Iterator[str]:
    """Give the texts that an expression is made of: a literal, a tuple, a constant's."""
    if isinstance(node, ast.Name) and node.id in known:
        yield from literals(known[node.id], {})
    elif isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.Tuple | ast.List | ast.Set | ast.JoinedStr):
        for each in node.elts if not isinstance(node, ast.JoinedStr) else node.values:
            yield from literals(each, known)


def is_words(text: str) -> bool:
    """Tell words from a key or a sign: a capital, or a space beside other signs."""
    return text != text.lower() or (" " in text and bool(text.strip()))


def is_cut_by(node: ast.AST, text: str) -> bool:
    """Tell whether a text is cut where a word stands, keys and words without capitals too."""
    return (
        isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr not in LOOKUPS
        and re.search("[a-z]{3}", text) is not None
    )


def looked_at(node: ast.AST) -> list[ast.expr]:
    """Give the expressions that a text is searched for, or compared with."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        return node.args if node.func.attr in CUTS else []
    if isinstance(node, ast.Compare):
        return [node.left, *node.comparators]
    if isinstance(node, ast.MatchValue):
        return [node.value]
    return []


def string_logic(nodes: Nodes) -> Iterator[tuple[int, str]]:
    known = constants(nodes)
    for node in nodes:
        for each in looked_at(node):
            for text in literals(each, known):
                if is_words(text) or is_cut_by(node, text):
                    yield getattr(node, "lineno", 0), text


def findings_read(nodes: Nodes) -> Iterator[int]:
    """Give the lines that search, cut or compare a finding's text."""
    for node in nodes:
        read: list[ast.expr] = []
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            if node.func.attr in CUTS:
                read = [node.func.value]
            elif isinstance(node.func.value, ast.Name) and node.func.attr in SEARCHES:
                read = node.args
        elif isinstance(node, ast.Compare):
            read = [node.left, *node.comparators]
        elif isinstance(node, ast.Subscript):
            read = [node.value]
        for each in read:
            if isinstance(each, ast.Attribute) and each.attr in TOLD:
                yield each.lineno


def test_no_logic_looks_at_words() -> None:
    """What has to be told from another has a value that says so."""
    found: dict[str, set[str]] = {}
    for name, nodes in modules():
        if texts := {text for _, text in string_logic(nodes)}:
            found[name] = texts
    assert found == {name: texts for name, (_, texts) in ALLOWED.items()}


def test_no_logic_looks_at_a_findings_text() -> None:
    """A finding has a code; its sentence is printed, never searched, cut or compared."""
    found = {name for name, nodes in modules() if any(findings_read(nodes))}
    assert not found


def sentences(nodes: Nodes) -> Iterator[str]:
    """Give the texts of three words and more that a module makes, but for what it asserts."""
    asserted = {id(each) for node in nodes if isinstance(node, ast.Assert)
                for each in ast.walk(node)}  # fmt: skip
    told = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    yield from (
        node.value
        for node in nodes
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
        and id(node) not in asserted | told
        and len(re.findall("[A-Za-z]{2,}", node.value)) > 2 and len(node.value.split()) > 2
    )  # fmt: skip


FAULTS = (
    "jigs/reading/", "jigs/asking/", "jigs/ground/", "jigs/given/", "jigs/room/depth.py",
    "jigs/room/screws.py",
    "jigs/order/matching.py", "jigs/order/naming.py", "jigs/order/taking.py",
    "jigs/changes/keeping.py", "jigs/bench/workplan.py",
)  # fmt: skip
"""Where a fault of reading, or of the tool itself, is told as it is found; what keys are called."""
SOURCES = {"EN 1116, second hand", "KCMA A161.1, second hand"}


def test_the_trade_makes_no_sentences() -> None:
    """What it computes is a value; `templates/words` says it."""
    found: dict[str, set[str]] = {}
    for name, nodes in modules():
        if name.startswith("jigs/") and not name.startswith(FAULTS):
            texts = {text for text in sentences(nodes) if not text.isupper()} - SOURCES
            found |= {name: texts} if texts else {}
    assert found == {}


@pytest.mark.parametrize(
    "line",
    [
        "text.startswith('INCOMPLETE')",
        "BEGINS = ('Gaps:', 'Finish:')\ntext.startswith(BEGINS)",
        "text.replace('DRAWER BOX', 'DRAWER')",
        "'drawer boxes' in text",
        "near.startswith('did')",
        "kind == 'DOOR'",
        "note.split(', ')[0] if note.endswith('FROM TOP') else note",
    ],
)
def test_the_search_finds_what_it_is_for(line: str) -> None:
    """Lines such as have stood here."""
    assert list(string_logic(nodes_in(line)))


@pytest.mark.parametrize(
    "line",
    ["said.fact.startswith(start)", "name in said.fact", "problem.text[:20]",
     "re.search(pattern, said.remedy)", "said.fact == other.fact"],
)  # fmt: skip
def test_the_search_finds_who_reads_a_finding(line: str) -> None:
    """Searched, sliced, compared."""
    assert list(findings_read(nodes_in(line)))


@pytest.mark.parametrize("line", ["key.partition('.')", "text.split(' ')", "kind == 'door'"])
def test_keys_and_signs_are_no_words(line: str) -> None:
    """A key is a value, a space parts words in any language."""
    assert not list(string_logic(nodes_in(line)))
