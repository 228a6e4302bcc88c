// SPDX-License-Identifier: Apache-2.0
// Blocks that are a sentence and a table of ready texts: readings against the model, what they settle.
import { block, type Page } from "./block";
import type { TableBlock } from "./data";
import { paint_table } from "./picture";
import { reading_table } from "./table";

export function table_block(page: Page, parts: TableBlock): HTMLElement {
  return block(page, {
    heading: parts.heading,
    sentence: parts.sentence,
    sheet: parts.columns.includes("measured"),
    content: [reading_table(parts.heading, parts.columns, parts.rows)],
    paint: (pen, box, theme) => paint_table(pen, box, theme, parts.columns, parts.rows),
  });
}
