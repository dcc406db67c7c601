"""The pages of parts: sound markup, everything escaped, what is held or stale said on top."""

from collections.abc import Sequence
from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.bench.standing import Event, Standing
from jigs.box.parts import Layout
from jigs.given.job import BandState, FrontSpec
from jigs.given.stated import Hung
from templates.scan.frame import STYLE
from templates.scan.homepage import home_page
from templates.scan.host import Host
from templates.scan.partpage import SIZES, part_page
from tests.jigs.sample import box, lay
from tests.templates.kitchens import galley, workshop
from tests.templates.scan.shown import SERVED, Node, Shown, done, read, show

ROOT = Path(__file__).parents[3]
MOST = 60_000
"""Bytes of a part's page: it comes over a weak network (our own choice)."""
ATTACK = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>"
KITCHENS = (galley(), workshop())


def page_of(shown: Shown, part: str, standing: Standing | None = None, host: Host = SERVED) -> Node:
    return read(part_page(shown.scan, part, standing or shown.standings[part], host))


def check_sound(root: Node) -> None:
    """One heading of the first order, no style or script within, a name for all that is pressed
    or seen."""
    assert len(list(root.all("h1"))) == 1
    for node in root.all("*"):
        assert not [name for name in node.given if name == "style" or name.startswith("on")]
        assert node.name != "style"
        if node.name == "script":
            assert node.text == ""
        if node.name in ("button", "a", "summary"):
            assert node.text.strip()
        if node.name == "svg":
            assert node.given.get("aria-hidden") == "true" or node.given["aria-label"]
    labelled = [each for label in root.all("label") for each in label.all("*")]
    for name in ("input", "textarea"):
        for node in root.all(name):
            assert node.given.get("type") == "hidden" or node in labelled


def test_no_door_with_its_hand_is_called_reversible() -> None:
    """Its cups may mirror top to bottom, but a door that has its hand, and its pull, is not turned:
    only that it is NOT reversible is told."""
    for heights, told in (((97.75, 673.75), False), ((97.75, 672.25), True)):
        door = FrontSpec(id="B1-1", kind="door", hinged="left", hung=Hung(hinges_at=heights))
        text = page_of(show(lay(box(door))), "B1-1").text.lower()
        assert ("not reversible" in text) is told
        assert text.count("reversible") == told


@pytest.mark.parametrize("layout", KITCHENS)
def test_every_part_has_a_sound_page_of_moderate_weight(layout: Layout) -> None:
    """Whatever part a label names, its page opens, in one small file."""
    shown = show(layout)
    for part in shown.scan.parts:
        page = part_page(shown.scan, part, shown.standings[part], SERVED)
        assert len(page.encode()) < MOST, part
        root = read(page)
        check_sound(root)
        assert root.one("h1").text == part


@pytest.mark.parametrize("layout", KITCHENS)
def test_the_home_page_leads_to_every_part(layout: Layout) -> None:
    """Nothing has to be scanned to be found."""
    shown = show(layout)
    root = read(home_page(shown.scan, shown.standings, SERVED))
    check_sound(root)
    links = {link.given["href"] for link in root.all("a")}
    assert {f"/p/{part}" for part in shown.scan.parts} <= links


def test_the_button_is_the_next_step_and_undo_takes_back_the_last() -> None:
    """A thumb marks what was done, and can take it back."""
    shown = show(galley())
    standing = done(shown.standings["B3-2"], "arrived")
    root = page_of(shown, "B3-2", standing)
    mark, undo = (form for form in root.one("section", "work").all("form"))
    assert mark.given["action"] == "/p/B3-2/mark"
    assert mark.given["method"] == "post"
    sent = {field.given["name"]: field.given["value"] for field in mark.all("input")}
    assert sent == {"step": "bored-cups", "code": shown.scan.parts["B3-2"].code}
    assert mark.one("button").text.startswith(
        "Bore the cups: station CUPS RIGHT, hinge edge on your RIGHT, line"
    )
    assert undo.given["action"] == "/p/B3-2/undo"
    assert undo.one("input").given["value"] == "arrived"
    assert undo.one("button").text == "Undo: arrived"
    assert "NO GLOVES" in root.one("p", "caution").text


def test_all_done_has_no_button() -> None:
    """Nothing is left to press."""
    shown = show(galley())
    steps = shown.standings["B3-2"].steps
    root = page_of(shown, "B3-2", done(shown.standings["B3-2"], *(step.key for step in steps)))
    assert "All done." in root.text
    assert "/p/B3-2/mark" not in {form.given["action"] for form in root.all("form")}


def test_a_reader_has_no_button_at_all() -> None:
    """Where one may only read, nothing can be pressed."""
    shown = show(galley())
    root = page_of(shown, "B3-2", host=Host(href="/p/{}".format))
    assert {form.given.get("method") for form in root.all("form")} <= {None}


def test_a_reader_sees_how_far_all_is() -> None:
    """Who may only look sees progress and lists as who marks does."""
    shown = show(galley())
    root = read(home_page(shown.scan, shown.standings, Host(href="/p/{}".format)))
    assert "steps done" in root.text
    assert "/?list=arrived" in {link.given["href"] for link in root.all("a")}


def test_what_is_held_has_no_button() -> None:
    """A step that must not be taken cannot be marked."""
    shown = show(galley())
    standing = replace(
        done(shown.standings["B9-1"], "arrived"), waits=shown.courses["B9-1"].waits["hung"]
    )
    root = page_of(shown, "B9-1", standing)
    assert "/p/B9-1/mark" not in {form.given.get("action") for form in root.all("form")}
    assert "is no longer held back" in root.one("div", "waits").text


