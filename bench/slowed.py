"""Slows a browser's renderers as a stand-in for a phone.

The browser's own throttle slows a page but not its workers, where the calculators run; so the renderers that
this process started are stopped and let go on in turn, with all their threads.
"""

from __future__ import annotations

import contextlib
import os
import signal
import threading
import time
from collections.abc import Iterator
from pathlib import Path

SLICE_S = 0.004
LOOK_AGAIN_S = 0.1


@contextlib.contextmanager
def slowed(times: float) -> Iterator[None]:
    """Let every renderer below this process run one part in `times` of the time; 1 leaves them alone."""
    if times <= 1:
        yield
        return
    done = threading.Event()
    stopper = threading.Thread(target=_stop_and_go, args=(times, done))
    stopper.start()
    try:
        yield
    finally:
        done.set()
        stopper.join()


def _stop_and_go(times: float, done: threading.Event) -> None:
    renderers: list[int] = []
    looked = 0.0
    while not done.is_set():
        if time.monotonic() - looked > LOOK_AGAIN_S:
            renderers, looked = _renderers_below(os.getpid()), time.monotonic()
        _signal(renderers, signal.SIGSTOP)
        time.sleep(SLICE_S * (times - 1))
        _signal(renderers, signal.SIGCONT)
        time.sleep(SLICE_S)


def _signal(processes: list[int], number: signal.Signals) -> None:
    for process in processes:
        with contextlib.suppress(ProcessLookupError):
            os.kill(process, number)


def _renderers_below(root: int) -> list[int]:
    parents: dict[int, int] = {}
    for folder in Path("/proc").glob("[0-9]*"):
        with contextlib.suppress(OSError):
            parents[int(folder.name)] = int((folder / "stat").read_text().rpartition(")")[2].split()[1])
    return [process for process in parents if _is_below(process, root, parents) and _is_renderer(process)]


def _is_below(process: int, root: int, parents: dict[int, int]) -> bool:
    while process in parents and process != root:
        process = parents[process]
    return process == root


def _is_renderer(process: int) -> bool:
    with contextlib.suppress(OSError):
        return b"--type=renderer" in Path(f"/proc/{process}/cmdline").read_bytes()
    return False
