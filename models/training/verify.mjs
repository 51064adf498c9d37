// Compares ONNX Runtime with PyTorch on the inputs of probe.py: node verify.mjs MODEL.onnx DIR reader|detector
// Fails (exit 1) where the outputs differ by more than 1e-3 of their largest value.
import { createRequire } from 'node:module';
import fs from 'node:fs';
const ort = createRequire(process.cwd() + '/')('onnxruntime-node');
const [model, dir, kind] = process.argv.slice(2);
const floats = p => { const b = fs.readFileSync(p); return new Float32Array(b.buffer, b.byteOffset, b.byteLength / 4); };
const session = await ort.InferenceSession.create(model);
let bad = false;
for (const c of JSON.parse(fs.readFileSync(`${dir}/${kind}.json`))) {
  const o = await session.run({ [c.input]: new ort.Tensor('float32', floats(`${dir}/${c.name}.in`), c.shape) });
  for (const n of c.outputs) {
    const a = o[n].data, b = floats(`${dir}/${c.name}.${n}`);
    let d = a.length === b.length ? 0 : Infinity, m = 1e-6;
    for (let i = 0; i < a.length; i++) { d = Math.max(d, Math.abs(a[i] - b[i])); m = Math.max(m, Math.abs(b[i])); }
    console.log(c.name, n, o[n].dims.join('x'), 'largest difference', d.toExponential(2), 'of', m.toFixed(2));
    bad ||= !(d < 1e-3 * m);
  }
}
process.exit(bad ? 1 : 0);
