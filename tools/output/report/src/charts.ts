// SPDX-License-Identifier: Apache-2.0
// The one place that knows the charting library: house style, redraw with the width, cursor, table of numbers.
import { plot, type PlotOptions } from "@observablehq/plot";
import { type Clock, time_slider } from "./clock";
import { el, svg, watch_width } from "./dom";
import type { PartLooks, Theme } from "./looks";
import { paint_svg, paint_text } from "./picture";
import { type Box, font_family } from "./stage";
import { data_details, type Table } from "./table";

export interface Cursor {
  clock: Clock;
  line_at: () => number | null; // x of a vertical line, in data units
  points: () => [number, number][]; // in data units
  time: (x: number, y: number) => number; // of the data point under the pointer
  text: () => string; // what the cursor reads, in words
}

export interface Chart {
  element: HTMLElement;
  /** Paint into a picture; returns the y below it. */
  paint: (pen: CanvasRenderingContext2D, box: Box, theme: Theme, looks: PartLooks) => Promise<number>;
}

export interface ChartParts {
  name: string; // for people and screen readers
  finding: string; // what it shows, for screen readers
  options: (width: number) => PlotOptions;
  height: (width: number) => number;
  table: () => Table;
  cursor?: Cursor;
  title?: boolean; // show the name above
  rows?: boolean; // of a given height each: a picture keeps their proportions
  note?: string; // one line under the chart
  drawing?: (width: number, font: number) => SVGSVGElement; // in place of a chart: no axes, no cursor
}

/** Options of an axis whose values differ little: from zero, so that a small change looks small. */
export function from_zero(values: number[]): { zero: boolean } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return { zero: low > 0 && high - low < 0.25 * high };
}

type Drawn = SVGSVGElement & { scale(name: "x" | "y"): { apply(value: unknown): number; invert?(value: number): number } | undefined };

function draw(parts: ChartParts, width: number, height: number, font: number): Drawn {
  if (parts.drawing) {
    const drawing = parts.drawing(width, font);
    for (const [name, value] of [["role", "img"], ["aria-label", `${parts.name}. ${parts.finding}`], ["font-family", font_family]]) drawing.setAttribute(name, value);
    return drawing as Drawn;
  }
  const options = parts.options(width);
  const drawn = plot({
    marginLeft: 4.2 * font,
    marginBottom: 3.2 * font,
    marginTop: 2 * font,
    marginRight: 1.4 * font,
    ...options,
    width,
    ...(options.aspectRatio ? {} : { height }), // drawn to scale: the height follows
    ariaLabel: parts.name,
    ariaDescription: parts.finding,
    style: { background: "none", color: "var(--ink)", fontFamily: font_family, fontSize: `${font}px`, overflow: "visible" },
  }) as unknown as Drawn;
  // One picture with one name for a screen reader; the names of its marks are for scripts only.
  drawn.setAttribute("role", "img");
  for (const mark of drawn.querySelectorAll("[aria-label]")) {
    mark.setAttribute("data-mark", mark.getAttribute("aria-label") ?? "");
    mark.removeAttribute("aria-label");
  }
  return drawn;
}

/** A chart that follows the width of its place. */
export function chart(parts: ChartParts): Chart {
  const place = el("div", { class: "chart-place" });
  const element = el(
    "figure",
    { class: "chart" },
    parts.title ? el("figcaption", { class: "chart-title" }, parts.name) : null,
    place,
    parts.note ? el("p", { class: "note" }, parts.note) : null,
    data_details(parts.name, parts.table),
  );
  let drawn: Drawn | null = null;
  let width = 0;
  let cursor_layer: SVGGElement | null = null;

  const show_cursor = () => {
    if (!drawn || !cursor_layer || !parts.cursor) return;
    const { line_at, points } = parts.cursor;
    const x = drawn.scale("x");
    const y = drawn.scale("y");
    if (!x || !y) return;
    const marks: SVGElement[] = [];
    const at_x = line_at();
    if (at_x !== null) {
      const px = x.apply(at_x);
      const [, , , height] = (drawn.getAttribute("viewBox") ?? "").split(/[ ,]+/).map(Number);
      marks.push(svg("line", { x1: px, x2: px, y1: 24, y2: height - 42 }));
    }
    for (const [px, py] of points())
      if (Number.isFinite(px) && Number.isFinite(py)) marks.push(svg("circle", { cx: x.apply(px), cy: y.apply(py), r: 5 }));
    cursor_layer.replaceChildren(...marks);
  };

  const redraw = () => {
    drawn = draw(parts, width, parts.height(width), 13);
    cursor_layer = svg("g", { class: "cursor" });
    drawn.append(cursor_layer);
    place.replaceChildren(drawn);
    show_cursor();
  };
  watch_width(place, (now) => {
    width = now;
    redraw();
  });
  addEventListener("beforeprint", () => {
    if (drawn) return; // hidden so far, but wanted on paper
    width = 640;
    redraw();
    width = 0;
  });

  if (parts.cursor) {
    const { clock, time, text } = parts.cursor;
    time_slider(place, clock, `${parts.name}: moment shown`, text);
    clock.watch(show_cursor);
    const follow = (event: PointerEvent) => {
      if (!drawn) return;
      const box = drawn.getBoundingClientRect();
      const k = width / box.width;
      const x = drawn.scale("x")?.invert?.((event.clientX - box.left) * k);
      const y = drawn.scale("y")?.invert?.((event.clientY - box.top) * k);
      if (x !== undefined && y !== undefined) clock.set(time(x, y));
    };
    place.addEventListener("pointerdown", follow);
    place.addEventListener("pointermove", (event) => {
      if (event.pointerType === "mouse" || event.buttons > 0) follow(event);
    });
  }

  return {
    element,
    paint: async (pen, box, theme, looks) => {
      let room = box;
      if (parts.title) {
        const below = paint_text(pen, parts.name, box.x, box.y, box.width, { size: 30, weight: "bold", colour: theme.colour("--ink"), most: 1 });
        room = { ...box, y: below, height: box.height - (below - box.y) };
      }
      if (parts.rows) {
        const k = Math.min(2.1, room.height / parts.height(room.width / 2.1));
        return paint_svg(pen, draw(parts, room.width / k, parts.height(room.width / k), 13), room, theme, looks);
      }
      const k = Math.min(2, Math.max(1.2, room.height / 190)); // drawn at half the size: type and lines come out twice as large
      const drawing = draw(parts, room.width / k, Math.min(room.height / k, (1.1 * room.width) / k), 15);
      return paint_svg(pen, drawing, room, theme, looks);
    },
  };
}
