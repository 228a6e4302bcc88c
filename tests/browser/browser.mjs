// SPDX-License-Identifier: Apache-2.0
// Shared by the page's tests: the bundle, Debian's browser, pages from made-up reports or from finished runs.
import { createRequire } from "node:module";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { page as make_page } from "./fixture.mjs";

export const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
export const packages = createRequire(join(root, "tools/output/report/package.json"));
const { chromium } = packages("playwright-core");

const dist = (name) => readFileSync(join(root, "tools/output/report/dist", name), "utf8");
export const folder = mkdtempSync(join(tmpdir(), "report-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));

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
