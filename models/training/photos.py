"""Photos of lettered tubes with exact truth, cast ray by ray, for figures on faces that no network was trained on.

python3 photos.py FONTS OUT FIRST_SEED COUNT [ROLE]
Another way of drawing than engrave.py's, on purpose: letters laid out by the text library, a groove as a height map on a
ray-cast cylinder (tube_scenes.py) that mirrors lamps, table and sky, seen by a camera in perspective. Faces: those that
fonts.tsv keeps for ROLE, by default `report`. Writes OUT/photo_*.jpg and OUT/truth/photo_*.json; in the truth pixel
centres lie at +0.5, a letter's quad is the box of its ink, lengths are in px.
"""
import json
import math
import os
import random
import sys

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

import glyphs
import words
from tube_scenes import METALS, Light, chain, cast, clutter, noise, shadow, table_texture, unit

FINE = 2          # rays a pixel, each way
EM = 220          # texels an em
GAP = 1.0         # em between ink and the texture's edge


def ramp(x):
    x = np.clip(x, 0, 1)
    return x * x * (3 - 2 * x)


def letters_of(font, text):
    """Left edge of each glyph's origin and its ink box, in texels from the line's origin on the baseline."""
    out = []
    for i, c in enumerate(text):
        if c == " ":
            continue
        x = font.getlength(text[:i + 1]) - font.getlength(c)
        b = font.getbbox(c, anchor="ls")
        out.append((i, c, x + b[0], b[1], x + b[2], b[3]))
    return out


def sheet(rng, font, lines):
    """The lines as one mask (1 inside a stroke), and the letters with their boxes in texels."""
    widths = [font.getlength(t) for t in lines]
    leading = EM * rng.uniform(1.05, 1.6)
    w, h = int(max(widths) + 2 * GAP * EM), int(leading * (len(lines) - 1) + (1.6 + 2 * GAP) * EM)
    mask = Image.new("L", (w, h), 0)
    pen = ImageDraw.Draw(mask)
    found = []
    for k, t in enumerate(lines):
        x = (w - widths[k]) / 2
        y = GAP * EM + 1.1 * EM + k * leading
        pen.text((x, y), t, font=font, fill=255, anchor="ls")
        found += [(k, i, c, x + l, y + a, x + r, y + b) for i, c, l, a, r, b in letters_of(font, t)]
    return np.asarray(mask, np.float32) / 255, found


def texts(r, rng, covered):
    """One to three invented lines that the face can show."""
    out = []
    for _ in range(rng.choice([1, 2, 3], p=[0.5, 0.35, 0.15])):
        for _ in range(400):
            t = words.line(r)
            if 4 <= len(t) <= 22 and all(c == " " or c in covered for c in t) and sum(c.isalpha() for c in t) >= 0.7 * len(t.replace(" ", "")):
                out.append(t)
                break
    return out


class Cut:
    """A cut inscription as textures: height slopes, depth, what fills it."""

    def __init__(self, rng, mask, texels):
        """texels: texels a photo pixel."""
        h, w = mask.shape
        weight = cv2.distanceTransform((mask > 0.5).astype(np.uint8), cv2.DIST_L2, 5)
        weight = cv2.GaussianBlur(weight, (0, 0), 1.2)
        stroke = np.percentile(weight[mask > 0.5], 85)
        grow = rng.uniform(-0.15, 0.35) * stroke
        outside = cv2.distanceTransform((mask <= 0.5).astype(np.uint8), cv2.DIST_L2, 5)
        signed = np.where(mask > 0.5, weight, -outside) + grow + 0.25 * stroke * rng.uniform(0, 1) * noise(rng, h, w, 25, 25)
        deep = max(2.0, stroke * rng.uniform(0.6, 1.3))
        v = np.clip(signed, 0, deep)
        depth = v if rng.random() < 0.6 else deep * np.sqrt(np.clip(1 - (1 - v / deep) ** 2, 0, 1))
        worn = ramp((noise(rng, h, w, w / 4, h / 3, 2) + rng.uniform(-2.6, -0.6)) * 1.2 + 0.5) * rng.uniform(0.2, 0.9)
        depth = depth * (1 - worn)
        lip = rng.uniform(0, 0.35) * deep * np.exp(-((signed + 0.12 * stroke) / (0.15 * stroke + 1)) ** 2) * (rng.random() < 0.5)
        height = cv2.GaussianBlur((lip - depth).astype(np.float32), (0, 0), max(1.0, 0.4 * texels))
        steep = rng.uniform(0.5, 1.3)
        self.gx, self.gy = cv2.Sobel(height, cv2.CV_32F, 1, 0, scale=steep / 8), cv2.Sobel(height, cv2.CV_32F, 0, 1, scale=steep / 8)
        inside = ramp(signed / max(1.0, 0.5 * texels) + 0.5).astype(np.float32)
        self.fill = rng.choice(["none", "wax", "grime", "white", "bright"], p=[0.38, 0.25, 0.2, 0.07, 0.1])
        lost = ramp((noise(rng, h, w, 30, 30, 2) - rng.uniform(0.7, 2.5)) * 3)
        held = {"none": 0, "wax": rng.uniform(0.8, 1), "grime": rng.uniform(0.4, 0.9), "white": rng.uniform(0.8, 1), "bright": rng.uniform(0.6, 1)}[self.fill]
        self.held = cv2.GaussianBlur((inside * held * (1 - lost) * (1 - worn)).astype(np.float32), (0, 0), max(0.8, 0.4 * texels))
        self.shade = 1 - rng.uniform(0.1, 0.6) * cv2.GaussianBlur((depth / deep).astype(np.float32), (0, 0), max(0.8, 0.4 * texels))


