"""Who is let in: by the key, under a name of ours, from a page of ours."""

from pathlib import Path

import pytest

from tests.cli.serving.asking import Browser, marks, stranger


@pytest.mark.parametrize(
    "address", ["/", "/p/B1-2", "/p/B1-2/sheet.pdf", "/p/B1-2/stations.pdf", "/p/B1-2/photo", "/x"]
)
def test_without_the_key_nothing_is_shown(other: Browser, address: str) -> None:
    """Nor told whether there is such a page."""
    got = other.get(address)
    assert got.status == 403
    assert "scullery" not in got.text
    assert "Set-Cookie" not in got.headers


def test_without_the_key_nothing_is_done(other: Browser) -> None:
    """Neither by none nor by a wrong one."""
    for address in ("/p/B1-2/mark", "/p/B1-2/mark?k=wrong", "/p/B1-2/mark?k="):
        assert other.post(address, {"step": "arrived"}).status == 403
    other.cookie = "jigsheet-8032=wrong; jigsheet-9000=" + other.key
    assert other.post("/p/B1-2/mark", {"step": "arrived"}).status == 403
    assert marks(other) == []


@pytest.mark.parametrize("wrong", ["", "x", "%C3%A4", "%FF", "%00", "k" * 5000])
def test_a_wrong_key_is_wrong_whatever_it_is(other: Browser, wrong: str) -> None:
    """Also one that no text is."""
    assert other.get(f"/?k={wrong}").status == 403


def test_with_open_reading_everybody_reads_and_the_key_marks(small: Path) -> None:
    """A guest sees where a part goes, and no button."""
    with stranger(small, open_reading=True) as guest:
        page = guest.get("/p/B1-2")
        assert page.status == 200
        assert 'method="post"' not in page.text
        assert guest.post("/p/B1-2/mark", {"step": "arrived"}).status == 403
        assert 'method="post"' in guest.let_in().get("/p/B1-2").text


def test_a_cookie_is_kept_from_scripts_and_other_sites(other: Browser) -> None:
    """HttpOnly; SameSite; and it names its port, for a computer's cookies are one jar."""
    said = other.get(f"/?k={other.key}").headers["Set-Cookie"]
    assert said.startswith(f"jigsheet-8032={other.key};")
    assert {"HttpOnly", "SameSite=Lax", "Path=/"} <= set(said.split("; "))


@pytest.mark.parametrize("host", ["kitchen.example:8032", "127.0.0.1:80", "192.168.7.20:8032", ""])
def test_a_foreign_host_is_refused_even_with_the_key(browser: Browser, host: str) -> None:
    """A name of a stranger's may lead to this computer."""
    got = browser.get(f"/p/B1-2?k={browser.key}", HOST=host)
    assert got.status == 403
    assert "Set-Cookie" not in got.headers


def test_the_address_that_is_printed_on_labels_is_let_in(browser: Browser) -> None:
    """A name of the user's own leads here, by itself or through a server before this one."""
    bases = ("https://kitchen.example", "http://bench:9000")
    with stranger(browser.job, bases=lambda: bases) as opened:
        own = opened.let_in()
        for host, origin in (
            ("kitchen.example", "https://kitchen.example"), ("Bench:9000", "http://bench:9000"),
        ):  # fmt: skip
            assert own.get("/p/B1-2", HOST=host).status == 200
            said = {"HOST": host, "ORIGIN": origin}
            assert own.post("/p/B1-2/mark", {"step": "arrived"}, **said).status == 303
        for host, origin in (
            ("kitchen.example:8032", "https://kitchen.example:8032"),
            ("kitchen.example", "http://bench:9000"), ("kitchen.example", "https://evil.example"),
        ):  # fmt: skip
            said = {"HOST": host, "ORIGIN": origin}
            assert own.post("/p/B1-2/mark", {"step": "arrived"}, **said).status == 403


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "https://127.0.0.1:8032"])
def test_a_form_of_another_site_does_nothing(browser: Browser, origin: str) -> None:
    """It is sent with the cookie all the same."""
    assert browser.post("/p/B1-2/mark", {"step": "arrived"}, ORIGIN=origin).status == 403
    assert marks(browser) == []
