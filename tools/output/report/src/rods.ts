// SPDX-License-Identifier: Apache-2.0
// Drop weights beside one rule, to true scale: where each fell from, where it is now, how high it rebounds. Zero of the
// rule is the top of each stack before it is touched.
import type { Page } from "./block";
import type { Run } from "./data";
import type { Fall } from "./fall";
import { error_text, fixed } from "./format";
import type { Motion } from "./frames";
import { type Look, run_ink, type Theme } from "./looks";
import { paint_text } from "./picture";
import { type Box, draw_ground, draw_stack, draw_striker, font_family, type Place } from "./stage";

export interface Rod {
  run: Run;
  name: string;
  number: number; // of the run in the report
  fall: Fall;
  motion: Motion | null;
  half_width: number; // of the stack, mm
  height: number; // of the stack, mm
  outline: [number, number][]; // of the striker, right half, mm over its lowest point
  label: [string, string]; // of the rebound: "262 mm", "± 4"
}

const plain_striker = 30; // mm shown of a weight

/** A weight is cut off somewhere above the stack: at one height on all rods. A ball is whole. */
function as_high(outline: [number, number][]): [number, number][] {
  const top = Math.max(...outline.map(([, y]) => y));
  const cut = outline.some(([x, y]) => x > 0.01 && y > top - 1e-6);
  return cut ? outline.map(([x, y]) => [x, y > top - 1e-6 ? plain_striker : y]) : outline;
}

export function rod_of(page: Page, run: Run, name: string, fall: Fall, motion: Motion | null): Rod {
  const striker = run.section?.widths.find((each) => each.y >= (run.section?.height ?? 0) - 1e-6)?.width ?? 40;
  const half = striker / 2;
  const reading = run.readings.find((each) => each.name === "rebound_height");
  const half_band = reading?.band ?? reading?.error ?? 0;
  return {
    run, name, number: page.report.runs.indexOf(run), fall, motion,
    half_width: Math.max(half, motion?.width ?? (run.section?.width ?? 0) / 2),
    height: run.section?.height ?? motion?.height ?? 0,
    outline: motion?.frames.tupOutline.length ? as_high(motion.frames.tupOutline) : [[0, 0], [half, 0], [half, plain_striker], [0, plain_striker]],
    label: [`${fixed(fall.rise, 0)} mm`, half_band >= 0.5 ? `± ${error_text(half_band, 0)}` : ""],
  };
}

export interface RodPaint {
  theme: Theme;
  look: (run: number, part: number) => Look;
  gas: (run: Run, time: number) => { part: number; pressure: number; highest: number }[];
  density: number;
  font: number;
}

const top_of = (rod: Rod) => Math.max(...rod.outline.map(([, y]) => y));

/** Width that `rods` want in a box of this height. */
export function rods_width(rods: Rod[], height: number, font: number): number {
  const { per_mm } = scale_of(rods, Infinity, height, font);
  return 4 * font + rods.reduce((sum, rod) => sum + column(rod, per_mm, font), 0);
}

const column = (rod: Rod, per_mm: number, font: number) => Math.max(2.25 * rod.half_width * per_mm, 6.2 * font);

function scale_of(rods: Rod[], width: number, height: number, font: number): { per_mm: number; highest: number } {
  const highest = Math.max(...rods.map((rod) => Math.max(rod.fall.height, rod.fall.rise) + top_of(rod)));
  const deepest = Math.max(...rods.map((rod) => rod.height));
  const by_height = (height - 5.2 * font) / (highest + deepest);
  const by_width = (width - 4 * font) / rods.reduce((sum, rod) => sum + 2.25 * rod.half_width, 0);
  return { per_mm: Math.min(by_height, by_width), highest };
}

export function draw_rods(pen: CanvasRenderingContext2D, box: Box, rods: Rod[], time_of: (run: Run) => number, paint: RodPaint): void {
  const { font, theme } = paint;
  const { per_mm, highest } = scale_of(rods, box.width, box.height, font);
  const zero = box.y + 1.6 * font + highest * per_mm;
  const Y = (y: number) => zero - y * per_mm;
  pen.save();
  const left = box.x + 4 * font;
  draw_rule(pen, box, left, Y, Math.max(...rods.map((rod) => Math.max(rod.fall.height, rod.fall.rise))), per_mm, paint);
  const columns = rods.map((rod) => column(rod, per_mm, font));
  const spare = Math.max(0, box.width - 4 * font - columns.reduce((sum, each) => sum + each, 0)) / rods.length;
  let x = left;
  rods.forEach((rod, i) => {
    const width = columns[i] + spare;
    draw_rod(pen, x + width / 2, width, rod, time_of(rod.run), Y, per_mm, paint);
    x += width;
  });
  pen.restore();
  pen.fillStyle = theme.colour("--ink");
}

