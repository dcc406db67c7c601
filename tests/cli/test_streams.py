"""The command as a process: streams, pipes, signals, terminals."""

import errno
import json
import os
import random
import signal
import subprocess
import sys
import time
from hashlib import sha256
from pathlib import Path

import pytest

from cli.main import COMMANDS
from tests.cli.conftest import Run

ROOT = Path(__file__).parents[2]
JIGSHEET = (sys.executable, "-c", "from cli.main import main; main()")


def environment(**more: str) -> dict[str, str]:
    """Give the environment of a process that finds the packages wherever it runs."""
    return {**os.environ, "PYTHONPATH": str(ROOT), **more}


def run(*words: str | Path, cwd: Path, **more: str) -> subprocess.CompletedProcess[bytes]:
    done = subprocess.run(
        [*JIGSHEET, *map(str, words)],
        cwd=cwd,
        env=environment(**more),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
        timeout=60,
    )
    assert b"Traceback" not in done.stderr
    return done


def test_standard_output_holds_the_list_alone(small: Path) -> None:
    """What was understood and what is doubtful goes to standard error."""
    done = run("holes", small, "--format", "csv", cwd=small.parent)
    assert done.returncode == 0
    assert done.stdout.startswith(b"part,box,kind,")
    assert b"2 fronts: 1 door, 1 drawer" in done.stderr


@pytest.mark.slow
def test_a_pdf_goes_to_standard_output_unharmed(small: Path) -> None:
    """`-o -` gives the very bytes of the file. Where nobody watches there is no progress bar:
    standard error in a file holds lines of words alone."""
    done = run("sheets", small, "-o", "-", cwd=small.parent)
    assert done.stdout.startswith(b"%PDF-")
    assert done.stdout.rstrip().endswith(b"%%EOF")
    filed = run("sheets", small, cwd=small.parent)
    assert (small.parent / "sheets.pdf").read_bytes() == done.stdout
    assert b"\r" not in filed.stderr
    assert b"Drawing" not in filed.stderr


@pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals are a Unix thing")
def test_a_progress_bar_on_a_terminal(small: Path) -> None:
    """A person who watches sees the drawing move on."""
    import pty

    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [*JIGSHEET, "sheets", str(small)],
        cwd=small.parent,
        env=environment(TERM="xterm"),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=theirs,
    )
    os.close(theirs)
    seen = b""
    while True:
        try:
            piece = os.read(ours, 65536)
        except OSError as error:  # how Linux says that the other end is closed
            if error.errno != errno.EIO:
                raise
            break
        if not piece:
            break
        seen += piece
    os.close(ours)
    assert process.wait(60) == 0
    assert b"Drawing" in seen


@pytest.mark.slow
@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_a_full_disk_behind_standard_output_is_told(small: Path) -> None:
    """A redirected list that does not fit ends with 1 and says why."""
    with open("/dev/full", "wb") as full:
        done = subprocess.run(
            [*JIGSHEET, "holes", str(small)],
            env=environment(),
            stdout=full,
            stderr=subprocess.PIPE,
            check=False,
            timeout=60,
        )
    assert done.returncode == 1
    assert b"the disk is full" in done.stderr
    assert b"Traceback" not in done.stderr
    assert b"Exception ignored" not in done.stderr


@pytest.mark.slow
def test_a_reader_that_goes_away_is_no_trouble(small: Path) -> None:
    """`jigsheet holes JOB | head -1` ends quietly."""
    reading, writing = os.pipe()
    os.close(reading)
    try:
        done = subprocess.run(
            [*JIGSHEET, "holes", str(small)],
            env=environment(),
            stdout=writing,
            stderr=subprocess.PIPE,
            check=False,
            timeout=60,
        )
    finally:
        os.close(writing)
    assert b"Traceback" not in done.stderr
    assert b"Exception ignored" not in done.stderr
    assert b"stumbled" not in done.stderr


def job_words(command: str) -> list[str]:
    """What stands before a job: three commands take it as an option."""
    before = {
        "hardware": ["--job"],
        "stocks": ["--job"],
        "calibrate": ["garage", "--across", "179.5", "--along", "199.4", "--job"],
    }
    return before.get(command, [])


NARROW = {"PYTHONIOENCODING": "ascii", "LC_ALL": "C", "PYTHONUTF8": "0"}


def foreign(job: Path) -> Path:
    """Give a job a name that ASCII lacks."""
    text = job.read_text(encoding="utf-8").replace("Lock-keeper's", "Łódź")
    job.write_text(text, encoding="utf-8")
    return job


