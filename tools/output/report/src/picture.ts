// SPDX-License-Identifier: Apache-2.0
// Pictures to save: title, sentence, content and the line "model" or "measured", in type that reads across a room.
import type { Report } from "./data";
import { download, file_name } from "./dom";
import { dashes, type Look, type PartLooks, pattern_definitions, Theme } from "./looks";
import { type Box, font_family } from "./stage";

export interface Size {
  width: number;
  height: number;
  name: string;
}
export const sizes: Size[] = [
  { width: 1920, height: 1080, name: "16:9" },
  { width: 1080, height: 1920, name: "9:16" },
];

/** What a block paints into its part of a picture. Type of `font` pixels reads well. */
export type Painter = (pen: CanvasRenderingContext2D, box: Box, theme: Theme, font: number) => Promise<void> | void;

let light_place: HTMLElement | null = null;

/** Colours for print and pictures, whatever the page shows. */
export function light_theme(): Theme {
  if (!light_place) {
    light_place = document.createElement("div");
    light_place.className = "light";
    light_place.hidden = true;
    document.body.append(light_place);
  }
  return new Theme(light_place);
}

export function origin_line(report: Report): string {
  if (report.origin === "measured") return "measured on a bench";
  return `model: computed, not measured${report.invented ? `; ${report.invented}` : ""}`;
}

/** Lines of `text` that fit `width`. */
export function wrapped(pen: CanvasRenderingContext2D, text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    const longer = line ? `${line} ${word}` : word;
    if (line && pen.measureText(longer).width > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line) lines.push(line);
  return lines;
}

/** Paint wrapped text with its top at y, in at most `most` lines: type is set smaller, to two thirds, before words are
 *  left out. Returns the y below it. */
export function paint_text(
  pen: CanvasRenderingContext2D, text: string, x: number, y: number, width: number,
  style: { size: number; weight?: string; colour: string; most?: number; centred?: boolean },
): number {
  const { most } = style;
  let size = style.size;
  const set = () => {
    pen.font = `${style.weight ?? "normal"} ${size}px ${font_family}`;
    return wrapped(pen, text, width);
  };
  let lines = set();
  while (most && size > 0.67 * style.size && (lines.length > most || lines.some((line) => pen.measureText(line).width > width))) {
    size *= 0.94;
    lines = set();
  }
  pen.fillStyle = style.colour;
  pen.textBaseline = "top";
  pen.textAlign = style.centred ? "center" : "left";
  if (most && lines.length > most) {
    lines = lines.slice(0, most);
    lines[most - 1] += " …";
  }
  for (const line of lines) {
    pen.fillText(line, style.centred ? x + width / 2 : x, y, width);
    y += 1.28 * size;
  }
  pen.textAlign = "left";
  return y;
}

export interface Frame {
  title: string; // of the block
  about: string; // what the page is about
  sentence: string;
  source: string; // "model: ..." or "measured ..."
  mind: string[]; // warnings that go with the numbers
}

/** Paint everything but the content; returns the room left for it. */
export function paint_frame(pen: CanvasRenderingContext2D, size: Size, theme: Theme, frame: Frame): Box {
  const margin = 0.055 * Math.min(size.width, size.height);
  const width = size.width - 2 * margin;
  const k = Math.min(size.width, size.height) / 1080;
  pen.fillStyle = theme.colour("--paper");
  pen.fillRect(0, 0, size.width, size.height);
  let y = margin;
  if (frame.about !== frame.title) y = paint_text(pen, frame.about, margin, y, width, { size: 30 * k, colour: theme.colour("--faint-ink"), most: 1 }) + 6 * k;
  y = paint_text(pen, frame.title, margin, y, width, { size: 58 * k, weight: "bold", colour: theme.colour("--ink"), most: 2 }) + 8 * k;
  y = paint_text(pen, frame.sentence, margin, y, width, { size: 40 * k, colour: theme.colour("--ink"), most: size.width > size.height ? 3 : 6 });
  const foot = size.height - margin - 30 * k;
  pen.strokeStyle = theme.colour("--ink");
  pen.lineWidth = 2 * k;
  pen.beginPath();
  pen.moveTo(margin, foot - 16 * k);
  pen.lineTo(margin + width, foot - 16 * k);
  pen.stroke();
  let above = foot;
  if (frame.mind.length > 0) {
    const words = `Mind: ${frame.mind.slice(0, 2).join(" ")}${frame.mind.length > 2 ? ` ${frame.mind.length - 2} more on the page.` : ""}`;
    pen.font = `${28 * k}px ${font_family}`;
    const lines = Math.min(2, wrapped(pen, words, width).length);
    above -= (14 + 36 * lines) * k;
    paint_text(pen, words, margin, above - 20 * k, width, { size: 28 * k, colour: theme.colour("--mark"), most: 2 });
  }
  paint_text(pen, `${frame.source} · solemech`, margin, foot, width, { size: 30 * k, colour: theme.colour("--ink"), most: 1 });
  y += 24 * k;
  return { x: margin, y, width, height: above - 36 * k - y };
}

