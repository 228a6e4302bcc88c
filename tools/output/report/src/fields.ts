// SPDX-License-Identifier: Apache-2.0
// The quantity that moving sections show in place of their parts, with its scale.
import { legend } from "@observablehq/plot";
import type { Page } from "./block";
import type { Field, Run } from "./data";
import { el, file_name } from "./dom";
import { tidy } from "./format";
import type { Motion } from "./frames";
import { Theme } from "./looks";
import { font_family, shades } from "./stage";
import type { Shade, View } from "./view";

export interface Moving {
  run: Run;
  motion: Motion;
}

export interface FieldChoice {
  element: HTMLElement;
  shades: () => Shade[]; // of the views; empty where the parts are shown
}

export function field_choice(page: Page, moving: Moving[], views: View[]): FieldChoice {
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
  offer("parts", null, true);
  for (const field of moving[0]?.motion.frames.fields ?? []) offer(field.label, field, false);
  return { element: el("div", {}, choice, key), shades: () => shades_now };
}
