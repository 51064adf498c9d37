"""Lets a published network compute in whole numbers of 8 bits: python3 quantise.py reader|detector NET.onnx STORE.npz OUT.onnx [BATCHES]

Every two-dimensional convolution but the first and the last (of the reader: but the first) gets whole weights with a scale for each output channel, and
activations of 8 bits whose range is set on drawn pictures (seed 5) so that rounding and clipping together cost least (mean square over a histogram).
Recurrent layers get whole weights as well (a scale for each gate of each cell) and bring their input down themselves, step by step.
NET.onnx is a network as export.py writes it. The graph says it in the open form, QuantizeLinear and DequantizeLinear beside each
operation (Jacob et al. 2018, arXiv:1712.05877); the inference library joins them.
"""
import sys

import numpy as np
import onnx
import torch
from onnx import helper, numpy_helper

import engrave
import words
from lines import Lines
from networks import Detector, Reader
from restore import module_of, put, still, weights
from strips import Strips

BINS = 2048
LIBRARY = "com.microsoft"
WEIGHT = 63          # 7 bits and not 8: two products of 255 x 63 still fit 16 bits, so that processors without dot products of bytes add alike


class Range:
    """Histogram of what a place of the network gives."""

    def __init__(self):
        self.low, self.high, self.count = 0.0, 0.0, 0.0

    def see(self, t):
        self.low, self.high = min(self.low, t.min().item()), max(self.high, t.max().item())

    def fill(self, t):
        self.count = self.count + torch.histc(t.float(), BINS, self.low, self.high).double().cpu().numpy()

    def scale_and_zero(self):
        """Scale and zero point with the least mean square error, among ranges that cut off more and more of both ends."""
        x = self.low + (np.arange(BINS) + 0.5) * (self.high - self.low) / BINS

        def cost(scale, zero):
            return float((self.count * (x - (np.clip(np.round(x / scale) + zero, 0, 255) - zero) * scale) ** 2).sum())

        tried = []
        for part in np.linspace(0.1, 1, 91):
            scale = max((self.high - self.low) * part / 255, 1e-8)
            tried.append((scale, int(np.clip(round(-self.low * part / scale), 0, 255))))
        return min(tried, key=lambda t: cost(*t))


class Plan:
    """Which convolutions and which tensors of a graph become whole numbers, and where in the modules each tensor is seen."""

    def __init__(self, graph, modules, last_too):
        makers = {o: n for n in graph.node for o in n.output}
        users = {}
        for n in graph.node:
            for i in n.input:
                users.setdefault(i, []).append(n)
        dims = {i.name: len(i.dims) for i in graph.initializer}
        convs = [n for n in graph.node if n.op_type == "Conv" and dims[n.input[1]] == 4]
        self.whole = {n.name for n in (convs[1:] if last_too else convs[1:-1])}
        self.seen = {}                                                        # tensor -> (path of a module, whether its input)
        for n in graph.node:
            out = n.output[0] if n.output else ""
            by_conv = [u for u in users.get(out, []) if u.name in self.whole]
            if n.op_type == "Relu" and (by_conv or makers[n.input[0]].name in self.whole):
                self.seen[out] = (module_of(by_conv[0].name, modules), True) if by_conv else (module_of(n.name, modules), False)
            elif n.name in self.whole and all(u.op_type != "Relu" for u in users[out]):
                path = module_of(n.name, modules)
                parent = path.rpartition(".")[0]
                self.seen[out] = (parent if isinstance(modules.get(parent), torch.nn.Sequential) and len(modules[parent]) == 2 else path, False)
            elif n.op_type == "Add" and by_conv:
                self.seen[out] = (module_of(by_conv[0].name, modules), True)
            elif n.op_type == "Resize" and n.input[0] in self.seen:
                self.seen[out] = self.seen[n.input[0]]                        # nearest neighbours: the same numbers again


@torch.no_grad()
def ranges(net, plan, batches):
    modules = dict(net.named_modules())
    found = {p: Range() for p in plan.seen.values()}
    for step in ("see", "fill"):
        hooks = [modules[path].register_forward_hook(lambda _, i, o, r=r, before=before: getattr(r, step)(i[0] if before else o))
                 for (path, before), r in found.items()]
        for x in batches:
            net(x)
        for h in hooks:
            h.remove()
    return {t: found[p].scale_and_zero() for t, p in plan.seen.items()}


