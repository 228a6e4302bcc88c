// SPDX-License-Identifier: Apache-2.0
// Where the energy went: one bar a run by part, and how it moved over time.
import { areaY, axisX, barX, ruleY, text } from "@observablehq/plot";
import { block, type Page, short_name, warnings } from "./block";
import { chart, type Chart } from "./charts";
import { at } from "./clock";
import type { Energy, Run } from "./data";
import { el } from "./dom";
import { fixed } from "./format";
import { told_by } from "./moment";
import { guide_look, left_look, type Look, returned_look, swatch, weight_look } from "./looks";
import { paint_legend } from "./picture";
import { reading_table } from "./table";

type Share = Energy["shares"][number];
type Accounted = Run & { energy: Energy };

function share_look(page: Page, run: Run, share: Share): Look {
  if (share.kind === "returned") return returned_look;
  if (share.kind === "guide") return guide_look;
  if (share.kind === "left" || share.part < 0) return left_look;
  return page.looks.of(page.report.runs.indexOf(run), share.part);
}

/** Names of all runs in the order of first appearance, thrown back first, left in the stack last. */
function names_of(runs: Accounted[]): { name: string; run: Run; share: Share }[] {
  const found = new Map<string, { name: string; run: Run; share: Share }>();
  for (const run of runs)
    for (const share of run.energy.shares) if (!found.has(share.name)) found.set(share.name, { name: share.name, run, share });
  const rank = { returned: 0, part: 1, guide: 2, left: 3 };
  return [...found.values()].sort((a, b) => rank[a.share.kind] - rank[b.share.kind]);
}

function share_of(run: Accounted, name: string): number | null {
  const share = run.energy.shares.find((each) => each.name === name);
  return share ? (100 * share.energy) / run.energy.input : null;
}

/** What 100 % is: a weight that falls brings its energy with it, else the rig does work. */
export function energy_basis(runs: Run[]): string {
  return falls(runs) ? "drop energy" : "energy put in";
}

const falls = (runs: Run[]) => runs.some((run) => run.energy?.rows.some((row) => row.kind === "weight"));

export function energy_block(page: Page, runs: Run[], shown: Run[]): HTMLElement | null {
  const accounted = runs.filter((run): run is Accounted => run.energy !== null);
  if (accounted.length === 0) return null;
  const names = names_of(accounted);
  const basis = energy_basis(accounted);
  const percent_of = `% of the ${basis}`;
  const several = accounted.length > 1;
  const bars = accounted.flatMap((run, r) =>
    names.flatMap(({ name }) => {
      const share = run.energy.shares.find((each) => each.name === name);
      const percent = share_of(run, name);
      return share && percent !== null ? [{ key: String(r), percent, name, look: share_look(page, run, share), dark: share.kind === "returned" }] : [];
    }),
  );
  const titles = accounted.map((run, r) => ({ key: String(r), title: run.title }));
  const top = several ? 22 : 4;
  const bar_chart = chart({
    name: "where the energy went, by part",
    finding: accounted.map((run) => run.captions.energy).join(" "),
    rows: true,
    height: () => (several ? 68 : 56) * accounted.length + 52,
    options: (width) => ({
      marginLeft: 8,
      marginRight: 22,
      marginTop: 6,
      marginBottom: 46,
      x: { domain: [0, Math.max(100, ...accounted.map((run) => names.reduce((sum, { name }) => sum + (share_of(run, name) ?? 0), 0)))], label: percent_of },
      y: { domain: titles.map((each) => each.key), axis: null, padding: 0 },
      marks: [
        axisX({ label: percent_of, labelArrow: "none", ticks: 5 }),
        barX(bars, { y: "key", x: "percent", z: "name", order: names.map((each) => each.name), fill: (bar) => bar.look.fill, stroke: "var(--ink)", strokeWidth: 0.8, insetTop: top, insetBottom: 8 }),
        text(bars, stacked_text(bars, names.map((each) => each.name), width, top)),
        several ? text(titles, { y: "key", frameAnchor: "left", textAnchor: "start", dy: -24, text: "title" }) : null,
      ],
    }),
    table: () => ({
      columns: ["run", "where", percent_of],
      rows: bars.map((bar) => [accounted[Number(bar.key)].label, bar.name, bar.percent]),
    }),
  });
  const columns = accounted.length <= 4 ? accounted : accounted.filter((run) => shown.includes(run));
  const rows = names.map(({ name, run, share }) => [
    el("span", {}, swatch(share_look(page, run, share)), name),
    ...columns.map((each) => percent_text(share_of(each, name))),
  ]);
  const sum = columns.map((each) => `${fixed(100 * each.energy.accounted, 1)} %`);
  const over_time = accounted.filter((run) => shown.includes(run)).map((run) => ({ run, chart: time_energy(page, run) }));
  return block(page, {
    heading: "Where the energy went",
    sheet: page.report.kind === "run" && page.report.series === null,
    sentence: told_by(page, columns, (run) => run.captions.energy),
    long: true,
    content: [
      bar_chart.element,
      reading_table(
        `Shares of the ${basis}`,
        ["where", ...columns.map((run) => (several ? short_name(page, run) : `share of the ${basis}`))],
        [...rows, ["accounted for", ...sum]],
        columns.map((_, i) => i + 1),
        true,
      ),
      ...columns.flatMap((run) => warnings(run, ["energy", "energy_return"])),
      el(
        "details",
        { class: "over-time" },
        el("summary", {}, "Over time"),
        el("p", { class: "note" }, falls(accounted) ? "From bottom to top: energy turned into heat, energy stored in the squeezed parts, energy of the weight. The total grows a little while the weight sinks into the stack." : "From bottom to top: energy turned into heat, energy stored in the squeezed parts."),
      el("div", { class: over_time.length > 1 ? "side-by-side" : "" }, ...over_time.map(({ run, chart: each }) => el("div", { class: "of-run" }, each.element, time_legend(page, run)))),
      ),
    ],
    paint: async (pen, box, theme, font) => {
      const list = names.map(({ name, run, share }) => ({
        look: share_look(page, run, share),
        words: `${name}: ${columns.map((each) => percent_text(share_of(each, name))).join(" / ")}`,
      }));
      const rows_of_list = box.width > box.height ? Math.ceil(list.length / 2) : list.length;
      const list_room = Math.min(0.5 * box.height, rows_of_list * 1.3 * font);
      const below = await bar_chart.paint(pen, { ...box, height: box.height - list_room }, theme, page.looks);
      paint_legend(pen, { ...box, y: below + 10, height: box.y + box.height - below - 10 }, theme, list, font);
    },
  });
}

