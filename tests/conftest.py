"""What the collector of garbage does while the tests run, where no doctests are sought, how jobs
are made up, and how several workers read the tests.

They are fifty, the same each time, without a limit of time, and one that fails is told as it was
found: each step that would make it smaller lays out and draws a kitchen, minutes for a test. Who
looks into one, or for new ones, says `--hypothesis-profile default`.

The tests make millions of small values and hardly a cycle: by default the collector looks through
all modules and all collected tests again and again, a tenth of the whole time.
"""

import gc
import os
from collections.abc import Generator
from contextlib import suppress
from importlib import import_module
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, settings

settings.register_profile(
    "as found",
    phases=(Phase.explicit, Phase.generate),
    max_examples=50,
    derandomize=True,
    deadline=None,
    suppress_health_check=(
        HealthCheck.too_slow,
        HealthCheck.data_too_large,
        HealthCheck.function_scoped_fixture,
    ),
)
settings.load_profile("as found")
gc.disable()
HERE = Path(__file__).parent


def pytest_sessionstart(session: pytest.Session) -> None:
    """Let each worker begin to read all tests at another place. Tests that nobody has run yet are
    compiled as they are read; workers that read in the same order would each compile every one."""
    count = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
    if count == 1 or session.config.args_source is not pytest.Config.ArgsSource.TESTPATHS:
        return
    number = int(os.environ["PYTEST_XDIST_WORKER"].removeprefix("gw"))
    files = sorted(HERE.rglob("test_*.py"))
    first = len(files) * number // count
    for file in files[first:] + files[:first]:
        with suppress(Exception):  # the collecting that follows tells of it
            import_module(".".join(file.relative_to(HERE.parent).with_suffix("").parts))


def pytest_collection_finish() -> None:
    """Look no more at what collecting has made, and more seldom at what the tests make."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)
    gc.enable()


def pytest_sessionfinish() -> None:
    """Look once more for what nobody has closed, and leave the rest: pytest looks five times."""
    gc.collect()
    gc.freeze()


@pytest.hookimpl(wrapper=True)
def pytest_collect_file() -> Generator[None, list[pytest.Collector], list[pytest.Collector]]:
    """Look for no doctests here: the product alone has some."""
    found = yield
    return [each for each in found if type(each) is pytest.Module]
