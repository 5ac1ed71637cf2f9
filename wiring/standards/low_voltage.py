"""What counts as safe low voltage, and what the norms for model railways allow."""

# IEC 61140 and IEC 60364-4-41, verified: below it no protection against touch is asked for in the dry.
TOUCH_AC_V = 25.0
TOUCH_DC_V = 60.0

# MOROP NEM 611 (2017), verified: scenery, whatever the scale.
NEM_SCENERY_DC_V = 15.0
