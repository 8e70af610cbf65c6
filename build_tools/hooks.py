"""What mkdocs asks for: the navigation and the frame's words, and under `serve` the pages themselves.

This is the only code that knows mkdocs. The pages are real files, so another site builder needs only the
navigation and `extra` handed to it in its own way.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Literal

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.livereload import LiveReloadServer
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from build_tools.generate.build_docs import generate
from build_tools.loading.mistakes import ContentError
from build_tools.places import told_places
from build_tools.theme.words import FRAME_WORDS
from build_tools.words.catalogue import SOURCE_LANGUAGE, languages, open_catalogue
from calculators.words import Catalogue, speak

Words = dict[str, dict[str, str] | str]

_command = ""
_words_by_language: dict[str, Words] = {}


def on_startup(command: Literal["build", "gh-deploy", "serve"], **_: Any) -> None:
    """Remember whether mkdocs serves or builds."""
    global _command
    _command = command


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Hand over the navigation; under `serve`, first bring the pages up to date."""
    places = told_places(Path(config.docs_dir))
    if _command == "serve":
        try:
            generate(places)
        except ContentError as error:
            raise Abort(str(error)) from error
    config.nav = json.loads((places.build / "navigation.json").read_text(encoding="utf-8"))
    _frame(config, json.loads(places.frame.read_text(encoding="utf-8")))
    for language in languages(places.locale):
        _words_by_language[language] = _frame_words(language, open_catalogue(places.locale, language))
    config.extra.update(_words_by_language[SOURCE_LANGUAGE])
    return config


def _frame(config: MkDocsConfig, told: dict[str, Any]) -> None:
    """Give the frame its name, its address and, in a league's edition, the league's look."""
    config.site_name = told["name"]
    config.site_url = config.site_url or told["site_url"]
    config.extra_css.extend(style for style in told["styles"] if style not in config.extra_css)
    config.extra["league"] = told.get("league")
    if told["logo"]:
        config.theme["logo"] = told["logo"]


def on_serve(server: LiveReloadServer, config: MkDocsConfig, **_: Any) -> LiveReloadServer:
    """Watch the content and not the pages made from it, which would build everything twice."""
    server.unwatch(config.docs_dir)
    return server


def on_page_context(context: TemplateContext, page: Page, config: MkDocsConfig, **_: Any) -> TemplateContext:
    """Let the frame of a page speak the page's own language."""
    language = page.meta.get("language", SOURCE_LANGUAGE)
    config.extra.update(_words_by_language[language])
    return context


def _frame_words(language: str, catalogue: Catalogue) -> Words:
    frame = {name: speak(message, catalogue) for name, message in FRAME_WORDS.items()}
    return {"words": frame, "page_language": language}
