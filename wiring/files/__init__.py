"""The file on disk: format, check, encode, decode, upgrades, atomic store, rescue copy."""
