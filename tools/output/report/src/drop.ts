// SPDX-License-Identifier: Apache-2.0
// A drop as one sees it at the bench: fall, squeeze and flight beside one rule, several rods in step, with the force over
// time and the sections beside them. All of it follows the clock of the page.
import { frame_of, type Page } from "./block";
import type { Run } from "./data";
import { el, type Child, watch_width } from "./dom";
import type { Moving } from "./fields";
import { run_legend, time_chart } from "./moment";
import { sections } from "./motion";
import { Theme } from "./looks";
import { paint_line_legend, paint_text, type Painter } from "./picture";
import { clip_buttons, player } from "./player";
import { draw_rods, type Rod, rod_of, type RodPaint, rods_width } from "./rods";
import type { Box } from "./stage";
import { gas_at } from "./view";

const most_rods = 5;
const most_sections = 2;

export interface Drop {
  content: Child[];
  paint: Painter;
  clips: (frame: { title: string; sentence: string }) => HTMLElement[];
}

/** Of many drops the first, the last and some between. */
function chosen(runs: Run[]): Run[] {
  if (runs.length <= most_rods) return runs;
  return Array.from({ length: most_rods }, (_, i) => runs[Math.round((i * (runs.length - 1)) / (most_rods - 1))]);
}

/** Null for pages without a drop. */
export async function drop_stage(page: Page): Promise<Drop | null> {
  const falling = page.report.runs.filter((run) => page.falls.has(run));
  const runs = chosen(falling);
  if (runs.length === 0) return null;
  const rods: Rod[] = await Promise.all(
    runs.map(async (run) => rod_of(page, run, runs.length > 1 ? run.title : "", page.falls.get(run)!, (await page.motions.get(run)) ?? null)),
  );
  const moving = rods.flatMap(({ run, motion }): Moving[] => (motion ? [{ run, motion }] : []));
  const seen = moving.length > most_sections ? [moving[0], moving[moving.length - 1]] : moving;
  const stacks = seen.length > 0 ? sections(page, seen) : null;
  const force = time_chart(page, runs, "force");
  const legend = runs.length > 1 ? run_legend(page, runs) : null;
  const beside = new RodsView(page, rods);
  const side = el("div", { class: "beside-rods" }, legend, force.element, stacks?.element ?? null);
  const element = el("div", { class: `drop ${rods.length === 1 ? "one" : rods.length === 2 ? "two" : "many"}` }, beside.element, side);

  const paint_rods = (pen: CanvasRenderingContext2D, box: Box, theme: Theme, font: number, time: number | null) =>
    draw_rods(pen, box, rods, (run) => time ?? page.clock.of(run), rod_paint(page, theme, font, 1.5));
  /** The room beside or below the rods. */
  const split_off = (box: Box, font: number): [Box, Box] => {
    if (box.width > box.height) {
      const width = Math.min(stacks ? 0.5 * box.width : box.width, rods_width(rods, box.height, font));
      return [{ ...box, width }, { ...box, x: box.x + width + 40, width: box.width - width - 40 }];
    }
    const height = 0.56 * box.height;
    return [{ ...box, height }, { ...box, y: box.y + height + 24, height: box.height - height - 24 }];
  };
  const when = (time: number | null) => {
    const now = time ?? page.clock.one_time(runs);
    return now === null ? "each at its greatest compression" : `${page.clock.moment(now)}${time === null ? "" : `, ${page.clock.pace.words(now)}`}`;
  };
  return {
    content: [
      element,
      player(page.clock, element),
      stacks?.choice.element ?? null,
      falling.length > runs.length ? el("p", { class: "note" }, `${runs.length} of ${falling.length} drops are drawn; all are in the charts and tables below.`) : null,
      el("details", {}, el("summary", {}, "What is calculated in this picture"), el("p", { class: "note" }, "The contact is calculated with finite elements. Fall and flight are free flight with the drop height, the speed at contact loss and the guide loss, taken evenly along the way. After contact loss the stack is drawn as the weight left it. The rule counts from the top of each stack.")),
    ],
    paint: async (pen, box, theme, font) => {
      const [left, right] = split_off(box, font);
      paint_rods(pen, left, theme, font, null);
      let room = { ...right };
      if (legend) room = paint_line_legend(pen, room, theme, runs.map((run) => run.title), runs.map((run) => page.report.runs.indexOf(run)), 0.9 * font);
      const share = stacks ? 0.5 : 1;
      await force.paint(pen, { ...room, height: share * room.height - 12 }, theme, page.looks);
      stacks?.paint(pen, { ...room, y: room.y + share * room.height + 12, height: (1 - share) * room.height - 12 }, theme, 0.85 * font, null);
    },
    clips: (frame) =>
      clip_buttons(page, () => frame_of(page, frame.title, frame.sentence), (pen, box, theme, font, time) => {
        const [left, right] = split_off(box, font);
        paint_rods(pen, left, theme, font, time);
        const y = paint_text(pen, when(time), right.x, right.y, right.width, { size: 1.2 * font, colour: theme.colour("--mark"), most: 2 }) + 0.5 * font;
        stacks?.paint(pen, { ...right, y, height: right.height - (y - right.y) }, theme, font, time);
      }),
  };
}

function rod_paint(page: Page, theme: Theme, font: number, density: number): RodPaint {
  return { theme, font, density, look: (run, part) => page.looks.of(run, part), gas: (run, time) => gas_at(page, run, time) };
}

/** The canvas of the rods; as high as a screen shows at once. */
class RodsView {
  readonly element: HTMLElement;
  private readonly canvas: HTMLCanvasElement;
  private width = 0;

  constructor(
    private readonly page: Page,
    private readonly rods: Rod[],
  ) {
    const words = rods.map((rod) => `${rod.name ? `${rod.name}: ` : ""}falls ${rod.fall.height.toFixed(0)} mm, rebounds ${rod.label.join(" ").trim()}`).join("; ");
    this.canvas = el("canvas", { role: "img", "aria-label": `Drop weights beside a rule. ${words}` });
    this.element = el("div", { class: "rods" }, this.canvas);
    page.clock.watch(() => this.draw());
    page.redraws.push(() => this.draw());
    watch_width(this.element, (width) => {
      this.width = width;
      this.draw();
    });
  }

  private draw(): void {
    const pen = this.canvas.getContext("2d");
    if (!pen) return;
    const width = this.width || 440;
    const height = 540;
    const density = Math.max(window.devicePixelRatio || 1, 1.5);
    this.canvas.width = Math.round(width * density);
    this.canvas.height = Math.round(height * density);
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, width, height);
    draw_rods(pen, { x: 0, y: 0, width, height }, this.rods, (run) => this.page.clock.of(run), rod_paint(this.page, new Theme(this.canvas), 13, density));
  }
}
