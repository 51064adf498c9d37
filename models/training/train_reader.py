"""Trains the reader on lines drawn as it goes.

python3 train_reader.py --store STORE.npz --out DIR --seconds 540 [--resume CKPT] [--schedule A B]
One process per visible GPU (torchrun) or one in all. `--schedule A B`: this run covers the share A..B of the whole
learning-rate schedule, so that one schedule can span several commands. Writes DIR/reader.pt (weights, averaged weights,
optimiser) and DIR/reader_log.txt.
"""
import argparse
import math
import os
import time

import numpy as np
import torch
import torch.distributed as dist
import torch.nn.functional as F

import engrave
import words
from alphabet import CLASSES, decode
from lines import STRIDE, Lines
from networks import Reader


def losses(out, d, centre_weight):
    """CTC on upright lines, letters pinned to their middle frame, letter edges, orientation, style, lettering."""
    logp, orient, style, lettering, edges = out
    b, t, _ = logp.shape
    dev = logp.device
    upright = d["orientation"] == 0
    target, tl = d["target"], d["target_len"]
    # repeats need a blank between them: a line too long for its frames cannot be aligned and is left out
    rep = ((target[:, 1:] == target[:, :-1]) & (target[:, 1:] > 0)).sum(1)
    fits = upright & (tl + rep <= t)
    ctc = F.ctc_loss(logp.transpose(0, 1), target, torch.full((b,), t, dtype=torch.long, device=dev), tl,
                     blank=0, reduction="none", zero_infinity=True)
    ctc = (ctc / tl.clamp_min(1) * fits)
    ctc = ctc.sum() / fits.sum().clamp_min(1)
    ink = d["inked"] & fits[:, None]
    mid = (d["left"] + d["right"]) / 2
    frame = torch.floor(mid / STRIDE).long().clamp(0, t - 1)
    ink = ink & (mid > 0) & (mid < t * STRIDE)
    at = torch.gather(logp, 1, frame[:, :, None].expand(-1, -1, logp.shape[2]))
    nll = -torch.gather(at, 2, target[:, :, None])[:, :, 0]
    n = ink.sum().clamp_min(1)
    centre = (nll.clamp_max(8) * ink).sum() / n
    # edges at the middle frame and its two neighbours, in px from the frame's centre
    edge = logp.new_zeros(())
    for o in (-1, 0, 1):
        fo = (frame + o).clamp(0, t - 1)
        e = torch.gather(edges.float(), 1, fo[:, :, None].expand(-1, -1, 2))
        x = fo * STRIDE + (STRIDE - 1) / 2
        want = torch.stack([x - d["left"], d["right"] - x], 2)
        near = ink if o == 0 else ink & (x > d["left"]) & (x < d["right"])
        edge = edge + (F.smooth_l1_loss(e, want, reduction="none").clamp_max(40).sum(2) * near).sum() / n / 3
    let = d["lettering"]
    ori = F.cross_entropy(orient.float()[let], d["orientation"][let])
    sty = F.cross_entropy(style.float()[let & upright], d["style"][let & upright])
    lett = F.binary_cross_entropy_with_logits(lettering[:, 0].float(), let.float())
    total = ctc + centre_weight * centre + 0.03 * edge + 0.15 * ori + 0.08 * sty + 0.15 * lett
    return total, dict(ctc=ctc, centre=centre, edge=edge, ori=ori, sty=sty, lett=lett)


def distance(a, b):
    prev = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        cur = [i]
        for j, y in enumerate(b, 1):
            cur.append(min(prev[j] + 1, cur[-1] + 1, prev[j - 1] + (x != y)))
        prev = cur
    return prev[-1]


