"""Small pictures of telescope tubes with exact maps of what is what, for the tube network.

One scene: a coaxial chain of cylinders and slight cones (draws, collars, knurled rings, barrels of brass, wood or
leather) on a table, cast ray by ray, in random light with soft cast shadows, tarnish, lettering, depth of field, objects
lying about and fingers over the tube; or no tube at all, but flat bars, rings and clutter that only look like one.

draw(seed, width, height) gives
  picture  height x width x 3, uint8, BGR
  kinds    height x width, uint8: 0 anything else, 1 wall of a plain metal tube, 2 collar, barrel or end face
  outline  height x width, float32: 1 on the outlines of plain metal walls, falling to 0 within about 3 px
"""
import math

import cv2
import numpy as np

OTHER, WALL, PART = 0, 1, 2
METALS = {"brass": (0.88, 0.66, 0.30), "gilt": (0.95, 0.72, 0.22), "silver": (0.80, 0.80, 0.76), "nickel": (0.70, 0.69, 0.66),
          "black": (0.16, 0.13, 0.11), "bronze": (0.42, 0.30, 0.20), "copper": (0.75, 0.42, 0.30), "grey": (0.42, 0.40, 0.36)}


def unit(v):
    return v / np.linalg.norm(v)


def noise(rng, h, w, sx, sy, octaves=1):
    """Smooth noise, about -1 to 1, with grains of sx by sy pixels."""
    total = np.zeros((h, w), np.float32)
    for o in range(octaves):
        k = 2.0 ** o
        gh, gw = max(2, int(h * k / sy) + 2), max(2, int(w * k / sx) + 2)
        grid = rng.standard_normal((min(gh, h + 2), min(gw, w + 2))).astype(np.float32)
        total += cv2.resize(grid, (w, h), interpolation=cv2.INTER_CUBIC) / (1.6 ** o)
    return total / 1.5


class Light:
    """A few soft lamps over the table, and what the sky and the table throw back."""

    def __init__(self, rng, up, table):
        self.up, self.table = up, table
        self.sky = np.exp(rng.uniform(-3.5, -0.7)) * (1 + 0.12 * rng.standard_normal(3))
        self.lamps = []
        for _ in range(rng.integers(1, 5)):
            d = unit(up * rng.uniform(0.15, 1.2) + rng.standard_normal(3) * 0.7)
            if d @ up < 0.08:
                d = unit(d + up * (0.15 - d @ up))
            self.lamps.append((d, rng.uniform(0.4, 2.0), np.exp(rng.uniform(0.7, 4.5)), 1 + 0.08 * rng.standard_normal(3)))
        self.rough = rng.uniform(0.05, 1.0)

    def mirror(self, r, sharpness):
        """Light met along directions r by a surface that blurs it."""
        s = r @ self.up
        below = 1 / (1 + np.exp(s * 8))
        out = self.sky * (0.55 + 0.45 * np.clip(s, -1, 1))[..., None] * (1 - below[..., None]) + below[..., None] * self.table * 0.45
        for d, power, sharp, colour in self.lamps:
            k = 1 / (1 / sharp + 1 / sharpness)
            out = out + (power * np.exp((r @ d - 1) * k))[..., None] * colour
        return out

    def diffuse(self, n):
        out = self.sky * (0.6 + 0.4 * (n @ self.up))[..., None]
        for d, power, _, colour in self.lamps:
            out = out + (0.7 * power * np.clip(n @ d, 0, 1))[..., None] * colour
        return out


