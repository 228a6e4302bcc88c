// SPDX-License-Identifier: Apache-2.0
// The moving sections of one or two runs with their player: of a press, a gauge, a hold. A drop has its own (drop.ts).
import { block, frame_of, type Page } from "./block";
import { el } from "./dom";
import { field_choice, type FieldChoice, type Moving } from "./fields";
import { tidy } from "./format";
import { run_heading, type Shown, told_by } from "./moment";
import type { Theme } from "./looks";
import { paint_text, split } from "./picture";
import { clip_buttons, player } from "./player";
import { type Box, draw_field_bar, draw_stage } from "./stage";
import { common_extent, moment_line, moment_text, shape_at, stage_paint, View } from "./view";

export interface Sections {
  element: HTMLElement; // the sections beside each other
  choice: FieldChoice;
  paint: (pen: CanvasRenderingContext2D, box: Box, theme: Theme, font: number, time: number | null) => void; // null: the moment shown
}

/** Sections of runs to one scale. */
export function sections(page: Page, moving: Moving[]): Sections {
  const extent = common_extent(moving.map(({ motion }) => motion));
  const views = moving.map(({ run, motion }) => new View(page, run, motion, extent, `${run.title} in motion: moment shown`));
  const choice = field_choice(page, moving, views);
  const element = el(
    "div",
    { class: moving.length > 1 ? "side-by-side" : "alone" },
    ...moving.map(({ run }, i) => el("div", { class: "of-run" }, run_heading(page, run), views[i].element, moment_line(page, run))),
  );
  return {
    element,
    choice,
    paint: (pen, box, theme, font, time) => {
      const shade = choice.shades()[0];
      const bar_room = shade ? 4 * font : 0;
      const boxes = split({ ...box, height: box.height - bar_room }, moving.length, font);
      moving.forEach(({ run, motion }, i) => {
        const place = boxes[i];
        const now = time ?? page.clock.of(run);
        let y = place.y;
        if (moving.length > 1) y = paint_text(pen, run.title, place.x, y, place.width, { size: font, weight: "bold", colour: theme.colour("--ink"), most: 1 });
        y = paint_text(pen, moment_text(page, run, now), place.x, y, place.width, { size: 0.85 * font, colour: theme.colour("--ink"), most: 2 }) + 4;
        draw_stage(pen, { ...place, y, height: place.height - (y - place.y) }, motion, shape_at(page, run, motion, now), extent, {
          ...stage_paint(page, run, now, theme), density: 1.5, field: choice.shades()[i] ?? null, type: font / 16,
        });
      });
      if (shade)
        draw_field_bar(
          pen, { x: box.x, y: box.y + box.height - 3.4 * font, width: Math.min(box.width, 24 * font), height: 3 * font }, theme, shade.field,
          [tidy(shade.low), tidy(shade.high)], 0.9 * font,
        );
    },
  };
}

export function motion_block(page: Page, shown: Shown[]): HTMLElement | null {
  const moving = shown.filter((each): each is Moving => each.motion !== null);
  if (moving.length === 0) return null;
  const heading = "The stack in motion";
  const sentence = told_by(page, moving.map(({ run }) => run), (run) => run.captions.motion);
  const drawn = sections(page, moving);
  return block(page, {
    heading,
    sentence,
    content: [drawn.element, player(page.clock, drawn.element), drawn.choice.element],
    paint: (pen, box, theme, font) => drawn.paint(pen, box, theme, font, null),
    extra: clip_buttons(page, () => frame_of(page, heading, sentence), drawn.paint),
  });
}
