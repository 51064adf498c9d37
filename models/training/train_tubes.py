"""Trains the tube network on drawn scenes, and exports it.

python3 train_tubes.py --sets DIR --out RUN --seconds 1500 [--resume RUN/tubes.pt] [--export ../tubes.onnx] [--device cuda]
DIR holds train_*.npz and held_*.npz from draw_tubes.py. A run stops by the clock and can be gone on with: the learning
rate follows the share of --total images seen so far, which the checkpoint keeps. Writes RUN/tubes.pt and RUN/log.txt.
Several processes (torchrun) train side by side on batches of their own and average their weights every few steps.
"""
import argparse
import copy
import glob
import math
import os
import time

import numpy as np
import torch
import torch.distributed as dist
import torch.nn.functional as F

from tube_network import Maps, Tubes


def load(path, shrink):
    """One set, shrunk so many times: picture, shares of the kinds and outline, the latter two at half the picture's resolution."""
    z = np.load(path)
    picture = F.avg_pool2d(torch.from_numpy(z["picture"]).permute(0, 3, 1, 2).float(), shrink).round().byte() if shrink > 1 else torch.from_numpy(z["picture"]).permute(0, 3, 1, 2)
    kinds = torch.stack([F.avg_pool2d((torch.from_numpy(z["kinds"]) == k).float(), 2 * shrink) for k in range(3)], 1)
    outline = F.max_pool2d(torch.from_numpy(z["outline"]).float() / 255, 2 * shrink)
    return {"picture": picture.contiguous(), "kinds": (kinds * 255).round().byte(), "outline": (outline * 255).round().byte()}


def batch(part, index, rng, device, augment):
    picture = part["picture"][index].to(device).float() / 255
    kinds = part["kinds"][index].to(device).float() / 255
    outline = part["outline"][index].to(device).float() / 255
    if augment:
        for axis in (1, 2):
            if rng.random() < 0.5:
                picture, kinds, outline = picture.flip(axis + 1), kinds.flip(axis + 1), outline.flip(axis)
        if rng.random() < 0.25:
            picture, kinds, outline = picture.transpose(2, 3), kinds.transpose(2, 3), outline.transpose(1, 2)
        n = len(index)
        u = lambda lo, hi, *s: torch.from_numpy(rng.uniform(lo, hi, (n, *s)).astype(np.float32)).to(device)
        picture = (picture * u(0.8, 1.2, 3, 1, 1) * u(0.6, 1.3, 1, 1, 1)).clamp(0, 1) ** u(0.75, 1.35, 1, 1, 1)
        if rng.random() < 0.15:
            picture = picture.mean(1, keepdim=True).expand(-1, 3, -1, -1)
    return (picture - 0.5) / 0.5, kinds, outline


def losses(out, kinds, outline):
    logp = F.log_softmax(out[:, :3], 1)
    ce = -(kinds * logp).sum(1).mean()
    p, k = logp.exp()[:, 1], kinds[:, 1]
    dice = 1 - (2 * (p * k).sum((1, 2)) + 50) / (p.sum((1, 2)) + k.sum((1, 2)) + 50)
    edge = F.binary_cross_entropy_with_logits(out[:, 3], outline, pos_weight=torch.tensor(4.0, device=out.device))
    return ce + 0.5 * dice.mean() + 0.8 * edge


@torch.no_grad()
def check(net, parts, device):
    """Intersection over union of walls, share of the pictures without walls in which more than 1 % of the cells fire, mean precision and recall of outlines."""
    net.eval()
    inter = union = blank = fired = hit = said = meant = 0
    for part in parts:
        for i in range(0, len(part["kinds"]), 40):
            x, kinds, outline = batch(part, slice(i, i + 40), None, device, False)
            out = net(x)
            a, b = out[:, :3].argmax(1) == 1, kinds[:, 1] > 0.5
            inter, union = inter + int((a & b).sum()), union + int((a | b).sum())
            none = b.flatten(1).sum(1) == 0
            blank, fired = blank + int(none.sum()), fired + int((a.flatten(1).float().mean(1)[none] > 0.01).sum())
            e = torch.sigmoid(out[:, 3]) > 0.6
            hit += int((e & (outline > 0.1)).sum())
            said += int(e.sum())
            meant += int((outline > 0.6).sum())
    net.train()
    return f"wall IoU {inter / max(1, union):.3f}, {fired} of {blank} without walls fired, outline precision {hit / max(1, said):.3f}, outline cells said/meant {said / max(1, meant):.2f}"


