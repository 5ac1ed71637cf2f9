"""The table of branch laws."""

from wiring.circuit.branches.capacitor import CAPACITOR
from wiring.circuit.branches.constant_current import CONSTANT_CURRENT
from wiring.circuit.branches.constant_power import CONSTANT_POWER
from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.branches.junction import JUNCTION
from wiring.circuit.branches.law import Law
from wiring.circuit.branches.resistor import RESISTOR
from wiring.circuit.branches.source import SOURCE

LAWS: tuple[Law, ...] = (RESISTOR, SOURCE, JUNCTION, FILAMENT, CONSTANT_CURRENT, CONSTANT_POWER, CAPACITOR)
LAW_NUMBER: dict[str, int] = {law.name: number for number, law in enumerate(LAWS)}
WIDTH = max(len(law.parameters) for law in LAWS)
