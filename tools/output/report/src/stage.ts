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
}

const n_shades = 96;

/** Colours from low to high; even steps of lightness (CIELAB) in one hue. Small stretch is strong squeeze, so it is the deep end. */
export function shades(theme: Theme, field: Field): string[] {
  const ends = [theme.colour("--low-field"), theme.colour(`--high-${field.name}`)];
  if (field.name === "stretch") ends.reverse();
  const colour = make_scale({ color: { type: "linear", domain: [0, n_shades - 1], range: ends, interpolate: "lab" } });
  return Array.from({ length: n_shades }, (_, i) => String(colour.apply(i)));
}

/** Draw; returns the scale in box units per mm. */
export function draw_stage(
  pen: CanvasRenderingContext2D, box: Box, motion: Motion, shape: Shape, extent: Extent, paint: Paint,
): number {
  const per_mm = Math.min(box.width / (2 * extent.half_width), box.height / extent.height);
  const ink = paint.theme.colour("--ink");
  const ground = box.y + box.height - 4;
  const middle = box.x + box.width / 2;
  const X = (x: number, side: number) => middle + side * x * per_mm;
  const Y = (y: number) => ground - y * per_mm;
  const { frames } = motion;
  pen.save();
  pen.beginPath();
  pen.rect(box.x, box.y, box.width, box.height);
  pen.clip();
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
  pen.strokeStyle = ink;
  pen.lineWidth = 1;
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

  pen.beginPath();
  for (const side of [-1, 1])
    frames.tupOutline.forEach(([x, y], i) => {
      if (i === 0) pen.moveTo(X(x, side), Y(shape.tup + y));
      else pen.lineTo(X(x, side), Y(shape.tup + y));
    });
  pen.closePath();
  pen.fillStyle = paint.theme.colour("--tone-weight");
  pen.fill();
  pen.lineWidth = 1.6;
  pen.beginPath();
  for (const side of [-1, 1])
    frames.tupOutline.forEach(([x, y], i) => {
      const [from_x, from_y] = frames.tupOutline[i === 0 ? frames.tupOutline.length - 1 : i - 1];
      if (x < 0.01 && from_x < 0.01) return;
      pen.moveTo(X(from_x, side), Y(shape.tup + from_y));
      pen.lineTo(X(x, side), Y(shape.tup + y));
    });
  pen.stroke();

  pen.lineWidth = 2.4;
  pen.beginPath();
  pen.moveTo(middle - extent.half_width * per_mm, ground + 1.2);
  pen.lineTo(middle + extent.half_width * per_mm, ground + 1.2);
  pen.stroke();
  pen.restore();
  return per_mm;
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