def wall(rng, rays, axis, direction, piece, light, scene, cut, place):
    """Draws the lettered wall over what cast() left of it: the same cylinder with the groove's slopes on its normal."""
    along = rays @ direction
    square = rays - along[..., None] * direction
    a = (square * square).sum(-1)
    foot = axis - (axis @ direction) * direction
    b, c0 = square @ foot, foot @ foot
    side, ahead = unit(np.cross(direction, -foot)), unit(-foot)
    disc = b * b - a * (c0 - 1)
    t = (b - np.sqrt(np.maximum(disc, 0))) / a
    axial = along * t - axis @ direction
    hit = (disc > 0) & (axial >= piece[0]) & (axial <= piece[1]) & (t > 0.05) & (np.abs(t - scene["depth"]) < 1e-3)
    p = rays[hit] * t[hit][:, None]
    n = p - axial[hit][:, None] * direction - axis
    n /= np.linalg.norm(n, axis=1, keepdims=True)
    around = np.arctan2(n @ side, n @ ahead)
    x, y = place["to_texture"](axial[hit], around)
    cols = []
    for at in range(0, len(x), 30000):
        s = slice(at, at + 30000)
        l = lambda m, fill: cv2.remap(m, x[s].astype(np.float32).reshape(1, -1), y[s].astype(np.float32).reshape(1, -1), cv2.INTER_LINEAR,
                                      borderMode=cv2.BORDER_CONSTANT, borderValue=fill)[0]
        cols.append(np.stack([l(cut.gx, 0), l(cut.gy, 0), l(cut.held, 0), l(cut.shade, 1)]))
    gx, gy, held, dim = np.concatenate(cols, 1)
    level = held if cut.fill in ("wax", "white") else 0 * held
    tangent = np.cross(direction, n)
    tangent *= np.sign((tangent @ side))[:, None] * np.where(np.abs(around) > math.pi / 2, -1, 1)[:, None]
    gu, gv = place["slopes"](gx, gy)
    rough = scene["rough"]
    m = n - (gu * (1 - level))[:, None] * direction - (gv * (1 - level))[:, None] * tangent + rough * rng.standard_normal(n.shape)
    m /= np.linalg.norm(m, axis=1, keepdims=True)
    v = rays[hit] / np.linalg.norm(rays[hit], axis=1, keepdims=True)
    colour = np.array(METALS[scene["metal"]]) * scene["tint"]
    mirror = light.mirror(v - 2 * (v * m).sum(1)[:, None] * m, scene["sharpness"])
    facing = np.clip(-(m * v).sum(1), 0, 1)[:, None]
    fresnel = colour + (1 - colour) * (1 - facing) ** 5 * 0.7
    # tarnish and dirt lie in patches; scratches and brushing run along and round the tube
    fold = lambda q: (1023 - np.abs(np.mod(q, 2046) - 1023)).astype(int)          # there and back: no seam
    spots = scene["spots"][fold(around * 200 + 512), fold(axial[hit] * 200 + 300)][:, None]
    matte = np.clip(spots * scene["tarnish"], 0, 1)
    shine = fresnel * mirror * dim[:, None]
    dull = (colour * scene["dark"]) * light.diffuse(m)
    shade = shine * (1 - matte) + dull * matte
    into = {"none": shade, "wax": 0.03 * (0.4 + light.diffuse(m)), "grime": 0.25 * shade * dim[:, None], "white": 0.75 * light.diffuse(m),
            "bright": 1.2 * fresnel * mirror + 0.1}[cut.fill]
    shade = shade * (1 - held[:, None]) + into * held[:, None]
    scene["colour"][hit] = shade
    return hit


