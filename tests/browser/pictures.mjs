// SPDX-License-Identifier: Apache-2.0
// Look at the page: node tests/browser/pictures.mjs FOLDER [report.html ...] writes screenshots, narrow and wide, light,
// dark and printed, of the given reports or of the made-up ones, and prints how soon each can be used (promised: within a
// second on a quiet machine).
import { mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import * as fixture from "./fixture.mjs";
import { launch, open, write_page } from "./browser.mjs";

const [to, ...files] = process.argv.slice(2);
mkdirSync(to, { recursive: true });
const kinds = ["single_run", "comparison", "series", "trial", "lesson"];
const pages = files.length > 0 ? files.map((file, i) => [`${i}-${basename(file, ".html")}`, file]) : kinds.map((kind) => [kind, write_page(kind, fixture[kind]())]);
const browser = await launch();
for (const [name, path] of pages)
  for (const width of [1280, 375])
    for (const colorScheme of ["light", "dark"]) {
      const { page, context, watched } = await open(browser, path, { width, colorScheme });
      const show = page.getByRole("button", { name: "Show the answer" });
      if (await show.isVisible()) await show.click();
      await page.waitForTimeout(300);
      await page.screenshot({ path: join(to, `${name}-${width}-${colorScheme}.png`), fullPage: true });
      if (width === 1280 && colorScheme === "light") await page.pdf({ path: join(to, `${name}.pdf`), format: "A4", printBackground: true });
      console.log(`${name}, ${width} px, ${colorScheme}: interactive after ${await page.locator("main").getAttribute("data-ready")} ms`);
      if (watched.errors.length > 0) console.log(name, width, colorScheme, watched.errors);
      await context.close();
    }
await browser.close();
