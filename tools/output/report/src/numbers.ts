// SPDX-License-Identifier: Apache-2.0
// The numbers at the top, run beside run, each with its ± and, where a bench sheet has it, what was measured.
import { type Page, short_name } from "./block";
import type { Headline, Reading, Run } from "./data";
import { el, type Child } from "./dom";
import { error_text } from "./format";
import { line_swatch } from "./looks";

const most_beside = 4;

/** One number of one run: "1.34 kN" with "± 0.02" and the reading behind it. */
export interface BigNumber {
  value: string;
  error: string; // "" where it is not known
  reading: Reading | null;
}

/** One number a run where each has its own. */
export function big_numbers(page: Page, headline: Headline): BigNumber[] {
  const { runs } = page.report;
  const values = runs.length === 1 ? [headline.value] : headline.values;
  if (values.length !== runs.length) return [{ value: headline.value, error: "", reading: null }];
  return values.map((value, i) => {
    const unit = /[^\d\s.,±−-]+$/.exec(value)?.[0] ?? "";
    const reading = reading_behind(runs[i], headline, value, unit);
    const half = reading ? (reading.band ?? reading.error) : null;
    const digits = decimals(value);
    const scale = unit === "kN" ? 1e-3 : 1;
    return { value, reading, error: half !== null && half > 0 ? `± ${error_text(half * scale, digits)}` : "" };
  });
}

const decimals = (text: string) => /^[^\d]*\d+(?:\.(\d+))?/.exec(text)?.[1]?.length ?? 0;

/** The reading that a headline shows: of that name, with the number that is printed. */
function reading_behind(run: Run, headline: Headline, piece: string, unit: string): Reading | null {
  const printed = Number(/-?\d+(?:\.\d+)?/.exec(piece)?.[0] ?? NaN);
  const scale = unit === "kN" ? 1e-3 : 1;
  const near = 0.51 * 10 ** -decimals(piece);
  return (
    run.readings.find(
      (each) =>
        (each.label.includes(headline.name) || headline.name.includes(each.label)) &&
        (each.unit === unit || (unit === "kN" && each.unit === "N")) &&
        Math.abs(scale * each.value - printed) <= near,
    ) ?? null
  );
}

/** What the bench showed of one run, from the table of its sheet's readings: with several runs its heading begins with the title of the run. */
function measured_of(page: Page, headline: Headline, run: Run): string {
  const { runs, tables } = page.report;
  for (const table of tables) {
    if (runs.length > 1 && !table.heading.toLowerCase().startsWith(`${run.title.toLowerCase()}: `)) continue;
    const column = table.columns.indexOf("measured");
    const row = column > 0 ? table.rows.find((each) => each[0] === headline.name) : undefined;
    if (row) return row[column];
  }
  return "";
}

/** Of all runs that have it: "251 mm ±6", or "heel 251 mm ±6, forefoot 308 mm ±6". */
function measured(page: Page, headline: Headline): string {
  const { runs } = page.report;
  if (runs.length === 1) return measured_of(page, headline, runs[0]);
  return runs
    .map((run) => ({ run, bench: measured_of(page, headline, run) }))
    .filter(({ bench }) => bench !== "")
    .map(({ run, bench }) => `${short_name(page, run)} ${bench}`)
    .join(", ");
}

/** A table: names down, runs across; many runs share one column. */
export function numbers_table(page: Page, touched: (headline: Headline) => Child[]): HTMLElement {
  const { headline, runs } = page.report;
  const beside = runs.length > 1 && runs.length <= most_beside && headline.some((each) => big_numbers(page, each).length === runs.length);
  const rows = headline.map((each) => {
    const numbers = big_numbers(page, each);
    const bench = measured(page, each);
    const cells = numbers.map((number) =>
      el("td", { colspan: beside && numbers.length === 1 ? runs.length : null }, el("span", { class: "value" }, number.value), number.error ? el("span", { class: "error" }, ` ${number.error}`) : null),
    );
    const note = beside && !/\d/.test(each.note) ? "" : each.note;
    return el(
      "tr",
      {},
      el("th", { scope: "row" }, each.name),
      ...cells,
      el("td", { class: "note" }, note, bench ? el("strong", {}, `${note ? "; " : ""}measured ${bench}`) : null, ...touched(each)),
    );
  });
  const head = beside
    ? el("thead", {}, el("tr", {}, el("td", {}), ...runs.map((run, i) => el("th", { scope: "col" }, line_swatch(i), run.title)), el("td", {})))
    : null;
  return el("div", { class: "wide", tabindex: 0, role: "region", "aria-label": "The numbers in short" }, el("table", { class: "numbers" }, head, el("tbody", {}, ...rows)));
}

/** One line a number, for pictures: "peak force: heel 1.34 ± 0.02 kN, forefoot 1.18 kN". */
export function number_lines(page: Page): string[] {
  return page.report.headline.map((each) => {
    const numbers = big_numbers(page, each);
    const words = numbers.map((number, i) => `${numbers.length > 1 ? `${short_name(page, page.report.runs[i])} ` : ""}${number.value}${number.error ? ` ${number.error}` : ""}`);
    const bench = measured(page, each);
    return `${each.name}: ${words.join(", ")}${bench ? `; measured ${bench}` : ""}`;
  });
}
