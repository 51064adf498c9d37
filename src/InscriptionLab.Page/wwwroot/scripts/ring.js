// The rim of a ring while a person draws it, and its opening: the rim made smaller about its middle.

import { ellipseHandles, movedEllipse } from "./geometry.js";
import { handle, nudged } from "./marks.js";
import { t } from "./strings.js";

const SMALLEST = 0.1;
const LARGEST = 0.95;
const USUAL = 0.6;
const FIRST_SIZE = 0.4;

export class RingEdit {
  /** Begins with the ring that is known, or with a circle in the middle of the photo. */
  constructor({ size: [w, t2], ring }) {
    const r = Math.min(w, t2) * FIRST_SIZE;
    this.kind = "ring";
    this.rim = [...(ring?.rim ?? [w / 2, t2 / 2, r, r, 0])];
    this.share = ring?.share ?? USUAL;
  }

  get opening() {
    const [x, y, a, b, turn] = this.rim;
    return [x, y, a * this.share, b * this.share, turn];
  }

  drag(name, point) {
    const [x, y, a] = this.rim;
    if (name === "opening") this.share = Math.min(LARGEST, Math.max(SMALLEST, Math.hypot(point[0] - x, point[1] - y) / a));
    else this.rim = movedEllipse(this.rim, name, point);
  }

  /** What can be taken hold of. */
  handles(viewer) {
    const places = { ...ellipseHandles(this.rim), opening: ellipseHandles(this.opening).major };
    return Object.entries(places).map(([name, at]) =>
      handle(viewer, at, name, t(`edit.ring.${name}`), (event) => {
        const to = nudged(event, at, viewer.view.scale);
        if (!to) return;
        this.drag(name, to);
        viewer.draw();
      }),
    );
  }
}
