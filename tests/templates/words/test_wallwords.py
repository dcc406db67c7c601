"""Names of walls in capitals."""

import pytest

from templates.words.wallwords import capitals


@pytest.mark.parametrize(
    ("name", "titled"),
    [
        # CSS Text Module Level 3, text-transform in Greek: accents go, from memory of its examples.
        ("βόρεια", "ΒΟΡΕΙΑ"),
        ("μάιος", "ΜΑΪΟΣ"),
        ("προϋπολογισμός", "ΠΡΟΫΠΟΛΟΓΙΣΜΟΣ"),
        ("ταΐζω", "ΤΑΪΖΩ"),
        ("ή", "Ή"),
        ("ΒΌΡΕΙΑ", "ΒΟΡΕΙΑ"),
        # Other scripts keep theirs.
        ("été 2", "ÉTÉ 2"),
        ("ёлка", "ЁЛКА"),
        ("", ""),
    ],
)
def test_capitals(name: str, titled: str) -> None:
    """Greek drops its accents in capitals, no other script does."""
    assert capitals(name) == titled
