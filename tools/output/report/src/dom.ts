// SPDX-License-Identifier: Apache-2.0
// Building the page from elements. Text only ever enters as text nodes, so a title that looks like markup stays a title.

export type Child = Node | string | null | false;

type Properties = { [name: string]: string | number | boolean | null | undefined };

/** An HTML element with attributes and children; strings become text. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Properties = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  set(element, attributes);
  for (const child of children) if (child !== null && child !== false) element.append(child);
  return element;
}

const svg_space = "http://www.w3.org/2000/svg";

/** The same for SVG. */
export function svg<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Properties = {},
  ...children: Child[]
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(svg_space, tag) as SVGElementTagNameMap[K];
  set(element, attributes);
  for (const child of children) if (child !== null && child !== false) element.append(child);
  return element;
}

function set(element: Element, attributes: Properties): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? "" : String(value));
  }
}

export function button(label: string, action: () => void, attributes: Properties = {}): HTMLButtonElement {
  const element = el("button", { type: "button", ...attributes }, label);
  element.addEventListener("click", action);
  return element;
}

/** One line that a screen reader speaks when it changes. */
let live: HTMLElement | null = null;
export function announce(text: string): void {
  if (!live) {
    live = el("p", { class: "announcement", role: "status", "aria-live": "polite" });
    document.body.append(live);
  }
  live.textContent = text;
}

/** Hand the user a file. */
export function download(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = el("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A file name out of words: letters, digits and hyphens. */
export function file_name(...words: string[]): string {
  const name = words
    .join("-")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return name.slice(0, 80) || "report";
}

const narrowest = 40; // px; below it an element is folded away

/** Calls `draw` with the width of an element, first and whenever it has another one. */
export function watch_width(element: HTMLElement, draw: (width: number) => void): void {
  let last = 0;
  new ResizeObserver((entries) => {
    const width = Math.floor(entries[0].contentRect.width);
    if (width < narrowest || width === last) return;
    last = width;
    draw(width);
  }).observe(element);
}
