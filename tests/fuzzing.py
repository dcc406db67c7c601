"""Damaged input, the same each time from its seed: job files, lists in all codings, workbooks, what
was delivered or measured, and options; and what must be true of a run whatever it was given.

A run ends with 0, 1 or 2 within `PATIENCE`, is no traceback and no stumble; a file that it leaves
is whole; where nothing was made, nothing lies there.
"""

import csv
import io
import json
import random
import re
import signal
import zipfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from xml.etree import ElementTree

import click
import xlsxwriter
from click.testing import CliRunner, Result

from cli.main import COMMANDS, main

PATIENCE = 60
"""How long a run may take, s: the whole demo drawn takes 3."""
JOBLESS = ("hardware", "stocks", "calibrate", "demo")
NO_END = ("serve",)
"""What runs till it is told to end."""

LENGTHS = (
    "15 3/4", "15-3/4", "15 13/8", "61/4", "5' 6 1/2\"", "15½", "15½8", "396,9", "1,000", "0",
    "-3", "1e3", "nan", "inf", "1_000", "", " ", "mm", "12 mm mm", "12,5 cm", "3/0", "3/7",
    "9999 m", "1000000000000000000000000", "0.0000001", "18 mmm", "１２", "٣", "12\u00a0mm", "=1+1",
    "0x10", "1/2/3", "in", "12'' 3", "5' 13\"", "+5", "½", "12″", "1.2.3", "18 ft", "\x1b[2J",
)  # fmt: skip
"""Lengths good and bad, and what is none."""
VALUES = (
    "true", "false", "[]", "{}", "0", "-1", "1e400", "nan", "inf", "1979-05-27", "07:32:00",
    '"left"', '"through"', '"none"', '"center"', '"upper-third"', '"leaflet"', '"measured"',
    '"mdf"', '"pair"', '"door"', '"drawer"', '"pullout"', '"lift"', '"panel"', '"opening"',
    '"corner"', '"tall"', '"wall"', '["1", "2"]', '[1, "x", {}]', '{ a = "1" }', '"B1"', '"B1-1"',
    "[[1, 2], [3, 4]]", '"' + "x" * 500 + '"', '"\\u202e\\u0007"', '"Łódź 厨房"',
    "123456789012345678901234567890", '""', '"north"', '"cup35-full"', '"undermount-533"',
)  # fmt: skip
"""Values of a job file of every kind, right for some keys and wrong for most."""
CODINGS = (
    "utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252", "latin-1", "utf-32",
    "cp437", "shift_jis", "mac-roman",
)  # fmt: skip
CELLS = (
    *LENGTHS, "B1", "b1-1", "door", "Tür", "drawer", "left", "l", "rechts", "2", "x", "pair", "-",
    "F1\nF2", '"', "';--", "1/2/2025", "TRUE", "#REF!", "sum", "total", "=SUM(A1:A9)", "\u202e1",
    "a" * 300,
)  # fmt: skip
HEADINGS = (
    "id", "box", "kind", "width", "height", "count", "hinged", "thickness", "stile", "pull",
    "finish", "note", "w", "h", "qty", "Breite", "Höhe", "width (in)", "H (mm)", "", "box kind",
    "diagonal", "W x H", "?", "now_mm", "gap", "width",
)  # fmt: skip


def job_text(dice: random.Random, text: str) -> bytes:
    """Damage a job file in one to four places."""
    lines = text.splitlines()
    for _ in range(dice.choice((1, 1, 1, 2, 4))):
        at = dice.randrange(len(lines))
        line = lines[at]
        key, equals, _old = line.partition("=")
        match dice.randrange(16):
            case 0 | 1 | 2 if equals:
                lines[at] = f'{key}= "{dice.choice(LENGTHS)}"'
            case 3 | 4 | 5 if equals:
                lines[at] = f"{key}= {dice.choice(VALUES)}"
            case 6:
                del lines[at]
            case 7:
                lines.insert(at, dice.choice(lines))
            case 8:
                other = dice.randrange(len(lines))
                lines[at], lines[other] = lines[other], lines[at]
            case 9 if equals:
                lines[at] = f"{misspelt(dice, key)}={_old}"
            case 10:
                lines[at] = misspelt(dice, line)
            case _ if equals:
                lines[at] = re.sub(r"\d+", lambda old: other_number(dice, int(old[0])), line)
        lines = lines or [""]
    return damaged(dice, ("\n".join(lines) + "\n").encode(errors="replace"), seldom=40)


