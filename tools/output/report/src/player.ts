// SPDX-License-Identifier: Apache-2.0
// The stack in motion: play, pause, step, scrub, a quantity to colour by, and a clip to save.
import { legend } from "@observablehq/plot";
import { block, frame_of, type Page } from "./block";
import { record_clip } from "./clip";
import type { Field } from "./data";
import { announce, button, el, file_name } from "./dom";
import { tidy } from "./format";
import type { Motion } from "./frames";
import { run_heading, type Shown, told_by } from "./moment";
import { Theme } from "./looks";
import { light_theme, paint_frame, paint_text, split } from "./picture";
import { type Box, draw_field_bar, draw_stage, font_family, shades } from "./stage";
import { common_extent, moment_text, type Shade, View } from "./view";

const play_seconds = 6;
const calm_steps = 12; // pictures a pass for readers who asked for less motion

type Moving = Shown & { motion: Motion };

export function motion_block(page: Page, shown: Shown[]): HTMLElement | null {
  const moving = shown.filter((each): each is Moving => each.motion !== null);
  if (moving.length === 0) return null;
  const { clock } = page;
  const extent = common_extent(moving.map(({ motion }) => motion));
  const views = moving.map(({ run, motion }) => new View(page, run, motion, extent, `${run.title} in motion: moment shown`));
  const fields = moving[0].motion.frames.fields;

  const key = el("div", { class: "field-key" });
  let shades_now: Shade[] = [];
  const show_key = () => {
    const shade = shades_now[0];
    key.replaceChildren();
    if (!shade) return;
    const colours = shades(new Theme(key), shade.field);
    const bar = legend({
      color: { type: "linear", domain: [shade.low, shade.high], range: [colours[0], colours.at(-1) ?? ""], interpolate: "lab" },
      width: 320, height: 56, ticks: 4, marginLeft: 10, marginRight: 24, marginTop: 20, marginBottom: 20,
      style: { fontFamily: font_family, fontSize: "13px" },
      label: shade.field.unit ? `${shade.field.label}, ${shade.field.unit}` : shade.field.label,
    });
    bar.setAttribute("role", "img");
    bar.setAttribute("aria-label", `${shade.field.label}: from ${tidy(shade.low)} to ${tidy(shade.high)} ${shade.field.unit}`);
    key.append(bar);
  };
  const choose = async (field: Field | null) => {
    const next: Shade[] = [];
    if (field) {
      const same = moving.map(({ motion }) => motion.frames.fields.find((each) => each.name === field.name));
      const low = Math.min(...same.map((each) => each?.low ?? Infinity));
      const high = Math.max(...same.map((each) => each?.high ?? -Infinity));
      for (const [i, each] of same.entries())
        if (each) next[i] = { field: each, values: await moving[i].motion.field(each), low, high };
    }
    shades_now = next;
    views.forEach((view, i) => {
      view.shade = next[i] ?? null;
      view.draw();
    });
    show_key();
  };
  page.redraws.push(show_key);

  const group = file_name("field", String(Math.random()).slice(2));
  const choice = el("fieldset", { class: "choice" }, el("legend", {}, "Show"));
  const offer = (label: string, field: Field | null, checked: boolean) => {
    const input = el("input", { type: "radio", name: group, checked, value: field?.name ?? "parts" });
    input.addEventListener("change", () => void choose(field));
    choice.append(el("label", {}, input, ` ${label}`));
  };
  offer("part", null, fields.length === 0);
  fields.forEach((field, i) => offer(field.label, field, i === 0));
  if (fields.length > 0) void choose(fields[0]);

  // Playing: the clock runs from where it is, slowed down so that a pass takes some seconds.
  let playing = false;
  let last = 0;
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const play = button("Play", () => (playing ? stop() : start()), { class: "play" });
  const stop = () => {
    playing = false;
    play.textContent = "Play";
  };
  const start = () => {
    playing = true;
    play.textContent = "Pause";
    if (clock.time >= clock.end - 1e-9) clock.set(0);
    last = performance.now();
    requestAnimationFrame(tick);
  };
  const tick = (now: number) => {
    if (!playing) return;
    const passed = ((now - last) / 1000 / play_seconds) * clock.end;
    if (!calm.matches || passed >= clock.end / calm_steps) {
      clock.set(clock.time + passed);
      last = now;
    }
    if (clock.time >= clock.end) stop();
    else requestAnimationFrame(tick);
  };
  const scrub = el("input", { type: "range", min: 0, max: 1000, step: 1, "aria-label": "Moment shown" });
  scrub.addEventListener("input", () => {
    stop();
    clock.set((Number(scrub.value) / 1000) * clock.end);
  });
  const now = el("span", { class: "reading-line" });
  const follow = () => {
    scrub.value = String(Math.round((1000 * clock.time) / clock.end));
    scrub.setAttribute("aria-valuetext", clock.words(clock.time));
    now.textContent = `${clock.words(clock.time)} of ${clock.words(clock.end)}`;
  };
  clock.watch(follow);
  follow();
  const slower = (play_seconds * 1000) / clock.end;
  const pace = slower >= 1 ? `${slower >= 20 ? Math.round(slower / 10) * 10 : tidy(slower)} times slower` : `${tidy(1 / slower)} times faster`;
  const step = (by: number) => {
    stop();
    clock.set(clock.time + by * clock.step);
  };
  const stages = el(
    "div",
    { class: moving.length > 1 ? "side-by-side" : "alone" },
    ...moving.map(({ run }, i) => el("div", { class: "of-run" }, run_heading(page, run), views[i].element)),
  );
  stages.addEventListener("keydown", (event) => {
    if (event.key === " ") {
      event.preventDefault();
      play.click();
    }
  });

  const paint_at = (pen: CanvasRenderingContext2D, box: Box, theme: Theme, font: number, fixed_time: number | null) => {
    const shade = shades_now[0];
    const bar_room = shade ? 4 * font : 0;
    const boxes = split({ ...box, height: box.height - bar_room }, moving.length, font);
    moving.forEach(({ run, motion }, i) => {
      const place = boxes[i];
      const time = fixed_time ?? clock.of(run);
      let y = place.y;
      if (moving.length > 1) y = paint_text(pen, run.title, place.x, y, place.width, { size: font, weight: "bold", colour: theme.colour("--ink"), most: 1 });
      y = paint_text(pen, moment_text(page.clock, run, time), place.x, y, place.width, { size: 0.85 * font, colour: theme.colour("--ink"), most: 1 }) + 4;
      draw_stage(pen, { ...place, y, height: place.height - (y - place.y) }, motion, motion.shape(time), extent, {
        theme, look: (part) => page.looks.of(page.report.runs.indexOf(run), part), density: 1.5, field: shades_now[i] ?? null,
      });
    });
    if (shade)
      draw_field_bar(
        pen, { x: box.x, y: box.y + box.height - 3.4 * font, width: Math.min(box.width, 24 * font), height: 3 * font }, theme, shade.field,
        [tidy(shade.low), tidy(shade.high)], 0.9 * font,
      );
  };

  const heading = "The stack in motion";
  const sentence = told_by(page, moving.map(({ run }) => run), (run) => run.captions.motion);
  const clip_button = (label: string, width: number, height: number): HTMLButtonElement =>
    button(
      label,
      () => {
        clip.forEach((each) => (each.disabled = true));
        announce(`Recording the clip, ${play_seconds + 1} seconds …`);
        const theme = light_theme();
        const size = { width, height, name: "" };
        const backdrop = document.createElement("canvas");
        backdrop.width = width;
        backdrop.height = height;
        const pen = backdrop.getContext("2d");
        const box = pen ? paint_frame(pen, size, theme, frame_of(page, heading, sentence)) : null;
        record_clip({
          width, height, seconds: play_seconds, name: file_name(page.report.label, heading, `${width}x${height}`),
          draw: (pen_, share) => {
            if (!box) return;
            pen_.drawImage(backdrop, 0, 0);
            paint_at(pen_, box, theme, 24, share * clock.end);
          },
        })
          .then(() => announce("Clip saved."))
          .catch((error: unknown) => announce(error instanceof Error ? error.message : String(error)))
          .finally(() => clip.forEach((each) => (each.disabled = false)));
      },
      { "aria-label": `${label}: ${heading}` },
    );
  const clip = [clip_button("Save clip 16:9", 1280, 720), clip_button("Save clip 9:16", 720, 1280)];

  return block(page, {
    heading,
    sentence,
    content: [
      stages,
      el(
        "div",
        { class: "player", role: "group", "aria-label": "Player" },
        play,
        button("Step back", () => step(-1)),
        button("Step forward", () => step(1)),
        scrub,
        now,
        el("span", { class: "note" }, `plays about ${pace} than real time`),
      ),
      choice,
      key,
    ],
    paint: (pen, box, theme, font) => paint_at(pen, box, theme, font, null),
    extra: clip,
  });
}