def table_texture(rng, u, v, h, w):
    """Reflectance of the table at table coordinates u, v (radii)."""
    kind = rng.choice(["cloth", "velvet", "wood", "paper", "marble", "stripes", "dark"])
    base = np.clip(np.exp(rng.uniform(-3.2, -0.2)) * (1 + 0.35 * rng.standard_normal(3) * rng.uniform(0, 1)), 0.01, 0.95)
    if rng.random() < 0.3:
        base = np.array([rng.uniform(0.05, 0.5), rng.uniform(0.03, 0.15), rng.uniform(0.03, 0.2)])[rng.choice([(0, 1, 2), (2, 1, 0), (1, 0, 2)])]
    t = np.zeros((h, w), np.float32)
    if kind == "wood" or rng.random() < 0.1:
        base = np.array([0.55, 0.36, 0.2]) * rng.uniform(0.15, 1.5)
        a = rng.uniform(0, math.pi)
        p, q = u * math.cos(a) + v * math.sin(a), v * math.cos(a) - u * math.sin(a)
        bend = noise(rng, h, w, w / 2, h / 2) * rng.uniform(0, 1.0)
        f = rng.uniform(1, 12)
        t = 0.25 * np.sin(q * f + bend * f * 0.6) + 0.15 * np.sin(q * f * 2.7 + bend * f + p * 0.3)
        if rng.random() < 0.3:
            t = t - 0.6 * (np.abs(((q * f / 9) % 1) - 0.5) < 0.02)
    elif kind in ("cloth", "velvet"):
        f = rng.uniform(8, 60)
        t = 0.15 * rng.uniform(0, 1) * (np.sin(u * f) * np.sin(v * f)) + 0.12 * noise(rng, h, w, 3, 3)
        if rng.random() < 0.3:
            t = t + 0.35 * noise(rng, h, w, w / 3, h / 3)
    elif kind == "marble":
        t = 0.4 * noise(rng, h, w, w / 4, h / 4, 3)
    elif kind == "stripes":
        a = rng.uniform(0, math.pi)
        t = rng.uniform(0.1, 0.6) * np.sign(np.sin((u * math.cos(a) + v * math.sin(a)) * rng.uniform(0.6, 6)))
    else:
        t = 0.06 * noise(rng, h, w, 4, 4)
    return np.clip(base * (1 + t[..., None]), 0, 1.2)


def chain(rng, half):
    """The pieces of one telescope: from, to, radius at either end, stuff, kind; in radii of the main draw."""
    metal = rng.choice(list(METALS))
    start = -half * rng.uniform(0.1, 0.75) if rng.random() < 0.6 else -60.0
    end = half * rng.uniform(0.1, 0.75) if rng.random() < 0.6 else 60.0
    if end - start < 1.2:
        end = start + rng.uniform(1.2, 4)
    taper = rng.uniform(-0.004, 0.004) if rng.random() < 0.25 else 0.0
    far = lambda x: min(max(x, -40.0), 40.0)
    pieces = [(start, end, 1 + taper * far(start), 1 + taper * far(end), metal, WALL)]
    for side in (-1, 1):
        at = start if side < 0 else end
        if abs(at) > 50:
            continue
        radius, depth = 1.0, 0
        while abs(at) < 1.6 * half + 2 and depth < 3:
            depth += 1
            grows = rng.random() < 0.75
            following = radius * (rng.uniform(1.06, 1.7) if grows else rng.uniform(0.7, 0.94))
            for _ in range(rng.integers(0, 4) if rng.random() < 0.85 else 0):
                wide = max(radius, following if grows else radius) * rng.uniform(1.0, 1.14)
                length = rng.uniform(0.06, 0.6)
                stuff = metal if rng.random() < 0.7 else rng.choice(list(METALS))
                stuff = "knurled " + stuff if rng.random() < 0.25 else stuff
                pieces.append((*sorted((at, at + side * length)), wide, wide, stuff, PART))
                at += side * length
            if rng.random() < 0.25:
                break
            length = rng.uniform(2, 9) if rng.random() < 0.6 else 60.0
            if depth == 1 and grows and rng.random() < 0.65:
                stuff, kind = rng.choice(["leather", "wood", "wood", "leather", "cord"]), PART
            else:
                stuff, kind = (metal if rng.random() < 0.7 else rng.choice(list(METALS))), WALL
            pieces.append((*sorted((at, at + side * length)), following, following, stuff, kind))
            at, radius = at + side * length, following
    return pieces


