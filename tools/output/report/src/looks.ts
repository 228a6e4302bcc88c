// SPDX-License-Identifier: Apache-2.0
// How a part or a run looks: an accent colour and a pattern, so that colour is never the only difference. The same
// tile is drawn in SVG and on a canvas. Colours are variables of report.css; a picture to save takes the light ones.
import type { Part, Report } from "./data";
import { svg } from "./dom";

/** Lines of an 8 x 8 tile; `dots`: filled instead of stroked. */
const tiles: { lines: string; dots?: boolean; width?: number }[] = [
  { lines: "M-2 2L2 -2M0 8L8 0M6 10L10 6" },
  { lines: "M3 4a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0 -2.2 0", dots: true },
  { lines: "M0 2H8M0 6H8" },
  { lines: "M0 4H8M4 0V8", width: 0.7 },
  { lines: "M-2 6L2 10M0 0L8 8M6 -2L10 2" },
  { lines: "M2 0V8M6 0V8" },
  { lines: "M0 5L2 3L4 5L6 3L8 5" },
  { lines: "M4 2V6M2 4H6" },
  { lines: "M0 0L8 8M8 0L0 8", width: 0.7 },
  { lines: "M1.8 4a2.2 2.2 0 1 0 4.4 0a2.2 2.2 0 1 0 -4.4 0" },
];
export const dashes = ["", "9 3", "2 3", "9 3 2 3", "5 2", "12 3 2 3 2 3"];
export const symbols = ["circle", "square", "triangle", "diamond", "star", "wye"] as const;

export interface Look {
  id: string; // of the SVG pattern
  fill: string; // paint for SVG: url(#...)
  tone: string; // CSS variable of the plain fill
  deep: string; // CSS variable of the lines
  tile: number; // -1: plain
}

function look(id: string, tone: string, deep: string, tile: number): Look {
  return { id, fill: tile < 0 ? `var(${tone})` : `url(#${id})`, tone, deep, tile };
}

export const returned_look = look("look-returned", "--ink", "--ink", -1);
export const guide_look = look("look-guide", "--tone-guide", "--deep-guide", 5);
export const left_look = look("look-left", "--paper", "--deep-guide", 1);
export const weight_look = look("look-weight", "--tone-weight", "--deep-guide", -1);
export const doubt_look = look("look-doubt", "--paper", "--faint-ink", 0);
export const raise_look = look("look-raise", "--run-0", "--run-0", -1);
export const lower_look = look("look-lower", "--tone-lower", "--run-1", 4);

/** Looks of parts: the program says which tone and hatch a material has, here as in its pictures. */
export class PartLooks {
  private readonly known = new Map<string, Look>();

  constructor(private readonly report: Report) {
    for (const run of report.runs) for (const part of run.parts) if (part.tone >= 0) this.known.set(key_of(part), look(`look-${key_of(part)}`, `--tone-${part.tone}`, `--deep-${part.tone}`, part.hatch));
  }

  of(run: number, part: number): Look {
    const one = this.report.runs[run]?.parts[part];
    return (one && this.known.get(key_of(one))) || left_look;
  }

  all(): Look[] {
    return [...this.known.values(), guide_look, left_look, doubt_look, lower_look];
  }
}

function key_of(part: Part): string {
  return `${part.tone}-${part.hatch}`;
}

/** The definitions that the fills of charts and drawings refer to. */
export function pattern_definitions(looks: Look[]): SVGDefsElement {
  return svg(
    "defs",
    {},
    ...looks
      .filter((each) => each.tile >= 0)
      .map((each) => {
        const tile = tiles[each.tile];
        const paint = tile.dots
          ? { fill: `var(${each.deep})` }
          : { fill: "none", stroke: `var(${each.deep})`, "stroke-width": tile.width ?? 1 };
        return svg(
          "pattern",
          { id: each.id, width: 8, height: 8, patternUnits: "userSpaceOnUse" },
          svg("rect", { width: 8, height: 8, fill: `var(${each.tone})` }),
          svg("path", { d: tile.lines, ...paint }),
        );
      }),
  );
}

/** Reads colours where `element` stands: dark, light or printed. */
export class Theme {
  private readonly style: CSSStyleDeclaration;
  private readonly patterns = new Map<string, CanvasPattern | string>();

  constructor(element: Element) {
    this.style = getComputedStyle(element);
  }

  colour(variable: string): string {
    return this.style.getPropertyValue(variable).trim() || "#808080";
  }

  /** Fill of a part on a canvas whose pixels are `density` to one of the drawing. */
  fill(context: CanvasRenderingContext2D, look: Look, density: number): CanvasPattern | string {
    if (look.tile < 0) return this.colour(look.tone);
    const key = `${look.id} ${density}`;
    const known = this.patterns.get(key);
    if (known) return known;
    const size = Math.max(8, Math.round(8 * density));
    const canvas = document.createElement("canvas");
    canvas.width = canvas.height = size;
    const pen = canvas.getContext("2d");
    if (!pen) return this.colour(look.tone);
    const tile = tiles[look.tile];
    pen.scale(size / 8, size / 8);
    pen.fillStyle = this.colour(look.tone);
    pen.fillRect(0, 0, 8, 8);
    pen.fillStyle = pen.strokeStyle = this.colour(look.deep);
    pen.lineWidth = tile.width ?? 1;
    const path = new Path2D(tile.lines);
    if (tile.dots) pen.fill(path);
    else pen.stroke(path);
    const pattern = context.createPattern(canvas, "repeat");
    if (!pattern) return this.colour(look.tone);
    pattern.setTransform(new DOMMatrix().scale(1 / density));
    this.patterns.set(key, pattern);
    return pattern;
  }
}

/** A small square of the look for legends. */
export function swatch(look: Look, faint = false): SVGSVGElement {
  return svg(
    "svg",
    { class: "swatch", width: 22, height: 16, "aria-hidden": "true" },
    svg("rect", {
      x: 0.5, y: 0.5, width: 21, height: 15, fill: faint ? `var(${look.tone})` : look.fill,
      stroke: "var(--ink)", "stroke-width": 0.8,
    }),
  );
}

/** A stroke of a run's line for legends. */
export function line_swatch(run: number): SVGSVGElement {
  return svg(
    "svg",
    { class: "swatch", width: 38, height: 16, "aria-hidden": "true" },
    svg("line", {
      x1: 1, x2: 37, y1: 8, y2: 8, stroke: run_colour(run), "stroke-width": 2.4,
      "stroke-dasharray": dashes[run % dashes.length],
    }),
  );
}

/** Variable of the colour of a run. */
export function run_ink(run: number): string {
  return `--run-${run % 6}`;
}

export function run_colour(run: number): string {
  return `var(${run_ink(run)})`;
}
