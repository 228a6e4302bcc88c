// SPDX-License-Identifier: Apache-2.0
// The page with made-up reports: every block, keyboard and pointer, saved files, colours, print, markup in titles,
// accessibility rules (axe-core, which checks the rules of WCAG 2).
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import * as fixture from "./fixture.mjs";
import { launch, open, packages, write_page } from "./browser.mjs";
import { axis, drawn_chart, png_size, points, rows_of_csv } from "./measure.mjs";

const kinds = ["single_run", "comparison", "series", "trial", "lesson"];
let browser;
before(async () => (browser = await launch()));
after(async () => browser.close());

async function reveal(page) {
  const show = page.getByRole("button", { name: "Show the answer" });
  if (await show.isVisible()) await show.click();
}

async function saved(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download", { timeout: 30_000 }), page.getByRole("button", { name }).first().click()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

const settle = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

for (const kind of kinds)
  for (const width of [1280, 375])
    test(`${kind} at ${width} px: no error, no request, nothing wider than the screen, accessibility rules`, async () => {
      const { page, context, watched } = await open(browser, write_page(kind, fixture[kind]()), { width });
      await reveal(page);
      await settle(page);
      assert.equal(watched.requests.length, 1, watched.requests.join(", "));
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
      // The rules take seconds: each kind of page once, the richest one narrow and dark too.
      if (width === 1280 || kind === "comparison") await page.evaluate(readFileSync(packages.resolve("axe-core/axe.min.js"), "utf8"));
      for (const colorScheme of kind === "comparison" ? ["light", "dark"] : width === 1280 ? ["light"] : []) {
        await page.emulateMedia({ colorScheme });
        const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
        assert.deepEqual(violations.map((each) => `${each.id}: ${each.nodes.map((node) => node.target).join(" ")}`), [], `${kind} ${colorScheme}`);
      }
      assert.deepEqual(watched.errors, []);
      await context.close();
    });

test("charts carry the data: curve, axes, table and CSV file agree", async () => {
  const report = fixture.single_run(), { curves, title } = report.runs[0];
  const { page, context } = await open(browser, write_page("data", report));
  await settle(page);
  const name = `force over time, ${title}`, drawn = await drawn_chart(page, name);
  const [time, force] = [axis(drawn.x), axis(drawn.y)];
  const line = points(drawn.paths.at(-1));
  assert.equal(line.length, curves.time.length);
  line.forEach(([x, y], i) => {
    assert.ok(Math.abs(time(x) - curves.time[i]) < 0.02 * curves.time.at(-1));
    assert.ok(Math.abs(force(y) - curves.force[i] / 1000) < 0.02);
  });
  await page.getByText(`Numbers: ${name}`, { exact: true }).click();
  await page.locator("details.data[open] tbody tr").nth(50).waitFor({ state: "attached" });
  const { bytes } = await saved(page, `Save as CSV: ${name}`), rows = rows_of_csv(bytes.toString());
  assert.deepEqual(rows[0], ["time, ms", "force, N", "compression, mm"]);
  assert.deepEqual(rows.slice(1).map((row) => Number(row[1])), curves.force);
  await context.close();
});

test("one cursor: pointer and keys move charts, section and player together", async () => {
  const report = fixture.single_run(), { curves, title } = report.runs[0];
  const { page, context } = await open(browser, write_page("cursor", report));
  await settle(page);
  const slider = page.getByRole("slider", { name: `force over time, ${title}: moment shown` });
  await slider.scrollIntoViewIfNeeded();
  const now = async () => Number(await slider.getAttribute("aria-valuenow"));
  const stage = page.locator(".block canvas").first(), picture = () => stage.evaluate((canvas) => canvas.toDataURL());
  const start = await now(), at_peak = await picture();
  assert.ok(Math.abs(start - curves.timeOfPeak) < 0.01);
  await slider.focus();
  await page.keyboard.press("ArrowRight");
  await settle(page);
  const step = (await now()) - start;
  assert.ok(step > 0);
  await page.keyboard.press("Home");
  await settle(page);
  assert.equal(await now(), 0);
  assert.notEqual(await picture(), at_peak);
  const box = await slider.boundingBox();
  await page.mouse.move(box.x + 0.7 * box.width, box.y + 0.5 * box.height);
  await settle(page);
  const pointed = await now(), drawn = await drawn_chart(page, `force over time, ${title}`);
  assert.ok(pointed > 0.4 * curves.time.at(-1) && pointed < curves.time.at(-1));
  assert.ok(Math.abs(axis(drawn.x)(drawn.line) - pointed) < 0.15);
  for (const other of await page.getByRole("slider").all()) {
    const value = await other.getAttribute("aria-valuenow");
    if (value !== null) assert.ok(Math.abs(Number(value) - pointed) < 0.01);
  }
  const loop = await drawn_chart(page, "force against compression");
  const i = curves.time.findIndex((time) => time > pointed);
  assert.ok(Math.abs(axis(loop.x)(loop.dots[0][0]) - curves.compression[i]) < 0.2);
  await page.getByRole("button", { name: "Most squeezed" }).click();
  await settle(page);
  assert.equal(await picture(), at_peak);
  await context.close();
});

test("the stack moves: play, pause, step, scrub, quantities; fewer pictures where less motion is wanted", async () => {
  for (const reducedMotion of ["no-preference", "reduce"]) {
    const { page, context } = await open(browser, write_page("motion", fixture.single_run()), { reducedMotion });
    const scrub = page.getByRole("slider", { name: "Moment shown", exact: true }), value = async () => Number(await scrub.inputValue());
    const stage = page.locator(".drop .stage canvas"), picture = () => stage.evaluate((canvas) => canvas.toDataURL());
    await scrub.fill("0");
    // The pictures come a sixtieth of a second apart by a clock of the test, however long this machine takes to draw them.
    await page.evaluate(() => {
      const waiting = [], real = { frame: window.requestAnimationFrame, now: performance.now };
      let now = performance.now();
      window.requestAnimationFrame = (draw) => waiting.push(draw);
      performance.now = () => now;
      window.next_picture = () => {
        now += 1000 / 60;
        for (const draw of waiting.splice(0)) draw(now);
      };
      window.real_clock = () => {
        window.requestAnimationFrame = real.frame;
        performance.now = real.now;
        for (const draw of waiting.splice(0)) real.frame.call(window, draw);
      };
    });
    await page.getByRole("button", { name: "Play", exact: true }).click();
    // Every picture shown until the stack has moved by a sixth of the way.
    const seen = await page.evaluate(() => {
      const input = document.querySelector(".player input"), seen = [0];
      for (let i = 0; i < 10_000 && seen.at(-1) <= 160; ++i) {
        window.next_picture();
        if (Number(input.value) !== seen.at(-1)) seen.push(Number(input.value));
      }
      return seen;
    });
    await page.getByRole("button", { name: "Pause", exact: true }).click();
    await page.evaluate(() => window.real_clock());
    await settle(page);
    const reached = await value();
    assert.ok(seen.at(-1) > 160, `pictures at ${seen}`);
    const steps = seen.slice(1).map((each, i) => each - seen[i]);
    assert.ok(steps.every((step) => step > 0), `pictures at ${seen}`);
    if (reducedMotion === "reduce") assert.ok(steps.every((step) => step >= 1000 / 12 - 1), `pictures at ${seen}`);
    else assert.ok(Math.min(...steps) < 1000 / 12 - 1, `pictures at ${seen}`);
    await page.waitForTimeout(100);
    assert.equal(await value(), reached);
    await page.getByRole("button", { name: "Step forward" }).click();
    await settle(page);
    assert.ok((await value()) > reached);
    await page.getByRole("button", { name: "Most squeezed" }).click();
    await settle(page);
    const pictures = new Set();
    for (const field of ["stretch", "energy_density", "dissipated_density", "pressure", "parts"]) {
      await page.locator(`input[value="${field}"]`).check();
      await page.waitForTimeout(120);
      pictures.add(await picture());
      assert.equal(await page.locator(".field-key svg").count(), field === "parts" ? 0 : 1);
    }
    assert.equal(pictures.size, 5);
    await context.close();
  }
});

test("pictures have their exact size, say model or measured; clip and sentence are taken along", async () => {
  for (const kind of ["comparison", "trial", "series"]) {
    const { page, context, watched } = await open(browser, write_page(`saved-${kind}`, fixture[kind]()), { permissions: ["clipboard-read", "clipboard-write"] });
    for (const [size, width, height] of [["16:9", 1920, 1080], ["9:16", 1080, 1920]])
      for (const one of (await page.getByRole("button", { name: `Save picture ${size}` }).all()).slice(0, kind === "comparison" ? 99 : 2)) {
        const [download] = await Promise.all([page.waitForEvent("download", { timeout: 30_000 }), one.click()]);
        assert.match(download.suggestedFilename(), new RegExp(`${width}x${height}\\.png$`));
        assert.deepEqual(png_size(readFileSync(await download.path())), { width, height });
      }
    if (kind === "comparison") {
      const clip = await saved(page, "Save clip 16:9");
      assert.match(clip.name, /1280x720\.webm$/);
      assert.equal(clip.bytes.readUInt32BE(0), 0x1a45dfa3); // EBML, the first bytes of every WebM file
      assert.ok(clip.bytes.length > 20_000);
      await page.getByRole("button", { name: "Copy sentence: In short" }).click();
      await page.getByText("Sentence copied.").waitFor();
      assert.equal(await page.evaluate(() => navigator.clipboard.readText()), `${fixture.comparison().sentence} (model)`);
    }
    assert.deepEqual(watched.errors, []);
    await context.close();
  }
});

test("a browser without a recorder says what to do instead", async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.addInitScript(() => delete window.MediaRecorder);
  await page.goto(`file://${write_page("no-recorder", fixture.single_run())}`);
  await page.waitForSelector("main[data-ready]");
  await page.getByRole("button", { name: "Save clip 16:9" }).click();
  await page.getByText("This browser cannot record a clip. Save pictures at a few moments instead.").waitFor();
  await context.close();
});

