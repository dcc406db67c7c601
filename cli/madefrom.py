"""What a job or a pack makes, to be held against what another one does."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from msgspec import Struct

from cli.failures import Failure
from cli.jobs import Asked
from cli.packfolder import CONTENTS

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from jigs.changes.made import Made


class Pack(Struct, frozen=True, kw_only=True):
    """What a pack's contents say."""

    folder: Path
    made: "Made"
    jobs: tuple[Path, ...]
    """The files that its job may have been read from: beside its folder, or in it."""
    delivered: str | None = None
    """The delivered list that it was made with, "" where with none; None where it does not say."""


def is_pack(path: Path) -> bool:
    """Tell whether a path is meant as a pack: a folder, or the contents in one."""
    return path.is_dir() or path.name == CONTENTS


def read_pack(path: Path) -> Pack:
    """Read a pack's contents. Raises Failure where it is none."""
    folder = path if path.is_dir() else path.parent
    file = folder / CONTENTS
    try:
        data = json.loads(file.read_bytes())
        made = _made_of(data)
        read = [str(name) for name in data.get("read_from", [])]
        delivered = str(data["delivered"] or "") if "delivered" in data else None
    except FileNotFoundError as error:
        raise Failure(
            f"'{path}' is no pack: there is no {CONTENTS} in it; give the folder that 'jigsheet "
            "pack' wrote."
        ) from error
    except (OSError, ValueError, LookupError, TypeError, AttributeError) as error:
        raise Failure(
            f"'{file}' is not what a pack wrote: it was edited, or is damaged, so that nothing is "
            "known of what was printed: write the pack anew, and print all of it again."
        ) from error
    beside = [place / name for name in read[:1] for place in (folder.parent, folder)]
    return Pack(folder=folder, made=made, jobs=tuple(beside), delivered=delivered)


def _made_of(data: Any) -> "Made":
    from jigs.changes.keeping import is_known, is_untouched, read_made
    from jigs.changes.made import Made, MadePart

    job, tool = str(data["job"]), str(data["jigsheet"])
    codes = {str(name): str(code or "") for name, code in data["parts"].items()}
    if is_known(data.get("made")):
        if not is_untouched(data["made"]):
            raise ValueError("its figures are others than those that were kept")
        return read_made(data["made"], job=job, tool=tool)
    # Of a tool whose packs keep less, or keep it otherwise, the codes alone are sure.
    parts = {name: MadePart(id=name, kind="", code=code) for name, code in codes.items()}
    return Made(job=job, tool=tool, parts=parts, whole=False)


def make_from(layout: "Layout", reach: float) -> "Made":
    """Say what a job makes that is laid out. `reach`: what its stations are planned with, mm; 0:
    what the usual paper gives them."""
    from jigs.bench.stations import plan_stations
    from jigs.changes.making import make
    from jigs.cutlist.cutlist import cut_job
    from jigs.layout.layout import as_printed
    from templates.binding.jobstations import reach_on
    from templates.lists.digests import list_digests
    from templates.lists.workview import Paged, view_work
    from templates.page.paper import PAPERS

    printed, reach = as_printed(layout), reach or reach_on(PAPERS["common"])
    cut = cut_job(layout)
    planned = plan_stations(printed, reach=reach)
    work = view_work(printed, cut, planned, Paged())
    lists = list_digests(printed, cut, work.order, work)
    return make(printed, cut, work.order, planned, reach=reach, lists=lists)


class Compared(Struct, frozen=True, kw_only=True):
    """One of two that are compared: a job laid out, or a pack."""

    path: Path
    layout: "Layout | None" = None
    pack: Pack | None = None

    @property
    def jobs(self) -> tuple[Path, ...]:
        """The job files beside which marks may be kept."""
        return self.pack.jobs if self.pack else (self.path,)

    @property
    def delivered(self) -> str | None:
        """The delivered list that its fronts are measured by, "" for none; None where nobody
        knows."""
        if self.pack is not None:
            return self.pack.delivered
        listed = self.layout.job.delivered if self.layout else None
        return listed.file.name if listed else ""

    def make(self, reach: float) -> "Made":
        """Say what it makes."""
        if self.pack is not None:
            return self.pack.made
        assert self.layout is not None, "what is no pack is a job"
        return make_from(self.layout, reach)


def read_compared(asked: Asked, output: str) -> Compared:
    """Read a job, or a pack's contents; `output`: what will be written, which is none of what the
    job is read from."""
    if not is_pack(asked.path):
        return Compared(path=asked.path, layout=asked.lay_out(output, echo=False))
    if asked.delivered is not None:
        raise click.UsageError("--delivered is for a job: a pack keeps what it was made with.")
    return Compared(path=asked.path, pack=read_pack(asked.path))


def check_same_job(old: "Made", new: "Made", name: str) -> None:
    """Refuse the pack of another job: none of its paper is this one's. Failure."""
    if old.job != new.job:
        raise Failure(
            f"'{name}' is the pack of the job '{old.job}', not of '{new.job}': give a pack of this "
            "job, or write one with 'jigsheet pack'."
        )
