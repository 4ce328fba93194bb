// Building the page from plain nodes: text is only ever set as text, never as markup.

export function part(name, traits = {}, ...children) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(traits)) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else if (key === "value" || key === "checked") node[key] = value;
    else node.setAttribute(key, value === true ? "" : value);
  }
  node.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return node;
}

export const clock = (seconds) => {
  const whole = Math.max(0, Math.floor(seconds));
  const pad = (number) => String(number).padStart(2, "0");
  const minutes = Math.floor(whole / 60);
  return minutes >= 60
    ? `${Math.floor(minutes / 60)}:${pad(minutes % 60)}:${pad(whole % 60)}`
    : `${minutes}:${pad(whole % 60)}`;
};

/** Put `children` in place of what `box` holds; the field that had the focus has it again. */
export function refill(box, ...children) {
  const key = box.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  box.replaceChildren(...children.flat().filter(Boolean));
  if (key) box.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus({ preventScroll: true });
}

export const scoreOf = (hole) => part("span", { class: `score ${hole.mark}` }, hole.strokes || "–");