test("titles with markup stay text everywhere, also in charts and drawings", async () => {
  const evil = `</script><img src=x onerror="window.hit=1"><b>bold</b> & "quoted" <svg onload="window.hit=1">`;
  const change = (value) =>
    typeof value === "string" && value.length < 200 && !["run", "comparison", "model", "part", "guide", "left", "returned", "weight", "stored", "lost", "stretch", "energy_density", "dissipated_density", "pressure"].includes(value) ? `${evil} ${value}`
      : Array.isArray(value) ? value.map(change)
      : value && typeof value === "object" ? Object.fromEntries(Object.entries(value).map(([key, each]) => [key, ["kind", "origin", "name", "reading"].includes(key) && key !== "name" ? each : change(each)]))
      : value;
  for (const kind of ["comparison", "trial"]) {
    const report = change(fixture[kind]());
    for (const run of report.runs) {
      run.frames = fixture.run("heel").frames;
      run.warnings = [{ reading: "", text: evil }];
    }
    const { page, context, watched } = await open(browser, write_page(`evil-${kind}`, report));
    await settle(page);
    for (const details of await page.locator("details > summary").all()) await details.click();
    assert.equal(await page.evaluate(() => window.hit), undefined);
    assert.equal(await page.locator("main img, main b, main script, [onload], [onerror]").count(), 0);
    assert.ok((await page.locator("main").textContent()).includes(evil));
    assert.ok((await page.locator("main svg text").allTextContents()).some((text) => text.includes("<b>bold</b>")));
    assert.deepEqual(watched.errors, []);
    assert.equal(watched.requests.length, 1);
    await context.close();
  }
});

