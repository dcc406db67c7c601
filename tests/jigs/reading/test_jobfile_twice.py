"""The job file: a key or a table that stands twice, and a table without the one it belongs to."""

from pathlib import Path

import pytest

from tests.jigs.jobtext import SMALL, faults_of


@pytest.mark.parametrize(
    ("text", "what"),
    [
        (
            'units = "mm"\n[material]\nside = 18\nside = 19\n[reveal]\n',
            "job.toml:4: not TOML: 'side' given above already (side = 19 given); leave one of them",
        ),
        (
            '[[box]]\nid = "B1"\n[box]\nid = "B2"\n',
            "job.toml:3: not TOML: 'box' given more than once ([box] given); "
            "write [[box]] for each",
        ),
        (
            '[box]\nid = "B1"\n[[box]]  # two\nid = "B2"\n',
            "job.toml:3: not TOML: 'box' given more than once ([[box]]  # two given); "
            "write [[box]] for each",
        ),
        (
            "[[box]]\n[[box.front]]\n[ box.front ]\n",
            "job.toml:3: not TOML: 'box.front' given more than once ([ box.front ] given); "
            "write [[box.front]] for each",
        ),
        (
            "[pull.bar]\ncenters = 128\n[pull.bar]\n",
            "job.toml:3: not TOML: 'pull.bar' given above already ([pull.bar] given); "
            "leave one of them",
        ),
    ],
)
def test_what_is_given_twice_is_told_as_that(tmp_path: Path, text: str, what: str) -> None:
    """No quotes are asked for where a key or a table stands a second time."""
    assert faults_of(tmp_path, text) == [what]


@pytest.mark.parametrize(
    ("heading", "written"),
    [
        ("front", "[[box.front]] below its [[box]]"),
        ("shelf", "[[box.shelf]] below its [[box]]"),
        ("rollout", "[[box.rollout]] below its [[box]]"),
        ("hole", "[[box.front.hole]] below its front, or [[box.hole]] below its box"),
        ("appliance", "[[wall.appliance]] below its [[wall]]"),
    ],
)
def test_a_heading_without_its_owner_is_shown_whole(
    tmp_path: Path, heading: str, written: str
) -> None:
    """A front at the top of the file belongs to a box; `[fronts]` was not meant."""
    (fault,) = faults_of(tmp_path, SMALL + f'[[{heading}]]\nkind = "door"\n')
    assert fault.endswith(f"'{heading}' is no table by itself; write {written}")
