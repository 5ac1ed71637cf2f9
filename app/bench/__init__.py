"""The panel bench: one panel's face laid out flat, from the front or from behind."""
