"""What the collector of garbage does while the tests run, where no doctests are sought, and how
jobs are made up.

They are fifty, the same each time, without a limit of time, and one that fails is told as it was
found: each step that would make it smaller lays out and draws a kitchen, minutes for a test. Who
looks into one, or for new ones, says `--hypothesis-profile default`.

The tests make millions of small values and hardly a cycle: by default the collector looks through
all modules and all collected tests again and again, a tenth of the whole time.
"""

import gc
from collections.abc import Generator

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


def pytest_collection_finish() -> None:
    """Look no more at what collecting has made, and more seldom at what the tests make."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)
    gc.enable()


@pytest.hookimpl(wrapper=True)
def pytest_collect_file() -> Generator[None, list[pytest.Collector], list[pytest.Collector]]:
    """Look for no doctests here: the product alone has some."""
    found = yield
    return [each for each in found if type(each) is pytest.Module]
