"""`jigsheet calibrate`: the test page, and what is recorded and refused."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run


@pytest.fixture(autouse=True)
def settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep the settings of whoever runs the tests out of them."""
    file = tmp_path / "settings" / "printers.toml"
    monkeypatch.setattr("cli.printers.settings_file", lambda: file)
    monkeypatch.setattr("cli.calibrate.settings_file", lambda: file)
    return file


def test_without_a_name_the_page_is_printed(run: Run) -> None:
    """And the next step is told."""
    result = run("calibrate", "-o", "test.pdf")
    assert result.exit_code == 0, result.output
    assert Path("test.pdf").read_bytes().startswith(b"%PDF")
    assert "--across LENGTH --along LENGTH" in result.stderr


def test_a_printer_is_recorded_and_used(run: Run, small: Path, settings: Path) -> None:
    """Its sheets differ from the uncorrected ones; an inch rule does as well."""
    done = run("calibrate", "garage", "--across", "179.5", "--along", "199.4", "--tray", "upper")
    assert done.exit_code == 0, done.output
    assert "x 1.0028 across, x 1.0030 along" in done.stdout
    assert '[printer.garage]\nacross = "179.5 mm"\nalong = "199.4 mm"' in settings.read_text()
    more = run("calibrate", "shop", "--bars", "in", "--across", "6 63/64", "--along", "8")
    assert more.exit_code == 0, more.output
    assert "shop: x 1.0022 across, x 1.0000 along" in run("calibrate", "--list").stdout
    assert "garage: " in run("calibrate", "--list").stdout
    plain = run("sheets", small, "-o", "plain.pdf")
    corrected = run("sheets", small, "-o", "true.pdf", "--printer", "garage")
    assert (plain.exit_code, corrected.exit_code) == (0, 0)
    assert Path("plain.pdf").read_bytes() != Path("true.pdf").read_bytes()
    assert run("labels", small, "--printer", "shop").exit_code == 0
    assert run("pack", small, "--printer", "garage").exit_code == 0
    assert run("hardware", "--bench", "--printer", "garage").exit_code == 0


def test_a_job_keeps_its_own(run: Run, small: Path, settings: Path) -> None:
    """It is added at the end of the job file, once."""
    before = small.read_text()
    line = ("calibrate", "garage", "--across", "179.5", "--along", "199.4", "--job", small)
    assert run(*line).exit_code == 0
    assert small.read_text().startswith(before)
    assert run("sheets", small, "--printer", "garage").exit_code == 0
    assert not settings.exists()
    after = small.read_text()
    again = run(*line)
    assert again.exit_code == 1
    assert "already" in again.stderr
    assert small.read_text() == after


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--across", "200", "--along", "180"), "exchanged"),
        (("--across", "7.08", "--along", "7.87"), "inches typed"),
        (("--across", "165", "--along", "200"), "8 %"),
        (("--across", "wide", "--along", "long"), "--along: not a length"),
        (("--across", "180", "--along", "200", "--diagonals", "199", "200"), "askew"),
    ],
)
def test_nonsense_is_refused_and_nothing_is_recorded(
    run: Run, settings: Path, arguments: tuple[str, ...], words: str
) -> None:
    """Exit 1, all faults, no file."""
    result = run("calibrate", "garage", *arguments)
    assert result.exit_code == 1
    assert words in result.stderr
    assert "Nothing was recorded." in result.stderr
    assert not settings.exists()


@pytest.mark.parametrize(
    "arguments",
    [
        ("garage",),
        ("garage", "--across", "180"),
        ("--across", "180", "--along", "200"),
        ("garage", "--across", "180", "--along", "200", "-o", "x.pdf"),
    ],
)
def test_half_a_command_is_wrong_usage(run: Run, arguments: tuple[str, ...]) -> None:
    """Both bars belong to a name, and a file to the test page."""
    assert run("calibrate", *arguments).exit_code == 2


def test_an_unknown_printer_is_wrong_usage(run: Run, small: Path) -> None:
    """The message says how to measure one."""
    result = run("sheets", small, "--printer", "nope")
    assert result.exit_code == 2
    assert "none is calibrated yet" in result.stderr


def test_a_faulty_printer_in_a_job_is_a_fault(run: Run, small: Path) -> None:
    """With its line, like every other."""
    text = small.read_text() + '[printer.garage]\nacross = "150 mm"\nalong = "200 mm"\n'
    small.write_text(text)
    result = run("check", small)
    assert result.exit_code == 1
    assert "printer.garage: across: 150 mm" in result.stderr
