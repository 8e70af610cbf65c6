"""What stands in an answer on a page."""

from __future__ import annotations

from playwright.sync_api import Page


def words_of(page: Page, place: str = "[data-answer]") -> list[str]:
    """All words of a place, without the links to files that the page itself fills in."""
    spoken = """place => {
        const copy = place.cloneNode(true);
        for (const filled of copy.querySelectorAll("[data-files]")) filled.remove();
        return copy.textContent;
    }"""
    return page.locator(place).evaluate(spoken).split()
