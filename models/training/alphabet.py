"""The classes the reader can write, in output order. Class 0 is the CTC blank."""

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
DIGITS = "0123456789"
MARKS = ".,'&-:;()/·°"
ACCENTED = "àáâäåçèéêëìíîïñòóôöøùúûüßæœÀÁÂÄÅÇÈÉÊËÌÍÎÏÑÒÓÔÖØÙÚÛÜÆŒ"
LONG_S = "ſ"

# Raised letters of abbreviations (Wᵐ, Thoˢ, Mʳ, Cⁱᵉ): the glyph drawn -> the class written.
RAISED = {"a": "ᵃ", "c": "ᶜ", "d": "ᵈ", "e": "ᵉ", "h": "ʰ", "i": "ⁱ", "l": "ˡ", "m": "ᵐ", "n": "ⁿ",
          "o": "ᵒ", "r": "ʳ", "s": "ˢ", "t": "ᵗ", "v": "ᵛ", "y": "ʸ"}
LOWERED = {v: k for k, v in RAISED.items()}

DRAWN = LETTERS + DIGITS + MARKS + ACCENTED + LONG_S          # characters with a glyph of their own
CLASSES = ["", " "] + list(DRAWN) + list(RAISED.values())     # index = class; 0 = blank, 1 = space
INDEX = {c: i for i, c in enumerate(CLASSES)}
SPACE = 1

# What is engraved (and written) where a font lacks the character.
PLAIN = {**{c: p for c, p in zip(ACCENTED, "aaaaaceeeeiiiinooooouuuu")}, "ß": "s", "æ": "a", "œ": "o", "ſ": "s",
         **{c: p for c, p in zip("ÀÁÂÄÅÇÈÉÊËÌÍÎÏÑÒÓÔÖØÙÚÛÜ", "AAAAACEEEEIIIINOOOOOUUUU")}, "Æ": "A", "Œ": "O",
         "·": ".", "°": "o", ";": ",", ":": ".", "/": "-", "(": "-", ")": "-", "&": "E", "'": ",", "-": "."}

STYLES = ["roman", "italic", "script", "blackletter", "didone", "sans"]
ORIENTATIONS = ["upright", "turned_180", "mirrored", "mirrored_turned_180"]


def encode(text):
    """Class indices of a text; raises KeyError for a character without a class."""
    return [INDEX[c] for c in text]


def decode(indices):
    """Best-path CTC decoding of a sequence of class indices."""
    out, last = [], 0
    for i in indices:
        if i != last and i:
            out.append(CLASSES[i])
        last = i
    return "".join(out)
