"""What was understood of a job, in one line, so that a misread list is seen before drilling."""

from collections import Counter

from jigs.given.job import FrontKind, Job

_WORDS: dict[FrontKind, tuple[str, str]] = {
    "door": ("door", "doors"),
    "pair": ("pair", "pairs"),
    "drawer": ("drawer", "drawers"),
    "pullout": ("pullout", "pullouts"),
    "false-front": ("false front", "false fronts"),
    "panel": ("panel", "panels"),
    "lift": ("lift door", "lift doors"),
    "opening": ("opening", "openings"),
}


def summarise(job: Job) -> str:
    """Say how many fronts of each kind stand on how many boxes.

    A pair counts as two fronts, an opening as none.
    """
    kinds = Counter(front.kind for box in job.boxes for front in box.fronts)
    fronts = sum(kinds.values()) + kinds["pair"] - kinds["opening"]
    listed = [_count(kinds[kind], *words) for kind, words in _WORDS.items() if kinds[kind]]
    boxes = _count(len(job.boxes), "box", "boxes")
    inferred = sum(box.inferred for box in job.boxes)
    note = "" if not inferred else f" ({inferred} inferred)"
    if inferred and inferred == len(job.boxes):
        note = " (inferred)"
    kinds_said = f": {', '.join(listed)}" if listed else ""
    return f"{_count(fronts, 'front', 'fronts')}{kinds_said}, on {boxes}{note}"


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