const percent_text = (value: number | null) => (value === null ? "–" : `${fixed(value, 1)} %`);

/** Labels in the middle of bars wide enough for them. */
function stacked_text(bars: { key: string; percent: number; name: string; dark: boolean }[], order: string[], width: number, top: number) {
  const middle = new Map<object, number>();
  for (const key of new Set(bars.map((bar) => bar.key))) {
    let sum = 0;
    for (const name of order) {
      const bar = bars.find((each) => each.key === key && each.name === name);
      if (!bar) continue;
      middle.set(bar, sum + bar.percent / 2);
      sum += bar.percent;
    }
  }
  return {
    x: (bar: object) => middle.get(bar),
    y: "key",
    dy: (top - 8) / 2,
    text: (bar: { percent: number }) => ((bar.percent * width) / 100 > 26 ? fixed(bar.percent, 0) : ""),
    fill: (bar: { dark: boolean }) => (bar.dark ? "var(--paper)" : "var(--ink)"),
    stroke: (bar: { dark: boolean }) => (bar.dark ? "var(--ink)" : "var(--paper)"),
    strokeWidth: 4,
  };
}

const order_of_kinds = { lost: 0, stored: 1, weight: 2 };
type Row = Energy["rows"][number];

function ordered_rows(energy: Energy): Row[] {
  return [...energy.rows].sort((a, b) => order_of_kinds[a.kind] - order_of_kinds[b.kind]);
}

function row_look(page: Page, run: Run, row: Row): Look {
  if (row.kind === "weight") return weight_look;
  return row.part < 0 ? guide_look : page.looks.of(page.report.runs.indexOf(run), row.part);
}

function time_energy(page: Page, run: Accounted): Chart {
  const { energy } = run;
  const time_label = `time, ${page.clock.unit.name}`;
  const rows = ordered_rows(energy);
  const data = rows.flatMap((row, r) => energy.time.map((time, i) => ({ time: page.clock.shown(time), energy: Math.max(0, row.energy[i]), r })));
  const paint = (r: number) => {
    const look = row_look(page, run, rows[r]);
    return rows[r].kind === "stored" ? `var(${look.tone})` : look.fill;
  };
  const reached = (time: number) => rows.filter((row) => row.kind === "lost").reduce((sum, row) => sum + at(energy.time, row.energy, time), 0);
  return chart({
    name: `energy over time, ${run.title}`,
    finding: run.captions.energy,
    title: page.report.runs.length > 1,
    height: (width) => Math.min(340, Math.max(230, 0.6 * width)),
    options: () => ({
      x: { label: time_label, domain: [0, page.clock.shown(energy.time.at(-1) ?? 1)] },
      y: { label: "energy, J" },
      marks: [
        areaY(data, {
          x: "time", y: "energy", z: "r", order: rows.map((_, r) => r), fill: (each: { r: number }) => paint(each.r), stroke: "var(--ink)", strokeWidth: 0.5,
        }),
        ruleY([0], { stroke: "var(--ink)" }),
      ],
    }),
    table: () => ({
      columns: [time_label, ...rows.map((row) => `${kind_words[row.kind].toLowerCase()} ${row.name}, J`)],
      rows: energy.time.map((time, i) => [page.clock.shown(time), ...rows.map((row) => row.energy[i])]),
    }),
    cursor: {
      clock: page.clock,
      line_at: () => page.clock.shown(page.clock.of(run)),
      points: () => [[page.clock.shown(Math.min(page.clock.of(run), energy.time.at(-1) ?? 0)), reached(page.clock.of(run))]],
      time: (x) => x * page.clock.unit.ms,
      text: () => `${page.clock.words(page.clock.of(run))}: ${fixed(reached(page.clock.of(run)), 2)} of ${fixed(energy.input, 2)} J turned into heat so far`,
    },
  });
}

const kind_words = { lost: "Turned into heat in", stored: "Stored in", weight: "Still in" };

function time_legend(page: Page, run: Accounted): HTMLElement {
  const seen = ordered_rows(run.energy).filter((row) => Math.max(...row.energy) > 0.004 * run.energy.input);
  const kinds = (["weight", "stored", "lost"] as const).filter((kind) => seen.some((row) => row.kind === kind));
  return el(
    "div",
    {},
    ...kinds.map((kind) =>
      el(
        "ul",
        { class: "legend", "aria-label": kind_words[kind] },
        el("li", { class: "legend-head" }, `${kind_words[kind]}:`),
        ...seen.filter((row) => row.kind === kind).map((row) => el("li", {}, swatch(row_look(page, run, row), kind === "stored"), row.name)),
      ),
    ),
  );
}
