// SPDX-License-Identifier: Apache-2.0
// What is on the page, as links; on a phone the blocks behind them are folded until one is asked for. Beside them how
// the page is printed.
import { narrow } from "./block";
import { button, el } from "./dom";
import { print_page } from "./print";

/** `place` is the part of `main` whose blocks come and go with the run that is drawn. */
export function contents(main: HTMLElement, place: HTMLElement): HTMLElement {
  const list = el("ul", {});
  const nav = el(
    "nav",
    { class: "contents screen-only", "aria-label": "Contents" },
    el("details", { open: !narrow() }, el("summary", {}, "On this page"), list),
    el("div", { class: "take" }, button("Print one sheet", () => print_page(false)), button("Print with all details", () => print_page(true))),
  );
  let listed = "";
  const fill = () => {
    const entries = [...main.querySelectorAll<HTMLElement>("section.block[id]")].filter((block) => block.querySelector("h2"));
    const names = entries.map((block) => block.id).join(" ");
    if (names === listed) return;
    listed = names;
    list.replaceChildren(
      ...entries.map((block) => {
        const link = el("a", { href: `#${block.id}` }, block.querySelector("h2")?.textContent ?? "");
        link.addEventListener("click", () => {
          const fold = block.querySelector<HTMLDetailsElement>("details.fold");
          if (fold) fold.open = true;
        });
        return el("li", {}, link);
      }),
    );
  };
  new MutationObserver(fill).observe(place, { childList: true });
  fill();
  return nav;
}
