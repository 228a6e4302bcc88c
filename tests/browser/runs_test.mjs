// SPDX-License-Identifier: Apache-2.0
// Reports of real runs in the browser: what the charts, the moving section and the tables show is what results.h5 holds.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { after, before, test } from "node:test";
import { inflateSync } from "node:zlib";
import { fileURLToPath } from "node:url";
import { folder, launch, open, packages } from "./browser.mjs";
import { axis, drawn_chart, points } from "./measure.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const labels = ["heel-drop", "forefoot-drop"];
let browser;
const runs = new Map();

before(async () => {
  assert.ok(process.env.SOLEMECH_PROGRAM, "say which program to run: tests/browser/run runs PROGRAM");
  execFileSync(process.env.SOLEMECH_PROGRAM, ["run", ...labels], { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
  for (const label of labels) {
    const place = join(folder, "results", label, "1"), path = join(place, "report.html");
    const kept = JSON.parse(execFileSync("/usr/bin/python3", [join(here, "results_h5.py"), join(place, "data/results.h5")], { maxBuffer: 1 << 28 }));
    const html = readFileSync(path, "utf8");
    const report = JSON.parse(html.match(/<script type="application\/json" id="report-data">(.*?)<\/script>/s)[1]);
    runs.set(label, { path, kept, report, html });
  }
  browser = await launch();
});
after(async () => browser?.close());

const near = (a, b, share, whole, what) => assert.ok(Math.abs(a - b) <= share * whole, `${what}: ${a} instead of ${b}`);
const largest = (values) => Math.max(...values.map(Math.abs));

/** Positions and fields as the page decodes them, by another inflate. */
function decoded(coded, n) {
  const bytes = inflateSync(Buffer.from(coded, "base64"));
  const values = new Int16Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  const stride = values.length / n;
  for (let i = stride; i < values.length; ++i) values[i] += values[i - stride];
  return values;
}

for (const label of labels)
  for (const width of [1280, 375])
    test(`${label} at ${width} px: one file, no error, accessible`, async () => {
      const { path, html } = runs.get(label);
      assert.ok(statSync(path).size <= 1.5e6, "half of the 3 MB that the bench pair may take");
      assert.match(html, /Content-Security-Policy" content="default-src 'none'/);
      const { page, context, watched } = await open(browser, path, { width });
      assert.equal(watched.requests.filter((request) => !request.startsWith("data:")).length, 1, watched.requests.join(", "));
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
      // The page's own policy forbids a script from here to be added as an element; it may be evaluated from outside.
      await page.evaluate(readFileSync(packages.resolve("axe-core/axe.min.js"), "utf8"));
      const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
      assert.deepEqual(violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.target).join(" ")}`), []);
      assert.deepEqual(watched.errors, []);
      await context.close();
    });

for (const label of labels)
  test(`${label}: force, compression, readings and energy on the page are those of results.h5`, async () => {
    const { path, kept, report } = runs.get(label), { page, context } = await open(browser, path);
    const run = report.runs[0], { curves } = run;
    assert.equal(curves.time.length, kept.time.length);
    kept.time.forEach((time, i) => {
      near(curves.time[i], 1000 * time, 1e-4, 1000 * kept.time.at(-1), "time");
      near(curves.force[i], kept.force[i], 1e-4, largest(kept.force), "force");
      near(curves.compression[i], 1000 * kept.way[i], 1e-4, 1000 * largest(kept.way), "compression");
    });
    // The drawing itself, read back by its own axes.
    const drawn = await drawn_chart(page, `force over time, ${run.title}`);
    const [time, force] = [axis(drawn.x), axis(drawn.y)], line = points(drawn.paths.at(-1));
    assert.equal(line.length, kept.time.length);
    line.forEach(([x, y], i) => {
      near(time(x), 1000 * kept.time[i], 0.01, 1000 * kept.time.at(-1), "drawn time");
      near(force(y), kept.force[i] / 1000, 0.01, largest(kept.force) / 1000, "drawn force");
    });
    const loop = await drawn_chart(page, "force against compression"), way = axis(loop.x);
    const deepest = Math.max(...loop.paths.flatMap((each) => points(each).map(([x]) => way(x))));
    near(deepest, 1000 * Math.max(...kept.way), 0.01, 1000 * Math.max(...kept.way), "deepest point of the drawn loop");
    // Readings and shares as people read them.
    const text = await page.locator("main").innerText();
    assert.ok(text.includes(`${Math.round(1000 * kept.readings.rebound_height)} mm`), "rebound");
    assert.ok(text.includes(`${(kept.readings.peak_force / 1000).toFixed(2)} kN`), "peak force");
    near(run.energy.shares.reduce((sum, share) => sum + share.energy, 0), run.energy.input * run.energy.accounted, 1e-3, run.energy.input, "sum of the shares");
    const whole = run.energy.time.map((_, i) => run.energy.rows.reduce((sum, row) => sum + row.energy[i], 0));
    near(Math.max(...whole) - Math.min(...whole), 0, 0.05, run.energy.input, "whole of the energy over time");
    await context.close();
  });

for (const label of labels)
  test(`${label}: the moving section goes through the shapes of results.h5`, async () => {
    const { path, kept, report } = runs.get(label), { frames } = report.runs[0];
    const positions = decoded(frames.positions, frames.n);
    const { page, context } = await open(browser, path);
    for (const f of [0, Math.floor(frames.n / 2), frames.n - 1]) {
      const s = kept.shape_time.findIndex((time) => Math.abs(1000 * time - frames.time[f]) < 1e-3 * frames.time.at(-1) + 1e-9);
      assert.ok(s >= 0, `no shape at ${frames.time[f]} ms in results.h5`);
      near(frames.tup[f], 1000 * kept.tup[s], 1e-3, 1000 * largest(kept.tup), "striker");
      // Every drawn node is a node of results.h5 (which may hold more, and in another order).
      const there = kept.position[s].map(([x, y]) => [1000 * x, 1000 * y]);
      for (let node = 0; node < frames.nNodes; node += 7) {
        const at = f * frames.nNodes * 2 + 2 * node;
        const [x, y] = [frames.quantum * positions[at], frames.quantum * positions[at + 1]];
        const nearest = Math.min(...there.map(([a, b]) => Math.hypot(a - x, b - y)));
        assert.ok(nearest < 2 * frames.quantum, `node ${node} of frame ${f} is ${nearest} mm off`);
      }
    }
    const stretch = frames.fields.find((field) => field.name === "stretch"), values = decoded(stretch.values, frames.n);
    const least = stretch.offset + stretch.quantum * values.reduce((a, b) => Math.min(a, b));
    const kept_least = Math.min(...kept.stretch.flat(2));
    assert.ok(least >= kept_least - 2 * stretch.quantum && least < kept_least + 0.15, `least stretch ${least}, in results.h5 ${kept_least}`);
    // And the canvas moves with the player.
    const stage = page.locator(".drop .stage canvas"), picture = () => stage.evaluate((canvas) => canvas.toDataURL());
    const seen = new Set();
    for (const share of ["0", "250", "500", "1000"]) {
      await page.getByRole("slider", { name: "Moment shown", exact: true }).fill(share);
      await page.waitForTimeout(80);
      seen.add(await picture());
    }
    assert.equal(seen.size, 4);
    await context.close();
  });
