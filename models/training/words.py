"""Invented texts for engraved lines. No dictionary: nothing here may teach a spelling.

Half of the words are syllables that sound like names, the rest are random letters; letters are then doubled,
dropped, swapped or replaced, so that an odd spelling is as likely as a smooth one.
"""
import multiprocessing as mp
import random

import numpy as np

from alphabet import ACCENTED, INDEX, RAISED

MAX_LENGTH = 34
ONSETS = ("b c d f g h j k l m n p q r s t v w x y z " * 2 + "bl br ch cl cr dr fl fr gh gl gr kn ph pl pr qu rh sc sch "
          "sh sk sl sm sn sp st str sw th thr tr tw wh wr").split()
VOWELS = ("a e i o u y " * 4 + "ae ai au aw ay ea ee ei eu ew ey ia ie io oa oe oi oo ou ow oy ua ue ui uy").split()
CODAS = ("b c d f g h k l m n p r s t v w x y z " * 2 + "ch ck ct dge ff ft gg ght ld ll lm lt mb mm mp nd ng nk nn nt "
         "pp pt rb rch rd rf rk rl rm rn rp rs rt sh sk ss st tch th tt ts tz wn zz").split()
LOWER = "abcdefghijklmnopqrstuvwxyz"
ACCENT_OF = {"a": "àáâäåæ", "c": "ç", "e": "èéêë", "i": "ìíîï", "n": "ñ", "o": "òóôöøœ", "u": "ùúûü", "s": "ßſ"}
ABBREVIATIONS = ("Wm. Thos. Jno. Jas. Rd. Robt. Chas. Geo. Saml. Danl. Edwd. Richd. Alexr. Benjn. Josh. Hy. Mr. Messrs. "
                 "Dr. St. Ste. Mme. Vve. Cie. Co. Bros. No. Nr. Fils Frères Sohn Söhne Figli Sons Son Co in à a et und e "
                 "of at to on by de du von le la zu fecit Inv. et").split()
RAISED_FORMS = ("W+m T+hos Th+o Jn+o Ja+s R+d Rob+t Cha+s Sam+l Dan+l Edw+d Rich+d Alex+r Benj+n M+r D+r S+t C+o N+o "
                "M+de M+me V+ve C+ie S+r A+l L+t H+y Jos+h Geo+e 1+st 2+d 3+d 4+th 2+e 1+er F+res").split()


def _word(r):
    kind = r.random()
    if kind < 0.5:
        n = r.choices((1, 2, 3, 4), (2, 5, 4, 1))[0]
        w = ""
        for i in range(n):
            w += r.choice(ONSETS) if (i or r.random() < 0.85) else ""
            w += r.choice(VOWELS)
            w += r.choice(CODAS) if r.random() < (0.75 if i == n - 1 else 0.45) else ""
    elif kind < 0.85:
        n = min(12, 1 + int(r.expovariate(0.19)))
        w = "".join(r.choice(LOWER) for _ in range(n))
    else:
        base = r.choice("illlttffcceeoovvwwuunnmmrrhhbbddssaagqpyjkxz" + LOWER)
        near = {"i": "ilt", "l": "lit", "c": "ceo", "e": "eco", "n": "nuhrm", "u": "unvw", "v": "vwuy", "w": "wvu",
                "m": "mnrw", "r": "rnv", "h": "hbnk", "s": "saef"}.get(base, LOWER)
        w = "".join(r.choice(near + LOWER[:3]) for _ in range(r.randint(2, 8)))
    w = w[:14]
    if r.random() < 0.35 and len(w) > 2:
        i = r.randrange(len(w) - 1)
        edit = r.randrange(4)
        if edit == 0:
            w = w[:i] + w[i] + w[i:]
        elif edit == 1:
            w = w[:i] + w[i + 1:]
        elif edit == 2:
            w = w[:i] + w[i + 1] + w[i] + w[i + 2:]
        else:
            w = w[:i] + r.choice(LOWER) + w[i + 1:]
    if r.random() < 0.16:
        i = r.randrange(len(w))
        if w[i] in ACCENT_OF:
            w = w[:i] + r.choice(ACCENT_OF[w[i]]) + w[i + 1:]
    return w


