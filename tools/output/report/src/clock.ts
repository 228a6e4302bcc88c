// SPDX-License-Identifier: Apache-2.0
// The one time that all pictures of the page show: charts, sections and player read it, each of them can move it.
import type { Run } from "./data";
import { fixed } from "./format";
import type { Pace } from "./pace";

/** Units of time: the longest one of which the span holds two. */
const units = [
  { name: "h", ms: 3_600_000 },
  { name: "min", ms: 60_000 },
  { name: "s", ms: 1000 },
];

const milliseconds = { name: "ms", ms: 1 };

export class Clock {
  time: number;
  readonly unit: { name: string; ms: number }; // in which people read times
  private peak = true; // nobody moved it yet: each run at its own moment of most compression
  private readonly listeners: (() => void)[] = [];
  private waiting = false;

  /** Times in ms: the record goes from 0 to `end`; what the page plays may begin before and end after it. */
  constructor(
    start: number,
    readonly end: number,
    readonly pace: Pace,
  ) {
    this.time = start;
    this.unit = units.find((unit) => end >= 2 * unit.ms) ?? milliseconds;
  }

  /** What one key press moves, ms. */
  get step(): number {
    return this.end / 120;
  }

  /** A time in ms as a number of `unit`. */
  shown(time: number): number {
    return time / this.unit.ms;
  }

  /** "4.20 ms", "18.33 h": in the unit of the time itself, so that the first second of a day can be read. */
  words(time: number): string {
    const unit = units.find((each) => each.ms <= this.unit.ms && time >= each.ms) ?? milliseconds;
    return `${fixed(time / unit.ms, 2)} ${unit.name}`;
  }

  /** "4.20 ms after first touch", "120 ms before first touch". */
  moment(time: number): string {
    if (time < 0) return `${fixed(-time, 0)} ms before first touch`;
    return `${this.pace.first < 0 && time > 1.5 * this.end ? `${fixed(time, 0)} ms` : this.words(time)} after first touch`;
  }

  set(time: number): void {
    const inside = Math.min(this.pace.last, Math.max(this.pace.first, time));
    if ((inside === this.time && !this.peak) || !Number.isFinite(inside)) return;
    this.time = inside;
    this.peak = false;
    this.tell();
  }

  /** Whether every run is shown at its own moment of most compression. */
  get at_peak(): boolean {
    return this.peak;
  }

  /** Every run at its own moment of most compression. */
  to_peak(): void {
    this.peak = true;
    this.tell();
  }

  /** The time at which a run is shown, ms. */
  of(run: Run): number {
    return this.peak ? run.curves.timeOfPeak : this.time;
  }

  /** The one time of several runs, or nothing while each shows its own. */
  one_time(runs: Run[]): number | null {
    const times = runs.map((run) => this.of(run));
    return times.every((time) => time === times[0]) ? (times[0] ?? null) : null;
  }

  private tell(): void {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      for (const listener of this.listeners) listener();
    });
  }

  watch(listener: () => void): void {
    this.listeners.push(listener);
  }
}

/**
 * Make an element a slider of the record for keyboard and screen reader. `text` says what it shows at the present time.
 */
export function time_slider(element: HTMLElement, clock: Clock, label: string, text: () => string): void {
  element.tabIndex = 0;
  element.setAttribute("role", "slider");
  element.setAttribute("aria-label", label);
  element.setAttribute("aria-valuemin", "0");
  element.setAttribute("aria-valuemax", clock.end.toFixed(2));
  const now = () => Math.min(clock.end, Math.max(0, clock.time));
  const show = () => {
    element.setAttribute("aria-valuenow", now().toFixed(2));
    element.setAttribute("aria-valuetext", text());
  };
  clock.watch(show);
  show();
  const moves: Record<string, () => number> = {
    ArrowRight: () => now() + clock.step,
    ArrowUp: () => now() + clock.step,
    ArrowLeft: () => now() - clock.step,
    ArrowDown: () => now() - clock.step,
    PageUp: () => now() + 10 * clock.step,
    PageDown: () => now() - 10 * clock.step,
    Home: () => 0,
    End: () => clock.end,
  };
  element.addEventListener("keydown", (event) => {
    const move = moves[event.key];
    if (!move || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    clock.set(Math.min(clock.end, Math.max(0, move())));
  });
}

/** Value of a sampled curve at a time, straight between samples. */
export function at(times: number[], values: number[], time: number): number {
  const n = Math.min(times.length, values.length);
  if (n === 0) return NaN;
  if (time <= times[0]) return values[0];
  if (time >= times[n - 1]) return values[n - 1];
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle] <= time) low = middle;
    else high = middle;
  }
  const share = (time - times[low]) / (times[high] - times[low] || 1);
  return values[low] + share * (values[high] - values[low]);
}
