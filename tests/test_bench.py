"""The bench runs as a plain script too."""

import subprocess
import sys
from pathlib import Path

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
