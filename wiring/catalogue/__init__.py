"""Kinds of parts as data: built-in TOML files and the user's own."""
