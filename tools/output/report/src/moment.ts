// SPDX-License-Identifier: Apache-2.0
// The drawing of the stack, the moment of most compression beside the force, and the force-compression loop.
import { lineY, line, ruleY, ruleX } from "@observablehq/plot";
import { block, type Page, short_name, warnings } from "./block";
import { chart, type Chart, type Cursor } from "./charts";
import { at } from "./clock";
import type { Run } from "./data";
import { button, el, type Child, watch_width } from "./dom";
import { millimetres, sentence_case } from "./format";
import type { Motion } from "./frames";
import { dashes, line_swatch, run_colour } from "./looks";
import { paint_legend, paint_line_legend, paint_svg, paint_table, paint_text, split } from "./picture";
import { draw_section, parts_table, section_width } from "./section";
import { draw_stage } from "./stage";
import { common_extent, moment_line, moment_text, shape_at, stage_paint, View } from "./view";

export interface Shown {
  run: Run;
  motion: Motion | null;
}

/** Heading of one run among several. */
export function run_heading(page: Page, run: Run): HTMLElement | null {
  return page.report.runs.length > 1 ? el("h3", {}, run.title) : null;
}

/** Readings that the moment of most compression is about: their warnings stand there. */
const touched = ["peak_force", "peak_force_raw", "peak_deceleration", "greatest_compression", "compression", "compression_share", "peak_pressure", "bottoming_margin"];

/** Whether the force starts with needles that a smoothed reading leaves out. */
function has_needles(run: Run): boolean {
  const { time, force, timeOfPeak, timeOfLoss } = run.curves;
  const peak = Math.max(...force);
  let highest = 0;
  const end = Math.min(timeOfPeak, 0.12 * (timeOfLoss || (time.at(-1) ?? 0))); // what falls later relaxes
  for (let i = 0; i < time.length && time[i] < end; ++i) {
    if (highest > 0.1 * peak && force[i] < 0.6 * highest) return true;
    highest = Math.max(highest, force[i]);
  }
  return false;
}

/** The sentences of the runs, each with the name of its run where there are several. */
export function told_by(page: Page, runs: Run[], sentence_of: (run: Run) => string): string {
  return runs
    .filter((run) => sentence_of(run) !== "")
    .map((run) => {
      const sentence = sentence_of(run);
      return page.report.runs.length > 1 && !sentence.startsWith(run.title) ? `${sentence_case(short_name(page, run))}: ${sentence}` : sentence;
    })
    .join(" ");
}

export function section_block(page: Page, shown: Shown[]): HTMLElement | null {
  const drawable = shown.filter(({ run }) => run.section !== null);
  const several = drawable.length > 1;
  const widest = Math.max(...drawable.map(({ run }) => section_width(run)));
  if (drawable.length === 0) return null;
  return block(page, {
    heading: "What is in the stack",
    sentence: told_by(page, drawable.map(({ run }) => run), (run) => run.captions.section),
    content: [
      el("p", { class: "note" }, "Cut through the middle, foot side up, at rest. Dashed lines and slanted names mark what was assumed, not measured."),
      el(
        "div",
        { class: several ? "side-by-side" : "" },
        ...drawable.map(({ run, motion }) => {
          const drawing = el("div", { class: "drawing" });
          watch_width(drawing, (width) => {
            if (run.section) drawing.replaceChildren(draw_section(page, run, run.section, motion, width, 13, widest));
          });
          if (run.section) drawing.append(draw_section(page, run, run.section, motion, 520, 13, widest));
          return el(
            "div",
            { class: "of-run" },
            run_heading(page, run),
            el("p", { class: "note" }, run.rig),
            run.changes.length > 0 ? el("p", { class: "note" }, `Changed for this run: ${run.changes.join("; ")}.`) : null,
            el("div", { class: several ? "" : "drawing-and-parts" }, drawing, parts_table(page, run)),
          );
        }),
      ),
    ],
    paint: async (pen, box, theme, font) => {
      const boxes = split(box, drawable.length, 40);
      for (const [i, { run, motion }] of drawable.entries()) {
        if (!run.section) continue;
        const place = boxes[i];
        const y = drawable.length > 1 ? paint_text(pen, run.title, place.x, place.y, place.width, { size: font, weight: "bold", colour: theme.colour("--ink"), most: 2 }) : place.y;
        const drawing = draw_section(page, run, run.section, motion, place.width / 1.7, 16, widest, true);
        const below = await paint_svg(pen, drawing, { ...place, y, height: 0.68 * (place.height - (y - place.y)) }, theme, page.looks);
        const r = page.report.runs.indexOf(run);
        const items = run.parts.map((part, p) => ({ look: page.looks.of(r, p), words: `${part.name}${part.thickness > 0 ? ` ${millimetres(part.thickness)}` : ""}: ${part.material}` }));
        paint_legend(pen, { ...place, y: below + 14, height: place.y + place.height - below - 14 }, theme, items, 0.9 * font);
      }
    },
  });
}

