"""Figures for the reader from folders read by read_lines.mjs.

python3 evaluate.py --fit CAL_DIR --report DIR [DIR ...] [--out MEASURED.json] [--list]
The temperature is fitted on CAL_DIR alone (least negative log-likelihood of the true text under CTC); every other figure
comes from the reported folders. Character error is edit distance over true characters, case and spaces counted,
best path, nothing corrected.
"""
import argparse
import json
import os
from collections import defaultdict

import numpy as np
import torch
import torch.nn.functional as F

from alphabet import CLASSES, ORIENTATIONS, STYLES, encode

TEMPERATURES = np.round(np.arange(0.6, 2.51, 0.05), 2)


def load(folder):
    rows = json.load(open(os.path.join(folder, "index.json")))
    heads = json.load(open(os.path.join(folder, "heads.json")))
    for r, h in zip(rows, heads):
        r["lp"] = np.fromfile(os.path.join(folder, r["raw"] + ".lp"), np.float32).reshape(-1, len(CLASSES))
        r["heads"] = h
    return rows


def cooled(lp, t):
    z = lp / t
    z = z - z.max(1, keepdims=True)
    return z - np.log(np.exp(z).sum(1, keepdims=True))


def letters(lp):
    """Best path: list of (class, peak frame, probability at the peak)."""
    best, out, t = lp.argmax(1), [], 0
    while t < len(best):
        e = t
        while e < len(best) and best[e] == best[t]:
            e += 1
        if best[t]:
            p = t + int(lp[t:e, best[t]].argmax())
            out.append((int(best[t]), p, float(np.exp(lp[p, best[t]]))))
        t = e
    return out


def align(a, b):
    """Edit distance and, for each element of b, whether it was matched."""
    n, m = len(a), len(b)
    d = np.zeros((n + 1, m + 1), int)
    d[:, 0], d[0] = np.arange(n + 1), np.arange(m + 1)
    for i in range(1, n + 1):
        for j in range(1, m + 1):
            d[i, j] = min(d[i - 1, j] + 1, d[i, j - 1] + 1, d[i - 1, j - 1] + (a[i - 1] != b[j - 1]))
    ok, i, j = [False] * m, n, m
    while i and j:
        if d[i, j] == d[i - 1, j - 1] + (a[i - 1] != b[j - 1]):
            ok[j - 1] = a[i - 1] == b[j - 1]
            i, j = i - 1, j - 1
        elif d[i, j] == d[i - 1, j] + 1:
            i -= 1
        else:
            j -= 1
    return int(d[n, m]), ok


def line_nll(rows, t):
    """CTC negative log-likelihood of the truth of each line at temperature t."""
    out = []
    for r in rows:
        y = encode(r["text"])
        lp = torch.from_numpy(cooled(r["lp"], t))[:, None]
        out.append(float(F.ctc_loss(lp, torch.tensor([y]), [len(lp)], [len(y)], reduction="sum")))
    return np.array(out)


def fit(rows):
    rows = [r for r in rows if r["lettering"] and r["orientation"] == 0 and r["text"]]
    score = []
    for t in TEMPERATURES:
        v = line_nll(rows, t)
        score.append(np.mean(v[np.isfinite(v)]))
    return float(TEMPERATURES[int(np.argmin(score))]), len(rows)


def reliability(pairs, bins=10):
    """Expected calibration error and the table (count, mean confidence, share right) of equal-width bins."""
    c, k = np.array([p[0] for p in pairs]), np.array([p[1] for p in pairs], float)
    b = np.minimum((c * bins).astype(int), bins - 1)
    table, ece = [], 0.0
    for i in range(bins):
        m = b == i
        if m.any():
            table.append([int(m.sum()), round(float(c[m].mean()), 3), round(float(k[m].mean()), 3)])
            ece += m.mean() * abs(c[m].mean() - k[m].mean())
    return round(float(ece), 4), table


def band(x):
    return "under 10 px" if x < 10 else "10-15 px" if x < 15 else "15-20 px" if x < 20 else "20-30 px" if x < 30 else "30 px and over"


