"""`jigsheet calibrate`: the test page, and what is recorded and refused."""

import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from time import sleep

import pytest

from cli.output import change_file
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


TRUE = ("--across", "179.5", "--along", "199.4")


def test_a_list_of_fronts_keeps_no_printer(run: Run, tmp_path: Path) -> None:
    """A table stays as it is, byte for byte."""
    table = tmp_path / "fronts.csv"
    table.write_text("id,width,height,kind\nB1-1,450,715,door\n")
    before = table.read_bytes()
    result = run("calibrate", "garage", *TRUE, "--job", table)
    assert result.exit_code == 1
    assert "only a job file (.toml) keeps a printer" in result.stderr
    assert table.read_bytes() == before


def test_a_job_that_could_not_be_read_again_is_left_alone(run: Run, small: Path) -> None:
    """A table at the end would stand in the way of one that is written in one line."""
    text = 'printer = {shop = {across = "180 mm", along = "200 mm"}}\n' + small.read_text()
    small.write_text(text)
    result = run("calibrate", "garage", *TRUE, "--job", small)
    assert result.exit_code == 1
    assert "could not be read again" in result.stderr
    assert '[printer.garage]\nacross = "179.5 mm"' in result.stderr
    assert small.read_text() == text


@pytest.mark.parametrize("tray", ['up"per', "back\\slash", "'''", "Łódź", '"""', "# no"])
def test_a_text_is_read_as_it_was_typed(run: Run, tray: str) -> None:
    """Quotes and signs of the file's own grammar are no trouble."""
    assert run("calibrate", "garage", *TRUE, "--tray", tray).exit_code == 0
    assert f"(common, {tray})" in run("calibrate", "--list").stdout


@pytest.mark.parametrize("tray", ["two\nlines", "\x07", "\u202e", "\udce9", "x" * 201, "a\x85b"])
def test_a_text_that_no_line_keeps_is_refused(run: Run, settings: Path, tray: str) -> None:
    """With the reason; nothing is recorded."""
    result = run("calibrate", "garage", *TRUE, "--tray", tray)
    assert result.exit_code == 1
    assert "--tray: not one short line" in result.stderr
    assert not settings.exists()


def test_a_printers_name_has_letters_from_a_to_z(run: Run) -> None:
    """And the message says so: those of other alphabets are letters too."""
    result = run("calibrate", "küche", *TRUE)
    assert result.exit_code == 1
    assert "('küche' given); A-Z, a-z, digits" in result.stderr


@pytest.mark.parametrize("broken", ["[printer", 'name = "x"\n', "\x00\x00", "printer = 3\n"])
def test_broken_settings_are_named_with_the_way_out(
    run: Run, small: Path, settings: Path, broken: str
) -> None:
    """They stay as they are; a job with a printer of its own does not ask them."""
    settings.parent.mkdir()
    settings.write_text(broken)
    for words in (("--list",), ("garage", *TRUE)):
        result = run("calibrate", *words)
        assert result.exit_code == 1
        assert str(settings) in result.stderr
        assert "move the file away" in result.stderr
    assert settings.read_text() == broken
    assert run("hardware", "--bench", "--printer", "garage").exit_code == 1
    assert run("calibrate", "garage", *TRUE, "--job", small).exit_code == 0
    assert run("labels", small, "--printer", "garage").exit_code == 0


def test_empty_settings_hold_no_printer(run: Run, settings: Path) -> None:
    """A file without a byte is no fault."""
    settings.parent.mkdir()
    settings.touch()
    assert "No printer is calibrated yet" in run("calibrate", "--list").stdout
    assert run("calibrate", "garage", *TRUE).exit_code == 0


@pytest.mark.parametrize(
    ("folder", "reason"), [("~", "HOME is not set"), ("{tmp}/file/jigsheet", "could not be made")]
)
def test_without_a_folder_for_settings_the_job_is_named(
    run: Run,
    small: Path,
    monkeypatch: pytest.MonkeyPatch,
    tmp_path: Path,
    folder: str,
    reason: str,
) -> None:
    """No home, or one that cannot be written: the way out is told, no folder is made."""
    (tmp_path / "file").touch()
    file = Path(folder.format(tmp=tmp_path)) / "printers.toml"
    for place in ("printers", "calibrate"):
        monkeypatch.setattr(f"cli.{place}.settings_file", lambda: file)
    result = run("calibrate", "garage", *TRUE)
    assert result.exit_code == 1
    assert reason in result.stderr
    assert "--job JOB" in result.stderr
    assert not Path("~").exists()
    assert run("calibrate", "garage", *TRUE, "--job", small).exit_code == 0


@pytest.mark.skipif(sys.platform == "win32", reason="folders are locked on Unix alone")
def test_records_made_at_the_same_time_are_kept(tmp_path: Path) -> None:
    """Each run adds to what it finds, and finds what the others added."""

    def change_slowly(number: int) -> None:
        def changed(old: bytes) -> bytes:
            sleep(0.002)
            return old + b"%02d " % number

        change_file(tmp_path / "records", changed)

    with ThreadPoolExecutor(20) as runs:
        list(runs.map(change_slowly, range(20)))
    kept = (tmp_path / "records").read_bytes().split()
    assert sorted(kept) == [b"%02d" % number for number in range(20)]
