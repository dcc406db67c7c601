"""The words of lists as they are looked up: `headings.csv` and `frontwords.csv`, each written from
the words of the languages in the `.toml` beside it.

`python -m tests.listwords` writes them; `tests/jigs/reading/test_headings.py` holds them equal.
"""

import csv
import io
import tomllib
from pathlib import Path

from jigs.reading import headings
from jigs.reading.headings import fold

FOLDER = Path(headings.__file__).parent
FILES = ("headings", "frontwords")


def spellings(text: str) -> set[str]:
    """Give a word in plain letters, as it is and with its vowels written out: `hohe`, `hoehe`."""
    small = text.lower()
    apart = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ø": "oe", "å": "aa"})
    return {fold(small), fold(small.translate(apart))}


def write_words(file: str) -> str:
    """Give the rows of one file: the first word of a table, a spelling, the table's other words."""
    data = tomllib.loads((FOLDER / f"{file}.toml").read_text(encoding="utf-8"))
    meanings: dict[tuple[str, str], str] = {}
    for name, languages in data.items():
        group, _, meaning = name.partition(" ")
        for words in languages.values():
            for word in words:
                for spelling in sorted(spellings(word)):
                    meanings[group, spelling] = meaning
    written = io.StringIO()
    rows = ((group, spelling, meaning) for (group, spelling), meaning in meanings.items())
    csv.writer(written, lineterminator="\n").writerows(rows)
    return written.getvalue()


if __name__ == "__main__":
    for file in FILES:
        (FOLDER / f"{file}.csv").write_text(write_words(file), encoding="ascii")
