"""What the command line cannot do, in one plain sentence; it ends with exit status 2."""

FINE = 0
DANGER = 1
BAD_INPUT = 2


class Refused(Exception):  # noqa: N818 - an answer to the user
    """The input is bad; the message is one plain sentence."""
