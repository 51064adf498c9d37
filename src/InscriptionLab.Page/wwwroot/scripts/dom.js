// Builds elements. Text always goes in as text, never as markup.

const SVG = "http://www.w3.org/2000/svg";

/** Makes an element: h("button", { class: "x", onclick: f, "aria-label": "…" }, "text", child). */
export function h(tag, properties = {}, ...children) {
  return fill(document.createElement(tag), properties, children);
}

/** Makes an SVG element. */
export function s(tag, properties = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), properties, children);
}

function fill(element, properties, children) {
  for (const [name, value] of Object.entries(properties)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "style") Object.assign(element.style, value);
    else if (name === "dataset") Object.assign(element.dataset, value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  append(element, children);
  return element;
}

export function append(element, children) {
  for (const child of children.flat(Infinity)) {
    if (child === null || child === undefined || child === false) continue;
    element.append(child instanceof Node ? child : document.createTextNode(String(child)));
  }
}

/** Puts new children in; the focus stays on the element with the same data-key, what is being typed there stays, and scrolling stays where it was. */
export function replace(host, ...children) {
  const held = host.contains(document.activeElement) ? document.activeElement : null;
  const top = host.scrollTop;
  host.replaceChildren();
  append(host, children);
  host.scrollTop = top;
  if (!held?.dataset.key) return;
  const same = host.querySelector(`[data-key="${CSS.escape(held.dataset.key)}"]`);
  same?.focus({ preventScroll: true });
  if (same && isTyped(held)) goOn(held, same);
}

const isTyped = (element) => element.matches("input:not([type=checkbox], [type=radio], [type=file]), textarea") && element.value !== element.defaultValue;

/** News from the program may come between two keys: the text typed so far and the caret go over, unless the program's own value is another one now. */
function goOn(held, same) {
  if (same.defaultValue !== held.defaultValue) return;
  same.value = held.value;
  if (held.selectionStart !== null) same.setSelectionRange(held.selectionStart, held.selectionEnd);
}

/** Says something to who listens to the page instead of looking at it. */
export function announce(text) {
  document.getElementById("said").textContent = text;
}
