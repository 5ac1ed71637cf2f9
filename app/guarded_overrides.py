"""Lets no fault leave a method that Qt calls: the binding drops, mixes up or crashes on those raised there.

While Python waits for Qt, PySide keeps such a fault in one place for the whole program and raises it from
whichever call of Qt comes next. On Python 3.11 it also reads the arguments of one raised in C (a division by
zero, a widget deleted meanwhile) before there are any, and the program ends on the spot.
"""

import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import wraps
from types import FunctionType
from typing import Any

from shiboken6 import Shiboken


def guard_overrides() -> None:
    """Guard what the program has in place of methods of Qt's own; faults go to `sys.excepthook`.

    To be called once, before the first widget: what an object has called once stays what it calls.
    """
    for kind in dict.fromkeys(_kinds_of_the_program()):
        for name, method in list(vars(kind).items()):
            if _stands_in(kind, name, method):
                setattr(kind, name, _guarded(kind, name, method))


def _guarded(kind: type, name: str, method: FunctionType) -> Callable[..., Any]:
    @wraps(method)
    def guarded(one: Any, *given: Any) -> Any:  # noqa: ANN401 - whatever Qt gives and takes
        try:
            return method(one, *given)
        except BaseException as fault:  # even an exit would crash in there
            with suppress(Exception):
                sys.excepthook(type(fault), fault, fault.__traceback__)
        with suppress(Exception):  # what Qt leaves open has nothing to fall back to
            return getattr(super(kind, one), name)(*given)

    return guarded


def _kinds_of_the_program(root: type = Shiboken.Object) -> Iterator[type]:
    kinds: list[type] = type.__subclasses__(root)
    for kind in kinds:
        if kind.__module__.partition(".")[0] == "app":
            yield kind
        yield from _kinds_of_the_program(kind)


def _stands_in(kind: type, name: str, method: object) -> bool:
    """Whether a method is Qt's to call: one of Qt's own classes has it too."""
    if not isinstance(method, FunctionType) or name.startswith("__"):
        return False
    return any(name in vars(base) for base in kind.__mro__ if base.__module__.startswith("PySide6."))
