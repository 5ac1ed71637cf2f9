"""What every branch law promises the solver: at rest at nought, a true slope, never falling."""

import numpy as np
import pytest
from support.bare import Branch, load, ohms, volts
from support.networks import draw

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.branches.junction import junction_values
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS, WIDTH
from wiring.circuit.network import Network
from wiring.circuit.newton import newton
from wiring.circuit.spice import spice_netlist

LED = junction_values(3.1, 0.02, 0.09, 1.5, 1, 470.0, 1)
CHAIN = junction_values(2.0, 0.02, 0.06, 1.5, 3, 150.0, 4)
ROWS: tuple[tuple[str, tuple[float, ...]], ...] = (
    ("resistor", (47.0,)), ("source", (12.0, 0.05, 2.0, 0.0)), ("source", (12.8, 1.2, np.inf, 1.0)),
    ("source", (9.0, 2.0, 0.1, 1.0)), ("junction", LED), ("junction", CHAIN), ("filament", (12.0, 0.05)),
    ("constant_current", (0.02, 3.0)), ("constant_power", (1.5, 6.0)),
)  # fmt: skip
VOLTS = np.linspace(-20.0, 20.0, 2001)


def current(name: str, row: tuple[float, ...], v: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    return LAWS[LAW_NUMBER[name]].current(v, np.repeat(np.array(row)[:, None], len(v), axis=1))


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_nothing_flows_at_rest(name: str, row: tuple[float, ...]) -> None:
    rest = np.array([row[0] if name == "source" else 0.0])
    assert abs(current(name, row, rest)[0][0]) < 1e-18


@pytest.mark.parametrize(("name", "row"), ROWS)
def test_the_slope_is_the_derivative(name: str, row: tuple[float, ...]) -> None:
    """By central differences, away from the two corners where a law changes over."""
    step = 1e-6
    corner = {"source": row[0], "constant_power": row[1] if len(row) > 1 else 0.0}.get(name, 0.0)
    v = VOLTS[(np.abs(VOLTS - corner) > 1e-3) & (np.abs(VOLTS) > 1e-3)]
    _, slope = current(name, row, v)
    by_difference = (current(name, row, v + step)[0] - current(name, row, v - step)[0]) / (2 * step)
    assert slope == pytest.approx(by_difference, rel=1e-4, abs=1e-7)


@pytest.mark.parametrize(("name", "row"), [r for r in ROWS if r[0] != "constant_power"])
def test_more_volts_never_give_less_current(name: str, row: tuple[float, ...]) -> None:
    amps, slope = current(name, row, VOLTS)
    assert (np.diff(amps) > 0).all()
    assert (slope > 0).all()


def test_a_supply_in_its_limit_gives_its_limit() -> None:
    """A hundredth more at a dead short, and next to nothing less than asked at nine tenths of the limit."""
    given = -current("source", (12.0, 0.05, 2.0, 0.0), np.array([0.0, 11.0, 12.0 - 0.05 * 1.8]))[0]
    assert given == pytest.approx([2.02, 2.0, 1.8], rel=2e-3)


def test_a_constant_current_is_constant() -> None:
    amps, _ = current("constant_current", (0.02, 3.0), np.array([1.5, 3.3, 6.0, 24.0]))
    assert amps == pytest.approx([0.01, 0.02, 0.02, 0.02], rel=2e-3)


def test_a_filament_is_cold_near_nought_and_rated_at_its_rating() -> None:
    amps, slope = current("filament", (12.0, 0.05), np.array([1e-9, 12.0, 9.6]))
    assert amps[1:] == pytest.approx([0.05, 0.05 * 0.8**0.55], rel=1e-4)  # rated, and the re-rating law
    assert 1.0 / slope[0] == pytest.approx(24.0, rel=1e-3)  # a tenth of 240 ohm hot


NETWORKS: tuple[list[Branch], ...] = (
    [volts("p", "0", 12.0, 0.1), ohms("p", "n", 10.0), load("n", "0", 0.3, 3.0)],
    [("source", "p", "0", (12.0, 0.05, 0.5, 0.0)), ohms("p", "n", 1.0), ("filament", "n", "0", (12.0, 2.0))],
    [volts("p", "0", 9.0, 1.7), ("junction", "p", "n", LED), ("junction", "n", "0", CHAIN),
     ohms("n", "0", 900.0)],
    [volts("p", "0", 12.0, 2.0), ("constant_power", "p", "0", (25.0, 6.0))],
)  # fmt: skip


@pytest.mark.parametrize("branches", NETWORKS)
def test_the_slow_road_leads_to_the_same_place(branches: list[Branch]) -> None:
    """With no Newton steps allowed, the last resort alone must find the point that Newton finds."""
    names = sorted({n for _, a, b, _ in branches for n in (a, b)} - {"0"})
    place = {**{n: i for i, n in enumerate(names)}, "0": len(names)}
    network = Network(
        np.array([LAW_NUMBER[law] for law, *_ in branches]), np.array([place[a] for _, a, _, _ in branches]),
        np.array([place[b] for _, _, b, _ in branches]),
        np.array([row + (0.0,) * (WIDTH - len(row)) for *_, row in branches]), len(names), np.zeros(1),
    )  # fmt: skip
    quick, slow = newton(network), newton(network, None, 0)
    assert quick.converged
    assert slow.converged
    assert slow.x == pytest.approx(quick.x, rel=1e-6, abs=1e-8)


def test_the_netlist_names_every_node_in_plain_ascii() -> None:
    plan = draw({"G1": "battery-9v", "E1": "led-red"}, [("G1:+", "E1:A"), ("G1:-", "E1:K")], 0.5)
    text = spice_netlist(plan.with_changes(title="Café “Möwe”\nsecond line"), builtin_kinds(), {})
    assert text.isascii()
    assert text.splitlines()[0] == "* Caf? ?M?we? second line"
    assert "*   n_g1_plus: -G1:+" in text
    assert text.rstrip().endswith(".end")
