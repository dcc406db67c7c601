"""What stands in where a job does not say, in words: for the check, the order, a pack's first
page. What touches one part alone is said on its sheet (`standinwords.py`).
"""

from collections.abc import Iterable, Iterator, Sequence

from jigs.fittings.fivepiece import stand_ins_of_frame
from jigs.given.catalogue import DEFAULT_HINGES, SLIDE_SERIES
from jigs.given.hardware import PullRecord
from jigs.given.job import MATERIAL_WORDS, REVEAL_WORDS, USE_WORDS, BoxSpec, Job
from jigs.ground.grouped import grouped
from jigs.ground.keys import keys_of
from jigs.ground.lengths import format_mm
from templates.words.standinwords import FRAME_WORDS, PIN_WORDS, SPACER_WORDS


def assumed_lines(job: Job) -> tuple[str, ...]:
    """Say, each by itself, what stands in for numbers that were not given."""
    words = [
        f"{text} {_figure(getattr(values, key.partition('.')[2]))}"
        for values, texts in ((job.material, MATERIAL_WORDS), (job.reveal, REVEAL_WORDS))
        for key, text in texts.items()
        if key in job.assumed
    ]
    inferred = [box.id for box in job.boxes if box.inferred]
    if inferred:
        words.append(f"{_name_boxes(inferred)}: kind, width and height worked out from the fronts")
    words += _describe_boxes(job, "depth", "{} mm deep")
    words += _describe_boxes(job, "above_floor", "bottom {} mm above the floor")
    words += _describe_frames(job)
    for key, text in (
        ("shelf", "no front, so an adjustable shelf"),
        ("pins", PIN_WORDS),
        ("spacers", SPACER_WORDS),
    ):
        meant = [box.id for box in job.boxes if f"box.{box.id}.{key}" in job.assumed]
        words += [f"{_name_boxes(meant)}: {text}"] if meant else []
    for key, text in USE_WORDS.items():
        if key in job.assumed:
            if key == "use.slide":
                words += _describe_slides(job)
                continue
            name = getattr(job.use, key.partition(".")[2])
            names = (name,) if key != "use.hinge" else _default_hinges(job.boxes)
            words += [f"{text} '{name}'" for name in names]
    for name in dict.fromkeys(_pulls_of(job)):
        if name is not None and name in job.pulls:
            words += _describe_pull(job.pulls[name], job.assumed)
    return tuple(words)


def _pulls_of(job: Job) -> Iterator[str | None]:
    """Yield the pulls of a job's fronts: those of `use` where a front opens by one."""
    fronts = [front for box in job.boxes for front in box.fronts]
    silent = {front.kind for front in fronts if not front.opened_by.pull}
    if silent & {"drawer", "pullout"}:
        yield job.use.drawer_pull
    if silent & {"door", "pair", "lift"}:
        yield job.use.door_pull
    yield from (front.opened_by.pull for front in fronts)


def _describe_slides(job: Job) -> list[str]:
    """Say which slide of the series each box's depth has chosen."""
    found: dict[str, list[str]] = {}
    for box in job.boxes:
        running = [front.slide for front in box.fronts if front.kind in ("drawer", "pullout")]
        running += [rollout.slide for rollout in box.rollouts]
        for name in dict.fromkeys(slide or job.use.slide for slide in running):
            if name in SLIDE_SERIES[job.units]:
                found.setdefault(name, []).append(box.id)
    return [
        f"slide '{name}', the longest usual one that the depth of {_name_boxes(boxes)} takes"
        for name, boxes in found.items()
    ]


def _default_hinges(boxes: Iterable[BoxSpec]) -> tuple[str, ...]:
    """Name the hinges that stand in, one for each way the fronts lie; all where none does."""
    lying = {front.overlay or box.overlay for box in boxes for front in box.fronts}
    lying |= {"half" for box in boxes if len(box.columns) > 1 and box.overlay != "inset"}
    return tuple(name for kind, name in DEFAULT_HINGES.items() if kind in (lying or {"full"}))


def _figure(value: float | str) -> str:
    return value if isinstance(value, str) else f"{format_mm(value)} mm"


def _describe_boxes(job: Job, key: str, text: str) -> list[str]:
    groups = grouped(
        (getattr(box, key), box.id) for box in job.boxes if f"box.{box.id}.{key}" in job.assumed
    )
    return [f"{_name_boxes(ids)}: {text.format(format_mm(value))}" for value, ids in groups.items()]


def _describe_frames(job: Job) -> list[str]:
    """Say which sizes stand in of five-piece fronts, those alike together."""
    groups = grouped(
        (said, spec.id)
        for spec in (spec for box in job.boxes for spec in box.fronts)
        if (
            said := tuple(
                f"{FRAME_WORDS[name]} {_figure(size)}" for name, size in stand_ins_of_frame(spec)
            )
        )
    )
    return [
        f"five-piece front{'s' if len(ids) > 1 else ''} {', '.join(ids)}: {', '.join(said)}"
        for said, ids in groups.items()
    ]


def _name_boxes(ids: Sequence[str]) -> str:
    return f"box{'es' if len(ids) > 1 else ''} {', '.join(ids)}"


def _describe_pull(pull: PullRecord, assumed: frozenset[str]) -> list[str]:
    """Say a pull's defaults in one line."""
    said = []
    for key, of in keys_of(PullRecord).items():
        if f"pull.{pull.name}.{key}" in assumed:
            value: object = getattr(pull, key)
            size = f"{format_mm(value)} mm " if isinstance(value, float) else ""
            said.append(f"{size}{of.called}")
    return [f"pull '{pull.name}': {', '.join(said)}"] if said else []
