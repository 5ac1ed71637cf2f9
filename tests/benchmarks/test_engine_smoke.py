"""The engine's benchmark runs, prints what it promises, and agrees with ngspice."""

import subprocess
import sys
from pathlib import Path

import pytest
from support.ngspice import needs_ngspice

pytestmark = [pytest.mark.ngspice, needs_ngspice]
PROMISED = {"agree_max_rel", "ratio_1k", "ratio_10k", "growth", "warm_1k_ms", "warm_throw_1k_ms",
            "warm_add_1k_ms", "warm_remove_1k_ms", "positions256_over_one", "pulse_err"}  # fmt: skip


def test_a_smoke_run() -> None:
    path = Path(__file__).parent / "engine.py"
    done = subprocess.run(
        [sys.executable, str(path), "--smoke"], capture_output=True, text=True, timeout=300, check=False
    )
    assert done.returncode == 0, done.stderr
    found = {name: float(value) for name, value in (line.split(" = ") for line in done.stdout.splitlines())}
    assert set(found) >= PROMISED
    assert found["agree_max_rel"] < 1e-8
    assert found["agree_current_rel"] < 1e-6
    assert found["positions256_over_one"] < 128  # far less than one by one, on any machine
    assert found["growth"] < 2.0
    assert found["pulse_err"] <= 0.01
