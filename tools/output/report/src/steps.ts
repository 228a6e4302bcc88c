// SPDX-License-Identifier: Apache-2.0
// Steps from one stack to another: where the first stands, what each change adds or takes, where the other stands.
// Names and numbers stand at the bars, a whisker is the band.
import { axisX, barX, link, ruleX, text } from "@observablehq/plot";
import { chart, type Chart } from "./charts";
import { fixed, signed } from "./format";
import type { Look } from "./looks";

export interface Step {
  name: string;
  value: number; // what the change does; of the ends, where they stand
  band: number; // 0: none
  look: Look;
  note: string;
  end: boolean; // one of the two stacks, not a change
}

/** `steps` begins and ends with the two stacks, the changes between them add up. */
export function step_chart(name: string, finding: string, steps: Step[], unit: string, digits: number): Chart {
  let level = 0;
  const bars = steps.map((step, i) => {
    const from = step.end ? 0 : level;
    level = step.end ? step.value : level + step.value;
    return { ...step, key: String(i), from, to: level };
  });
  // The scale shows the changes, yet no bar of a stack is cut to less than its rest: it starts at zero unless the
  // changes are small beside the stacks; then the ends are drawn as marks and not as bars.
  const reached = bars.flatMap((bar) => [bar.to - (bar.end ? 0 : bar.band), bar.to + (bar.end ? 0 : bar.band), ...(bar.end ? [] : [bar.from])]);
  const [low, high] = [Math.min(...reached), Math.max(...reached)];
  const marks_only = low > 0.75 * high;
  const room = 0.08 * (high - low || 1);
  const domain = marks_only ? [low - room, high + room] : [Math.min(0, low), high];
  const top = 22;
  const middle = (top - 8) / 2;
  const words = (step: Step) => (step.end ? fixed(step.value, digits) : `${signed(step.value, digits)}${step.band > 0 ? ` ± ${fixed(step.band, digits)}` : ""}`) + (step.note ? `, ${step.note}` : "");
  type Bar = (typeof bars)[number];
  const drawn = bars.filter((bar) => !(marks_only && bar.end));
  return chart({
    name,
    finding,
    title: true,
    rows: true,
    height: () => 50 * bars.length + 56,
    options: () => ({
      marginLeft: 10,
      marginRight: 20,
      x: { label: unit, domain },
      y: { domain: bars.map((bar) => bar.key), axis: null, padding: 0 },
      marks: [
        axisX({ label: unit, labelArrow: "none", labelAnchor: "right", ticks: 6 }),
        ruleX(bars, { x: "to", y: "key", insetTop: top - 2, insetBottom: 2, stroke: "var(--ink)" }),
        // A thin line leads from the end of each step to the next.
        link(bars.slice(0, -1), {
          x1: "to", x2: "to", y1: "key", y2: (bar: Bar) => String(Number(bar.key) + 1), stroke: "var(--faint-ink)", strokeWidth: 0.8, strokeDasharray: "2 2",
        }),
        barX(drawn, { y: "key", x1: "from", x2: "to", fill: (bar: Bar) => bar.look.fill, stroke: "var(--ink)", strokeWidth: 0.8, insetTop: top, insetBottom: 8 }),
        link(bars.filter((bar) => bar.band > 0 && !bar.end), {
          x1: (bar: Bar) => bar.to - bar.band, x2: (bar: Bar) => bar.to + bar.band, y1: "key", y2: "key", dy: middle, stroke: "var(--mark)", strokeWidth: 3,
        }),
        ...[true, false].map((end) =>
          text(bars.filter((bar) => bar.end === end), {
            y: "key", frameAnchor: "left", textAnchor: "start", dy: -13, text: (bar: Bar) => `${bar.name}  ${words(bar)}`, fill: "var(--ink)",
            fontWeight: end ? "bold" : "normal", stroke: "var(--paper)", strokeWidth: 4,
          }),
        ),
      ],
    }),
    table: () => ({
      columns: ["step", unit, "±", "verdict"],
      rows: steps.map((step) => [step.name, step.value, step.band, step.note]),
    }),
  });
}