def wall_texture(rng, stuff, unlettered=False):
    """Relative reflectance over (axial, angle), 256 x 256, and its mean colour; metals carry tarnish, scratches and sometimes lettering."""
    t = np.ones((256, 256, 3), np.float32)
    name = stuff.replace("knurled ", "")
    if name in METALS:
        colour = np.array(METALS[name]) * np.clip(1 + 0.12 * rng.standard_normal(3), 0.6, 1.4)
        spots = noise(rng, 256, 256, rng.uniform(8, 90), rng.uniform(8, 90), 3)
        mask = 1 / (1 + np.exp(-(spots - rng.uniform(0.0, 2.0)) * rng.uniform(2, 14)))
        other = np.array(METALS[rng.choice(list(METALS))]) * rng.uniform(0.2, 1) / colour
        t = t * (1 - mask[..., None]) + mask[..., None] * np.clip(other, 0, 2.2) * rng.uniform(0.3, 1)
        t *= 1 + 0.07 * noise(rng, 256, 256, 100, 1.5)[..., None] * rng.uniform(0, 1)
        for _ in range(rng.integers(0, 4)):
            a, b = rng.integers(0, 256, 2), rng.integers(-60, 60, 2)
            cv2.line(t, tuple(int(x) for x in a), tuple(int(x) for x in a + b), tuple(float(x) for x in rng.uniform(0.5, 1.7) * np.ones(3)), 1, cv2.LINE_AA)
        if stuff == name and not unlettered and rng.random() < 0.75:
            ink = rng.uniform(0.05, 0.6) if rng.random() < 0.7 else rng.uniform(1.5, 4)
            size, y = rng.uniform(0.25, 0.9), rng.integers(90, 150)
            for _ in range(rng.integers(1, 4)):
                text = "".join(rng.choice(list("ABCDEFGHKLMNOPRSTUabcdefghiklmnoprstu  .&"), rng.integers(4, 14)))
                cut = np.zeros((256, 256), np.uint8)
                cv2.putText(cut, text, (int(rng.integers(60, 110)), int(y)), int(rng.integers(0, 7)), size, 255, 1, cv2.LINE_AA)
                t += (ink - t) * (cut[..., None] / np.float32(255))
                y += int(40 * size)
    elif name == "leather":
        colour = np.array([0.09, 0.06, 0.05]) * rng.uniform(0.4, 3) * np.clip(1 + 0.3 * rng.standard_normal(3), 0.5, 2)
        t *= np.clip(1 + 0.35 * noise(rng, 256, 256, 2, 2), 0.2, 2)[..., None]
    elif name == "cord":
        colour = rng.uniform(0.05, 0.5, 3)
        t *= 1 + 0.3 * np.sin(np.arange(256) * rng.uniform(0.5, 2))[None, :, None]
    else:
        colour = np.array([0.42, 0.17, 0.09]) * rng.uniform(0.3, 1.7) * np.clip(1 + 0.2 * rng.standard_normal(3), 0.5, 1.6)
        t *= np.clip(1 + rng.uniform(0.05, 0.4) * noise(rng, 256, 256, 120, 4, 2), 0.2, 2)[..., None]
    if stuff != name:
        t *= 1 + 0.3 * np.sign(np.sin(np.arange(256) * rng.uniform(0.6, 2.2)))[:, None, None]
    return t.astype(np.float32), colour


def cast(rng, rays, axis, direction, pieces, light, size, scene):
    """Adds one telescope to a scene: depth, colour, kinds and outline are bettered where it is nearer."""
    depth, colour, kinds, outline, focal = scene["depth"], scene["colour"], scene["kinds"], scene["outline"], scene["focal"]
    along = rays @ direction
    square = rays - along[..., None] * direction
    a = (square * square).sum(-1)
    foot = axis - (axis @ direction) * direction
    b = square @ foot
    c0 = foot @ foot
    side = unit(np.cross(direction, -foot))
    ahead = unit(-foot)
    closest = b / a
    nearest = np.sqrt(np.maximum(c0 - b * b / a, 0))        # distance between ray and axis
    base = axis @ direction
    axial0 = along * closest - base
    sharpness = np.exp(rng.uniform(1.2, 4.5))
    for start, end, r0, r1, stuff, kind in pieces:
        radius = r0 + (r1 - r0) * np.clip((axial0 - start) / max(end - start, 1e-6), 0, 1) if r0 != r1 else r0
        disc = b * b - a * (c0 - radius * radius)
        t = (b - np.sqrt(np.maximum(disc, 0))) / a
        axial = along * t - base
        hit = (disc > 0) & (axial >= start) & (axial <= end) & (t > 0.05) & (t < depth)
        texture, base_colour = wall_texture(rng, stuff, scene.get("unlettered", False))
        metal = stuff.replace("knurled ", "") in METALS
        if hit.any():
            p = rays[hit] * t[hit][:, None]
            n = (p - axial[hit][:, None] * direction - axis)
            n /= np.linalg.norm(n, axis=1, keepdims=True)
            v = rays[hit] / np.linalg.norm(rays[hit], axis=1, keepdims=True)
            around = np.arctan2(n @ side, n @ ahead)
            tx = np.mod(axial[hit] * scene["grain"] + 128, 255.99).astype(np.float32)
            ty = np.clip(128 + around * 80, 0, 255).astype(np.float32)
            relative = texture[ty.astype(np.int32), tx.astype(np.int32)]
            facing = np.clip(-(n * v).sum(1), 0, 1)[:, None]
            if metal:
                r = v - 2 * (v * n).sum(1)[:, None] * n
                fresnel = base_colour + (1 - base_colour) * (1 - facing) ** 5 * 0.7
                shade = fresnel * relative * (light.mirror(r, sharpness) * (1 - light.rough * 0.4) + light.diffuse(n) * light.rough * 0.4)
            else:
                r = v - 2 * (v * n).sum(1)[:, None] * n
                shade = base_colour * relative * light.diffuse(n) + light.mirror(r, 20) * scene["gloss"] * (1 - facing) ** 2
            colour[hit], depth[hit], kinds[hit] = shade, t[hit], kind
        if kind == WALL:
            scene["walls"].append((np.abs(nearest - radius) * focal / np.maximum(closest, 0.05), (axial0 >= start) & (axial0 <= end) & (closest > 0), closest))
        for x, sign, r in ((start, -1, r0), (end, 1, r1)):
            t = (base + x) / np.where(np.abs(along) < 1e-6, 1e-6, along)
            p = rays * t[..., None] - axis - x * direction
            rr = (p * p).sum(-1)
            hit = (rr < r * r) & (t > 0.05) & (t < depth) & (sign * along < 0)
            if hit.any():
                n = np.broadcast_to(sign * direction, (int(hit.sum()), 3))
                v = rays[hit]
                shade = base_colour * (light.diffuse(n) * 0.7 + 0.3 * light.mirror(v - 2 * (v * n).sum(1)[:, None] * n, 6))
                inner = (rr[hit] < (r * scene["bore"]) ** 2)[:, None]
                colour[hit] = np.where(inner, shade * 0.15, shade)
                depth[hit], kinds[hit] = t[hit], PART


