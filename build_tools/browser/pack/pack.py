"""Runs inside the wasm Python: trims its standard library and compiles it and the calculators.

Compiling here, and not with the build machine's Python, makes the compiled files fit the interpreter
that will read them. The reader's device then skips most of its start-up work.
"""

from __future__ import annotations

import ast
import importlib.util
import io
import marshal
import pathlib
import sys
import zipfile
import zlib

STDLIB_ROOT = f"/lib/python3{sys.version_info.minor}.zip/"
UNDATED = (1980, 1, 1, 0, 0, 0)


def modules_wanted(ours: str, pyscript: str) -> list[str]:
    """Return the modules to import so that everything ours and PyScript's worker need is loaded.

    ours: folder of our own modules. pyscript: folder of the sources that PyScript runs in its worker.
    An import inside a function counts too, so nothing is missing when it is first called.
    """
    wanted: set[str] = set()
    for path in pathlib.Path(pyscript).rglob("*.py"):
        wanted |= _library_imports(path.read_text(encoding="utf-8"))
    for path in pathlib.Path(ours).rglob("*.py"):
        wanted |= _library_imports(path.read_text(encoding="utf-8"))
        wanted.add(_module_name(path.relative_to(ours)))
    return sorted(wanted)


def packed_library(stock_zip: str, kept: list[str]) -> bytes:
    """Return the trimmed library: the kept files of the stock one, compiled."""
    with zipfile.ZipFile(stock_zip) as stock:
        files = {name + "c": _compiled(stock.read(name), STDLIB_ROOT + name) for name in kept}
    return _archive(files, zipfile.ZIP_DEFLATED)


def packed_calculators(ours: str) -> bytes:
    """Return our own modules, compiled, as an archive that is packed as one piece; see worker/unpack.py."""
    paths = {path.relative_to(ours).as_posix(): path for path in pathlib.Path(ours).rglob("*.py")}
    files = {name + "c": _compiled(path.read_bytes(), name) for name, path in paths.items()}
    return zlib.compress(_archive(files, zipfile.ZIP_STORED), 9)


def _library_imports(source: str) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            names.add(node.module)
    return {name for name in names if name.partition(".")[0] in sys.stdlib_module_names}


def _module_name(path: pathlib.PurePath) -> str:
    parts = path.with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def _compiled(source: bytes, file_name: str) -> bytes:
    """Compile without docstrings, and without the date that would change the file at every build."""
    code = compile(source, file_name, "exec", dont_inherit=True, optimize=2)
    return importlib.util.MAGIC_NUMBER + bytes(12) + marshal.dumps(code)


def _archive(files: dict[str, bytes], method: int) -> bytes:
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", method, compresslevel=9) as writer:
        for name in sorted(files):
            entry = zipfile.ZipInfo(name, UNDATED)
            entry.compress_type = method
            writer.writestr(entry, files[name])
    return archive.getvalue()
