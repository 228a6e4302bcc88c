// SPDX-License-Identifier: Apache-2.0
// A block of the page: a heading, one sentence, the content, and what a reader may take along.
import type { Clock } from "./clock";
import type { Report, Run } from "./data";
import { announce, button, el, file_name, type Child } from "./dom";
import type { Fall } from "./fall";
import type { Motion } from "./frames";
import type { PartLooks } from "./looks";
import { type Frame, origin_line, type Painter, save_picture, sizes } from "./picture";

/** What all blocks share. */
export interface Page {
  report: Report;
  looks: PartLooks;
  clock: Clock;
  motions: Map<Run, Promise<Motion | null>>;
  falls: Map<Run, Fall>; // of the runs in which a weight falls and rebounds
  highest_gas: number; // the highest pressure in any unit, kPa
  redraws: (() => void)[]; // canvases, called when colours change
}

/** Warnings that belong to numbers, each once with the runs that it touches. */
export function minds(page: Page): string[] {
  const { runs } = page.report;
  const by_text = new Map<string, string[]>();
  for (const run of runs)
    for (const each of run.warnings) by_text.set(each.text, [...(by_text.get(each.text) ?? []), short_name(page, run)]);
  return [...by_text].map(([text, of]) => (runs.length === 1 ? text : `${of.length > 2 ? `${of.length} of ${runs.length} runs` : of.join(" and ")}: ${text}`));
}

export function frame_of(page: Page, title: string, sentence: string): Frame {
  return {
    title,
    sentence,
    mind: minds(page),
    about: page.report.title,
    source: origin_line(page.report),
  };
}

/** A run in the head of a column: its short name unless two runs share it. */
export function short_name(page: Page, run: Run): string {
  const shared = page.report.runs.filter((each) => each.label === run.label).length > 1;
  return shared || run.label === "" || run.title.length < run.label.length ? run.title : run.label;
}

export interface BlockParts {
  heading: string;
  sentence: string;
  content: Child[];
  paint?: Painter | null;
  extra?: HTMLElement[]; // more buttons
  long?: boolean; // may break over pages
  sheet?: boolean; // belongs to the one sheet that is printed, and stays open on a phone
  shown?: () => { heading: string; sentence: string } | null; // of a picture, where another moment is shown than the block is about
}

/** A screen on which a page of all blocks would be metres long. */
export const narrow = (): boolean => matchMedia("(max-width: 720px)").matches;

export function block(page: Page, parts: BlockParts): HTMLElement {
  const id = file_name("block", parts.heading);
  const take = el("div", { class: "take" });
  if (parts.paint) {
    const paint = parts.paint;
    for (const size of sizes)
      take.append(
        button(
          `Save picture ${size.name}`,
          () => {
            const { heading, sentence } = parts.shown?.() ?? parts;
            save_picture(page.report, size, frame_of(page, heading, sentence), paint)
              .then(() => announce("Picture saved."))
              .catch((error: unknown) => announce(`No picture: ${error instanceof Error ? error.message : String(error)}.`));
          },
          { "aria-label": `Save picture ${size.name}: ${parts.heading}` },
        ),
      );
  }
  if (parts.sentence)
    take.append(
      button("Copy sentence", () => void copy(`${parts.sentence} (${page.report.origin})`), {
        "aria-label": `Copy sentence: ${parts.heading}`,
      }),
    );
  take.append(...(parts.extra ?? []));
  const body = [
    parts.sentence ? el("p", { class: "caption" }, parts.sentence) : null,
    ...parts.content,
    take.childElementCount > 0 ? take : null,
  ];
  const heading = el("h2", { id: `${id}-heading` }, parts.heading);
  const folded = narrow() && !parts.sheet;
  return el(
    "section",
    { class: ["block", parts.long ? "long" : "", parts.sheet ? "on-sheet" : ""].join(" ").trim(), id, "aria-labelledby": `${id}-heading` },
    ...(folded ? [el("details", { class: "fold" }, el("summary", {}, heading), ...body)] : [heading, ...body]),
  );
}

async function copy(text: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    announce("Sentence copied.");
  } catch {
    // Without the clipboard right: select it in a field and copy as the keyboard would.
    const field = el("textarea", { "aria-label": "Sentence to copy", class: "screen-only" });
    field.value = text;
    document.body.append(field);
    field.select();
    const done = document.execCommand("copy");
    field.remove();
    announce(done ? "Sentence copied." : `This browser cannot copy. Here is the sentence: ${text}`);
  }
}

/** Warnings that touch one of `readings` (machine names or ""). */
export function warnings(run: Run, readings: string[]): HTMLElement[] {
  return run.warnings.filter((each) => readings.includes(each.reading)).map((each) => el("p", { class: "warning" }, each.text));
}
