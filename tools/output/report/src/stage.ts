// SPDX-License-Identifier: Apache-2.0
// Draws the section at one moment on a canvas: parts in their looks or a quantity in one hue, striker, ground.
import { scale as make_scale } from "@observablehq/plot";
import type { Field } from "./data";
import type { Motion, Shape } from "./frames";
import { type Look, type Theme } from "./looks";

export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** What of the world (mm) has to fit into a box: shared by all runs so that they are drawn to one scale. */
export interface Extent {
  half_width: number;
  height: number;
}

export interface Paint {
  theme: Theme;
  look: (part: number) => Look;
  density: number; // pixels of the canvas to one of the box
  field: { field: Field; values: Float32Array; low: number; high: number } | null;
  gas?: { part: number; pressure: number; highest: number }[]; // kPa over the atmosphere; highest of the page
  type?: number; // size of lettering, 1 on the page
}

const n_shades = 96;

/** Colours from low to high; even steps of lightness (CIELAB) in one hue. Small stretch is strong squeeze, so it is the deep end. */
export function shades(theme: Theme, field: Field): string[] {
  const ends = [theme.colour("--low-field"), theme.colour(`--high-${field.name}`)];
  if (field.name === "stretch") ends.reverse();
  const colour = make_scale({ color: { type: "linear", domain: [0, n_shades - 1], range: ends, interpolate: "lab" } });
  return Array.from({ length: n_shades }, (_, i) => String(colour.apply(i)));
}

/** Where a point of the world (mm, right half; `side` -1: its mirror image) lies in a box. */
export interface Place {
  X: (x: number, side: number) => number;
  Y: (y: number) => number;
  per_mm: number;
}

/** Draw; returns the scale in box units per mm. */
export function draw_stage(
  pen: CanvasRenderingContext2D, box: Box, motion: Motion, shape: Shape, extent: Extent, paint: Paint,
): number {
  const per_mm = Math.min(box.width / (2 * extent.half_width), box.height / extent.height);
  const ground = box.y + box.height - 4;
  const middle = box.x + box.width / 2;
  const place: Place = { X: (x, side) => middle + side * x * per_mm, Y: (y) => ground - y * per_mm, per_mm };
  pen.save();
  pen.beginPath();
  pen.rect(box.x, box.y, box.width, box.height);
  pen.clip();
  draw_stack(pen, motion, shape, place, paint);
  draw_striker(pen, motion.frames.tupOutline, shape.tup, place, paint.theme);
  draw_ground(pen, middle, ground, extent.half_width * per_mm, paint.theme);
  pen.restore();
  return per_mm;
}

export function draw_ground(pen: CanvasRenderingContext2D, middle: number, ground: number, half: number, theme: Theme): void {
  pen.strokeStyle = theme.colour("--ink");
  pen.lineWidth = 2.4;
  pen.beginPath();
  pen.moveTo(middle - half, ground + 1.2);
  pen.lineTo(middle + half, ground + 1.2);
  pen.stroke();
}

/** The parts of the stack, both halves, and the gas in its units. */
export function draw_stack(pen: CanvasRenderingContext2D, motion: Motion, shape: Shape, { X, Y, per_mm }: Place, paint: Paint): void {
  const { frames } = motion;
  pen.lineJoin = "round";
  if (paint.field) draw_field(pen, motion, shape, paint, X, Y);
  for (const outline of frames.outlines) {
    for (const side of paint.field ? [] : [-1, 1]) {
      pen.beginPath();
      outline.nodes.forEach((node, i) => {
        // A hair across the axis, so that no seam shows between the halves.
        const x = shape.x[node] < 0.01 ? -0.5 / per_mm : shape.x[node];
        if (i === 0) pen.moveTo(X(x, side), Y(shape.y[node]));
        else pen.lineTo(X(x, side), Y(shape.y[node]));
      });
      pen.closePath();
      pen.fillStyle = paint.theme.fill(pen, paint.look(outline.part), paint.density);
      pen.fill();
    }
  }
  draw_gas(pen, motion, shape, { X, Y, per_mm }, paint);
  pen.strokeStyle = paint.theme.colour("--ink");
  pen.lineWidth = Math.min(1, 0.5 + 0.15 * per_mm);
  pen.beginPath();
  for (const { nodes } of frames.outlines)
    nodes.forEach((node, i) => {
      const other = nodes[(i + 1) % nodes.length];
      if (shape.x[node] < 0.01 && shape.x[other] < 0.01) return;
      for (const side of [-1, 1]) {
        pen.moveTo(X(shape.x[node], side), Y(shape.y[node]));
        pen.lineTo(X(shape.x[other], side), Y(shape.y[other]));
      }
    });
  pen.stroke();
}

