"""Draws engraved lettering on metal, in batches, on whatever device the glyph store lies on.

Three steps: `scatter` unites glyph tiles into one signed-distance field per canvas (pixels, positive inside the stroke),
`shade` turns the field into a groove in a bent, tarnished, scratched metal surface that mirrors a small random
surround, `photograph` lets a camera take it: defocus, motion, native pixel size, noise, denoising, block compression.
All parameters are drawn per canvas. Canvases are [B, H, W] float32; linear light until `photograph`.
"""
import math

import numpy as np
import torch
import torch.nn.functional as F

FAR = -12.0          # px, distance given to ground that no glyph window covers


class Store:
    """Glyph tiles and metrics of some faces on one device."""

    def __init__(self, path, roles, device):
        z = np.load(path)
        keep = np.isin(z["role"], roles)
        t = lambda k: torch.as_tensor(z[k][keep]).to(device)
        self.tiles = t("tiles")                       # [F, G, T, T] uint8
        self.box, self.advance, self.have = t("box"), t("advance"), t("have")
        self.kerning, self.caps = t("kerning"), t("caps")
        self.style, self.name = z["style"][keep], z["name"][keep]
        self.device, self.range = device, 0.085
        self.faces, self.glyphs = self.tiles.shape[:2]

    def by_style(self, styles, shares):
        """Probability of each face so that each style gets its share."""
        p = np.zeros(self.faces)
        for s, share in zip(styles, shares):
            m = self.style == s
            if m.any():
                p[m] = share / m.sum()
        return torch.as_tensor(p / p.sum(), dtype=torch.float32, device=self.device)


# ---------------------------------------------------------------- random fields

class Noise:
    """A bank of periodic noise textures; `field` cuts a randomly placed, turned and scaled piece for each canvas."""

    def __init__(self, device, n=24, size=512, seed=5):
        g = torch.Generator().manual_seed(seed)
        fy = torch.fft.fftfreq(size)[:, None]
        fx = torch.fft.rfftfreq(size)[None]
        f = torch.sqrt(fx * fx + fy * fy)
        bank = []
        for i in range(n):
            slope = 0.8 + 1.0 * (i % 8) / 7                        # from rough to cloudy
            amp = (f + 1.0 / size) ** (-slope) * (f > 0)
            ph = torch.fft.rfft2(torch.randn(size, size, generator=g))
            t = torch.fft.irfft2(ph * amp, s=(size, size))
            bank.append((t - t.mean()) / t.std())
        self.bank = torch.stack(bank).to(device)
        self.size, self.n, self.device = size, n, device

    def field(self, b, h, w, scale_lo, scale_hi, stretch=1.0, kind=None):
        """Standard-normal-ish field [b, h, w]. scale: texels a pixel; below 1 the features grow."""
        dev = self.device
        i = torch.randint(self.n, (b, 1, 1), device=dev)
        if kind is not None:
            i = i // 8 * 8 + (torch.randint(kind[0], kind[1], (b, 1, 1), device=dev))
            i = i.clamp_max(self.n - 1)
        a = torch.rand(b, 1, 1, device=dev) * 2 * math.pi
        s = torch.exp(torch.rand(b, 1, 1, device=dev) * math.log(scale_hi / scale_lo)) * scale_lo
        y = torch.arange(h, device=dev, dtype=torch.float32)[None, :, None]
        x = torch.arange(w, device=dev, dtype=torch.float32)[None, None]
        ox, oy = torch.rand(2, b, 1, 1, device=dev) * self.size
        if stretch != 1.0:
            u, v = x * s / stretch + ox, y * s + oy
        else:
            ca, sa = torch.cos(a) * s, torch.sin(a) * s
            u, v = x * ca + y * sa + ox, y * ca - x * sa + oy
        u0, v0 = torch.floor(u), torch.floor(v)
        fu, fv = u - u0, v - v0
        u0, v0 = u0.long() % self.size, v0.long() % self.size
        flat = self.bank.view(-1)
        base = i * (self.size * self.size)
        row0, row1 = base + v0 * self.size, base + (v0 + 1) % self.size * self.size
        u1 = (u0 + 1) % self.size
        top = flat[row0 + u0] * (1 - fu) + flat[row0 + u1] * fu
        low = flat[row1 + u0] * (1 - fu) + flat[row1 + u1] * fu
        return top * (1 - fv) + low * fv