/** Paint, encode and hand over a PNG of exactly `size`. */
export async function save_picture(report: Report, size: Size, frame: Frame, paint: Painter): Promise<void> {
  const canvas = document.createElement("canvas");
  canvas.width = size.width;
  canvas.height = size.height;
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("this browser cannot draw pictures");
  const theme = light_theme();
  await paint(pen, paint_frame(pen, size, theme, frame), theme, 30);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
  if (!blob) throw new Error("this browser cannot encode pictures");
  download(`${file_name(report.label, frame.title)}-${size.width}x${size.height}.png`, blob);
}

const variables = [
  "--paper", "--sheet", "--ink", "--faint-ink", "--rule", "--mark", "--tone-guide", "--deep-guide", "--tone-weight", "--tone-lower", "--gas",
  ...Array.from({ length: 10 }, (_, i) => [`--tone-${i}`, `--deep-${i}`]).flat(),
  ...Array.from({ length: 6 }, (_, i) => `--run-${i}`),
];

/** Paint an SVG drawing into a box, as large as fits, sharp at any size; returns the y below it. */
export async function paint_svg(
  pen: CanvasRenderingContext2D, drawing: SVGSVGElement, box: Box, theme: Theme, looks: PartLooks,
): Promise<number> {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const [, , width, height] = (copy.getAttribute("viewBox") ?? `0 0 ${box.width} ${box.height}`).split(/[ ,]+/).map(Number);
  const k = Math.min(box.width / width, box.height / height);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(width * k));
  copy.setAttribute("height", String(height * k));
  copy.prepend(pattern_definitions(looks.all()));
  for (const name of variables) copy.style.setProperty(name, theme.colour(name));
  copy.style.color = theme.colour("--ink");
  copy.style.fontFamily = font_family;
  copy.style.maxWidth = "none";
  const address = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(copy)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    pen.drawImage(image, box.x + (box.width - width * k) / 2, box.y, width * k, height * k);
    return box.y + height * k;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Paint a table in the largest type that fits the box. */
export function paint_table(
  pen: CanvasRenderingContext2D, box: Box, theme: Theme, columns: string[], rows: string[][], largest = 40,
): void {
  for (let font = largest; ; font -= 2) {
    pen.font = `${font}px ${font_family}`;
    const gap = 1.1 * font;
    const natural = columns.map((column, i) => Math.max(...[column, ...rows.map((row) => row[i] ?? "")].map((text) => pen.measureText(text).width)));
    const room = box.width - gap * (columns.length - 1);
    const total = natural.reduce((sum, width) => sum + width, 0);
    // Columns that want too much share what the modest ones leave.
    const fair = room / columns.length;
    const modest = natural.filter((width) => width <= fair).reduce((sum, width) => sum + width, 0);
    const greedy = natural.filter((width) => width > fair).reduce((sum, width) => sum + width, 0);
    const widths = total <= room ? natural : natural.map((width) => (width <= fair ? width : ((room - modest) * width) / greedy));
    const lines = [columns, ...rows].map((row) => row.map((text, i) => wrapped(pen, text, widths[i])));
    const heights = lines.map((cells) => Math.max(1, ...cells.map((cell) => cell.length)) * 1.25 * font + 0.5 * font);
    const height = heights.reduce((sum, each) => sum + each, 0);
    if (height > box.height && font > 14) continue;
    let y = box.y;
    pen.textBaseline = "top";
    pen.textAlign = "left";
    lines.forEach((cells, r) => {
      let x = box.x;
      pen.fillStyle = theme.colour("--ink");
      pen.font = `${r === 0 ? "bold " : ""}${font}px ${font_family}`;
      cells.forEach((cell, i) => {
        cell.forEach((line, k) => pen.fillText(line, x, y + 0.2 * font + k * 1.25 * font, widths[i] + 1));
        x += widths[i] + gap;
      });
      y += heights[r];
      pen.strokeStyle = theme.colour(r === 0 ? "--ink" : "--rule");
      pen.lineWidth = 2;
      pen.beginPath();
      pen.moveTo(box.x, y - 0.05 * font);
      pen.lineTo(box.x + box.width, y - 0.05 * font);
      pen.stroke();
    });
    return;
  }
}

