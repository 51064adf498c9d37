"""How much of the lettering of photos with known letters the detector covers, and what else it fires on.

python3 evaluate_detector.py prepare FOLDER WORK_DIR      (then: node find_lines.mjs ../detector.onnx WORK_DIR)
python3 evaluate_detector.py score FOLDER WORK_DIR [OUT.json]
FOLDER as for cut_lines.py. A letter is covered when a core cell lies at its middle (one cell of slack); stray cells are core
cells further than 28 px from every letter.
"""
import glob
import json
import os
import sys

import cv2
import numpy as np


def truths(folder):
    for p in sorted(glob.glob(os.path.join(folder, "truth", "*.json"))):
        t = json.load(open(p, encoding="utf-8"))
        if t.get("kind") != "cell":
            yield t


def prepare(folder, work):
    os.makedirs(work, exist_ok=True)
    names = []
    for t in truths(folder):
        im = cv2.imread(os.path.join(folder, t["file"]), cv2.IMREAD_GRAYSCALE)
        h, w = (-(-s // 32) * 32 for s in im.shape)
        out = np.full((h, w), int(im.mean()), np.uint8)
        out[:im.shape[0], :im.shape[1]] = im
        name = os.path.splitext(t["file"])[0]
        out.tofile(os.path.join(work, name + ".raw"))
        names.append(dict(name=name, h=h, w=w))
    json.dump(names, open(os.path.join(work, "pictures.json"), "w"))


def score(folder, work, out=None):
    size = {e["name"]: e for e in json.load(open(os.path.join(work, "pictures.json")))}
    letters = covered = right = sensed = pictures = blank = fired = stray_pictures = 0
    for t in truths(folder):
        name = os.path.splitext(t["file"])[0]
        h, w = size[name]["h"] // 4, size[name]["w"] // 4
        m = np.fromfile(os.path.join(work, name + ".raw.maps"), np.float32).reshape(8, h, w)
        core = m[0] > 0.5
        near = np.zeros((h, w), np.uint8)
        pictures += 1
        for i in range(len(t["lines"])):
            of = [a for a in t.get("letters", []) if a["line"] == i and a["in_frame"] and a["visible"] and not a.get("washed_out")]
            if len(of) < 2:
                continue
            q = np.array([a["quad_px"] for a in of]) - 0.5
            d = q[-1, 1] - q[0, 0]
            d = d / np.linalg.norm(d)
            for a in q:
                cv2.fillPoly(near, [((a + 0.5) / 4).astype(np.int32)], 1)
                x, y = (a.mean(0) / 4).astype(int)
                letters += 1
                hit = core[max(0, y - 1):y + 2, max(0, x - 1):x + 2].any()
                covered += int(hit)
                if hit and not t.get("mirrored"):
                    sensed += 1
                    right += int(m[2, y, x] * d[0] + m[3, y, x] * d[1] > 0)
        stray = int((core & (cv2.dilate(near, np.ones((15, 15))) == 0)).sum())
        if not t["lines"]:
            blank += 1
            fired += stray > 12
        stray_pictures += stray > 12
    res = {"photos": pictures, "letters": letters, "letters_covered": covered, "covered": round(covered / letters, 4),
           "reading_sense_right": [right, sensed], "photos_with_stray_cores": stray_pictures, "blank_photos": blank,
           "blank_photos_fired": fired}
    print(json.dumps(res, indent=1))
    if out:
        json.dump(res, open(out, "w"))


if __name__ == "__main__":
    (prepare if sys.argv[1] == "prepare" else score)(*sys.argv[2:])
