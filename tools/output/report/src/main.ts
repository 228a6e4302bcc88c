// SPDX-License-Identifier: Apache-2.0
// Puts the page together from the values that the program wrote beside it.
import { type Page } from "./block";
import { Clock } from "./clock";
import { comparison_blocks } from "./comparison";
import { contents } from "./contents";
import type { Report, Run } from "./data";
import { el, svg } from "./dom";
import { energy_block } from "./energy";
import { Motion } from "./frames";
import { lesson_answer, lesson_block } from "./lesson";
import { PartLooks, pattern_definitions } from "./looks";
import { line_block } from "./lines";
import { loop_block, moment_block, parts_block, section_block, type Shown } from "./moment";
import { drop_stage } from "./drop";
import { fall_of } from "./fall";
import { motion_block } from "./motion";
import { pace_of } from "./pace";
import { prepare_print } from "./print";
import { overlay_block, readings_block, series_block } from "./readings";
import { caution_block, record_block, short_block, story_block } from "./record";
import { table_block } from "./tables";
import { trial_blocks } from "./trial";

const most_shown = 2; // runs drawn side by side; of more, one is chosen
const most_laid_over = 6;

function read(): Report {
  const text = document.getElementById("report-data")?.textContent ?? "";
  const report = JSON.parse(text) as Report;
  if (report.format !== 1) throw new Error(`this page can only read reports of format 1, not ${String(report.format)}`);
  return { ...report, runs: told_apart(report.runs) };
}

/** The runs of a series come from one case and share its title: there what is left of the labels tells them apart. */
function told_apart(runs: Run[]): Run[] {
  const shared = runs.filter((run) => runs.filter((other) => other.title === run.title).length > 1);
  const labels = shared.map((run) => run.label);
  let common = (labels[0] ?? "").lastIndexOf("-") + 1;
  while (common > 0 && !labels.every((label) => label.startsWith(labels[0].slice(0, common)) && label.length > common))
    common = labels[0].lastIndexOf("-", common - 2) + 1;
  return runs.map((run) => {
    if (!shared.includes(run) || run.label === "") return run;
    const title = run.label.slice(common);
    const section = run.captions.section.replace(`${run.title}: `, "");
    return { ...run, title, captions: { ...run.captions, section } };
  });
}

/** The blocks that draw one or two runs. */
async function pictures(page: Page, runs: Run[]): Promise<HTMLElement[]> {
  const shown: Shown[] = await Promise.all(
    runs.map(async (run) => ({ run, motion: (await page.motions.get(run)) ?? null })),
  );
  const pushes = (run: Run) => run.curves.force.some((force) => force !== 0);
  if (!page.report.runs.some(pushes)) return [parts_block(page, runs)].filter((each): each is HTMLElement => each !== null);
  const loops = loop_block(page, page.report.runs.length <= most_laid_over ? page.report.runs : runs);
  // A drop is seen at the top of the page already; of many the chosen one has its moment here.
  const falls = runs.every((run) => page.falls.has(run));
  const moment = falls && page.report.runs.length <= most_shown ? null : moment_block(page, shown);
  return [section_block(page, shown), moment, loops, falls ? null : motion_block(page, shown)].filter(
    (each): each is HTMLElement => each !== null,
  );
}

async function build(report: Report, main: HTMLElement): Promise<void> {
  const looks = new PartLooks(report);
  document.body.append(
    svg("svg", { width: 0, height: 0, "aria-hidden": "true", class: "definitions" }, pattern_definitions(looks.all())),
  );
  const { runs } = report;
  const end = Math.max(0.001, ...runs.map((run) => Math.max(run.curves.time.at(-1) ?? 0, run.frames?.time.at(-1) ?? 0)));
  const falls = new Map(runs.flatMap((run) => {
    const fall = fall_of(run);
    return fall ? [[run, fall]] : [];
  }));
  const page: Page = {
    report,
    looks,
    clock: new Clock(runs[0]?.curves.timeOfPeak ?? 0, end, pace_of([...falls.values()], end)),
    motions: new Map(),
    falls,
    highest_gas: runs.flatMap((run) => run.gases).reduce((most, gas) => gas.pressure.reduce((a, b) => Math.max(a, b), most), 0),
    redraws: [],
  };
  const open = (run: Run) => {
    if (!page.motions.has(run))
      page.motions.set(run, run.frames ? Motion.open(run.frames).catch(() => null) : Promise.resolve(null));
  };

  const header = el("header", {}, el("h1", {}, report.title));
  const body = report.lesson ? el("div", { class: "answer-page", hidden: report.lesson.guess === null }) : main;
  main.append(header);
  if (report.lesson) main.append(lesson_block(page, report.lesson, body), body);
  if (report.lesson) body.append(lesson_answer(report.lesson));
  const add = (...blocks: (HTMLElement | null)[]) => {
    for (const each of blocks) if (each) body.append(each);
  };
  const lead = report.sentence;
  runs.filter((run) => falls.has(run)).forEach(open);
  const drop = await drop_stage(page);
  add(short_block(page, drop));
  if (report.trial) add(...trial_blocks(page, report.trial));
  for (const comparison of report.comparison) add(...comparison_blocks(page, comparison));
  for (const table of report.tables) add(table_block(page, table));
  for (const lines of report.lines) add(line_block(page, lines));
  if (report.series) add(series_block(page, report.series, `Step by step: ${report.series.quantity}`));

  const place = el("div", {});
  const show = async (chosen: Run[]) => {
    chosen.forEach(open);
    const energy = energy_block(page, runs, chosen);
    const drawn = await pictures(page, chosen);
    place.replaceChildren(...drawn, ...(energy ? [energy] : []));
  };
  if (runs.length > most_shown) {
    const choice = el("fieldset", { class: "choice" }, el("legend", {}, "Draw this run"));
    runs.forEach((run, i) => {
      const input = el("input", { type: "radio", name: "run", checked: i === 0 });
      input.addEventListener("change", () => {
        page.clock.set(run.curves.timeOfPeak);
        void show([run]);
      });
      choice.append(el("label", {}, input, ` ${run.title}`));
    });
    add(el("section", { class: "block", "aria-label": "Which run is drawn below" }, choice));
  }
  add(place);
  if (runs.length > 0) await show(runs.slice(0, runs.length > most_shown ? 1 : most_shown));
  add(story_block(page), readings_block(page, runs), overlay_block(page, runs, report.comparison[0]?.sentence ?? lead));
  add(caution_block(page), record_block(page));
  header.append(contents(body, place));

  const redraw = () => page.redraws.forEach((each) => each());
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redraw);
  prepare_print(main, redraw);
}

const main = document.getElementById("report");
if (main) {
  try {
    const report = read();
    if (!document.title) document.title = report.title;
    void build(report, main).then(
      // Charts are drawn with the first frame; after the second a reader can use them.
      () => requestAnimationFrame(() => requestAnimationFrame(() => (main.dataset.ready = performance.now().toFixed(0)))),
      (error: unknown) => fail(main, error),
    );
  } catch (error) {
    fail(main, error);
  }
}

function fail(place: HTMLElement, error: unknown): void {
  place.append(el("p", { class: "warning" }, `The page could not be drawn: ${error instanceof Error ? error.message : String(error)}`));
  console.error(error);
}
