"""Draws a set of tube scenes: python3 draw_tubes.py FIRST_SEED COUNT WIDTH HEIGHT OUT.npz"""
import sys

import numpy as np

from tube_scenes import draw

first, count, width, height = (int(v) for v in sys.argv[1:5])
scenes = [draw(first + i, width, height) for i in range(count)]
np.savez(sys.argv[5], picture=np.stack([s[0] for s in scenes]), kinds=np.stack([s[1] for s in scenes]),
         outline=np.stack([(s[2] * 255).astype(np.uint8) for s in scenes]))
