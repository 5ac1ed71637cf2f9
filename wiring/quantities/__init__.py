"""Numbers with units at the edges: read what people type, write what they read."""
