// SPDX-License-Identifier: Apache-2.0
// The book in the browser: order by each column, filter, keyboard, accessibility rules. Invented sheets.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { folder, launch, open, packages } from "./browser.mjs";

const pairs = [["pair 9", 3], ["pair 10", null], ["pair 2", 40], ["pair 11", 5]];
const bench = join(folder, "bench"), book = join(bench, "book.html");
let browser;

before(async () => {
  assert.ok(process.env.SOLEMECH_PROGRAM, "say which program to run: tests/browser/run book PROGRAM");
  mkdirSync(bench);
  for (const [pair, days] of pairs) {
    const name = pair.replace(" ", "-");
    writeFileSync(join(bench, `${name}.toml`), `format = 1\npair = "${pair}"\n[[reading]]\nkind = "rebound"\nvalue = "${days ?? 1}0 mm"\n`);
    if (days === null) continue;
    const run = join(bench, "results", name, "1"), manifest = join(run, "manifest.json");
    mkdirSync(run, { recursive: true });
    writeFileSync(manifest, JSON.stringify({
      program: "solemech",
      files: Object.fromEntries(["summary.txt", "report.html", "data/results.h5", "data/resolved.txt"].map((file) => [file, ""])),
    }));
    const then = Date.now() / 1000 - days * 86400 - 60;
    utimesSync(manifest, then, then);
  }
  execFileSync(process.env.SOLEMECH_PROGRAM, ["book", bench], { stdio: ["ignore", "ignore", "pipe"] });
  browser = await launch();
});
after(async () => browser?.close());

const order = (page) => page.locator("tbody tr:not([hidden]) td:first-child").allTextContents();

test("no error, no request, nothing wider than the screen, accessibility rules in light and dark", async () => {
  for (const width of [1280, 375]) {
    // The policy of the page keeps foreign scripts out, also that of the rules.
    const { page, context, watched } = await open(browser, book, { width, bypassCSP: true });
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
    assert.equal(watched.requests.length, 1, watched.requests.join(", "));
    await page.evaluate(readFileSync(packages.resolve("axe-core/axe.min.js"), "utf8"));
    for (const colorScheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme });
      const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
      assert.deepEqual(violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.target).join(" ")}`), [], colorScheme);
    }
    assert.deepEqual(watched.errors, []);
    await context.close();
  }
});

test("each column sorts both ways, numbers as numbers, empty cells last", async () => {
  const { page, context, watched } = await open(browser, book);
  await page.getByRole("button", { name: "pair" }).click();
  assert.deepEqual(await order(page), ["pair 2", "pair 9", "pair 10", "pair 11"]);
  assert.equal(await page.locator("th").first().getAttribute("aria-sort"), "ascending");
  await page.getByRole("button", { name: "pair" }).click();
  assert.deepEqual(await order(page), ["pair 11", "pair 10", "pair 9", "pair 2"]);
  await page.getByRole("button", { name: "result" }).focus();
  await page.keyboard.press("Enter");
  assert.deepEqual(await order(page), ["pair 9", "pair 11", "pair 2", "pair 10"]);
  await page.keyboard.press("Enter");
  assert.deepEqual(await order(page), ["pair 2", "pair 11", "pair 9", "pair 10"]);
  assert.deepEqual(watched.errors, []);
  await context.close();
});

test("the filter keeps rows with all words and says how many", async () => {
  const { page, context } = await open(browser, book);
  await page.getByLabel("Show only rows with").fill("pair 400");
  assert.deepEqual(await order(page), ["pair 2"]);
  assert.equal(await page.locator("output").textContent(), "1 of 4 sheets");
  await page.getByLabel("Show only rows with").fill("");
  assert.equal((await order(page)).length, 4);
  await context.close();
});
