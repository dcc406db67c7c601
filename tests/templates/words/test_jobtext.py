"""A draft as TOML: what is written reads back, whatever is in it."""

import tomllib

from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.asking.draft import Draft, DraftLine, DraftTable
from templates.words.jobtext import job_text, toml_value
from tests.anytext import ANY

TEXTS = st.text(ANY, max_size=20)


@settings(max_examples=30)
@given(TEXTS, st.lists(TEXTS, max_size=3))
def test_any_text_reads_back(text: str, texts: list[str]) -> None:
    """Quotes, control characters and letters of any script."""
    read = tomllib.loads(f"a = {toml_value(text)}\nb = {toml_value(tuple(texts))}\n")
    assert read == {"a": text, "b": texts}


@settings(max_examples=30)
@given(TEXTS)
def test_no_name_breaks_out_of_the_comment_at_the_top(name: str) -> None:
    """It stands in a comment and as a text."""
    top = DraftTable(name="", lines=(DraftLine("name", name),))
    assert tomllib.loads(job_text(Draft(sections=(top,)))) == {"name": name}


def test_what_is_open_stands_behind_a_hash_and_reads_when_that_is_taken_away() -> None:
    """A key that is not said is no key yet."""
    lines = (DraftLine("side", "18.3 mm"), DraftLine("back", "6 mm", open=True, wanted=True))
    draft = Draft(
        sections=(
            DraftTable(name="", lines=(DraftLine("name", "x"),)),
            DraftTable(name="material", lines=lines),
        )
    )
    text = job_text(draft)
    assert tomllib.loads(text)["material"] == {"side": "18.3 mm"}
    filled = text.replace('# back = "6 mm"', 'back = "6 mm"')
    assert tomllib.loads(filled)["material"] == {"side": "18.3 mm", "back": "6 mm"}
    assert draft.still_open == ("material.back",)