def shadow(rng, points, axis, direction, pieces, lamp):
    """Share of a lamp's light that reaches table points past a telescope."""
    q = points - axis
    cross = np.cross(direction, lamp)
    n = np.linalg.norm(cross)
    if n < 1e-3:
        return np.ones(points.shape[:-1], np.float32)
    miss = np.abs(q @ (cross / n))
    flat = lamp - (lamp @ direction) * direction
    s = -(q @ flat) / (flat @ flat)
    axial = q @ direction + s * (lamp @ direction)
    soft = 0.02 + rng.uniform(0.02, 0.3)
    lit = np.ones(points.shape[:-1], np.float32)
    for start, end, r0, r1, _, _ in pieces:
        r = (r0 + r1) / 2
        edge = np.clip((miss - r) / (soft * np.maximum(s, 0.2)) + 0.5, 0, 1)
        ends = np.clip(np.minimum(axial - start, end - axial) / (soft * np.maximum(s, 0.2)) + 0.5, 0, 1)
        lit = np.minimum(lit, np.where(s > 0, 1 - (1 - edge) * ends, 1))
    return lit


def clutter(rng, colour, kinds, outline, over):
    """Flat things: bars, cards, rings, cords; over everything, fingers."""
    h, w = kinds.shape
    for _ in range(rng.integers(0, 4)):
        layer = np.zeros((h, w), np.float32)
        c = rng.uniform(0.02, 1.0) * np.clip(1 + 0.4 * rng.standard_normal(3), 0.2, 2)
        centre = np.array([rng.uniform(0, w), rng.uniform(0, h)])
        what = rng.choice(["bar", "card", "ring", "cord"]) if not over else "finger"
        if what in ("bar", "card"):
            a = rng.uniform(0, math.pi)
            d, e = np.array([math.cos(a), math.sin(a)]), np.array([-math.sin(a), math.cos(a)])
            l, b = (rng.uniform(0.3, 1.2) * w, rng.uniform(0.02, 0.2) * w) if what == "bar" else rng.uniform(0.1, 0.4, 2) * w
            quad = np.array([centre + s * l * d / 2 + t * b * e / 2 for s, t in ((-1, -1), (1, -1), (1, 1), (-1, 1))])
            cv2.fillPoly(layer, [np.round(quad * 8).astype(np.int32)], 1.0, cv2.LINE_AA, 3)
        elif what == "ring":
            r = rng.uniform(0.05, 0.3) * w
            cv2.circle(layer, tuple(int(x) for x in centre), int(r), 1.0, int(r * rng.uniform(0.1, 0.5)) + 1, cv2.LINE_AA)
        elif what == "cord":
            p = np.cumsum(rng.standard_normal((30, 2)) * w / 18, 0) + centre
            cv2.polylines(layer, [np.round(p).astype(np.int32)], False, 1.0, int(rng.integers(1, 5)), cv2.LINE_AA)
        else:
            c = np.array([0.75, 0.5, 0.38]) * rng.uniform(0.15, 1.1)
            out = np.array([rng.choice([-0.1, 1.1]) * w, rng.uniform(0, h)]) if rng.random() < 0.5 else np.array([rng.uniform(0, w), rng.choice([-0.1, 1.1]) * h])
            tip = out + (np.array([w, h]) * rng.uniform(0.2, 0.8, 2) - out) * rng.uniform(0.2, 0.7)
            cv2.line(layer, tuple(int(x) for x in out), tuple(int(x) for x in tip), 1.0, int(rng.uniform(0.05, 0.16) * w), cv2.LINE_AA)
        shade = c * (1 + 0.25 * noise(rng, h, w, w / 3, h / 3))[..., None]
        colour[:] = colour * (1 - layer[..., None]) + layer[..., None] * shade
        covered = layer > 0.5
        kinds[covered] = OTHER
        outline[covered] = 0


