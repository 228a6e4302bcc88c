// SPDX-License-Identifier: Apache-2.0
// A canvas that shows the section of one run at the time of the clock.
import type { Page } from "./block";
import { at, time_slider } from "./clock";
import type { Field, Run } from "./data";
import { el, watch_width } from "./dom";
import { fixed } from "./format";
import type { Motion, Shape } from "./frames";
import { Theme } from "./looks";
import { draw_stage, type Extent, type Paint } from "./stage";

export interface Shade {
  field: Field;
  values: Float32Array;
  low: number;
  high: number;
}

/** Room for all of `motions`, and for some of the striker. */
export function common_extent(motions: (Motion | null)[]): Extent {
  const there = motions.filter((motion): motion is Motion => motion !== null);
  return {
    half_width: Math.max(10, ...there.map((motion) => motion.width)) * 1.03,
    height: Math.max(5, ...there.map((motion) => motion.height)) + 9,
  };
}

export class View {
  readonly element: HTMLElement;
  private readonly canvas = el("canvas", { "aria-hidden": "true" });
  private width = 0;
  shade: Shade | null = null;

  constructor(
    private readonly page: Page,
    private readonly run: Run,
    private readonly motion: Motion,
    private readonly extent: Extent,
    label: string,
  ) {
    this.element = el("div", { class: "stage" }, this.canvas);
    time_slider(this.element, page.clock, label, () => moment_text(page, run));
    page.clock.watch(() => this.draw());
    page.redraws.push(() => this.draw());
    watch_width(this.element, (width) => {
      this.width = width;
      this.draw();
    });
    let start: { x: number; time: number } | null = null;
    this.element.addEventListener("pointerdown", (event) => {
      start = { x: event.clientX, time: page.clock.of(run) };
      this.element.setPointerCapture(event.pointerId);
    });
    this.element.addEventListener("pointermove", (event) => {
      if (start) page.clock.set(start.time + ((event.clientX - start.x) / Math.max(100, this.width)) * page.clock.end);
    });
    for (const name of ["pointerup", "pointercancel"]) this.element.addEventListener(name, () => (start = null));
  }

  draw(): void {
    const width = this.width || 520;
    const pen = this.canvas.getContext("2d");
    if (!pen) return;
    const height = Math.round((width * this.extent.height) / (2 * this.extent.half_width)) + 4;
    const density = Math.max(window.devicePixelRatio || 1, 1.5);
    if (this.canvas.width !== Math.round(width * density) || this.canvas.height !== Math.round(height * density)) {
      this.canvas.width = Math.round(width * density);
      this.canvas.height = Math.round(height * density);
    }
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, width, height);
    const { page, run, motion } = this;
    const time = page.clock.of(run);
    draw_stage(pen, { x: 0, y: 0, width, height }, motion, shape_at(page, run, motion, time), this.extent, {
      ...stage_paint(page, run, time, new Theme(this.canvas)), density, field: this.shade,
    });
  }
}

/** The stack at a moment; before and after the contact the striker is in flight. */
export function shape_at(page: Page, run: Run, motion: Motion, time: number): Shape {
  const shape = motion.shape(time);
  const fall = page.falls.get(run);
  return fall && (time < 0 || time > fall.loss) ? { ...shape, tup: motion.frames.tup[0] + fall.level(time) } : shape;
}

/** What a stage needs to know of a run. */
export function stage_paint(page: Page, run: Run, time: number, theme: Theme): Pick<Paint, "theme" | "look" | "gas"> {
  const number = page.report.runs.indexOf(run);
  return { theme, look: (part) => page.looks.of(number, part), gas: gas_at(page, run, time) };
}

/** Pressure in each unit of a run; tints go up to the highest pressure of the page. */
export function gas_at(page: Page, run: Run, time: number): NonNullable<Paint["gas"]> {
  return run.gases.map((gas) => ({ part: gas.part, pressure: at(run.curves.time, gas.pressure, time), highest: page.highest_gas }));
}

/** "4.20 ms after first touch: 1340 N, squeezed by 7.3 mm"; in flight how high and how fast. */
export function moment_text(page: Page, run: Run, time = page.clock.of(run)): string {
  const { curves } = run;
  const when = page.clock.moment(time);
  const fall = page.falls.get(run);
  if (fall && (time < 0 || time > fall.loss)) {
    const speed = fall.speed(time);
    const way = Math.abs(speed) < 0.005 ? "at rest" : `${speed > 0 ? "rising" : "falling"} at ${fixed(Math.abs(speed), 2)} m/s`;
    return `${when}: ${fixed(fall.level(time), 0)} mm above the stack, ${way}`;
  }
  const force = at(curves.time, curves.force, time);
  const compression = at(curves.time, curves.compression, time);
  const gas = run.gases.map((each) => `, gas at ${fixed(at(curves.time, each.pressure, time), 0)} kPa`).join("");
  return `${when}: ${fixed(force, 0)} N, squeezed by ${fixed(Math.max(0, compression), 1)} mm${gas}`;
}

/** The same, kept to the time of the clock, beside the picture. */
export function moment_line(page: Page, run: Run): HTMLElement {
  const line = el("p", { class: "reading-line", "aria-hidden": "true" });
  const show = () => (line.textContent = moment_text(page, run));
  page.clock.watch(show);
  show();
  return line;
}
