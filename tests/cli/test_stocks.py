"""`jigsheet stocks`, and the stocks that `labels` and `pack` print on."""

import io
from pathlib import Path

import pdfplumber
import pytest

from templates.labels.stocks import STOCKS
from tests.cli.conftest import SMALL, Run

OWN = """
[stock.tape]
roll = true
label_width = "54 mm"
label_height = "30 mm"
"""
PARTS = 2
"""The small job's fronts."""


@pytest.fixture
def own(tmp_path: Path) -> Path:
    """Give a job with a stock of its own."""
    path = tmp_path / "own.toml"
    path.write_text(SMALL + OWN, encoding="utf-8")
    return path


def sizes(path: str) -> list[tuple[float, float]]:
    with pdfplumber.open(io.BytesIO(Path(path).read_bytes())) as pdf:
        return [(float(p.width) / 72 * 25.4, float(p.height) / 72 * 25.4) for p in pdf.pages]


def test_all_stocks_are_listed(run: Run, own: Path) -> None:
    """With their geometry; a job's own with --job."""
    result = run("stocks")
    assert result.exit_code == 0, result.output
    for name in STOCKS:
        assert f"  {name} " in result.stdout
    assert "tape" not in result.stdout
    assert "  tape           label 54 x 30; yours\n" in run("stocks", "--job", own).stdout


def test_an_unknown_stock_is_answered_with_the_list(run: Run, own: Path) -> None:
    """The shipped ones and the job's."""
    result = run("labels", own, "--stock", "none")
    assert result.exit_code == 2
    for name in (*STOCKS, "tape"):
        assert f"  {name} " in result.stderr


def test_labels_on_a_roll_of_ones_own(run: Run, own: Path) -> None:
    """One label a page, the page the label."""
    result = run("labels", own, "--for", "fronts", "--stock", "tape", "-o", "l.pdf")
    assert result.exit_code == 0, result.output
    assert sizes("l.pdf") == [pytest.approx((54.0, 30.0), abs=0.001)] * PARTS
    assert "2 labels. Print at 100 % on tape labels" in result.stderr


def test_a_jobs_stock_takes_the_place_of_a_shipped_one(run: Run, own: Path) -> None:
    """It was measured."""
    own.write_text(own.read_text().replace("tape", "roll-62x29"))
    assert run("labels", own, "--stock", "ROLL-62x29", "-o", "l.pdf").exit_code == 0
    assert sizes("l.pdf")[0] == pytest.approx((54.0, 30.0), abs=0.001)