/** Materials and sizes where there is no drawing to go with them. */
export function parts_block(page: Page, runs: Run[]): HTMLElement | null {
  if (runs.every((run) => run.parts.length === 0)) return null;
  return block(page, {
    heading: "What it is made of",
    sentence: told_by(page, runs, (run) => run.captions.section),
    content: [
      el(
        "div",
        { class: runs.length > 1 ? "side-by-side" : "" },
        ...runs.map((run) =>
          el(
            "div",
            { class: "of-run" },
            run_heading(page, run),
            el("p", { class: "note" }, run.rig),
            run.changes.length > 0 ? el("p", { class: "note" }, `Changed for this run: ${run.changes.join("; ")}.`) : null,
            parts_table(page, run),
          ),
        ),
      ),
    ],
    paint: (pen, box, theme) =>
      paint_table(
        pen,
        box,
        theme,
        ["run", "part", "material", "thickness"],
        runs.flatMap((run) => run.parts.map((part) => [short_name(page, run), part.name, part.material, part.thickness > 0 ? millimetres(part.thickness) : ""])),
      ),
  });
}

const kilo = (runs: Run[]) => (Math.max(...runs.flatMap((run) => run.curves.force)) >= 1000 ? { by: 1000, unit: "kN" } : { by: 1, unit: "N" });

/** Force (or compression) over time of one or several runs. */
export function time_chart(page: Page, runs: Run[], what: "force" | "compression", to_scale_of = runs): Chart {
  const { by, unit } = what === "force" ? kilo(to_scale_of) : { by: 1, unit: "mm" };
  const time_label = `time, ${page.clock.unit.name}`;
  const several = runs.length > 1;
  const numbers = runs.map((run) => page.report.runs.indexOf(run));
  const data = runs.map((run) => run.curves.time.map((time, i) => ({ time: page.clock.shown(time), value: run.curves[what][i] / by })));
  const cursor: Cursor = {
    clock: page.clock,
    line_at: () => {
      const time = several ? page.clock.one_time(runs) : page.clock.of(runs[0]);
      return time === null ? null : page.clock.shown(time);
    },
    points: () =>
      runs.map((run) => {
        const time = Math.min(page.clock.of(run), run.curves.time.at(-1) ?? 0);
        return [page.clock.shown(time), at(run.curves.time, run.curves[what], time) / by];
      }),
    time: (x) => x * page.clock.unit.ms,
    text: () => runs.map((run) => `${several ? `${run.title}: ` : ""}${moment_text(page, run)}`).join("; "),
  };
  return chart({
    name: several ? `${what} over time` : `${what} over time, ${runs[0].title}`,
    finding: runs.map((run) => run.captions.moment).join(" "),
    height: (width) => Math.min(340, Math.max(210, 0.55 * width)),
    options: () => ({
      x: { label: time_label, domain: [0, page.clock.shown(Math.max(...to_scale_of.map((run) => run.curves.time.at(-1) ?? 0)))] },
      y: { label: `${what}, ${unit}`, grid: true, nice: true, domain: [0, Math.max(...to_scale_of.flatMap((run) => run.curves[what])) / by] },
      marks: [
        ruleY([0], { stroke: "var(--ink)" }),
        several ? null : ruleX([page.clock.shown(runs[0].curves.timeOfPeak)], { stroke: "var(--faint-ink)", strokeDasharray: "2 3" }),
        ...data.map((each, i) =>
          lineY(each, {
            x: "time", y: "value", stroke: run_colour(several ? numbers[i] : 0), strokeWidth: 2.2,
            strokeDasharray: several ? dashes[numbers[i] % dashes.length] : ""
          }),
        ),
      ],
    }),
    table: () => ({
      columns: several ? ["run", time_label, `${what}, ${what === "force" ? "N" : "mm"}`] : [time_label, "force, N", "compression, mm"],
      rows: runs.flatMap((run) =>
        run.curves.time.map((time, i) => (several ? [run.label, page.clock.shown(time), run.curves[what][i]] : [page.clock.shown(time), run.curves.force[i], run.curves.compression[i]])),
      ),
    }),
    cursor,
    title: several,
  });
}

