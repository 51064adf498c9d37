"""Brings a published network back to where training can go on: python3 restore.py reader|detector NET.onnx STORE.npz OUT.pt [BATCHES]

The exported graph has each normalisation folded into the convolution before it. The weights come back as they lie there,
in graph order; each normalisation is then set from drawn batches so that it does nothing in use (same outputs as the
file) and starts in training from the statistics that it would have had. The optimiser starts anew.
"""
import sys

import onnx
import torch
from onnx import numpy_helper

import engrave
import words
from lines import Lines
from networks import Detector, Reader
from strips import Strips


def weights(path):
    """Arrays of the graph by name, and the names each convolution, product and recurrent layer uses, in graph order."""
    graph = onnx.load(path).graph
    arrays = {i.name: torch.from_numpy(numpy_helper.to_array(i).copy()).float() for i in graph.initializer}
    used = [(n.op_type, [i for i in n.input if i in arrays], n.name) for n in graph.node]
    return arrays, [u for u in used if u[1] and u[0] in ("Conv", "Gemm", "MatMul", "LSTM")]


def torch_gates(t):
    """ONNX keeps the gates in the order i, o, f, c; PyTorch in the order i, f, c, o."""
    i, o, f, c = t.chunk(4)
    return torch.cat([i, f, c, o])


def module_of(node, modules):
    """The module that a node belongs to by its name, each step of which repeats as much of the step above as it likes."""
    path = ""
    for p in [p for p in node.split("/") if p][:-1]:
        if p == "net" and "net" not in modules:
            continue
        old, new = path.split(".") if path else [], p.split(".")
        k = next(k for k in range(len(old), -1, -1) if old[len(old) - k:] == new[:k])
        path = ".".join(old + new[k:])
    return path


@torch.no_grad()
def put(net, arrays, used):
    """Copies what the graph holds into the modules; returns the normalisations with what follows their convolution."""
    modules = dict(net.named_modules())
    folded = []
    for op, names, node in used:
        if op == "LSTM":
            parts = [p for p in node.split("/") if p]
            layer = int(parts[-1].split("_")[1]) if "_" in parts[-1] else 0
            w, r, b = (arrays[n] for n in names[:3])
            for d, tail in enumerate(("", "_reverse")):
                lstm = modules["lstm"]
                getattr(lstm, f"weight_ih_l{layer}{tail}").copy_(torch_gates(w[d]))
                getattr(lstm, f"weight_hh_l{layer}{tail}").copy_(torch_gates(r[d]))
                half = b.shape[1] // 2
                getattr(lstm, f"bias_ih_l{layer}{tail}").copy_(torch_gates(b[d, :half]))
                getattr(lstm, f"bias_hh_l{layer}{tail}").copy_(torch_gates(b[d, half:]))
            continue
        path = module_of(node, modules)
        m = modules[path]
        if op == "MatMul":
            m.weight.copy_(arrays[names[0]].T)
            m.bias.copy_(arrays[f"{path}.bias"])
            continue
        m.weight.copy_(arrays[names[0]])
        if m.bias is not None:
            m.bias.copy_(arrays[names[1]])
        else:
            parent, last = path.rsplit(".", 1) if "." in path else ("", path)
            after = f"{parent}.n" if last == "dw" else f"{parent}.{int(last) + 1}"
            folded.append((m, modules[after], arrays[names[1]].to(m.weight.device)))
    return folded


@torch.no_grad()
def still(folded):
    """Lets every normalisation add nothing but the bias that was folded into its convolution."""
    for _, norm, bias in folded:
        norm.running_mean.zero_()
        norm.running_var.fill_(1 - norm.eps)
        norm.weight.fill_(1)
        norm.bias.copy_(bias)


@torch.no_grad()
def settle(net, folded, batches):
    """Sets every normalisation from the outputs of its convolution over some batches."""
    still(folded)
    sums = {}

    def gather(module, _, out):
        dims = [d for d in range(out.ndim) if d != 1]
        n = out.numel() // out.shape[1]
        s = sums.setdefault(module, [0, 0.0, 0.0])
        s[0] += n
        s[1] = s[1] + out.double().sum(dims)
        s[2] = s[2] + (out.double() ** 2).sum(dims)

    hooks = [conv.register_forward_hook(gather) for conv, _, _ in folded]
    net.eval()
    for x in batches:
        net(x)
    for h in hooks:
        h.remove()
    for conv, norm, bias in folded:
        n, s, q = sums[conv]
        mean = s / n
        var = (q / n - mean ** 2).clamp_min(1e-8)
        norm.running_mean.copy_(mean)
        norm.running_var.copy_(var)
        norm.weight.copy_(torch.sqrt(var + norm.eps))
        norm.bias.copy_(bias.double() + mean)


@torch.no_grad()
def main(kind, path, store_path, out, count=24):
    torch.manual_seed(4)
    dev = "cuda" if torch.cuda.is_available() else "cpu"
    net = (Reader() if kind == "reader" else Detector()).to(dev)
    folded = put(net, *weights(path))
    store, noise = engrave.Store(store_path, ["train"], dev), engrave.Noise(dev)
    texts = words.pool(4, 4000, 1)
    if kind == "reader":
        source = Lines(store, noise, texts, 4, budget=64 * 512, block=1024).batches()
        drawn = [next(source)["line"] for _ in range(count)]
    else:
        strips = Strips(store, noise, texts, 4)
        drawn = [strips.batch(4, 384, 512)["strip"] for _ in range(count)]
    settle(net, folded, drawn)
    torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in net.state_dict().items()}, out)
    print(len(folded), "normalisations set from", sum(len(x) for x in drawn), "drawn pictures; written to", out)


if __name__ == "__main__":
    main(*sys.argv[1:5], *(int(a) for a in sys.argv[5:6]))
