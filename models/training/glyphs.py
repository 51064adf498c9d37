"""The glyph store: every face drawn once as signed-distance tiles with its metrics.

`python3 glyphs.py FONTS_DIR OUT.npz [--faces N] [--write-kerning] [--no-kerning]` reads fonts.tsv beside this file and FONTS_DIR/<package>/files/*.woff.
A tile is TILE x TILE bytes over the glyph's ink box grown by MARGIN em; byte = 128 + 127 * distance / RANGE, positive
inside the stroke, in em. Boxes and advances are in em, v up from the baseline.
"""
import csv
import multiprocessing as mp
import os
import sys

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont, features

from alphabet import DRAWN

TILE = 72            # texels a side: 1.2 em of swash over 72 texels stays finer than the net's own pixel
EM = 160             # pixels an em when drawing
MARGIN = 0.085       # em of free ground around the ink, room for the burr
RANGE = 0.085        # em; distances saturate here
KERNED = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz.,'-&"
SMALL_CAPS = ("-sc-", "cinzel", "julius-sans-one", "amatic")   # small letters are capitals, only smaller; outlines differ a little
HERE = os.path.dirname(os.path.abspath(__file__))


def faces():
    with open(os.path.join(HERE, "fonts.tsv"), encoding="utf-8") as f:
        return list(csv.DictReader(f, delimiter="\t"))


def _paths(root, row):
    base = row["package"].split("/")[1]
    stem = os.path.join(root, base, "files", base)
    return [p for p in (f"{stem}-{s}-{row['weight']}-{row['slope']}.woff" for s in ("latin", "latin-ext"))
            if os.path.exists(p)]


def _covered(font, c, blank):
    mask = font.getmask(c, mode="L")
    return mask.getbbox() is not None and bytes(mask) != blank


def draw_face(args):
    root, row, kern = args
    n = len(DRAWN)
    tiles = np.zeros((n, TILE, TILE), np.uint8)
    box = np.zeros((n, 4), np.float32)
    advance = np.zeros(n, np.float32)
    have = np.zeros(n, bool)
    kerning = np.zeros((n, n), np.float32)
    paths = _paths(root, row)
    if not paths:
        return None
    basic = ImageFont.Layout.BASIC if hasattr(ImageFont, "Layout") else ImageFont.LAYOUT_BASIC
    fonts = [ImageFont.truetype(p, EM, layout_engine=basic) for p in paths]
    blanks = [bytes(f.getmask("\uffff", mode="L")) for f in fonts]
    pad = EM
    for i, c in enumerate(DRAWN):
        font = next((f for f, b in zip(fonts, blanks) if _covered(f, c, b)), None)
        if font is None:
            continue
        im = Image.new("L", (EM * 5, EM * 5), 0)
        ImageDraw.Draw(im).text((2 * EM, 3 * EM), c, font=font, fill=255, anchor="ls")
        a = np.asarray(im)
        ys, xs = np.where(a > 127)
        if len(ys) < 12:
            continue
        m = int(MARGIN * EM) + 2
        x0, x1, y0, y1 = xs.min() - m, xs.max() + 1 + m, ys.min() - m, ys.max() + 1 + m
        if x0 < 0 or y0 < 0 or x1 > 5 * EM or y1 > 5 * EM:
            continue
        c8 = a[y0:y1, x0:x1]
        ink = (c8 > 127).astype(np.uint8)
        inside = cv2.distanceTransform(ink, cv2.DIST_L2, 5)
        outside = cv2.distanceTransform(1 - ink, cv2.DIST_L2, 5)
        # sub-pixel edge from the grey level, so that hairlines keep their width
        d = np.where(ink > 0, inside - 0.5, 0.5 - outside)
        edge = np.abs(d) < 1.0
        d = np.where(edge, (c8.astype(np.float32) / 255 - 0.5), d) / EM
        d = cv2.resize(d.astype(np.float32), (TILE, TILE), interpolation=cv2.INTER_AREA
                       if d.shape[0] > TILE and d.shape[1] > TILE else cv2.INTER_LINEAR)
        tiles[i] = np.clip(np.round(128 + 127 * d / RANGE), 1, 255).astype(np.uint8)
        box[i] = (np.array([x0, 0, x1, 0]) - 2 * EM) / EM
        box[i, 1], box[i, 3] = (3 * EM - y1) / EM, (3 * EM - y0) / EM
        advance[i] = font.getlength(c) / EM
        have[i] = True
    if have[[DRAWN.index(c) for c in "AEIOUaeiourstlnm"]].sum() < 16:
        return None
    if kern and row["style"] != "script" and features.check("raqm"):
        small = ImageFont.truetype(paths[0], 100, layout_engine=ImageFont.Layout.RAQM)
        off = ["-liga", "-clig", "-calt", "-dlig"]
        single = {c: small.getlength(c, features=off) for c in KERNED}
        for a in KERNED:
            for b in KERNED:
                k = small.getlength(a + b, features=off) - single[a] - single[b]
                if abs(k) > 0.4:
                    kerning[DRAWN.index(a), DRAWN.index(b)] = np.clip(k / 100, -0.2, 0.2)
    return tiles, box, advance, have, kerning