def blur(im, sy, sx, disc=None, move=None, angle=None):
    """Gaussian blur with its own sigmas (px) for each canvas, in the frequency domain; edges continued by padding.
    `disc` adds a uniform defocus disc of that radius (px), `move` a drift of that length along `angle`."""
    b, h, w = im.shape
    p = 8
    hh, ww = -(-(h + 2 * p) // 32) * 32, -(-(w + 2 * p) // 64) * 64      # sizes with small factors
    x = F.pad(im[:, None], (p, ww - w - p, p, hh - h - p), mode="replicate")[:, 0]
    fy = torch.fft.fftfreq(hh, device=im.device)[None, :, None] * 2 * math.pi
    fx = torch.fft.rfftfreq(ww, device=im.device)[None, None] * 2 * math.pi
    k = _transfer(fy, fx, sy.view(-1, 1, 1), sx.view(-1, 1, 1), disc.view(-1, 1, 1), move.view(-1, 1, 1), angle.view(-1, 1, 1))
    return torch.fft.irfft2(torch.fft.rfft2(x) * k, s=(hh, ww))[:, p:p + h, p:p + w]


def _transfer(fy, fx, sy, sx, disc, move, angle):
    e = (sy * fy) ** 2 + (sx * fx) ** 2 + (move * (fx * torch.cos(angle) + fy * torch.sin(angle))) ** 2
    r = disc * torch.sqrt(fx * fx + fy * fy) + 1e-4
    small = 1 - r * r / 8 + r ** 4 / 192                          # 2 J1(r)/r near 0, and its asymptote
    big = 2 * torch.sqrt(2 / (math.pi * r)) * torch.cos(r - 0.75 * math.pi) / r
    return torch.exp(-0.5 * e) * torch.where(r < 2.2, small, big)


def _soft(im):
    """A small binomial-like blur, sigma about 1.15 px."""
    x = F.pad(im[:, None], (2, 2, 2, 2), mode="replicate")
    return F.avg_pool2d(F.avg_pool2d(x, 3, 1), 3, 1)[:, 0]


# ---------------------------------------------------------------- glyphs to a distance field

_fast = {}


def scatter(store, b, h, w, *glyphs):
    """`scatter_plainly`, on CUDA through the Triton kernel once that has been seen to agree with it."""
    if not str(store.device).startswith("cuda"):
        return scatter_plainly(store, b, h, w, *glyphs)
    if "f" not in _fast:
        _fast["f"] = None
        try:
            import stamp
            fast, slow = stamp.scatter(store, FAR, b, h, w, *glyphs), scatter_plainly(store, b, h, w, *glyphs)
            off = float(((fast - slow).abs() > 0.05).float().mean())
            print("glyph kernel: differs at", off, "of pixels", flush=True)
            if off < 1e-3:
                _fast["f"] = stamp.scatter
        except Exception as e:                                     # slower, but right
            print("glyph kernel not used:", repr(e)[:300], flush=True)
    if _fast["f"] is None:
        return scatter_plainly(store, b, h, w, *glyphs)
    return _fast["f"](store, FAR, b, h, w, *glyphs)


def scatter_plainly(store, b, h, w, canvas, face, glyph, ox, oy, a11, a12, a21, a22):
    """Signed-distance canvases [b, h, w] in px. One entry a glyph: canvas number, face, glyph, origin (px) and the
    affine that takes (u, v up) in em to (x, y down) px: x = ox + a11 u + a12 v, y = oy + a21 u + a22 v."""
    dev = store.device
    out = torch.full((b * h * w + 1,), FAR, device=dev)
    box = store.box[face, glyph]
    u = torch.stack([box[:, 0], box[:, 2], box[:, 0], box[:, 2]], 1)
    v = torch.stack([box[:, 1], box[:, 1], box[:, 3], box[:, 3]], 1)
    x = ox[:, None] + a11[:, None] * u + a12[:, None] * v
    y = oy[:, None] + a21[:, None] * u + a22[:, None] * v
    x0, x1 = torch.floor(x.min(1).values), torch.ceil(x.max(1).values)
    y0, y1 = torch.floor(y.min(1).values), torch.ceil(y.max(1).values)
    x0, y0 = x0.clamp_min(0), y0.clamp_min(0)
    x1, y1 = x1.clamp_max(w - 1), y1.clamp_max(h - 1)
    gw, gh = x1 - x0 + 1, y1 - y0 + 1
    ok = (gw > 0) & (gh > 0)
    det = a11 * a22 - a12 * a21
    size = torch.sqrt(det.abs())
    span = torch.maximum(gw, gh)
    lo = 0
    for hi in (28, 48, 72, 110, 200, 100000):
        pick = torch.nonzero(ok & (span > lo) & (span <= hi))[:, 0]
        lo = hi
        if not len(pick):
            continue
        mw, mh = int(gw[pick].max()), int(gh[pick].max())
        step = max(1, 40_000_000 // (mw * mh))
        for q in pick.split(step):
            _window(store, out, h, w, canvas[q], face[q], glyph[q], ox[q], oy[q], a11[q], a12[q], a21[q], a22[q],
                    det[q], size[q], x0[q], y0[q], x1[q], y1[q], box[q], mw, mh)
    return out[:-1].view(b, h, w)


def _window(store, out, h, w, canvas, face, glyph, ox, oy, a11, a12, a21, a22, det, size, x0, y0, x1, y1, box, mw, mh):
    dev = store.device
    e = lambda t: t[:, None, None]
    px = e(x0) + torch.arange(mw, device=dev, dtype=torch.float32)[None, None]
    py = e(y0) + torch.arange(mh, device=dev, dtype=torch.float32)[None, :, None]
    dx, dy = px - e(ox), py - e(oy)
    u = (dx * e(a22) - dy * e(a12)) / e(det)
    v = (dy * e(a11) - dx * e(a21)) / e(det)
    gx = (u - e(box[:, 0])) / e(box[:, 2] - box[:, 0]) * 2 - 1
    gy = 1 - (v - e(box[:, 1])) / e(box[:, 3] - box[:, 1]) * 2
    tile = store.tiles[face, glyph][:, None].float()
    d = F.grid_sample(tile, torch.stack([gx, gy], 3), mode="bilinear", padding_mode="border", align_corners=False)[:, 0]
    val = (d - 128) * (store.range / 127) * e(size)
    inside = (px <= e(x1)) & (py <= e(y1)) & (gx.abs() <= 1) & (gy.abs() <= 1)
    at = e(canvas.long()) * (h * w) + py.long() * w + px.long()
    at = torch.where(inside, at, torch.full_like(at, len(out) - 1))
    out.scatter_reduce_(0, at.reshape(-1), val.reshape(-1), reduce="amax")


# ---------------------------------------------------------------- metal

def _u(b, lo, hi, dev):
    return torch.rand(b, 1, 1, device=dev) * (hi - lo) + lo


def _logu(b, lo, hi, dev):
    return torch.exp(torch.rand(b, 1, 1, device=dev) * math.log(hi / lo)) * lo


def _yes(b, p, dev):
    return (torch.rand(b, 1, 1, device=dev) < p).float()


def _grad(t):
    gx = F.pad(t, (1, 1, 0, 0), mode="replicate")
    gy = F.pad(t, (0, 0, 1, 1), mode="replicate")
    return (gx[:, :, 2:] - gx[:, :, :-2]) * 0.5, (gy[:, 2:] - gy[:, :-2]) * 0.5


def _step(x):
    x = x.clamp(0, 1)
    return x * x * (3 - 2 * x)


def scratches(b, h, w, dev, n, reach):
    """Depth of n thin straight scratches a canvas, [b, h, w], about 0..1 px deep."""
    y = torch.arange(h, device=dev, dtype=torch.float32)[None, :, None]
    x = torch.arange(w, device=dev, dtype=torch.float32)[None, None]
    out = torch.zeros(b, h, w, device=dev)
    busy = _u(b, 0, 1, dev) ** 2
    for _ in range(n):
        cx, cy = _u(b, 0, w, dev), _u(b, 0, h, dev)
        a = torch.where(_yes(b, 0.3, dev) > 0, _u(b, -0.2, 0.2, dev) + 1.57 * _yes(b, 0.6, dev), _u(b, 0, math.pi, dev))
        half = _logu(b, 5, reach, dev)
        width = _u(b, 0.4, 1.3, dev)
        dx, dy = x - cx, y - cy
        across = (dy * torch.cos(a) - dx * torch.sin(a)).abs()
        along = (dx * torch.cos(a) + dy * torch.sin(a)).abs()
        out = torch.maximum(out, (1 - across / width).clamp_min(0) * (1 - along / half).clamp(0, 1).sqrt()
                            * _u(b, 0.1, 1.0, dev) * (_u(b, 0, 1, dev) < busy).float())
    return out


def shade(sdf, noise, tilt_y, tilt_x, metal=None, texture=None):
    """Linear light [B, H, W] and the share of each pixel that is stroke. `tilt_y`, `tilt_x` [B, H, W] are the slope of the bent
    surface; `metal` (optional, 0..1) marks metal as against other matter, whose brightness is `texture`."""
    b, h, w = sdf.shape
    dev = sdf.device
    U = lambda lo, hi: _u(b, lo, hi, dev)
    # how this line is cut and what fills it: 0 bare, 1 dark wax, 2 grime, 3 white fill, 4 bright cut through a dark coat
    fill = torch.multinomial(torch.tensor([0.40, 0.25, 0.17, 0.06, 0.12], device=dev), b, True)[:, None, None]
    coat = ((fill == 4) | ((fill == 3) & (U(0, 1) < 0.7)) | (U(0, 1) < 0.05)).float()     # blackened metal
    blank = (sdf.amax((1, 2), keepdim=True) < -3)

    n1 = noise.field(b, h, w, 0.25, 2.0)                                   # fine: edges, wax loss
    n2 = noise.field(b, h, w, 0.08, 0.8, kind=(3, 8))                      # cloudy: tarnish, wear
    n3 = noise.field(b, h, w, 0.3, 1.2, stretch=12.0)                      # brushed along x
    grain = torch.randn(b, h, w, device=dev)

    d = sdf + U(-0.35, 0.7) + n1 * U(0, 0.45) * _yes(b, 0.6, dev)
    # groove section
    deep = U(1.2, 5.0)
    v = d.clamp_min(0)
    r = (v / deep).clamp_max(1)
    kind = torch.rand(b, 1, 1, device=dev)
    sect_v = torch.minimum(v, deep)
    sect_r = deep * torch.sqrt((1 - (1 - r) ** 2).clamp_min(1e-6)) * (r > 0)
    wall = U(0.8, 2.0)
    sect_f = deep * 0.5 * _step(d / wall + 0.5)
    depth = torch.where(kind < 0.5, sect_v, torch.where(kind < 0.75, sect_r, sect_f))
    wear = 1 - _yes(b, 0.3, dev) * U(0.2, 0.9) * torch.sigmoid(3 * (n2 + U(-2.0, 0.8)))
    depth = depth * wear * (1 + U(0, 0.3) * n1 * _yes(b, 0.5, dev))
    lip = U(0, 0.6) * _yes(b, 0.5, dev) * torch.exp(-((sdf + U(0.6, 1.8)) / U(0.6, 1.2)) ** 2) * wear
    scr = scratches(b, h, w, dev, 5, 140) * U(0.3, 1.6)
    height = lip - depth - scr
    pits = _yes(b, 0.25, dev) * (n1 - U(1.2, 2.2)).clamp(0, 1) * U(0.5, 2.0)
    height = height - pits + n2 * U(0, 0.6)
    # filled grooves lie nearly level
    level = torch.where((fill == 1) | (fill == 3), U(0.0, 0.45), torch.where(fill == 2, U(0.4, 1.0), torch.ones_like(fill, dtype=torch.float32)))
    loss = torch.sigmoid((n1 * 0.8 + n2 * 0.5 - U(0.6, 2.6)) * 6) * ((fill == 1) | (fill == 3) | (fill == 2)).float()  # wax fallen out
    steep = _logu(b, 0.6, 2.6, dev)
    gx, gy = _grad(height)
    flat = 1 - (1 - level) * _step(d + 0.5) * (1 - loss)
    rough = _logu(b, 0.004, 0.10, dev)
    nx = -gx * steep * flat + tilt_x + grain * rough * 0.5 + n3 * U(0, 0.05)
    ny = -gy * steep * flat + tilt_y + torch.randn_like(grain) * rough + n3 * U(0, 0.05) + n2 * U(0, 0.05)
    nz = torch.rsqrt(1 + nx * nx + ny * ny)
    nx, ny = nx * nz, ny * nz
    rx, ry, rz = 2 * nz * nx, 2 * nz * ny, 2 * nz * nz - 1

    # the surround it mirrors: a dim gradient, 1 to 5 lamps or windows, each a soft or hard patch
    light = U(0.03, 0.5) + U(-0.25, 0.25) * ry + U(-0.15, 0.15) * rx
    light = light * torch.sigmoid((rz + 0.35) * 5) + U(0.0, 0.1)
    for i in range(5):
        on = _yes(b, (1.0, 0.8, 0.6, 0.4, 0.25)[i], dev)
        ly, lx = U(-0.95, 0.95), U(-0.8, 0.8) * _yes(b, 0.6, dev)
        wy, wx = _logu(b, 0.04, 0.6, dev), _logu(b, 0.1, 2.5, dev)
        q = ((ry - ly) / wy) ** 2 + ((rx - lx) / wx) ** 2 + (rz < -0.2).float() * 4
        hard = _yes(b, 0.35, dev)
        lobe = hard * torch.sigmoid((1 - q) * _logu(b, 2, 14, dev)) + (1 - hard) * torch.exp(-0.7 * q)
        light = light + on * _logu(b, 0.15, 3.0, dev) * lobe
    light = light.clamp_min(0)

    # albedo: metal, tarnish, blackening
    tarnish = _yes(b, 0.7, dev) * U(0.1, 0.85) * torch.sigmoid((n2 + n1 * U(0, 0.5) + U(-1.5, 1.2)) * U(2, 9))
    lx, ly = U(-0.9, 0.9), U(-0.9, 0.9)
    diffuse = (nx * lx + ny * ly + nz * 0.6).clamp_min(0) * U(0.1, 0.9) + 0.12
    matte = (tarnish * U(0.3, 1.0) + coat * U(0.5, 0.95)).clamp(0, 1)
    base = U(0.45, 0.95)
    lum = light * base * (1 - matte) + diffuse * matte * (U(0.08, 0.45) * (1 - coat) + coat * U(0.03, 0.14))
    lum = lum * (1 + U(0, 0.10) * n3 * _yes(b, 0.4, dev)) * (1 - 0.35 * scr * _yes(b, 0.3, dev))

    inside = _step(d + 0.5)
    r_in = (depth / deep).clamp(0, 1.2)
    lum_groove = lum * (1 - U(0.05, 0.75) * r_in)                              # less sky reaches the floor
    ink = U(0.01, 0.16) * (0.5 + diffuse) + light * U(0.0, 0.05)
    white = U(0.55, 1.15) * (0.35 + 0.8 * diffuse) * (1 + 0.1 * n1)
    bright = light * U(0.6, 1.0) * (1 - U(0, 0.4) * r_in) + U(0.0, 0.35)
    opaque = U(0.6, 1.0) * (1 - loss)
    grime = (U(0.35, 0.95) * r_in.clamp_max(1) * (1 - loss * U(0, 1)))
    stroke = torch.where(fill == 1, lum_groove * (1 - opaque) + ink * opaque,
             torch.where(fill == 2, lum_groove * (1 - grime) + 0.04 * grime,
             torch.where(fill == 3, lum_groove * (1 - opaque) + white * opaque,
             torch.where(fill == 4, bright, lum_groove))))
    lum = lum * (1 - inside) + stroke * inside
    # dirt gathered beside the groove, and a dull halo where polish did not reach
    halo = _yes(b, 0.3, dev) * U(0, 0.5) * torch.exp(-(sdf.clamp_max(0) / U(1.5, 5.0)) ** 2) * torch.sigmoid(n2 * 3)
    lum = lum * (1 - halo * (1 - inside))
    if metal is not None:
        lum = lum * metal + texture * (1 - metal)
    return lum.clamp(0, 12), torch.where(blank, torch.zeros_like(inside), inside)


def expose(lum, ref=None):
    """Scales linear light so that the typical brightness of `ref` (default: the canvas) lands somewhere plausible."""
    b = len(lum)
    dev = lum.device
    ref = lum if ref is None else ref
    mean = ref.flatten(1).clamp_max(3).mean(1).view(-1, 1, 1) + 1e-3
    return lum / mean * _logu(b, 0.07, 0.75, dev)


# ---------------------------------------------------------------- camera

_DCT = torch.tensor([[math.sqrt((1 if k == 0 else 2) / 8) * math.cos(math.pi * (2 * n + 1) * k / 16) for n in range(8)]
                     for k in range(8)])
# luminance quantisation table of ITU-T T.81, Annex K.1
_Q = torch.tensor([16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56,
                   14, 17, 22, 29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92,
                   49, 64, 78, 87, 103, 121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99]).float().view(8, 8)


def blocks(im, quality):
    """8x8 block quantisation of grey 0..1 canvases, quality 1..100 for each."""
    b, h, w = im.shape
    dev = im.device
    hp, wp = (-h) % 8, (-w) % 8
    x = F.pad(im[:, None], (0, wp, 0, hp), mode="replicate")[:, 0]
    H, W = x.shape[1:]
    D, q = _DCT.to(dev), quality.view(-1, 1, 1, 1, 1)
    s = torch.where(q < 50, 50 / q, 2 - q / 50)
    table = (_Q.to(dev) * s).clamp_min(1.0) / 255
    x = x.view(b, H // 8, 8, W // 8, 8).permute(0, 1, 3, 2, 4)
    c = D @ x @ D.t()
    c = torch.round(c / table) * table
    x = D.t() @ c @ D
    return x.permute(0, 1, 3, 2, 4).reshape(b, H, W)[:, :h, :w]


def _camera(lin, sigma_noise, smear, sharpen, quality):
    """Noise, tone curve, denoising and sharpening at the camera's own pixel."""
    b = len(lin)
    dev = lin.device
    v = lin.clamp_min(0)
    shot = torch.sqrt(v * _u(b, 0.2, 1.0, dev) + _u(b, 0.02, 0.25, dev)) * sigma_noise.view(-1, 1, 1)
    n = torch.randn_like(v)
    v = v + n * shot
    knee = _yes(b, 0.5, dev)
    v = v.clamp_min(0)
    v = torch.where(knee > 0, 1 - torch.exp(-v * 1.6), v.clamp_max(1))
    grey = torch.where(v > 0.0031308, 1.055 * v.clamp_min(1e-5) ** (1 / 2.4) - 0.055, 12.92 * v)
    broad = _soft(grey)
    soft = grey + (broad - grey) * smear.view(-1, 1, 1)
    # edge-keeping smear: flat ground is smoothed, strong edges are kept
    e = ((grey - soft).abs() / (_u(b, 0.03, 0.12, dev))).clamp_max(1)
    mode = torch.rand(b, 1, 1, device=dev)
    grey = torch.where(mode < 0.45, grey, torch.where(mode < 0.8, soft + (grey - soft) * e, soft))
    grey = grey + (grey - _soft(grey)) * sharpen.view(-1, 1, 1)
    return blocks(grey.clamp(0, 1), quality)


def resample(im, sy, sx, oy, ox, h, w, mode="bilinear"):
    """out(y, x) = im((y + 0.5) * sy + oy - 0.5, ...), replicated at the edge; per-canvas scalars."""
    b, hh, ww = im.shape
    dev = im.device
    y = (torch.arange(h, device=dev) + 0.5)[None] * sy[:, None] + oy[:, None]
    x = (torch.arange(w, device=dev) + 0.5)[None] * sx[:, None] + ox[:, None]
    gy = (y / hh * 2 - 1)[:, :, None].expand(b, h, w)
    gx = (x / ww * 2 - 1)[:, None, :].expand(b, h, w)
    return F.grid_sample(im[:, None], torch.stack([gx, gy], 3), mode=mode, padding_mode="border", align_corners=False)[:, 0]


def photograph(lin, native_y, native_x, top, height):
    """Grey 0..1 [B, height, W] of the rows from `top`. native: camera pixels per canvas pixel (0.15..1)."""
    b, h, w = lin.shape
    dev = lin.device
    r = lambda lo, hi: torch.rand(b, device=dev) * (hi - lo) + lo
    yes = lambda p: (torch.rand(b, device=dev) < p).float()
    # optics in camera pixels: aperture blur always, defocus sometimes, motion seldom; then the pixel's own area
    px_y, px_x = 1 / native_y, 1 / native_x
    core = r(0.25, 0.5) + yes(0.3) * r(0.0, 0.7)
    move = yes(0.10) * r(0.3, 1.3)
    ang = r(0, math.pi)
    sy, sx = core * px_y, core * px_x
    disc = yes(0.2) * r(0.3, 1.5) * torch.minimum(px_y, px_x)
    im = blur(lin, sy, sx, disc, move * px_x, ang)
    # glare: light that spreads far
    veil = (yes(0.25) * r(0.02, 0.25)).view(-1, 1, 1)
    wide = F.avg_pool2d(im.clamp_max(6)[:, None], 8, ceil_mode=True)
    wide = F.avg_pool2d(F.pad(wide, (1, 1, 1, 1), mode="replicate"), 3, 1)
    wide = F.interpolate(wide, size=(h, w), mode="bilinear", align_corners=False)[:, 0]
    im = im * (1 - veil) + wide * veil + (yes(0.08) * r(0, 0.3)).view(-1, 1, 1)
    sx_, sy_ = 1 / native_x, 1 / native_y
    jx, jy = r(-1, 1), r(-1, 1)
    nat = resample(im, sy_, sx_, jy, jx, h, w)
    noise = torch.exp(r(math.log(0.003), math.log(0.12))) * (0.4 + 0.6 * yes(0.75))
    grey = _camera(nat, noise, r(0.2, 1.0), yes(0.4) * r(0, 1.2), r(35, 97))
    # back to the reader's height, as the cut-out line is
    out = resample(grey, native_y, native_x, -jy * native_y + top * native_y, -jx * native_x, height, w,
                   "bicubic" if torch.rand(()) < 0.6 else "bilinear")
    gain, lift = (1 + yes(0.4) * r(-0.35, 0.35)).view(-1, 1, 1), (yes(0.4) * r(-0.12, 0.12)).view(-1, 1, 1)
    return (out * gain + lift).clamp(0, 1)


def quicken():
    """Fuses the pixel work with torch.compile; without it the same functions run unfused."""
    global shade, _camera, _transfer
    import torch._dynamo as dynamo
    dynamo.config.suppress_errors = True
    dynamo.config.cache_size_limit = 64
    shade = torch.compile(shade, dynamic=True)
    _camera = torch.compile(_camera, dynamic=True)
    _transfer = torch.compile(_transfer, dynamic=True)
