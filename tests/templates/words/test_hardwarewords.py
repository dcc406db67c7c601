"""Hardware in words."""

from msgspec.structs import replace

from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.given.confirming import Record
from templates.words.hardwarewords import list_text, record_text


def test_a_family_says_once_what_its_members_share() -> None:
    """Each number carries its standing."""
    text = list_text(generic_hinges().values())
    assert text.count("constant 15 (M)") == 1
    assert "  cup35-full-48     fixing spacing 48 (C), fixing inboard 6 (C)\n" in text
    assert "M from memory: confirm it" in text


def test_every_generic_record_is_listed() -> None:
    """In the order of the data, no line over 100 columns."""
    records: dict[str, Record] = {**generic_hinges(), **generic_slides(), **generic_pulls()}
    text = list_text(records.values())
    named = [
        line.split()[0] for line in text.splitlines() if line.startswith("  ") and line[2] > " "
    ]
    assert named == list(records)
    assert max(map(len, text.splitlines())) <= 100


def test_a_record_is_a_table_of_its_numbers() -> None:
    """Letter, name, value, standing, and whether it was confirmed."""
    text = record_text(generic_slides()["undermount-533"])
    assert text.startswith("slide 'undermount-533': undermount slide\n")
    [row] = [line for line in text.splitlines() if line.startswith("  a  ")]
    assert row.split()[-3:] == ["33", "M", "NO"]


def test_the_tabs_that_a_hinge_lists_are_told() -> None:
    """Listed and confirmed they are not open; a single tab stands before them."""
    listed = replace(
        generic_hinges()["cup35-full"], tabs=(4.0, 5.5, 6.0),
        standing={"tabs": "user"}, confirmed={"tabs": "measured"},
    )  # fmt: skip
    row = next(line for line in record_text(listed).splitlines() if "tab:" in line)
    assert "4, 5.5, 6" in row
    assert "open" not in row
    assert row.rstrip().endswith("measured")
    one = next(
        line for line in record_text(replace(listed, tab=5.0)).splitlines() if "tab:" in line
    )
    assert "4, 5.5" not in one
    bare = record_text(generic_hinges()["cup35-full"])
    assert "open" in next(line for line in bare.splitlines() if "tab:" in line)
