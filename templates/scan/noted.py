"""What is kept of a part: its note, its photo, what was done when; and the forms for them."""

from jigs.bench.standing import Event, Standing
from templates.scan.frame import section
from templates.scan.host import Host
from templates.scan.markup import Html, tag
from templates.words.stepwords import key_words


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
    note = tag("p", standing.note, class_="note") if standing.note else None
    if not host.marks:
        return section("Notes", note, picture, history) if note or picture or history else None
    forms = [
        _form(
            host, part, "note", "Keep the note",
            tag("label", "Note",
                tag("textarea", standing.note, name="note", rows=3, maxlength=2000)),
        ),
        _form(
            host, part, "photo", "Keep the photo",
            tag("label", "Photo, up to 8 MB",
                tag("input", type="file", name="photo", required=True,
                    accept="image/jpeg,image/png")),
        ),
    ]  # fmt: skip
    if standing.photo:
        hidden = tag("input", type="hidden", name="remove", value="1")
        forms.append(_form(host, part, "photo", "Remove the photo", hidden))
    if history is not None:
        history = tag("details", tag("summary", "History"), history)
    write = tag("details", tag("summary", "Write a note, take a photo"), *forms)
    return section("Notes", note, picture, write, history)


def _form(host: Host, part: str, verb: str, words: str, content: Html) -> Html:
    """Make a form that keeps something of a part."""
    return tag(
        "form", content, tag("button", words), method="post", action=f"{host.href(part)}/{verb}",
        enctype="multipart/form-data" if verb == "photo" else None,
    )  # fmt: skip


def _event(event: Event, standing: Standing) -> Html:
    """Say what was done when."""
    step = key_words(standing.steps, event.step)
    words = {
        "done": step,
        "undone": f"undone: {step}",
        "note": "note written",
        "photo": "photo taken",
        "no-photo": "photo removed",
        "recoded": f"its code changed; it was {event.step}",
    }
    return tag("li", tag("time", event.when), f" {words[event.what]}")
