// SPDX-License-Identifier: Apache-2.0
// Blocks of line charts whose quantities have nothing to do with time: the face of a lug, its life.
import { line, type Markish } from "@observablehq/plot";
import { block, type Page } from "./block";
import { chart, type Chart } from "./charts";
import type { LineBlock, LineChart } from "./data";
import { el } from "./dom";
import { dashes, line_swatch, run_colour } from "./looks";
import { paint_line_legend, split } from "./picture";

/** Circles of equal size round the origin, a few up to beyond the outermost point. */
function rings(parts: LineChart): Markish[] {
  if (!parts.round) return [];
  const farthest = Math.max(0, ...parts.lines.flatMap((each) => each.x.map((x, i) => Math.hypot(x, each.y[i]))));
  const step = farthest > 0.5 ? 0.2 : farthest > 0.2 ? 0.1 : 0.02;
  const angles = Array.from({ length: 73 }, (_, i) => (i * Math.PI) / 36);
  return Array.from({ length: Math.ceil(farthest / step) }, (_, i) =>
    line(
      angles.map((angle) => [(i + 1) * step * Math.sin(angle), (i + 1) * step * Math.cos(angle)]),
      { stroke: "currentColor", strokeOpacity: 0.2 },
    ),
  );
}

function line_chart(parts: LineChart, finding: string, names: string[]): Chart {
  const number = (name: string) => names.indexOf(name);
  return chart({
    name: parts.name,
    finding,
    title: true,
    height: (width) => (parts.round ? Math.min(460, width) : Math.min(320, Math.max(220, 0.62 * width))),
    options: () => ({
      ...(parts.round ? { aspectRatio: 1 } : {}),
      x: { label: parts.xLabel, nice: !parts.round },
      y: { label: parts.yLabel, grid: !parts.round, nice: !parts.round },
      marks: [...rings(parts), ...parts.lines.map((each) =>
        line(
          each.x.map((x, i) => [x, each.y[i]]),
          { stroke: run_colour(number(each.name)), strokeWidth: 2, strokeDasharray: dashes[number(each.name) % dashes.length] },
        ),
      )],
    }),
    table: () => ({
      columns: ["line", parts.xLabel, parts.yLabel],
      rows: parts.lines.flatMap((each) => each.x.map((x, i) => [each.name, x, each.y[i]])),
    }),
  });
}

export function line_block(page: Page, parts: LineBlock): HTMLElement {
  const names = [...new Set(parts.charts.flatMap((each) => each.lines.map((line) => line.name)))];
  const charts = parts.charts.map((each) => line_chart(each, parts.sentence, names));
  return block(page, {
    heading: parts.heading,
    sentence: parts.sentence,
    content: [
      names.length > 1 ? el("ul", { class: "legend" }, ...names.map((name, i) => el("li", {}, line_swatch(i), name))) : null,
      el("div", { class: "side-by-side" }, ...charts.map((each) => each.element)),
    ],
    paint: async (pen, box, theme, font) => {
      const room = names.length > 1 ? paint_line_legend(pen, box, theme, names, names.map((_, i) => i), font) : box;
      const places = split(room, charts.length, 36);
      for (const [i, each] of charts.entries()) await each.paint(pen, places[i], theme, page.looks);
    },
  });
}