def photo(seed, rows, fonts):
    rng, r = np.random.default_rng([7, seed]), random.Random(seed * 7919 + 3)
    row = rows[seed % len(rows)]
    path = glyphs._paths(fonts, row)[0]
    font = ImageFont.truetype(path, EM, layout_engine=ImageFont.Layout.BASIC)
    blank = bytes(font.getmask("\uffff", mode="L"))
    covered = {c for c in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&.,'-àéèüöäçß" if glyphs._covered(font, c, blank)}
    lines = texts(r, rng, covered)
    caps = any(k in path for k in glyphs.SMALL_CAPS)
    mask, letters = sheet(rng, font, lines)
    if caps and not any(c.isupper() for t in lines for c in t):
        lines = [t.upper() for t in lines]
        mask, letters = sheet(rng, font, lines)
    x_box = font.getbbox("x" if any(c.islower() for t in lines for c in t) else "H", anchor="ls")
    x_em = -x_box[1] / EM
    w, h = [(1280, 800), (1440, 900), (1600, 1000), (1200, 900)][seed % 4]
    ink_w = (mask.shape[1] - 2 * GAP * EM) / EM
    around = rng.random() < 0.15
    x_px = math.exp(rng.uniform(math.log(13), math.log(60)))
    radius_px = min(w, h) * rng.uniform(0.14, 0.42)
    room = radius_px * 1.5 if around else 0.62 * w
    x_px = min(x_px, room / ink_w * x_em)
    high = (mask.shape[0] - 2 * GAP * EM) / EM * x_px / x_em
    radius_px = max(radius_px, high / (8 if around else 1.5))
    radius_px = min(radius_px, 0.46 * (w if around else h))
    focal = w * math.exp(rng.uniform(math.log(0.9), math.log(3)))
    distance = focal / radius_px + 1
    turn = rng.normal(0, 0.09) + (math.pi / 2 if around else 0)
    direction = unit(np.array([math.cos(turn), math.sin(turn), math.tan(np.clip(rng.normal(0, 0.15), -0.4, 0.4))]))
    offset = rng.normal(0, 0.03, 2) * np.array([w, h])
    axis = np.array([offset[0] / focal, offset[1] / focal, 1.0]) * distance
    H, W = h * FINE, w * FINE
    gx, gy = np.meshgrid((np.arange(W, dtype=np.float32) + 0.5) / FINE, (np.arange(H, dtype=np.float32) + 0.5) / FINE)
    rays = np.stack([(gx - w / 2) / focal, (gy - h / 2) / focal, np.ones((H, W), np.float32)], -1).astype(np.float32)
    half = 0.5 * max(w, h) / focal * distance
    pieces = chain(rng, half)
    metal = pieces[0][4]
    if metal in ("black", "grey") and rng.random() < 0.5:
        metal = "brass"
    need = (ink_w * x_px / x_em) / radius_px / 2 + 0.25 if not around else high / radius_px / 2 + 0.25
    first = (min(pieces[0][0], -need), max(pieces[0][1], need), 1.0, 1.0, metal, 1)
    move = lambda q: (q[0] + first[1] - pieces[0][1], q[1] + first[1] - pieces[0][1]) if q[0] >= pieces[0][1] - 1e-6 else (q[0] + first[0] - pieces[0][0], q[1] + first[0] - pieces[0][0])
    pieces = [first] + [(*move(q), *q[2:]) for q in pieces[1:]]
    up = unit(-axis - (-axis @ direction) * direction)
    roll = rng.normal(0, 0.45)
    up = up * math.cos(roll) + np.cross(direction, up) * math.sin(roll)
    floor = axis - up * max(max(q[2], q[3]) for q in pieces)
    light = Light(rng, up, np.clip(rng.uniform(0.03, 0.5) * (1 + 0.2 * rng.standard_normal(3)), 0.01, 0.9))
    t = (floor @ up) / np.minimum(rays @ up, -1e-3)
    points = rays * t[..., None]
    e1 = unit(np.cross(up, np.array([0.3, 0.9, 0.1])))
    ground = table_texture(rng, points @ e1, points @ np.cross(up, e1), H, W)
    lit = np.ones((H, W, 3), np.float32) * light.sky
    for d, power, _, lamp in light.lamps:
        lit = lit + (np.clip(d @ up, 0, 1) * power * 0.7 * shadow(rng, points, axis, direction, pieces, d))[..., None] * lamp
    scene = {"depth": np.minimum(t, 1e4).astype(np.float32), "colour": (ground * lit).astype(np.float32), "kinds": np.zeros((H, W), np.uint8),
             "outline": np.zeros((H, W), np.float32), "focal": focal * FINE, "walls": [], "grain": rng.uniform(20, 60), "gloss": rng.uniform(0, 0.4),
             "bore": rng.uniform(0.5, 0.97), "unlettered": True, "metal": metal, "tint": np.clip(1 + 0.1 * rng.standard_normal(3), 0.7, 1.2),
             "sharpness": np.exp(rng.uniform(1.8, 4.6)), "rough": np.exp(rng.uniform(math.log(0.003), math.log(0.04))),
             "spots": ramp((noise(rng, 1024, 1024, rng.uniform(20, 200), rng.uniform(20, 200), 3) + rng.uniform(-1.2, 0.8)) * rng.uniform(0.7, 3) + 0.5),
             "tarnish": rng.uniform(0, 0.85), "dark": rng.uniform(0.1, 0.6)}
    scene["depth"][scene["depth"] <= 0] = 1e4
    if rng.random() < 0.5:
        clutter(rng, scene["colour"], scene["kinds"], scene["outline"], False)
    cast(rng, rays, axis, direction, pieces, light, (W, H), scene)
    # texture <-> tube: texels an em, ems a radius
    scale = EM * x_em / x_px * radius_px          # texels a radius
    th, tw = mask.shape
    phi = rng.normal(0, 0.22)
    slip = rng.normal(0, 0.1)
    # letters stand upright in the picture: round the tube they run across the axis
    down = 1.0 if direction[1] >= 0 else -1.0
    if around:
        to_texture = lambda ax, ar: ((-(ar - phi) * down * scale) + tw / 2, (ax - slip) * down * scale + th / 2)
        slopes = lambda sx, sy: (sy * down, -sx * down)
        back = lambda x, y: ((y - th / 2) / scale * down + slip, -(x - tw / 2) / scale * down + phi)
    else:
        to_texture = lambda ax, ar: ((ax - slip) * scale + tw / 2, (ar - phi) * scale + th / 2)
        slopes = lambda sx, sy: (sx, sy)
        back = lambda x, y: ((x - tw / 2) / scale + slip, (y - th / 2) / scale + phi)
    cut = Cut(rng, mask, scale / radius_px)
    place = {"to_texture": to_texture, "slopes": slopes}
    wall(rng, rays, axis, direction, first, light, scene, cut, place)
    picture = develop(rng, scene["colour"], h, w)
    foot = axis - (axis @ direction) * direction
    side, ahead = unit(np.cross(direction, -foot)), unit(-foot)
    project = lambda p: (p[..., :2] / p[..., 2:]) * focal + np.array([w / 2, h / 2])

    def at(x, y):
        ax, ar = back(np.asarray(x, float), np.asarray(y, float))
        return axis + ax[..., None] * direction + np.cos(ar)[..., None] * ahead + np.sin(ar)[..., None] * side, ar

    out = []
    for k, i, c, l, a, rt, bt in letters:
        p, ar = at([l, rt, rt, l], [a, a, bt, bt])
        q = project(p)
        n = (np.cos(ar)[:, None] * ahead + np.sin(ar)[:, None] * side)
        facing = float((-(p / np.linalg.norm(p, axis=1, keepdims=True)) * n).sum(1).mean())
        inside = bool((q > 3).all() and (q < np.array([w - 3, h - 3])).all())
        out.append(dict(char=c, line=k, index=i, quad_px=np.round(q, 2).tolist(), facing_cos=round(facing, 3), in_frame=inside, visible=inside and facing > 0.2))
    far = np.linalg.norm(foot)
    s = 1 / far
    edges = []
    for sign in (-1, 1):
        touch = (math.sqrt(1 - s * s) * unit(foot) + sign * s * side) * math.sqrt(far * far - 1)
        mid = axis @ direction
        edges.append(project(np.stack([touch + (mid - 0.8 * half) * direction, touch + (mid + 0.8 * half) * direction])))
    line = project(np.stack([axis - 0.8 * half * direction, axis + 0.8 * half * direction]))
    d2 = unit(line[1] - line[0])
    centre = project((axis + slip * direction)[None])[0]
    cross = np.array([-d2[1], d2[0]])

    def meets(e):
        g = e[1] - e[0]
        k = np.linalg.solve(np.stack([cross, -g], 1), e[0] - centre)
        return k[0]
    diameter = abs(meets(edges[0]) - meets(edges[1]))
    angle = math.degrees(math.atan2(d2[1], d2[0]))
    truth = dict(kind="tube", image_size=[w, h], lines=lines, line_roles=["other"] * len(lines), style=row["style"], font=os.path.basename(path),
                 x_height_px=round(x_px, 2), all_capitals=not any(c.islower() for t in lines for c in t), groove_fill=str(cut.fill), finish=str(metal),
                 text_direction="around" if around else "along", upside_down=False, mirrored=False, tube_diameter_px=round(float(diameter), 2),
                 axis_angle_deg=round(angle, 3), axis_px=np.round(line, 2).tolist(), silhouettes_px=[np.round(e, 2).tolist() for e in edges], letters=out)
    return picture, truth


def develop(rng, colour, h, w):
    """Optics, exposure, noise, tone, compression: a phone held with some care."""
    colour = cv2.GaussianBlur(colour, (0, 0), FINE * (rng.uniform(0.3, 0.7) + (rng.uniform(0, 0.9) if rng.random() < 0.25 else 0)))
    if rng.random() < 0.12:
        k = int(rng.integers(2, 5)) * FINE // 2
        kernel = np.zeros((2 * k + 1, 2 * k + 1), np.float32)
        a = rng.uniform(0, math.pi)
        cv2.line(kernel, (int(k - k * math.cos(a)), int(k - k * math.sin(a))), (int(k + k * math.cos(a)), int(k + k * math.sin(a))), 1.0, 1)
        colour = cv2.filter2D(colour, -1, kernel / kernel.sum())
    colour = cv2.resize(colour, (w, h), interpolation=cv2.INTER_AREA)
    level = np.percentile(colour.mean(-1), rng.uniform(80, 97))
    colour = colour * (rng.uniform(0.45, 1.1) / max(level, 1e-3)) * np.clip(1 + 0.06 * rng.standard_normal(3), 0.8, 1.2)
    colour = colour + np.sqrt(np.clip(colour, 0, 2) * 0.6 + 0.02).astype(np.float32) * rng.standard_normal(colour.shape).astype(np.float32) * np.exp(rng.uniform(math.log(0.004), math.log(0.035)))
    coded = np.clip(colour, 0, 1) ** (1 / 2.2)
    if rng.random() < 0.4:
        soft = cv2.GaussianBlur(coded, (0, 0), 1.2)
        coded = coded + (coded - soft) * rng.uniform(0.1, 0.8)
    picture = np.clip(coded[..., ::-1] * 255 + 0.5, 0, 255).astype(np.uint8)
    return cv2.imencode(".jpg", picture, [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(60, 95))])[1]


def main():
    fonts, out, first, count = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
    role = sys.argv[5] if len(sys.argv) > 5 else "report"
    rows = [r for r in glyphs.faces() if r["role"] == role]
    os.makedirs(os.path.join(out, "truth"), exist_ok=True)
    for seed in range(first, first + count):
        jpeg, truth = photo(seed, rows, fonts)
        name = f"photo_{seed:04d}"
        with open(os.path.join(out, name + ".jpg"), "wb") as f:
            f.write(jpeg.tobytes())
        truth = dict(file=name + ".jpg", **truth)
        with open(os.path.join(out, "truth", name + ".json"), "w", encoding="utf-8") as f:
            json.dump(truth, f, ensure_ascii=False)
        print(name, truth["font"], truth["lines"], round(truth["x_height_px"]), truth["groove_fill"], flush=True)


if __name__ == "__main__":
    main()
