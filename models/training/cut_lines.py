"""Cuts the lettered lines out of photos whose letters are known, for reading with the true geometry.

python3 cut_lines.py FOLDER OUT_DIR
FOLDER/truth/*.json name a picture (`file`, relative to FOLDER), its `lines` and `letters` (`line`, `index`, `in_frame`,
`visible`, `quad_px`: four corners, top left first as the reader sees the letter, pixel centres at +0.5). A crop follows
the line's direction and bend; ink top to ink bottom fills 0.76 of its height. OUT_DIR is laid out as draw_set.py does.
"""
import glob
import json
import os
import sys

import cv2
import numpy as np

H, INK, MARGIN = 64, 0.76, 0.5


def cut(image, quads):
    q = np.asarray(quads) - 0.5
    top, bottom = (q[:, 0] + q[:, 1]) / 2, (q[:, 3] + q[:, 2]) / 2
    d = q[-1, 1] - q[0, 0]
    d = d / np.linalg.norm(d)
    n = np.array([-d[1], d[0]])
    mirrored = np.dot(n, (bottom - top).mean(0)) < 0
    if mirrored:
        n = -n
    p = q.reshape(-1, 2)
    x, y = p @ d, p @ n
    bend = np.polyfit(bottom @ d, bottom @ n, 2 if len(q) > 4 else 1) if len(q) > 1 else np.array([(bottom @ n)[0]])
    off = y - np.polyval(bend, x)
    scale = INK * H / (off.max() - off.min())
    m = MARGIN * H / scale
    w = int(np.ceil((x.max() - x.min() + 2 * m) * scale / 4) * 4)
    u, v = np.meshgrid((np.arange(w) + 0.5) / scale - 0.5 + x.min() - m,
                       ((np.arange(H) + 0.5) / H - (1 - INK) / 2) / INK * (off.max() - off.min()) + off.min())
    v = v + np.polyval(bend, u)
    src = cv2.GaussianBlur(image, (0, 0), 0.45 / scale) if scale < 0.7 else image
    crop = cv2.remap(src, (u * d[0] + v * n[0]).astype(np.float32), (u * d[1] + v * n[1]).astype(np.float32),
                     cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE)
    spans = [[(c[:, :] @ d).min(), (c[:, :] @ d).max()] for c in q]
    return crop, [[round((a - x.min() + m) * scale, 1), round((b - x.min() + m) * scale, 1)] for a, b in spans]


def main(folder, out):
    os.makedirs(out, exist_ok=True)
    index = []
    for path in sorted(glob.glob(os.path.join(folder, "truth", "*.json"))):
        t = json.load(open(path, encoding="utf-8"))
        if t.get("kind") == "cell" or not t.get("letters"):
            continue
        image = cv2.imread(os.path.join(folder, t["file"]), cv2.IMREAD_GRAYSCALE)
        for i, text in enumerate(t["lines"]):
            of = [a for a in t["letters"] if a["line"] == i and a["in_frame"]]
            if len(of) < 2 or not all(a["visible"] for a in of) or len(of) != len(text.replace(" ", "")):
                continue
            crop, spans = cut(image, [a["quad_px"] for a in of])
            name = f"{len(index):05d}.raw"
            crop.tofile(os.path.join(out, name))
            hidden = sum(bool(a.get("washed_out") or a.get("worn_away")) for a in of)
            index.append(dict(raw=name, h=H, w=int(crop.shape[1]), text=text, style=t["style"], face=t["font"],
                              orientation=0, lettering=True, x_px=t["x_height_px"], spans=spans, source=t["file"],
                              kind=t["kind"], fill=t.get("groove_fill"), hidden=hidden,
                              variant=bool(t.get("is_variant_of")) and i == 0))
    json.dump(index, open(os.path.join(out, "index.json"), "w"), ensure_ascii=False)
    print(len(index), "lines")


if __name__ == "__main__":
    main(*sys.argv[1:3])
