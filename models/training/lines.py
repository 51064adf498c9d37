"""Endless batches of engraved lines for the reader, cut out the way a line finder with small errors would cut them."""
import math

import numpy as np
import torch

import engrave
from alphabet import CLASSES, DRAWN, INDEX, PLAIN, RAISED, STYLES

H = 64                       # reader height, px
INK = 0.76                   # share of the height between ink top and ink bottom
STRIDE = 4                   # px a frame
PAD = 8                      # rows drawn above and below the crop, so that resampling never runs dry
MAX_W = 1216
SHARES = dict(roman=0.25, italic=0.17, script=0.25, blackletter=0.12, didone=0.07, sans=0.14)
MARGIN_EM = 0.085            # of glyphs.MARGIN: free ground in a tile


class Tables:
    """Lookup tables from classes to glyphs, for one store."""

    def __init__(self, store):
        dev = store.device
        n = len(CLASSES)
        glyph = torch.zeros(n, dtype=torch.long)
        raised = torch.zeros(n, dtype=torch.bool)
        plain = torch.arange(n)
        upper = torch.arange(n)
        for i, c in enumerate(CLASSES[2:], 2):
            base = c
            if c in RAISED.values():
                base = next(k for k, v in RAISED.items() if v == c)
                raised[i] = True
                plain[i] = INDEX[base]
            elif c in PLAIN:
                plain[i] = INDEX[PLAIN[c]]
            glyph[i] = DRAWN.index(base)
            u = {"ß": "S", "ſ": "S"}.get(base, base.upper())
            upper[i] = INDEX.get(u, i)
        isup = torch.zeros(n, dtype=torch.bool)
        for c in CLASSES[2:]:
            isup[INDEX[c]] = c.isupper()
        digit = torch.full((n,), -1)
        for d in range(10):
            digit[INDEX[str(d)]] = d
        self.glyph, self.raised, self.plain, self.upper, self.isup, self.digit = (
            t.to(dev) for t in (glyph, raised, plain, upper, isup, digit))


