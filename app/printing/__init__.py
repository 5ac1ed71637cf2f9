"""The sheets on screen, on paper and in files."""
