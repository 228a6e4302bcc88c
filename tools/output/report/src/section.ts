// SPDX-License-Identifier: Apache-2.0
// The section at rest, drawn to scale with dimension lines; what nobody measured is dashed. No chart: a drawing.
import type { Page } from "./block";
import type { Run, Section } from "./data";
import { el, svg } from "./dom";
import { millimetres } from "./format";
import type { Motion } from "./frames";
import { swatch } from "./looks";
import { font_family } from "./stage";
import { reading_table } from "./table";

const striker_shown = 9; // mm of it above the stack

/** Spread label positions to at least `gap` apart, moved as little as possible; sorted positions in, sorted out. */
export function spread(wanted: number[], gap: number, low: number, high: number): number[] {
  const places = [...wanted];
  for (let round = 0; round < 200; ++round) {
    let moved = false;
    for (let i = 1; i < places.length; ++i) {
      const lack = gap - (places[i] - places[i - 1]);
      if (lack > 1e-6) {
        places[i - 1] -= lack / 2;
        places[i] += lack / 2;
        moved = true;
      }
    }
    if (!moved) break;
  }
  const over = Math.max(0, low - (places[0] ?? low)) - Math.max(0, (places.at(-1) ?? high) - high);
  return places.map((place) => place + over);
}

/** Greatest width of what is drawn, mm. */
export function section_width(run: Run): number {
  return Math.max(run.section?.width ?? 0, ...(run.section?.widths ?? []).map((each) => each.width));
}

