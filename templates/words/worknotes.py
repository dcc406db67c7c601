"""What is said beside the days of the work: how they are reckoned, what is bought and tried."""

from collections.abc import Iterator, Sequence

from jigs.bench.firstarticle import FirstArticle
from jigs.bench.jobplan import Day, JobPlan
from jigs.order.buying import Order
from templates.words.firstwords import pass_words
from templates.words.planwords import stage_title
from templates.words.textlines import counted

DONE_TITLE = "Done already"
TODAY = "TODAY:"

RECKONED = (
    "A day here is a share of the work, no time: things are taken in hand {} times (a piece cut, "
    "a card set, a door painted or hung; our own choice), for no source says how long each takes "
    "you. Glue, a coat of paint and a delivery end a day."
)
"""How days are reckoned."""


def how_words(plan: JobPlan) -> Iterator[str]:
    """Say how days are reckoned, and what the order rests on."""
    yield f"{RECKONED.format(plan.most)} 'plan --a-day' makes it more or less."
    yield (
        "The order is common practice, no source, and that of the scan pages; each station is set "
        "up once. Leaflets and local code go before it."
    )
    if plan.done.begun:
        done = sum(plan.done.is_done(task) for day in plan.days for task in day.tasks if task.step)
        every = sum(task.step is not None for day in plan.days for task in day.tasks)
        yield (
            f"{done} of {every} ticks are done; today is day {plan.today}."
            if (plan.today <= len(plan.days))
            else f"{done} of {every} ticks are done: all of it."
        )


def done_line(day: Day) -> str:
    """Say of a day that is done what was done in it."""
    return f"Day {day.number}: {', '.join(stage_title(stage) for stage in day.stages)}."


def buying_words(plan: JobPlan, order: Order) -> Iterator[str]:
    """Say what is bought before the first board is cut, and what is not yet."""
    if order.items:
        yield (
            "Order the hardware (lists.pdf, 'order'): you lay it on the paper before the awl, and "
            "its leaflets close the open numbers."
        )
    if order.banding:
        yield "Order board and edge band; measure the board with a caliper when it is here."
    if late := [
        *([counted(len(order.fronts), "front")] if order.fronts else []),
        *([] if order.boxes_made else ["drawer boxes"]),
    ]:
        when = next(d.number for d in plan.days for stage in d.stages if stage.kind == "order")
        yield f"Not yet: {' and '.join(late)}: ordered on day {when}, from boxes that stand."
    if order.arrived:
        yield (
            f"In hand already, not ordered: {counted(len(order.arrived), 'front')}. Store them "
            "flat and dry; they are measured when their turn comes."
        )


def label_words() -> Iterator[str]:
    """Say what goes with each part from the saw on."""
    yield "Labels (labels.pdf): each goes on its piece as it leaves the saw, a front's on arrival."


def try_words(articles: Sequence[FirstArticle]) -> Iterator[str]:
    """Say what is made of scrap, and what it must measure."""
    for article in articles:
        marks = "; ".join(pass_words(mark) for mark in article.marks)
        yield (
            f"{article.kind} '{article.record.name}': {article.front.id} with "
            f"{', '.join(article.boards)}, of scrap ('sheets --first'). mm: {marks}."
        )
