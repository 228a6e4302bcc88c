// SPDX-License-Identifier: Apache-2.0
// Play, pause, step and scrub through the clock of the page, and clips of what it shows.
import type { Page } from "./block";
import { record_clip } from "./clip";
import type { Clock } from "./clock";
import { announce, button, el, file_name } from "./dom";
import type { Theme } from "./looks";
import { type Frame, light_theme, paint_frame } from "./picture";
import type { Box } from "./stage";

const done = 1 - 1e-9; // of the way
const calm_steps = 12; // pictures a pass for readers who asked for less motion

/** The controls; the space bar on `stages` plays too. */
export function player(clock: Clock, stages: HTMLElement): HTMLElement {
  const { pace } = clock;
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
    if (clock.at_peak || pace.share(clock.time) >= done) clock.set(pace.first);
    last = performance.now();
    requestAnimationFrame(tick);
  };
  const tick = (now: number) => {
    if (!playing) return;
    const passed = (now - last) / 1000 / pace.seconds;
    if (!calm.matches || passed >= 1 / calm_steps) {
      // From where the clock stands: a reader may have moved it.
      clock.set(pace.time(Math.min(1, pace.share(clock.time) + passed)));
      last = now;
    }
    if (pace.share(clock.time) >= done) stop();
    else requestAnimationFrame(tick);
  };
  const scrub = el("input", { type: "range", min: 0, max: 1000, step: 1, "aria-label": "Moment shown" });
  scrub.addEventListener("input", () => {
    stop();
    clock.set(pace.time(Number(scrub.value) / 1000));
  });
  const now = el("span", { class: "reading-line" });
  const follow = () => {
    scrub.value = String(Math.round(1000 * pace.share(clock.time)));
    scrub.setAttribute("aria-valuetext", clock.moment(clock.time));
    now.textContent = `${clock.moment(clock.time)}, ${pace.words(clock.time)}`;
  };
  clock.watch(follow);
  follow();
  const step = (by: number) => {
    stop();
    clock.set(pace.time(pace.share(clock.time) + by / 120));
  };
  stages.addEventListener("keydown", (event) => {
    if (event.key !== " ") return;
    event.preventDefault();
    play.click();
  });
  const peak = button("Most squeezed", () => {
    stop();
    clock.to_peak();
  });
  return el(
    "div",
    { class: "player", role: "group", "aria-label": "Player" },
    play, button("Step back", () => step(-1)), button("Step forward", () => step(1)), peak, scrub, now,
    el("span", { class: "note" }, pace.whole()),
  );
}

/** Buttons that record one pass as a video; `draw` paints the moment `time` into the room that the frame leaves. */
export function clip_buttons(
  page: Page, frame: () => Frame, draw: (pen: CanvasRenderingContext2D, box: Box, theme: Theme, font: number, time: number) => void,
): HTMLButtonElement[] {
  const { pace } = page.clock;
  const one = (name: string, width: number, height: number): HTMLButtonElement => {
    const label = `Save clip ${name}`;
    const save = async () => {
      const theme = light_theme();
      const backdrop = document.createElement("canvas");
      backdrop.width = width;
      backdrop.height = height;
      const pen = backdrop.getContext("2d");
      if (!pen) throw new Error("This browser cannot draw pictures.");
      const box = paint_frame(pen, { width, height, name }, theme, frame());
      await record_clip({
        width, height, seconds: pace.seconds, name: file_name(page.report.label, frame().title, `${width}x${height}`),
        draw: (target, share) => {
          target.drawImage(backdrop, 0, 0);
          draw(target, box, theme, 24, pace.time(share));
        },
      });
    };
    return button(
      label,
      () => {
        buttons.forEach((each) => (each.disabled = true));
        announce(`Recording the clip, ${Math.ceil(pace.seconds) + 1} seconds …`);
        save()
          .then(() => announce("Clip saved."))
          .catch((error: unknown) => announce(error instanceof Error ? error.message : String(error)))
          .finally(() => buttons.forEach((each) => (each.disabled = false)));
      },
      { "aria-label": `${label}: ${frame().title}` },
    );
  };
  const buttons = [one("16:9", 1280, 720), one("9:16", 720, 1280)];
  return buttons;
}
