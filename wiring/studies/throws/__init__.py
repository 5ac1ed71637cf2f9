"""What throws a turnout: the pulse a coil gets from a capacitor or a supply; and what draws in a rush."""
