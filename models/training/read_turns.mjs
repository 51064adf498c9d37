// Looks at every upright line of a folder written by draw_set.py in all four orientations (as it is, turned, mirrored, mirrored and turned).
// node read_turns.mjs reader.onnx FOLDER   ->   FOLDER/turns.json: per line and look the orientation logits and, per letter of the best path, its peak (both cases together)
import { createRequire } from 'node:module';
import fs from 'node:fs';
const ort = createRequire(process.cwd() + '/')('onnxruntime-node');
const [model, folder] = process.argv.slice(2);
const { classes } = JSON.parse(fs.readFileSync(new URL('../models.json', import.meta.url))).models.reader;
const otherCase = classes.map(c => classes.indexOf(c === c.toLowerCase() ? c.toUpperCase() : c.toLowerCase()));
const session = await ort.InferenceSession.create(model, { intraOpNumThreads: Number(process.env.THREADS ?? 2) });

function turned(grey, e, o) {
  const line = new Float32Array(e.w * e.h);
  for (let y = 0; y < e.h; y++) for (let x = 0; x < e.w; x++) {
    const row = o & 1 ? e.h - 1 - y : y;                          // turning swaps rows and columns, mirroring columns alone
    const column = (o === 1 || o === 2) ? e.w - 1 - x : x;
    line[y * e.w + x] = (grey[row * e.w + column] / 255 - 0.5) / 0.5;
  }
  return new ort.Tensor('float32', line, [1, 1, e.h, e.w]);
}

function peaks(data, frames) {
  const out = [], n = classes.length;
  for (let t = 0, previous = 0; t < frames; t++) {
    let best = 0;
    for (let c = 1; c < n; c++) if (data[t * n + c] > data[t * n + best]) best = c;
    const twin = otherCase[best], letter = twin > 0 ? Math.min(best, twin) : best;
    if (best && letter !== previous) out.push(0);
    if (best) out[out.length - 1] = Math.max(out.at(-1), Math.exp(data[t * n + best]) + (twin > 0 && twin !== best ? Math.exp(data[t * n + twin]) : 0));
    previous = letter;
  }
  return out.map(p => Math.min(1, p));
}

const rows = [];
for (const e of JSON.parse(fs.readFileSync(folder + '/index.json')).filter(e => e.lettering && e.orientation === 0 && e.text)) {
  const grey = fs.readFileSync(`${folder}/${e.raw}`);
  const looks = [];
  for (let o = 0; o < 4; o++) {
    const seen = await session.run({ line: turned(grey, e, o) });
    looks.push({ orientation: [...seen.orientation.data], peaks: peaks(seen.log_probs.data, Number(seen.log_probs.dims[1])) });
  }
  rows.push({ raw: e.raw, looks });
}
fs.writeFileSync(folder + '/turns.json', JSON.stringify(rows));
console.log(rows.length, 'lines');
