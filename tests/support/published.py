"""Published discharges: those the battery types were fitted to, and the standard's least hours.

What was kept apart from fitting stands in tests/reference/test_discharges_kept_apart.py; two of its cases run
by way of a plan in test_battery_runs_in_plans.py, and none stands elsewhere.
"""

from support.cell_runs import CONTINUOUS, current, resistor

HOUR, TWO, FOUR, HALF_DAY = (1.0, 24.0), (2.0, 24.0), (4.0, 24.0), (1.0, 12.0)

# Makers' data sheets of alkaline cells; rows with an asterisk are second-hand readings of data sheets.
# battery, load, hours on and period, end voltage, published hours of load
FITTED = {
    "6LR61 35 mA": ("alkaline 9 V", current(0.035), CONTINUOUS, 5.4, 16.65),
    "6LR61 270 ohm 1 h/d": ("alkaline 9 V", resistor(270), HOUR, 5.4, 21.0),
    "6LR61 620 ohm 2 h/d": ("alkaline 9 V", resistor(620), TWO, 5.4, 49.0),
    "LR6 100 mA 1 h/d": ("alkaline AA", current(0.1), HOUR, 0.9, 26.8),
    "LR6 10 ohm": ("alkaline AA", resistor(10), CONTINUOUS, 0.9, 20.5),
    "LR6 25 mA *": ("alkaline AA", current(0.025), CONTINUOUS, 0.8, 120.0),
    "LR6 500 mA *": ("alkaline AA", current(0.5), CONTINUOUS, 0.8, 3.2),
    "LR6 1 A *": ("alkaline AA", current(1.0), CONTINUOUS, 0.8, 1.05),
    "LR03 5.1 ohm 1 h/d": ("alkaline AAA", resistor(5.1), HOUR, 0.8, 4.75),
    "LR03 50 mA 1 h/12 h": ("alkaline AAA", current(0.05), HALF_DAY, 0.9, 24.0),
    "LR03 20 ohm": ("alkaline AAA", resistor(20), CONTINUOUS, 0.9, 19.8),
    "LR03 10 mA *": ("alkaline AAA", current(0.01), CONTINUOUS, 0.8, 130.0),
    "LR14 400 mA 2 h/d": ("alkaline C", current(0.4), TWO, 0.9, 13.45),
    "LR14 3.9 ohm 1 h/d": ("alkaline C", resistor(3.9), HOUR, 0.8, 22.55),
    "LR20 600 mA 2 h/d": ("alkaline D", current(0.6), TWO, 0.9, 16.5),
    "LR20 2.2 ohm 1 h/d": ("alkaline D", resistor(2.2), HOUR, 0.8, 24.5),
    "LR20 25 mA *": ("alkaline D", current(0.025), CONTINUOUS, 0.8, 720.0),
}

# A handbook's table of carbon-zinc cells: starting drain of a resistor, 2 h a day to 0.8 V a cell (the hours
# a day from memory; that the flat cell is the one of a 9 V block too).
FITTED_ZINC = {
    "R6 3 mA": ("zinc-carbon AA", resistor(500), TWO, 0.8, 450.0),
    "R6 15 mA": ("zinc-carbon AA", resistor(100), TWO, 0.8, 80.0),
    "R6 30 mA": ("zinc-carbon AA", resistor(50), TWO, 0.8, 32.0),
    "6F22 0.8 mA": ("zinc-carbon 9 V", resistor(11250), TWO, 4.8, 475.0),
    "6F22 4 mA": ("zinc-carbon 9 V", resistor(2250), TWO, 4.8, 98.0),
    "6F22 8 mA": ("zinc-carbon 9 V", resistor(1125), TWO, 4.8, 49.0),
}

# Sheets of a 12 V 7 Ah sealed lead-acid battery and its sister sizes: amperes at 20 °C, by the volts per cell
# at which it ends and the hours it lasts.
LEAD_HOURS = (0.5, 0.75, 1, 2, 3, 4, 5, 6, 8, 10, 20)
LEAD_ACID = {
    1.85: (5.39, 3.97, 3.34, 2.00, 1.56, 1.27, 1.04, 0.91, 0.733, 0.612, 0.336),
    1.80: (6.35, 4.61, 3.75, 2.18, 1.68, 1.36, 1.11, 0.98, 0.778, 0.631, 0.340),
    1.75: (6.60, 4.79, 3.92, 2.26, 1.71, 1.39, 1.14, 1.00, 0.791, 0.648, 0.343),
    1.70: (6.87, 4.98, 4.04, 2.32, 1.76, 1.42, 1.17, 1.02, 0.802, 0.661, 0.349),
    1.65: (7.24, 5.10, 4.14, 2.35, 1.84, 1.47, 1.20, 1.04, 0.815, 0.675, 0.354),
    1.60: (7.65, 5.32, 4.18, 2.45, 1.89, 1.52, 1.24, 1.07, 0.823, 0.682, 0.356),
}

