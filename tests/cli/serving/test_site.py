"""The pages as a browser asks for them: who is let in, what is done, what nobody is told."""

import os
from pathlib import Path
from urllib.parse import quote

import pytest

from cli.serving import site
from cli.serving.access import HEADERS
from tests.cli.serving.asking import Browser, marks, stranger
from tests.cli.serving.test_photos import photo

SCRIPT = "<script>alert(1)</script>"


# The way of a part


def test_a_scanned_link_shows_its_part_and_the_next_step(browser: Browser) -> None:
    """The key in it opens the page at once; then the cookie does."""
    browser.cookie = ""
    got = browser.get(f"/p/B1-2?k={browser.key}")
    assert got.status == 200
    assert "B1-2" in got.text
    browser.cookie = got.headers["Set-Cookie"].partition(";")[0]
    assert browser.get("/p/B1-2").status == 200


def test_a_step_is_marked_and_undone(browser: Browser) -> None:
    """After either the browser goes back to the page; twice is as good as once."""
    for _ in range(2):
        got = browser.post("/p/B1-2/mark", {"step": "arrived"})
        assert (got.status, got.headers["Location"]) == (303, "/p/B1-2")
        assert marks(browser) == ["arrived"]
    for _ in range(2):
        assert browser.post("/p/B1-2/undo", {"step": "arrived"}).status == 303
        assert marks(browser) == []


def test_who_marks_with_the_key_in_the_address_keeps_it_there(browser: Browser) -> None:
    """Without a cookie the way back needs it."""
    browser.cookie = ""
    got = browser.post(f"/p/B1-2/mark?k={browser.key}", {"step": "arrived"})
    assert (got.status, got.headers["Location"]) == (303, f"/p/B1-2?k={browser.key}")


def test_a_step_that_a_part_has_not_is_refused(browser: Browser) -> None:
    """The message names those it has; nothing is kept."""
    got = browser.post("/p/B1-2/mark", {"step": SCRIPT})
    assert got.status == 400
    assert "bored-cups" in got.text
    assert SCRIPT not in got.text
    assert browser.post("/p/B1-2/mark").status == 400
    assert browser.post("/p/B9-9/mark", {"step": "arrived"}).status == 404
    assert browser.store.history() == ()


def test_a_step_waits_for_those_before_it(browser: Browser) -> None:
    """Hung would say that it is bored: the message names what to mark first, in order."""
    got = browser.post("/p/B1-2/mark", {"step": "hung"})
    assert got.status == 409
    assert "not so far yet" in got.text
    assert "Mark first what comes before, as it is done: arrived; cups bored" in got.text
    assert browser.post("/p/B1-2/mark", {"step": "bored-cups"}).status == 409
    assert browser.store.history() == ()
    for step in ("arrived", "bored-cups"):
        assert browser.post("/p/B1-2/mark", {"step": step}).status == 303
    assert marks(browser) == ["arrived", "bored-cups"]


def test_what_is_held_back_may_arrive_and_no_more(held: Path) -> None:
    """A door without a hand is not painted or hung."""
    with stranger(held) as opened:
        browser = opened.let_in()
        assert browser.post("/p/B1-2/mark", {"step": "arrived"}).status == 303
        assert browser.post("/p/B1-2/mark", {"step": "hung"}).status == 409
        assert marks(browser) == ["arrived"]


def test_a_typed_id_finds_its_part(browser: Browser) -> None:
    """In small letters, with a blank, in the address or in the search."""
    assert browser.get("/p/b1-2").headers["Location"] == "/p/B1-2"
    assert browser.get("/?q=+b1-2+").headers["Location"] == "/p/B1-2"
    found = browser.get("/?q=b1").text
    assert "/p/B1-1" in found
    assert "/p/B1-2" in found
    assert "KÜCHE" in browser.get(f"/?q={quote('Küche')}").text.upper()


def test_a_note_is_kept_as_it_was_written(browser: Browser) -> None:
    """In any script, line by line, without what cannot be seen."""
    said = "Kante oben: Ä, Łódź, Κουζίνα\r\nsecond line \u202e\x07"
    assert browser.post("/p/B1-2/note", {"note": said}).status == 303
    assert browser.store.kept()["B1-2"].note == "Kante oben: Ä, Łódź, Κουζίνα\nsecond line"
    assert "Κουζίνα" in browser.get("/p/B1-2").text
    browser.post("/p/B1-2/note", {"note": " "})
    assert browser.store.kept()["B1-2"].note == ""