/** What the parts look like, in one or two columns. */
export function paint_legend(pen: CanvasRenderingContext2D, box: Box, theme: Theme, items: { look: Look; words: string }[], font: number): void {
  const n_columns = box.width > 1200 || (box.width > 800 && items.length * 1.3 * font > box.height) ? 2 : 1;
  const n_rows = Math.ceil(items.length / n_columns);
  const step = Math.min(1.5 * font, box.height / n_rows);
  const size = Math.min(font, 0.72 * step);
  if (size < 12) return;
  items.forEach(({ look, words }, i) => {
    const x = box.x + Math.floor(i / n_rows) * (box.width / n_columns);
    const y = box.y + (i % n_rows) * step;
    pen.fillStyle = theme.fill(pen, look, 1.5);
    pen.strokeStyle = theme.colour("--ink");
    pen.lineWidth = 1.5;
    pen.fillRect(x, y, 1.6 * size, size);
    pen.strokeRect(x, y, 1.6 * size, size);
    paint_text(pen, words, x + 2.1 * size, y, box.width / n_columns - 2.5 * size, { size, colour: theme.colour("--ink"), most: 1 });
  });
}

/** What the lines stand for, beside each other where they fit; returns the room below. */
export function paint_line_legend(pen: CanvasRenderingContext2D, box: Box, theme: Theme, names: string[], numbers: number[], font: number): Box {
  let { x, y } = box;
  const stroke = 2.4 * font;
  names.forEach((name, i) => {
    pen.font = `${font}px ${font_family}`;
    const width = Math.min(box.width, stroke + 0.5 * font + pen.measureText(name).width);
    if (x > box.x && x + width > box.x + box.width) {
      x = box.x;
      y += 1.4 * font;
    }
    pen.save();
    pen.strokeStyle = theme.colour(`--run-${numbers[i] % 6}`);
    pen.lineWidth = 4;
    pen.setLineDash((dashes[numbers[i] % dashes.length].match(/\d+/g) ?? []).map((length) => 1.7 * Number(length)));
    pen.beginPath();
    pen.moveTo(x, y + 0.55 * font);
    pen.lineTo(x + stroke, y + 0.55 * font);
    pen.stroke();
    pen.restore();
    paint_text(pen, name, x + stroke + 0.5 * font, y, width - stroke, { size: font, colour: theme.colour("--ink"), most: 1 });
    x += width + 1.4 * font;
  });
  const below = y + 1.6 * font;
  return { ...box, y: below, height: box.height - (below - box.y) };
}

/** Split a box into `n` beside each other (wide) or below each other (upright). */
export function split(box: Box, n: number, gap: number): Box[] {
  const beside = box.width > box.height;
  return Array.from({ length: n }, (_, i) =>
    beside
      ? { x: box.x + (i * (box.width + gap)) / n, y: box.y, width: (box.width - gap * (n - 1)) / n, height: box.height }
      : { x: box.x, y: box.y + (i * (box.height + gap)) / n, width: box.width, height: (box.height - gap * (n - 1)) / n },
  );
}
