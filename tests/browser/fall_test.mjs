// SPDX-License-Identifier: Apache-2.0
// The fall and the flight of a drop weight as the page draws them, against a step-by-step integration of the equation of
// motion of a weight with a constant friction on its guide, and the two speeds at which the page plays them.
import assert from "node:assert/strict";
import { test } from "node:test";
import { packages, root } from "./browser.mjs";

const { buildSync } = packages("esbuild");
async function module(name) {
  const { outputFiles } = buildSync({ entryPoints: [`${root}/tools/output/report/src/${name}.ts`], bundle: true, format: "esm", write: false });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString("base64")}`);
}
const { fall_of } = await module("fall");
const { pace_of } = await module("pace");

const g = 9.81e-3; // mm/ms2
const loss = 0.03, height = 400, left = -0.9, speed = 2.2; // share each way, mm, mm at contact loss, mm/ms
const touch = Math.sqrt(2 * g * height * (1 - loss));
const rise = left + ((speed * speed) / (2 * g)) * (1 - loss);

function run() {
  const reading = (name, value) => ({ name, value });
  return {
    readings: [reading("rebound_height", rise), reading("rebound_by_height", (100 * rise) / height), reading("impact_speed", touch), reading("rebound_speed", speed)],
    curves: { time: [0, 4, 8], compression: [0, 7, -left], timeOfLoss: 8 },
  };
}

test("a later hit is drawn from its own first touch, though its record is counted from the fresh stack", () => {
  const fresh = run(), later = run(), set = 1.5;
  later.curves.compression = fresh.curves.compression.map((each) => each + set);
  const [a, b] = [fall_of(fresh), fall_of(later)];
  for (const share of [-1, -0.5, 0, 0.3, 0.9]) assert.ok(Math.abs(a.level(share * a.loss) - b.level(share * b.loss)) < 1e-9);
  assert.ok(Math.abs(b.level(0)) < 1e-9);
  assert.ok(Math.abs(b.level(b.top) - rise) < 1e-6);
});

/** Height after `until` ms of motion under gravity and friction; friction is against the motion. */
function integrated(z, v, until) {
  const n = 20_000, dt = until / n;
  for (let i = 0; i < n; ++i) {
    const a = v > 0 ? -g / (1 - loss) : -g * (1 - loss); // friction that takes the share `loss` of the energy on the way
    z += v * dt + 0.5 * a * dt * dt;
    v += a * dt;
  }
  return z;
}

test("fall and flight are those of a weight on a rubbing guide", () => {
  const fall = fall_of(run());
  const whole = Math.sqrt((2 * height) / (g * (1 - loss)));
  assert.ok(Math.abs(fall.start + whole) < 1e-6 * whole);
  for (const share of [0, 0.3, 0.7, 0.999]) assert.ok(Math.abs(fall.level(fall.start + share * whole) - integrated(height, 0, share * whole)) < 0.02);
  const up = fall.top - fall.loss;
  for (const share of [0.001, 0.4, 0.8, 1]) assert.ok(Math.abs(fall.level(fall.loss + share * up) - integrated(left, speed, share * up)) < 0.02);
  assert.ok(Math.abs(fall.level(fall.top) - rise) < 1e-6);
  assert.equal(fall.level(4), -7);
  assert.ok(fall.level(fall.top + 10 * up) >= left); // it does not fall through the stack
});

test("without a rebound, or without a fall, there is no flight to draw", () => {
  assert.equal(fall_of({ ...run(), readings: [] }), null);
  assert.equal(fall_of({ ...run(), curves: { ...run().curves, timeOfLoss: 0 } }), null);
});

test("the pace goes through all moments in order, the contact slowest", () => {
  const fall = fall_of(run()), pace = pace_of([fall], 8);
  assert.equal(pace.first, fall.start);
  assert.ok(Math.abs(pace.last - fall.top) < 1e-9);
  for (const share of [0, 0.1, 0.35, 0.6, 0.9, 1]) assert.ok(Math.abs(pace.share(pace.time(share)) - share) < 1e-9);
  assert.match(pace.words(4), /^\d00 times slower than real$/);
  assert.ok(pace.share(8) - pace.share(0) > 0.4);
  assert.match(pace_of([], 3_600_000).words(0), /^500 times faster than real$/);
});
