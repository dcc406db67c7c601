"""The README and the pages it links: each of their commands runs and prints what stands there.

The two lines that install are run word for word by .ci/run. `python -m tests.test_readme` writes
the outputs of all pages anew.
"""

import re
import shlex
import tempfile
from pathlib import Path

import pytest
from click import Context

from cli.main import COMMANDS, main
from tests.pages import (
    CAT,
    COMMANDS_PAGE,
    LEFT_OUT,
    PAGES,
    README,
    ROOT,
    agrees,
    anchors,
    commands,
    links,
    ours,
    pictures,
    printed_by,
)  # fmt: skip

HEAD, TAIL = 14, 4
"""Lines kept at both ends of a long output when it is written anew."""


@pytest.mark.slow
@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_each_command_prints_what_its_page_shows(page: Path, tmp_path: Path) -> None:
    """A reader who types along sees the same."""
    for line, shown in ours(page.read_text(encoding="utf-8")):
        printed = printed_by(line, shown, tmp_path)
        assert agrees(shown, printed), f"{line}\n{printed}"


def test_every_command_is_on_a_page() -> None:
    """No command is left for the reader to find out."""
    told = [line for page in PAGES for line, _ in ours(page.read_text(encoding="utf-8"))]
    assert {shlex.split(line)[1] for line in told if not line.startswith(CAT)} >= set(COMMANDS)
    page = COMMANDS_PAGE.read_text(encoding="utf-8")
    assert [name for name in COMMANDS if f"[{name}](#{name}-" not in page] == []


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_each_link_leads_somewhere(page: Path) -> None:
    """To a file of the project, and to a heading that it has; the README reaches every page."""
    for _, to in links(page):
        name, _, anchor = to.partition("#")
        file = (page.parent / name).resolve() if name else page
        assert file.is_file(), to
        assert not anchor or anchor in anchors(file), to
    assert page == README or page in {(README.parent / to).resolve() for _, to in links(README)}
    assert all(file.suffix == ".png" for file in pictures(page))


def test_the_readme_installs_by_two_commands() -> None:
    """One runs the demo, one the tests; .ci/run takes them from here."""
    others = [line for line, _ in commands(README.read_text(encoding="utf-8"))
              if not line.startswith(("jigsheet", CAT))]  # fmt: skip
    assert len(others) == 2
    assert "jigsheet demo" in others[0]
    assert "pytest" in others[1]


def test_the_readme_is_short_and_its_figures_are_those_of_the_demo() -> None:
    """What printing the demo costs, in its table, as the demo says it."""
    text = README.read_text(encoding="utf-8")
    assert text.count("\n") <= 360
    told = COMMANDS_PAGE.read_text(encoding="utf-8")
    for file, beside in (("stations", "13 boxes: "), ("sheets", "| ")):
        found = re.search(
            rf"{file}\.pdf: (\d+ pages, \d+ cards to cut), \d+ folds, (\d+ lines) to strike", told
        )
        assert found is not None
        assert f"{beside}{found[1]}, {found[2]} |" in text


def test_the_readme_names_what_there_is() -> None:
    """Each command, option and key of its prose; one that there is not is missed."""
    prose = re.sub(r"(?ms)^```.*?^```$", "", README.read_text(encoding="utf-8"))
    named = re.findall(r"`([^`]+)`", f"{prose} `jigsheet frob --frob` `frob_at`")
    options = {"--version", "--quiet", "--help"}
    for name in COMMANDS:
        command = main.get_command(Context(main), name)
        assert command is not None
        options.update(option for param in command.params for option in param.opts)
    keys = (ROOT / "jigs" / "JOBFILE.md").read_text(encoding="utf-8")
    ours = "\n".join(each for each in named if not each.startswith(("python", ".venv", "tests/")))
    told = re.findall(r"^jigsheet ([a-z]+)", ours, re.MULTILINE)
    missing = [name for name in told if name not in COMMANDS]
    missing += [each for each in re.findall(r"--[a-z-]+", ours) if each not in options]
    missing += [each for each in re.findall(r"\b[a-z]+_[a-z_]+\b", ours) if each not in keys]
    assert missing == ["frob", "--frob", "frob_at"]


def test_the_comparison_can_fail() -> None:
    """Lines left out are any lines; a wrong line is none."""
    assert agrees("a\n...\nd\n", "a\nb\nc\nd\n")
    assert agrees("a\n...\nd\n", "a\nd\n")
    assert not agrees("a\n...\nd\n", "a\nb\n")
    assert not agrees("a.c\n", "abc\n")


def write_outputs(page: Path) -> None:
    """Write what the commands print into a page."""
    text = page.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as folder:
        for line, shown in ours(text):
            said = printed_by(line, shown, Path(folder))
            if agrees(shown, said):
                continue  # what somebody chose to show of it still holds
            lines = said.splitlines()
            if len(lines) > HEAD + TAIL + 1:
                lines = [*lines[:HEAD], LEFT_OUT, *lines[-TAIL:]]
            printed = "".join(f"{each}\n" for each in lines)
            text = text.replace(f"$ {line}\n{shown}", f"$ {line}\n{printed}", 1)
    page.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    for each in PAGES:
        write_outputs(each)
