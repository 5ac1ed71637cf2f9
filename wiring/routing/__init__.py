"""How long wires are, by the way they run."""
