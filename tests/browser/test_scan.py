"""The scan pages in a real browser: from the scanned link to the marked part."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner
from PIL import Image
from playwright.sync_api import Page, expect

from cli.main import main
from cli.serving.site import MOST_BYTES
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.browser.conftest import DESK, SHORT, SIZES, Open, audit, folder_of
from tests.cli.serving.test_photos import photo
from tests.cli.test_labels_link import read_symbols
from tests.served import Server

pytestmark = pytest.mark.slow


def scanned(server: Server, part: str) -> str:
    """Give the link on the label of a part."""
    return f"{server.base}/p/{part}?k={server.key}"


def next_button(page: Page) -> str:
    return page.locator("button.next").inner_text()


def test_a_scanned_link_shows_the_part_marked_and_its_next_step(
    server: Server, visit: Open
) -> None:
    """Its ID as the heading, its wall with one part filled, one large button for a thumb."""
    page = visit(scanned(server, "B2-1"))
    expect(page.get_by_role("heading", level=1)).to_have_text("B2-1")
    button = page.locator("button.next")
    box = button.bounding_box()
    assert box is not None
    assert box["height"] >= 44
    assert box["width"] >= 200
    assert page.get_by_role("img").count() >= 2


def test_a_short_phone_says_the_next_step_on_its_first_screen(server: Server, visit: Open) -> None:
    """At its foot, until the step itself is in sight: a link that leads there and marks nothing.
    A taller one shows the button and no link."""
    page = visit(scanned(server, "B2-4"), viewport=SHORT)
    link, button = page.locator(".down a"), page.locator("button.next")
    box, high = link.bounding_box(), SHORT["height"]
    assert box is not None
    assert box["height"] >= 44
    assert high / 2 < box["y"] < box["y"] + box["height"] <= high
    before = button.inner_text()
    assert link.inner_text() == f"Next: {before}"
    link.click()
    expect(button).to_be_in_viewport(ratio=1.0)
    expect(link).not_to_be_in_viewport()
    assert button.inner_text() == before
    expect(visit(scanned(server, "B2-4")).locator(".down a")).to_be_hidden()


def test_a_printed_label_leads_to_its_page(server: Server, visit: Open, tmp_path: Path) -> None:
    """Printed with the address of the server, read by an independent reader, opened: the phone is
    let in and may mark."""
    out = tmp_path / "labels.pdf"
    words = ("--payload", "link", "--base", server.base, "--only", "B1-2", "-o", str(out))
    CliRunner().invoke(main, ["labels", str(folder_of(server) / "job.toml"), *words])
    (link,) = set(read_symbols(out))
    page = visit(link)
    expect(page.get_by_role("heading", level=1)).to_have_text("B1-2")
    expect(page.locator("button.next")).to_be_visible()


def test_a_mark_is_seen_by_the_other_phone_and_undone(server: Server, visit: Open) -> None:
    """Who marks one sees the next; so does whoever looks after that; undo takes it back."""
    one, other = (visit(scanned(server, "B2-2")) for _ in range(2))
    first = next_button(one)
    one.locator("button.next").click()
    expect(one.locator("button.next")).not_to_have_text(first)
    assert "k=" not in one.url
    other.reload()
    assert next_button(other) == next_button(one)
    other.locator("button.undo").click()
    expect(other.locator("button.next")).to_have_text(first)
    one.reload()
    assert next_button(one) == first


def test_two_phones_press_the_same_button(server: Server, visit: Open) -> None:
    """The step is done once: the second phone does not mark the one after it."""
    one, other = (visit(scanned(server, "B2-3")) for _ in range(2))
    for page in (one, other):
        page.locator("button.next").click()
        expect(page.locator("button.undo")).to_be_visible()
    assert next_button(one) == next_button(other)


def test_without_script_all_works(server: Server, visit: Open) -> None:
    """Mark and search are forms."""
    page = visit(scanned(server, "B2-4"), java_script_enabled=False)
    first = next_button(page)
    page.locator("button.next").click()
    expect(page.locator("button.next")).not_to_have_text(first)
    page.get_by_role("searchbox").fill("b1-2")
    page.get_by_role("button", name="Find").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("B1-2")


def test_a_keyboard_marks_a_step(server: Server, visit: Open) -> None:
    """Tab comes to the button, and one sees where one is."""
    page = visit(scanned(server, "T1-3"), viewport=DESK)
    first = next_button(page)
    for _ in range(30):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.className").startswith("next"):
            break
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") != "none"
    page.keyboard.press("Enter")
    expect(page.locator("button.next")).not_to_have_text(first)


def test_an_id_is_found_by_its_beginning(server: Server, visit: Open) -> None:
    """Whole, it leads to its part; in part, to a list of links."""
    page = visit(f"{server.base}/?k={server.key}")
    search = page.get_by_role("searchbox").first
    search.fill("w2-1")
    search.press("Enter")
    page.get_by_role("link", name=re.compile("^W2-1L")).first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("W2-1L")
    page.get_by_role("searchbox").first.fill("s3-2")
    page.get_by_role("searchbox").first.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_have_text("S3-2")


def test_a_photo_and_a_note_are_kept(server: Server, visit: Open, tmp_path: Path) -> None:
    """The photo is seen; what looks like script in a note is words."""
    page = visit(scanned(server, "W1-1"))
    file = tmp_path / "photo.jpg"
    file.write_bytes(photo((800, 600)))
    page.locator("summary", has_text="note").click()
    page.locator("input[type=file]").set_input_files(file)
    page.get_by_role("button", name="Keep the photo").click()
    picture = page.locator("img")
    expect(picture).to_be_visible()
    assert picture.evaluate("each => each.naturalWidth") == 800
    summary = page.locator("summary", has_text="note")
    if not page.locator("textarea").is_visible():
        summary.click()
    said = "<script>alert(1)</script> Kante ß"
    page.locator("textarea").fill(said)
    page.get_by_role("button", name="Keep the note").click()
    expect(page.get_by_text(said).first).to_be_attached()


def test_a_photo_is_made_small_before_it_is_sent(
    server: Server, visit: Open, tmp_path: Path
) -> None:
    """One of more bytes than the server takes arrives all the same."""
    file = tmp_path / "photo.png"
    Image.new("RGB", (1700, 1700)).save(file, "PNG", compress_level=0)
    assert file.stat().st_size > MOST_BYTES
    page = visit(scanned(server, "W3-1"))
    page.locator("summary", has_text="note").click()
    page.locator("input[type=file]").set_input_files(file)
    for _ in range(50):  # waiting within the page is what its policy refuses
        if page.evaluate("document.querySelector('[type=file]').files[0].size") < MOST_BYTES / 4:
            break
        page.wait_for_timeout(100)
    page.get_by_role("button", name="Keep the photo").click()
    expect(page.locator("img")).to_be_visible()
    assert page.locator("img").evaluate("each => each.naturalWidth") == 1600


def test_a_held_part_says_hold_and_has_no_button(server: Server, visit: Open) -> None:
    """What is not certain is not drilled, hung or painted: at most it arrives."""
    layout = lay_out(read_job(folder_of(server) / "job.toml"))
    held = next(front.id for front in layout.fronts if front.held)
    page = visit(scanned(server, held))
    expect(page.get_by_text("HOLD").first).to_be_visible()
    page.locator("button.next").click()
    expect(page.locator("button.undo")).to_be_visible()
    expect(page.locator("button.next")).to_have_count(0)


PAGES = ("/", "/?list=cut", "/p/B1-2", "/p/B1-SIDE-L", "/p/T1-3-BOX")


@pytest.mark.parametrize(
    ("scheme", "size", "pages"),
    [
        ("light", "phone", PAGES),
        ("dark", "phone", PAGES),
        ("light", "short", ("/p/B1-2",)),
        ("light", "desk", ("/", "/p/B1-2")),
    ],
)
def test_the_audit_finds_nothing_serious(
    server: Server, visit: Open, scheme: str, size: str, pages: tuple[str, ...]
) -> None:
    """By the rules of WCAG as axe-core has them, contrast among them; on every kind of page."""
    page = visit(f"{server.base}/?k={server.key}", color_scheme=scheme, viewport=SIZES[size])
    for address in pages:
        page.goto(f"{server.base}{address}")
        assert audit(page) == [], address


def test_the_audit_can_fail(server: Server, visit: Open) -> None:
    """Pale words and a picture without words are found."""
    page = visit(f"{server.base}/?k={server.key}")
    page.evaluate(
        "document.querySelector('main').innerHTML += '<p class=pale>pale</p><img src=\"data:,\">';"
        "document.querySelector('.pale').style.color = '#ddd'"
    )
    found = " ".join(audit(page))
    assert "color-contrast" in found
    assert "image-alt" in found


@pytest.mark.parametrize("size", sorted(SIZES))
def test_nothing_is_wider_than_the_screen(server: Server, visit: Open, size: str) -> None:
    """Nobody scrolls sideways with dusty hands; what is pressed is large enough for a thumb."""
    page = visit(f"{server.base}/?k={server.key}", viewport=SIZES[size])
    for address in PAGES:
        page.goto(f"{server.base}{address}")
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= SIZES[size]["width"], address
        low = page.locator("button, summary, input:not([type=hidden])").evaluate_all(
            "all => all.filter(each => each.checkVisibility())"
            ".map(each => [each.getBoundingClientRect().height, each.outerHTML.slice(0, 60)])"
            ".filter(each => each[0] < 40)"
        )
        assert low == [], address
