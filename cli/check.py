"""`jigsheet check`: what is wrong or doubtful, each with its remedy."""

from cli.jobs import Asked
from cli.manners import command
from cli.options import output_option, with_job
from cli.output import write_text
from cli.terminal import mention, tell


@command(
    ("Before anything is ordered, cut or drilled", "check kitchen.toml"),
    (
        "Once the fronts have come and been measured",
        "check kitchen.toml --delivered fronts-measured.csv",
    ),
    ("To keep or to send on", "check kitchen.toml -o doubts.txt"),
)
@with_job
@output_option("-")
def check(
    asked: Asked,
    output: str,
) -> None:
    """Say what is wrong or doubtful about JOB, each with its remedy."""
    from jigs.checks.rubbing import before_order
    from templates.words.findings import check_text, count_words, has_errors

    layout = before_order(asked.lay_out(output, echo=False))
    if layout.job.list_told:
        mention(layout.job.list_told)
    if layout.job.delivered and layout.job.delivered.told:
        mention(layout.job.delivered.told)
    write_text(output, check_text(layout), sources=layout.job.sources)
    if output != "-":
        said = count_words(layout.problems, layout.job.shown)
        (tell if has_errors(layout) else mention)(f"{output}: {said}")
    asked.end(layout, told=True)
