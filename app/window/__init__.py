"""The window: what stands where, its actions, and opening and saving."""
