"""Writes random inputs and what PyTorch makes of them, for verify.mjs: python3 probe.py reader|detector WEIGHTS.pt DIR"""
import json
import os
import sys

import torch

from export import load

kind, weights, out = sys.argv[1:4]
os.makedirs(out, exist_ok=True)
torch.manual_seed(1)
net = load(kind, weights)
cases = []
with torch.no_grad():
    for i, shape in enumerate([(1, 1, 64, 132), (3, 1, 64, 300)] if kind == "reader" else [(1, 1, 96, 160)]):
        x = torch.rand(shape) * 2 - 1
        y = net(x) if kind == "reader" else net(x)[:1]
        names = ["log_probs", "orientation", "style", "lettering", "edges"] if kind == "reader" else ["maps"]
        x.numpy().tofile(f"{out}/{kind}{i}.in")
        for n, t in zip(names, y):
            t.numpy().astype("float32").tofile(f"{out}/{kind}{i}.{n}")
        cases.append(dict(name=f"{kind}{i}", shape=shape, input="line" if kind == "reader" else "strip", outputs=names))
json.dump(cases, open(f"{out}/{kind}.json", "w"))
