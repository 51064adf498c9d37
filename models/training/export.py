"""Writes the networks as ONNX: python3 export.py reader|detector WEIGHTS.pt OUT.onnx [--half]

Weights are what train_*.py left (`*_ema16.pt`). A self-contained graph, opset 17, batch and width free. The reader's
outputs: log_probs, orientation, style, lettering, edges. The detector's: maps.
"""
import sys

import torch

from networks import Detector, Reader


class Maps(torch.nn.Module):
    def __init__(self, net):
        super().__init__()
        self.net = net

    def forward(self, strip):
        return self.net(strip)[0]


def load(kind, weights):
    net = (Reader() if kind == "reader" else Detector()).eval()
    if weights != "-":
        sd = torch.load(weights, map_location="cpu")
        sd = sd.get("ema", sd)
        net.load_state_dict({k: v.float() if v.dtype.is_floating_point else v for k, v in sd.items()})
    return net


def export(kind, weights, path):
    net = load(kind, weights)
    extra = {}
    if int(torch.__version__.split(".")[0]) >= 2:
        extra = dict(dynamo=False)
    if kind == "reader":
        torch.onnx.export(net, torch.zeros(2, 1, 64, 256), path, opset_version=17, input_names=["line"],
                          output_names=["log_probs", "orientation", "style", "lettering", "edges"],
                          dynamic_axes={"line": {0: "n", 3: "w"}, "log_probs": {0: "n", 1: "t"}, "orientation": {0: "n"},
                                        "style": {0: "n"}, "lettering": {0: "n"}, "edges": {0: "n", 1: "t"}}, **extra)
    else:
        torch.onnx.export(Maps(net), torch.zeros(1, 1, 256, 512), path, opset_version=17, input_names=["strip"],
                          output_names=["maps"], dynamic_axes={"strip": {2: "h", 3: "w"}, "maps": {2: "h4", 3: "w4"}}, **extra)


if __name__ == "__main__":
    export(*sys.argv[1:4])