export function run_legend(page: Page, runs: Run[]): HTMLElement {
  return el("ul", { class: "legend" }, ...runs.map((run) => el("li", {}, line_swatch(page.report.runs.indexOf(run)), run.title)));
}

export function moment_block(page: Page, shown: Shown[]): HTMLElement {
  const extent = common_extent(shown.map(({ motion }) => motion));
  const rows = shown.map(({ run, motion }) => {
    const force = time_chart(page, [run], "force", shown.map((each) => each.run));
    const line_ = moment_line(page, run);
    const notes: Child[] = warnings(run, touched);
    return {
      run, motion, force,
      element: el(
        "div",
        { class: "of-run" },
        run_heading(page, run),
        el(
          "div",
          { class: motion ? "pair" : "" },
          motion ? el("div", {}, new View(page, run, motion, extent, `Section of ${run.title}: moment shown`).element, line_, ...notes) : null,
          force.element,
        ),
        ...(motion ? [] : [line_, ...notes]),
      ),
    };
  });
  return block(page, {
    heading: "The moment of most compression",
    sentence: told_by(page, shown.map(({ run }) => run), (run) => run.captions.moment),
    sheet: page.falls.size === 0, // a drop stands at the top already
    shown: () => (page.clock.at_peak ? null : { heading: sentence_case(page.clock.moment(page.clock.time)), sentence: shown.map(({ run }) => `${shown.length > 1 ? `${short_name(page, run)}: ` : ""}${moment_text(page, run)}`).join("; ") }),
    content: [
      el("p", { class: "note cursor-hint" }, "Point at a curve, or use the arrow keys on it, to see the stack at another moment. All pictures move together."),
      ...rows.map((row) => row.element),
      shown.some(({ run }) => has_needles(run))
        ? el("p", { class: "note" }, "The short spikes after first touch are stress waves running through the layers. The reading of peak force is smoothed and leaves them out.")
        : null,
      button("Back to the moment of most compression", () => page.clock.to_peak(), { class: "screen-only" }),
    ],
    paint: async (pen, box, theme, font) => {
      const boxes = split(box, rows.length, 40);
      for (const [i, { run, motion, force }] of rows.entries()) {
        const place = { ...boxes[i] };
        let y = rows.length > 1 ? paint_text(pen, run.title, place.x, place.y, place.width, { size: font, weight: "bold", colour: theme.colour("--ink"), most: 1 }) : place.y;
        y = paint_text(pen, moment_text(page, run), place.x, y, place.width, { size: 0.9 * font, colour: theme.colour("--ink"), most: 1 }) + 8;
        const room = { x: place.x, y, width: place.width, height: place.height - (y - place.y) };
        if (!motion) {
          await force.paint(pen, room, theme, page.looks);
          continue;
        }
        const [first, second] = rows.length === 1 ? split(room, 2, 30) : split({ ...room, width: Math.min(room.width, room.height) }, 2, 20);
        const stage = { ...first, width: rows.length === 1 ? first.width : room.width };
        const time = page.clock.of(run);
        draw_stage(pen, stage, motion, shape_at(page, run, motion, time), extent, { ...stage_paint(page, run, time, theme), density: 1.5, field: null, type: 1.8 });
        await force.paint(pen, { ...second, width: rows.length === 1 ? second.width : room.width }, theme, page.looks);
      }
    },
  });
}

