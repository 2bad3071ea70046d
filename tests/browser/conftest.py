"""A headless Chromium for the tests of pages, and the pages.

Where there is no Chromium these tests are passed over and say so; with REQUIRE_BROWSER=1 that is a failure.
"""

import os
import shutil

import pytest

from specscan import api
from tests.reports.made_page import made_db

NAMES = ("chromium", "chromium-browser")


def _none(reason):
    if os.environ.get("REQUIRE_BROWSER") == "1":
        pytest.fail(f"REQUIRE_BROWSER is set, but {reason}", pytrace=False)
    pytest.skip(reason)


@pytest.fixture(scope="session")
def chromium():
    """Give a running headless Chromium."""
    path = next((found for name in NAMES if (found := shutil.which(name))), None)
    if path is None:
        _none("no Chromium is installed")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _none("playwright is not installed")
    with sync_playwright() as playwright:
        # tests run as root in containers, where Chromium's own sandbox cannot start; the pages are our own
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield browser
        browser.close()


class Opened:
    """A page opened from disk: what it asked for and complained of stands in ``requests`` and ``complaints``."""

    def __init__(self, browser, path, **context):
        self.context = browser.new_context(**{"viewport": {"width": 1280, "height": 900}, **context})
        self.page = self.context.new_page()
        self.page.set_default_timeout(60_000)
        self.requests, self.complaints = [], []
        self.page.on("request", lambda request: self.requests.append(request.url))
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("console", lambda message: self.complaints.append(message.text))
        self.page.goto(path.as_uri())


@pytest.fixture
def opened(chromium):
    """Give a function that opens a page."""
    pages = []

    def open_page(path, **context):
        pages.append(Opened(chromium, path, **context))
        return pages[-1]

    yield open_page
    for one in pages:
        one.context.close()


@pytest.fixture(scope="session")
def made_page(tmp_path_factory):
    """Give the page of three hand-made vans."""
    folder = tmp_path_factory.mktemp("made")
    api.report(made_db(folder), folder / "page.html")
    return folder / "page.html"


@pytest.fixture(scope="session")
def demo_page(demo_db, tmp_path_factory):
    """Give the page of the demo corpus."""
    path = tmp_path_factory.mktemp("page") / "page.html"
    api.report(demo_db, path)
    return path


@pytest.fixture(scope="session")
def demo_sheet(demo_db, tmp_path_factory):
    """Give the walk-around sheet of the demo corpus."""
    path = tmp_path_factory.mktemp("sheet") / "sheet.html"
    api.sheet(demo_db, path)
    return path