def draw(seed, width=256, height=192):
    rng = np.random.default_rng(seed)
    h, w = height, width
    long = max(w, h)
    focal = long * math.exp(rng.uniform(math.log(0.75), math.log(3)))
    x, y = np.meshgrid(np.arange(w, dtype=np.float32), np.arange(h, dtype=np.float32))
    rays = np.stack([(x - (w - 1) / 2) / focal, (y - (h - 1) / 2) / focal, np.ones((h, w), np.float32)], -1)
    radius = min(w, h) * math.exp(rng.uniform(math.log(0.06), math.log(0.62)))
    distance = max(focal / radius, 2.2)
    turn = rng.uniform(0, math.pi) if rng.random() < 0.4 else rng.normal(0, 0.22) + (math.pi / 2 if h > w else 0)
    tilt = rng.normal(0, 0.25)
    direction = unit(np.array([math.cos(turn), math.sin(turn), math.tan(np.clip(tilt, -0.7, 0.7))]))
    offset = rng.normal(0, 0.16, 2) * np.array([w, h])
    axis = np.array([offset[0] / focal, offset[1] / focal, 1.0]) * distance
    axis = axis - rng.uniform(-0.2, 0.2) * direction
    half = 0.5 * long / focal * distance
    pieces = chain(rng, half)
    up = -axis - (-axis @ direction) * direction
    up = unit(up)
    roll = rng.normal(0, 0.45)
    up = up * math.cos(roll) + np.cross(direction, up) * math.sin(roll)
    floor = axis - up * max(max(p[2], p[3]) for p in pieces) * rng.choice([1.0, 1.0, rng.uniform(1, 4)])
    table = np.clip(rng.uniform(0.03, 0.5) * (1 + 0.2 * rng.standard_normal(3)), 0.01, 0.9)
    light = Light(rng, up, table)
    t = (floor @ up) / np.minimum(rays @ up, -1e-3)
    points = rays * t[..., None]
    e1 = unit(np.cross(up, np.array([0.3, 0.9, 0.1])))
    e2 = np.cross(up, e1)
    reflectance = table_texture(rng, points @ e1, points @ e2, h, w)
    there = rng.random() > 0.12
    lit = np.ones((h, w, 3)) * light.sky
    for d, power, _, lamp in light.lamps:
        share = shadow(rng, points, axis, direction, pieces, d) if there else 1.0
        lit = lit + (np.clip(d @ up, 0, 1) * power * 0.7 * share)[..., None] * lamp if there else lit + np.clip(d @ up, 0, 1) * power * 0.7 * lamp
    if there:
        across = np.linalg.norm((points - axis) - ((points - axis) @ direction)[..., None] * direction, axis=-1)
        lit = lit * (1 - 0.5 * np.exp(-np.maximum(across - 1, 0) * 2)[..., None])
    scene = {"depth": np.minimum(t, 1e4).astype(np.float32), "colour": (reflectance * lit).astype(np.float32), "kinds": np.zeros((h, w), np.uint8),
             "outline": np.zeros((h, w), np.float32), "focal": focal, "walls": [], "grain": rng.uniform(20, 60), "gloss": rng.uniform(0, 0.4),
             "bore": rng.uniform(0.5, 0.97)}
    scene["depth"][scene["depth"] <= 0] = 1e4
    clutter(rng, scene["colour"], scene["kinds"], scene["outline"], False)
    if there:
        cast(rng, rays, axis, direction, pieces, light, (w, h), scene)
        if rng.random() < 0.15:
            # A second telescope or draw beside the first.
            a2 = rng.normal(0, 0.4)
            d2 = direction * math.cos(a2) + np.cross(direction, up) * math.sin(a2)
            shift = np.cross(direction, up) * rng.choice([-1, 1]) * rng.uniform(2.2, 5)
            r2 = rng.uniform(0.5, 1.5)
            more = [(s * r2, e * r2, p * r2, q * r2, m, k) for s, e, p, q, m, k in chain(rng, half)]
            cast(rng, rays, axis + shift, unit(d2), more, light, (w, h), scene)
    kinds, outline, colour = scene["kinds"], scene["outline"], scene["colour"]
    for away, inside, closest in scene["walls"]:
        # An outline counts where the wall that it bounds is seen right beside it.
        seen = cv2.dilate(((kinds == WALL) & (np.abs(scene["depth"] - closest) < 1.5)).astype(np.uint8), np.ones((3, 3), np.uint8)) > 0
        outline[:] = np.maximum(outline, np.where(inside & seen, np.exp(-(away / 1.2) ** 2), 0))
    if rng.random() < 0.15:
        clutter(rng, colour, kinds, outline, True)
    return develop(rng, colour, scene["depth"], distance, focal, kinds), kinds, outline


