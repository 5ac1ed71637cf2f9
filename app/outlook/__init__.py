"""The battery view: how volts and light fall over the hours, and when to swap."""
