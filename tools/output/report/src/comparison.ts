// SPDX-License-Identifier: Apache-2.0
// Why one stack does better than another: what differs, by how much, and which change has which share in it.
import { signed_bars } from "./bars";
import { block, type Page, short_name } from "./block";
import type { Comparison, ShareTable } from "./data";
import { el, type Child } from "./dom";
import { fixed, signed } from "./format";
import { doubt_look, lower_look, raise_look } from "./looks";
import { paint_table, split } from "./picture";
import { reading_table } from "./table";

const share_rule = "share, averaged over every order of change";
const open = (verdict: string) => /cannot|tell|unclear|noise|too small/i.test(verdict);

export function comparison_blocks(page: Page, comparison: Comparison): HTMLElement[] {
  const from = name_of(page, comparison.from, "the first");
  const to = name_of(page, comparison.to, "the other");
  const pair = page.report.comparison.length > 1 ? `: ${from} and ${to}` : "";
  const blocks = [differences(page, comparison, from, to, pair)];
  const why = shares_block(page, comparison, pair);
  if (why) blocks.push(why);
  const parts = parts_block(page, comparison, from, to, pair);
  if (parts) blocks.push(parts);
  return blocks;
}

function name_of(page: Page, index: number, otherwise: string): string {
  const run = page.report.runs[index];
  return run ? short_name(page, run) : otherwise;
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

function shares_block(page: Page, comparison: Comparison, pair: string): HTMLElement | null {
  if (comparison.shares.length === 0 && comparison.sentences.length === 0 && comparison.impossible.length === 0) return null;
  const charts = comparison.shares.map((shares) => ({ shares, chart: share_chart(shares) }));
  return block(page, {
    heading: `Why: the ${share_rule}${pair}`,
    sentence: comparison.shares[0]?.sentence ?? comparison.sentences[0] ?? "",
    long: true,
    content: [
      el("p", { class: "note" }, [comparison.rule, comparison.runs ? `It took ${comparison.runs}.` : ""].filter((text) => text).join(" ")),
      ...comparison.sentences.map((sentence) => el("p", {}, sentence)),
      ...charts.flatMap(({ shares, chart }, i) => [
        el("div", { class: "of-run" }, chart.element, i > 0 ? el("p", {}, shares.sentence) : null, share_table(shares)),
        ...interactions(shares),
      ]),
      ...(comparison.impossible.length > 0
        ? [el("h3", {}, "Mixtures that could not be built"), el("ul", {}, ...comparison.impossible.map((each) => el("li", {}, each)))]
        : []),
    ],
    paint: charts.length === 0 ? null : async (pen, box, theme) => {
      const shown = charts.slice(0, 2);
      const places = split(box, shown.length, 40);
      for (const [i, each] of shown.entries()) await each.chart.paint(pen, places[i], theme, page.looks);
    },
  });
}

function share_chart(shares: ShareTable) {
  return signed_bars(
    `${share_rule}: ${shares.label}`,
    shares.sentence,
    shares.rows.map((row) => ({
      name: row.change, value: row.share, band: row.band, note: open(row.verdict) ? row.verdict : "",
      look: open(row.verdict) ? doubt_look : row.share < 0 ? lower_look : raise_look,
    })),
    shares.unit, shares.digits,
  );
}

function share_table(shares: ShareTable): HTMLElement {
  const words = (value: number, band: number) => `${signed(value, shares.digits)}${band > 0 ? ` ± ${fixed(band, shares.digits)}` : ""}`;
  return reading_table(
    `Shares in the difference of ${shares.label}`,
    ["change", `share, ${shares.unit}`, "verdict"],
    [
      ...shares.rows.map((row): Child[] => [row.change, words(row.share, row.band), open(row.verdict) ? el("span", { class: "doubt" }, row.verdict) : row.verdict]),
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
        el("li", {}, `${each.changes.join(" with ")}: ${fixed(Math.abs(each.value), shares.digits)}${each.band > 0 ? ` ± ${fixed(each.band, shares.digits)}` : ""} ${shares.unit} ${each.value < 0 ? "less" : "more"} than their separate effects`),
      ),
    ),
  ];
}

function parts_block(page: Page, comparison: Comparison, from: string, to: string, pair: string): HTMLElement | null {
  if (comparison.parts.length === 0) return null;
  const bars = signed_bars(
    `energy turned into heat or kept: ${to} minus ${from}`, comparison.sentence,
    comparison.parts.map((part) => ({ name: part.name, value: part.to - part.from, band: 0, note: "", look: part.to < part.from ? lower_look : raise_look })),
    "% of the drop energy", 1, false,
  );
  const biggest = [...comparison.parts].sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from))[0];
  return block(page, {
    heading: `Part by part: where the energy stays${pair}`,
    sentence: `The largest difference is in ${biggest.name}: ${fixed(biggest.from, 1)} % of the drop energy in ${from}, ${fixed(biggest.to, 1)} % in ${to}.`,
    content: [
      el("p", { class: "note" }, `Bars to the right: ${to} turns more of it into heat, or keeps more; to the left: less.`),
      bars.element,
      reading_table("Energy by part", ["part", from, to, "difference"], comparison.parts.map((part) => [part.name, `${fixed(part.from, 1)} %`, `${fixed(part.to, 1)} %`, signed(part.to - part.from, 1)]), [1, 2, 3]),
    ],
    paint: (pen, box, theme) => bars.paint(pen, box, theme, page.looks).then(() => undefined),
  });
}
