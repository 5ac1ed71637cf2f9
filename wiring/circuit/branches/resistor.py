"""Ohm's law: wires, resistors, closed contacts, cold fuses, windings."""

import numpy as np

from wiring.circuit.branches.law import Curve, Floats, Law, number

LEAST_OHMS = 1e-5  # less than any joint; keeps the matrix regular where someone types a length of nothing


def _curve(p: Floats) -> Curve:
    slope = 1.0 / np.maximum(p[0], LEAST_OHMS)
    return lambda v: (v * slope, slope)


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    return (f"R{name} {a} {b} {number(max(values[0], LEAST_OHMS))}",)


RESISTOR = Law("resistor", ("ohms",), _curve, _spice, linear=True)
