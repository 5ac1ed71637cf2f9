"""Branch laws: current and slope from branch voltage, for whole arrays at once."""
