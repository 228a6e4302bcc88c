// SPDX-License-Identifier: Apache-2.0
// Line blocks that are drawings and not charts: the outline of a lug to scale, and the grip of a sole on a footprint, one
// length for one grip in every direction.
import { areaY, line, type Markish } from "@observablehq/plot";
import type { LineChart } from "./data";
import { svg } from "./dom";
import { fixed } from "./format";
import { dashes, run_colour } from "./looks";
import { reading_table } from "./table";

/** Both quantities are lengths of one thing: drawn to one scale, from the ground up. */
export function is_outline(parts: LineChart): boolean {
  return !parts.round && parts.yLabel.startsWith("height") && parts.yLabel.endsWith("mm") && parts.xLabel.endsWith("mm");
}

/** What stays of a lug under each line, the first filled; heights from the ground of the lug. */
export function outline_marks(parts: LineChart, number: (name: string) => number): Markish[] {
  const points = (each: LineChart["lines"][number]) => each.x.map((x, i) => [x, each.y[i]]);
  const last = parts.lines.at(-1);
  return [
    ...(parts.lines[0] ? [areaY(points(parts.lines[0]), { x: "0", y: "1", fill: "var(--tone-9)", fillOpacity: 0.35 })] : []),
    ...(last && parts.lines.length > 1 ? [areaY(points(last), { x: "0", y: "1", fill: "var(--deep-9)", fillOpacity: 0.35 })] : []),
    ...parts.lines.map((each) => line(points(each), { stroke: run_colour(number(each.name)), strokeWidth: 2, strokeDasharray: dashes[number(each.name) % dashes.length] })),
  ];
}

/** An invented right footprint, seen from above, ahead up, about its ball; unit: half its length. */
const footprint =
  "M-0.02-0.98C0.16-1.02 0.3-0.86 0.34-0.6C0.38-0.34 0.34-0.1 0.28 0.16C0.22 0.42 0.26 0.66 0.2 0.86C0.16 1.02-0.14 1.04-0.2 0.86C-0.26 0.66-0.16 0.4-0.2 0.14C-0.24-0.1-0.36-0.28-0.34-0.54C-0.32-0.78-0.2-0.94-0.02-0.98Z";

/** Grip in eight directions as arrows from the ball of a footprint. x: to the outer side, y: ahead. */
export function grip_drawing(parts: LineChart, width: number, font: number): SVGSVGElement {
  const height = Math.round(1.05 * width);
  const all = parts.lines.flatMap((each) => each.x.map((x, i) => Math.hypot(x, each.y[i])));
  const reach = Math.max(0.001, ...all);
  const scale = (0.5 * width - 3.4 * font) / reach;
  const [cx, cy] = [width / 2, height / 2];
  const foot = 0.36 * height;
  const marks: SVGElement[] = [
    svg("path", { d: footprint, transform: `translate(${cx} ${cy + 0.34 * foot}) scale(${foot})`, fill: "var(--tone-9)", "fill-opacity": 0.35, stroke: "var(--faint-ink)", "stroke-width": 1.2 / foot }),
  ];
  parts.lines.forEach((each, l) => {
    const colour = run_colour(l);
    const ring = each.x.map((x, i) => `${i === 0 ? "M" : "L"}${(cx + scale * x).toFixed(1)} ${(cy - scale * each.y[i]).toFixed(1)}`).join("");
    marks.push(svg("path", { d: ring, fill: "none", stroke: colour, "stroke-width": 1.2, "stroke-dasharray": dashes[l % dashes.length] || "none", "stroke-opacity": 0.6 }));
    for (let k = 0; k < 8; ++k) {
      const [dx, dy] = [Math.sin((k * Math.PI) / 4), Math.cos((k * Math.PI) / 4)];
      const grip = grip_towards(each, dx, dy);
      const shift = 5 * (l - (parts.lines.length - 1) / 2); // arrows of several soles lie beside each other
      const [x0, y0] = [cx + shift * dy, cy + shift * dx];
      const [x1, y1] = [x0 + scale * grip * dx, y0 - scale * grip * dy];
      marks.push(svg("path", { d: arrow(x0, y0, x1, y1), fill: "none", stroke: colour, "stroke-width": 2.2, "stroke-linecap": "round" }));
      if (l === 0) {
        const words = parts.lines.map((other) => fixed(grip_towards(other, dx, dy), 2)).join(" / ");
        marks.push(svg("text", { x: x1 + 1.1 * font * dx, y: y1 - 0.9 * font * dy, "text-anchor": dx > 0.4 ? "start" : dx < -0.4 ? "end" : "middle", "dominant-baseline": "central", fill: "var(--ink)" }, words));
      }
    }
  });
  const name = (x: number, y: number, words: string, anchor: string) => marks.push(svg("text", { x, y, "text-anchor": anchor, fill: "var(--faint-ink)", "font-size": 0.92 * font }, words));
  name(cx, 0.9 * font, "ahead", "middle");
  name(cx, height - 0.3 * font, "back", "middle");
  name(width - 2, cy - 1.6 * font, "outer side", "end");
  name(2, cy - 1.6 * font, "inner side", "start");
  return svg("svg", { viewBox: `0 0 ${width} ${height}`, width, height, "font-size": font, fill: "none" }, ...marks);
}

/** Of many soles or zones the same in figures. */
export function grip_cells(parts: LineChart): { columns: string[]; rows: string[][] } {
  const directions: [string, number, number][] = [["ahead", 0, 1], ["outwards", 1, 0], ["back", 0, -1], ["inwards", -1, 0]];
  return {
    columns: ["", ...directions.map(([name]) => name)],
    rows: parts.lines.map((each) => [each.name, ...directions.map(([, dx, dy]) => fixed(grip_towards(each, dx, dy), 2))]),
  };
}

export function grip_table(parts: LineChart): HTMLElement {
  const { columns, rows } = grip_cells(parts);
  return reading_table(parts.name, columns, rows, [1, 2, 3, 4]);
}

function arrow(x0: number, y0: number, x1: number, y1: number): string {
  const turn = Math.atan2(y1 - y0, x1 - x0);
  const tip = (side: number) => `${x1 - 9 * Math.cos(turn + side * 0.45)} ${y1 - 9 * Math.sin(turn + side * 0.45)}`;
  return `M${x0} ${y0}L${x1} ${y1}M${tip(1)}L${x1} ${y1}L${tip(-1)}`;
}

/** Length of the line round the origin in a direction: straight between its points. */
function grip_towards(each: { x: number[]; y: number[] }, dx: number, dy: number): number {
  let best = 0;
  for (let i = 0; i + 1 < each.x.length; ++i) {
    const [ax, ay, ex, ey] = [each.x[i], each.y[i], each.x[i + 1] - each.x[i], each.y[i + 1] - each.y[i]];
    const across = ex * dy - ey * dx;
    const s = across === 0 ? 0 : (ay * dx - ax * dy) / across; // a + s e lies on the ray
    if (s >= -1e-9 && s <= 1 + 1e-9) best = Math.max(best, (ax + s * ex) * dx + (ay + s * ey) * dy);
  }
  return best;
}
