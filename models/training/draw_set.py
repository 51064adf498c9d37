"""Draws a seeded set of lines to disk: python3 draw_set.py STORE.npz ROLE SEED COUNT OUT_DIR

ROLE is a role of fonts.tsv: `calibrate` (temperature, choice between runs) or `report` (figures only); neither is trained
on. A tenth of the crops are blank metal, a quarter is turned or mirrored. OUT_DIR gets one file of grey bytes a line
and index.json.
"""
import json
import os
import sys

import torch

import engrave
import words
from alphabet import CLASSES
from lines import H, Lines


@torch.no_grad()
def main(path, role, seed, count, out):
    torch.manual_seed(seed)
    dev = "cuda" if torch.cuda.is_available() else "cpu"
    store = engrave.Store(path, [role], dev)
    source = Lines(store, engrave.Noise(dev), words.pool(90_000 + seed, count * 2, 1), seed, budget=24 * 512,
                   block=min(1024, count), flips=0.25, negatives=0.1)
    os.makedirs(out, exist_ok=True)
    index = []
    for d in source.batches():
        grey = ((d["line"][:, 0] * 0.5 + 0.5) * 255).round().clamp(0, 255).byte().cpu().numpy()
        for i in range(len(grey)):
            if len(index) == count:
                break
            name = f"{len(index):05d}.raw"
            grey[i].tofile(os.path.join(out, name))
            text = "".join(CLASSES[c] for c in d["target"][i].tolist() if c)
            spans = [[round(float(a), 1), round(float(b), 1)] for a, b, k in
                     zip(d["left"][i], d["right"][i], d["inked"][i]) if bool(k)]
            index.append(dict(raw=name, h=H, w=int(grey.shape[2]), text=text, style=str(store.style[int(d["face"][i])]),
                              face=str(store.name[int(d["face"][i])]), orientation=int(d["orientation"][i]),
                              lettering=bool(d["lettering"][i]), x_px=round(float(d["x_px"][i]), 1), spans=spans))
        if len(index) == count:
            break
    json.dump(index, open(os.path.join(out, "index.json"), "w"), ensure_ascii=False)
    print(len(index), "lines of", store.faces, "faces")


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4]), sys.argv[5])
