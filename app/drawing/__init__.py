"""The circuit view: the drawings of each fed circuit, to read and to click."""
