// SPDX-License-Identifier: Apache-2.0
// How fast the page plays: a drop is slow motion of two speeds, since a contact of 9 ms between two flights of 250 ms
// would pass unseen at one. Each stretch says how many times slower than real it is played.
import type { Fall } from "./fall";
import { tidy } from "./format";

export interface Stretch {
  from: number; // ms
  to: number;
  slower: number; // than real; below 1: faster
}

const contact_seconds = 4;
const flight_seconds = 1.8; // of the longer flight

export class Pace {
  readonly seconds: number;

  constructor(readonly stretches: Stretch[]) {
    this.seconds = stretches.reduce((sum, each) => sum + length(each), 0);
  }

  get first(): number {
    return this.stretches[0].from;
  }

  get last(): number {
    return this.stretches[this.stretches.length - 1].to;
  }

  /** The moment (ms) after a share of the way, 0..1. */
  time(share: number): number {
    let left = Math.min(1, Math.max(0, share)) * this.seconds;
    for (const each of this.stretches) {
      if (left <= length(each)) return each.from + (left * 1000) / each.slower;
      left -= length(each);
    }
    return this.last;
  }

  /** The share of the way at a moment. */
  share(time: number): number {
    let passed = 0;
    for (const each of this.stretches) passed += Math.min(length(each), Math.max(0, ((time - each.from) * each.slower) / 1000));
    return passed / this.seconds;
  }

  /** "400 times slower than real". */
  words(time: number): string {
    const { slower } = this.stretches.find((each) => time < each.to) ?? this.stretches[this.stretches.length - 1];
    return slower >= 1 ? `${tidy(slower)} times slower than real` : `${tidy(1 / slower)} times faster than real`;
  }

  /** "the contact 400 times slower than real, the fall and the flight 7 times". */
  whole(): string {
    if (this.stretches.length < 3) return `plays ${this.words(this.first)}`;
    return `plays the contact ${tidy(this.stretches[1].slower)} times slower than real, fall and flight ${tidy(this.stretches[0].slower)} times`;
  }
}

const length = (each: Stretch) => ((each.to - each.from) * each.slower) / 1000;

/** One figure, so that it can be said. */
function round(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return Math.round(value / power) * power;
}

/** Of drops the fall, the contact and the flight up to the highest top; of anything else the record from 0 to `end`. */
export function pace_of(falls: Fall[], end: number): Pace {
  if (falls.length === 0) return new Pace([{ from: 0, to: end, slower: round((6 * 1000) / end) }]);
  const start = Math.min(...falls.map((each) => each.start));
  const loss = Math.max(...falls.map((each) => each.loss));
  const top = Math.max(...falls.map((each) => each.top));
  const flying = round((1000 * flight_seconds) / Math.max(-start, top - loss));
  return new Pace([
    { from: start, to: 0, slower: flying },
    { from: 0, to: loss, slower: round((1000 * contact_seconds) / loss) },
    { from: loss, to: top, slower: flying },
  ]);
}
