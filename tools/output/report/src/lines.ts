// SPDX-License-Identifier: Apache-2.0
// Blocks of line charts whose quantities have nothing to do with time: the face of a lug, its life.
import { line } from "@observablehq/plot";
import { block, type Page } from "./block";
import { chart, type Chart, from_zero } from "./charts";
import type { LineBlock, LineChart } from "./data";
import { el } from "./dom";
import { grip_cells, grip_drawing, grip_table, is_outline, outline_marks } from "./drawn_lines";
import { dashes, line_swatch, run_colour } from "./looks";
import { paint_line_legend, paint_table, split } from "./picture";
import { data_details, type Table } from "./table";

/** A curve that goes up and down again and again shows the mesh it was computed on: the mean over a quarter of the way is
 *  drawn, the table keeps the numbers. */
function calmed(each: LineChart["lines"][number]): { y: number[]; calm: boolean } {
  const { x, y } = each;
  const range = Math.max(...y) - Math.min(...y);
  let peaks = 0;
  let low = y[0] ?? 0;
  let high = low;
  let rising = true;
  for (const value of y) {
    if (rising && value < high - 0.15 * range) {
      ++peaks;
      rising = false;
      low = value;
    } else if (!rising && value > low + 0.15 * range) {
      rising = true;
      high = value;
    }
    low = Math.min(low, value);
    high = rising ? Math.max(high, value) : value;
  }
  if (peaks <= 2) return { y, calm: true };
  const half = (x[x.length - 1] - x[0]) / 8;
  const mean = x.map((at) => {
    const near = y.filter((_, i) => Math.abs(x[i] - at) <= half + 1e-12);
    return near.reduce((sum, value) => sum + value, 0) / near.length;
  });
  return { y: mean, calm: false };
}

function line_chart(parts: LineChart, finding: string, names: string[]): Chart {
  const number = (name: string) => names.indexOf(name);
  const drawn = parts.round || is_outline(parts) ? [] : parts.lines.map((each) => ({ ...each, ...calmed(each) }));
  const smoothed = drawn.some((each) => !each.calm);
  const outline = is_outline(parts);
  return chart({
    name: parts.name,
    finding,
    title: true,
    note: parts.round
      ? "Seen from above, right foot. All arrows have one scale: an arrow of this length in one direction is the same grip in another."
      : outline
        ? "Drawn to one scale, from the base of the sole up."
        : smoothed
          ? "Lines are means over a quarter of the way; the numbers below are not."
          : "",
    drawing: parts.round ? (width, font) => grip_drawing(parts, Math.min(width, 460), font) : undefined,
    height: (width) => Math.min(320, Math.max(220, 0.62 * width)),
    options: (width) => ({
      ...(outline ? { aspectRatio: 1, marginRight: Math.max(18, width - 380) } : {}),
      x: { label: parts.xLabel, nice: !outline },
      y: { label: parts.yLabel, grid: !outline, nice: true, ...(outline ? { zero: true } : from_zero(parts.lines.flatMap((each) => each.y))) },
      marks: outline
        ? outline_marks(parts, number)
        : drawn.map((each) =>
            line(
              each.x.map((x, i) => [x, each.y[i]]),
              { stroke: run_colour(number(each.name)), strokeWidth: 2, strokeDasharray: dashes[number(each.name) % dashes.length] },
            ),
          ),
    }),
    table: () => numbers_of(parts),
  });
}

function numbers_of(parts: LineChart): Table {
  return {
    columns: ["line", parts.xLabel, parts.yLabel],
    rows: parts.lines.flatMap((each) => each.x.map((x, i) => [each.name, x, each.y[i]])),
  };
}

const most_arrows = 2; // soles whose grip is drawn on one footprint

export function line_block(page: Page, parts: LineBlock): HTMLElement {
  const listed = parts.charts.filter((each) => each.round && each.lines.length > most_arrows);
  const drawn = parts.charts.filter((each) => !listed.includes(each));
  const names = [...new Set(drawn.flatMap((each) => each.lines.map((line) => line.name)))];
  const charts = drawn.map((each) => line_chart(each, parts.sentence, names));
  return block(page, {
    heading: parts.heading,
    sentence: parts.sentence,
    sheet: true,
    content: [
      names.length > 1 ? el("ul", { class: "legend" }, ...names.map((name, i) => el("li", {}, line_swatch(i), name))) : null,
      el("div", { class: "side-by-side" }, ...charts.map((each) => each.element), ...listed.map((each) => el("div", {}, el("p", { class: "chart-title" }, each.name), grip_table(each), data_details(each.name, () => numbers_of(each))))),
    ],
    paint: async (pen, box, theme, font) => {
      const room = names.length > 1 ? paint_line_legend(pen, box, theme, names, names.map((_, i) => i), font) : box;
      const places = split(room, charts.length + listed.length, 36);
      for (const [i, each] of charts.entries()) await each.paint(pen, places[i], theme, page.looks);
      listed.forEach((each, i) => {
        const { columns, rows } = grip_cells(each);
        paint_table(pen, places[charts.length + i], theme, [each.name, ...columns.slice(1)], rows, font);
      });
    },
  });
}