/** How deep the tint of a gas is, 0..1: empty units stay pale, the highest pressure of the page is deepest. */
export function gas_tint(pressure: number, highest: number): number {
  return 0.12 + 0.68 * Math.min(1, Math.max(0, pressure) / (highest || 1));
}

function draw_gas(pen: CanvasRenderingContext2D, motion: Motion, shape: Shape, { X, Y, per_mm }: Place, paint: Paint): void {
  for (const gas of paint.gas ?? [])
    for (const nodes of motion.cavities(gas.part)) {
      pen.beginPath();
      for (const side of [-1, 1]) {
        nodes.forEach((node, i) => {
          const x = shape.x[node] < 0.01 ? 0 : shape.x[node];
          if (i === 0) pen.moveTo(X(x, side), Y(shape.y[node]));
          else pen.lineTo(X(x, side), Y(shape.y[node]));
        });
        pen.closePath();
      }
      pen.globalAlpha = gas_tint(gas.pressure, gas.highest);
      pen.fillStyle = paint.theme.colour("--gas");
      pen.fill();
      pen.globalAlpha = 1;
      // The lettering goes where the unit is highest.
      const [middle, low, high] = highest_gap(nodes, shape);
      const room = 2 * (Math.max(...nodes.map((node) => shape.x[node])) - middle) * per_mm;
      const font = Math.min(16 * (paint.type ?? 1), 0.75 * (high - low) * per_mm, room / 5);
      if (font < 9) continue;
      pen.font = `${font}px ${font_family}`;
      pen.textAlign = "center";
      pen.textBaseline = "middle";
      pen.lineWidth = 4;
      pen.strokeStyle = paint.theme.colour("--paper");
      pen.fillStyle = paint.theme.colour("--ink");
      for (const draw of ["strokeText", "fillText"] as const) pen[draw](`${gas.pressure.toFixed(0)} kPa`, X(middle, 1), Y((low + high) / 2));
      pen.textAlign = "left";
    }
}

/** Where a hollow is highest: distance from the axis, lower and upper face. */
function highest_gap(nodes: number[], shape: Shape): [number, number, number] {
  const reach = Math.max(...nodes.map((node) => shape.x[node]));
  const faces = (x: number): number[] => {
    const heights: number[] = [];
    for (let i = 0; i + 1 < nodes.length; ++i) {
      const [a, b] = [shape.x[nodes[i]], shape.x[nodes[i + 1]]];
      if ((a - x) * (b - x) > 0 || a === b) continue;
      heights.push(shape.y[nodes[i]] + ((x - a) / (b - a)) * (shape.y[nodes[i + 1]] - shape.y[nodes[i]]));
    }
    return heights;
  };
  let best: [number, number, number] = [0, 0, 0];
  for (let k = 0; k <= 12; ++k) {
    const x = (0.8 * reach * k) / 12;
    const heights = faces(x);
    if (heights.length < 2) continue;
    const [low, high] = [Math.min(...heights), Math.max(...heights)];
    if (high - low > 1.05 * (best[2] - best[1])) best = [x, low, high];
  }
  return best;
}

