// What one person prefers; kept in this browser only.

const KEY = "inscriptionlab";
const listeners = new Set();
let values = { theme: "auto", units: "mm", person: "", ...read() };

function read() {
  try {
    return JSON.parse(localStorage.getItem(KEY)) ?? {};
  } catch {
    return {};
  }
}

export const settings = {
  get: (name) => values[name],
  set(name, value) {
    values = { ...values, [name]: value };
    try {
      localStorage.setItem(KEY, JSON.stringify(values));
    } catch {
      // A browser that keeps nothing still shows everything.
    }
    listeners.forEach((listener) => listener(name));
  },
  onChange: (listener) => listeners.add(listener),
};

export function applyTheme() {
  const theme = settings.get("theme");
  const dark = theme === "dark" || (theme === "auto" && matchMedia("(prefers-color-scheme: dark)").matches);
  document.documentElement.dataset.theme = dark ? "dark" : "light";
}

matchMedia("(prefers-color-scheme: dark)").addEventListener("change", applyTheme);
