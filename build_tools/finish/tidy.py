"""Takes out of a built site what no reader loads."""

from __future__ import annotations

import json
import re
from pathlib import Path


def tidy(site: Path) -> None:
    """Remove source maps, search stemmers of languages the handbook does not have, and the date of the build.

    The sitemap stays, because the theme reads it on every page to change pages without a reload.
    """
    for source_map in site.rglob("*.map"):
        source_map.unlink()
    for script in (path for kind in ("js", "css") for path in site.rglob(f"*.{kind}")):
        text = script.read_text(encoding="utf-8")
        mended = re.sub(r"\n?(?://|/\*)# sourceMappingURL=\S+(?: \*/)?\n?", "\n", text)
        if mended != text:
            script.write_text(mended, encoding="utf-8")
    _remove_stemmers(site)
    (site / "sitemap.xml.gz").unlink(missing_ok=True)
    sitemap = site / "sitemap.xml"
    if sitemap.is_file():
        dated = sitemap.read_text(encoding="utf-8")
        sitemap.write_text(re.sub(r"\s*<lastmod>[^<]*</lastmod>", "", dated), encoding="utf-8")


def _remove_stemmers(site: Path) -> None:
    folder = site / "assets" / "javascripts" / "lunr"
    if not folder.is_dir():
        return
    wanted = {f"lunr.{language}.min.js" for language in _search_languages(site) - {"en"}}
    if wanted:
        wanted |= {"lunr.stemmer.support.min.js", "lunr.multi.min.js"}
    for stemmer in sorted(path for path in folder.rglob("*") if path.is_file()):
        if stemmer.name not in wanted:
            stemmer.unlink()
    for empty in (folder / "min", folder):
        if empty.is_dir() and not any(empty.iterdir()):
            empty.rmdir()


def _search_languages(site: Path) -> set[str]:
    languages: set[str] = set()
    for index in site.rglob("search_index.json"):
        found = json.loads(index.read_text(encoding="utf-8")).get("config", {}).get("lang", [])
        languages.update([found] if isinstance(found, str) else found)
    return languages
