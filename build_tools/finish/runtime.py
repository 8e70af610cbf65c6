"""The runtime in the site: Python for the browser, its trimmed library, the calculators, PyScript."""

from __future__ import annotations

import hashlib
import io
import json
import re
import shutil
import zipfile
import zlib
from collections.abc import Mapping
from pathlib import Path

from build_tools.finish.errors import FinishError
from build_tools.finish.node import BROWSER, NODE_MODULES, bundle, run_node

Questions = Mapping[str, Mapping[str, object]]
"""Calculator name to typed fields that it must answer."""

INTERPRETER_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
PYSCRIPT_CHUNKS = ("core", "deprecations-manager", "donkey", "error", "py-editor", "py-game", "py-terminal")
"""PyScript's core asks for each of these at its start, used or not; the rest of its files it never asks for."""

MARGIN = ("traceback", "linecache", "tokenize", "_strptime")
"""Library modules that only an error report, or a date read for the first time, would ask for."""


def put_runtime(assets: Path, build: Path, package: Path, questions: Questions) -> str:
    """Put everything a calculator needs into `assets` and return a mark that changes with any of it.

    assets: the folder assets/bendbook of the site.
    build: the build folder: `shelf.json` and any `words.<language>.json` in it, and `cache/`.
    package: the folder `calculators`.
    questions: asked once in the trimmed runtime; each must be answered.
    Raises FinishError where something is missing or a calculator does not run in the trimmed runtime.
    """
    packed = pack(build, package)
    runtime, pyscript = assets / "runtime", assets / "pyscript"
    for old in (runtime, pyscript):
        shutil.rmtree(old, ignore_errors=True)
        old.mkdir(parents=True)
    for name in INTERPRETER_FILES:
        shutil.copyfile(NODE_MODULES / "pyodide" / name, runtime / name)
    for file in (packed / "python_stdlib.zip", packed / "calculators.bin", *_content(build)):
        shutil.copyfile(file, runtime / file.name)
    check_answers(runtime, questions, build)

    files = {
        file.name: {"size": file.stat().st_size, "mark": mark_of(file)} for file in sorted(runtime.iterdir())
    }
    bundle(
        BROWSER / "worker" / "interpreter.mjs",
        runtime / "interpreter.mjs",
        {"EDITION_FILES": files, "PYODIDE_VERSION": version_of("pyodide")},
    )
    _put_pyscript(pyscript)
    return _mark_of_all([*runtime.iterdir(), *pyscript.iterdir()])


def pack(build: Path, package: Path) -> Path:
    """Return a folder with `python_stdlib.zip` and `calculators.bin`, packed once for the same inputs."""
    sources = {path.relative_to(package.parent).as_posix(): path for path in sorted(package.rglob("*.py"))}
    sources["desk_worker.py"] = BROWSER / "worker" / "desk_worker.py"
    inputs = [
        *sources.values(),
        *sorted((BROWSER / "pack").iterdir()),
        NODE_MODULES / "pyodide" / "package.json",
    ]
    names = json.dumps([sorted(sources), MARGIN, version_of("@pyscript/core")])
    key = hashlib.sha256((names + _mark_of_all(inputs)).encode()).hexdigest()[:16]
    packed = build / "cache" / f"runtime-{key}"
    if packed.is_dir():
        return packed

    unfinished = packed.with_suffix(".unfinished")
    shutil.rmtree(unfinished, ignore_errors=True)
    unfinished.mkdir(parents=True)
    run_node(
        BROWSER / "pack" / "pack.mjs",
        {
            "pyodide": str(NODE_MODULES / "pyodide"),
            "pyscript": str(NODE_MODULES / "@pyscript/core/src/stdlib"),
            "sources": {name: str(path) for name, path in sources.items()},
            "margin": MARGIN,
            "stdlib": str(unfinished / "python_stdlib.zip"),
            "calculators": str(unfinished / "calculators.bin"),
            "kept": str(unfinished / "library_modules.json"),
        },
    )
    return unfinished.rename(packed)


def check_answers(runtime: Path, questions: Questions, build: Path) -> None:
    """Ask each question in the trimmed runtime, under node; a forgotten library module shows up here.

    Raises FinishError naming the module that does not import or the calculator that does not answer.
    """
    content = [runtime / "python_stdlib.zip", runtime / "calculators.bin", *_content(runtime)]
    asked = json.dumps(questions, sort_keys=True)
    key = hashlib.sha256((asked + _mark_of_all(content)).encode()).hexdigest()[:16]
    passed = build / "cache" / f"answered-{key}"
    if passed.exists():
        return
    job = {
        "pyodide": str(NODE_MODULES / "pyodide"),
        "stdlib": str(runtime / "python_stdlib.zip"),
        "content": [str(path) for path in content[1:]],
        "modules": _modules_in(runtime / "calculators.bin"),
        "questions": {name: json.dumps(fields) for name, fields in questions.items()},
    }
    run_node(BROWSER / "pack" / "check.mjs", job)
    passed.parent.mkdir(parents=True, exist_ok=True)
    passed.touch()


def mark_of(file: Path) -> str:
    """Return a short mark that changes with the file."""
    return hashlib.sha256(file.read_bytes()).hexdigest()[:12]


def _modules_in(packed: Path) -> list[str]:
    with zipfile.ZipFile(io.BytesIO(zlib.decompress(packed.read_bytes()))) as opened:
        files = [name.removesuffix(".pyc").removesuffix("/__init__") for name in opened.namelist()]
    return [name.replace("/", ".") for name in files]


def _content(folder: Path) -> list[Path]:
    shelf = folder / "shelf.json"
    if not shelf.is_file():
        raise FinishError(f"{shelf} is missing. Build the content first: it is written with the pages.")
    return [shelf, *sorted(folder.glob("words.*.json"))]


def _put_pyscript(folder: Path) -> None:
    distributed = NODE_MODULES / "@pyscript/core/dist"
    wanted = [distributed / "core.js"]
    for chunk in PYSCRIPT_CHUNKS:
        found = [
            path for path in distributed.glob("*.js") if re.fullmatch(rf"{chunk}-[\w-]{{8}}\.js", path.name)
        ]
        if len(found) != 1:
            raise FinishError(f"PyScript has {len(found)} files for {chunk}. Look at what its core asks for.")
        wanted += found
    for path in wanted:
        lines = path.read_text(encoding="utf-8").splitlines()
        kept = [line for line in lines if not line.startswith("//# sourceMappingURL=")]
        (folder / path.name).write_text("\n".join(kept) + "\n", encoding="utf-8")


def version_of(name: str) -> str:
    """Return the version of one of node's packages."""
    about = json.loads((NODE_MODULES / name / "package.json").read_text(encoding="utf-8"))
    return str(about["version"])


def _mark_of_all(files: list[Path]) -> str:
    marks = sorted(f"{file.name} {mark_of(file)}" for file in files if file.is_file())
    return hashlib.sha256("\n".join(marks).encode()).hexdigest()[:12]
