"""The wheel: what a person installs is all that the tool needs."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel from the tracked files alone."""
    folder = tmp_path_factory.mktemp("wheel")
    source = folder / "source"
    for top in ("jigs", "cli", "templates"):
        for path in (ROOT / top).rglob("*"):
            if path.is_file() and "__pycache__" not in path.parts:
                target = source / path.relative_to(ROOT)
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_bytes(path.read_bytes())
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        (source / name).write_bytes((ROOT / name).read_bytes())
    words = [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "-w", str(folder)]
    subprocess.run([*words, str(source)], check=True, timeout=300)
    [built] = folder.glob("jigsheet-*.whl")
    return built


@pytest.mark.slow
def test_the_wheel_holds_the_three_packages_with_their_data(wheel: Path) -> None:
    """Types, records, stocks and the demo are in it; tests are not."""
    names = zipfile.ZipFile(wheel).namelist()
    tops = {name.partition("/")[0] for name in names if ".dist-info" not in name}
    assert tops == {"jigs", "cli", "templates"}
    for top in tops:
        assert f"{top}/py.typed" in names
    data = {
        path.relative_to(ROOT).as_posix()
        for top in tops
        for pattern in ("*.toml", "*.csv", "*.css", "*.js")
        for path in (ROOT / top).rglob(pattern)
    }
    assert data <= set(names)
    assert "templates/demo/job.toml" in data


@pytest.mark.slow
def test_the_demo_runs_from_the_installed_wheel(wheel: Path, tmp_path: Path) -> None:
    """Installed into an empty place, away from the source, the demo makes its pack."""
    target = tmp_path / "installed"
    words = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--target"]
    subprocess.run([*words, str(target), str(wheel)], check=True, timeout=300)
    code = (
        "import cli, sys; assert cli.__file__.startswith(sys.argv.pop(1)), cli.__file__; "
        "from cli.main import main; main()"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(target), "demo", "kitchen"],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(target)},
        capture_output=True,
        check=False,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr.decode()
    assert (tmp_path / "kitchen/pack/sheets.pdf").stat().st_size > 10_000


@pytest.mark.slow
def test_nothing_else_claims_the_packages_names() -> None:
    """In this environment `cli`, `jigs` and `templates` belong to this project alone."""
    from importlib.metadata import packages_distributions

    owners = packages_distributions()
    for name in ("cli", "jigs", "templates"):
        assert set(owners.get(name, ["jigsheet"])) == {"jigsheet"}
