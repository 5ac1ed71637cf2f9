"""Circuit drawings, plan views and the signs of parts, as pictures."""
