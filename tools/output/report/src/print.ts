// SPDX-License-Identifier: Apache-2.0
// Print: one sheet of A4 with what the page is about, and on wish all of the page after it. What goes on the sheet is set
// as wide as the paper and made smaller as a whole until it fits.

const sheet = { width: 687, height: 1010 }; // px at 96 to the inch: A4 within margins of 13 and 14 mm
const smallest = 0.55;

let everything = false;

export function print_page(all: boolean): void {
  everything = all; // until the print is over: some browsers prepare it after this returns
  window.print();
}

/** Folded parts that were opened for the paper are closed again after it. */
const opened: HTMLDetailsElement[] = [];

export function prepare_print(main: HTMLElement, redraw: () => void): void {
  const root = document.documentElement;
  addEventListener("beforeprint", () => {
    root.classList.add("light", "paper");
    root.classList.toggle("one-sheet", !everything);
    for (const details of document.querySelectorAll<HTMLDetailsElement>(everything ? "details:not(.data)" : "details.fold"))
      if (!details.open) {
        details.open = true;
        opened.push(details);
      }
    redraw();
    if (everything) return;
    // A lesson has a worksheet and an answer, each a page of its own.
    const answer = main.querySelector<HTMLElement>(".answer-page");
    for (let size = 1; size >= smallest; size -= 0.03) {
      main.style.zoom = String(size);
      main.style.width = `${sheet.width / size}px`;
      const second = answer?.getBoundingClientRect().height ?? 0;
      // Of the content: the root is never lower than the window.
      const whole = document.body.getBoundingClientRect().height;
      if (Math.max(second, whole - second) <= sheet.height) break;
    }
  });
  addEventListener("afterprint", () => {
    root.classList.remove("light", "paper", "one-sheet");
    main.style.width = main.style.zoom = "";
    for (const details of opened.splice(0)) details.open = false;
    everything = false;
    redraw();
  });
}