def develop(rng, colour, depth, distance, focal, kinds):
    """Depth of field, exposure, colour balance, noise, compression."""
    h, w = depth.shape
    if rng.random() < 0.7:
        near = distance - rng.uniform(0.2, 1.0)
        aperture = np.exp(rng.uniform(np.log(0.5), np.log(14))) * w / 256
        circle = np.clip(aperture * np.abs(1 - near / np.minimum(depth, 1e3)), 0, 5)
        levels = [colour] + [cv2.GaussianBlur(colour, (0, 0), s) for s in (0.8, 1.6, 3.2)]
        amount = cv2.GaussianBlur(np.clip(np.log2(np.maximum(circle, 0.4) / 0.4), 0, 3).astype(np.float32), (0, 0), 1.5)
        out = np.zeros_like(colour)
        for i, level in enumerate(levels):
            out += level * np.clip(1 - np.abs(amount - i), 0, 1)[..., None]
        colour = out
    colour = cv2.GaussianBlur(colour, (0, 0), rng.uniform(0.35, 0.8))
    if rng.random() < 0.4:
        g = noise(rng, h, w, w / 1.5, h / 1.5)
        colour = colour * np.exp(0.5 * rng.uniform(0, 1) * g)[..., None]
    level = np.percentile(colour.mean(-1), rng.uniform(50, 99))
    colour = colour * (rng.uniform(0.35, 1.3) / max(level, 1e-3)) * np.clip(1 + 0.1 * rng.standard_normal(3), 0.7, 1.3)
    coded = np.clip(colour, 0, 1) ** (1 / 2.2)
    if rng.random() < 0.08:
        coded[:] = coded.mean(-1, keepdims=True)
    coded = coded + rng.standard_normal(coded.shape) * rng.uniform(0, 0.03)
    picture = np.clip(coded[..., ::-1] * 255, 0, 255).astype(np.uint8)
    if rng.random() < 0.5:
        picture = cv2.imdecode(cv2.imencode(".jpg", picture, [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(60, 96))])[1], 1)
    return np.ascontiguousarray(picture)


if __name__ == "__main__":
    import sys
    first = int(sys.argv[1]) if len(sys.argv) > 1 else 0
    rows = []
    for r in range(5):
        row = []
        for c in range(6):
            p, k, o = draw(first + 6 * r + c)
            m = p.copy()
            m[k == WALL] = m[k == WALL] // 2 + np.array([0, 90, 0], np.uint8)
            m[k == PART] = m[k == PART] // 2 + np.array([90, 0, 0], np.uint8)
            m[..., 2] = np.maximum(m[..., 2], (o * 255).astype(np.uint8))
            row.append(np.vstack([p, m]))
        rows.append(np.hstack(row))
    cv2.imwrite(sys.argv[2] if len(sys.argv) > 2 else "tube_scenes.png", np.vstack(rows))