test("dark where the system asks for it; print is light, opens what explains and hides what only a screen can do", async () => {
  const { page, context, watched } = await open(browser, write_page("dark", fixture.comparison()), { colorScheme: "dark" });
  const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const stage = page.locator("canvas").first(), picture = () => stage.evaluate((canvas) => canvas.toDataURL());
  assert.equal(await paper(), "rgb(28, 32, 36)");
  const dark = await picture();
  await page.emulateMedia({ colorScheme: "light" });
  await settle(page);
  assert.equal(await paper(), "rgb(251, 248, 241)");
  assert.notEqual(await picture(), dark);
  await page.emulateMedia({ colorScheme: "dark" });
  await settle(page);
  // The browser prints by itself in a test; what the buttons ask for before it is asked for here.
  await page.evaluate(() => (window.print = () => window.dispatchEvent(new Event("beforeprint"))));
  await page.emulateMedia({ media: "print" });
  for (const [name, details] of [["Print one sheet", false], ["Print with all details", true]]) {
    await page.evaluate((wanted) => [...document.querySelectorAll("button")].find((each) => each.textContent === wanted).click(), name);
    assert.equal(await paper(), "rgb(255, 255, 255)");
    assert.equal(await page.locator(".take:visible, .player:visible").count(), 0);
    assert.equal((await page.locator("details.how[open]").count()) > 0, details);
    assert.equal(await page.locator("#block-the-readings-side-by-side").isVisible(), details);
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  }
  assert.equal(await page.locator("details.how[open]").count(), 0);
  assert.deepEqual(watched.errors, []);
  await context.close();
});