function draw_rule(pen: CanvasRenderingContext2D, box: Box, left: number, Y: (y: number) => number, highest: number, per_mm: number, { theme, font }: RodPaint): void {
  const step = [10, 20, 50, 100, 200, 500].find((each) => each * per_mm > 2.2 * font) ?? 1000;
  pen.font = `${0.85 * font}px ${font_family}`;
  pen.textAlign = "right";
  pen.textBaseline = "middle";
  for (let mark = 0; mark <= highest + 1e-6; mark += step / 5) {
    const labelled = Math.abs(mark / step - Math.round(mark / step)) < 1e-6;
    pen.strokeStyle = theme.colour(labelled ? "--rule" : "--faint-ink");
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(labelled ? left - 8 : left - 4, Y(mark));
    pen.lineTo(labelled ? box.x + box.width : left, Y(mark));
    pen.stroke();
    pen.fillStyle = theme.colour("--ink");
    if (labelled) pen.fillText(fixed(mark, 0), left - 11, Y(mark));
  }
  pen.strokeStyle = theme.colour("--ink");
  pen.lineWidth = 1.4;
  pen.beginPath();
  pen.moveTo(left, Y(0));
  pen.lineTo(left, Y(highest));
  pen.stroke();
  pen.textAlign = "left";
  pen.fillText("mm", box.x, Y(highest) - 1.2 * font);
}

function draw_rod(
  pen: CanvasRenderingContext2D, middle: number, width: number, rod: Rod, time: number, Y: (y: number) => number, per_mm: number, paint: RodPaint,
): void {
  const { theme, font } = paint;
  const { fall } = rod;
  const colour = run_ink(rod.number);
  const above: Place = { X: (x, side) => middle + side * x * per_mm, Y, per_mm };
  const stack: Place = { ...above, Y: (y) => Y(y - rod.height) };
  // The guide, thin behind the weight.
  pen.strokeStyle = theme.colour("--faint-ink");
  pen.lineWidth = 0.8;
  pen.beginPath();
  pen.moveTo(middle, Y(Math.max(fall.height, fall.rise) + top_of(rod)) - 0.3 * font);
  pen.lineTo(middle, Y(0));
  pen.stroke();
  if (rod.motion) {
    draw_stack(pen, rod.motion, rod.motion.shape(time), stack, {
      theme, look: (part) => paint.look(rod.number, part), density: paint.density, field: null, gas: paint.gas(rod.run, time), type: 0,
    });
  } else {
    for (const layer of rod.run.section?.layers ?? []) {
      pen.fillStyle = theme.fill(pen, paint.look(rod.number, layer.part), paint.density);
      pen.strokeStyle = theme.colour("--ink");
      pen.lineWidth = 0.8;
      const rectangle = [stack.X(rod.half_width, -1), stack.Y(layer.top), 2 * rod.half_width * per_mm, (layer.top - layer.bottom) * per_mm] as const;
      pen.fillRect(...rectangle);
      pen.strokeRect(...rectangle);
    }
  }
  draw_ground(pen, middle, stack.Y(0), 1.05 * rod.half_width * per_mm, theme);
  draw_striker(pen, rod.outline, fall.height, above, theme, "--faint-ink");
  draw_striker(pen, rod.outline, fall.rise, above, theme, colour);
  draw_striker(pen, rod.outline, fall.level(time), above, theme);
  // The mark of the rebound: across the column, with its number.
  const reach = Math.min(width / 2 - 4, Math.max(rod.half_width * per_mm, 2.6 * font));
  pen.strokeStyle = theme.colour(colour);
  pen.lineWidth = 2.6;
  pen.beginPath();
  pen.moveTo(middle - reach, Y(fall.rise));
  pen.lineTo(middle + reach, Y(fall.rise));
  pen.stroke();
  const bold = `bold ${1.1 * font}px ${font_family}`;
  pen.font = bold;
  const whole = rod.label.join(" ").trim();
  const lines = pen.measureText(whole).width < width - 6 ? [whole] : rod.label;
  lines.forEach((line, i) => write(pen, line, middle, Y(fall.rise) + (0.95 + 1.2 * i) * font, bold, colour, theme));
  // Names under the ground line, in as many lines as fit.
  pen.font = `${font}px ${font_family}`;
  const words = rod.name.length * 0.5 * font > width ? rod.name.replace(/[-,] ?/g, (mark) => `${mark} `) : rod.name;
  paint_text(pen, words, middle - width / 2 + 2, stack.Y(0) + 0.5 * font, width - 4, { size: font, colour: theme.colour("--ink"), most: 2, centred: true });
}

function write(pen: CanvasRenderingContext2D, text: string, x: number, y: number, font: string, colour: string, theme: Theme): void {
  pen.font = font;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  pen.lineWidth = 5;
  pen.lineJoin = "round";
  pen.strokeStyle = theme.colour("--paper");
  pen.strokeText(text, x, y);
  pen.fillStyle = theme.colour(colour);
  pen.fillText(text, x, y);
  pen.textAlign = "left";
}