@pytest.mark.slow
def test_a_narrow_terminal_code_is_no_trouble(small: Path) -> None:
    """Where the terminal knows ASCII alone, nothing breaks, whatever the command."""
    job = str(foreign(small))
    names = [name for name in COMMANDS if name not in ("demo", "new", "serve")]
    lines = [[name, *job_words(name), *[job] * (1 + (name == "changes"))] for name in names]
    script = (
        "from cli.main import main\n"
        f"for line in {lines!r}:\n"
        "    try:\n"
        "        main(line)\n"
        "    except SystemExit as end:\n"
        "        assert end.code == 0, line\n"
        "print('through')"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=small.parent,
        env=environment(**NARROW),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.rstrip().endswith(b"through")
    assert done.stderr.count(b"2 fronts: 1 door, 1 drawer") >= len(lines) - 5


@pytest.mark.slow
@pytest.mark.parametrize("command", ["demo", "check"])
def test_a_narrow_terminal_code_is_no_trouble_to_any_process(command: str, small: Path) -> None:
    """The same of commands by themselves, and of the one that makes its own job."""
    foreign(small)
    words = ["demo"] if command == "demo" else [command, *job_words(command), str(small)]
    done = run(*words, cwd=small.parent, **NARROW)
    assert done.returncode == 0, done.stderr


@pytest.mark.slow
def test_the_demo_gives_the_same_bytes(demo_job: Path) -> None:
    """Twice the pack of a kitchen that has everything, in two processes with two hash seeds: not
    a byte differs."""
    packs = []
    for seed in ("1", "2"):
        folder = demo_job.parent / f"pack-{seed}"
        done = run("pack", demo_job, "-o", folder, cwd=demo_job.parent, PYTHONHASHSEED=seed)
        assert done.returncode == 0, done.stderr
        packs.append({path.name: path.read_bytes() for path in sorted(folder.iterdir())})
    assert packs[0] == packs[1]


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="signals are a Unix thing")
@pytest.mark.parametrize(
    ("sign", "shares"),
    [
        (signal.SIGINT, (0.2, 0.6, 0.95)),
        (signal.SIGTERM, (0.4, 0.8, 1.0)),
        (signal.SIGKILL, (0.7, 0.9, 0.95)),
    ],
)
def test_killed_at_any_time_the_older_pack_is_whole(
    sign: signal.Signals, shares: tuple[float, ...], small: Path
) -> None:
    """A run that is stopped after a share of its time leaves each file as it was or as it will be,
    never in between."""
    folder = small.parent / "pack"
    started = time.monotonic()
    run("pack", small, cwd=small.parent)
    length = time.monotonic() - started
    good = {path.name: path.read_bytes() for path in folder.iterdir()}
    contents = json.loads(good.pop("contents.json"))
    older = {name: b"older " + data for name, data in good.items()}
    contents["files"] = {name: sha256(data).hexdigest() for name, data in older.items()}
    for share in shares:
        for name, data in older.items():
            (folder / name).write_bytes(data)
        (folder / "contents.json").write_text(json.dumps(contents), encoding="utf-8")
        process = subprocess.Popen(
            [*JIGSHEET, "pack", str(small)],
            cwd=small.parent,
            env=environment(),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
        )
        time.sleep(length * share)
        process.send_signal(sign)
        _, told = process.communicate(timeout=60)
        # Before main there is nobody to catch it.
        assert b"Traceback" not in told or b", in main\n" not in told
        for name in good:
            assert (folder / name).read_bytes() in (good[name], older[name])
        assert not list(folder.glob("*-new*"))
        if sign is not signal.SIGKILL:
            assert not list(folder.glob("*.part"))
    run("pack", small, cwd=small.parent)
    assert {path.name for path in folder.iterdir()} == {*good, "contents.json"}


KILLS = 15
"""How many runs are killed; 50 were once, of which none left half a pack."""


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="signals are a Unix thing")
def test_kills_at_random_leave_no_half_pack(small: Path) -> None:
    """Two jobs by turns into one folder, killed at any moment, most often while files are put in
    their places: each is that of one of the two, `contents.json` knows every one, and the next
    run that ends leaves its own pack and nothing else. Each step between two files is killed by
    itself in test_packfolder."""
    folder, dice = small.parent / "pack", random.Random(20261201)
    other = small.with_name("other.toml")
    other.write_text(small.read_text().replace('height = "6"', 'height = "7"'), encoding="utf-8")
    packs = {}
    for job in (other, small):
        assert run("pack", job, "-o", folder, cwd=small.parent).returncode == 0
        packs[job] = found_in(folder)
    for number in range(KILLS):
        job = (other, small)[number % 2]
        killed_while_packing(job, folder, dice)
        left = {name: data for name, data in found_in(folder).items() if not is_aside(name)}
        contents = json.loads(left.pop("contents.json"))
        known = {name: set(own) for name, own in contents.get("former_files", {}).items()}
        for name, digest in contents["files"].items():
            known.setdefault(name, set()).add(digest)
        assert set(left) == set(packs[small]) - {"contents.json"}
        for name, data in left.items():
            assert data in (packs[other][name], packs[small][name])
            assert sha256(data).hexdigest() in known[name]
        if not number % 5:
            done = run("pack", job, "-o", folder, cwd=small.parent)
            assert done.returncode == 0
            assert found_in(folder) == packs[job]
            assert b"it stays" not in done.stderr


def found_in(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def is_aside(name: str) -> bool:
    return name.startswith(".jigsheet-")


def killed_while_packing(job: Path, folder: Path, dice: random.Random) -> None:
    """Kill a run: one in three at any time, the others once the first file is written aside."""
    before = {name for name in os.listdir(folder) if is_aside(name)}
    process = subprocess.Popen(
        [*JIGSHEET, "pack", str(job), "-o", str(folder)],
        cwd=job.parent, env=environment(), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    if dice.randrange(3):
        end = time.monotonic() + 30
        while process.poll() is None and time.monotonic() < end:
            if any(is_aside(name) and name not in before for name in os.listdir(folder)):
                time.sleep(dice.uniform(0, 0.04))
                break
    else:
        time.sleep(dice.uniform(0.05, 1.5))
    process.kill()
    process.wait(60)


def test_what_the_printed_face_lacks_is_told(run: Run, small: Path) -> None:
    """Once a run, on standard error, wherever something is printed on paper."""
    small.write_text(small.read_text().replace("Lock-keeper's scullery", "厨房"), encoding="utf-8")
    for command in ("sheets", "labels", "pack"):
        result = run(command, small)
        assert result.exit_code == 0
        assert result.stderr.count("the printed face lacks 厨 房") == 1
    assert "lacks" not in run("holes", small).stderr.replace(str(small), "")
