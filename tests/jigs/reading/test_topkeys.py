"""Keys that stand above the first table of a job file."""

from pathlib import Path

import pytest

from jigs.reading.jobfile import TOP_KEYS
from tests.jigs.jobtext import SMALL, faults_of, line_of


@pytest.mark.parametrize("key", TOP_KEYS)
def test_a_key_of_the_top_below_a_table_is_sent_up(tmp_path: Path, key: str) -> None:
    """TOML gives it to the table above it; at the top each of them is known."""
    text = f'{SMALL}{key} = "b.csv"\n'
    (said,) = faults_of(tmp_path, text)
    line = line_of(text, f'{key} = "b')
    assert said.startswith(f"job.toml:{line}: box[1].front[1].{key}: ")
    assert "belongs at the top of the file" in said
    assert "did you mean" not in said
    top = faults_of(tmp_path, f"{key} = [1]\n{SMALL.replace('schema = 1', '')}")
    assert top
    assert not [fault for fault in top if "unknown key" in fault]
