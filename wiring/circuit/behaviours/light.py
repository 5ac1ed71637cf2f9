"""What shines: LEDs, strips, filament lamps, flashers, constant-current lights. Light is of rated."""

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import (
    Behaviour,
    Piece,
    Shine,
    Values,
    count,
    not_negative,
    positive,
    warmer_k,
)
from wiring.circuit.branches.filament import COLD_OVER_HOT, SCALE
from wiring.circuit.branches.junction import junction_values
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure
from wiring.standards.rerating import LIGHT_EXPONENT

LED_OWN_DROP_V = 0.03  # of forward_v, lost in the LED's bulk resistance at forward_a: 1.5 ohm in a 20 mA type
GLOWS = 1e-4  # less light than this, of rated, is dark
FLASHES = 0.5  # of rated: with less a flasher does nothing


def _chain(values: Values, plus: str, minus: str, chains: float) -> Branch:
    forward_a = positive(values, "forward_a")
    law = junction_values(
        positive(values, "forward_v", LED_OWN_DROP_V), forward_a, positive(values, "slope_v"),
        LED_OWN_DROP_V / forward_a, count(values, "in_series"), not_negative(values, "series_ohm"), chains,
        warmer_k(values),
    )  # fmt: skip
    return Branch("junction", plus, minus, law)


def _led(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece((_chain(values, "A", "K", count(values, "in_parallel")),))


def _led_shine(values: Values) -> Shine:
    # Settings of a part that is solved are sound: they were looked at when it was compiled.
    return Shine(values["forward_a"] * round(values["in_parallel"]))


def _led_light(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return _lit(figure, _led_shine(values))


def sections(values: Values) -> int:
    """Return how many sections a strip of those settings has."""
    return whole_sections(positive(values, "length"), positive(values, "section"))


def whole_sections(length_m: float, section_m: float) -> int:
    """Return how many sections a strip has: whole ones, one at least."""
    return max(1, round(length_m / section_m))


def _strip(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece((_chain(values, "+", "-", sections(values)),))


def _strip_shine(values: Values) -> Shine:
    return Shine(values["forward_a"] * sections(values))


def _strip_light(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return _lit(figure, _strip_shine(values))


def _filament(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    rated_a = positive(values, "rated_a") * count(values, "in_parallel")
    return Piece((Branch("filament", "1", "2", (positive(values, "rated_v"), rated_a)),))


def _filament_shine(values: Values) -> Shine:
    return Shine(values["rated_v"], of_volts=True, exponent=LIGHT_EXPONENT)


def _filament_light(values: Values, position: str, figure: PartFigure) -> PartFigure:
    """Its peak is what it would take cold, were its volts to hold meanwhile: they hold at best."""
    figure = _lit(figure, _filament_shine(values))
    cold_s = SCALE * values["rated_a"] * count(values, "in_parallel") / values["rated_v"] / COLD_OVER_HOT
    cold_a = abs(figure.volts_v) * cold_s
    return figure._replace(peak_a=cold_a) if figure.light else figure


def _flasher(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    mean_a = positive(values, "on_a") * positive(values, "duty")
    return Piece((Branch("constant_current", "+", "-", (mean_a, positive(values, "min_v"))),))


def _flasher_shine(values: Values) -> Shine:
    return Shine(values["on_a"] * values["duty"])


def _flashing(values: Values, position: str, figure: PartFigure) -> PartFigure:
    figure = _lit(figure, _flasher_shine(values))
    flashes = (figure.light or 0.0) > FLASHES
    return figure._replace(peak_a=figure.current_a / values["duty"], state="flashes" if flashes else "")


def _constant_current(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece(
        (Branch("constant_current", "+", "-", (positive(values, "set_a"), positive(values, "min_v"))),)
    )


def _constant_current_shine(values: Values) -> Shine:
    return Shine(values["set_a"])


def _constant_current_light(values: Values, position: str, figure: PartFigure) -> PartFigure:
    return _lit(figure, _constant_current_shine(values))


def _lit(figure: PartFigure, shine: Shine) -> PartFigure:
    volts_v, current_a, power_w, *_ = figure
    light = abs(volts_v / shine.full) ** shine.exponent if shine.of_volts else current_a / shine.full
    return PartFigure(volts_v, current_a, power_w, light if light > GLOWS else 0.0)


LED = Behaviour(_led, _led_light, polarised=True, shine=_led_shine)
STRIP = Behaviour(_strip, _strip_light, polarised=True, shine=_strip_shine)
FILAMENT = Behaviour(_filament, _filament_light, shine=_filament_shine)
FLASHER = Behaviour(_flasher, _flashing, polarised=True, shine=_flasher_shine)
CONSTANT_CURRENT = Behaviour(
    _constant_current, _constant_current_light, polarised=True, shine=_constant_current_shine
)
