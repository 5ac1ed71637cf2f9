"""Draw the demo layouts anew: `python demo_layouts/scripts/build_all.py`."""

from pathlib import Path

from harbour import harbour
from quay import quay
from siding import siding

from wiring.files.store import save

HERE = Path(__file__).resolve().parent.parent

for name, draw in (("quay", quay), ("siding", siding), ("harbour", harbour)):
    plan = draw()
    save(plan, HERE / f"{name}.underboard")
    print(f"{name}: {len(plan.parts)} parts, {len(plan.wires)} wires")
