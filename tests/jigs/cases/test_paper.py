"""Costly mistakes at the bench: printer scale, part or paper upside down, parts mixed up."""

from pathlib import Path

from click.testing import CliRunner

from cli.main import main
from tests.jigs.cases.kitchen import box, front, job, lay, page_words, printed
from tests.readback import read_pages

LEFT = 'kind = "door"\nhinged = "left"'
DRAWER = 'kind = "drawer"\nheight = 152.4'


def test_every_sheet_has_its_bars(tmp_path: Path) -> None:
    """Bars of 150 and 100 on each page, to be measured before anything is drilled."""
    pages = page_words(tmp_path, box(DRAWER, LEFT), only="B1")
    assert len(pages) > 4
    for words in pages:
        assert "150.0 ±0.3" in words
        assert "100.0 ±0.2" in words
        assert "100 %" in words


def test_every_card_says_face_and_way_up(tmp_path: Path) -> None:
    """The back of a door, in words of its own for each hand: nothing is left to mirror."""
    left = printed(tmp_path, box(LEFT), only="B1-1")
    assert "DRILL THIS FACE: BACK OF DOOR" in left
    assert "hinge edge on your RIGHT" in left
    assert "NOT REVERSIBLE" in left
    right = printed(tmp_path, box(LEFT.replace("left", "right")), only="B1-1")
    assert "hinge edge on your LEFT" in right


def test_label_and_sheet_carry_one_code(tmp_path: Path) -> None:
    """A changed hole changes the code on both: paper and part that do not belong together are
    seen."""
    path, out = tmp_path / "job.toml", tmp_path / "labels.pdf"
    codes = []
    for lines in (box(DRAWER, LEFT), box(DRAWER, f"{LEFT}\nhinges_at = [100, 480]")):
        code = front(lay(tmp_path, lines), "B1-2").code
        assert code in printed(tmp_path, lines, only="B1-2")
        path.write_text(job(lines), encoding="utf-8")
        told = CliRunner().invoke(main, ["labels", str(path), "-o", str(out)])
        assert told.exit_code == 0, told.output
        assert code in " ".join(page.text for page in read_pages(out.read_bytes()))
        codes.append(code)
    assert codes[0] != codes[1]


def test_a_part_held_back_still_has_its_label(tmp_path: Path) -> None:
    """It says HOLD, so that nobody drills it from memory."""
    path, out = tmp_path / "job.toml", tmp_path / "labels.pdf"
    path.write_text(job(box(DRAWER, 'kind = "door"')), encoding="utf-8")
    told = CliRunner().invoke(main, ["labels", str(path), "-o", str(out)])
    assert told.exit_code == 1
    assert "HOLD" in " ".join(page.text for page in read_pages(out.read_bytes()))
