"""Contact sheet of detector canvases with their targets: python3 look_strips.py STORE.npz OUT.png [n] [seed]"""
import sys

import cv2
import numpy as np
import torch

import engrave
import words
from strips import Strips

torch.manual_seed(int(sys.argv[4]) if len(sys.argv) > 4 else 3)
store = engrave.Store(sys.argv[1], ["train", "calibrate", "report"], "cpu")
src = Strips(store, engrave.Noise("cpu"), words.pool(7, 2000, 1), 3)
d = src.batch(int(sys.argv[3]) if len(sys.argv) > 3 else 6, 384, 768)
rows = []
for im, m in zip(d["strip"], d["maps"]):
    g = ((im[0] * 0.5 + 0.5) * 255).clamp(0, 255).byte().numpy()
    c = cv2.cvtColor(g, cv2.COLOR_GRAY2BGR)
    up = lambda t: cv2.resize(t.numpy(), (g.shape[1], g.shape[0]), interpolation=cv2.INTER_NEAREST)
    o = c.copy()
    o[up(m[1]) > 0.5, 1] = 200
    o[up(m[0]) > 0.5, 2] = 255
    for y in range(0, m.shape[1], 6):
        for x in range(0, m.shape[2], 10):
            if m[0, y, x] > 0.5:
                p = (x * 4 + 2, y * 4 + 2)
                cv2.arrowedLine(o, p, (int(p[0] + 14 * m[2, y, x]), int(p[1] + 14 * m[3, y, x])), (255, 0, 0), 2)
                n = np.array([float(m[3, y, x]), -float(m[2, y, x])])
                for k, s in ((4, 1), (5, -1)):
                    q = np.array(p) + s * n * float(m[k, y, x])
                    cv2.circle(o, (int(q[0]), int(q[1])), 2, (255, 255, 0), -1)
    rows.append(np.hstack([c, o]))
cv2.imwrite(sys.argv[2], np.vstack(rows))
