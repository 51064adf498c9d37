"""Trains the line detector on canvases drawn as it goes.

python3 train_detector.py --store STORE.npz --out DIR --seconds 400 [--resume CKPT] [--schedule A B]
Writes DIR/detector.pt, DIR/detector_ema16.pt and DIR/detector_log.txt.
"""
import argparse
import math
import os
import random
import time

import torch
import torch.nn.functional as F

import engrave
import words
from networks import Detector
from strips import Strips

SHAPES = [(384, 1024), (512, 768), (640, 640), (256, 1024), (768, 512), (512, 1024)]


def losses(out, raw, want):
    core, ink = want[:, 0], want[:, 1]
    bce = lambda l, t: F.binary_cross_entropy_with_logits(l, t, reduction="none")
    p = torch.sigmoid(raw[:, 0])
    hard = (p.detach() - core).abs() ** 1.0 + 0.08                        # the surely right weigh little
    lc = (bce(raw[:, 0], core) * hard).sum() / hard.sum()
    dice = 1 - (2 * (p * core).sum((1, 2)) + 60) / (p.sum((1, 2)) + core.sum((1, 2)) + 60)
    li = bce(raw[:, 1], ink).mean()
    n = ink.sum().clamp_min(1)
    w = ink + core
    ld = ((1 - out[:, 2] * want[:, 2] - out[:, 3] * want[:, 3]) * w).sum() / w.sum().clamp_min(1)
    gap = lambda ch, unit, lo, hi: F.smooth_l1_loss(raw[:, ch].clamp(lo - 1, hi + 1), torch.log(want[:, ch] / unit).clamp(lo, hi),
                                                   reduction="none", beta=0.1)
    ls = ((gap(4, 16.0, -3, 3) + gap(5, 16.0, -3, 3)) * core).sum() / core.sum().clamp_min(1)
    lr = ((gap(6, 32.0, -3, 4) + gap(7, 32.0, -3, 4)) * core).sum() / core.sum().clamp_min(1)
    total = 2.0 * lc + dice.mean() + li + 0.7 * ld + 1.0 * ls + 0.25 * lr
    return total, dict(core=lc, dice=dice.mean(), ink=li, dir=ld, spread=ls, reach=lr)


