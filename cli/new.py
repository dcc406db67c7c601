"""`jigsheet new`: the few questions that matter, and the job file that their answers make."""

import os
from collections.abc import Callable, Collection, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from msgspec.structs import replace

from cli.asking import KeptAnswers, hold_interview
from cli.failures import Failure
from cli.listasking import ListTalk
from cli.manners import command
from cli.options import columns_option
from cli.output import make_folder, write_new, write_text
from cli.terminal import mention, tell, typed, typed_line

if TYPE_CHECKING:
    from jigs.asking.draft import Draft
    from jigs.asking.interview import GivenList
    from jigs.asking.question import Asking
    from jigs.given.hangsat import RowsFrom
    from jigs.given.listspec import ListSpec
    from jigs.ground.lengths import Unit
    from jigs.reading.frontlist import FrontList

ASKED = (
    "units", "reveal", "reveal_is", "reveal_top", "depth", "wall_depth", "above_floor",
    "wall_above_floor", "walls", "ceiling", "counter", "counter_thickness",
    "material.side", "material.front", "material.front_kind", "material.back", "material.band",
    "material.drawer_side", "hinge.confirmed", "hinge.constant", "hinge.plates",
    "hinge.fixing_spacing", "hinge.fixing_inboard", "hinge.cup_depth", "slide.mount",
    "slide.confirmed", "slide.length", "slide.fixing_height", "slide.drawer_rise",
    "slide.centre_height", "slide.width_less", "slide.depth_allowance", "slide.drawer_shorter",
    "slide.fixing_at", "slide.carry_at", "drawer_pull", "door_pull", "pull.confirmed",
    "pull.drawer", "pull.door_inset", "pull.door_corner", "pull.tall_height",
)  # fmt: skip
"""The keys of the questions that every job has alike: each has an option."""
OF_WALLS = ("wall.", "ceiling", "counter")
"""How the keys of questions begin that are put once the walls are known."""
REPEATED = {"box": "A box, as the question asks for it", "boxes": "What is otherwise of boxes"}
"""Questions that are put several times: their answers in this order."""


class Answer(click.Option):
    """The answer to one question; its help is the question."""

    def get_help_record(self, ctx: click.Context) -> tuple[str, str] | None:
        """Give the option with the words of its question."""
        from templates.words.questionwords import sentences

        assert self.name is not None
        key = next(key for key in ASKED if _name(key) == self.name)
        said = sentences()[key]["ask"]
        return f"--{self.name.replace('_', '-')} TEXT", said if said[-1] == "?" else f"{said}."


def _name(key: str) -> str:
    return key.replace(".", "_")


def _answer_options(made: Callable[..., None]) -> Callable[..., None]:
    for key, help in reversed(REPEATED.items()):
        made = click.option(
            f"--{key}", multiple=True, metavar="TEXT", help=f"{help}; may be repeated."
        )(made)
    for key in reversed(ASKED):
        made = click.option(
            f"--{_name(key).replace('_', '-')}", cls=Answer, help=f"Answers '{key}'."
        )(made)
    return made


