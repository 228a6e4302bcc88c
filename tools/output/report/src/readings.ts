// SPDX-License-Identifier: Apache-2.0
// The readings, alone or side by side, with the warnings that touch them and how each number came about; several
// runs laid over each other; a series.
import { dot, lineY } from "@observablehq/plot";
import { block, type Page, short_name } from "./block";
import { chart, type Chart, from_zero } from "./charts";
import type { Reading, Run, Series } from "./data";
import { el, type Child } from "./dom";
import { error_text, sentence_case, with_unit } from "./format";
import { dashes, line_swatch, run_colour, symbols } from "./looks";
import { run_legend, time_chart } from "./moment";
import { paint_line_legend, paint_table, split } from "./picture";
import { reading_table } from "./table";

/** Readings that come in the first table although no headline; the rest can be opened. */
const told_first = ["rebound_height", "return_by_loop", "peak_deceleration", "compression_share", "contact_time", "peak_pressure", "bottoming_margin", "left_in_stack"];
const most_columns = 8; // side by side; more go into rows

export function readings_block(page: Page, runs: Run[]): HTMLElement | null {
  const all = new Map<string, Reading>();
  for (const run of runs) for (const reading of run.readings) if (!all.has(reading.name)) all.set(reading.name, reading);
  if (all.size === 0) return null;
  const of = (run: Run, name: string) => run.readings.find((reading) => reading.name === name);
  const words = (reading: Reading | undefined) => {
    if (!reading) return "–";
    if (reading.range) return `${with_unit(reading.value, reading.digits, "")} (${with_unit(reading.range[0], reading.digits, "")} to ${with_unit(reading.range[1], reading.digits, "")})${reading.unit ? ` ${reading.unit}` : ""}`;
    const half = reading.band ?? reading.error;
    const error = half !== null && half > 0 ? ` ± ${error_text(half, reading.digits)}` : "";
    return with_unit(reading.value, reading.digits, "") + error + (reading.unit ? ` ${reading.unit}` : "");
  };
  const several = runs.length > 1;
  const list = [...all.values()];
  const beside = runs.length <= most_columns;
  const cell = (run: Run, name: string): Child => {
    const touched = run.warnings.filter((each) => each.reading === name);
    if (touched.length === 0) return words(of(run, name));
    return el("span", {}, words(of(run, name)), ...touched.map((each) => el("span", { class: "doubt" }, ` (mind: ${each.text})`)));
  };
  const first = list.filter((reading) => list.length <= 10 || reading.headline || told_first.includes(reading.name));
  const rest = list.filter((reading) => !first.includes(reading));
  const side_by_side = (label: string, part: Reading[]) =>
      reading_table(
        label,
        ["reading", ...runs.map((run) => (several ? short_name(page, run) : "value")), "what it is"],
        part.map((reading) => [reading.label, ...runs.map((run) => cell(run, reading.name)), el("span", { class: "meaning" }, reading.meaning)]),
      );
  const table = beside
    ? el("div", {}, side_by_side("Readings", first), rest.length > 0 ? el("details", {}, el("summary", {}, `${rest.length} more readings`), side_by_side("More readings", rest)) : null)
    : reading_table(
        "Readings",
        ["run", ...list.filter((reading) => reading.headline).map((reading) => reading.label)],
        runs.map((run) => [short_name(page, run), ...list.filter((reading) => reading.headline).map((reading) => cell(run, reading.name))]),
      );
  const told = beside ? runs : runs.slice(0, 1);
  const how = list
    .filter((reading) => reading.headline)
    .flatMap((reading) =>
      told.map((run) => {
        const mine = of(run, reading.name);
        if (!mine || mine.how.length === 0) return null;
        const name = several ? `${reading.label}, ${short_name(page, run)}` : reading.label;
        return el("details", { class: "how" }, el("summary", {}, `How this number came about: ${name}`), el("ul", {}, ...mine.how.map((line) => el("li", {}, line))));
      }),
    );
  const general = runs.flatMap((run) => {
    const texts = run.warnings.filter((each) => each.reading === "" || !all.has(each.reading)).map((each) => each.text);
    if (!run.complete) texts.unshift(`This run stopped early${run.stopReason ? `: ${run.stopReason}` : "."}`);
    return texts.map((text) => el("p", { class: "warning" }, several ? `${run.title}: ${text}` : text));
  });
  const sentence = list
    .filter((reading) => reading.headline)
    .map((reading) => `${reading.label} ${runs.slice(0, 4).map((run) => (of(run, reading.name) ? with_unit(of(run, reading.name)!.value, reading.digits, reading.unit) : "–")).join(" / ")}`)
    .join(", ");
  const settled = runs.filter((run) => run.readings.some((reading) => (reading.band ?? null) !== null)).length;
  const plus_minus =
    settled === 0
      ? "± is the estimated error of the calculation, not the scatter of a bench."
      : `± is a 90 % band of what the readings of the bench sheet left open${settled < runs.length ? "; for stacks without such a sheet it is the estimated error of the calculation" : ""}.`;
  return block(page, {
    heading: several ? "The readings, side by side" : "The readings",
    sentence: !beside ? page.report.sentence : sentence ? sentence_case(`${several && beside ? `${runs.map((run) => short_name(page, run)).slice(0, 4).join(" / ")}: ` : ""}${sentence}.`) : "",
    long: true,
    content: [el("p", { class: "note" }, plus_minus), table, ...general, ...how],
    paint: (pen, box, theme) =>
      beside && runs.length <= 4
        ? paint_table(pen, box, theme, ["", ...runs.map((run) => (several ? short_name(page, run) : "value"))], first.map((reading) => [reading.label, ...runs.map((run) => words(of(run, reading.name)))]))
        : paint_table(pen, box, theme, ["run", ...list.filter((each) => each.headline).map((each) => each.label)], runs.map((run) => [short_name(page, run), ...list.filter((each) => each.headline).map((each) => words(of(run, each.name)))])),
  });
}

