"""The headers that a server should send with the handbook, written for the servers that are common.

References
----------
[1] R. Fielding and others, RFC 9111, HTTP Caching, 2022: no-cache asks again before a kept copy is used.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from build_tools.hosting.policy import ONLY_AS_HEADER, policy_of

ASK_AGAIN = "no-cache"
KEEP = "public, max-age=31536000, immutable"
KEPT_FOLDERS = ("assets/bendbook/runtime/", "assets/bendbook/pyscript/", "assets/fonts/")
"""Files whose address changes with them, or that never change; all else is asked for again [1]_."""


def headers(site: Path) -> Mapping[str, str]:
    """Return the headers for every file of a finished site, but that on caching."""
    pages = (path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html")))
    return {
        "Content-Security-Policy": "; ".join((policy_of(pages), *ONLY_AS_HEADER)),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "no-referrer",
        "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
    }


def as_header_file(sent: Mapping[str, str], base: str) -> str:
    """Return a `_headers` file, which several hosts of static sites read; base: such as "/handbook/"."""
    lines = [
        f"{base}*",
        *(f"  {name}: {value}" for name, value in sent.items()),
        f"  Cache-Control: {ASK_AGAIN}",
    ]
    for folder in KEPT_FOLDERS:
        lines += [f"{base}{folder}*", "  ! Cache-Control", f"  Cache-Control: {KEEP}"]
    return "\n".join(lines) + "\n"


def for_nginx(sent: Mapping[str, str], base: str) -> str:
    """Return the lines for nginx, inside `server { }`."""
    fixed = [f'    add_header {name} "{value}" always;' for name, value in sent.items()]
    kept = "|".join(KEPT_FOLDERS)
    return "\n".join(
        (
            "include mime.types;",
            "types { text/javascript mjs; }",
            "gzip on;",
            "gzip_comp_level 6;",
            "gzip_types text/css text/javascript application/javascript application/json application/wasm image/svg+xml;",
            f"location {base} {{",
            *fixed,
            f'    add_header Cache-Control "{ASK_AGAIN}" always;',
            "    error_page 404 " + base + "404.html;",
            "}",
            f"location ~ ^{base}({kept}) {{",
            *fixed,
            f'    add_header Cache-Control "{KEEP}" always;',
            "}\n",
        )
    )


def for_apache(sent: Mapping[str, str], base: str) -> str:
    """Return a `.htaccess` for Apache with mod_headers, to lie in the site's own folder."""
    fixed = [f'Header always set {name} "{value}"' for name, value in sent.items()]
    kept = "|".join(KEPT_FOLDERS)
    return "\n".join(
        (
            "AddType text/javascript .mjs",
            "AddType application/wasm .wasm",
            f"ErrorDocument 404 {base}404.html",
            *fixed,
            f'Header always set Cache-Control "{ASK_AGAIN}"',
            f'<If "%{{REQUEST_URI}} =~ m#^{base}({kept})#">',
            f'Header always set Cache-Control "{KEEP}"',
            "</If>\n",
        )
    )


SERVERS: Mapping[str, Callable[[Mapping[str, str], str], str]] = {
    "headers-file": as_header_file,
    "nginx": for_nginx,
    "apache": for_apache,
}