@command(
    ("From nothing: box by box, each in one line", "new kitchen.toml"),
    ("From a supplier's list of fronts", "new kitchen.toml --fronts fronts.csv"),
    (
        "Without a question: what is not said stays open",
        "new kitchen.toml --fronts fronts.csv --usual --material-side 18mm",
    ),
    ("What would be asked, and how an option says it", "new kitchen.toml --questions"),
)
@click.argument("job", metavar="JOB", type=click.Path(path_type=Path))
@click.option(
    "--fronts", metavar="LIST", type=click.Path(path_type=Path),
    help="A front list that the job takes its fronts from (.csv, .xlsx, ...); it stays as it is.",
)  # fmt: skip
@columns_option
@click.option(
    "--usual", is_flag=True, help="Ask nothing: what is not said here stays open, or as usual."
)
@click.option(
    "--questions", is_flag=True,
    help="List what would be asked, each with the option that answers it, and write nothing.",
)  # fmt: skip
@click.option(
    "--answer", multiple=True, metavar="KEY=TEXT",
    help="The answer to any question by its key, as wall.north.left=corner; may be repeated.",
)  # fmt: skip
@_answer_options
def new(
    job: Path,
    fronts: Path | None,
    columns: "ListSpec | None",
    usual: bool,
    questions: bool,
    answer: tuple[str, ...],
    **said: Any,
) -> None:
    """Ask the few questions that matter, and write a job file.

    Each question says why it matters; JOB explains each key.
    Enter takes what stands in brackets, ? says more, - stands for what you do not know yet, back
    goes to the question before. Each answer is kept as you give it: if you stop, the same command
    goes on there. A file that is there already is never written over.
    """
    if job.suffix.lower() != ".toml":
        raise click.BadParameter(
            f"a job file's name ends in .toml ({job.name!r} given); {job.stem}.toml?",
            param_hint="'JOB'",
        )
    _refuse_there(job)
    given = _given(answer, said)
    kept = KeptAnswers.beside(job)
    if kept.answers:
        tell(f"Going on after {_count(kept)} kept in '{kept.path}'; take it away to begin anew.")
    if columns:
        from jigs.reading.listgiven import write_columns

        kept.columns = write_columns(columns)
    if fronts:
        kept.fronts = _seen_from(fronts, job.parent)
    try:
        talk = ListTalk(kept, usual=usual or questions)
        listed = _open_list(kept.fronts, job.parent, given, talk, kept) if kept.fronts else None
    except click.Abort:
        _tell_stopped(kept)
        raise

    def start() -> "Asking[Draft]":
        from jigs.asking.interview import interview

        return interview(_printable(job.stem), listed, looked=not usual)

    if questions:
        _list_questions(start, {**kept.answers, **given})
        return
    from jigs.ground.errors import JigsheetError

    draft, count = _settle(start, given, kept, usual=usual)
    try:
        _write(draft, job)
    except JigsheetError:
        tell(
            "These answers make no sound job. Say --answer KEY=TEXT for the one that is to be "
            "otherwise; the others are kept."
        )
        raise
    kept.drop()
    from templates.words.questionwords import open_lines, reveal_lines, written_lines

    if not usual:
        mention("")
    for line in (*reveal_lines(draft, {*given, *kept.answers}), *open_lines(draft)):
        tell(line)
    for line in written_lines(
        str(job), count, typed("jigsheet", "check", job), typed("jigsheet", "pack", job)
    ):
        mention(line)


def _list_questions(start: "Callable[[], Asking[Draft]]", answers: Mapping[str, str]) -> None:
    """List the questions of an interview on standard output. Raises ReadingError for answers that
    cannot be read."""
    from jigs.asking.answering import answer_all
    from jigs.ground.errors import ReadingError
    from templates.words.questionwords import asked_end_lines, asked_lines

    answered = answer_all(start(), answers)
    if faults := [fault for fault in answered.faults if fault.where in answers]:
        raise ReadingError(faults)
    lines = [
        line
        for question in answered.questions
        for line in asked_lines(question, _option(question.key), answers.get(question.key, ""))
    ]
    lines += asked_end_lines(whole=answered.draft is not None)
    write_text("-", "".join(f"{line}\n" for line in lines), sources=())


def _option(key: str) -> str:
    """Name the option that answers a question."""
    if key in ASKED:
        return f"--{_name(key).replace('_', '-')}"
    begun, _, number = key.partition(".")
    if begun in REPEATED:
        return f"--{begun}{f' (no. {number})' if number != '1' else ''}"
    return f"--answer {key}=TEXT"


def _settle(
    start: "Callable[[], Asking[Draft]]",
    given: Mapping[str, str],
    kept: KeptAnswers,
    *,
    usual: bool,
) -> "tuple[Draft, int]":
    """Hold the interview, or take what was said for it."""
    from jigs.asking.answering import answer_all
    from jigs.ground.errors import Fault, ReadingError

    answered = answer_all(start(), {**kept.answers, **given})
    faults = [fault for fault in answered.faults if fault.where in given or usual]
    # Of walls that cannot be read nothing is asked, though it would be of those that were meant.
    waiting = OF_WALLS if any(fault.where == "walls" for fault in faults) else ()
    if usual and answered.draft is not None:
        faults += [
            Fault(
                key,
                f"no such question here ('{given[key][:40]}' given); {_near(key, answered.asked)}",
            )
            for key in given
            if key not in answered.asked and not key.startswith(waiting)
        ]
    if faults:
        raise ReadingError(faults)
    if usual:
        assert answered.draft is not None, "a question without an answer is a fault"
        return answered.draft, len({*given, *kept.answers} & {*answered.asked})
    kept.answers |= given
    try:
        draft, asked = hold_interview(start, kept)
    except (click.Abort, ReadingError):
        _tell_stopped(kept)
        raise
    for key in given:
        if key not in asked:
            tell(f"Not used: {key}, of which nothing is asked here.")
    return draft, len(asked)