@torch.no_grad()
def check(net, batches, dev):
    """Character error of best-path decoding over some drawn batches."""
    net.eval()
    err = n = 0
    for d in batches:
        with torch.autocast(dev.split(":")[0], torch.bfloat16, enabled=dev != "cpu"):
            logp = net(d["line"])[0]
        best = logp.argmax(2).cpu().tolist()
        for p, t, o in zip(best, d["target"].tolist(), d["orientation"].tolist()):
            if o == 0:
                truth = "".join(CLASSES[c] for c in t if c)
                err += distance(truth, decode(p))
                n += len(truth)
    net.train()
    return err / max(1, n)


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--store", required=True)
    a.add_argument("--out", required=True)
    a.add_argument("--seconds", type=float, default=60)
    a.add_argument("--resume")
    a.add_argument("--schedule", type=float, nargs=2, default=(0.0, 1.0))
    a.add_argument("--lr", type=float, default=1.4e-3)
    a.add_argument("--budget", type=int, default=640 * 512)
    a.add_argument("--texts", type=int, default=2_000_000)
    a.add_argument("--seed", type=int, default=1)
    a.add_argument("--small-caps", type=float, default=3.0, help="how much oftener faces of small capitals come")
    a.add_argument("--replay", type=int, default=0, help="1: every drawn batch is seen a second time, some batches later")
    a.add_argument("--warm", type=int, default=300)
    a.add_argument("--ema", type=float, default=0.9995)
    a.add_argument("--compile", action="store_true")
    a.add_argument("--block", type=int, default=8192)
    a = a.parse_args()
    rank, world = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
    dev = f"cuda:{int(os.environ.get('LOCAL_RANK', 0))}" if torch.cuda.is_available() else "cpu"
    # the clock starts here, so that --seconds bounds the whole process
    if dev != "cpu":
        torch.cuda.set_device(dev)
        torch.backends.cuda.matmul.allow_tf32 = True
        torch.backends.cudnn.allow_tf32 = True
    t0 = time.time()
    texts = words.pool(1000 * a.seed + rank, a.texts, max(1, (os.cpu_count() or 2) // (world * 2)))
    if world > 1:
        dist.init_process_group("nccl")
    torch.manual_seed(100 * a.seed + rank)
    store = engrave.Store(a.store, ["train"], dev)
    noise = engrave.Noise(dev)
    if a.compile:
        engrave.quicken()
    source = Lines(store, noise, texts, 10 * a.seed + rank, budget=a.budget, block=a.block, small_caps=a.small_caps)
    log = open(os.path.join(a.out, "reader_log.txt"), "a") if rank == 0 else None

    def say(*s):
        if rank == 0:
            print(*s, flush=True)
            print(*s, file=log, flush=True)

    say("faces", store.faces, "texts", len(texts), "world", world, "prepared in", round(time.time() - t0, 1))
    net = Reader().to(dev)
    if dev != "cpu":
        net = net.to(memory_format=torch.channels_last)
    decay = [p for p in net.parameters() if p.ndim > 1]
    rest = [p for p in net.parameters() if p.ndim <= 1]
    opt = torch.optim.AdamW([dict(params=decay, weight_decay=0.02), dict(params=rest, weight_decay=0.0)], lr=a.lr,
                            betas=(0.9, 0.98), **(dict(fused=True) if dev != "cpu" else {}))
    ema = {k: v.clone() for k, v in net.state_dict().items()}
    step0, seen = 0, 0
    if a.resume:
        c = torch.load(a.resume, map_location=dev)
        if "net" not in c:                                   # only the compact averaged weights came along
            c = {k: v.float() if v.dtype.is_floating_point else v for k, v in c.items()}
            c = dict(net=c, ema={k: v.clone() for k, v in c.items()}, step=5000, seen=0)
        net.load_state_dict(c["net"])
        if "opt" in c:
            opt.load_state_dict(c["opt"])
            for q in opt.param_groups:
                q["lr"] = a.lr
        ema, step0, seen = {k: v.to(dev) for k, v in c["ema"].items()}, c["step"], c["seen"]
    model = torch.nn.parallel.DistributedDataParallel(net, device_ids=[int(dev[5:])], broadcast_buffers=False) if world > 1 else net
    held = engrave.Store(a.store, ["calibrate"], dev) if rank == 0 else None
    hv = []
    if rank == 0:
        keep = torch.get_rng_state()
        torch.manual_seed(9)
        hs = Lines(held, noise, words.pool(77, 4000, 1), 5, budget=a.budget // 2, block=min(2048, a.block), flips=0.0, negatives=0.0)
        for d in hs.batches():
            hv.append(d)
            if sum(len(x["line"]) for x in hv) >= min(1500, a.block // 2):
                break
        torch.set_rng_state(keep)
    torch.manual_seed(100 * a.seed + rank + 50 + step0)
    it = source.batches()
    step, start, marks, acc, seen0 = step0, time.time(), time.time(), None, seen
    stop = torch.zeros(1, device=dev)
    kept = []
    while True:
        share = (time.time() - t0) / a.seconds
        if step % 20 == 0:
            stop[0] = float(share >= 1)
            if world > 1:
                dist.broadcast(stop, 0)
            if stop.item() > 0:
                break
        g = a.schedule[0] + min(1.0, share) * (a.schedule[1] - a.schedule[0])
        warm = min(1.0, (step - step0 + 1) / a.warm)
        lr = a.lr * warm * (0.5 * (1 + math.cos(math.pi * g)) * 0.985 + 0.015)
        for q in opt.param_groups:
            q["lr"] = lr
        if a.replay and step % 2 and len(kept) > 8:
            d = kept.pop(int(torch.randint(len(kept) - 4, ())))
        else:
            with torch.no_grad():
                d = next(it)
            if a.replay:
                kept = (kept + [d])[-24:]
        x = d["line"]
        if dev != "cpu":
            x = x.contiguous(memory_format=torch.channels_last)
        with torch.autocast(dev.split(":")[0], torch.bfloat16, enabled=dev != "cpu"):
            out = model(x)
        loss, parts = losses(out, d, 0.35 * (1 - g) + 0.08)
        opt.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 4.0)
        opt.step()
        step += 1
        seen += len(x) * world
        k = min(a.ema, (1 + step) / (10 + step))
        if step % 4 == 0:
            with torch.no_grad():
                sd = net.state_dict()
                fl = [n for n in ema if ema[n].dtype.is_floating_point]
                torch._foreach_mul_([ema[n] for n in fl], k ** 4)
                torch._foreach_add_([ema[n] for n in fl], [sd[n] for n in fl], alpha=1 - k ** 4)
        vec = torch.stack([loss.detach()] + [v.detach().float() for v in parts.values()])
        acc = vec if acc is None else acc * 0.98 + vec * 0.02
        if rank == 0 and time.time() - marks > 25:
            marks = time.time()
            names = ["loss"] + list(parts)
            say(f"{time.time() - t0:6.1f}s step {step} seen {seen / 1e6:.3f}M lr {lr:.2e} {(seen - seen0) / (time.time() - start):.0f}/s",
                " ".join(f"{n} {v:.3f}" for n, v in zip(names, acc.tolist())),
                f"cer(unseen faces) {check(net, hv[:1], dev):.4f}" if hv else "")
    if rank == 0:
        net.eval()
        full = Reader().to(dev)
        full.load_state_dict(ema)
        say(f"end: step {step} seen {seen / 1e6:.3f}M  unseen faces: raw {check(net, hv, dev):.4f} averaged {check(full, hv, dev):.4f}"
            f"  {time.time() - t0:.0f}s in all")
        torch.save(dict(net=net.state_dict(), ema=ema, opt=opt.state_dict(), step=step, seen=seen), os.path.join(a.out, "reader.pt"))
        torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in ema.items()}, os.path.join(a.out, "reader_ema16.pt"))
    if world > 1:
        dist.barrier()
        dist.destroy_process_group()


if __name__ == "__main__":
    main()
