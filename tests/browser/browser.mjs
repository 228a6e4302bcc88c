// SPDX-License-Identifier: Apache-2.0
// Shared by the page's tests: the bundle, Debian's browser, pages from made-up reports or from finished runs.
import { createRequire } from "node:module";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { page as make_page } from "./fixture.mjs";

export const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
export const packages = createRequire(join(root, "tools/report/package.json"));
const { chromium } = packages("playwright-core");

const dist = (name) => readFileSync(join(root, "tools/report/dist", name), "utf8");
export const folder = mkdtempSync(join(tmpdir(), "report-"));

/** Write a made-up report as a page; returns its path. */
export function write_page(name, report) {
  const path = join(folder, `${name}.html`);
  writeFileSync(path, make_page(report, { js: dist("report.js"), css: dist("report.css") }));
  return path;
}

export function launch() {
  const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
  return chromium.launch({ executablePath, args: ["--no-sandbox"] });
}

/** Milliseconds until the page can be used: the best of up to three loads, for a machine that does other work too. */
export async function loading_time(browser, path, width) {
  let best = Infinity;
  for (let i = 0; i < 3 && best > 1000; ++i) {
    const { page, context } = await open(browser, path, { width });
    best = Math.min(best, Number(await page.locator("main").getAttribute("data-ready")));
    await context.close();
  }
  return best;
}

/** Open a page file; `watched.errors` and `watched.requests` fill as it lives. */
export async function open(browser, path, { width = 1280, height = 900, ...options } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, acceptDownloads: true, ...options });
  const page = await context.newPage();
  const watched = { errors: [], requests: [] };
  page.on("console", (message) => message.type() === "error" && watched.errors.push(message.text()));
  page.on("pageerror", (error) => watched.errors.push(String(error)));
  page.on("request", (request) => watched.requests.push(request.url()));
  await page.goto(pathToFileURL(path).href);
  await page.waitForSelector("main[data-ready]", { timeout: 20_000 });
  return { page, context, watched };
}
