"""Canvases for the line detector: tubes as unrolled strips or as photographed, with 0 to 6 engraved lines or none.

Targets lie on the quarter grid and are exact: they come from the placing of the lines, not from the drawn pixels.
"""
import math

import numpy as np
import torch

import engrave
from alphabet import DRAWN
from lines import MARGIN_EM, SHARES, Tables, layout

SLOTS = 6
GRID = 4


class Strips:
    """`batch(b, h, w)` yields strip [B,1,H,W] in -1..1, maps [B,8,H/4,W/4] (see networks.MAPS; distances in px) and
    `ink` weight maps."""

    def __init__(self, store, noise, texts, seed):
        self.store, self.noise, self.texts = store, noise, texts
        self.tables = Tables(store)
        self.p = store.by_style(list(SHARES), list(SHARES.values()))
        self.rng = np.random.default_rng(seed)

    def batch(self, b, h, w, finer=1):
        """`finer` 2: drawn twice as large and averaged down, as the program does for its first look."""
        s, dev = self.store, self.store.device
        h, w, grid = h * finer, w * finer, GRID * finer
        n = b * SLOTS
        text = torch.as_tensor(self.texts[self.rng.integers(len(self.texts), size=n)].astype(np.int64)).to(dev)
        face = torch.multinomial(self.p, b, True)
        other = torch.multinomial(self.p, n, True)
        same = (torch.rand(n, device=dev) < 0.75)
        face = torch.where(same, face.repeat_interleave(SLOTS), other)
        lay = layout(s, self.tables, text, face)
        R = lambda m, lo, hi: torch.rand(m, device=dev) * (hi - lo) + lo
        yes = lambda m, p: torch.rand(m, device=dev) < p

        # the tube: axis angle, half width, whether already unrolled
        photo = yes(b, 0.35)
        alpha = torch.where(photo & yes(b, 0.45), R(b, -math.pi, math.pi), R(b, -0.09, 0.09))
        fills = ~photo & yes(b, 0.45)
        half = torch.where(fills, torch.full((b,), 2.0 * h, device=dev), torch.exp(R(b, math.log(0.16), math.log(0.62))) * h)
        cx, cy = R(b, 0.3, 0.7) * w, R(b, 0.35, 0.65) * h
        y = torch.arange(h, device=dev, dtype=torch.float32)[None, :, None]
        x = torch.arange(w, device=dev, dtype=torch.float32)[None, None]
        v3 = lambda t: t.view(-1, 1, 1).float()
        ca, sa = v3(torch.cos(alpha)), v3(torch.sin(alpha))
        along = (x - v3(cx)) * ca + (y - v3(cy)) * sa
        across = ((y - v3(cy)) * ca - (x - v3(cx)) * sa) / v3(half)
        span = R(b, 0.3, 1.2)
        ang = torch.where(v3(photo) > 0, torch.asin(across.clamp(-0.985, 0.985)),
                          (across * v3(torch.where(fills, R(b, 0.5, 5.0), span)) + v3(R(b, -0.3, 0.3) * fills)).clamp(-1.35, 1.35))
        tilt = torch.tan(ang)
        ty, tx = tilt * ca + v3(R(b, -0.2, 0.2)), -tilt * sa + v3(R(b, -0.1, 0.1))
        metal = ((1 - across.abs()) * v3(half) + 0.5).clamp(0, 1)
        # ends of the draw tube: collar, barrel, open end
        left, right = R(b, -0.75, -0.2) * w, R(b, 0.2, 0.75) * w
        metal = metal * torch.where(v3(yes(b, 0.3)) > 0, (along - v3(left) + 0.5).clamp(0, 1), torch.ones_like(metal))
        barrel = (along - v3(right) + 0.5).clamp(0, 1) * v3(yes(b, 0.4))

        # lines: one block along or around the tube
        count = torch.multinomial(torch.tensor([0.24, 0.28, 0.2, 0.13, 0.08, 0.04, 0.03], device=dev), b, True)
        slot = torch.arange(SLOTS, device=dev)
        on = slot[None] < count[:, None]
        turn = torch.where(yes(b, 0.12), R(b, -math.pi, math.pi),
                           torch.tensor([0.0, math.pi, math.pi / 2, -math.pi / 2], device=dev)[
                               torch.multinomial(torch.tensor([0.56, 0.18, 0.13, 0.13], device=dev), b, True)])
        theta = alpha + turn + torch.randn(b, device=dev) * 0.03
        ct, st = torch.cos(theta), torch.sin(theta)
        ext_u = (ct * torch.cos(alpha) + st * torch.sin(alpha)).abs()            # 1: along the tube
        room = (w * ct.abs() + h * st.abs()) * 0.92
        room = torch.where(ext_u < 0.7, torch.minimum(room, 1.8 * half), room)
        xh = s.box[face, DRAWN.index("x")][:, 3] - MARGIN_EM
        em0 = torch.exp(R(b, math.log(10), math.log(58))).repeat_interleave(SLOTS) / xh.clamp_min(0.25)
        em = em0.clamp_max(190) * torch.exp(torch.randn(n, device=dev) * 0.12)
        # a line too long for the canvas loses its tail, and only then shrinks
        lim = room.repeat_interleave(SLOTS) * R(n, 0.55, 1.0)
        shrink = (lim / ((lay["end"] - lay["start"]) * em).clamp_min(1)).clamp_max(1)
        em = em * torch.maximum(shrink, torch.full_like(shrink, 0.6)) 
        ink = lay["ink"] & ((lay["right"] - lay["start"][:, None]) * em[:, None] < lim[:, None])
        length = torch.where(ink, lay["right"] - lay["start"][:, None], torch.zeros_like(lay["right"])).amax(1) * em
        has = ink.any(1)
        big = 1e3
        # low/high of what is left
        kern_low = torch.where(ink, s.box[face[:, None], lay["glyph"]][..., 1] * lay["sv"] + MARGIN_EM * lay["sv"] + lay["lift"], big * torch.ones_like(lay["pen"])).amin(1)
        kern_high = torch.where(ink, s.box[face[:, None], lay["glyph"]][..., 3] * lay["sv"] - MARGIN_EM * lay["sv"] + lay["lift"], -big * torch.ones_like(lay["pen"])).amax(1)
        squash = torch.where(photo & yes(b, 0.5), R(b, 0.5, 1.0), torch.ones(b, device=dev)).repeat_interleave(SLOTS)
        ev = em * squash
        top, bot = (-kern_high * ev).view(b, SLOTS), (-kern_low * ev).view(b, SLOTS)     # v down from the baseline
        hgt = bot - top
        gap = hgt.mean(1, keepdim=True) * torch.exp(R(b, math.log(0.12), math.log(1.2)))[:, None] + 2
        pos = torch.cumsum((hgt + gap), 1) - (hgt + gap)                                # ink top of each line in the block
        total = (pos + hgt)[torch.arange(b, device=dev), (count - 1).clamp_min(0)]
        # the block must lie within the tube's width and the canvas
        avail = torch.where(ext_u > 0.7, torch.minimum(1.85 * half, w * st.abs() + h * ct.abs()), w * st.abs() + h * ct.abs())
        on = on & ((pos + hgt) < avail[:, None] * 0.98) & has.view(b, SLOTS) & (hgt > 6)
        total = torch.where(on, pos + hgt, torch.zeros_like(pos)).amax(1)
        free_v = (avail - total).clamp_min(0) / 2
        off_v = R(b, -1, 1) * free_v
        lenb = length.view(b, SLOTS)
        lmax = torch.where(on, lenb, torch.zeros_like(lenb)).amax(1)
        free_u = ((w * ct.abs() + h * st.abs()) * 0.97 - lmax).clamp_min(0) / 2
        free_u = torch.where(ext_u < 0.7, torch.minimum(free_u, (1.8 * half - lmax).clamp_min(0) / 2), free_u)
        off_u = R(b, -1, 1) * free_u
        align = torch.where(yes(b, 0.7)[:, None], (lmax[:, None] - lenb) / 2, torch.zeros_like(lenb)) - lmax[:, None] / 2
        ccx = torch.where(fills | (ext_u > 0.7), torch.full_like(cx, w / 2), cx)
        # centre of the tube nearest the canvas centre, so that the block sits on metal
        k = (w / 2 - cx) * torch.cos(alpha) + (h / 2 - cy) * torch.sin(alpha)
        bx = torch.where(fills, torch.full_like(cx, w / 2), cx + k * torch.cos(alpha))
        by = torch.where(fills, torch.full_like(cy, h / 2), cy + k * torch.sin(alpha))
        base = pos - total[:, None] / 2 + off_v[:, None] - top                          # baseline v of each line
        u0 = align + off_u[:, None]
        ox = bx[:, None] + u0 * ct[:, None] - base * st[:, None]
        oy = by[:, None] + u0 * st[:, None] + base * ct[:, None]
        bow = (torch.randn(b, device=dev) * 0.12 * yes(b, 0.35))[:, None] * hgt
        slant = torch.where(yes(b, 0.2), R(b, -0.1, 0.25), torch.zeros(b, device=dev))
        draw = (ink.view(b, SLOTS, -1) & on[:, :, None])
        shape = draw.shape
        e = lambda t: t[:, :, None].expand(shape)
        r = lambda key: lay[key].view(shape)
        EM, EV = em.view(b, SLOTS), ev.view(b, SLOTS)
        uu = (r("pen") - lay["start"].view(b, SLOTS, 1)) * e(EM)
        t = (uu - e(lenb) / 2) / (e(lenb) / 2).clamp_min(8)
        vv = -r("lift") * e(EV) + e(bow) * (t.clamp(-2, 2) ** 2 - 0.5)
        C, S = ct[:, None, None], st[:, None, None]
        gx, gy = e(ox) + uu * C - vv * S, e(oy) + uu * S + vv * C
        a = torch.atan2(S, C) + r("turn") + e(2 * bow / (lenb / 2).clamp_min(8)) * t
        cg, sg = torch.cos(a), torch.sin(a)
        su, sv = r("su") * e(EM), r("sv") * e(EV)
        sl = slant[:, None, None]
        a11, a21 = su * cg, su * sg
        a12, a22 = sv * (sl * cg + sg), sv * (sl * sg - cg)
        m = draw
        can = torch.arange(b, device=dev)[:, None, None].expand(shape)[m]
        fac = face.view(b, SLOTS, 1).expand(shape)[m]
        sdf = engrave.scatter(s, b, h, w, can, fac, r("glyph")[m], gx[m], gy[m], a11[m], a12[m], a21[m], a22[m])
        sdf = torch.maximum(sdf, self._furniture(b, h, w, along, across, half))
        texture = self._ground(b, h, w, x, y, along, barrel, across)
        metal = metal * (1 - barrel * v3(yes(b, 0.7)))
        metal = torch.where(v3(yes(b, 0.06)) > 0, torch.zeros_like(metal), metal) if not bool(on.any()) else metal
        lum, _ = engrave.shade(sdf, self.noise, ty, tx, metal, texture)
        lum = engrave.expose(lum)
        nx = torch.where(yes(b, 0.5), torch.ones(b, device=dev), R(b, 0.5, 1.0))
        img = engrave.photograph(lum, nx, nx, 0, h)

        # exact maps
        gh, gw = h // grid, w // grid
        qy = (torch.arange(gh, device=dev, dtype=torch.float32) * grid + (grid - 1) / 2)[None, :, None]
        qx = (torch.arange(gw, device=dev, dtype=torch.float32) * grid + (grid - 1) / 2)[None, None]
        maps = torch.zeros(b, 8, gh, gw, device=dev)
        maps[:, 4:8] = 1.0
        for i in range(SLOTS):
            g = lambda t_: t_[:, i].view(-1, 1, 1)
            dx, dy = qx - g(ox), qy - g(oy)
            u = dx * v3(ct) + dy * v3(st)
            v = dy * v3(ct) - dx * v3(st)
            L = g(lenb)
            tt = (u - L / 2) / (L / 2).clamp_min(8)
            v = v - g(bow) * (tt.clamp(-2, 2) ** 2 - 0.5)
            T, B = g(top), g(bot)
            inside = (u >= -1) & (u <= L + 1) & (v >= T) & (v <= B) & (g(on.float()) > 0)
            core = inside & ((v - (T + B) / 2).abs() <= 0.25 * (B - T))
            take = (core | (inside & (maps[:, 0] == 0))).float()
            maps[:, 0] = torch.where(core, torch.ones_like(u), maps[:, 0])
            maps[:, 1] = torch.where(inside, torch.ones_like(u), maps[:, 1])
            for ch, val in ((2, v3(ct)), (3, v3(st)), (4, (v - T).clamp_min(1)), (5, (B - v).clamp_min(1)),
                            (6, u.clamp_min(1)), (7, (L - u).clamp_min(1))):
                maps[:, ch] = torch.where(take > 0, val.expand_as(u), maps[:, ch])
        # what lies off the metal was never engraved
        there = (torch.nn.functional.avg_pool2d(metal[:, None], grid) > 0.5).float()
        maps[:, 0:2] = maps[:, 0:2] * there
        maps[:, 4:8] /= finer
        strip = torch.nn.functional.avg_pool2d((img[:, None] - 0.5) / 0.5, finer)
        return dict(strip=strip, maps=maps, lines=on.sum(1))

    def _furniture(self, b, h, w, along, across, half):
        """Turned rings, knurling and scale ticks on the metal."""
        dev = self.store.device
        U = lambda lo, hi: torch.rand(b, 1, 1, device=dev) * (hi - lo) + lo
        yes = lambda p: torch.rand(b, 1, 1, device=dev) < p
        out = torch.full((b, h, w), engrave.FAR, device=dev)
        for _ in range(3):
            d = U(0.6, 5.0) - (along - U(-0.5, 0.5) * w).abs()
            out = torch.where(yes(0.25), torch.maximum(out, d), out)
        lo, wide, p = U(-0.5, 0.4) * w, U(20, 140), U(5, 16)
        a = U(0.5, 1.1)
        v = across * half.view(-1, 1, 1)
        k1 = torch.remainder(along * torch.cos(a) + v * torch.sin(a), p) - p / 2
        k2 = torch.remainder(along * torch.cos(a) - v * torch.sin(a), p) - p / 2
        one = (torch.rand(b, 1, 1, device=dev) < 0.4).float() * 50
        d = torch.minimum(1.2 - torch.minimum(k1.abs(), k2.abs() + one), wide / 2 - (along - lo - wide / 2).abs())
        out = torch.where(yes(0.14), torch.maximum(out, d.clamp_min(engrave.FAR)), out)
        p, y0, tall = U(6, 40), U(-0.9, 0.8), U(6, 30)
        m = torch.remainder(along, p) - p / 2
        tall = tall * (1 + 0.6 * (torch.remainder(torch.floor(along / p), 5) == 0).float())
        d = torch.minimum(U(0.5, 1.6) - m.abs(), tall / 2 - (v - y0 * half.view(-1, 1, 1)).abs())
        return torch.where(yes(0.08), torch.maximum(out, d.clamp_min(engrave.FAR)), out)

    def _ground(self, b, h, w, x, y, along, barrel, across):
        """Cloth, wood, leather, paper or plain ground around the tube."""
        dev = self.store.device
        U = lambda lo, hi: torch.rand(b, 1, 1, device=dev) * (hi - lo) + lo
        cloud = self.noise.field(b, h, w, 0.05, 0.5, kind=(3, 8))
        fine = self.noise.field(b, h, w, 0.6, 4.0)
        wood = self.noise.field(b, h, w, 0.3, 1.5, stretch=14.0)
        a, p = U(0, 3.14), U(2.5, 14)
        k = 6.2832 / p
        weave = torch.sin((x * torch.cos(a) + y * torch.sin(a)) * k + fine * 0.5) * torch.sin((y * torch.cos(a) - x * torch.sin(a)) * k + cloud)
        kind = torch.rand(b, 1, 1, device=dev)
        t = torch.where(kind < 0.3, 0.5 * weave + 0.2 * fine, torch.where(kind < 0.6, 0.6 * wood * U(0.4, 1.4) + 0.1 * fine,
            torch.where(kind < 0.8, 0.35 * fine, 0.05 * fine)))
        g = U(0.02, 0.8) * (1 + t * U(0.2, 1.2) + 0.25 * cloud * U(0, 1))
        shadow = 1 - U(0, 0.9) * torch.sigmoid((across.abs() - 1.6) * -4) * (torch.rand(b, 1, 1, device=dev) < 0.5).float()
        grain = torch.where(torch.rand(b, 1, 1, device=dev) < 0.5, wood * U(0.4, 1.4), fine * U(0.2, 1))       # a wooden barrel, or one in leather
        hide = U(0.02, 0.5) * (1 + 0.5 * grain).clamp_min(0.05) * (1 - 0.6 * across.clamp(-1, 1) ** 2)
        return (g * shadow * (1 - barrel) + hide * barrel).clamp_min(0.004)
