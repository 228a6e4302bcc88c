// SPDX-License-Identifier: Apache-2.0
// The way of a drop weight outside the contact. The solver covers the contact alone; before it and after it the weight
// is in free flight, led by a guide that takes a fixed share of the energy each way. Taken evenly along the way, that
// share makes a constant acceleration, so that both flights are parabolas with known ends (uniformly accelerated motion):
//   down  z = h - a t^2 / 2,  a = v^2 / (2 h)           h drop height, v speed at first touch
//   up    z = z1 + u t - b t^2 / 2,  b = u^2 / (2 (r - z1))   z1, u height and speed at contact loss, r rebound
// A later hit touches the stack below the level of the fresh one: what was recorded is moved to its own first touch. Its
// speeds and rebound are means over the hits, so that the flights join its record nearly, not exactly.
import type { Run } from "./data";
import { at } from "./clock";

export interface Fall {
  height: number; // above the level of first touch, mm
  rise: number; // of the rebound above that level, mm
  start: number; // of the fall, ms, negative: first touch is 0
  loss: number; // contact loss, ms
  top: number; // of the rebound, ms
  /** Height of the weight's lowest point above the level of first touch, mm; in contact what the run recorded. */
  level: (time: number) => number;
  /** Upward speed, m/s (mm/ms), in free flight. */
  speed: (time: number) => number;
}

/** Null where nothing falls, or the run stopped before the rebound was known. */
export function fall_of(run: Run): Fall | null {
  const value = (name: string) => run.readings.find((each) => each.name === name)?.value ?? NaN;
  const rise = value("rebound_height");
  const height = rise / (value("rebound_by_height") / 100);
  const down = value("impact_speed");
  const up = value("rebound_speed");
  const { time, compression, timeOfLoss: loss } = run.curves;
  const touched = compression[0] ?? 0;
  const recorded = (now: number) => touched - at(time, compression, now);
  const left = recorded(loss);
  if (!(height > 0 && down > 0 && up > 0 && loss > 0 && rise > left)) return null;
  const a = (down * down) / (2 * height);
  const b = (up * up) / (2 * (rise - left));
  const start = -down / a;
  return {
    height, rise, start, loss, top: loss + up / b,
    level: (now) => {
      if (now <= start) return height;
      if (now < 0) return height - 0.5 * a * (now - start) ** 2;
      if (now <= loss) return recorded(now);
      // Beyond the second touch nothing was computed: the weight waits there.
      return Math.max(left, left + up * (now - loss) - 0.5 * b * (now - loss) ** 2);
    },
    speed: (now) => (now <= start ? 0 : now < 0 ? -a * (now - start) : up - b * (now - loss)),
  };
}
