// SPDX-License-Identifier: Apache-2.0
// What a drawn chart says, read back from its picture: axes from their tick labels, curves from their paths.

/** In the page: ticks and paths of the chart of that name, in pixels of the drawing. */
export async function drawn_chart(page, name) {
  return page.evaluate((wanted) => {
    const svg = [...document.querySelectorAll("figure.chart svg[aria-label]")].find((each) => each.getAttribute("aria-label") === wanted);
    if (!svg) return null;
    const place = (node) => {
      let [x, y] = [0, 0];
      for (; node && node !== svg; node = node.parentNode) {
        for (const [, a, b] of (node.getAttribute("transform") ?? "").matchAll(/translate\(([-\d.e]+)[ ,]+([-\d.e]+)\)/g)) {
          x += Number(a);
          y += Number(b);
        }
      }
      return { x, y };
    };
    const ticks = (axis) =>
      [...svg.querySelectorAll(`g[data-mark="${axis}-axis tick label"] text`)].map((text) => ({
        value: Number(text.textContent.replace("−", "-")), at: place(text)[axis],
      }));
    const paths = [...svg.querySelectorAll('g[data-mark="line"] path')].map((path) => path.getAttribute("d"));
    const cursor = svg.querySelector("g.cursor");
    return {
      x: ticks("x"), y: ticks("y"), paths,
      line: cursor?.querySelector("line") ? Number(cursor.querySelector("line").getAttribute("x1")) : null,
      dots: [...(cursor?.querySelectorAll("circle") ?? [])].map((each) => [Number(each.getAttribute("cx")), Number(each.getAttribute("cy"))]),
    };
  }, name);
}

/** value = a + b * pixel, from the first and last tick; all ticks have to lie on it. */
export function axis(ticks) {
  const [first, last] = [ticks[0], ticks.at(-1)];
  const b = (last.value - first.value) / (last.at - first.at);
  const a = first.value - b * first.at;
  // Plot sets a label half a pixel beside its tick.
  for (const { value, at } of ticks) if (Math.abs(a + b * at - value) > Math.abs(b) * 0.6) throw new Error(`tick ${value} lies off its axis`);
  return (pixel) => a + b * pixel;
}

/** Points of a polyline path "M x,y L x,y ...". */
export function points(path) {
  return [...path.matchAll(/(-?[\d.]+(?:e-?\d+)?)[ ,](-?[\d.]+(?:e-?\d+)?)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

/** Rows of a CSV file as written by the page. */
export function rows_of_csv(text) {
  return text.trim().split("\r\n").map((line) => line.match(/"(?:[^"]|"")*"|[^,]+|(?<=,)(?=,|$)/g).map((cell) => cell.replace(/^"|"$/g, "").replaceAll('""', '"')));
}

/** Size of a PNG from its header. */
export function png_size(bytes) {
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}