def _same_shape(t, box):
    """0: capitals and small letters differ; 1: small capitals; 2: small letters are capitals of full height."""
    pairs = [(DRAWN.index(a), DRAWN.index(a.lower())) for a in "AEGRQBD"]
    alike = np.mean([np.abs(t[a].astype(float) - t[b]).mean() for a, b in pairs])
    ratio = np.mean([(box[b, 3] - box[b, 1] - 2 * MARGIN) / (box[a, 3] - box[a, 1] - 2 * MARGIN) for a, b in pairs])
    return (2 if ratio > 0.94 else 1) if alike < 22 else 0


def build(root, rows, processes, kern=True):
    jobs = [(root, r, kern) for r in rows]
    if processes > 1:
        with mp.get_context("fork").Pool(processes) as p:
            done = p.map(draw_face, jobs, chunksize=1)
    else:
        done = [draw_face(j) for j in jobs]
    kept = [(r, d) for r, d in zip(rows, done) if d is not None]
    cut = lambda i: np.stack([d[i] for _, d in kept])
    store = dict(tiles=cut(0), box=cut(1), advance=cut(2), have=cut(3), kerning=cut(4).astype(np.float16),
                 style=np.array([r["style"] for r, _ in kept]), role=np.array([r["role"] for r, _ in kept]),
                 name=np.array([f"{r['package'].split('/')[1]}-{r['weight']}-{r['slope']}" for r, _ in kept]))
    carried = os.path.join(root, "kerning.npz")          # drawn where the text layout library is at hand
    if not kern and os.path.exists(carried):
        z = np.load(carried)
        where = {n: i for i, n in enumerate(z["name"])}
        store["kerning"] = np.stack([z["kerning"][where[n]] if n in where else np.zeros_like(z["kerning"][0])
                                     for n in store["name"]])
    shape = [_same_shape(d[0], d[1]) for _, d in kept]
    store["caps"] = np.array([max(1, c) if any(k in n for k in SMALL_CAPS) else c for n, c in zip(store["name"], shape)])
    return store


if __name__ == "__main__":
    rows = faces()
    if "--faces" in sys.argv:
        step = max(1, len(rows) // int(sys.argv[sys.argv.index("--faces") + 1]))
        rows = rows[::step]
    s = build(sys.argv[1], rows, os.cpu_count(), kern="--no-kerning" not in sys.argv)
    np.savez(sys.argv[2], **s)
    if "--write-kerning" in sys.argv:
        np.savez_compressed(os.path.join(sys.argv[1], "kerning.npz"), name=s["name"], kerning=s["kerning"])
    print(len(s["name"]), "faces,", s["tiles"].nbytes >> 20, "MiB of tiles")
    print("caps only:", [n for n, c in zip(s["name"], s["caps"]) if c == 2], "small caps:",
          [n for n, c in zip(s["name"], s["caps"]) if c == 1])
    print("left out:", sorted({f"{r['package'].split('/')[1]}-{r['weight']}-{r['slope']}" for r in rows} - set(s["name"])))
