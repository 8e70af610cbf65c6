"""What a phone needs to show the handbook on its home screen: a web manifest and icons."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from build_tools.finish.node import BROWSER

ICONS = Path("assets") / "bendbook" / "icons"


def put_home_screen(site: Path, name: str = "", short_name: str = "Bendbook") -> None:
    """Write `manifest.webmanifest` and the icons. All addresses are relative, so any folder will do.

    name, short_name: what the phone calls the handbook; a league's edition has its own.
    """
    target = site / ICONS
    target.mkdir(parents=True, exist_ok=True)
    for icon in sorted((BROWSER / "icons").glob("icon*.*")):
        shutil.copyfile(icon, target / icon.name)
    manifest = {
        "name": name or "Bendbook: teaching a breaking ball",
        "short_name": short_name,
        "description": "A coaching handbook about breaking balls, with calculators. It works without a connection.",
        "id": "./",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "lang": "en",
        "background_color": "#fcfaf4",
        "theme_color": "#f3eee1",
        "icons": [
            _icon("icon.svg", "any", "image/svg+xml"),
            _icon("icon-192.png", "192x192"),
            _icon("icon-512.png", "512x512"),
            {**_icon("icon-maskable-512.png", "512x512"), "purpose": "maskable"},
        ],
    }
    text = json.dumps(manifest, indent=1, ensure_ascii=False) + "\n"
    (site / "manifest.webmanifest").write_text(text, encoding="utf-8")


def _icon(name: str, sizes: str, kind: str = "image/png") -> dict[str, str]:
    return {"src": f"{ICONS.as_posix()}/{name}", "sizes": sizes, "type": kind}
