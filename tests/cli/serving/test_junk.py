"""Whatever is asked, and whatever is sent, is answered in order: nothing stumbles or leaks."""

import random

import pytest

from tests.cli.serving.asking import BOUNDARY, FORM, HERE, Browser

PARTS = ("B1-1", "B1-2", "b1-2", "B9", "..", "%2e%2e", "")
ENDS = ("", "/mark", "/undo", "/note", "/photo", "/sheet.pdf/", "/..")
QUERIES = ("", "q=%ff%fe", "list=%00", "k=", "k=%c3%a4", "&".join("abc"), "&".join("a" * 30))
KINDS = (
    FORM, f"multipart/form-data; boundary={BOUNDARY}", "multipart/form-data; boundary=",
    "multipart/form-data; charset=none; boundary=a", "text/plain", "",
)  # fmt: skip


def junk(dice: random.Random, longest: int) -> str:
    return "".join(
        chr(dice.choice((dice.randrange(32, 127), dice.randrange(160, 256), ord("/"), ord("%"))))
        for _ in range(dice.randrange(longest))
    )


def body(dice: random.Random) -> bytes:
    name, head, text = (junk(dice, longest) for longest in (9, 12, 40))
    part = f'name="photo"; filename="{name}"\r\n{head}\r\n\r\n{text}\r\n--{BOUNDARY}--\r\n'
    return dice.choice((
        b"", b"step=arrived", b"step=%ff", b"note=" + dice.randbytes(40), dice.randbytes(100),
        b"&".join([b"a=b"] * 3000),
        f"--{BOUNDARY}\r\nContent-Disposition: form-data; {part}".encode(),
    ))  # fmt: skip


@pytest.mark.parametrize("seed", range(4))
def test_junk_is_answered_in_order(browser: Browser, seed: int) -> None:
    """By the answer that is wanted, or by a refusal; the key is in none."""
    dice = random.Random(seed)
    for _ in range(100):
        path = dice.choice((f"/p/{dice.choice(PARTS)}{dice.choice(ENDS)}", f"/{junk(dice, 20)}"))
        query = dice.choice((*QUERIES, f"q={junk(dice, 10)}", junk(dice, 20)))
        asked = f"{path.replace('?', '')}?{query.replace('?', '')}"
        method = dice.choice(("GET", "HEAD", "POST", "POST"))
        sent = body(dice) if method == "POST" else b""
        got = browser.ask(method, asked, sent, kind=dice.choice(KINDS), ORIGIN=f"http://{HERE}")
        assert got.status in (200, 303, 400, 403, 404, 405, 409, 413, 415), (method, asked, sent)
        assert browser.key.encode() not in got.body
