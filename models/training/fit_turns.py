"""Fits what tells which way up a line is, from folders looked at by read_turns.mjs: python3 fit_turns.py CAL_DIR REPORT_DIR

The weight of an orientation is WORD times the sum, over the four looks, of the log-probability that the network's own word gives it, plus
LETTER times the clear letters read in it (each counts its peak to the fourth power). Both are fitted on CAL_DIR by the likelihood of the true
orientation among the four; what is printed of REPORT_DIR was not looked at by the fit. `before` is the rule used until then: the words in full and 8 times the mean peak.
"""
import json
import os
import sys

import numpy as np

FLOOR = np.log(1e-3)
POWER = 4
CLEAR = 0.8                                    # mean peak from which a line is legible


def load(folder):
    """Per line: words [4], clear letters [4], mean peaks [4], by orientation; the true one is 0."""
    words, letters, means = [], [], []
    for row in json.load(open(os.path.join(folder, "turns.json"))):
        logits = np.array([look["orientation"] for look in row["looks"]])
        logs = logits - np.logaddexp.reduce(logits, axis=1, keepdims=True)
        logs = np.maximum(logs, FLOOR)
        words.append([sum(logs[look, turn ^ look] for look in range(4)) for turn in range(4)])
        peaks = [np.array(look["peaks"]) for look in row["looks"]]
        letters.append([(p ** POWER).sum() for p in peaks])
        means.append([p.mean() if len(p) else 0 for p in peaks])
    return np.array(words), np.array(letters), np.array(means)


def fit(words, letters):
    """Newton's method on the negative log-likelihood, two unknowns."""
    features, weights = np.stack([words, letters], 2), np.array([0.3, 1.0])
    for _ in range(50):
        z = features @ weights
        p = np.exp(z - np.logaddexp.reduce(z, axis=1, keepdims=True))
        mean = (p[..., None] * features).sum(1)
        gradient = (mean - features[:, 0]).sum(0)
        spread = features - mean[:, None]
        weights = weights - np.linalg.solve(np.einsum("no,noi,noj->ij", p, spread, spread), gradient)
    return weights


def report(name, weights, means):
    best = weights.argmax(1)
    legible = means[:, 0] >= CLEAR
    upside = weights[:, 1] > weights[:, 0]
    print(f"{name}: {len(best)} lines, {(best != 0).sum()} wrong among the four ways, {upside.sum()} upside down; "
          f"of {legible.sum()} legible ones {(legible & (best != 0)).sum()} and {(legible & upside).sum()}")


if __name__ == "__main__":
    word, letter = fit(*load(sys.argv[1])[:2])
    print(f"WORD {word:.3f} LETTER {letter:.3f}")
    for folder in sys.argv[1:]:
        words, letters, means = load(folder)
        report(f"{folder}, before", words + 8 * means, means)
        report(f"{folder}, fitted", word * words + letter * letters, means)