def _tell_stopped(kept: KeptAnswers) -> None:
    """Say where what was answered is kept."""
    tell("")
    if kept.answers or kept.path.exists():
        what = f"{_count(kept)} kept" if kept.answers else "What you said of the list is kept"
        tell(f"Stopped. {what} in '{kept.path}'; the same command goes on there.")


def _count(kept: KeptAnswers) -> str:
    from templates.words.textlines import counted

    return counted(len(kept.answers), "answer")


def _near(key: str, asked: tuple[str, ...]) -> str:
    """Say why a question is not asked, or which may be meant."""
    from jigs.ground.nearest import suggest

    if key in ASKED:
        return "it is for boxes, walls or hardware of a kind that is not here"
    return suggest(key, asked)


def _given(answers: tuple[str, ...], said: Mapping[str, Any]) -> dict[str, str]:
    """Give the answers that the command line has, by the keys of their questions."""
    given: dict[str, str] = {}
    for key in ASKED:
        if (text := said[_name(key)]) is not None:
            given[key] = text
    for key in REPEATED:
        given |= {f"{key}.{place}": text for place, text in enumerate(said[key], start=1)}
    for answer in answers:
        key, equals, text = answer.partition("=")
        if not equals:
            raise click.BadParameter(
                f"no KEY=TEXT ({answer!r} given); wall.north.left=corner is one",
                param_hint="'--answer'",
            )
        given[key.strip()] = text
    return given


def _seen_from(path: Path, folder: Path) -> str:
    """Name a file as a job in this folder names it. Fails for what is no file that stays."""
    from jigs.reading.stream import is_stream

    if is_stream(path):
        raise click.BadParameter(
            f"a job names its list, so it has to be a file ({str(path)!r} given)",
            param_hint="'--fronts'",
        )
    try:
        return os.path.relpath(path, folder).replace(os.sep, "/")
    except ValueError:  # on another drive
        return str(path.absolute()).replace(os.sep, "/")


def _open_list(
    name: str, folder: Path, given: Mapping[str, str], talk: ListTalk, kept: KeptAnswers
) -> "GivenList":
    """Read a list, in the unit that it seems to be in; what it does not say itself is asked. Raises
    ReadingError."""
    from jigs.asking.interview import GivenList
    from jigs.ground.errors import ReadingError
    from jigs.reading.frontlist import read_front_list
    from jigs.reading.listedboxes import check_boxes_named
    from jigs.reading.listgiven import parse_columns, write_list_table

    path = Path(os.path.normpath(folder / name))
    units: tuple[Unit, Unit] = ("in", "mm") if given.get("units") == "in" else ("mm", "in")

    def read(unit: "Unit") -> "FrontList":
        return read_front_list(path, unstated=unit, listed=parse_columns(kept.columns))

    front_list: FrontList | None = None
    while front_list is None:
        errors: list[ReadingError] = []
        for unit in units:
            try:
                front_list = read(unit)
                break
            except ReadingError as error:
                errors.append(error)
        else:
            # In the wrong unit its sizes are faults besides.
            talk.ask(min(errors, key=lambda error: len(error.faults)))
    if faults := check_boxes_named(front_list):
        raise ReadingError(faults, front_list.told)
    if told := talk.untold(front_list.told):
        mention(told)
    if talk.asked:
        from templates.words.listasks import next_time_line

        mention(next_time_line(kept.columns))

    def table(unit: "Unit", turned: Collection[str]) -> str:
        """Say how the list is read, and its unit where it says none and that is not the job's."""
        spec = parse_columns(kept.columns)
        try:
            alike = read(unit).rows == front_list.rows
        except ReadingError:
            alike = False
        ways: dict[str, RowsFrom] = {
            box: "from-top" if box in front_list.from_bottom else "from-bottom" for box in turned
        }
        spec = replace(spec, box_rows={**spec.box_rows, **ways})
        return write_list_table(spec if alike else replace(spec, units=front_list.unit))

    return GivenList(name=name, front_list=front_list, table=table)


def _write(draft: "Draft", job: Path) -> None:
    """Write the job file, once it is known to read back without a fault."""
    from jigs.reading.jobfile import read_job_text
    from templates.words.jobtext import job_text

    text = job_text(draft)
    make_folder(job.parent)  # the job's list is read from there
    read_job_text(text, job)
    _refuse_there(job)
    write_new(job, text.encode(errors="replace"))


def _refuse_there(job: Path) -> None:
    if os.path.lexists(job):
        raise Failure(
            f"'{job}' is there already and is left alone: it may hold your own work. Change it "
            f"with an editor, or give another name; {typed_line('check', job)} says what is open."
        )


def _printable(name: str) -> str:
    return "".join(letter if letter.isprintable() else "?" for letter in name)