@torch.no_grad()
def together(net, going, workers):
    """Averages the weights of all processes; goes on only while all want to."""
    for t in net.state_dict().values():
        if t.dtype.is_floating_point:
            dist.all_reduce(t)
            t /= workers
    vote = torch.tensor([0.0 if going else 1.0])
    dist.all_reduce(vote)
    return vote.item() == 0


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--sets", required=True)
    a.add_argument("--out", required=True)
    a.add_argument("--seconds", type=float, default=1500)
    a.add_argument("--total", type=int, default=60000)
    a.add_argument("--batch", type=int, default=16)
    a.add_argument("--lr", type=float, default=3e-3)
    a.add_argument("--resume")
    a.add_argument("--shrink", type=int, default=1, help="how many times the drawn scenes are shrunk: 1 leaves the longer side at 256")
    a.add_argument("--export")
    a.add_argument("--seed", type=int, default=1)
    a.add_argument("--device", default="cpu")
    a.add_argument("--every", type=int, default=8, help="steps between two averagings of several processes")
    a.add_argument("--threads", type=int, default=2)
    a = a.parse_args()
    torch.set_num_threads(a.threads)
    torch.manual_seed(a.seed)
    rank, workers = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
    if workers > 1:
        dist.init_process_group("gloo")
    os.makedirs(a.out, exist_ok=True)
    net = Tubes().to(a.device)
    optimiser = torch.optim.AdamW(net.parameters(), a.lr, weight_decay=1e-4)
    mean = copy.deepcopy(net)
    seen = 0
    if a.resume:
        state = torch.load(a.resume, map_location=a.device)
        net.load_state_dict(state["net"])
        mean.load_state_dict(state["mean"])
        optimiser.load_state_dict(state["optimiser"])
        seen = state["seen"]
    rng = np.random.default_rng([a.seed, seen, rank])
    train = [{k: v.to(a.device) for k, v in load(f, a.shrink).items()} for f in sorted(glob.glob(os.path.join(a.sets, "train_*.npz")))]
    held = [load(f, a.shrink) for f in sorted(glob.glob(os.path.join(a.sets, "held_*.npz")))]
    share = np.array([len(p["kinds"]) for p in train], float)
    share /= share.sum()
    log = open(os.path.join(a.out, "log.txt") if rank == 0 else os.devnull, "a")
    print(sum(p.numel() for p in net.parameters()), "weights", file=log, flush=True)
    start = told = time.time()
    running = []
    step = 0
    going = True
    while going:
        rate = a.lr * min(1, (seen + 1) / 1000) * 0.5 * (1 + math.cos(math.pi * min(1, seen / a.total)))
        for g in optimiser.param_groups:
            g["lr"] = rate
        part = train[rng.choice(len(train), p=share)]
        x, kinds, outline = batch(part, torch.from_numpy(rng.choice(len(part["kinds"]), a.batch, replace=False)).to(a.device), rng, a.device, True)
        loss = losses(net(x), kinds, outline)
        optimiser.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(net.parameters(), 2.0)
        optimiser.step()
        seen += a.batch * workers
        step += 1
        if step % a.every == 0:
            going = time.time() - start < a.seconds and seen < a.total
            if workers > 1:
                going = together(net, going, workers)
        keep = min(0.995, seen / (seen + 2000))
        with torch.no_grad():
            for m, n in zip(mean.state_dict().values(), net.state_dict().values()):
                m.copy_(m * keep + n * (1 - keep) if m.dtype.is_floating_point else n)
        running.append(loss.item())
        if rank == 0 and time.time() - told > 150:
            told = time.time()
            print(f"{seen} seen, {told - start:.0f} s, loss {np.mean(running):.4f}; {check(mean, held, a.device)}", file=log, flush=True)
            running = []
            torch.save({"net": net.state_dict(), "mean": mean.state_dict(), "optimiser": optimiser.state_dict(), "seen": seen}, os.path.join(a.out, "tubes.pt"))
    if rank > 0:
        return
    torch.save({"net": net.state_dict(), "mean": mean.state_dict(), "optimiser": optimiser.state_dict(), "seen": seen}, os.path.join(a.out, "tubes.pt"))
    print(f"{seen} seen at the end; {check(mean, held, a.device)}", file=log, flush=True)
    if a.export:
        mean.eval().cpu()
        extra = dict(dynamo=False) if int(torch.__version__.split(".")[0]) >= 2 else {}
        torch.onnx.export(Maps(mean).eval(), torch.zeros(1, 3, 192, 256), a.export, opset_version=17, input_names=["picture"], output_names=["maps"],
                          dynamic_axes={"picture": {2: "h", 3: "w"}, "maps": {2: "h", 3: "w"}}, **extra)


if __name__ == "__main__":
    main()