def other_number(dice: random.Random, old: int) -> str:
    """Give a number in place of another, most often one that is near it."""
    share = dice.choice((0.3, 0.7, 0.9, 0.97, 1.02, 1.1, 1.5, 3))
    return str(dice.choice((round(old * share), round(old * share), old + 1, 0, 4321)))


def misspelt(dice: random.Random, text: str) -> str:
    """Leave out, double or change one sign."""
    if not text:
        return dice.choice(("=", "[", '"', "x"))
    at = dice.randrange(len(text))
    return (
        text[:at] + dice.choice(("", text[at] * 2, dice.choice('=[]"{}#xé\x00'))) + text[at + 1 :]
    )


def damaged(dice: random.Random, data: bytes, *, seldom: int) -> bytes:
    """Now and then cut bytes off, patch some in, or double some."""
    if dice.randrange(seldom) or not data:
        return data
    at = dice.randrange(len(data))
    return dice.choice(
        (data[:at], data[:at] + dice.randbytes(8) + data[at + 8 :], data[:at] + data[at // 2 :])
    )


def rows_of(dice: random.Random, good: list[list[str]]) -> list[list[str]]:
    """Give rows with some cells, rows and headings other than they were."""
    rows = [list(row) for row in good]
    if not dice.randrange(6):
        heads = [[dice.choice(HEADINGS) for _ in range(dice.randrange(1, 8))]]
        cells = [[dice.choice(CELLS) for _ in heads[0]] for _ in range(dice.randrange(9))]
        rows = heads * dice.choice((1, 1, 2)) + cells
    for _ in range(dice.randrange(4)):
        row = dice.choice(rows)
        row[dice.randrange(len(row))] = dice.choice(CELLS)
    if not dice.randrange(4):
        rows[0][dice.randrange(len(rows[0]))] = dice.choice(HEADINGS)
    if not dice.randrange(5):
        dice.shuffle(rows)
    return rows


def list_file(dice: random.Random, good: list[list[str]], folder: Path, stem: str) -> Path:
    """Write a list as some program would, and damage it."""
    rows = rows_of(dice, good)
    kind = dice.choice(("csv", "csv", "csv", "tsv", "xlsx", "xlsx", "ods", "xls", "txt"))
    path = folder / f"{stem}.{kind}"
    if kind == "xlsx":
        data = workbook(dice, rows)
    elif kind in ("ods", "xls"):
        data = dice.choice((workbook(dice, rows), dice.randbytes(300), b""))
    else:
        text = io.StringIO()
        separator = dice.choice(",;\t|") if kind != "tsv" else "\t"
        csv.writer(text, delimiter=separator, lineterminator=dice.choice(("\n", "\r\n", "\r"))
                   ).writerows(rows)  # fmt: skip
        before = dice.choice(("", "", "", "sep=;\n", "\n\n", "An offer, 2026\n"))
        data = (before + text.getvalue()).encode(
            dice.choice(("utf-8", "utf-8", "utf-16", *CODINGS)), errors="replace"
        )
    path.write_bytes(damaged(dice, data, seldom=8))
    return path


def workbook(dice: random.Random, rows: list[list[str]]) -> bytes:
    """Give an .xlsx with cells of several kinds."""
    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, "nan_inf_to_errors": True})
    for _ in range(dice.choice((1, 1, 1, 1, 2))):
        sheet = book.add_worksheet()
        top = dice.choice((0, 0, 0, 3))
        for down, row in enumerate(rows):
            for across, cell in enumerate(row):
                write = dice.choice(
                    (sheet.write, sheet.write_string, sheet.write_string, sheet.write_string)
                )
                if not dice.randrange(30):
                    sheet.write_formula(down + top, across, "=1/0")
                elif cell.isascii() and cell.isdigit() and len(cell) < 9:
                    sheet.write_number(down + top, across, float(cell))
                elif not cell.startswith(("=", "http", "\x1b")):
                    write(down + top, across, cell[:100])
        if not dice.randrange(4):
            sheet.merge_range(1 + top, 0, 2 + top, 1, "merged")
    book.close()
    return out.getvalue()