@torch.no_grad()
def check(net, batches, dev):
    """Core IoU and recall, false cores on blank canvases (share of canvases), direction and height errors."""
    net.eval()
    inter = union = pos = 0.0
    blank = fired = 0
    ang, hgt = [], []
    for d in batches:
        with torch.autocast(dev.split(":")[0], torch.bfloat16, enabled=dev != "cpu"):
            out, _ = net(d["strip"])
        m = d["maps"]
        a, b = out[:, 0] > 0.5, m[:, 0] > 0.5
        inter += float((a & b).sum())
        union += float((a | b).sum())
        pos += float(b.sum())
        e = b.flatten(1).sum(1) == 0
        blank += int(e.sum())
        fired += int((a.flatten(1).sum(1)[e] > 12).sum())
        if bool((a & b).any()):
            k = a & b
            cosine = (out[:, 2] * m[:, 2] + out[:, 3] * m[:, 3])[k].clamp(-1, 1)
            ang.append(torch.rad2deg(torch.arccos(cosine)).cpu())
            h = (m[:, 4] + m[:, 5])[k]
            hgt.append((((out[:, 4] - m[:, 4]).abs() + (out[:, 5] - m[:, 5]).abs())[k] / h / 2).cpu())
    net.train()
    ang, hgt = torch.cat(ang) if ang else torch.tensor([180.0]), torch.cat(hgt) if hgt else torch.tensor([9.0])
    return (f"core IoU {inter / max(1, union):.3f} recall {inter / max(1, pos):.3f} fired on {fired} of {blank} blanks, "
            f"angle median {ang.median():.2f} wrong way {(ang > 90).float().mean():.4f}, edge error {hgt.median():.3f} of height")


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--store", required=True)
    a.add_argument("--out", required=True)
    a.add_argument("--seconds", type=float, default=60)
    a.add_argument("--resume")
    a.add_argument("--schedule", type=float, nargs=2, default=(0.0, 1.0))
    a.add_argument("--lr", type=float, default=2e-3)
    a.add_argument("--batch", type=int, default=24)
    a.add_argument("--texts", type=int, default=400_000)
    a.add_argument("--seed", type=int, default=1)
    a.add_argument("--small-letters", type=float, default=0.0, help="share of batches that are drawn twice as large and averaged down")
    a.add_argument("--small", action="store_true")
    a.add_argument("--compile", action="store_true")
    a = a.parse_args()
    dev = "cuda" if torch.cuda.is_available() else "cpu"
    t0 = time.time()
    texts = words.pool(5000 + a.seed, a.texts, max(1, (os.cpu_count() or 2) // 4))
    torch.manual_seed(300 + a.seed)
    random.seed(a.seed)
    store, noise = engrave.Store(a.store, ["train"], dev), engrave.Noise(dev)
    if a.compile:
        engrave.quicken()
    source = Strips(store, noise, texts, a.seed)
    log = open(os.path.join(a.out, "detector_log.txt"), "a")

    def say(*s):
        print("   [detector]", *s, flush=True)
        print(*s, file=log, flush=True)

    net = Detector().to(dev)
    if dev == "cuda":
        net = net.to(memory_format=torch.channels_last)
    opt = torch.optim.AdamW(net.parameters(), lr=a.lr, weight_decay=0.01, **(dict(fused=True) if dev == "cuda" else {}))
    ema = {k: v.clone() for k, v in net.state_dict().items()}
    step = seen = 0
    if a.resume:
        c = torch.load(a.resume, map_location=dev)
        if "net" not in c:                                   # only the compact averaged weights came along
            c = {k: v.float() if v.dtype.is_floating_point else v for k, v in c.items()}
            c = dict(net=c, ema={k: v.clone() for k, v in c.items()}, step=5000, seen=0)
        net.load_state_dict(c["net"])
        if "opt" in c:
            opt.load_state_dict(c["opt"])
        ema, step, seen = {k: v.to(dev) for k, v in c["ema"].items()}, c["step"], c["seen"]
    held = Strips(engrave.Store(a.store, ["calibrate"], dev), noise, words.pool(88, 4000, 1), 9)
    shapes = [(128, 256)] if a.small else SHAPES
    with torch.no_grad():
        hv = [held.batch(a.batch, *shapes[i % len(shapes)]) for i in range(1 if a.small else 12)]
        tiny = [held.batch(a.batch // 2, *shapes[i % len(shapes)], finer=2) for i in range(1 if a.small else 12)] if a.small_letters else []
    torch.manual_seed(400 + a.seed + step)
    mark = time.time()
    acc = None
    while time.time() - t0 < a.seconds:
        g = a.schedule[0] + min(1.0, (time.time() - t0) / a.seconds) * (a.schedule[1] - a.schedule[0])
        lr = a.lr * min(1.0, (step + 1) / 400) * (0.5 * (1 + math.cos(math.pi * g)) * 0.985 + 0.015)
        for q in opt.param_groups:
            q["lr"] = lr
        with torch.no_grad():
            finer = 2 if random.random() < a.small_letters else 1
            d = source.batch(a.batch // finer, *random.choice(shapes), finer=finer)
        x = d["strip"].contiguous(memory_format=torch.channels_last) if dev == "cuda" else d["strip"]
        with torch.autocast(dev, torch.bfloat16, enabled=dev == "cuda"):
            out, raw = net(x)
        loss, parts = losses(out, raw, d["maps"])
        opt.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 5.0)
        opt.step()
        step += 1
        seen += len(x)
        k = min(0.999, (1 + step) / (10 + step))
        with torch.no_grad():
            sd = net.state_dict()
            fl = [n for n in ema if ema[n].dtype.is_floating_point]
            torch._foreach_mul_([ema[n] for n in fl], k)
            torch._foreach_add_([ema[n] for n in fl], [sd[n] for n in fl], alpha=1 - k)
        vec = torch.stack([loss.detach()] + [v.detach() for v in parts.values()])
        acc = vec if acc is None else acc * 0.98 + vec * 0.02
        if time.time() - mark > 40:
            mark = time.time()
            say(f"{mark - t0:6.1f}s step {step} seen {seen} lr {lr:.2e}",
                " ".join(f"{n} {v:.3f}" for n, v in zip(["loss"] + list(parts), acc.tolist())), check(net, hv[:4], dev), *(["small letters:", check(net, tiny[:4], dev)] if tiny else []))
    full = Detector().to(dev)
    full.load_state_dict(ema)
    say(f"end: step {step} seen {seen}; unseen faces, averaged weights: {check(full, hv, dev)}{'; small letters: ' + check(full, tiny, dev) if tiny else ''}; {time.time() - t0:.0f}s in all")
    torch.save(dict(net=net.state_dict(), ema=ema, opt=opt.state_dict(), step=step, seen=seen), os.path.join(a.out, "detector.pt"))
    torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in ema.items()}, os.path.join(a.out, "detector_ema16.pt"))


if __name__ == "__main__":
    main()
