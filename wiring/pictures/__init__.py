"""Pictures in millimetres: a list of lines, shapes and words, and the painters that put it on SVG and PDF."""
