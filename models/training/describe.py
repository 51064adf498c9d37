"""Writes ../models.json: what the files are, how to feed them and what was measured.

python3 describe.py MEASURED.json   (MEASURED.json: {"reader": {...}, "detector": {...}, "tubes": {...}}, as evaluate.py and the others left it)
"""
import datetime
import hashlib
import json
import os
import sys

from alphabet import CLASSES, ORIENTATIONS, STYLES
from networks import MAPS

HERE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
NORMALISE = {"formula": "(grey / 255 - 0.5) / 0.5", "grey": "8-bit luma of the photo as it is: no inversion, no contrast stretch"}


def file_facts(name):
    data = open(os.path.join(HERE, name), "rb").read()
    return {"file": name, "sha256": hashlib.sha256(data).hexdigest(), "bytes": len(data), "licence": "Apache-2.0"}


def made_on(name, before):
    """Today, or the day that is on record where the file is still the same."""
    old = before.get(name.split(".")[0], {})
    return old["made_on"] if old.get("sha256") == file_facts(name)["sha256"] else datetime.date.today().isoformat()


def main(measured):
    with open(os.path.join(HERE, "models.json"), encoding="utf-8") as f:
        before = json.load(f)["models"]
    m = json.load(open(measured)) if measured else {n: before[n].get("measured", {}) for n in ("reader", "detector")}
    reader = {
        **file_facts("reader.onnx"), "task": "reads one engraved line", "made_by": "models/training/train_reader.py, quantise.py",
        "made_on": made_on("reader.onnx", before), "opset": 17,
        "input": {"name": "line", "type": "float32", "shape": ["n", 1, 64, "w"],
                  "width": "multiple of 4; a batch holds lines of one width, or lines padded on the right with their last column",
                  "normalise": NORMALISE,
                  "crop": {"ink_share_of_height": 0.76, "margin_left_right_of_height": 0.5,
                           "note": "ink top to ink bottom of the line fills the middle 0.76 of the height"}},
        "outputs": {
            "log_probs": {"shape": ["n", "w/4", len(CLASSES)], "meaning": "log-softmax over classes, one frame each 4 px; frame t is centred on x = 4 t + 1.5"},
            "orientation": {"shape": ["n", 4], "meaning": "logits", "classes": ORIENTATIONS},
            "style": {"shape": ["n", 6], "meaning": "logits", "classes": STYLES},
            "lettering": {"shape": ["n", 1], "meaning": "logit: positive = lettering, negative = bare metal or other matter"},
            "edges": {"shape": ["n", "w/4", 2], "meaning": "input px from the frame's centre to the left and to the right edge of the letter at this frame; "
                      "valid at the frames where a letter is the likeliest class"}},
        "blank_index": 0, "space_index": 1, "classes": CLASSES,
        "raised_letters": "classes of raised letters are Unicode modifier letters: ᵃᶜᵈᵉʰⁱˡᵐⁿᵒʳˢᵗᵛʸ",
        "temperature": m["reader"].pop("temperature", 1.0),
        "temperature_use": "divide log_probs by it and renormalise each frame before any probability is quoted",
        "measured": m["reader"]}
    detector = {
        **file_facts("detector.onnx"), "task": "finds engraved lines", "made_by": "models/training/train_detector.py, quantise.py",
        "made_on": made_on("detector.onnx", before), "opset": 17,
        "input": {"name": "strip", "type": "float32", "shape": [1, 1, "h", "w"], "multiple_of": 32, "normalise": NORMALISE,
                  "padding": "pad right and bottom with the picture's mean grey; repeated edge pixels look like engraved rules",
                  "x_height_px": [10, 60]},
        "outputs": {"maps": {"shape": [1, len(MAPS), "h/4", "w/4"], "cell_centre": "x = 4 i + 1.5, y = 4 j + 1.5", "channels": [
            {"index": 0, "name": "core", "meaning": "probability that the cell lies in the middle half of a line's ink height, between its start and end"},
            {"index": 1, "name": "ink", "meaning": "probability that the cell lies between ink top and ink bottom of a line"},
            {"index": 2, "name": "dir_cos", "meaning": "x of the unit reading direction; sure to about 180 degrees only: let the reader's orientation settle the sense"},
            {"index": 3, "name": "dir_sin", "meaning": "y (down) of the unit reading direction"},
            {"index": 4, "name": "top", "meaning": "input px from the cell to the line's ink top, across the reading direction"},
            {"index": 5, "name": "bottom", "meaning": "input px from the cell to the line's ink bottom"},
            {"index": 6, "name": "start", "meaning": "input px from the cell to the line's start, along the reading direction; coarse"},
            {"index": 7, "name": "end", "meaning": "input px from the cell to the line's end; coarse"}],
            "note": "channels 2 to 7 mean something only where core or ink is high"}},
        "threshold": 0.5, "measured": m["detector"]}
    tubes = {**before["tubes"], **file_facts("tubes.onnx"), "made_on": made_on("tubes.onnx", before), "measured": m.get("tubes", before["tubes"].get("measured", {}))}
    with open(os.path.join(HERE, "models.json"), "w", encoding="utf-8") as f:
        json.dump({"models": {"reader": reader, "detector": detector, "tubes": tubes}}, f, ensure_ascii=False, indent=1)
        f.write("\n")


if __name__ == "__main__":
    main(sys.argv[1] if len(sys.argv) > 1 else None)
