// SPDX-License-Identifier: Apache-2.0
// A lesson: the question and a guess first, the answer afterwards. In print the first page is a worksheet with a blank.
import type { Page } from "./block";
import type { Lesson } from "./data";
import { button, el } from "./dom";

/** The question; `answer` stays hidden until a guess is made or asked for. */
export function lesson_block(page: Page, lesson: Lesson, answer: HTMLElement): HTMLElement {
  const result = el("p", { class: "caption screen-only", role: "status" });
  const items = lesson.choices.map((choice, i) => {
    const item = el("li", {});
    item.append(button(`${i + 1}. ${choice}`, () => guess(i)));
    return item;
  });
  const show = button("Show the answer without a guess", () => reveal(""), { class: "screen-only" });
  const reveal = (text: string) => {
    result.textContent = text;
    answer.hidden = false;
    show.hidden = true;
    items[lesson.answer]?.classList.add("right");
    const right = items[lesson.answer]?.querySelector("button");
    if (right && !right.querySelector("span")) right.append(el("span", { class: "screen-only" }, " (the answer)"));
  };
  const guess = (i: number) => {
    items.forEach((item, k) => item.classList.toggle("chosen", k === i));
    reveal(i === lesson.answer ? "Your guess was right. Read below why." : "Your guess was not right. Read below what happened and why.");
    page.redraws.forEach((redraw) => redraw());
  };
  const block = el(
    "section",
    { class: "block on-sheet worksheet", "aria-labelledby": "lesson-heading" },
    el("h2", { id: "lesson-heading" }, "What do you think?"),
    el("p", { class: "question" }, lesson.question),
    el("ul", { class: "guesses" }, ...items),
    el("div", { class: "take screen-only" }, show),
    result,
    el("div", { class: "blank", "aria-hidden": "true" }, el("p", {}, "My guess, and why:"), el("span", {}), el("span", {}), el("span", {}), el("p", {}, "What the bench or the model showed:"), el("span", {}), el("span", {})),
  );
  if (lesson.guess !== null) guess(lesson.guess);
  return block;
}

/** The explanation, first thing on the answer page. */
export function lesson_answer(lesson: Lesson): HTMLElement {
  return el(
    "section",
    { class: "block on-sheet", "aria-labelledby": "lesson-answer" },
    el("h2", { id: "lesson-answer" }, "The answer"),
    el("p", { class: "question" }, lesson.choices[lesson.answer] ?? ""),
    ...lesson.explanation.map((text) => el("p", {}, text)),
  );
}
