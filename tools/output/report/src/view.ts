// SPDX-License-Identifier: Apache-2.0
// A canvas that shows the section of one run at the time of the clock.
import type { Page } from "./block";
import { at, type Clock, time_slider } from "./clock";
import type { Field, Run } from "./data";
import { el } from "./dom";
import { fixed } from "./format";
import type { Motion } from "./frames";
import { Theme } from "./looks";
import { draw_stage, type Extent } from "./stage";

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
    time_slider(this.element, page.clock, label, () => moment_text(page.clock, run));
    page.clock.watch(() => this.draw());
    page.redraws.push(() => this.draw());
    new ResizeObserver((entries) => {
      const now = Math.floor(entries[0].contentRect.width);
      if (now < 40 || now === this.width) return;
      this.width = now;
      this.draw();
    }).observe(this.element);
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
    const run_number = this.page.report.runs.indexOf(this.run);
    draw_stage(pen, { x: 0, y: 0, width, height }, this.motion, this.motion.shape(this.page.clock.of(this.run)), this.extent, {
      theme: new Theme(this.canvas),
      look: (part) => this.page.looks.of(run_number, part),
      density,
      field: this.shade,
    });
  }
}

/** "4.2 ms: 1340 N, squeezed by 7.3 mm". */
export function moment_text(clock: Clock, run: Run, time = clock.of(run)): string {
  const { curves } = run;
  const force = at(curves.time, curves.force, time);
  const compression = at(curves.time, curves.compression, time);
  return `${clock.words(time)} after first touch: ${fixed(force, 0)} N, squeezed by ${fixed(Math.max(0, compression), 1)} mm`;
}
