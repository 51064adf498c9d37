"""The CUDA version of engrave.scatter: one Triton program a patch of one glyph, united with an atomic maximum."""
import torch
import triton
import triton.language as tl

STEP = 1024.0        # canvas integers per pixel of distance


@triton.jit
def _stamp(out, tiles, tile_id, canvas, par, h, w, T: tl.constexpr, BX: tl.constexpr, BY: tl.constexpr):
    g = tl.program_id(0)
    p = par + g * 16
    x0 = tl.load(p)
    y0 = tl.load(p + 1)
    x1 = tl.load(p + 2)
    y1 = tl.load(p + 3)
    first_x = x0 + tl.program_id(2) * BX
    first_y = y0 + tl.program_id(1) * BY
    if (first_x <= x1) & (first_y <= y1):
        ox = tl.load(p + 4)
        oy = tl.load(p + 5)
        i11 = tl.load(p + 6)
        i12 = tl.load(p + 7)
        i21 = tl.load(p + 8)
        i22 = tl.load(p + 9)
        bx = tl.load(p + 10)
        by = tl.load(p + 11)
        sx = tl.load(p + 12)
        sy = tl.load(p + 13)
        scale = tl.load(p + 14)
        px = (first_x + tl.arange(0, BX).to(tl.float32))[None, :]
        py = (first_y + tl.arange(0, BY).to(tl.float32))[:, None]
        dx = px - ox
        dy = py - oy
        tx = (dx * i11 + dy * i12 - bx) * sx - 0.5
        ty = (by - (dx * i21 + dy * i22)) * sy - 0.5
        ok = (px <= x1) & (py <= y1) & (tx >= -0.5) & (tx <= T - 0.5) & (ty >= -0.5) & (ty <= T - 0.5)
        cx = tl.minimum(tl.maximum(tx, 0.0), T - 1.001)
        cy = tl.minimum(tl.maximum(ty, 0.0), T - 1.001)
        ix = cx.to(tl.int32)
        iy = cy.to(tl.int32)
        fx = cx - ix.to(tl.float32)
        fy = cy - iy.to(tl.float32)
        at = tiles + tl.load(tile_id + g) * (T * T) + iy * T + ix
        a = tl.load(at, mask=ok, other=0).to(tl.float32)
        b = tl.load(at + 1, mask=ok, other=0).to(tl.float32)
        c = tl.load(at + T, mask=ok, other=0).to(tl.float32)
        d = tl.load(at + T + 1, mask=ok, other=0).to(tl.float32)
        v = (a * (1 - fx) + b * fx) * (1 - fy) + (c * (1 - fx) + d * fx) * fy
        q = ((v - 128.0) * scale).to(tl.int32)
        cell = tl.load(canvas + g) * (h * w) + py.to(tl.int32) * w + px.to(tl.int32)
        tl.atomic_max(out + cell, q, mask=ok)


def scatter(store, far, b, h, w, canvas, face, glyph, ox, oy, a11, a12, a21, a22):
    dev = store.device
    out = torch.full((b * h * w,), int(far * STEP), dtype=torch.int32, device=dev)
    box = store.box[face, glyph]
    u = torch.stack([box[:, 0], box[:, 2], box[:, 0], box[:, 2]], 1)
    v = torch.stack([box[:, 1], box[:, 1], box[:, 3], box[:, 3]], 1)
    x = ox[:, None] + a11[:, None] * u + a12[:, None] * v
    y = oy[:, None] + a21[:, None] * u + a22[:, None] * v
    x0, x1 = torch.floor(x.amin(1)).clamp_min(0), torch.ceil(x.amax(1)).clamp_max(w - 1)
    y0, y1 = torch.floor(y.amin(1)).clamp_min(0), torch.ceil(y.amax(1)).clamp_max(h - 1)
    if not len(x0):
        return out.view(b, h, w).float() / STEP
    det = a11 * a22 - a12 * a21
    t = store.tiles.shape[-1]
    size = torch.sqrt(det.abs()) * (store.range / 127 * STEP)
    par = torch.stack([x0, y0, x1, y1, ox, oy, a22 / det, -a12 / det, -a21 / det, a11 / det, box[:, 0], box[:, 3],
                       t / (box[:, 2] - box[:, 0]), t / (box[:, 3] - box[:, 1]), size, size], 1).float().contiguous()
    spans = torch.stack([(x1 - x0).max(), (y1 - y0).max()]).cpu()
    if float(spans.min()) < 0:
        spans = spans.clamp_min(0)
    bx, by = 32, 16
    grid = (len(ox), int(spans[1]) // by + 1, int(spans[0]) // bx + 1)
    tile_id = (face * store.glyphs + glyph).to(torch.int64)
    with torch.cuda.device(out.device):
        _stamp[grid](out, store.tiles, tile_id, canvas.to(torch.int64), par, h, w, T=t, BX=bx, BY=by, num_warps=4)
    return out.view(b, h, w).float() / STEP