# Sheet of a 450 mAh NiMH battery (IEC 61951-2): rate, end voltage, share of the rated charge it gives.
NIMH_RATES = ((0.2, 1.0, 1.0), (1.0, 0.9, 0.956), (3.0, 0.9, 0.80))

# Lithium 9 V block on 60 ohm to 7.0 V, Ah: a maker's figure as quoted by a third party.
LITHIUM_BLOCK = ("lithium 9 V", resistor(60), CONTINUOUS, 7.0, 0.960)

# Lithium-ion rated as IEC 61960 does (0.2 It to the maker's end voltage, 2.75 V a cell in several sheets).
LITHIUM_ION = ("li-ion 18650", "lipo 1 cell", "lipo 2 cells", "lipo 3 cells")

# Minimum average durations of IEC 60086-2: lower bounds only. Loads, hours a day and end voltages were seen
# in makers' sheets and in a test laboratory's public list of conditions; where each minimum itself comes from
# says IEC_SOURCES. The pulses of LR20 come round every hour here, without the night's rest of the standard's
# test: harder.
IEC_MINIMA = {
    "LR20 2.2 ohm 4 min/h": ("alkaline D", resistor(2.2), (4 / 60, 1.0), 0.9, 13.5),
    "LR20 2.2 ohm 1 h/d": ("alkaline D", resistor(2.2), HOUR, 0.8, 17.5),
    "LR20 10 ohm 4 h/d": ("alkaline D", resistor(10), FOUR, 0.9, 81.0),
    "LR20 600 mA 2 h/d": ("alkaline D", current(0.6), TWO, 0.9, 11.0),
    "LR14 3.9 ohm 1 h/d": ("alkaline C", resistor(3.9), HOUR, 0.8, 14.0),
    "LR14 20 ohm 4 h/d": ("alkaline C", resistor(20), FOUR, 0.9, 77.0),
    "LR14 400 mA 2 h/d": ("alkaline C", current(0.4), TWO, 0.9, 8.0),
    "LR6 43 ohm 4 h/d": ("alkaline AA", resistor(43), FOUR, 0.9, 60.0),
    "LR6 3.9 ohm 1 h/d": ("alkaline AA", resistor(3.9), HOUR, 0.8, 5.0),
    "LR6 250 mA 1 h/d": ("alkaline AA", current(0.25), HOUR, 0.9, 5.0),
    "LR6 100 mA 1 h/d": ("alkaline AA", current(0.1), HOUR, 0.9, 15.0),
    "LR6 50 mA 1 h/8 h": ("alkaline AA", current(0.05), (1.0, 8.0), 1.0, 30.0),
    "LR03 75 ohm 4 h/d": ("alkaline AAA", resistor(75), FOUR, 0.9, 44.0),
    "LR03 5.1 ohm 1 h/d": ("alkaline AAA", resistor(5.1), HOUR, 0.8, 2.0),
    "LR03 50 mA 1 h/12 h": ("alkaline AAA", current(0.05), HALF_DAY, 0.9, 12.0),
    "6LR61 620 ohm 2 h/d": ("alkaline 9 V", resistor(620), TWO, 5.4, 33.0),
    "6LR61 270 ohm 1 h/d": ("alkaline 9 V", resistor(270), HOUR, 5.4, 12.0),
    "R6P 43 ohm 4 h/d": ("zinc-carbon AA", resistor(43), FOUR, 0.9, 27.0),
    "6F22 620 ohm 2 h/d": ("zinc-carbon 9 V", resistor(620), TWO, 5.4, 24.0),
    "6F22 270 ohm 1 h/d": ("zinc-carbon 9 V", resistor(270), HOUR, 5.4, 7.0),
}

MEMORY = "from memory; no readable copy of the standard's tables was found"
IEC_SOURCES = {
    **dict.fromkeys(IEC_MINIMA, MEMORY),
    "LR20 2.2 ohm 4 min/h": "a battery handbook, table of application tests for R20 types (4.6a): 810 min",
    "LR6 43 ohm 4 h/d": "from memory; a maker guarantees 2200 mAh, some 77 h, on it to meet the standard",
}