def layout(store, tables, text, face):
    """Places the glyphs of [N, L] class indices on a straight line in em; returns a dict of [N, L] tensors.
    Also settles what the label is once the face's own alphabet is known."""
    dev = store.device
    n, length = text.shape
    U = lambda lo, hi: torch.rand(n, 1, device=dev) * (hi - lo) + lo
    G = lambda: torch.randn(n, length, device=dev)
    yes = lambda p: (torch.rand(n, 1, device=dev) < p)
    caps = store.caps[face][:, None]
    # in a face of small capitals the case shows in the height alone, so its lines get every mixture of the two
    r = torch.rand(n, 1, device=dev)
    place = torch.arange(length, device=dev)[None]
    gap = torch.where(text == 1, place, torch.full_like(text, -1)).amax(1, keepdim=True)
    raise_ = (caps == 1) & ((r < 0.35) | ((r < 0.55) & (gap > 0) & (place > gap)) | ((r < 0.85) & (place == 0)))
    text = torch.where(raise_, tables.upper[text], text)
    no_capital = ~(tables.isup[text].any(1, keepdim=True))
    text = torch.where((caps == 2) | ((caps == 1) & no_capital), tables.upper[text], text)
    for _ in range(2):
        missing = (text > 1) & ~store.have[face[:, None], tables.glyph[text]]
        text = torch.where(missing, tables.plain[text], text)
    missing = (text > 1) & ~store.have[face[:, None], tables.glyph[text]]
    text = torch.where(missing, torch.full_like(text, INDEX["e"]), text)
    text = torch.where((caps == 2), tables.upper[text], text)
    ink = text > 1
    used = text > 0
    glyph = tables.glyph[text]
    raised = tables.raised[text]
    # capitals and small capitals cut from an ordinary face; the label keeps the small letters
    lower = ink & ~tables.isup[text] & (tables.upper[text] != text) & ~raised
    as_caps = yes(0.03) & tables.isup[text].any(1, keepdim=True) & (caps == 0) & lower
    as_caps = as_caps & store.have[face[:, None], tables.glyph[tables.upper[text]]] & tables.isup[tables.upper[text]]
    glyph = torch.where(as_caps, tables.glyph[tables.upper[text]], glyph)
    su = torch.ones(n, length, device=dev)
    sv, lift = su.clone(), torch.zeros_like(su)
    sc = U(0.7, 0.82).expand(n, length)
    su, sv = torch.where(as_caps, sc, su), torch.where(as_caps, sc, sv)
    # raised letters
    box = store.box[face[:, None], glyph]
    cap_h = store.box[face, DRAWN.index("H")][:, 3:4] - MARGIN_EM
    x_h = store.box[face, DRAWN.index("x")][:, 3:4] - MARGIN_EM
    rs = U(0.48, 0.7).expand(n, length)
    su, sv = torch.where(raised, rs, su), torch.where(raised, rs, sv)
    lift = torch.where(raised, (cap_h - x_h * rs * U(0.75, 1.1)).expand(n, length), lift)
    # old-style figures
    dig = tables.digit[text]
    old = yes(0.12) & (dig >= 0)
    small = old & (dig <= 2)
    hang = old & ((dig == 3) | (dig == 4) | (dig == 5) | (dig == 7) | (dig == 9))
    ratio = (x_h / cap_h.clamp_min(0.2)).clamp(0.4, 1)
    sv = torch.where(small, (ratio * 1.02).expand(n, length), sv)
    lift = torch.where(hang, (-(cap_h - x_h) * 0.9).expand(n, length), lift)
    # the engraver's hand
    hand = U(0, 1) ** 2
    su = su * (1 + 0.06 * hand * G())
    sv = sv * (1 + 0.05 * hand * G())
    lift = lift + 0.02 * hand * G()
    turn = 0.035 * hand * G()
    # advance
    n_cap = (tables.isup[text] & ink).sum(1, keepdim=True)
    all_caps = n_cap >= 0.7 * ink.sum(1, keepdim=True)
    script = torch.as_tensor(np.isin(store.style, ["script"]), device=dev)[face][:, None]
    track = torch.where(script, U(-0.02, 0.03) * yes(0.5), torch.where(all_caps, U(-0.02, 0.10) + U(0, 0.35) * yes(0.3),
                                                                        U(-0.02, 0.06) + U(0, 0.12) * yes(0.15)))
    adv = store.advance[face[:, None], glyph] * su + track
    space = U(0.17, 0.42) + track * U(1.0, 2.0)
    adv = torch.where(text == 1, space.expand(n, length), adv)
    kern = store.kerning[face[:, None], glyph[:, :-1], glyph[:, 1:]].float() * (ink[:, :-1] & ink[:, 1:])
    adv[:, :-1] += kern * su[:, 1:]
    adv = torch.where(used, adv, torch.zeros_like(adv))
    pen = torch.cumsum(adv, 1) - adv + 0.012 * hand * G()
    u0 = box[..., 0] + MARGIN_EM
    u1 = box[..., 2] - MARGIN_EM
    box2 = store.box[face[:, None], glyph]
    v0, v1 = box2[..., 1] + MARGIN_EM, box2[..., 3] - MARGIN_EM
    u0, u1 = box2[..., 0] + MARGIN_EM, box2[..., 2] - MARGIN_EM
    left, right = pen + u0 * su, pen + u1 * su
    big = 1e3
    low = torch.where(ink, v0 * sv + lift, torch.full_like(pen, big)).amin(1)
    high = torch.where(ink, v1 * sv + lift, torch.full_like(pen, -big)).amax(1)
    start = torch.where(ink, left, torch.full_like(pen, big)).amin(1)
    end = torch.where(ink, right, torch.full_like(pen, -big)).amax(1)
    return dict(text=text, face=face, glyph=glyph, ink=ink, su=su, sv=sv, lift=lift, turn=turn, pen=pen, left=left,
                right=right, low=low, high=high, start=start, end=end)