/** The drawing at a width in pixels; `widest` (mm) fills it, so that two stacks can share one scale. Narrow: layers without their names. */
export function draw_section(page: Page, run: Run, section: Section, motion: Motion | null, width: number, font: number, widest: number, narrow = width < 31 * font): SVGSVGElement {
  const r = page.report.runs.indexOf(run);
  const left = 5 * font;
  const right = narrow ? 4.4 * font : 14 * font;
  const striker = section.widths.find((each) => each.y >= section.height - 1e-6);
  const below = section.widths.filter((each) => each !== striker);
  const s = (width - left - right) / widest;
  const top = 2.6 * font + striker_shown * s;
  const n_layers = section.layers.length;
  const label_room = n_layers * 1.3 * font;
  const drawn = section.height * s;
  const bottom = top + drawn;
  const height = Math.max(bottom, top + drawn / 2 + label_room / 2) + 1.7 * font * (below.length + 1) + font;
  const middle = left + (width - left - right) / 2;
  const X = (x: number) => middle + x * s;
  const Y = (y: number) => bottom - y * s;
  const lines: SVGElement[] = [];
  const names: SVGElement[] = [];

  const dashed = (assumed: boolean) => (assumed ? "4 3" : null);
  const stroke = (x1: number, y1: number, x2: number, y2: number, assumed: boolean, thin = false) =>
    lines.push(svg("line", {
      x1, y1, x2, y2, stroke: thin ? "var(--faint-ink)" : "var(--ink)", "stroke-width": thin ? 0.6 : 1, "stroke-dasharray": dashed(assumed),
    }));
  const tick = (x: number, y: number) => lines.push(svg("path", { d: `M${x - 3.5} ${y + 3.5}L${x + 3.5} ${y - 3.5}`, stroke: "var(--ink)", "stroke-width": 1.4 }));
  const write = (x: number, y: number, text: string, anchor: string, assumed = false) =>
    names.push(svg("text", {
      x, y, "text-anchor": anchor, "dominant-baseline": "central", "font-style": assumed ? "italic" : null,
      fill: "var(--ink)", stroke: "var(--paper)", "stroke-width": 4, "stroke-linejoin": "round", "paint-order": "stroke",
    }, text));

  // The parts themselves: true outlines where the run kept its shapes, else plain layers.
  const fills: SVGElement[] = [];
  if (motion) {
    const shape = motion.shape(0);
    for (const { part, nodes } of motion.frames.outlines)
      for (const side of [-1, 1]) {
        const points = nodes.map((node) => `${X(side * shape.x[node]).toFixed(1)},${Y(shape.y[node]).toFixed(1)}`).join(" ");
        fills.push(svg("polygon", { points, fill: page.looks.of(r, part).fill, stroke: "none" }));
        const open = nodes
          .map((node, i) => [node, nodes[(i + 1) % nodes.length]])
          .filter(([a, b]) => shape.x[a] > 0.01 || shape.x[b] > 0.01)
          .map(([a, b]) => `M${X(side * shape.x[a]).toFixed(1)} ${Y(shape.y[a]).toFixed(1)}L${X(side * shape.x[b]).toFixed(1)} ${Y(shape.y[b]).toFixed(1)}`)
          .join("");
        fills.push(svg("path", { d: open, fill: "none", stroke: "var(--ink)", "stroke-width": 1 }));
      }
  } else {
    for (const layer of section.layers)
      fills.push(svg("rect", {
        x: X(-section.width / 2), y: Y(layer.top), width: section.width * s, height: (layer.top - layer.bottom) * s,
        fill: page.looks.of(r, layer.part).fill, stroke: "var(--ink)", "stroke-dasharray": dashed(layer.assumed),
      }));
  }
  if (striker) {
    const outline: [number, number][] = motion?.frames.tupOutline.length
      ? motion.frames.tupOutline.map(([x, y]) => [x, Math.min(y, striker_shown)])
      : [[0, 0], [striker.width / 2, 0], [striker.width / 2, striker_shown], [0, striker_shown]];
    const whole = [...outline, ...[...outline].reverse().map(([x, y]): [number, number] => [-x, y])];
    fills.push(svg("polygon", {
      points: whole.map(([x, y]) => `${X(x).toFixed(1)},${Y(section.height + y).toFixed(1)}`).join(" "),
      fill: "var(--tone-weight)", stroke: "var(--ink)", "stroke-width": 1.2,
    }));
    const y = Y(section.height + striker_shown) - 0.5 * font;
    const half = striker.width / 2;
    stroke(X(-half), y, X(half), y, striker.assumed);
    tick(X(-half), y);
    tick(X(half), y);
    write(middle, y - 0.9 * font, `${bare(striker.name)} Ø ${millimetres(striker.width)}`, "middle", striker.assumed);
  }
  stroke(left - 8, bottom, width - right + 8, bottom, false);
  lines.push(svg("rect", { x: X(-section.width / 2) - 6, y: bottom, width: section.width * s + 12, height: 4, fill: "var(--faint-ink)" }));

  // Whole height at the left.
  const rest = section.layers.some((layer) => layer.assumed);
  const x_height = left - 1.1 * font;
  stroke(X(-section.width / 2) - 3, Y(section.height), x_height - 5, Y(section.height), false, true);
  stroke(x_height, bottom, x_height, Y(section.height), rest);
  tick(x_height, bottom);
  tick(x_height, Y(section.height));
  names.push(svg("text", {
    transform: `translate(${x_height - 0.9 * font} ${(bottom + Y(section.height)) / 2}) rotate(-90)`,
    "text-anchor": "middle", "dominant-baseline": "central", fill: "var(--ink)",
  }, millimetres(section.height)));

  // Thickness of each layer at the right, names spread so that thin layers can be read.
  const layers = [...section.layers].sort((a, b) => b.top - a.top);
  const x_line = width - right + 1.0 * font;
  const places = spread(
    layers.map((layer) => Y((layer.top + layer.bottom) / 2)), 1.3 * font, font, height - 1.7 * font * (below.length + 1),
  );
  layers.forEach((layer, i) => {
    const edge = X(section.width / 2) + 3;
    for (const y of [layer.top, layer.bottom]) {
      stroke(edge, Y(y), x_line + 5, Y(y), false, true);
      tick(x_line, Y(y));
    }
    stroke(x_line, Y(layer.bottom), x_line, Y(layer.top), layer.assumed);
    stroke(x_line + 4, Y((layer.top + layer.bottom) / 2), x_line + 1.3 * font, places[i], false, true);
    const size = millimetres(layer.top - layer.bottom);
    write(x_line + 1.5 * font, places[i], narrow ? size.replace(" mm", "") : `${layer.name} ${size}`, "start", layer.assumed);
  });

  // Diameters below.
  const ordered = [...below].sort((a, b) => a.width - b.width);
  ordered.forEach((each, i) => {
    const y = bottom + 1.7 * font * (i + 1) + 0.3 * font;
    const half = each.width / 2;
    for (const x of [-half, half]) {
      stroke(X(x), Y(each.y), X(x), y + 4, false, true);
      tick(X(x), y);
    }
    stroke(X(-half), y, X(half), y, each.assumed);
    write(middle, y - 0.62 * font, `${bare(each.name)} Ø ${millimetres(each.width)}`, "middle", each.assumed);
  });
  const y_bar = height - 0.9 * font;
  stroke(left, y_bar, left + 10 * s, y_bar, false);
  stroke(left, y_bar - 4, left, y_bar + 4, false);
  stroke(left + 10 * s, y_bar - 4, left + 10 * s, y_bar + 4, false);
  write(left + 10 * s + 8, y_bar, "10 mm, drawn to scale", "start");

  return svg(
    "svg",
    {
      viewBox: `0 0 ${width} ${height}`, width, height, role: "img", "font-family": font_family, "font-size": font,
      "aria-label": `Section of ${run.title}: ${layers.map((layer) => `${layer.name} ${millimetres(layer.top - layer.bottom)}${layer.assumed ? " (assumed)" : ""}`).join(", ")}`,
    },
    ...fills, ...lines, ...names,
  );
}

/** The Ø sign says "diameter" already. */
function bare(name: string): string {
  return name.replace(/,[^,]*diameter.*$/, "");
}

/** Part, material and thickness with the look of each part; below, what was assumed and in which parts. */
export function parts_table(page: Page, run: Run): HTMLElement {
  const r = page.report.runs.indexOf(run);
  const table = reading_table(
    `Parts of ${run.title}`,
    ["part", "material", "thickness"],
    run.parts.map((part, i) => [
      el("span", {}, swatch(page.looks.of(r, i)), part.name),
      part.material,
      part.thickness > 0 ? millimetres(part.thickness) : "–",
    ]),
    [2],
  );
  const phrases = new Map<string, string[]>();
  for (const part of run.parts) for (const phrase of part.assumed) phrases.set(phrase, [...(phrases.get(phrase) ?? []), part.name]);
  const list = [...phrases].map(([phrase, parts]) =>
    el("li", {}, el("strong", {}, parts.length === run.parts.length && parts.length > 1 ? "every part" : parts.join(", ")), `: ${phrase}`),
  );
  return el("div", {}, table, list.length > 0 ? el("p", { class: "note" }, "Assumed, not measured:") : null, list.length > 0 ? el("ul", { class: "note" }, ...list) : null);
}
