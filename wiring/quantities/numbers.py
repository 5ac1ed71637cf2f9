"""Numbers as people write them: decimal comma or point, fractions, grouped thousands.

What could mean two numbers, such as ``1,000``, is no number here: a wrong guess would go unseen.
"""

import re

_PLAIN = r"(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]{1,3})?"
_GROUPED = (
    r"[0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?",
    r"[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+",
    r"[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+",
    r"[0-9]{1,3}(?:,[0-9]{3}){2,}",
    r"[0-9]{1,3}(?:\.[0-9]{3}){2,}",
)
_FRACTION = r"(?:[0-9]{1,6}[ -]+)?[0-9]{1,6} ?/ ?[0-9]{1,6}"

NUMBER = rf"(?:{_FRACTION}|{'|'.join(_GROUPED)}|{_PLAIN})"
_TWO_WAYS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")

_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3",
    "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_SAME = str.maketrans(
    {
        "Ω": "Ω", "μ": "µ", "−": "-", "–": "-", "²": "2", "⁄": "/",
        "″": '"', "”": '"', "“": '"', "′": "'", "’": "'", "‘": "'",
        "\u00a0": " ", "\u2009": " ", "\u202f": " ",
        **{sign: f" {plain}" for sign, plain in _VULGAR.items()},
    }
)  # fmt: skip


def tidied(text: str) -> str:
    """Return the text with look-alike signs made one and spaces single."""
    return " ".join(text.translate(_SAME).split())


def two_ways(number: str) -> bool:
    """Whether a number can be meant with a decimal comma or with grouped thousands."""
    return _TWO_WAYS.fullmatch(number) is not None


def number(text: str) -> float:
    """Return the value of a text that NUMBER matches; ValueError for a fraction over nothing."""
    if "/" in text:
        *whole, top, bottom = re.findall(r"[0-9]+", text)
        if int(bottom) == 0:
            raise ValueError("a fraction over zero")
        return sum(map(int, whole)) + int(top) / int(bottom)
    text = text.replace(" ", "")
    last = max(text.rfind("."), text.rfind(","))
    if last >= 0 and text.count(text[last]) == 1:
        text = re.sub("[.,]", "", text[:last]) + "." + text[last + 1 :]
    else:
        text = re.sub("[.,]", "", text)  # 1,000,000
    return float(text)