/** The striker with its lowest point at `tup` mm; `ghost`: only its dashed outline, where it was or will be. */
export function draw_striker(
  pen: CanvasRenderingContext2D, outline: [number, number][], tup: number, { X, Y }: Place, theme: Theme, ghost = "",
): void {
  pen.save();
  pen.beginPath();
  for (const side of [-1, 1])
    outline.forEach(([x, y], i) => {
      if (i === 0) pen.moveTo(X(x, side), Y(tup + y));
      else pen.lineTo(X(x, side), Y(tup + y));
    });
  pen.closePath();
  pen.fillStyle = theme.colour("--tone-weight");
  if (!ghost) pen.fill();
  pen.strokeStyle = theme.colour(ghost || "--ink");
  if (ghost) pen.setLineDash([5, 4]);
  pen.lineWidth = 1.6;
  pen.beginPath();
  for (const side of [-1, 1])
    outline.forEach(([x, y], i) => {
      const [from_x, from_y] = outline[i === 0 ? outline.length - 1 : i - 1];
      if (x < 0.01 && from_x < 0.01) return;
      pen.moveTo(X(from_x, side), Y(tup + from_y));
      pen.lineTo(X(x, side), Y(tup + y));
    });
  pen.stroke();
  pen.restore();
}

function draw_field(
  pen: CanvasRenderingContext2D, motion: Motion, shape: Shape, paint: Paint,
  X: (x: number, side: number) => number, Y: (y: number) => number,
): void {
  if (!paint.field) return;
  const { field, values, low, high } = paint.field;
  const colours = shades(paint.theme, field);
  const { quads, quadPart, n } = motion.frames;
  const n_cells = quadPart.length;
  const a = shape.first * n_cells;
  const b = Math.min(shape.first + 1, n - 1) * n_cells;
  const paths: (Path2D | undefined)[] = new Array(n_shades);
  for (let cell = 0; cell < n_cells; ++cell) {
    const value = (1 - shape.share) * values[a + cell] + shape.share * values[b + cell];
    const level = Math.min(1, Math.max(0, (value - low) / (high - low || 1)));
    const path = (paths[Math.round(level * (n_shades - 1))] ??= new Path2D());
    for (const side of [-1, 1]) {
      for (let k = 0; k < 4; ++k) {
        const node = quads[4 * cell + k];
        if (k === 0) path.moveTo(X(shape.x[node], side), Y(shape.y[node]));
        else path.lineTo(X(shape.x[node], side), Y(shape.y[node]));
      }
      path.closePath();
    }
  }
  pen.lineWidth = 0.8; // closes the hairlines between cells
  paths.forEach((path, i) => {
    if (!path) return;
    pen.fillStyle = pen.strokeStyle = colours[i];
    pen.fill(path);
    pen.stroke(path);
  });
}

/** Plain continuous bar of a quantity, its ends and its unit. */
export function draw_field_bar(
  pen: CanvasRenderingContext2D, box: Box, theme: Theme, field: Field, ends: [string, string], font_size: number,
): void {
  const bar_height = 0.8 * font_size;
  const colours = shades(theme, field);
  const bar = pen.createLinearGradient(box.x, 0, box.x + box.width, 0);
  colours.forEach((colour, i) => bar.addColorStop(i / (n_shades - 1), colour));
  pen.font = `${font_size}px ${font_family}`;
  pen.fillStyle = theme.colour("--ink");
  pen.textBaseline = "top";
  pen.textAlign = "left";
  pen.fillText(field.unit ? `${field.label}, ${field.unit}` : field.label, box.x, box.y, box.width);
  const y = box.y + 1.3 * font_size;
  pen.fillStyle = bar;
  pen.fillRect(box.x, y, box.width, bar_height);
  pen.strokeStyle = theme.colour("--ink");
  pen.lineWidth = 1;
  pen.strokeRect(box.x, y, box.width, bar_height);
  pen.fillStyle = theme.colour("--ink");
  pen.fillText(ends[0], box.x, y + bar_height + 0.2 * font_size);
  pen.textAlign = "right";
  pen.fillText(ends[1], box.x + box.width, y + bar_height + 0.2 * font_size);
  pen.textAlign = "left";
}

export const font_family = '"Source Serif 4", Charter, Georgia, "DejaVu Serif", serif';
