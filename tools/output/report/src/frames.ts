// SPDX-License-Identifier: Apache-2.0
// Frames of the deforming section: base64, inflate, add up the differences (data.ts says how they are coded).
import type { Field, Frames } from "./data";

/** Absolute integers, frame after frame. */
export async function decode(coded: string, n_frames: number): Promise<Int16Array> {
  const binary = atob(coded);
  const bytes = Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  const buffer = await new Response(stream).arrayBuffer();
  const view = new DataView(buffer);
  const values = new Int16Array(buffer.byteLength >> 1);
  for (let i = 0; i < values.length; ++i) values[i] = view.getInt16(2 * i, true);
  const n = values.length / n_frames;
  for (let i = n; i < values.length; ++i) values[i] += values[i - n];
  return values;
}

/** A moment between frames. */
export interface Shape {
  x: Float32Array; // of the nodes, mm
  y: Float32Array;
  tup: number; // height of the striker's lowest point, mm
  frame: number; // the nearest
  share: number; // way from `first` to `first` + 1
  first: number;
}

/** The frames of one run, decoded once; fields when they are first asked for. */
export class Motion {
  private readonly fields = new Map<string, Float32Array>();
  private readonly found = new Map<number, number[][]>(); // cavities by part: they are those of the first picture
  readonly width: number; // mm, greatest half width over all frames
  readonly height: number; // mm, greatest height

  private constructor(
    readonly frames: Frames,
    private readonly positions: Int16Array,
  ) {
    let width = 0;
    let height = 0;
    for (let i = 0; i < positions.length; i += 2) {
      width = Math.max(width, positions[i]);
      height = Math.max(height, positions[i + 1]);
    }
    this.width = width * frames.quantum;
    this.height = height * frames.quantum;
  }

  static async open(frames: Frames): Promise<Motion> {
    // An outline that ends in the open goes on to the axis, so that it can be filled.
    const [x, y] = frames.tupOutline.at(-1) ?? [0, 0];
    const whole: Frames = x > 0.01 ? { ...frames, tupOutline: [...frames.tupOutline, [0, y]] } : frames;
    return new Motion(whole, await decode(frames.positions, frames.n));
  }

  shape(time: number): Shape {
    const times = this.frames.time;
    let first = 0;
    while (first + 2 < times.length && times[first + 1] <= time) ++first;
    const next = Math.min(first + 1, times.length - 1);
    const span = times[next] - times[first];
    const share = span > 0 ? Math.min(1, Math.max(0, (time - times[first]) / span)) : 0;
    const n = this.frames.nNodes;
    const x = new Float32Array(n);
    const y = new Float32Array(n);
    const a = first * n * 2;
    const b = next * n * 2;
    for (let i = 0; i < n; ++i) {
      x[i] = this.frames.quantum * ((1 - share) * this.positions[a + 2 * i] + share * this.positions[b + 2 * i]);
      y[i] = this.frames.quantum * ((1 - share) * this.positions[a + 2 * i + 1] + share * this.positions[b + 2 * i + 1]);
    }
    const tup = (1 - share) * this.frames.tup[first] + share * this.frames.tup[next];
    return { x, y, tup, first, share, frame: share < 0.5 ? first : next };
  }

  /**
   * What a part encloses with the axis, as chains of nodes from the axis to the axis: the inside of a film. A loop round
   * the right half of a hollow body runs along the axis twice; cut there, the chain that encloses less is the inner one.
   */
  cavities(part: number): number[][] {
    const known = this.found.get(part) ?? this.find_cavities(part);
    this.found.set(part, known);
    return known;
  }

  private find_cavities(part: number): number[][] {
    return this.frames.outlines.flatMap(({ part: of, nodes }) => {
      if (of !== part) return [];
      const n = nodes.length;
      const x = (i: number) => this.frames.quantum * this.positions[2 * nodes[i % n]];
      const y = (i: number) => this.frames.quantum * this.positions[2 * nodes[i % n] + 1];
      const on_axis = (i: number) => x(i) < 0.01;
      const start = nodes.findIndex((_, i) => on_axis(i) && !on_axis(i + 1));
      const chains: number[][] = [];
      for (let i = start; start >= 0 && i < start + n; ++i) {
        if (on_axis(i) && !on_axis(i + 1)) chains.push([i]);
        else if (!on_axis(i)) chains.at(-1)?.push(i);
        else if (!on_axis(i + n - 1)) chains.at(-1)?.push(i);
      }
      if (chains.length !== 2) return [];
      const area = (chain: number[]) => Math.abs(chain.reduce((sum, i, k) => sum + x(i) * y(chain[(k + 1) % chain.length]) - x(chain[(k + 1) % chain.length]) * y(i), 0));
      const inner = area(chains[0]) < area(chains[1]) ? chains[0] : chains[1];
      return [inner.map((i) => nodes[i % n])];
    });
  }

  /** All values of a field in its unit, frame after frame. */
  async field(field: Field): Promise<Float32Array> {
    const known = this.fields.get(field.name);
    if (known) return known;
    const integers = await decode(field.values, this.frames.n);
    const values = Float32Array.from(integers, (value) => field.offset + field.quantum * value);
    this.fields.set(field.name, values);
    return values;
  }
}
