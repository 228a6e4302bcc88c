// SPDX-License-Identifier: Apache-2.0
// In short at the top; what happened, cautions and how the numbers came about.
import { block, type Page, short_name } from "./block";
import { arrows } from "./comparison";
import type { Headline } from "./data";
import type { Drop } from "./drop";
import { el, type Child } from "./dom";
import { sentence_case } from "./format";
import { number_lines, numbers_table } from "./numbers";
import { origin_line, paint_text } from "./picture";
import { reading_table } from "./table";
import { caution_list } from "./trial";

export function short_block(page: Page, drop: Drop | null): HTMLElement {
  const { report } = page;
  const several = report.runs.length > 1;
  const touched = (headline: Headline) => {
    const by_text = new Map<string, string[]>();
    for (const run of report.runs) {
      const names = run.readings.filter((reading) => reading.label.includes(headline.name) || reading.name === headline.name).map((reading) => reading.name);
      for (const each of run.warnings)
        if (each.reading !== "" && names.includes(each.reading)) by_text.set(each.text, [...(by_text.get(each.text) ?? []), short_name(page, run)]);
    }
    return [...by_text].map(([text, runs]) => {
      const who = runs.length > 2 ? `${runs.length} of ${report.runs.length} runs` : runs.join(" and ");
      return el("span", { class: "note warning" }, several ? `${who}: ${text}` : text);
    });
  };
  const source = origin_line(report);
  const cause = report.comparison.length === 1 ? arrows(report.comparison[0].shares[0]?.sentence ?? "") : "";
  const made = block(page, {
    heading: "In short",
    sheet: true,
    shown: () => ({ heading: report.title, sentence: report.sentence }),
    sentence: report.sentence,
    content: [
      cause ? el("p", { class: "caption" }, cause) : null,
      ...(drop?.content ?? []),
      report.headline.length > 0 ? numbers_table(page, touched) : null,
      el("p", { class: "origin" }, `${source[0].toUpperCase()}${source.slice(1)}.`),
    ],
    extra: drop?.clips({ title: report.title, sentence: report.sentence }),
    paint: drop ? async (pen, box, theme, font) => {
      const beside = box.width > box.height;
      const lines = number_lines(page).filter((line) => !line.startsWith("rebound")); // that stands at the rods
      const room = (beside ? 1.4 : 1.5 * lines.length) * font;
      await drop.paint(pen, { ...box, height: box.height - room - 0.4 * font }, theme, font);
      const y = box.y + box.height - room;
      if (beside) paint_text(pen, lines.join("   ·   "), box.x, y, box.width, { size: font, colour: theme.colour("--ink"), most: 1 });
      else lines.forEach((line, i) => paint_text(pen, line, box.x, y + 1.5 * i * font, box.width, { size: font, colour: theme.colour("--ink"), most: 1 }));
    } : ((pen, box, theme) => {
      const beside = box.width > box.height;
      const n = Math.max(1, report.headline.length);
      report.headline.forEach((each, i) => {
        const x = beside ? box.x + (i * box.width) / n : box.x;
        const y = beside ? box.y + 0.2 * box.height : box.y + (i * box.height) / n + 30;
        const width = beside ? box.width / n - 40 : box.width - 40;
        pen.fillStyle = theme.colour("--ink");
        pen.fillRect(x, y, 5, beside ? 260 : 300);
        let below = paint_text(pen, each.name, x + 28, y, width - 28, { size: 38, colour: theme.colour("--ink"), most: 1 });
        below = paint_text(pen, each.value, x + 28, below, width - 28, { size: beside ? 76 : 104, weight: "bold", colour: theme.colour("--ink"), most: 2 });
        paint_text(pen, each.note, x + 28, below + 8, width - 28, { size: 34, colour: theme.colour("--faint-ink"), most: 3 });
      });
    }),
  });
  made.querySelector(".caption")?.classList.replace("caption", "answer"); // the first of them
  made.classList.add("short");
  return made;
}

export function story_block(page: Page): HTMLElement | null {
  const { story } = page.report;
  if (story.length === 0) return null;
  return block(page, {
    heading: "What happened, and why",
    sentence: story[0],
    content: story.slice(1).map((text) => el("p", {}, text)),
    paint: (pen, box, theme) => {
      let { y } = box;
      for (const text of story.slice(1)) y = paint_text(pen, text, box.x, y, box.width, { size: 38, colour: theme.colour("--ink") }) + 24;
    },
  });
}

export function caution_block(page: Page): HTMLElement | null {
  const { cautions } = page.report;
  if (cautions.length === 0) return null;
  return block(page, { heading: "Before you copy any of this by hand", sentence: "", sheet: true, content: caution_list(cautions) });
}

export function record_block(page: Page): HTMLElement {
  const { record, runs } = page.report;
  const text_of = (label: string, text: string, on_screen_only = false): Child =>
    text === "" ? null : el("details", { class: on_screen_only ? "data" : null }, el("summary", {}, label), el("pre", { tabindex: 0, "aria-label": label }, text));
  const sources = new Map<string, string>();
  for (const run of runs) for (const part of run.parts) sources.set(part.material, part.source);
  return block(page, {
    heading: "How these numbers came about",
    sentence: "",
    long: true,
    content: [
      el("p", {}, `Computed by ${record.program}. The same inputs give the same numbers. Their fingerprint is ${record.hash.slice(0, 16) || "not kept"}.`),
      ...[...new Set(runs.map((run) => run.rig))].filter((rig) => rig).slice(0, 6).map((rig) => el("p", {}, `${sentence_case(rig)}${rig.endsWith(".") ? "" : "."}`)),
      record.limits.length > 0 ? el("h3", {}, "Not in the model") : null,
      record.limits.length > 0 ? el("ul", {}, ...record.limits.map((limit) => el("li", {}, limit))) : null,
      sources.size > 0
        ? el("details", {}, el("summary", {}, "Where the numbers of the materials come from"), reading_table("Sources of the materials", ["material", "source"], [...sources].map(([material, source]) => [material, source])))
        : null,
      record.versions.length > 0
        ? el("details", {}, el("summary", {}, "Versions"), reading_table("Versions", ["program or library", "version"], record.versions.map((each) => [each.name, each.version])))
        : null,
      text_of("The case as written", record.caseText),
      text_of("Every input with its default and where it came from", record.resolvedText, true),
    ],
  });
}
