"""What the collector of garbage does while the tests run.

The tests make millions of small values and hardly a cycle: by default the collector looks through
all modules and all collected tests again and again, a tenth of the whole time.
"""

import gc

gc.disable()


def pytest_collection_finish() -> None:
    """Look no more at what collecting has made, and more seldom at what the tests make."""
    gc.freeze()
    gc.set_threshold(20_000, 20, 20)
    gc.enable()
