"""Circuit symbols in the manner of IEEE 315 where they differ from those of IEC 60617, one file each.

Drawn from memory of the standard's common forms; `element(state)` gives a schemdraw element.
"""