class Lines:
    """`batch()` yields dicts: line [B,1,H,W] in -1..1, target [B,L] (0 past the end), target_len, orientation, style,
    lettering, and for each letter its centre frame, class and the left and right edge in px."""

    def __init__(self, store, noise, texts, seed, budget=400 * 512, block=8192, negatives=0.06, flips=0.12,
                 native=None, small_caps=3.0):
        self.store, self.noise, self.texts = store, noise, texts
        self.tables = Tables(store)
        self.budget, self.block = budget, block
        self.negatives, self.flips, self.native = negatives, flips, native
        self.p = store.by_style(list(SHARES), list(SHARES.values()))
        self.p = self.p * torch.where(store.caps == 1, small_caps, 1.0)
        self.style_id = torch.as_tensor([STYLES.index(s) for s in store.style], device=store.device)
        self.rng = np.random.default_rng(seed)
        self.cursor = 0
        self.order = self.rng.permutation(len(texts))

    def _take(self, n):
        if self.cursor + n > len(self.order):
            self.order = self.rng.permutation(len(self.texts))
            self.cursor = 0
        i = self.order[self.cursor:self.cursor + n]
        self.cursor += n
        return torch.as_tensor(self.texts[np.sort(i)][self.rng.permutation(len(i))].astype(np.int64))

    def plan(self):
        """One block of laid-out lines, cut into batches of like width."""
        s, dev, n = self.store, self.store.device, self.block
        text = self._take(n).to(dev)
        face = torch.multinomial(self.p, n, True)
        lay = layout(s, self.tables, text, face)
        U = lambda lo, hi: torch.rand(n, device=dev) * (hi - lo) + lo
        yes = lambda p: (torch.rand(n, device=dev) < p).float()
        ink_h = (lay["high"] - lay["low"]).clamp_min(0.35)
        # a finder's box is a little too high or too low oftener than the letters are
        grow = torch.exp(torch.randn(n, device=dev) * 0.12).clamp(0.66, 1.22)
        em = INK * H * grow / ink_h
        aspect = torch.exp(torch.randn(n, device=dev) * 0.13).clamp(0.7, 1.4)
        ml = H * torch.exp(torch.randn(n, device=dev) * 0.5).clamp(0.2, 3) * 0.5
        mr = H * torch.exp(torch.randn(n, device=dev) * 0.5).clamp(0.2, 3) * 0.5
        # over-long lines lose their tail
        right_px = lay["right"] * (em * aspect)[:, None]
        keep = lay["ink"] & ((right_px - (lay["start"] * em * aspect)[:, None]) < MAX_W - 100)
        end = torch.where(keep, lay["right"], torch.full_like(lay["right"], -1e3)).amax(1)
        length = (end - lay["start"]) * em * aspect
        width = (length + ml + mr).clamp(48, MAX_W)
        lay.update(em=em, ex=em * aspect, ml=ml, keep=keep, length=length, width=width, ink_h=ink_h)
        order = torch.argsort(width + torch.randn(n, device=dev) * 12).cpu()
        wc = width.cpu()[order]
        cuts, i = [], 0
        while i < n:
            j = min(n, i + 768)
            w = int(math.ceil(float(wc[i:j].max()) / 32) * 32)
            while (j - i) * w > self.budget and j - i > 1:
                j = i + max(1, int((j - i) * 0.85))
                w = int(math.ceil(float(wc[i:j].max()) / 32) * 32)
            cuts.append((order[i:j], w))
            i = j
        self.rng.shuffle(cuts)
        return lay, [c for c in cuts if len(c[0]) >= 8]

    def batches(self):
        while True:
            lay, cuts = self.plan()
            for idx, w in cuts:
                idx = idx.to(self.store.device)
                yield self.draw({k: v[idx] for k, v in lay.items()}, w)

    def draw(self, q, w):
        s, dev = self.store, self.store.device
        b, length = q["text"].shape
        hc = H + 2 * PAD
        U = lambda lo, hi: torch.rand(b, device=dev) * (hi - lo) + lo
        yes = lambda p: (torch.rand(b, device=dev) < p)
        neg = yes(self.negatives)
        keep = q["keep"] & ~neg[:, None]
        e = lambda t: t[:, None]
        # where the ink lies: centre with an error, then slope and bow
        mid_y = PAD + H * 0.5 + torch.randn(b, device=dev).clamp(-2.2, 2.2) * torch.where(yes(0.25), 0.085, 0.05) * H
        base = mid_y + (q["high"] + q["low"]) / 2 * q["em"]
        slack = (w - q["width"]).clamp_min(0)
        x0 = q["ml"] + slack * U(0, 0.5) * yes(0.3) - q["start"] * q["ex"]
        mid_x = q["ml"] + q["length"] / 2
        half = (q["length"] / 2).clamp_min(20)
        slope = torch.minimum(0.055 * torch.ones_like(half), 5.5 / half) * torch.randn(b, device=dev).clamp(-1.5, 1.5) * 0.7
        bow = torch.randn(b, device=dev).clamp(-2, 2) * 1.6 * yes(0.5)
        slant = torch.where(yes(0.3), U(-0.1, 0.22), torch.zeros(b, device=dev))

        def place(lay, ox, baseline, mask):
            x = ox[:, None] + lay["pen"] * e(lay["ex"])
            t = (x - e(mid_x)) / e(half)
            y = e(baseline) - lay["lift"] * e(lay["em"]) + e(slope) * (x - e(mid_x)) + e(bow) * (t.clamp(-2, 2) ** 2 - 0.5)
            a = e(slope) + lay["turn"]
            ca, sa = torch.cos(a), torch.sin(a)
            ux, vy = lay["su"] * e(lay["ex"]), lay["sv"] * e(lay["em"])
            a11, a21 = ux * ca, ux * sa
            a12, a22 = vy * (e(slant) * ca + sa), vy * (e(slant) * sa - ca)
            m = mask
            c = torch.arange(b, device=dev)[:, None].expand_as(m)[m]
            f = lay["face"][:, None].expand_as(m)[m]
            return [c, f, lay["glyph"][m], x[m], y[m], a11[m], a12[m], a21[m], a22[m]]

        glyphs = place(q, x0, base, keep)
        # a neighbouring line's fragments
        for up in (True, False):
            on = yes(0.22)
            r = {k: torch.roll(v, 1 if up else 2, 0) for k, v in q.items()}
            r["em"], r["ex"] = q["em"] * U(0.8, 1.15), q["ex"]
            gap = q["ink_h"] * q["em"] * (0.03 + 0.4 * torch.rand(b, device=dev))
            nb = (mid_y - q["ink_h"] * q["em"] / 2 - gap + r["low"] * r["em"] if up else
                  mid_y + q["ink_h"] * q["em"] / 2 + gap + r["high"] * r["em"])
            more = place(r, q["ml"] - r["start"] * r["ex"] + U(-60, 60), nb, r["keep"] & on[:, None])
            glyphs = [torch.cat(t) for t in zip(glyphs, more)]
        # a rule under raised letters
        under = self.tables.raised[q["text"]] & keep & (torch.rand(b, 1, device=dev) < 0.3)
        if bool(under.any()):
            m = dict(q)
            m["glyph"] = torch.full_like(q["glyph"], DRAWN.index("-"))
            m["lift"] = q["lift"] - 0.33 * q["sv"] - 0.05
            glyphs = [torch.cat(t) for t in zip(glyphs, place(m, x0, base, under))]
        sdf = engrave.scatter(s, b, hc, w, *glyphs)
        sdf = self._marks(sdf, neg)

        y = (torch.arange(hc, device=dev) - hc / 2)[None, :, None] / H
        x = (torch.arange(w, device=dev) - w / 2)[None, None] / H
        v = lambda t: t.view(-1, 1, 1)
        around = yes(0.13)
        where = torch.where(yes(0.75), U(-0.75, 0.75), U(-1.25, 1.25))
        span = torch.exp(U(math.log(0.05), math.log(0.8)))
        ang = (v(where) + v(span) * y).clamp(-1.35, 1.35)
        ty = torch.tan(ang) * v((~around).float()) + v(U(-0.25, 0.25))
        angx = (v(where * 0.5) + v(torch.minimum(span, 1.5 / (torch.full_like(span, w / H)))) * x).clamp(-1.2, 1.2)
        tx = torch.tan(angx) * v(around.float()) + v(U(-0.15, 0.15))
        metal, texture = self._surround(b, hc, w, q, neg)
        lum, ink = engrave.shade(sdf, self.noise, ty.expand(b, hc, w), tx.expand(b, hc, w), metal, texture)
        lum = engrave.expose(lum)
        # camera pixels per reader pixel; letters near the limb have fewer rows
        lo, hi = self.native or (0.33, 1.15)
        nx = torch.exp(U(math.log(lo), math.log(hi)))
        nx = torch.where(yes(0.25 if self.native is None else 0), torch.ones_like(nx), nx).clamp_max(1)
        squeeze = torch.where(around, torch.ones_like(where), torch.cos(where.abs().clamp_max(1.15)))
        ny = (nx * torch.where(yes(0.8), squeeze, U(0.5, 1.0))).clamp(0.16, 1)
        img = engrave.photograph(lum, ny, nx, PAD, H)

        # flips
        o = torch.where(yes(self.flips) & ~neg, torch.randint(1, 4, (b,), device=dev), torch.zeros(b, dtype=torch.long, device=dev))
        f180, fm = v(((o == 1) | (o == 3))), v(((o == 2) | (o == 3)))
        img = torch.where(f180, img.flip(1, 2), img)
        img = torch.where(fm, img.flip(2), img)

        # letters: labels in reading order, edges in crop px
        inked = keep
        left = e(x0) + q["left"] * e(q["ex"])
        right = e(x0) + q["right"] * e(q["ex"])
        shift = e(slant) * ((q["high"] + q["low"]) / 4 * q["em"])[:, None]
        last = torch.where(inked, torch.arange(length, device=dev)[None], torch.full((b, length), -1, device=dev)).amax(1)
        used = (torch.arange(length, device=dev)[None] <= last[:, None]) & ~neg[:, None]
        target = torch.where(used, q["text"], torch.zeros_like(q["text"]))
        return dict(line=(img[:, None] - 0.5) / 0.5, target=target, target_len=used.sum(1), orientation=o,
                    style=self.style_id[q["face"]], lettering=(~neg), inked=inked, left=left + shift, right=right + shift,
                    ny=ny, nx=nx, ink_h=q["ink_h"] * q["em"], face=q["face"],
                    x_px=(s.box[q["face"], DRAWN.index("x")][:, 3] - MARGIN_EM) * q["em"] * ny)

    def _marks(self, sdf, neg):
        """On blank crops only: ruler ticks, turned rings, knurling. Nothing of this is lettering."""
        b, h, w = sdf.shape
        dev = sdf.device
        rows = torch.nonzero(neg)[:, 0]
        k = len(rows)
        if not k:
            return sdf
        U = lambda lo, hi: torch.rand(k, 1, 1, device=dev) * (hi - lo) + lo
        x = torch.arange(w, device=dev, dtype=torch.float32)[None, None]
        y = torch.arange(h, device=dev, dtype=torch.float32)[None, :, None]
        kind = torch.rand(k, 1, 1, device=dev)
        p, t = U(6, 50), U(0.6, 3.5)
        a = torch.where(kind < 0.55, torch.zeros_like(p), torch.where(kind < 0.75, torch.full_like(p, 1.5708), U(-0.9, 0.9)))
        c = x * torch.cos(a) + y * torch.sin(a) + U(0, 50)
        m = torch.remainder(c, p)
        d = t - (m - p / 2).abs()
        top = torch.where(kind < 0.3, U(0, 1) * h, torch.full_like(p, -50.0))
        long_tick = (torch.floor(c / p) % 5 == 0).float() * U(0, 20)
        d = torch.minimum(d, torch.where(kind < 0.3, y - top + long_tick, torch.full_like(d, 50)))
        single = (torch.floor(c / p) == torch.floor(U(0, 1) * w / p)) | (kind > 0.12)
        d = torch.where(single & (torch.rand(k, 1, 1, device=dev) < 0.5), d, torch.full_like(d, engrave.FAR))
        sdf = sdf.clone()
        sdf[rows] = torch.maximum(sdf[rows], d.clamp_min(engrave.FAR))
        return sdf

    def _surround(self, b, h, w, q, neg):
        """Tube edge, collar or cloth inside the crop, beyond the line."""
        dev = self.store.device
        U = lambda lo, hi: torch.rand(b, 1, 1, device=dev) * (hi - lo) + lo
        yes = lambda p: (torch.rand(b, 1, 1, device=dev) < p).float()
        x = torch.arange(w, device=dev, dtype=torch.float32)[None, None]
        y = torch.arange(h, device=dev, dtype=torch.float32)[None, :, None]
        v = lambda t: t.view(-1, 1, 1)
        metal = torch.ones(b, h, w, device=dev)
        top = PAD + U(-6, 8) + (x - w / 2) * U(-0.02, 0.02)
        low = h - PAD + U(-8, 6) + (x - w / 2) * U(-0.02, 0.02)
        metal = metal * (1 - yes(0.05) * (1 - (y - top + 0.5).clamp(0, 1)))
        metal = metal * (1 - yes(0.05) * (1 - (low - y + 0.5).clamp(0, 1)))
        side = v(q["ml"]) * U(0.0, 0.85)
        far = v(q["ml"] + q["length"]) + H * U(0.05, 1.2)
        metal = metal * (1 - yes(0.06) * (1 - (x - side + 0.5).clamp(0, 1)))
        metal = metal * (1 - yes(0.08) * (1 - (far - x + 0.5).clamp(0, 1)))
        texture = (U(0.02, 1.2) * (1 + 0.35 * self.noise.field(b, h, w, 0.5, 4.0)).clamp_min(0.05)
                   + yes(0.3) * torch.exp(-((x - far) / 3) ** 2) * U(0, 2))
        return metal, texture
