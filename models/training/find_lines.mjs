// Runs the detector over whole photos: node find_lines.mjs detector.onnx FOLDER
// FOLDER/pictures.json lists {name, h, w} beside FOLDER/name.raw (grey bytes, sides multiples of 32); writes name.raw.maps.
import { createRequire } from 'node:module';
import fs from 'node:fs';
const ort = createRequire(process.cwd() + '/')('onnxruntime-node');
const [model, folder] = process.argv.slice(2);
const session = await ort.InferenceSession.create(model, { intraOpNumThreads: Number(process.env.THREADS ?? 2) });
const list = JSON.parse(fs.readFileSync(folder + '/pictures.json'));
let ms = 0;
for (const e of list) {
  const grey = fs.readFileSync(`${folder}/${e.name}.raw`);
  const strip = new ort.Tensor('float32', Float32Array.from(grey, v => (v / 255 - 0.5) / 0.5), [1, 1, e.h, e.w]);
  const t = performance.now();
  const d = (await session.run({ strip })).maps.data;
  ms += performance.now() - t;
  fs.writeFileSync(`${folder}/${e.name}.raw.maps`, Buffer.from(d.buffer, d.byteOffset, d.byteLength));
}
console.log(list.length, 'pictures,', (ms / list.length).toFixed(0), 'ms each');