/** Force and compression of a few runs in one chart each. */
export function overlay_block(page: Page, runs: Run[], sentence: string): HTMLElement | null {
  const pushed = runs.some((run) => run.curves.force.some((force) => force !== 0)); // a slide has no such curve
  if (runs.length < 2 || runs.length > 6 || !pushed) return null;
  const charts = [time_chart(page, runs, "force"), time_chart(page, runs, "compression")];
  return block(page, {
    heading: "Force and compression of all runs together",
    sentence,
    content: [run_legend(page, runs), el("div", { class: "side-by-side" }, ...charts.map((each) => each.element))],
    paint: async (pen, box, theme, font) => {
      const numbers = runs.map((run) => page.report.runs.indexOf(run));
      const places = split(paint_line_legend(pen, box, theme, runs.map((run) => run.title), numbers, font), 2, 40);
      for (const [i, each] of charts.entries()) await each.paint(pen, places[i], theme, page.looks);
    },
  });
}

/** One chart for each reading against the varied quantity. */
export function series_charts(series: Series): Chart[] {
  const groups = [...new Set(series.groups)];
  const x_label = series.unit ? `${series.quantity}, ${series.unit}` : series.quantity;
  return series.readings.map((reading) => {
    const data = series.values
      .map((value, i) => ({ x: value, y: reading.values[i], group: series.groups[i] ?? "", g: Math.max(0, groups.indexOf(series.groups[i] ?? "")) }))
      .filter((point) => Number.isFinite(point.y))
      .sort((a, b) => a.x - b.x);
    const label = reading.unit ? `${reading.label}, ${reading.unit}` : reading.label;
    return chart({
      name: `${reading.label} against ${series.quantity}`,
      finding: series.sentence,
      title: true,
      height: (width) => Math.min(320, Math.max(220, 0.62 * width)),
      options: () => ({
        x: { label: x_label, nice: true },
        y: { label, grid: true, nice: true, ...from_zero(data.map((point) => point.y)) },
        symbol: { domain: groups.map((_, g) => g), range: groups.map((_, g) => symbols[g % symbols.length]) },
        marks: groups.flatMap((_, g) => {
          const mine = data.filter((point) => point.g === g);
          return [
            lineY(mine, { x: "x", y: "y", stroke: run_colour(g), strokeWidth: 2, strokeDasharray: dashes[g % dashes.length] }),
            dot(mine, { x: "x", y: "y", symbol: symbols[g % symbols.length], fill: "var(--paper)", stroke: run_colour(g), strokeWidth: 2, r: 4.5 }),
          ];
        }),
      }),
      table: () => ({
        columns: [...(groups.length > 1 ? ["group"] : []), x_label, label],
        rows: data.map((point) => [...(groups.length > 1 ? [point.group] : []), point.x, point.y]),
      }),
    });
  });
}

export function series_block(page: Page, series: Series, heading: string, sheet = true): HTMLElement {
  const charts = series_charts(series);
  const groups = [...new Set(series.groups)].filter((group) => group !== "");
  return block(page, {
    heading,
    sentence: series.sentence,
    sheet,
    content: [
      groups.length > 1 ? group_legend(groups) : null,
      el("div", { class: charts.length > 2 ? "side-by-side three" : "side-by-side" }, ...charts.map((each) => each.element)),
    ],
    paint: async (pen, box, theme, font) => {
      const room = groups.length > 1 ? paint_line_legend(pen, box, theme, groups, groups.map((_, g) => g), font) : box;
      const places = split(room, charts.length, 36);
      for (const [i, each] of charts.entries()) await each.paint(pen, places[i], theme, page.looks);
    },
  });
}


function group_legend(groups: string[]): HTMLElement {
  return el("ul", { class: "legend" }, ...groups.map((group, g) => el("li", {}, line_swatch(g), group)));
}
