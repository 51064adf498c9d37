// Reads every line of a folder written by draw_set.py or cut_lines.py with ONNX Runtime (npm install onnxruntime-node).
// node read_lines.mjs reader.onnx FOLDER   ->   FOLDER/*.raw.lp (float32 log-probabilities) and FOLDER/heads.json
import { createRequire } from 'node:module';
import fs from 'node:fs';
const ort = createRequire(process.cwd() + '/')('onnxruntime-node');
const [model, folder] = process.argv.slice(2);
const session = await ort.InferenceSession.create(model, { intraOpNumThreads: Number(process.env.THREADS ?? 2) });
const heads = [];
let ms = 0;
for (const e of JSON.parse(fs.readFileSync(folder + '/index.json'))) {
  const grey = fs.readFileSync(`${folder}/${e.raw}`);
  const line = new ort.Tensor('float32', Float32Array.from(grey, v => (v / 255 - 0.5) / 0.5), [1, 1, e.h, e.w]);
  const t = performance.now();
  const o = await session.run({ line });
  ms += performance.now() - t;
  const d = o.log_probs.data;
  fs.writeFileSync(`${folder}/${e.raw}.lp`, Buffer.from(d.buffer, d.byteOffset, d.byteLength));
  heads.push({ orientation: [...o.orientation.data], style: [...o.style.data], lettering: o.lettering.data[0], edges: [...o.edges.data] });
}
fs.writeFileSync(folder + '/heads.json', JSON.stringify(heads));
console.log(heads.length, 'lines,', (ms / heads.length).toFixed(1), 'ms a line');
