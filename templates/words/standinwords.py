"""What is assumed of a part, in words: the keys of a job in the words of the trade, and the number
or the name that stands in.
"""

from collections.abc import Iterable, Mapping
from functools import lru_cache

from jigs.box.rollouts import SPACER
from jigs.box.shelves import BAND_END
from jigs.fittings.fivepiece import FrameSize
from jigs.given.confirming import StandIn
from jigs.given.job import MATERIAL_WORDS, REVEAL_WORDS, USE_WORDS, Job
from jigs.ground.lengths import Unit, format_length

FRAME_WORDS: Mapping[FrameSize, str] = {
    "rail": "rail width", "groove": "groove depth",
    "panel": "panel thickness", "glass": "glass thickness",
}  # fmt: skip
"""The sizes of a five-piece front."""
PIN_WORDS = f"rows of shelf pins to {BAND_END:g} mm from the ends of the opening"
"""Where pins stand as long as the job does not say."""
SPACER_WORDS = f"rollouts on spacers of {SPACER:g} mm where a door hangs, else on none"
"""Spacers as long as the job does not say."""

_OF_FRAME = {f"five_piece.{name}": words for name, words in FRAME_WORDS.items()}
_KEYS = {**MATERIAL_WORDS, **REVEAL_WORDS, **USE_WORDS, **_OF_FRAME}
_OF_BOX = {"shelf": "an adjustable shelf", "pins": PIN_WORDS, "spacers": SPACER_WORDS}
"""Keys of a box that say all without a number."""


def stand_in_words(found: Iterable[StandIn], job: Job) -> tuple[str, ...]:
    """Say each: `side thickness 18.0 mm`."""
    return tuple(
        _say(each.key, each.figure, job.shown if each.key in _OF_FRAME else job.units)
        for each in found
    )


@lru_cache(maxsize=4096)  # said of every part alike
def _say(key: str, figure: float | str | None, unit: Unit) -> str:
    table, _, rest = key.partition(".")
    name, _, field = rest.rpartition(".")
    if table == "box" and field in _OF_BOX:
        return _OF_BOX[field]
    words = _KEYS.get(key) or " ".join(filter(None, (table, name, field.replace("_", " "))))
    said = format_length(figure, unit) if isinstance(figure, float) else figure or ""
    return f"{words} {said}".rstrip()
