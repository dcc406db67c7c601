"""Who may see and mark: names that are ours, pages that are ours, the key."""

import pytest

from cli.serving.access import is_from_here, is_key, is_ours

NAMES = ("jigsheet-galley.local", "workbench")


@pytest.mark.parametrize(
    "host",
    ["127.0.0.1:8032", "localhost:8032", "LOCALHOST:8032", "[::1]:8032"],
)
def test_this_computer_is_ours(host: str) -> None:
    """By each of its own names."""
    assert is_ours(host, 8032)


@pytest.mark.parametrize(
    "host",
    [
        "", "127.0.0.1", "127.0.0.1:80", "127.0.0.1:8032:8032", "evil.example:8032",
        "127.0.0.1.evil.example:8032", "evil.example@127.0.0.1:8032", "localhost.:8032",
        "127.0.0.1:8032,evil.example:8032", "127.0.0.1:8032\r\nX: y", "192.168.7.20:8032",
        "jigsheet-galley.local:8032",
    ],
)  # fmt: skip
def test_any_other_name_is_not(host: str) -> None:
    """A stranger's name may lead here: it is refused, and so is the network's without --lan."""
    assert not is_ours(host, 8032)


@pytest.mark.parametrize(
    ("host", "ours"),
    [
        ("192.168.7.20:8032", True),
        ("[fe80::1]:8032", True),
        ("jigsheet-galley.local:8032", True),
        ("Jigsheet-Galley.local:8032", True),
        ("workbench:8032", True),
        ("evil.example:8032", False),
        ("192.168.7.20.evil.example:8032", False),
        ("192.168.7.20:8033", False),
        ("0x7f.1:8032", False),
    ],
)
def test_on_the_network_figures_and_its_names_are_ours(host: str, ours: bool) -> None:
    """No stranger's page can make a browser call an address in figures by another name."""
    assert is_ours(host, 8032, NAMES, lan=True) is ours


def test_a_browser_leaves_out_the_usual_port() -> None:
    """On port 80 a Host has none."""
    assert is_ours("127.0.0.1", 80)
    assert is_ours("127.0.0.1:80", 80)
    assert not is_ours("127.0.0.1", 8032)


@pytest.mark.parametrize(
    ("said", "here"),
    [
        ({"HTTP_ORIGIN": "http://127.0.0.1:8032"}, True),
        ({"HTTP_ORIGIN": "http://127.0.0.1:9000"}, False),
        ({"HTTP_ORIGIN": "https://127.0.0.1:8032"}, False),
        ({"HTTP_ORIGIN": "http://evil.example"}, False),
        ({"HTTP_ORIGIN": "null"}, False),
        ({"HTTP_ORIGIN": ""}, False),
        ({"HTTP_SEC_FETCH_SITE": "cross-site"}, False),
        ({"HTTP_SEC_FETCH_SITE": "same-site"}, False),
        ({"HTTP_SEC_FETCH_SITE": "same-origin"}, True),
        ({}, True),
    ],
)
def test_a_mark_comes_from_a_page_of_ours(said: dict[str, object], here: bool) -> None:
    """A form on a stranger's page is sent with the cookie: it is refused by where it stands."""
    assert is_from_here(said, ["http://127.0.0.1:8032"]) is here


def test_a_key_is_right_or_wrong() -> None:
    """Whatever is sent as one: a key outside ASCII is wrong, and no fault."""
    assert is_key("kuJ5", "kuJ5")
    for wrong in ("", "kuJ", "kuJ55", "KUJ5", "küJ5", "\udce4"):
        assert not is_key(wrong, "kuJ5")
