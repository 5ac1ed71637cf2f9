"""What a discharge asks of a battery, be it one pack or several that differ."""

from typing import Protocol, TypeVar

S = TypeVar("S")


class Store(Protocol[S]):
    """A battery; its state `S` is the charge of its wells and is handed in and out, never kept."""

    def level(self, share: float) -> S:
        """Return the state with that share of its charge, rested; 1 is fresh."""

    def thevenin(self, state: S) -> tuple[float, float]:
        """Return volts without load, and ohms."""

    def after(self, state: S, current_a: float, hours: float) -> S:
        """Return the state after a constant current, without loss to the shelf."""

    def leaked(self, state: S, hours: float) -> S:
        """Return the state with what the shelf takes in that time."""

    def rested(self, state: S, hours: float) -> S:
        """Return the state after rest, with what the shelf takes."""

    def step_ah(self, state: S, step: float) -> float:
        """Return the charge of one step, `step` being a share of the wells at hand."""

    def spent(self, state: S) -> bool:
        """Whether a part of it must be spared although the volts of the whole would allow more."""

    def total_ah(self, state: S) -> float:
        """Return the charge that is left."""

    def aged(self, hours: float) -> "Store[S]":
        """Return the battery some hours later, with the resistance it has grown by itself."""
