// SPDX-License-Identifier: Apache-2.0
// Why one stack does better than another: what differs, by how much, and which change has which share in it.
import { signed_bars } from "./bars";
import { block, type Page } from "./block";
import type { Chart } from "./charts";
import type { Comparison, ShareTable } from "./data";
import { el, type Child } from "./dom";
import { energy_basis } from "./energy";
import { fixed, signed } from "./format";
import { doubt_look, lower_look, raise_look, returned_look } from "./looks";
import { paint_table } from "./picture";
import { step_chart } from "./steps";
import { reading_table } from "./table";

const share_rule = "share, averaged over every order of change";
const open = (verdict: string) => /cannot|tell|unclear|noise|too small/i.test(verdict);

export function comparison_blocks(page: Page, comparison: Comparison): HTMLElement[] {
  const from = name_of(page, comparison.from, "the first");
  const to = name_of(page, comparison.to, "the other");
  const pair = page.report.comparison.length > 1 ? `: ${from} and ${to}` : "";
  return [
    shares_block(page, comparison, from, to, pair),
    differences(page, comparison, from, to, pair),
    parts_block(page, comparison, from, to, pair),
  ].filter((each): each is HTMLElement => each !== null);
}

/** Changes are named "core -> air unit" where only plain letters can stand. */
export const arrows = (text: string) => text.replaceAll(" -> ", " → ");

function name_of(page: Page, index: number, otherwise: string): string {
  const run = page.report.runs[index];
  return run ? run.title : otherwise;
}

function differences(page: Page, comparison: Comparison, from: string, to: string, pair: string): HTMLElement {
  const readings = comparison.readings.map((each) => [
    each.unit ? `${each.label}, ${each.unit}` : each.label,
    fixed(each.from, each.digits),
    fixed(each.to, each.digits),
    `${signed(each.to - each.from, each.digits)} ± ${fixed(each.band, each.digits)}`,
    each.verdict,
  ]);
  const columns = ["reading", from, to, "difference", "verdict"];
  return block(page, {
    heading: `What differs${pair}`,
    sentence: comparison.sentence,
    content: [
      comparison.differences.length > 0
        ? reading_table("What differs in the stacks", ["what", from, to], comparison.differences.map((each) => [each.what, each.from, each.to]))
        : el("p", {}, "The inputs of the two stacks do not differ."),
      el("h3", {}, "What this does to the readings"),
      reading_table("Readings and their difference", columns, readings.map((row) => row.map((cell, i): Child => (i === 4 && open(cell) ? el("span", { class: "doubt" }, cell) : cell))), [1, 2, 3]),
      el("p", { class: "note" }, "± is the band in which the difference lies. If it spans zero, the numbers cannot tell which one is higher."),
    ],
    paint: (pen, box, theme) => paint_table(pen, box, theme, columns, readings),
  });
}

/** One chart says why; the other readings and the tables are folded. */
function shares_block(page: Page, comparison: Comparison, from: string, to: string, pair: string): HTMLElement | null {
  if (comparison.shares.length === 0 && comparison.sentences.length === 0 && comparison.impossible.length === 0) return null;
  const charts = comparison.shares.map((shares) => ({ shares, chart: share_steps(comparison, shares, from, to) }));
  const [first, ...others] = charts;
  const details = ({ shares, chart }: (typeof charts)[number]) =>
    el("details", {}, el("summary", {}, `Why: ${shares.label}`), el("p", {}, arrows(shares.sentence)), el("div", { class: "of-run" }, chart.element, share_table(shares)), ...interactions(shares));
  const rule = [comparison.rule, comparison.runs ? `It took ${comparison.runs}.` : ""].filter((text) => text).join(" ");
  return block(page, {
    heading: `Why${pair}`,
    sheet: page.report.comparison.length === 1,
    sentence: arrows(comparison.shares[0]?.sentence ?? comparison.sentences[0] ?? ""),
    long: true,
    content: [
      first ? el("p", { class: "note" }, `Steps from ${from} to ${to}: each is the ${share_rule}.`) : null,
      first?.chart.element ?? null,
      ...comparison.sentences.filter((sentence) => sentence !== comparison.shares[0]?.sentence).map((sentence) => el("p", {}, sentence)),
      first ? el("details", {}, el("summary", {}, `The shares of ${first.shares.label} as a table`), share_table(first.shares), ...interactions(first.shares)) : null,
      ...others.map(details),
      rule || comparison.impossible.length > 0
        ? el(
            "details",
            {},
            el("summary", {}, "How the steps are found"),
            rule ? el("p", { class: "note" }, rule) : null,
            ...(comparison.impossible.length > 0
              ? [el("h3", {}, "Mixtures that could not be built"), el("ul", {}, ...comparison.impossible.map((each) => el("li", {}, each)))]
              : []),
          )
        : null,
    ],
    paint: !first ? null : async (pen, box, theme) => {
      await first.chart.paint(pen, box, theme, page.looks);
    },
  });
}