def test_what_a_part_waits_for_is_named_and_linked() -> None:
    """One goes to the part that is missing by a touch."""
    shown = show(galley())
    steps = [step.key for step in shown.standings["B3-2"].steps]
    before = steps[: steps.index("hung")]
    standing = replace(
        done(shown.standings["B3-2"], *before), waits=shown.courses["B3-2"].waits["hung"]
    )
    waits = page_of(shown, "B3-2", standing).one("div", "waits")
    assert "B3-SIDE-L has its plates and slides on" in waits.text
    assert next(waits.all("a")).given["href"] == "/p/B3-SIDE-L"


def banners(root: Node, kind: str) -> list[str]:
    return [each.text for each in root.all("div", kind)]


@pytest.mark.parametrize(("band", "told"), [(None, True), ("on", False), ("later", False)])
def test_a_board_that_may_be_bare_says_that_its_figures_are_of_the_finished_edge(
    band: BandState | None, told: bool
) -> None:
    """37.0 behind the finished edge is 36.4 behind the bare one (a band of 0.6)."""
    door = box(FrontSpec(id="B1-1", kind="door", hinged="left"))
    said = page_of(show(lay(replace(door, band=band))), "B1-SIDE-L").one("div", "face").text
    assert ("FINISHED one: before its band is on, 0.6 mm less" in said) is told


def test_a_held_part_says_so_on_top_with_its_reason_and_remedy() -> None:
    """A door whose hand nobody stated is not drilled by its page."""
    root = page_of(show(galley()), "B9-1")
    [said] = banners(root, "hold")
    assert said.startswith("HOLD: Hand not stated: ")
    assert "Bore" not in "".join(each.text for each in root.all("button"))
    assert "CODE" not in root.one("p", "code").text


def test_stale_paper_and_a_part_that_is_gone_are_told() -> None:
    """What was printed before an edit is not drilled by; what was noted is not lost."""
    shown = show(galley())
    stale = page_of(shown, "B3-2", replace(shown.standings["B3-2"], stale="OLD1"))
    assert any("Paper with code OLD1 is stale" in each for each in banners(stale, "open"))
    assert banners(stale, "hold") == []
    bored = replace(done(shown.standings["B3-2"], "arrived", "bored-cups"), stale="OLD1",
                    outdated=frozenset({"bored-cups"}))  # fmt: skip
    [said] = banners(page_of(shown, "B3-2", bored), "hold")
    assert said.startswith("HOLD: Cups bored before its figures changed. Compare every figure")
    other = replace(bored, outdated=frozenset({"bored-cups", "bored-by-hand"}))
    [said] = banners(page_of(shown, "B3-2", other), "hold")
    assert said.startswith("HOLD: Cups bored, bored by hand before its figures changed."), "gone"
    gone = Standing(part="B7-1", steps=(), note="dented", vanished=True)
    root = page_of(shown, "B7-1", gone)
    check_sound(root)
    assert any("has this part no more" in each for each in banners(root, "hold"))
    assert root.one("textarea").text == "dented"


@pytest.mark.parametrize("text", [ATTACK, "a & b < c", "Küche Łódź"])
def test_every_text_of_the_person_stays_text(text: str) -> None:
    """Notes, names and searches are shown as they were written, and never obeyed."""
    layout = lay(box(FrontSpec(id="B1-1", kind="door", hinged="left"), name="B1", wall=text))
    layout = replace(layout, job=replace(layout.job, name=text))
    shown = show(layout)
    event = Event(when=text, what="done", step=text)
    standing = replace(shown.standings["B1-1"], note=text, photo=text, history=(event,))
    pages: Sequence[str] = (
        part_page(shown.scan, "B1-1", standing, replace(SERVED, faults=(text,))),
        home_page(shown.scan, shown.standings, SERVED, search=text),
        home_page(shown.scan, shown.standings, SERVED, chosen=text),
    )
    for page in pages:
        root = read(page)
        check_sound(root)
        assert not [img for img in root.all("img") if img.given["src"] == "x"]
    assert read(pages[0]).one("textarea").text == text
    assert read(pages[1]).one("h1").text == text


def test_searching_finds_by_a_piece_of_the_id() -> None:
    """What is typed with a thumb is a few signs, in small letters."""
    shown = show(galley())
    root = read(home_page(shown.scan, shown.standings, SERVED, search="3-2"))
    found = next(root.all("section"))
    assert [name.text for name in found.all("b")][:1] == ["B3-2"]
    assert "No" not in found.one("h2").text
    none = read(home_page(shown.scan, shown.standings, SERVED, search="zz"))
    assert "0 parts with ZZ" in next(none.all("section")).text


def test_a_list_has_what_is_ready_and_what_waits_apart() -> None:
    """Who drills today takes what can be drilled today."""
    shown = show(galley())
    standings = dict(shown.standings)
    for part in ("B3-2", "W1-1L"):
        standings[part] = done(standings[part], "arrived")
    standings["B3-1"] = replace(
        done(standings["B3-1"], "arrived"), waits=shown.courses["B3-2"].waits["hung"]
    )
    root = read(home_page(shown.scan, standings, SERVED, chosen="bored"))
    found = next(root.all("section"))
    ready, waiting = found.all("ul")
    assert [name.text for name in ready.all("b")] == ["B3-2", "W1-1L"]
    assert [name.text for name in waiting.all("b")] == ["B3-1"]


def test_every_length_of_an_id_has_its_size_of_letters() -> None:
    """An ID is as large as the width holds, the longest on two lines."""
    assert all(f".n{size} {{ font-size:" in STYLE for size in SIZES)
    assert sorted(SIZES) == list(SIZES)
    root = page_of(show(workshop()), "B3-1")
    assert root.one("h1").given["class"] == "id n4"
