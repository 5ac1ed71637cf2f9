"""Questions asked of a circuit: how long a battery lasts, which wire, which fuse, how bright."""
