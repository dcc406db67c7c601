"""Generic hardware records, and records derived from them.

The tool ships with hardware described by geometry alone: cup hinges, drawer slides, bars and a
knob, each number with its standing beside it in `jigs/given/records/`. None is confirmed. A
job's own record is `like` one of these, or `like` another of its own, and overrides what the
leaflet or the caliper says differently.

>>> generic_hinges()["cup35-full"].constant
15.0
>>> solve_constant(tab=5.0, plate=0.0, overlay=20.0)
15.0
"""

import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, TypeVar

from msgspec.structs import replace

from jigs.given.hardware import (
    Confirmed,
    HingeKind,
    HingeRecord,
    NumberStanding,
    PullRecord,
    SlideRecord,
)
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit

RecordType = TypeVar("RecordType", HingeRecord, SlideRecord, PullRecord)

_RECORDS = Path(__file__).with_name("records")

DEFAULT_HINGES: Mapping[HingeKind, str] = {
    "full": "cup35-full", "half": "cup35-half", "inset": "cup35-inset",
}  # fmt: skip
"""The hinge of a job that names none, by how a door hangs."""

SLIDE_SERIES: Mapping[Unit, tuple[str, ...]] = {
    "in": tuple(f"undermount-{mm}" for mm in (229, 305, 381, 457, 533)),
    "mm": tuple(f"undermount-{mm}" for mm in range(250, 751, 50)),
}
"""The generic undermount slides from which a job without its own is served, shortest first."""

SIDE_SERIES: Mapping[Unit, tuple[str, ...]] = {
    "in": tuple(f"sidemount-{mm}" for mm in (254, 305, 356, 406, 457, 508, 559, 610, 660, 711)),
    "mm": tuple(f"sidemount-{mm}" for mm in range(250, 701, 50)),
}
"""The generic side mounts, shortest first: for who has such, and does not know their length."""

SLIDE_END = 16.0
"""Wood and slide wanted behind a slide's last fixing place, mm: half a step of the grid, so a
shorter slide does not have that place (from memory, unsure)."""


@cache
def generic_hinges() -> Mapping[str, HingeRecord]:
    """Give the generic hinges by name, in the order of the data."""
    return MappingProxyType(
        {
            name: HingeRecord(name=name, standing=standing, **values)
            for name, values, standing in _read_records("hinges.toml")
        }
    )


@cache
def generic_slides() -> Mapping[str, SlideRecord]:
    """Give the generic slides by name."""
    return MappingProxyType(
        {
            name: SlideRecord(name=name, standing=standing, **values)
            for name, values, standing in _read_records("slides.toml")
        }
    )


@cache
def generic_pulls() -> Mapping[str, PullRecord]:
    """Give the generic bars and the knob by name."""
    records = {}
    for name, values, standing in _read_records("pulls.toml"):
        centers = values.pop("centers", None)
        records[name] = PullRecord(name=name, centers=centers, standing=standing, **values)
    return MappingProxyType(records)


def solve_constant(*, tab: float, plate: float, overlay: float) -> float:
    """Solve a hinge's constant from one cell of its leaflet's table; mm.

    C0 = OV + Hp - K, from OV = C0 + K - Hp (common practice, no source).
    """
    return overlay + plate - tab


def derive(like: RecordType, *, name: str, given: Mapping[str, Any]) -> RecordType:
    """Make the record `name` out of another and the fields that were given, in mm.

    A given number has the standing `user`. `confirmed` is never inherited: it says that this
    very piece of hardware was looked up or measured.
    """
    numbers = [key for key in given if key != "confirmed"]
    standing: Mapping[str, NumberStanding] = {**like.standing, **dict.fromkeys(numbers, "user")}
    nothing: Mapping[str, Confirmed] = MappingProxyType({})
    changes = {"confirmed": nothing, **given}
    changes |= {"name": name, "like": like.name, "standing": standing}
    record = replace(like, **changes)
    return _settle_slide(record, given) if isinstance(record, SlideRecord) else record


def _settle_slide(slide: SlideRecord, given: Mapping[str, Any]) -> SlideRecord:
    """Bring the inherited numbers into line with the ones that were given."""
    if "length" in given:
        reached = _keep_reached(slide)
        slide = replace(
            slide,
            fixing_at=slide.fixing_at if "fixing_at" in given else reached.fixing_at,
            carry_at=slide.carry_at if "carry_at" in given else reached.carry_at,
        )
    if slide.mount == "side" and "fixing_height" not in given:
        slide = replace(slide, fixing_height=slide.drawer_rise + slide.centre_height)
    return slide


def _keep_reached(slide: SlideRecord) -> SlideRecord:
    """Leave out the fixing places that a slide is too short for."""

    def reach(places: tuple[float, ...]) -> tuple[float, ...]:
        return tuple(x for x in places if x + SLIDE_END <= slide.length + SLACK)

    return replace(slide, fixing_at=reach(slide.fixing_at), carry_at=reach(slide.carry_at))


def _read_records(file: str) -> Iterator[tuple[str, dict[str, Any], Mapping[str, NumberStanding]]]:
    """Read a file of families: each record's name, its values in mm, their standing."""
    data = tomllib.loads((_RECORDS / file).read_text(encoding="utf-8"))
    for family in data["family"]:
        stated = {**data["base"][family.pop("base")], **family}
        names = stated.pop("names")
        standing: Mapping[str, NumberStanding] = MappingProxyType(
            {key: value["standing"] for key, value in stated.items() if isinstance(value, dict)}
        )
        for index, name in enumerate(names):
            yield name, {key: _pick(value, index) for key, value in stated.items()}, standing


def _pick(stated: Any, index: int) -> Any:
    """Give the value that one member of a family has, in mm."""
    match stated:
        case {"mm": value}:
            return _as_floats(value)
        case {"in": value}:
            return _as_floats(value, inches=True)
        case {"each_mm": values}:
            return _as_floats(values[index])
        case {"each_in": values}:
            return _as_floats(values[index], inches=True)
        case _:
            return stated


def _as_floats(value: Any, *, inches: bool = False) -> Any:
    if isinstance(value, list):
        return tuple(_as_floats(item, inches=inches) for item in value)
    # 127/5 and not 25.4: whole inches then come out as the nearest float, 76.2.
    return value * 127 / 5 if inches else float(value)
