"""The words that the page's script shows, by the names under which the script asks for them."""

from __future__ import annotations

import json
from collections.abc import Mapping

from calculators.words import Catalogue, Message, say, speak

PAGE_WORDS: Mapping[str, Message] = {
    "fetching": say("Fetching the calculator\u2026"),
    "starting": say("Starting the calculator\u2026"),
    "progress": say("Getting the calculator ready"),
    "answer_later": say("The answer comes here when the questions are answered."),
    "answered": say("The answer is worked out from what you typed."),
    "mend": say("Mend the marked fields. The answer still shows what you typed before."),
    "questions_open": say("Answer the marked questions."),
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
    "mend_first": say("Nothing can be called out yet. {problem}"),
    "to_this_batter": say("{pitches} to this batter, number {batter}"),
    "start_again": say("Forget this count and start at 0?"),
    "log_no_nickname": say("Write a nickname first, at the top."),
    "log_kept": say("{nickname} is kept on this device. Changes are kept as you make them."),
    "log_here": say("{nickname} is kept here already. Tap the name to open it."),
    "log_overwrite": say("Put what stands in the form in place of what is kept for {nickname}?"),
    "log_opened": say("{nickname} is open. Answer the first question for today."),
    "log_not_kept": say("Nothing is kept under this nickname."),
    "log_deleted": say("Deleted from this device."),
    "log_delete_one": say("Delete {nickname} from this device?"),
    "log_delete_everything": say("Delete every pitcher from this device?"),
    "log_bad_file": say("This is not a file that this page saved. Nothing was changed."),
    "log_replace": say(
        "Already here: {nicknames}. OK puts the file's games in place of those here. Cancel keeps those here."
    ),
    "log_loaded": say("Loaded. Tap a nickname to open it."),
    "log_refused": say("This browser keeps nothing. Save the log as a file before you leave the page."),
    "record_kept": say("The file of {nickname} is kept in this browser."),
    "record_open": say("Open {nickname}"),
    "record_opened": say("The file of {nickname} is open. Answer the first question for today."),
    "record_shrinks": say("The file of {nickname} kept here holds more. Put this one in its place?"),
    "record_delete": say("Delete {nickname}"),
    "record_forget": say("Delete the file of {nickname} from this browser?"),
    "record_forgotten": say("Deleted from this browser."),
    "record_refused": say("This browser keeps nothing. Save the file before you leave the page."),
    "throws_last": say("Throws in the sheet: {count}. The last one: {what}."),
    "throws_again": say("Forget these throws and start a new sheet?"),
    "throws_other_sheet": say("The sheet above is another one. Empty it first, or go on in it."),
    "photo_shoulder": say("Tap the throwing shoulder."),
    "photo_hand": say("Now tap the throwing hand."),
    "photo_done": say("Measured. The two numbers are in the form."),
    "photo_unreadable": say("This file is no picture that the browser can open. Choose another one."),
    "in_glossary": say("More in the glossary"),
    "close": say("Close"),
    "keeping": say("Keeping the handbook on this device: {percent}%."),
    "kept": say("Kept on this device, edition of {date}. It works without a connection."),
    "kept_firmly": say("The browser keeps it until you remove it."),
    "kept_loosely": say("The browser may drop it when space runs low."),
    "kept_on_disk": say("This copy is on a disk, edition of {date}. It needs no connection."),
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
    """Return the words in one language."""
    return {name: speak(message, catalogue) for name, message in PAGE_WORDS.items()}


def words_script(language: str, catalogue: Catalogue) -> str:
    """Return the small script that hands the page's script its words; a page loads that of its language."""
    words = json.dumps(page_words(catalogue), ensure_ascii=False)
    return f"(self.bendbookWords ??= {{}})[{json.dumps(language)}] = {words};\n"
