"""A real browser, headless Chromium of Debian's packages, as a phone and as a desk has it."""

import os
from collections.abc import Callable, Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, ViewportSize, sync_playwright

from templates.demo import demo_files
from tests.served import Server, served
from tests.tools import tool

PHONE: ViewportSize = {"width": 390, "height": 844}
NARROW: ViewportSize = {"width": 320, "height": 640}
SHORT: ViewportSize = {"width": 360, "height": 640}
DESK: ViewportSize = {"width": 1280, "height": 800}
SIZES = {"phone": PHONE, "narrow": NARROW, "short": SHORT, "desk": DESK}

AXE = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
"""axe-core, an audit of pages by the rules of WCAG."""
Open = Callable[..., Page]


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """Serve the demo, one door of it held back."""
    folder = tmp_path_factory.mktemp("browsed")
    for name, data in demo_files().items():
        (folder / name).write_bytes(data)
    job = folder / "job.toml"
    text = job.read_text(encoding="utf-8")
    assert 'hinged = "left"' in text
    job.write_text(text.replace('hinged = "left"', "", 1), encoding="utf-8")
    with served(folder, "job.toml", "--port", "0") as opened:
        yield opened


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """Start the browser; none is fetched."""
    root = ["--no-sandbox"] if os.geteuid() == 0 else []
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=tool("chromium-headless-shell"), args=root)
        yield browser
        browser.close()


@pytest.fixture
def visit(server: Server, chromium: Browser) -> Iterator[Open]:
    """Open pages, each in a browser of its own; whatever a console says, fails, or is asked of
    another computer is a fault."""
    opened: list[BrowserContext] = []
    faults: list[str] = []

    def asked(url: str) -> None:
        if not url.startswith((server.base, "data:", "file:")):
            faults.append(f"asked for {url}")

    def visit(address: str, **how: Any) -> Page:
        how.setdefault("viewport", PHONE)
        context = chromium.new_context(**how)
        opened.append(context)
        page = context.new_page()
        page.set_default_timeout(5000)
        page.on("console", lambda said: faults.append(f"console: {said.text}"))
        page.on("pageerror", lambda error: faults.append(f"script: {error}"))
        page.on("requestfailed", lambda request: faults.append(f"failed: {request.url}"))
        page.on("request", lambda request: asked(request.url))
        page.on("dialog", lambda dialog: faults.append(f"dialog: {dialog.message}"))
        page.goto(address)
        return page

    yield visit
    for context in opened:
        context.close()
    assert faults == []


def audit(page: Page) -> list[str]:
    """Audit a page as it is shown; give what is serious, rule and place."""
    page.evaluate(f"{AXE};0")  # not by a script element: the page's policy refuses it
    found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    assert found["passes"], "the audit looked at nothing"
    return [
        f"{each['id']} at {[node['target'] for node in each['nodes']]}: {each['help']}"
        for each in found["violations"]
        if each["impact"] in ("serious", "critical")
    ]


def folder_of(server: Server) -> Path:
    """Give the folder that a server was started in."""
    return Path(os.readlink(f"/proc/{server.process.pid}/cwd"))
