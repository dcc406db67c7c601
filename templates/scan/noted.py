"""What is kept of a part: its note, its photo, what was done when; and the forms for them."""

from jigs.progress.standing import Event, Standing
from templates.scan.frame import section
from templates.scan.host import Host
from templates.scan.markup import Html, tag
from templates.words.stepwords import step_done


def noted(standing: Standing, host: Host) -> Html | None:
    """Show note, photo and history, and where one may, the forms for them."""
    part = standing.part
    picture = None
    if standing.photo and host.photo is not None:
        picture = tag("img", src=host.photo(part), alt=f"Photo of {part}", loading="lazy")
    history = None
    if standing.history:
        history = tag(
            "ol", *(_event(each, standing) for each in standing.history), class_="history"
        )
    if not host.marks:
        note = tag("p", standing.note, class_="note") if standing.note else None
        return section("Notes", note, picture, history) if note or picture or history else None
    note_form = tag(
        "form",
        tag("label", "Note", tag("textarea", standing.note, name="note", rows=3, maxlength=2000)),
        tag("button", "Keep the note"),
        method="post", action=f"{host.href(part)}/note",
    )  # fmt: skip
    photo_form = tag(
        "form",
        tag("label", "Photo", tag("input", type="file", name="photo",
                                  accept="image/jpeg,image/png,image/webp", required=True)),
        tag("button", "Keep the photo"),
        method="post", action=f"{host.href(part)}/photo", enctype="multipart/form-data",
    )  # fmt: skip
    remove = None
    if standing.photo:
        remove = tag(
            "form",
            tag("input", type="hidden", name="remove", value="1"),
            tag("button", "Remove the photo"),
            method="post", action=f"{host.href(part)}/photo",
        )  # fmt: skip
    if history is not None:
        history = tag("details", tag("summary", "History"), history)
    return section("Notes", note_form, picture, photo_form, remove, history)


def _event(event: Event, standing: Standing) -> Html:
    """Say what was done when."""
    steps = {step.key: step_done(step) for step in standing.steps}
    step = steps.get(event.step, event.step.replace("-", " "))
    words = {
        "done": step,
        "undone": f"undone: {step}",
        "note": "note written",
        "photo": "photo taken",
        "no-photo": "photo removed",
        "recoded": f"its code changed; it was {event.step}",
    }
    return tag("li", tag("time", event.when), f" {words[event.what]}")