def rewrite(model, plan, scales):
    graph = model.graph
    arrays = {i.name: numpy_helper.to_array(i) for i in graph.initializer}
    nodes, constants, now = [], [], {}

    def constant(name, array):
        constants.append(numpy_helper.from_array(array, name))
        return name

    def whole_numbers(name, q, scale):
        names = [constant(name + ".whole", q), constant(name + ".scale", scale), constant(name + ".zero", np.zeros(len(scale), q.dtype))]
        nodes.append(helper.make_node("DequantizeLinear", names, [name + ".real"], name + ".real", axis=0))
        return name + ".real"

    def recurrent(n):
        """The library's own layer with whole weights; they lie the other way round, and scale and zero point follow at the end."""
        parts = []
        for name in n.input[1:3]:
            w = arrays[name].transpose(0, 2, 1)
            scale = np.maximum(np.abs(w).max(1) / WEIGHT, 1e-8).astype(np.float32)
            parts.append([constant(name + ".whole", np.round(w / scale[:, None]).astype(np.int8)), constant(name + ".scale", scale),
                          constant(name + ".zero", np.zeros(scale.shape, np.int8))])
        rest = (list(n.input[3:]) + [""] * 4)[:4]
        new = helper.make_node("DynamicQuantizeLSTM", [n.input[0], parts[0][0], parts[1][0], *rest, "", *parts[0][1:], *parts[1][1:]],
                               list(n.output), n.name, domain=LIBRARY)
        new.attribute.extend(n.attribute)
        return new

    for n in graph.node:
        sources = list(n.input)
        for k, i in enumerate(sources):
            if i in now:
                n.input[k] = i + ".whole" if n.op_type == "Shape" else i + ".real"
        if n.name in plan.whole:
            w, b = arrays[sources[1]], arrays[sources[2]]
            scale = np.maximum(np.abs(w).reshape(len(w), -1).max(1) / WEIGHT, 1e-8).astype(np.float32)
            n.input[1] = whole_numbers(sources[1], np.clip(np.round(w / scale[:, None, None, None]), -WEIGHT, WEIGHT).astype(np.int8), scale)
            both = (scale * np.float32(scales[sources[0]][0])).astype(np.float32)
            n.input[2] = whole_numbers(sources[2], np.round(b / both).astype(np.int32), both)
        nodes.append(recurrent(n) if n.op_type == "LSTM" else n)
        for o in n.output:
            if o in scales:
                now[o] = True
                scale, zero = constant(o + ".scale", np.array(scales[o][0], np.float32)), constant(o + ".zero", np.array(scales[o][1], np.uint8))
                nodes.append(helper.make_node("QuantizeLinear", [o, scale, zero], [o + ".whole"], o + ".whole"))
                nodes.append(helper.make_node("DequantizeLinear", [o + ".whole", scale, zero], [o + ".real"], o + ".real"))
    nodes = [onnx.NodeProto.FromString(n.SerializeToString()) for n in nodes]
    used = {i for n in nodes for i in n.input}
    kept = [i for i in graph.initializer if i.name in used]
    del graph.node[:], graph.initializer[:]
    graph.node.extend(nodes)
    graph.initializer.extend(kept + constants)
    if any(n.domain == LIBRARY for n in nodes):
        model.opset_import.append(helper.make_opsetid(LIBRARY, 1))
    onnx.checker.check_model(model)


@torch.no_grad()
def main(kind, path, store_path, out, count=8):
    torch.manual_seed(5)
    net = (Reader() if kind == "reader" else Detector()).eval()
    still(put(net, *weights(path)))
    store, noise, texts = engrave.Store(store_path, ["train"], "cpu"), engrave.Noise("cpu"), words.pool(4, 4000, 1)
    if kind == "reader":
        source = Lines(store, noise, texts, 5, budget=16 * 512, block=1024).batches()
        drawn = [next(source)["line"] for _ in range(count)]
    else:
        strips = Strips(store, noise, texts, 5)
        drawn = [strips.batch(2, 384, 512, 1 + k % 2)["strip"] for k in range(count)]
    model = onnx.load(path)
    plan = Plan(model.graph, dict(net.named_modules()), kind == "reader")
    rewrite(model, plan, ranges(net, plan, drawn))
    onnx.save(model, out)
    print(len(plan.whole), "convolutions in whole numbers, ranges from", sum(len(x) for x in drawn), "drawn pictures; written to", out)


if __name__ == "__main__":
    main(*sys.argv[1:5], *(int(a) for a in sys.argv[5:6]))
