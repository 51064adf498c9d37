"use strict";
// Lights a surface from its normals (red: to the right, green: upward) and albedo (blue, half of it): matt metal and a broad highlight.
for (const figure of document.querySelectorAll("[data-relight]")) {
  const canvas = figure.querySelector("canvas");
  const source = figure.querySelector("img");
  const sliders = {};
  for (const slider of figure.querySelectorAll("input")) sliders[slider.dataset.key] = slider;
  let packed = null;
  let lit = null;
  let asked = false;

  const ready = () => {
    canvas.width = source.naturalWidth;
    canvas.height = source.naturalHeight;
    const pen = canvas.getContext("2d", { willReadFrequently: true });
    pen.drawImage(source, 0, 0);
    packed = pen.getImageData(0, 0, canvas.width, canvas.height).data;
    lit = pen.createImageData(canvas.width, canvas.height);
    ask();
  };

  const light = () => {
    asked = false;
    const side = (sliders.side.value * Math.PI) / 180;
    const height = (sliders.height.value * Math.PI) / 180;
    const shine = sliders.shine.value / 100;
    const stains = sliders.stains.value / 100;
    const lx = Math.cos(side) * Math.cos(height);
    const ly = Math.sin(side) * Math.cos(height);
    const lz = Math.sin(height);
    const norm = Math.hypot(lx, ly, lz + 1);
    const [hx, hy, hz] = [lx / norm, ly / norm, (lz + 1) / norm];
    const bare = Math.max(0.25, lz);
    const out = lit.data;
    for (let i = 0; i < packed.length; i += 4) {
      const x = packed[i] / 127.5 - 1;
      const y = 1 - packed[i + 1] / 127.5;
      const z = Math.sqrt(Math.max(0, 1 - x * x - y * y));
      const albedo = 1 + stains * (packed[i + 2] / 127.5 - 1);
      const matt = Math.max(0, x * lx + y * ly + z * lz) / bare;
      const gloss = shine * Math.pow(Math.max(0, x * hx + y * hy + z * hz), 24);
      const level = 25 + 105 * albedo * matt + 150 * gloss;
      out[i] = level * 1.06;
      out[i + 1] = level * 0.97;
      out[i + 2] = level * 0.78;
      out[i + 3] = 255;
    }
    canvas.getContext("2d").putImageData(lit, 0, 0);
  };

  const ask = () => {
    for (const slider of Object.values(sliders)) slider.nextElementSibling.textContent = slider.value + " " + slider.dataset.unit;
    if (packed && !asked) {
      asked = true;
      requestAnimationFrame(light);
    }
  };

  const move = (side, height) => {
    sliders.side.value = ((side % 360) + 360) % 360;
    sliders.height.value = height;
    ask();
  };

  canvas.addEventListener("pointermove", (event) => {
    const box = canvas.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width - 0.5;
    const y = (event.clientY - box.top) / box.height - 0.5;
    move((Math.atan2(y, x) * 180) / Math.PI, 90 - 87 * Math.min(1, 2 * Math.max(Math.abs(x), Math.abs(y))));
  });
  canvas.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: [-5, 0], ArrowRight: [5, 0], ArrowUp: [0, 3], ArrowDown: [0, -3] }[event.key];
    if (step) {
      event.preventDefault();
      move(Number(sliders.side.value) + step[0], Number(sliders.height.value) + step[1]);
    }
  });
  for (const slider of Object.values(sliders)) slider.addEventListener("input", ask);
  if (source.complete && source.naturalWidth) ready();
  else source.addEventListener("load", ready);
}
