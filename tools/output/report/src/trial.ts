// SPDX-License-Identifier: Apache-2.0
// The change before cutting a shoe: now, with the change, what to know; its price in geometry; a range; cautions.
import { block, type Page } from "./block";
import type { Trial } from "./data";
import { el, type Child } from "./dom";
import { paint_table } from "./picture";
import { series_block } from "./readings";
import { reading_table } from "./table";

const verdicts: Record<Trial["rows"][number]["verdict"], string> = {
  better: "better",
  worse: "worse",
  same: "no real change",
  unknown: "cannot tell",
  fact: "",
};

export function trial_blocks(page: Page, trial: Trial): HTMLElement[] {
  const rows = trial.rows.map((row) => [row.name, row.now, row.then, [verdicts[row.verdict], row.note].filter((text) => text).join(": ")]);
  const columns = ["", "before", "after", "what to know"];
  const blocks = [
    block(page, {
      heading: "Before and after",
      sheet: true,
      sentence: trial.swaps.length > 0 ? `The change: ${trial.swaps.join("; ")}.` : page.report.sentence,
      content: [
        reading_table(
          "Readings before and after", columns,
          rows.map((row, r) => row.map((cell, i): Child => (i === 3 && trial.rows[r].verdict === "unknown" ? el("span", { class: "doubt" }, cell) : i === 3 && trial.rows[r].verdict !== "same" && verdicts[trial.rows[r].verdict] ? el("span", {}, el("strong", {}, verdicts[trial.rows[r].verdict]), trial.rows[r].note ? `: ${trial.rows[r].note}` : "") : cell))),
        ),
        ...caution_list(trial.cautions.filter((text) => !page.report.cautions.includes(text))),
      ],
      paint: (pen, box, theme) => paint_table(pen, box, theme, columns, rows),
    }),
  ];
  if (trial.geometry.length > 0)
    blocks.push(
      block(page, {
        heading: "What it costs in height and room",
        sentence: trial.geometry.map((each) => `${each.name} ${each.value}`).join(", ") + ".",
        content: [reading_table("Cost in geometry", ["", "change", "what to know"], trial.geometry.map((each) => [each.name, each.value, each.note]))],
        paint: (pen, box, theme) => paint_table(pen, box, theme, ["", "change", "what to know"], trial.geometry.map((each) => [each.name, each.value, each.note])),
      }),
    );
  if (trial.range) {
    const range = series_block(page, trial.range, "Over the whole range", false);
    if (trial.bottoms) range.querySelector(".take")?.before(el("p", {}, trial.bottoms));
    blocks.push(range);
  } else if (trial.bottoms) {
    blocks.push(block(page, { heading: "Where it bottoms", sentence: trial.bottoms, content: [] }));
  }
  return blocks;
}

export function caution_list(cautions: string[]): HTMLElement[] {
  if (cautions.length === 0) return [];
  return [el("ul", { class: "cautions" }, ...cautions.map((text) => el("li", { class: "caution" }, text)))];
}
