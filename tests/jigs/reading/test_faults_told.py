"""Faults of a job file as a foreman would say them: what was given, and what to write instead."""

from pathlib import Path

import pytest

from tests.jigs.jobtext import SMALL, faults_of


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        # A number alone stands in its list, a text between its quotes.
        ('hinged = "left"', 'hinged = "left"\nhinges_at = "97 mm"', 'write: hinges_at = ["97 mm"]'),
        ('hinged = "left"', 'hinged = "left"\nmeasured_width = [454]', "([454] given)"),
        ('hinged = "left"', 'hinged = "left"\nhinges_at = [97, 97]', "twice ([97, 97] given)"),
        ('kind = "door"\n', "", "kind is missing; allowed: door, pair, drawer"),
        # The unit behind the quotes.
        ("width = 457.2", 'width = "18" in', 'write: width = "18 in"'),
        ("width = 457.2", "width = '457.2' mm  # inside", 'write: width = "457.2 mm"  # inside'),
        ("schema = 1", 'schema = 1\nunits = "cm"', 'centimetres stand at each length: "60 cm"'),
        # A file that is not there is told where it is named.
        ("schema = 1", 'schema = 1\nfronts_file = "no.csv"', "fronts_file: no such file ('no.csv'"),
        ("schema = 1", 'schema = 1\ndelivered_file = "no.csv"', "delivered_file: no such file"),
        ("depth = 584.2", "depth = 584.2\nblind_left = 600", "(600 given, 457.2 mm (18 in) the"),
        ('hinged = "left"', 'leaflet = "yes"', 'neither "noted" nor a table'),
    ],
)
def test_a_fault_says_what_to_write(tmp_path: Path, old: str, new: str, told: str) -> None:
    """One fault each, at its line."""
    assert old in SMALL
    [said] = faults_of(tmp_path, SMALL.replace(old, new))
    assert said.startswith("job.toml:")
    assert told.removeprefix("write: ") in said, said


def test_of_several_records_that_begin_so_none_is_picked(tmp_path: Path) -> None:
    """`cup35` may be full, half or inset: which, decides where the door hangs."""
    [said] = faults_of(tmp_path, f'{SMALL}[hinge.mine]\nlike = "cup35"\n')
    assert "which of them: cup35-full," in said
    assert "cup35-inset" in said
    assert "did you mean" not in said


def test_the_keys_that_are_known_are_named_once(tmp_path: Path) -> None:
    """`kind` is asked for twice, and is one key."""
    said = faults_of(tmp_path, SMALL.replace("width = 457.2", "breadth = 457.2"))
    [known] = [fault for fault in said if "unknown key" in fault]
    assert known.count(" kind,") == 1
    assert "balanced" in faults_of(tmp_path, f'{SMALL}[grid]\nstart = "middle"\n')[0]
