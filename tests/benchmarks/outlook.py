"""How right and how quick the battery outlook is.

Run by hand: `python tests/benchmarks/outlook.py`. Prints one `name = number` a line: `iec_worst`, the least
ratio of forecast hours (of an ordinary cell) to the standard's minimum average duration; `datasheet_worst`,
the largest relative error of any chemistry against the data-sheet hours or charge its types were fitted to,
and the same by chemistry; `kept_apart_worst` and `kept_apart_mean`, the same against discharges used
nowhere in fitting, at loads no heavier than those of the fits; `beyond_fit`, the one at twice that load, of
which the forecast warns; `warm_ms` and `cold_s`, one forecast (low, typical and high) of two years and more
on the whole-layout demo with a battery in place of its lighting supply, when only the use pattern has
changed since the last one, and in a fresh process, imports apart.
"""

import statistics
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests"))
sys.path.insert(0, str(ROOT))

import msgspec  # noqa: E402
from support.cell_runs import life  # noqa: E402
from support.discharge_errors import fitted_errors  # noqa: E402
from support.published import IEC_MINIMA  # noqa: E402

from tests.reference import test_discharges_kept_apart as apart  # noqa: E402
from tests.reference import test_lithium_kept_apart as lithium_apart  # noqa: E402
from wiring.catalogue.shelf import builtin_kinds  # noqa: E402
from wiring.files.store import load  # noqa: E402
from wiring.plan.positions import in_use  # noqa: E402
from wiring.plan.scene import UsePattern  # noqa: E402
from wiring.standards.cells import CELLS  # noqa: E402
from wiring.studies.cells.pack import Grade, packed  # noqa: E402
from wiring.studies.forecast import forecast  # noqa: E402

DEMO = ROOT / "demo_layouts" / "harbour.underboard"
USES = (
    UsePattern(3.5, 4), UsePattern(1, 30), UsePattern(0.25, 60), UsePattern(3, 9, months_off=(6, 7, 8)),
    UsePattern(2, 2), UsePattern(6, 12),
)  # fmt: skip
TODAY = date(2026, 3, 1)


def harbour():
    """The demo on a bank of lead-acid batteries large enough to last for years at most of these uses."""
    plan, kinds = load(DEMO), builtin_kinds()
    supply = next(p for p in plan.parts.values() if p.label == "lighting supply")
    new = msgspec.structs.replace(
        supply,
        kind="battery-alkaline",
        settings={"cell": "alkaline D", "in_series": 8.0, "in_parallel": 20.0, "fitted": "2026-03-01"},
    )
    plan = plan.with_changes(parts={**plan.parts, supply.id: new})
    return plan, kinds, in_use(plan, kinds), supply.id


def with_use(plan, use):
    """The plan with every scene used so, and the last one half as often: two patterns on one battery."""
    scenes = {k: msgspec.structs.replace(s, use=use) for k, s in plan.scenes.items()}
    last = list(scenes)[-1]
    rarer = msgspec.structs.replace(use, sessions_per_month=use.sessions_per_month / 2)
    scenes[last] = msgspec.structs.replace(scenes[last], use=rarer)
    return plan.with_changes(scenes=scenes, use=use)


def warm_ms():
    plan, kinds, positions, battery = harbour()
    forecast(with_use(plan, UsePattern(3, 4)), kinds, positions, battery, None, TODAY)
    times, days = [], []
    for use in USES * 3:
        used = with_use(plan, use)
        start = time.perf_counter()
        seen = forecast(used, kinds, positions, battery, None, TODAY)
        times.append((time.perf_counter() - start) * 1000)
        days.append(seen.days.typical)
    return max(statistics.median(times[i :: len(USES)]) for i in range(len(USES))), min(days)


def cold_s():
    """One forecast in a process of its own."""
    code = (
        "import sys, time; sys.path.insert(0, sys.argv[1]);"
        "from tests.benchmarks import outlook as o;"
        "plan, kinds, positions, battery = o.harbour(); used = o.with_use(plan, o.USES[0]);"
        "start = time.perf_counter(); o.forecast(used, kinds, positions, battery, None, o.TODAY);"
        "print(time.perf_counter() - start)"
    )
    runs = [
        float(subprocess.run([sys.executable, "-c", code, str(ROOT)], capture_output=True, check=True).stdout)
        for _ in range(3)
    ]
    return min(runs)


def ratio_to_standard(name):
    key, load_, daily, end_v, least = IEC_MINIMA[name]
    typical = packed(CELLS[key], grade=Grade(CELLS[key].grades.typical))
    return life("", load_, end_v, daily, pack=typical).lit_h / least


def kept_apart():
    """Return the errors of what was kept apart, by chemistry."""
    found = {}
    for source in (apart.errors(), lithium_apart.errors()):
        for chemistry, cases in source.items():
            found.setdefault(chemistry, []).extend(abs(error) for error in cases.values())
    return found


def main() -> None:
    fitted = {chemistry: [abs(e) for e in cases.values()] for chemistry, cases in fitted_errors().items()}
    kept = kept_apart()
    slowest, least_days = warm_ms()
    print(f"iec_worst = {min(map(ratio_to_standard, IEC_MINIMA)):.3f}")
    print(f"datasheet_worst = {max(max(errors) for errors in fitted.values()):.3f}")
    print(f"datasheet_mean = {statistics.mean(e for errors in fitted.values() for e in errors):.3f}")
    for chemistry, errors in fitted.items():
        print(f"datasheet_worst_{chemistry.replace('-', '_')} = {max(errors):.3f}")
    print(f"kept_apart_worst = {max(max(errors) for errors in kept.values()):.3f}")
    print(f"kept_apart_mean = {statistics.mean(e for errors in kept.values() for e in errors):.3f}")
    for chemistry, errors in kept.items():
        print(f"kept_apart_worst_{chemistry.replace('-', '_')} = {max(errors):.3f}")
    print(f"beyond_fit = {abs(apart.error_of(apart.BEYOND)):.3f}")
    print(f"least_days = {least_days:.0f}")
    print(f"warm_ms = {slowest:.1f}")
    print(f"cold_s = {cold_s():.2f}")


if __name__ == "__main__":
    main()