for (const kind of kinds)
  test(`${kind} is printed on one sheet of A4, a lesson on its worksheet and one more`, async () => {
    const { page, context } = await open(browser, write_page(`sheet-${kind}`, fixture[kind]()));
    const pdf = (await page.pdf({ format: "A4", printBackground: true, preferCSSPageSize: true })).toString("latin1");
    assert.equal(Number(pdf.match(/\/Count (\d+)/)[1]), kind === "lesson" ? 2 : 1);
    await context.close();
  });

test("the sheet is as large as its content lets it be, however high the window", async () => {
  const sizes = [];
  for (const height of [600, 2400]) {
    const { page, context } = await open(browser, write_page("zoom", fixture.single_run()), { height });
    await page.emulateMedia({ media: "print" });
    sizes.push(await page.evaluate(() => (window.dispatchEvent(new Event("beforeprint")), Number(document.querySelector("main").style.zoom))));
    await context.close();
  }
  assert.equal(sizes[1], sizes[0]);
});

test("numbers of several runs are shown whole, each with its own unit", async () => {
  const report = fixture.comparison();
  report.headline[0] = { name: "life in steps", value: "900 thousand / 1.2 million", note: "", values: ["900 thousand", "1.2 million"] };
  const { page, context } = await open(browser, write_page("units", report));
  assert.deepEqual(await page.locator("table.numbers tr").filter({ hasText: "life in steps" }).locator(".value").allTextContents(), ["900 thousand", "1.2 million"]);
  await context.close();
});

test("on a phone blocks and long tables are folded until they are asked for; nothing of a table is cut", async () => {
  const { page, context } = await open(browser, write_page("phone", fixture.comparison()), { width: 390 });
  const block = page.locator("#block-what-differs"), table = block.getByRole("region", { name: "What differs in the stacks" });
  assert.equal(await table.isVisible(), false);
  await page.getByText("On this page").click();
  await page.getByRole("link", { name: "What differs" }).click();
  await table.waitFor({ state: "visible" });
  for (const region of await page.locator(".wide:visible").all())
    assert.ok(await region.evaluate((each) => each.scrollWidth <= each.clientWidth + 1), await region.getAttribute("aria-label"));
  await context.close();
});

test("the rods stand beside a rule in every moment, and the weight is where the fall says", async () => {
  const { page, context } = await open(browser, write_page("rods", fixture.comparison()));
  const rods = page.locator(".rods canvas");
  assert.match(await rods.getAttribute("aria-label"), /falls 400 mm, rebounds 244 mm ± 2; .*falls 400 mm, rebounds 308 mm ± 2/);
  const scrub = page.getByRole("slider", { name: "Moment shown", exact: true }), seen = new Set();
  for (const share of ["0", "120", "500", "900", "1000"]) {
    await scrub.fill(share);
    await settle(page);
    seen.add(await rods.evaluate((canvas) => canvas.toDataURL()));
  }
  assert.equal(seen.size, 5);
  await scrub.fill("0");
  await settle(page);
  assert.match(await scrub.getAttribute("aria-valuetext"), /^29\d ms before first touch$/);
  assert.match(await page.locator(".drop .reading-line").first().innerText(), /400 mm above the stack, at rest/);
  await context.close();
});

test("a lesson hides its answer until a guess is made; its print has a blank and the answer on a later page", async () => {
  const report = fixture.lesson();
  const { page, context } = await open(browser, write_page("guess", report));
  const answer = page.getByText(report.sentence);
  assert.equal(await answer.isVisible(), false);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.getByText("My guess, and why:").isVisible(), true);
  assert.equal(await page.locator(".answer-page").evaluate((each) => getComputedStyle(each).breakBefore), "page");
  await page.emulateMedia({ media: "screen" });
  await page.getByRole("button", { name: report.lesson.choices[0] }).click();
  await page.getByText("Your guess was not right.").waitFor();
  assert.equal(await answer.isVisible(), true);
  await context.close();
  const made = await open(browser, write_page("guessed", { ...report, lesson: { ...report.lesson, guess: 1 } }));
  await made.page.getByText("Your guess was right.").waitFor();
  await made.context.close();
});

test("shares add up on the page, and 'cannot tell' is said where the band spans zero", async () => {
  const { page, context } = await open(browser, write_page("shares", fixture.comparison()));
  const rows = await page.getByRole("region", { name: "Shares in the difference of rebound", includeHidden: true }).locator("tbody tr").allTextContents();
  const numbers = rows.map((row) => Number(row.match(/[+−]?\d+\.\d/)[0].replace("−", "-")));
  assert.ok(Math.abs(numbers.slice(0, -1).reduce((sum, each) => sum + each, 0) - numbers.at(-1)) < 1e-9);
  assert.match(rows[3], /cannot tell/);
  await context.close();
});
