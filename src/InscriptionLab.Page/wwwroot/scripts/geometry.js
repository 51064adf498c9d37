// Points and ways between pictures. A pixel's centre has integer coordinates, as everywhere in the program.

export const middle = (points) => [points.reduce((sum, p) => sum + p[0], 0) / points.length, points.reduce((sum, p) => sum + p[1], 0) / points.length];

export const distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);

const STEPS = 72;

/** Points round an ellipse: middle, two half axes, direction of the first in degrees. */
export function ellipsePoints([x, y, a, b, turn]) {
  const [c, n] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return Array.from({ length: STEPS }, (_, k) => {
    const [u, v] = [a * Math.cos((2 * Math.PI * k) / STEPS), b * Math.sin((2 * Math.PI * k) / STEPS)];
    return [x + u * c - v * n, y + u * n + v * c];
  });
}

/** Where an ellipse is taken hold of: its middle, and one end of either axis. */
export function ellipseHandles([x, y, a, b, turn]) {
  const [c, n] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return { centre: [x, y], major: [x + a * c, y + a * n], minor: [x - b * n, y + b * c] };
}

/** The ellipse after one of its handles was moved; the first axis stays the longer one. */
export function movedEllipse([x, y, a, b, turn], part, [px, py]) {
  if (part === "centre") return [px, py, a, b, turn];
  const [dx, dy] = [px - x, py - y];
  const far = Math.max(2, Math.hypot(dx, dy));
  if (part === "major") return [x, y, far, (b / a) * far, (Math.atan2(dy, dx) * 180) / Math.PI];
  return far <= a ? [x, y, a, far, turn] : [x, y, far, a, turn + 90];
}

/** The way between strip and photo, from a grid of points that the program worked out exactly. */
export class StripWay {
  constructor(strip) {
    [this.width, this.height] = strip.size;
    [this.columns, this.rows] = strip.gridSize;
    this.grid = strip.grid;
  }

  at(column, row) {
    const i = 2 * (row * this.columns + column);
    return [this.grid[i], this.grid[i + 1]];
  }

  toPhoto([x, y]) {
    const u = (x / Math.max(1, this.width - 1)) * (this.columns - 1);
    const v = (y / Math.max(1, this.height - 1)) * (this.rows - 1);
    const c = Math.min(Math.max(Math.floor(u), 0), this.columns - 2);
    const r = Math.min(Math.max(Math.floor(v), 0), this.rows - 2);
    const [a, b] = [u - c, v - r];
    const [p, q, m, n] = [this.at(c, r), this.at(c + 1, r), this.at(c, r + 1), this.at(c + 1, r + 1)];
    const mix = (k) => (p[k] * (1 - a) + q[k] * a) * (1 - b) + (m[k] * (1 - a) + n[k] * a) * b;
    return [mix(0), mix(1)];
  }

  /** How photo points move when strip points do, at a strip point. */
  slope([x, y]) {
    const step = Math.max(1, this.width / 200);
    const [a, b] = [this.toPhoto([x - step, y]), this.toPhoto([x + step, y])];
    const [c, d] = [this.toPhoto([x, y - step]), this.toPhoto([x, y + step])];
    const f = 1 / (2 * step);
    return [(b[0] - a[0]) * f, (b[1] - a[1]) * f, (d[0] - c[0]) * f, (d[1] - c[1]) * f];
  }

  /** The strip point that shows a photo point (Newton's method); near the edge of the tube the nearest one in the strip. */
  toStrip(point) {
    let at = [this.width / 2, this.height / 2];
    for (let i = 0; i < 12; i++) {
      const now = this.toPhoto(at);
      const [xx, xy, yx, yy] = this.slope(at);
      const det = xx * yy - xy * yx;
      if (Math.abs(det) < 1e-9) break;
      const [ex, ey] = [point[0] - now[0], point[1] - now[1]];
      const [dx, dy] = [(ex * yy - ey * yx) / det, (ey * xx - ex * xy) / det];
      const most = this.width / 3;
      const cut = Math.min(1, most / Math.max(1e-9, Math.hypot(dx, dy)));
      at = [at[0] + dx * cut, Math.min(Math.max(at[1] + dy * cut, 0), this.height - 1)];
      if (Math.hypot(dx, dy) < 0.05) break;
    }
    return at;
  }
}
