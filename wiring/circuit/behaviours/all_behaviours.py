"""The table of behaviours, by the name the catalogue uses."""

from wiring.circuit.behaviours import (
    converter,
    discharge_unit,
    feeding,
    joining,
    light,
    module,
    movement,
    passive,
)
from wiring.circuit.behaviours.piece import Behaviour

BEHAVIOURS: dict[str, Behaviour] = {
    "resistor": passive.RESISTOR,
    "fuse": passive.FUSE,
    "resettable_fuse": passive.FUSE,
    "diode": passive.DIODE,
    "rectifier": passive.RECTIFIER,
    "led": light.LED,
    "strip": light.STRIP,
    "filament": light.FILAMENT,
    "flasher": light.FLASHER,
    "constant_current": light.CONSTANT_CURRENT,
    "constant_power": module.CONSTANT_POWER,
    "stall_motor": movement.STALL_MOTOR,
    "twin_coil": movement.TWIN_COIL,
    "servo": movement.SERVO,
    "discharge_unit": discharge_unit.DISCHARGE_UNIT,
    "converter": converter.CONVERTER,
    "switch": joining.SWITCH,
    "relay": joining.RELAY,
    "separate": joining.SEPARATE,
    "bus": joining.BUS,
    "pairs": joining.PAIRS,
    "supply_regulated": feeding.SUPPLY_REGULATED,
    "supply_unregulated": feeding.SUPPLY_UNREGULATED,
    "supply_ac": feeding.SUPPLY_AC,
    "battery": feeding.BATTERY,
}

RESTATING = frozenset(name for name, behaviour in BEHAVIOURS.items() if behaviour.restates)
