"""What is done next with a part: one large button, its caution, what it waits for, all steps."""

from collections.abc import Sequence

from jigs.bench.standing import Standing, Step, Wait
from jigs.bench.tracked import Tracked
from jigs.ground.grouped import grouped
from templates.scan.frame import section
from templates.scan.host import Host
from templates.scan.markup import Html, join, tag
from templates.scan.scan import Scan
from templates.words.stepwords import (
    after_words,
    step_cautions,
    step_done,
    step_order,
    wait_words,
)


def next_step(scan: Scan, part: Tracked, standing: Standing, host: Host) -> Html | None:
    """Show the next step with its caution, what it waits for, and all steps in order."""
    unit = scan.layout.job.shown
    rows = scan.rows(part.id)
    step = standing.next
    said: list[Html | None] = []
    if host.book:
        return section("Steps", _in_full(scan, part, standing, host)) if standing.steps else None
    if step is not None:
        order = step_order(step, rows, unit)
        cautions = step_cautions(step, part, rows)
        if host.marks and all(wait.step is not None for wait in standing.waits):
            kind = "next later" if standing.waits else "next"
            said.append(_form(host, part, "mark", step, order, kind))
        else:
            said.append(tag("p", order, class_="next"))
        if cautions:
            said.append(tag("p", tag("b", "Caution. "), " ".join(cautions), class_="caution"))
    elif standing.steps:
        said.append(tag("p", "All done.", class_="next"))
    if host.marks and standing.last is not None:
        undo = f"Undo: {step_done(standing.last)}"
        said.append(_form(host, part, "undo", standing.last, undo, "undo"))
    if standing.waits:
        said.append(_waits(standing, host))
    if standing.steps:
        said.append(
            tag("ol", *(_step(each, standing, step) for each in standing.steps), class_="steps")
        )
    return section("Next", *said, kind="work", anchor="next") if said else None


def way_down(scan: Scan, part: Tracked, standing: Standing, host: Host) -> Html | None:
    """Say the next step once more, on its way: a link that a low screen keeps at its foot until the
    step itself comes in sight. It marks nothing, so that no thumb does in passing."""
    if host.book or standing.next is None:
        return None
    order = step_order(standing.next, scan.rows(part.id), scan.layout.job.shown)
    return tag("p", tag("a", f"Next: {order}", href="#next"), class_="down")


def _in_full(scan: Scan, part: Tracked, standing: Standing, host: Host) -> Html:
    """List all steps as orders, each with what it waits for: a book does not know what is done."""
    rows, unit = scan.rows(part.id), scan.layout.job.shown
    waits = scan.courses[part.id].waits
    cautions = dict.fromkeys(
        text for step in standing.steps for text in step_cautions(step, part, rows)
    )
    return join(
        (
            tag("ol", *(_order(step_order(step, rows, unit), waits.get(step.key, ()), host)
                  for step in standing.steps),
                class_="full"),
            tag("p", tag("b", "Caution. "), " ".join(cautions), class_="caution")
            if cautions
            else None,
        )
    )  # fmt: skip


def _order(order: str, waits: Sequence[Wait], host: Host) -> Html:
    """Say an order, and after what: `Hang it, after W2-SIDE-L: plates and slides on`."""
    said: list[str] = [order]
    for words, parts in grouped((after_words(wait), wait.part) for wait in waits).items():
        said.append("; after " if len(said) > 1 else ", after ")
        for number, part in enumerate(parts):
            said += [", " if number else "", tag("a", part, href=host.href(part))]
        said.append(f": {words}")
    return tag("li", *said)


def _form(host: Host, part: Tracked, verb: str, step: Step, words: str, kind: str) -> Html:
    """Make a button that marks a step, done by the figures that stand here, or takes it back."""
    return tag(
        "form",
        tag("input", type="hidden", name="step", value=step.key),
        tag("input", type="hidden", name="code", value=part.code) if verb == "mark" else None,
        tag("button", words, class_=kind),
        method="post", action=f"{host.href(part.id)}/{verb}",
    )  # fmt: skip


def _waits(standing: Standing, host: Host) -> Html:
    """Name what a step waits for, each with a link to it."""
    lines = (
        tag("a", tag("b", wait.part), f" {wait_words(wait)}", href=host.href(wait.part))
        for wait in standing.waits
    )
    return tag(
        "div", tag("h3", "It waits until"),
        tag("ul", *(tag("li", line) for line in lines), class_="lists"), class_="waits",
    )  # fmt: skip


def _step(step: Step, standing: Standing, following: Step | None) -> Html:
    """Show a step in the row of all: done or not in a word too, for who hears the page."""
    done = step.key in standing.done
    state = "done" if done else "now" if step == following else "todo"
    mark = {"done": "✓", "now": "▶", "todo": "○"}[state]
    told = {"done": "done: ", "now": "next: ", "todo": "to come: "}[state]
    old = " (by older figures)" if step in standing.outdated_work else ""
    return tag(
        "li",
        tag("span", mark, aria_hidden="true"),
        tag("span", told, class_="heard"),
        f"{step_done(step)}{old}",
        class_=state,
        aria_current="step" if state == "now" else None,
    )
