// SPDX-License-Identifier: Apache-2.0
// Bundle the page's program and style into dist/: report.js and report.css, minified, for every current browser.
// `node build.mjs` writes them; `node build.mjs --check` only compares and fails when dist/ is out of date.
import { build } from "esbuild";
import { readFileSync, writeFileSync, mkdirSync, existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const result = await build({
  absWorkingDir: here,
  entryPoints: { report: "src/main.ts", style: "src/report.css" },
  outdir: "dist",
  bundle: true,
  minify: true,
  charset: "ascii",
  format: "iife",
  target: ["chrome109", "firefox115", "safari16.4"],
  legalComments: "none",
  write: false,
});
const names = { "report.js": "report.js", "style.css": "report.css" };
const notice =
  "/* solemech report page, Apache-2.0. Bundles Observable Plot and D3, (c) Observable, Inc. and Mike Bostock, ISC licence. */\n";
let stale = false;
mkdirSync(join(here, "dist"), { recursive: true });
for (const file of result.outputFiles) {
  const name = names[file.path.split("/").pop()];
  // An inlined script must not contain what ends a script element or starts a comment in one.
  const text = notice + file.text.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");
  const path = join(here, "dist", name);
  const old = existsSync(path) ? readFileSync(path, "utf8") : null;
  if (process.argv.includes("--check")) {
    if (old !== text) {
      console.error(`tools/output/report/dist/${name} is not what its sources give: run npm run build in tools/output/report`);
      stale = true;
    }
  } else if (old !== text) {
    writeFileSync(path, text);
  }
  console.log(`${name}: ${(text.length / 1024).toFixed(0)} kB`);
}
process.exit(stale ? 1 : 0);
