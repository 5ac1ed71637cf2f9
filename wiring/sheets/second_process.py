"""A second process that works through a row of jobs from its front, while this one does something else.

Its start costs about a second, so it is for work of several. Where none can be started, or it ends before
its work, nothing is lost: whoever asked does the rest.
"""

import os
import pickle
import subprocess
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from io import BytesIO
from threading import Condition, Thread
from types import MappingProxyType, TracebackType
from typing import Any, BinaryIO, Generic, TypeVar

# A plain interpreter, not a copy of this program: nothing of the program's own first file is run again,
# whatever it is, and it is the same on every system. It finds its modules where this process does.
_BEGIN = (
    "import sys, pickle; a, b = sys.stdin.buffer, sys.stdout.buffer; sys.stdout = sys.stderr; "
    "sys.path[:] = pickle.load(a); from wiring.sheets.second_process import serve; serve(a, b)"
)
_WITHOUT_WINDOW = getattr(subprocess, "CREATE_NO_WINDOW", 0)  # on Windows a console would flash up


_PATIENCE_S = 10.0  # for the one job it is at; then that is done here

Shared = TypeVar("Shared")
Job = TypeVar("Job")
Result = TypeVar("Result")


class SecondProcess(Generic[Shared, Job, Result]):
    """The jobs done elsewhere, in their order, as far as they are."""

    def __init__(
        self, work: Callable[[Shared, Job], Result], shared: Shared, jobs: Sequence[Job], *, enough: int = 2
    ) -> None:
        """Start on the jobs with a function of a module; with fewer than enough, not at all."""
        self._done: list[Result] = []
        self._news = Condition()
        self._process: subprocess.Popen[bytes] | None = None
        if len(jobs) >= enough and can_start():
            with suppress(OSError, ValueError):
                self._process = subprocess.Popen(
                    [sys.executable, "-c", _BEGIN],
                    stdin=subprocess.PIPE,
                    stdout=subprocess.PIPE,
                    stderr=subprocess.DEVNULL,
                    creationflags=_WITHOUT_WINDOW,
                )
        self._at_work = self._process is not None
        if self._process is not None:
            Thread(target=self._talk, args=(self._process, (work, shared, jobs)), daemon=True).start()

    def __enter__(self) -> "SecondProcess[Shared, Job, Result]":
        return self

    def __exit__(self, *_: type[BaseException] | BaseException | TracebackType | None) -> None:
        if self._process is not None:
            self._process.kill()
            self._process.wait()

    def reaches(self, number: int) -> bool:
        """Return whether it has done that job, or is at it now that it has done others."""
        done = len(self._done)
        return done > number or (self._at_work and 0 < done == number)

    def first(self, count: int) -> list[Result]:
        """Wait for the results of the first jobs; fewer when it has ended before, or takes too long."""
        with self._news:
            self._news.wait_for(lambda: len(self._done) >= count or not self._at_work, _PATIENCE_S)
            return self._done[:count]

    def _talk(self, process: "subprocess.Popen[bytes]", asked: object) -> None:
        """Hand over the jobs and take in the results, in a thread of its own."""
        assert process.stdin is not None and process.stdout is not None
        # whatever goes wrong on the way, the jobs are done by whoever asked
        with suppress(Exception), process.stdin, process.stdout:
            process.stdin.write(pickle.dumps(sys.path))
            process.stdin.write(_pickled(asked))
            process.stdin.close()
            while True:
                result = pickle.load(process.stdout)
                with self._news:
                    self._done.append(result)
                    self._news.notify_all()
        with self._news:
            self._at_work = False
            self._news.notify_all()


def can_start() -> bool:
    """Return whether this is a plain interpreter with more than one processor to work on."""
    count = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return count > 1 and bool(sys.executable) and not getattr(sys, "frozen", False)


def serve(asked: BinaryIO, told: BinaryIO) -> None:
    """Do the jobs that are asked for and tell each result: what the second process runs."""
    import gc

    gc.disable()  # it ends with its work
    work, shared, jobs = pickle.load(asked)
    for job in jobs:
        told.write(pickle.dumps(work(shared, job), pickle.HIGHEST_PROTOCOL))
        told.flush()


class _Pickler(pickle.Pickler):
    """Takes along the read-only mappings of a plan as well."""

    def reducer_override(self, thing: Any) -> Any:  # noqa: ANN401 - as the protocol has it
        return (_read_only, (dict(thing),)) if isinstance(thing, MappingProxyType) else NotImplemented


def _read_only(mapping: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(mapping)


def _pickled(thing: object) -> bytes:
    stream = BytesIO()
    _Pickler(stream, pickle.HIGHEST_PROTOCOL).dump(thing)
    return stream.getvalue()