def test_a_photo_is_taken_shown_and_taken_away(browser: Browser) -> None:
    """What is shown is what was drawn anew."""
    assert browser.send("/p/B1-2/photo", photo()).headers["Location"] == "/p/B1-2"
    shown = browser.get("/p/B1-2/photo")
    assert shown.headers["Content-Type"] == "image/jpeg"
    assert shown.body.startswith(b"\xff\xd8\xff")
    assert "/p/B1-2/photo" in browser.get("/p/B1-2").text
    assert browser.post("/p/B1-2/photo", {"remove": "1"}).status == 303
    assert browser.get("/p/B1-2/photo").status == 404


def test_a_part_has_its_sheet(browser: Browser) -> None:
    """As a PDF; what has no holes has none, and says so."""
    got = browser.get("/p/B1-2/sheet.pdf")
    assert (got.headers["Content-Type"], got.body[:5]) == ("application/pdf", b"%PDF-")
    assert browser.get("/p/B1-BACK/sheet.pdf").status == 404
    assert browser.get("/p/B1-BACK/stations.pdf").status == 404
    stations = browser.get("/p/B1-2/stations.pdf")
    assert stations.status == 200
    assert stations.body.startswith(b"%PDF")
    assert browser.get("/elevations.pdf").body[:5] == b"%PDF-"


def test_the_head_of_an_answer_is_that_of_the_answer(browser: Browser) -> None:
    """HEAD asks for no body."""
    whole, head = browser.get("/p/B1-2"), browser.ask("HEAD", "/p/B1-2")
    assert (head.status, head.body) == (200, b"")
    assert head.headers["Content-Length"] == whole.headers["Content-Length"]
    assert browser.ask("HEAD", "/p/B9-9").body == b""


# The job is edited meanwhile


def test_an_edited_job_is_read_anew_and_the_marks_stay(browser: Browser) -> None:
    """A bit further from the edge: another code, so the old paper is stale; the mark stays."""
    browser.post("/p/B1-2/mark", {"step": "arrived"})
    old = browser.store.kept()["B1-2"].codes[-1]
    edit(browser.job, 'width = "18"', 'width = "20"')
    assert old in browser.get("/p/B1-2").text
    assert browser.store.kept()["B1-2"].codes[-1] != old
    assert marks(browser) == ["arrived"]


def test_what_was_done_by_a_page_before_the_edit_was_done_by_its_figures(browser: Browser) -> None:
    """A door is bored, the job is edited, and only then is the button pressed: the mark has the
    code of that page, so that the next one warns. A code that the part never had counts for
    nothing."""
    browser.post("/p/B1-2/mark", {"step": "arrived"})
    (old,) = browser.store.kept()["B1-2"].codes
    edit(browser.job, 'width = "18"', 'width = "20"')
    browser.post("/p/B1-2/mark", {"step": "bored-cups", "code": old})
    assert browser.store.kept()["B1-2"].marks["bored-cups"] == old
    assert "before its figures changed" in browser.get("/p/B1-2").text
    browser.post("/p/B1-2/mark", {"step": "bored-pulls", "code": SCRIPT})
    door = browser.store.kept()["B1-2"]
    assert door.marks["bored-pulls"] == door.codes[-1]


def test_a_fault_in_the_job_is_said_and_the_last_layout_stays(browser: Browser) -> None:
    """Until it is mended; a file that is gone for a moment is one too."""
    before = browser.get("/p/B1-2").text
    edit(browser.job, 'hinged = "left"', 'hinged = "lefft"')
    faulty = browser.get("/p/B1-2")
    assert faulty.status == 200
    assert "lefft" in faulty.text
    assert "lefft" in browser.get("/").text
    assert str(browser.job.parent) not in faulty.text
    edit(browser.job, "lefft", "left")
    assert browser.get("/p/B1-2").text == before
    aside = browser.job.rename(browser.job.with_suffix(".aside"))
    assert browser.get("/p/B1-2").status == 200
    assert browser.get("/p/B1-2").text != before
    aside.rename(browser.job)
    assert browser.get("/p/B1-2").text == before


