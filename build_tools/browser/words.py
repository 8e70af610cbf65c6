"""The words that the page's script shows, by the names under which the script asks for them."""

from __future__ import annotations

from collections.abc import Mapping

from calculators.words import Catalogue, Message, say, speak

PAGE_WORDS: Mapping[str, Message] = {
    "fetching": say("Fetching the calculator\u2026"),
    "starting": say("Starting the calculator\u2026"),
    "progress": say("Getting the calculator ready"),
    "answered": say("The answer is worked out from what you typed."),
    "mend": say("Mend the marked fields. The answer still shows what you typed before."),
    "failed_download": say("The calculator could not be fetched. Check your connection, then try again."),
    "failed_damaged": say("A part of the calculator arrived damaged. Try again."),
    "failed_start": say("The calculator did not start. Try again."),
    "failed_answer": say(
        "Something in this calculator went wrong. The answer still shows what you typed before."
    ),
    "try_again": say("Try again"),
    "too_old": say(
        "This browser is too old for the calculator. The worked example on this page still holds."
    ),
    "link_copied": say("Link copied."),
    "link_in_address": say("Copy the link from the address bar."),
    "in_glossary": say("More in the glossary"),
    "close": say("Close"),
    "keeping": say("Keeping the handbook on this device: {percent}%."),
    "kept": say("Kept on this device, edition of {date}. It works without a connection."),
    "kept_firmly": say("The browser keeps it until you remove it."),
    "kept_loosely": say("The browser may drop it when space runs low."),
    "kept_impossible": say("This browser keeps no copy. You need a connection to read on."),
    "kept_failed": say("No copy is kept yet. Open this page again with a good connection."),
    "kept_full": say("No copy is kept, because this device has too little free space."),
    "kept_saving": say("No copy is kept yet, because this device is set to save data."),
    "new_edition_label": say("New edition"),
    "new_edition": say("A new edition is here, of {date}. What you typed stays."),
    "take_new_edition": say("Use the new edition"),
    "later": say("Later"),
}
"""Name in the script -> wording; names in braces are filled in by the script."""


def page_words(catalogue: Catalogue) -> dict[str, str]:
    """Return the words in one language, for the JSON block `bendbook-words` of every page."""
    return {name: speak(message, catalogue) for name, message in PAGE_WORDS.items()}