def _cap(w):
    return w[:1].upper() + w[1:] if w[:1] not in "ßſ" else w


def _upper(w):
    return w.replace("ß", "ss").replace("ſ", "s").upper()


def _number(r):
    k = r.random()
    if k < 0.35:
        return str(r.randint(1, 99))
    if k < 0.6:
        return str(r.randint(1680, 1935))
    if k < 0.9:
        return "".join(r.choice("0123456789") for _ in range(r.randint(1, 6)))
    return f"{r.randint(1, 99)}{r.choice('-/.:')}{r.randint(0, 99)}"


def _raised(r):
    stem, up = r.choice(RAISED_FORMS).split("+") if r.random() < 0.6 else (
        _cap(_word(r))[:r.randint(1, 4)], "".join(r.choice("acdehilmnorstvy") for _ in range(r.randint(1, 2))))
    return stem + "".join(RAISED[c] for c in up) + ("." if r.random() < 0.25 else "")


def _token(r, case):
    k = r.random()
    if k < 0.74:
        w = _word(r)
        if r.random() < 0.03:
            w = w[:2] + "'" + w[2:]
        if r.random() < 0.03:
            w = w + "-" + _word(r)[:6]
        if case == "caps":
            return _upper(w)
        if case == "title":
            return _cap(w) if r.random() < 0.88 else w
        if case == "lower":
            return w
        return "".join(c.upper() if r.random() < 0.4 and c not in "ßſ" else c for c in w)
    if k < 0.80:
        t = _number(r)
    elif k < 0.86:
        t = "&" if r.random() < 0.8 else "&" + r.choice(["c", "C", "Co"])
    elif k < 0.885:
        t = r.choice("àaàAÀeyIiOoUuÉé")
    elif k < 0.91:
        t = ".".join(r.choice("ABCDEFGHIJKLMNOPQRSTUVWXYZ") for _ in range(r.randint(1, 3))) + "."
    elif k < 0.96:
        t = r.choice(ABBREVIATIONS)
        if r.random() < 0.3:
            t = t.rstrip(".") or t
    else:
        return _raised(r) if case != "caps" else _upper(_word(r)) + r.choice(".,:;'")
    return _upper(t) if case == "caps" else t


def line(r):
    """One invented line of 1 to 34 characters."""
    case = r.choices(("title", "caps", "lower", "mixed"), (54, 31, 10, 5))[0]
    n = r.choices((1, 2, 3, 4, 5), (40, 35, 16, 7, 2))[0]
    parts = [_token(r, case) for _ in range(n)]
    if r.random() < 0.08 and case == "title":
        i = r.randrange(n)
        parts[i] = _upper(parts[i]) if not any(c in RAISED.values() for c in parts[i]) else parts[i]
    text = ""
    for i, p in enumerate(parts):
        sep = " " if not i else (", " if r.random() < 0.05 else " · " if r.random() < 0.01 else
                                 " - " if r.random() < 0.015 else ". " if r.random() < 0.03 else " ")
        text = text + (sep if i else "") + p
    if r.random() < 0.10:
        text += r.choice("..,:;-'")
    if r.random() < 0.015:
        text = "(" + text + ")"
    if r.random() < 0.01:
        text += "°"
    text = "".join(c for c in text if c in INDEX)[:MAX_LENGTH]
    text = " ".join(text.split())
    return text or r.choice(LOWER)


def _chunk(args):
    seed, n = args
    r = random.Random(seed)
    out = np.zeros((n, MAX_LENGTH), np.uint8)
    for i in range(n):
        t = [INDEX[c] for c in line(r)]
        out[i, :len(t)] = t
    return out


def pool(seed, n, processes):
    """n lines as class indices, uint8 [n, 34], 0 past the end. Seeds are split by chunk, so the result does not
    depend on the number of processes."""
    step = 20000
    jobs = [(seed * 1_000_003 + i, min(step, n - i * step)) for i in range((n + step - 1) // step)]
    if processes <= 1:
        return np.concatenate([_chunk(j) for j in jobs])
    with mp.get_context("fork").Pool(processes) as p:
        return np.concatenate(p.map(_chunk, jobs))


if __name__ == "__main__":
    rr = random.Random(1)
    for _ in range(60):
        print(line(rr))