@pytest.mark.parametrize(
    ("start", "copies", "pages"), [(1, 1, 1), (9, 1, 1), (10, 1, 2), (5, 3, 1), (6, 9, 3)]
)
def test_start_and_copies_add_up(
    start: int, copies: int, pages: int, run: Run, small: Path
) -> None:
    """Ten places on a sheet, two fronts: start - 1 + parts x copies, over ten."""
    assert pages == -(-(start - 1 + PARTS * copies) // 10)
    words = ("--for", "fronts", "--start", str(start), "--copies", str(copies), "-o", "l.pdf")
    assert run("labels", small, *words).exit_code == 0
    assert len(sizes("l.pdf")) == pages


def test_dots_are_those_of_the_option_the_printer_or_the_stock(run: Run, own: Path) -> None:
    """In this order; the page is cut to whole dots."""
    own.write_text(
        own.read_text() + "dots = 300\n[printer.thermal]\ndots = 203\n", encoding="utf-8"
    )
    for words, dots in (
        ((), 300),
        (("--printer", "thermal"), 203),
        (("--printer", "thermal", "--dots", "600"), 600),
    ):
        assert run("labels", own, "--stock", "tape", "-o", "l.pdf", *words).exit_code == 0
        whole = int(54 / 25.4 * dots + 1e-6) / dots * 25.4
        assert sizes("l.pdf")[0][0] == pytest.approx(whole, abs=0.001)
    assert run("pack", own, "--stock", "tape", "--printer", "thermal").exit_code == 0


def test_tags_for_the_cups_of_doors(run: Run, small: Path, held: Path) -> None:
    """One door has a cup; what does not fit on its tag is said. No door, no file."""
    done = run("labels", small, "--stock", "cup-tag", "-o", "t.pdf")
    assert done.exit_code == 0, done.output
    assert "t.pdf: tags for 1 door. Print at 100 %, cut out." in done.stderr
    assert "Hinge side, size and place do not fit on a tag" in done.stderr
    assert sizes("t.pdf") == [pytest.approx((198.0, 267.0), abs=0.001)]
    none = run("labels", held, "--stock", "cup-tag-round", "-o", "none.pdf")
    assert none.exit_code == 1
    assert "No door has a cup for such a tag. No file is written." in none.stderr
    assert "No tag for B1-2: held back." in none.stderr
    assert not Path("none.pdf").exists()


def test_tags_are_neither_for_pieces_nor_for_the_pack(run: Run, small: Path) -> None:
    """Both want labels; the message says what to do."""
    pieces = run("labels", small, "--stock", "cup-tag", "--for", "pieces")
    assert pieces.exit_code == 2
    assert "tags go into the cups of doors" in pieces.stderr
    pack = run("pack", small, "--stock", "cup-tag")
    assert pack.exit_code == 2
    assert "--stock cup-tag" in pack.stderr
    assert list(Path().iterdir()) == []


@pytest.fixture
def settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep the settings of whoever runs the tests out of them."""
    file = tmp_path / "settings" / "printers.toml"
    monkeypatch.setattr("cli.printers.settings_file", lambda: file)
    monkeypatch.setattr("cli.calibrate.settings_file", lambda: file)
    return file


def test_the_test_page_of_a_stock(run: Run, own: Path) -> None:
    """As large as its sheet or its label; it tells what to do with it."""
    sheet = run("stocks", "a4-3x7")
    assert sheet.exit_code == 0, sheet.output
    assert sizes("a4-3x7.pdf") == [pytest.approx((210.0, 297.0), abs=0.001)]
    assert "--labels-right LENGTH --labels-up LENGTH" in sheet.stderr
    roll = run("stocks", "tape", "--job", own, "-o", "roll.pdf")
    assert roll.exit_code == 0, roll.output
    assert sizes("roll.pdf") == [pytest.approx((54.0, 30.0), abs=0.001)]
    assert "the frame must stand 3 mm from each edge" in roll.stderr


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("none",), "no stock is called 'none'. A stock of your own stands in a job: name it"),
        (("cup-tag",), "there is no stock to lay its page over"),
        (("--dots", "203"), "give its NAME"),
        (("letter-3x10", "--printer", "none"), "none is calibrated yet"),
    ],
)
def test_what_has_no_test_page(words: tuple[str, ...], told: str, run: Run, settings: Path) -> None:
    """Wrong usage, and no file."""
    result = run("stocks", *words)
    assert result.exit_code == 2
    assert told in result.stderr
    assert list(Path().iterdir()) == []


def test_an_offset_is_recorded_and_moves_the_labels(run: Run, small: Path, settings: Path) -> None:
    """Alone, then with dots, then with the bars: what was recorded before stays."""
    first = run("calibrate", "garage", "--labels-right", "0.6", "--labels-up", "-0.4 mm")
    assert first.exit_code == 0, first.output
    assert "garage: labels moved 0.6 mm to the right, -0.4 mm up; kept in" in first.stdout
    assert settings.read_text().endswith(
        '[printer.garage]\nlabels_right = "0.6 mm"\nlabels_up = "-0.4 mm"\n'
    )
    assert run("calibrate", "garage", "--dots", "600").exit_code == 0
    bars = run("calibrate", "garage", "--across", "179.5", "--along", "199.4")
    assert "x 1.0028 across, x 1.0030 along; 600 dots per inch; labels moved 0.6" in bars.stdout
    assert bars.stdout.partition(";")[0] in run("calibrate", "--list").stdout
    plain = run("labels", small, "-o", "plain.pdf")
    moved = run("labels", small, "-o", "moved.pdf", "--printer", "garage")
    assert (plain.exit_code, moved.exit_code) == (0, 0)
    assert Path("plain.pdf").read_bytes() != Path("moved.pdf").read_bytes()


def test_a_label_printer_alone_corrects_no_sheet(run: Run, small: Path, settings: Path) -> None:
    """Its bars were never measured: sheets printed for it say that they are not corrected."""
    assert run("calibrate", "thermal", "--dots", "203").exit_code == 0
    for name, words in (("plain.pdf", ()), ("thermal.pdf", ("--printer", "thermal"))):
        assert run("sheets", small, "-o", name, *words).exit_code == 0
    assert Path("plain.pdf").read_bytes() == Path("thermal.pdf").read_bytes()


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("--labels-right", "12"), 1, "10 mm is the most that labels are moved"),
        (("--labels-up", "up"), 1, "--labels-up: not a length"),
        (("--dots", "150"), 2, "'150' is not one of"),
        (("--dots", "203", "--across", "180"), 2, "both --across and --along are needed"),
        (("--dots", "203", "--tray", "upper"), 2, "go with --across and --along"),
    ],
)
def test_offsets_and_dots_that_cannot_be(
    words: tuple[str, ...], code: int, told: str, run: Run, settings: Path
) -> None:
    """Told, and nothing is recorded."""
    result = run("calibrate", "garage", *words)
    assert result.exit_code == code, result.output
    assert told in result.stderr
    assert not settings.exists()


def test_a_printer_in_a_job_with_faults(run: Run, small: Path) -> None:
    """Dots that no printer has, and one bar without the other, each at its line."""
    text = small.read_text()
    small.write_text(text + "[printer.thermal]\ndots = 200\n")
    result = run("check", small)
    assert result.exit_code == 1
    assert "printer.thermal.dots: not the dots of a printer (200 given)" in result.stderr
    small.write_text(text + '[printer.thermal]\ndots = 203\nacross = "180 mm"\n')
    assert "across and along go together" in run("check", small).stderr