/** Steps in the unit of the shares; where the two stacks stand in another one, they are left out and the sum is shown. */
function share_steps(comparison: Comparison, shares: ShareTable, from: string, to: string): Chart {
  const rows = shares.rows.map((row) => ({
    name: arrows(row.change), value: row.share, band: row.band, note: open(row.verdict) ? row.verdict : "", end: false,
    look: open(row.verdict) ? doubt_look : row.share < 0 ? lower_look : raise_look,
  }));
  const title = `${shares.label}, step by step`;
  const ends = comparison.readings.find((each) => each.name === shares.reading);
  const sum = rows.reduce((total, row) => total + row.value, 0);
  if (!ends || Math.abs(ends.to - ends.from - sum) > 0.02 * Math.abs(sum) + 10 ** -shares.digits)
    return signed_bars(title, shares.sentence, rows, shares.unit, shares.digits);
  const end = (name: string, value: number) => ({ name, value, band: 0, note: "", end: true, look: returned_look });
  return step_chart(title, shares.sentence, [end(from, ends.from), ...rows, end(to, ends.to)], ends.unit || shares.unit, Math.max(ends.digits, shares.digits));
}

function share_table(shares: ShareTable): HTMLElement {
  const words = (value: number, band: number) => `${signed(value, shares.digits)}${band > 0 ? ` ± ${fixed(band, shares.digits)}` : ""}`;
  return reading_table(
    `Shares in the difference of ${shares.label}`,
    ["change", `share, ${shares.unit}`, "verdict"],
    [
      ...shares.rows.map((row): Child[] => [arrows(row.change), words(row.share, row.band), open(row.verdict) ? el("span", { class: "doubt" }, row.verdict) : row.verdict]),
      ["together: the whole difference", words(shares.total, shares.band), ""],
    ],
    [1],
    true,
  );
}

function interactions(shares: ShareTable): Child[] {
  if (shares.interactions.length === 0) return [];
  return [
    el("p", { class: "note" }, "Changes that do more or less together than separately (included in the shares above):"),
    el(
      "ul",
      {},
      ...shares.interactions.map((each) =>
        el("li", {}, `${arrows(each.changes.join(" with "))}: ${fixed(Math.abs(each.value), shares.digits)}${each.band > 0 ? ` ± ${fixed(each.band, shares.digits)}` : ""} ${shares.unit} ${each.value < 0 ? "less" : "more"} than their separate effects`),
      ),
    ),
  ];
}

function parts_block(page: Page, comparison: Comparison, from: string, to: string, pair: string): HTMLElement | null {
  if (comparison.parts.length === 0) return null;
  const basis = energy_basis(page.report.runs);
  const bars = signed_bars(
    `energy turned into heat or kept: ${to} minus ${from}`, comparison.sentence,
    comparison.parts.map((part) => ({ name: arrows(part.name), value: part.to - part.from, band: 0, note: "", look: part.to < part.from ? lower_look : raise_look })),
    `% of the ${basis}`, 1, false,
  );
  const biggest = [...comparison.parts].sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from))[0];
  return block(page, {
    heading: `Part by part: where the energy stays${pair}`,
    sentence: `The largest difference is in ${arrows(biggest.name)}: ${fixed(biggest.from, 1)} % of the ${basis} in ${from}, ${fixed(biggest.to, 1)} % in ${to}.`,
    content: [
      el("p", { class: "note" }, `Bars to the right: ${to} turns more of it into heat, or keeps more; to the left: less.`),
      bars.element,
      reading_table("Energy by part", ["part", from, to, "difference"], comparison.parts.map((part) => [arrows(part.name), `${fixed(part.from, 1)} %`, `${fixed(part.to, 1)} %`, signed(part.to - part.from, 1)]), [1, 2, 3]),
    ],
    paint: (pen, box, theme) => bars.paint(pen, box, theme, page.looks).then(() => undefined),
  });
}
