"""Contact sheet of drawn lines: python3 look.py STORE.npz OUT.png [rows] [roles]"""
import sys

import cv2
import numpy as np
import torch

import engrave
import words
from alphabet import CLASSES
from lines import H, Lines

torch.manual_seed(int(sys.argv[5]) if len(sys.argv) > 5 else 3)
store = engrave.Store(sys.argv[1], (sys.argv[4] if len(sys.argv) > 4 else "train").split(","), "cpu")
noise = engrave.Noise("cpu")
n = int(sys.argv[3]) if len(sys.argv) > 3 else 40
src = Lines(store, noise, words.pool(7, 3000, 1), 3, budget=20 * 400, block=max(64, n), negatives=0.05)
rows = []
for d in src.batches():
    for i in range(len(d["line"])):
        im = ((d["line"][i, 0] * 0.5 + 0.5) * 255).clamp(0, 255).byte().numpy()[:, :620]
        im = np.pad(im, ((1, 1), (0, 620 - im.shape[1])))
        rows.append(im)
        print(len(rows) - 1, "".join(CLASSES[c] for c in d["target"][i].tolist() if c), store.name[d["face"][i]],
              f"ny {float(d['ny'][i]):.2f} nx {float(d['nx'][i]):.2f} o{int(d['orientation'][i])}")
    if len(rows) >= n:
        break
rows = rows[:n // 2 * 2]
cv2.imwrite(sys.argv[2], np.hstack([np.vstack(rows[0::2]), np.vstack(rows[1::2])]))