def report(rows, t, show):
    group = defaultdict(lambda: [0, 0, 0, 0])
    by_letter, by_line, raw_letter = [], [], []
    turned, styles, there, iou = [0, 0], [0, 0], [0, 0, 0, 0], []
    kept = [0, 0, 0]
    for r in rows:
        h = r["heads"]
        seen = h["lettering"] > 0
        there[(0 if r["lettering"] else 2) + int(seen)] += 1
        if not r["lettering"]:
            continue
        turned[0] += int(np.argmax(h["orientation"])) == r["orientation"]
        turned[1] += 1
        if r["orientation"]:
            continue
        styles[0] += STYLES[int(np.argmax(h["style"]))] == r["style"]
        styles[1] += 1
        read = letters(cooled(r["lp"], t))
        truth = encode(r["text"])
        e, ok = align(truth, [c for c, _, _ in read])
        text = "".join(CLASSES[c] for c, _, _ in read)
        e_ci, _ = align(r["text"].lower(), text.lower())
        for k in ["all", "style " + r["style"], "x-height " + band(r["x_px"])] + [f"{a} {r[a]}" for a in ("kind", "fill") if a in r]:
            g = group[k]
            g[0] += e
            g[1] += len(truth)
            g[2] += e == 0
            g[3] += 1
        group["all, case ignored"][0] += e_ci
        group["all, case ignored"][1] += len(truth)
        group["all, case ignored"][2] += e_ci == 0
        group["all, case ignored"][3] += 1
        by_letter += [(p, k) for (_, _, p), k in zip(read, ok)]
        raw_letter += [(p, k) for (_, _, p), k in zip(letters(r["lp"]), ok)]
        if read:
            y = [c for c, _, _ in read]
            lp = torch.from_numpy(cooled(r["lp"], t))[:, None]
            p = float(torch.exp(-F.ctc_loss(lp, torch.tensor([y]), [len(lp)], [len(y)], reduction="sum")))
            by_line.append((p, e == 0))
        if r.get("variant"):
            kept[0 if e_ci == 0 else 1] += 1
        if e == 0:
            spans = iter(r["spans"])
            ed = np.array(h["edges"]).reshape(-1, 2)
            for c, f, _ in read:
                if c > 1:
                    a, b = next(spans)
                    x = 4 * f + 1.5
                    u, v = x - ed[f, 0], x + ed[f, 1]
                    iou.append(max(0.0, min(b, v) - max(a, u)) / max(1e-6, max(b, v) - min(a, u)))
        if show:
            print(f"{r.get('source', r['face'])[:34]:34} {e:2d}  {r['text']!r}  {text!r}")
    ece_letter, t_letter = reliability(by_letter)
    ece_line, t_line = reliability(by_line)
    ece_raw, _ = reliability(raw_letter)
    out = {"character_error": {k: {"errors": v[0], "characters": v[1], "rate": round(v[0] / max(1, v[1]), 4), "lines_exact": v[2], "lines": v[3]}
                               for k, v in sorted(group.items())},
           "orientation_right": turned, "style_right": styles,
           "lettering": {"lines_seen": there[1], "lines": there[0] + there[1], "blanks_called_lettering": there[3], "blanks": there[2] + there[3]},
           "letter_extent_iou": {"letters": len(iou), "median": round(float(np.median(iou)), 3) if iou else None,
                                 "share_at_least_0.8": round(float(np.mean(np.array(iou) >= 0.8)), 3) if iou else None},
           "calibration": {"letter_ece_before": ece_raw, "letter_ece": ece_letter, "letters": len(by_letter), "line_ece": ece_line,
                           "lines": len(by_line), "letter_table": t_letter, "line_table": t_line}}
    if kept[0] + kept[1]:
        out["misspelt_lines"] = {"read_as_engraved": kept[0], "misread": kept[1]}
    return out


if __name__ == "__main__":
    a = argparse.ArgumentParser()
    a.add_argument("--fit", required=True)
    a.add_argument("--report", nargs="+", required=True)
    a.add_argument("--out")
    a.add_argument("--list", action="store_true")
    a = a.parse_args()
    t, n = fit(load(a.fit))
    res = {"temperature": t, "temperature_fitted_on": f"{n} drawn lines, seed 11, faces kept for calibration"}
    for d in a.report:
        res[os.path.basename(os.path.normpath(d))] = report(load(d), t, a.list)
    print(json.dumps(res, ensure_ascii=False, indent=1))
    if a.out:
        json.dump(res, open(a.out, "w"), ensure_ascii=False, indent=1)
