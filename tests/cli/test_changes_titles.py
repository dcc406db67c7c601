"""`changes`: what stands first, what has a title of its own, and what is said once."""

import json
from pathlib import Path

from tests.cli.conftest import Run


def test_what_is_held_no_more_is_free_again(run: Run, small: Path) -> None:
    """By name, over all else: its HOLD label goes, its holes are bored."""
    other = small.with_name("other.toml")
    other.write_text(small.read_text("utf-8").replace('  hinged = "left"\n', ""), "utf-8")
    said = run("changes", other, small).stdout
    free = said.index("FREE AGAIN\n  B1-2: no longer held back; throw its HOLD label away")
    assert free < said.index("EDITED") < said.index("PRINT ANEW")
    assert "HELD BACK NOW" not in said
    data = json.loads(run("changes", other, small, "--format", "json").stdout)
    assert "free" in {task["do"] for task in data["tasks"] if task["part"] == "B1-2"}


def test_what_is_bored_no_more_is_no_boring(run: Run, small: Path) -> None:
    """A door that came bored keeps its cups: that stands under a title of its own."""
    other = small.with_name("other.toml")
    bored = (
        'hinged = "left"\n  bored = true\n  hinges_at = ["100 mm", "500 mm"]\n  bored_tab = "5 mm"'
    )
    other.write_text(small.read_text("utf-8").replace('hinged = "left"', bored), "utf-8")
    said = run("changes", small, other).stdout
    before, _, after = said.partition("BORE NO MORE")
    assert after, said
    assert "no more to bore" in after
    assert "no more to bore" not in before


def test_a_long_job_says_what_is_done_alike_once(run: Run, small: Path) -> None:
    """Of 30 boxes narrower by 3 mm: each saw cut once, with the sizes of each below it, and no
    cause a box; the edits are counted together."""
    head, _, box = small.read_text("utf-8").partition("[[box]]")
    texts = []
    for narrower in (0, 3):
        boxes = [
            f"[[box]]{box}".replace('"B1"', f'"B{at}"').replace(
                'width = "18"', f'width = "{450 + 7 * at - narrower} mm"'
            )
            for at in range(30)
        ]
        texts.append("\n".join([head, *boxes]))
    old, new = small.with_name("old.toml"), small.with_name("new.toml")
    old.write_text(texts[0], "utf-8")
    new.write_text(texts[1], "utf-8")
    said = " ".join(run("changes", old, new).stdout.split())
    assert said.count("if it is cut, saw 3.0 mm off its length:") == 1
    assert said.count("paint the sawn edge anew") <= 4
    assert "[box B7" not in said
    assert "B29-1: " in said