def test_a_job_that_makes_the_tool_stumble_is_not_taken_for_the_one_shown(
    browser: Browser, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """What is shown is older, and says so, on every page until the file changes again."""

    def stumble(*_: object) -> None:
        raise ZeroDivisionError

    with monkeypatch.context() as patched:
        patched.setattr("templates.scan.scan.cut_list", stumble)
        edit(browser.job, 'width = "18"', 'width = "20"')
        for _ in range(2):
            assert "cannot be laid out" in browser.get("/p/B1-2").text
    assert "ZeroDivisionError" in capfd.readouterr().err
    edit(browser.job, 'width = "20"', 'width = "19"')
    assert "cannot be laid out" not in browser.get("/p/B1-2").text


def test_a_part_that_vanished_keeps_what_was_said_of_it(browser: Browser) -> None:
    """It is shown as gone; nothing more is marked, but a note may still be written."""
    browser.post("/p/B1-2/mark", {"step": "arrived"})
    edit(browser.job, '  [[box.front]]\n  kind = "door"\n  hinged = "left"\n', "")
    assert browser.get("/p/B1-2").status == 200
    assert "/p/B1-2" in browser.get("/?list=gone").text
    assert browser.post("/p/B1-2/mark", {"step": "arrived"}).status == 409
    assert browser.post("/p/B1-2/note", {"note": "made a shelf of it"}).status == 303
    assert marks(browser) == ["arrived"]


def edit(job: Path, before: str, after: str) -> None:
    """Change a job as an editor does: the file is replaced."""
    text = job.read_text(encoding="utf-8")
    assert before in text
    aside = job.with_suffix(".new")
    aside.write_text(text.replace(before, after), encoding="utf-8")
    os.replace(aside, job)


# What nobody is told, and what does no harm


@pytest.mark.parametrize(
    "address",
    [
        "/p/B9-9", "/nowhere", "/p/B1-2/nowhere", "/p/B1-2/photo", "/p/../../etc/passwd",
        "/p/%2e%2e", "/p/B1-2/..", "/p/\x00", "/p/\xff\xfe", "/static/../job.toml", "//", "/p/",
        "/p/..\\..\\job.toml", "/small.toml", "/p/B1-2/sheet.pdf/..", "/style.css/x",
    ],
)  # fmt: skip
def test_an_error_has_neither_the_key_nor_a_file_in_it(browser: Browser, address: str) -> None:
    """There is nothing but what the routes say: no file of the disk has an address."""
    got = browser.get(f"{address}?k={browser.key}")
    assert got.status == 404
    assert browser.key not in got.text
    assert "root:" not in got.text
    assert "schema" not in got.text


def test_no_address_takes_a_path_and_no_cookie_is_decoded() -> None:
    """A part of an address ends at the next stroke, `..` and all; a signed cookie of bottle's is a
    pickle, which runs what is in it."""
    text = Path(site.__file__).read_text(encoding="utf-8")
    assert "/p/<name>" in text
    for trap in (":path", ":re", "secret", "get_cookie", "static_file", "debug"):
        assert trap not in text


def test_an_error_of_ours_tells_nothing(
    browser: Browser, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """The telephone that it went wrong, the terminal where; neither the key."""
    monkeypatch.setattr(browser.store, "history", None)
    got = browser.get(f"/p/B1-2?k={browser.key}")
    assert got.status == 500
    said = capfd.readouterr()
    assert "answers.py" in said.err
    for text in (got.text, said.out, said.err):
        assert browser.key not in text
        assert "Traceback" not in text


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"])
def test_other_ways_of_asking_are_refused(browser: Browser, method: str) -> None:
    """Nothing is done by them."""
    assert browser.ask(method, "/p/B1-2").status == 405


def test_every_answer_says_what_a_browser_may_do_with_it(browser: Browser) -> None:
    """Pages, files, errors, refusals alike; a page refers to nobody else."""
    said = [browser.get(address) for address in ("/", "/p/B1-2", "/style.css", "/nowhere")]
    said += [browser.get("/", HOST="evil.example"), browser.post("/p/B1-2/mark")]
    for got in said:
        assert dict(HEADERS).items() <= got.headers.items()
    policy = dict(HEADERS)["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    for page in (browser.get("/").text, browser.get("/p/B1-2").text):
        assert "style=" not in page
        assert "http://" not in page.replace("http://www.w3.org/", "")
        assert "https://" not in page
        assert browser.key not in page


def test_style_and_script_need_no_key(other: Browser) -> None:
    """The page that refuses is drawn with them too."""
    assert other.get("/style.css").headers["Content-Type"].startswith("text/css")
    assert other.get("/scan.js").headers["Content-Type"].startswith("text/javascript")


def test_script_in_words_is_shown_as_words(small: Path) -> None:
    """In the job's name, a wall's, a note, a search, an ID, a list."""
    text = small.read_text(encoding="utf-8")
    text = text.replace("Lock-keeper's scullery", SCRIPT).replace('"north"', f'"{SCRIPT}"')
    small.write_text(text, encoding="utf-8")
    with stranger(small) as opened:
        browser = opened.let_in()
        browser.post("/p/B1-2/note", {"note": SCRIPT + '"><img src=x onerror=alert(1)>'})
        for address in (
            "/", "/p/B1-2", "/p/B1-SIDE-L", f"/?q={quote(SCRIPT)}", f"/?list={quote(SCRIPT)}",
            f"/p/{quote(SCRIPT)}", f"/p/{SCRIPT}",
        ):  # fmt: skip
            page = browser.get(address).text.lower()
            assert SCRIPT not in page
            assert "<img src=x" not in page


@pytest.mark.parametrize(
    "sent",
    [b"", b"<svg onload=alert(1)>", photo(form="GIF"), photo()[:200]],
    ids=["empty", "svg", "gif", "cut short"],
)
def test_what_is_no_photo_is_refused(browser: Browser, sent: bytes) -> None:
    """With the reason; nothing is kept."""
    assert browser.send("/p/B1-2/photo", sent).status == 415
    assert browser.send("/p/B1-2/photo", sent, file="../../job.toml").status == 415
    assert browser.get("/p/B1-2/photo").status == 404


def test_a_photo_under_any_name_is_a_photo_of_its_part(browser: Browser) -> None:
    """What the file is called is asked nowhere."""
    before = sorted(path.name for path in browser.job.parent.rglob("*"))
    assert browser.send("/p/B1-2/photo", photo(), file="../../etc/passwd.jpg").status == 303
    assert sorted(path.name for path in browser.job.parent.rglob("*")) == before


@pytest.mark.parametrize(
    ("body", "kind"),
    [
        (b"--x\r\nbroken", "multipart/form-data; boundary=x"),
        (b"no boundary", "multipart/form-data"),
        (b'--x\r\nContent-Disposition: form-data; name="photo"\r\n\r\ntext\r\n--x--\r\n',
         "multipart/form-data; boundary=x"),
        (b'--x\r\nContent-Disposition: form-data; name="a"; filename="\x00"\r\n\r\n\r\n--x--\r\n',
         "multipart/form-data; boundary=x"),
        (b'--x\r\nContent-Disposition: form-data; name="step"\r\n\r\n\xff\r\n--x--\r\n',
         "multipart/form-data; boundary=x; charset=klingon"),
        (b"photo=text", "application/x-www-form-urlencoded"),
        (b"\xff\xfe", "application/x-www-form-urlencoded; charset=utf-16"),
        (b"{}", "application/json"),
        (b"x" * 200_000, "application/x-www-form-urlencoded"),
    ],
)  # fmt: skip
def test_a_form_that_is_none_is_refused(browser: Browser, body: bytes, kind: str) -> None:
    """In plain words, and nothing is kept."""
    origin = "http://127.0.0.1:8032"
    for what in ("photo", "mark"):
        got = browser.ask("POST", f"/p/B1-2/{what}", body, kind=kind, ORIGIN=origin)
        assert got.status in (400, 413, 415)
    assert browser.store.history() == ()


def test_a_long_note_is_refused(browser: Browser) -> None:
    """With how long it may be."""
    got = browser.post("/p/B1-2/note", {"note": "x" * 2001})
    assert got.status == 413
    assert "2000" in got.text
    assert browser.store.history() == ()
