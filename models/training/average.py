"""Averages the weights of two runs of one lineage: python3 average.py A_ema16.pt B_ema16.pt SHARE_OF_B OUT.pt"""
import sys

import torch

a, b = torch.load(sys.argv[1], map_location="cpu"), torch.load(sys.argv[2], map_location="cpu")
s = float(sys.argv[3])
torch.save({k: (a[k].float() * (1 - s) + b[k].float() * s).half() if a[k].dtype.is_floating_point else b[k] for k in a}, sys.argv[4])
