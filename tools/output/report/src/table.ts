// SPDX-License-Identifier: Apache-2.0
// Tables of the page, and the table of numbers behind each chart with its CSV file.
import { narrow } from "./block";
import { button, download, el, file_name, type Child } from "./dom";

export interface Table {
  columns: string[];
  rows: (string | number)[][];
}

/** A table to read; cells are text or nodes. `numbers`: columns set to the right. */
export function reading_table(
  label: string, columns: string[], rows: Child[][], numbers: number[] = [], sum_row = false,
): HTMLElement {
  const kind = (i: number) => (numbers.includes(i) ? "number" : null);
  const body = rows.map((row, r) =>
    el(
      "tr",
      { class: sum_row && r === rows.length - 1 ? "sum" : null },
      ...row.map((cell, i) => (i === 0 ? el("th", { scope: "row" }, cell) : el("td", { class: kind(i), "data-head": columns[i] || null }, cell))),
    ),
  );
  // On a phone a row of many cells stands as a small list under its name (report.css), and a long table is folded.
  const table = el(
    "div",
    { class: "wide", tabindex: 0, role: "region", "aria-label": label },
    el(
      "table",
      { class: columns.length > 2 ? "stands" : null },
      el("thead", {}, el("tr", {}, ...columns.map((column, i) => column === "" ? el("td", {}) : el("th", { scope: "col", class: kind(i) }, column)))),
      el("tbody", {}, ...body),
    ),
  );
  return narrow() && rows.length > most_open ? el("details", { class: "fold" }, el("summary", {}, `${label} (${rows.length} rows)`), table) : table;
}

const most_open = 6; // rows of a table on a phone

/** RFC 4180; text that a spreadsheet would take for a formula is marked as text. */
export function csv(table: Table): string {
  const cell = (value: string | number) => {
    if (typeof value === "number") return Number.isFinite(value) ? String(value) : "";
    const safe = /^[=+\-@\t]/.test(value) ? `'${value}` : value;
    return `"${safe.replaceAll('"', '""')}"`;
  };
  return [table.columns, ...table.rows].map((row) => row.map(cell).join(",")).join("\r\n") + "\r\n";
}

const most_rows = 120;

/** The numbers of a chart: written into the page when they are first opened. */
export function data_details(name: string, table: () => Table): HTMLElement {
  const details = el("details", { class: "data" }, el("summary", {}, `Numbers: ${name}`));
  details.addEventListener("toggle", () => {
    if (!details.open || details.childElementCount > 1) return;
    const { columns, rows } = table();
    const every = Math.ceil(rows.length / most_rows);
    const shown = rows.filter((_, i) => i % every === 0).map((row) => row.map((cell) => (typeof cell === "number" ? plain(cell) : cell)));
    const numeric = columns.flatMap((_, i) => (typeof rows[0]?.[i] === "number" ? [i] : []));
    details.append(reading_table(`Numbers: ${name}`, columns, shown, numeric));
    if (every > 1) details.append(el("p", { class: "note" }, `One row in ${every} is shown; the CSV file has all ${rows.length}.`));
    details.append(
      button("Save as CSV", () => download(`${file_name(name)}.csv`, new Blob([csv(table())], { type: "text/csv" })), {
        "aria-label": `Save as CSV: ${name}`,
      }),
    );
  });
  return details;
}

function plain(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(6))).replace("-", "−") : "–";
}
