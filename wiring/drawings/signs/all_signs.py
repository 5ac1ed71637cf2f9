"""Every sign by the name the catalogue gives it."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.ac_supply import ac_supply
from wiring.drawings.signs.battery import battery
from wiring.drawings.signs.block import block
from wiring.drawings.signs.building import building
from wiring.drawings.signs.coil_motor import coil_motor
from wiring.drawings.signs.diode import diode
from wiring.drawings.signs.filament import filament
from wiring.drawings.signs.flasher import flasher
from wiring.drawings.signs.fuse import fuse
from wiring.drawings.signs.hand import State, leads
from wiring.drawings.signs.indicator import indicator
from wiring.drawings.signs.led import led
from wiring.drawings.signs.module import module
from wiring.drawings.signs.plug import plug
from wiring.drawings.signs.push import push
from wiring.drawings.signs.rectifier import rectifier
from wiring.drawings.signs.relay import relay
from wiring.drawings.signs.resettable_fuse import resettable_fuse
from wiring.drawings.signs.resistor import resistor
from wiring.drawings.signs.servo import servo
from wiring.drawings.signs.slide import slide
from wiring.drawings.signs.stall_motor import stall_motor
from wiring.drawings.signs.strip import strip
from wiring.drawings.signs.supply import supply
from wiring.drawings.signs.terminal_strip import terminal_strip
from wiring.drawings.signs.toggle import toggle
from wiring.drawings.signs.unknown import unknown
from wiring.pictures.picture import Item
from wiring.plan.part import Part

Painter = Callable[[Kind, Part | None, State], tuple[Item, ...]]

SIGNS: Mapping[str, Painter] = MappingProxyType(
    {
        painter.__name__: painter
        for painter in (
            ac_supply,
            battery,
            block,
            building,
            coil_motor,
            diode,
            filament,
            flasher,
            fuse,
            indicator,
            led,
            module,
            plug,
            push,
            rectifier,
            relay,
            resettable_fuse,
            resistor,
            servo,
            slide,
            stall_motor,
            strip,
            supply,
            terminal_strip,
            toggle,
        )
    }
)


def sign(kind: Kind, part: Part | None = None, state: State | None = None) -> tuple[Item, ...]:
    """Return a part as seen from above, mm about its centre, unturned; without its terminals and halo."""
    body = SIGNS.get(kind.sign, unknown)(kind, part, state or State())
    return *leads(kind, kind.width_mm / 2, kind.height_mm / 2), *body
