"""Circuit symbols in the manner of IEC 60617, one file each: `element(state)` gives a schemdraw element."""