def options_of(dice: random.Random, name: str, names: list[str]) -> list[str]:
    """Give some options of a command, most with a value that may be right."""
    command = main.get_command(click.Context(main), name)
    assert command is not None
    words: list[str] = []
    for option in command.params:
        if not isinstance(option, click.Option) or dice.randrange(4):
            continue
        words.append(dice.choice(option.opts))
        if option.is_flag:
            continue
        for _ in range(option.nargs):
            known = list(option.type.choices) if isinstance(option.type, click.Choice) else names
            likely = {
                "paper": ["letter", "a3", "roll-610", "24x60in", "610x1500mm", "roll-1", "a5"],
                "stock": ["a4-3x7", "letter-3x10", "roll", "tag"],
                "start": ["1", "3", "99", "0", "x"],
                "copies": ["1", "2", "100"],
                "dots": ["203", "300", "7"],
                "output": ["out.bin", "-", "", ".", "no/such/out.pdf", "out", "x" * 300],
                "base": ["http://a", "ftp://b", "https://ü.example/ä", "x", "http://"],
                "tray": ["upper", "\x1b", "x" * 999],
            }.get(option.name or "", known)
            words.append(dice.choice((*likely, dice.choice(LENGTHS))))
    return words


def run(words: list[str]) -> Result:
    """Run a command as the terminal would; AssertionError for what no run may do."""
    with _in_time(words):
        result = CliRunner().invoke(main, words, prog_name="jigsheet")
    told = result.output
    assert result.exit_code in (0, 1, 2), (words, told, result.exception)
    assert result.exception is None or isinstance(result.exception, SystemExit), words
    for trouble in ("Traceback", "stumbled", "AssertionError"):
        assert trouble not in told, (words, told[-1500:])
    assert "\x1b" not in result.stderr, words
    if result.exit_code:
        assert told.strip(), words
    return result


@contextmanager
def _in_time(words: list[str]) -> Iterator[None]:
    def late(*_: object) -> None:
        raise TimeoutError(f"over {PATIENCE} s: {words}")

    before = signal.signal(signal.SIGALRM, late)
    signal.alarm(PATIENCE)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def whole(path: Path) -> bool:
    """Tell whether an output is whole."""
    data = path.read_bytes()
    if data.startswith(b"%PDF"):
        return data.rstrip().endswith(b"%%EOF")
    match path.suffix:
        case ".json":
            json.loads(data)
        case ".svg":
            ElementTree.fromstring(data)
        case ".xlsx":
            return zipfile.ZipFile(path).testzip() is None
        case ".csv":
            data.decode()
        case ".html":
            return data.rstrip().endswith(b"</html>")
        case ".dxf":
            return data.rstrip().endswith(b"EOF")
    return bool(data)


def check_left(folder: Path, before: dict[Path, bytes], result: Result, words: list[str]) -> None:
    """Look at what a run left: inputs as they were, outputs whole, nothing half written."""
    for path, data in before.items():
        assert path.read_bytes() == data, words
    made = [path for path in folder.rglob("*") if path.is_file() and path not in before]
    assert not [path for path in made if path.name.startswith(".jigsheet")], words
    refused = result.exit_code == 2 or "nothing was made" in result.output
    assert not (refused and made), (words, made)
    if "nothing was made" in result.output:
        options = (word.lstrip("-") for word in words if word.startswith("--"))
        named = (*(path.name for path in before), "nowhere", *words, *options)
        faults = [line for line in result.stderr.splitlines() if ": " in line]
        assert any(name in line for line in faults for name in named), (words, result.stderr)
    for path in made:
        assert path.suffix == ".sqlite" or whole(path), (words, path)


Kind = Callable[[random.Random, Path], list[str]]


def commands(dice: random.Random, *, often: str = "check") -> str:
    """Choose a command that ends."""
    names = [name for name in COMMANDS if name not in (*JOBLESS, *NO_END)]
    return dice.choice((often, *names))
