// SPDX-License-Identifier: Apache-2.0
// Bars with their name above: names may be long and phones narrow. With a band where a value has one.
import { axisX, barX, link, ruleX, text } from "@observablehq/plot";
import { chart, type Chart } from "./charts";
import { fixed, signed } from "./format";
import type { Look } from "./looks";

export interface Bar {
  name: string;
  value: number;
  band: number; // 0: none
  look: Look;
  note: string; // verdict in words, beside the value
}

/** Bars left and right of zero. */
export function signed_bars(name: string, finding: string, bars: Bar[], unit: string, digits: number, title = true): Chart {
  const ends = bars.flatMap((bar) => [bar.value - bar.band, bar.value + bar.band, 0]);
  const data = bars.map((bar, i) => ({ ...bar, key: String(i) }));
  const top = 22;
  const words = (bar: Bar) => `${signed(bar.value, digits)}${bar.band > 0 ? ` ± ${fixed(bar.band, digits)}` : ""}${bar.note ? `, ${bar.note}` : ""}`;
  return chart({
    name,
    finding,
    title,
    rows: true,
    height: () => 54 * bars.length + 60,
    options: () => ({
      marginLeft: 16,
      marginRight: 24,
      x: { label: unit, nice: true, domain: [Math.min(...ends), Math.max(...ends)] },
      y: { domain: data.map((bar) => bar.key), axis: null, padding: 0 },
      marks: [
        axisX({ label: unit, labelArrow: "none", labelAnchor: "right" }),
        ruleX(data, { x: () => 0, y: "key", insetTop: top - 4, stroke: "var(--ink)" }),
        barX(data, { y: "key", x1: 0, x2: "value", fill: (bar: Bar) => bar.look.fill, stroke: "var(--ink)", strokeWidth: 0.8, insetTop: top, insetBottom: 8 }),
        link(data.filter((bar) => bar.band > 0), {
          x1: (bar: Bar) => bar.value - bar.band, x2: (bar: Bar) => bar.value + bar.band, y1: "key", y2: "key", dy: (top - 8) / 2, stroke: "var(--mark)", strokeWidth: 3,
        }),
        text(data, {
          y: "key", frameAnchor: "left", textAnchor: "start", dy: -14, dx: 0, text: (bar: Bar) => `${bar.name}  ${words(bar)}`, fill: "var(--ink)",
          stroke: "var(--paper)", strokeWidth: 4,
        }),
      ],
    }),
    table: () => ({
      columns: ["change", unit, "±", "verdict"],
      rows: bars.map((bar) => [bar.name, bar.value, bar.band, bar.note]),
    }),
  });
}
