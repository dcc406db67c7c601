"""The bench runs as a plain script too."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.bench import environment, write_job

ROOT = Path(__file__).parents[1]


def test_the_bench_finds_the_project_as_a_plain_script(tmp_path: Path) -> None:
    """tests/ stands first on a script's path, and tests/jigs must not hide jigs."""
    code = (
        "import runpy, sys; sys.path[0] = sys.argv[1]; "
        "runpy.run_path(sys.argv[1] + '/bench.py', run_name='bench'); "
        "import jigs.reading.inputs; print(jigs.__file__)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(ROOT / "tests")],
        cwd=tmp_path, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert Path(done.stdout.strip()) == ROOT / "jigs" / "__init__.py"


@pytest.mark.slow
@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="the peak is read from /proc")
def test_sheets_of_a_long_job_stay_small_in_memory(tmp_path: Path) -> None:
    """300 fronts take some 80 MB, of which Python and the libraries take 50: pages that are kept
    would be seen. VmHWM is the peak of this very program (proc(5), from memory)."""
    code = (
        "import atexit, pathlib; "
        "atexit.register(lambda: print(pathlib.Path('/proc/self/status').read_text())); "
        "from cli.main import main; main()"
    )
    job = write_job(tmp_path, 300)
    done = subprocess.run(
        [sys.executable, "-c", code, "sheets", job.name, "-o", "sheets.pdf"],
        cwd=tmp_path, env=environment(), capture_output=True, text=True, check=True,
    )  # fmt: skip
    peak = next(line for line in done.stdout.splitlines() if line.startswith("VmHWM:"))
    assert 30_000 < int(peak.split()[1]) < 110_000  # kB
