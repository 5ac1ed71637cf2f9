"""What counts as safe low voltage, and what the norms for model railways allow."""

from typing import NamedTuple

# IEC 61140 and IEC 60364-4-41, verified: the bands, and below them no protection against touch when dry.
SELV_AC_V = 50.0
SELV_DC_V = 120.0
TOUCH_AC_V = 25.0
TOUCH_DC_V = 60.0

# NEC article 725, Class 2 in one line, and the outputs UL 1310 admits; both verified.
CLASS_2_V = 30.0
CLASS_2_VA = 100.0
CLASS_2_PEAK_AC_V = 42.4
CLASS_2_DC_V = 60.0

# Toy Safety Directive 2009/48/EC, annex II, verified.
TOY_V = 24.0

# MOROP NEM 611 (2017), verified: scenery, whatever the scale; fixed drives between 6.5 and 45 mm gauge.
NEM_SCENERY_DC_V = 15.0
NEM_DRIVE_AC_V = (14.0, 16.0)
NEM_DRIVE_DC_V = 12.0

# MOROP NEM 604 (2013), verified: share of the source voltage the wires, out and back, may lose.
NEM_DROP_SHARE = 0.10
NEM_OHM_MM2_PER_M = 0.0178

# MOROP NEM 609 (2010), verified: what may feed a layout.
NEM_SOURCE_VA = 200.0
NEM_SOURCE_A = 10.0


class PowerLimit(NamedTuple):
    """Limits of a limited power source (NEC Class 2 likewise) at one open-circuit voltage."""

    short_circuit_a: float
    power_va: float
    fuse_a: float  # largest fuse where one does the limiting; 0 where the source limits by itself


def limited_by_itself(open_v: float) -> PowerLimit | None:
    """Return the limits of an inherently limited source; None above 60 V DC.

    IEC 60950-1 table 2B, verified.
    """
    if not 0.0 < open_v <= 60.0:
        return None
    if open_v <= 20.0:
        return PowerLimit(8.0, 5.0 * open_v, 0.0)
    if open_v <= 30.0:
        return PowerLimit(8.0, 100.0, 0.0)
    return PowerLimit(150.0 / open_v, 100.0, 0.0)


def limited_by_fuse(open_v: float) -> PowerLimit | None:
    """Return the limits of a source that a fuse limits, IEC 60950-1 table 2C; None above 60 V DC.

    Verified but for the fuse above 20 V, 100 W over the voltage, which is from memory.
    """
    if not 0.0 < open_v <= 60.0:
        return None
    return PowerLimit(1000.0 / open_v, 250.0, 5.0 if open_v <= 20.0 else 100.0 / open_v)
