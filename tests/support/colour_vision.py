"""How colours look to people who see them otherwise, and how far they stand apart.

Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
IEEE Transactions on Visualization and Computer Graphics 15(6), 2009: severity 1.0, for linear RGB.
Contrast is that of WCAG 2.2.
"""

SEEN = {
    "as most do": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "without red": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "without green": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "without blue": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
LUMINANCE = (0.2126, 0.7152, 0.0722)


def linear(colour: str) -> list[float]:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    return [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]


def seen(colour: str, how: str) -> list[float]:
    """Linear red, green and blue of a colour as it is seen, within what a screen can show."""
    rgb = linear(colour)
    return [min(max(sum(m * c for m, c in zip(row, rgb, strict=True)), 0.0), 1.0) for row in SEEN[how]]


def contrast(one: str, other: str, how: str = "as most do") -> float:
    lights = [sum(w * c for w, c in zip(LUMINANCE, seen(x, how), strict=True)) for x in (one, other)]
    return (max(lights) + 0.05) / (min(lights) + 0.05)