/** Force against compression: loading above, unloading below, the area between is lost. */
export function loop_block(page: Page, runs: Run[]): HTMLElement {
  const { by, unit } = kilo(runs);
  const several = runs.length > 1;
  const numbers = runs.map((run) => page.report.runs.indexOf(run));
  const deepest = Math.max(...runs.flatMap((run) => run.curves.compression));
  const highest = Math.max(...runs.flatMap((run) => run.curves.force)) / by;
  const nearest = (x: number, y: number) => {
    let best = page.clock.time;
    let distance = Infinity;
    for (const run of runs)
      run.curves.time.forEach((time, i) => {
        const far = ((run.curves.compression[i] - x) / deepest) ** 2 + ((run.curves.force[i] / by - y) / highest) ** 2;
        if (far < distance) {
          distance = far;
          best = time;
        }
      });
    return best;
  };
  const loop = chart({
    name: "force against compression",
    finding: runs.map((run) => run.captions.loop).join(" "),
    height: (width) => Math.min(440, Math.max(260, 0.6 * width)),
    options: () => ({
      x: { label: "compression, mm", nice: true, grid: true },
      y: { label: `force, ${unit}`, nice: true, grid: true, zero: true },
      marks: [
        ruleY([0], { stroke: "var(--ink)" }),
        several ? null : line(loop_points(runs[0], by), { x: "x", y: "y", stroke: "none", fill: "var(--tone-2)", fillOpacity: 0.5, curve: "linear-closed" }),
        ...runs.map((run, i) =>
          line(loop_points(run, by), {
            x: "x", y: "y", stroke: run_colour(numbers[i]), strokeWidth: 2.2, strokeDasharray: dashes[numbers[i] % dashes.length],
          }),
        ),
        ...runs.map((run, i) =>
          line(arrow_part(run, by), { x: "x", y: "y", stroke: run_colour(numbers[i]), strokeWidth: 2.2, markerEnd: "arrow" }),
        ),
      ],
    }),
    table: () => ({
      columns: ["run", "compression, mm", "force, N"],
      rows: runs.flatMap((run) => run.curves.time.map((_, i) => [run.label, run.curves.compression[i], run.curves.force[i]])),
    }),
    cursor: {
      clock: page.clock,
      line_at: () => null,
      points: () =>
        runs.map((run) => {
          const time = page.clock.of(run);
          return [at(run.curves.time, run.curves.compression, time), at(run.curves.time, run.curves.force, time) / by];
        }),
      time: nearest,
      text: () => runs.map((run) => `${several ? `${run.title}: ` : ""}${moment_text(page, run)}`).join("; "),
    },
  });
  return block(page, {
    heading: "Squeeze and release: force against compression",
    sentence: told_by(page, runs, (run) => run.captions.loop),
    content: [
      el("p", { class: "note" }, "The upper branch is the loading, the lower one the unloading; the arrow shows the direction. The area between them is energy that does not come back."),
      several ? run_legend(page, runs) : null,
      loop.element,
    ],
    paint: async (pen, box, theme, font) => {
      const room = several ? paint_line_legend(pen, box, theme, runs.map((run) => run.title), numbers, font) : box;
      await loop.paint(pen, room, theme, page.looks);
    },
  });
}

function loop_points(run: Run, by: number): { x: number; y: number }[] {
  return run.curves.time.map((_, i) => ({ x: run.curves.compression[i], y: run.curves.force[i] / by }));
}

/** A short stretch of the loading branch, for an arrow that shows the way round. */
function arrow_part(run: Run, by: number): { x: number; y: number }[] {
  const points = loop_points(run, by);
  const peak = Math.max(...points.map((point) => point.y));
  const at_half = points.findIndex((point) => point.y > 0.5 * peak);
  return at_half > 0 ? points.slice(at_half - 1, at_half + 1) : [];
}

