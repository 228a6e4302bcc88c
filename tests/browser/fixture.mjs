// SPDX-License-Identifier: Apache-2.0
// Made-up reports for the page's tests: plausible curves, parts and frames, no physics. Every list of the contract
// (tools/output/report/src/data.ts) is filled somewhere, so that each block of the page can be tested without the program.
import { deflateSync } from "node:zlib";

const part_lists = {
  heel: [
    ["lasting board", "board-cellulose", 1.5],
    ["core", "eva-soft", 16],
    ["core, ring", "eva-firm", 16],
    ["carrier", "eva-firm", 7],
    ["outsole", "rubber-60a", 2],
  ],
  forefoot: [
    ["lasting board", "board-cellulose", 1.5],
    ["topper", "eva-firm", 4],
    ["unit", "air, film and fibres", 8],
    ["unit, ring", "eva-firm", 8],
    ["plate", "glass-nylon", 1.2],
    ["base", "eva-firm", 4.5],
    ["outsole", "rubber-67a", 1.8],
  ],
};

function coded(integers, n_frames) {
  const n = integers.length / n_frames;
  const differences = new Int16Array(integers.length);
  for (let f = 0; f < n_frames; ++f)
    for (let i = 0; i < n; ++i)
      differences[f * n + i] = integers[f * n + i] - (f > 0 ? integers[(f - 1) * n + i] : 0);
  return deflateSync(Buffer.from(differences.buffer)).toString("base64");
}

function curves(kind) {
  const [peak, depth, contact] = kind === "heel" ? [1340, 7.3, 8.4] : [1180, 8.5, 9.9];
  const time = [], force = [], compression = [];
  for (let i = 0; i <= 240; ++i) {
    const t = (i / 240) * contact * 1.25, phase = Math.PI * Math.min(1, t / contact);
    time.push(t);
    compression.push(t < contact * 1.25 ? depth * Math.max(0, Math.sin(phase) ** 0.9) : 0);
    force.push(t < contact ? peak * Math.sin(Math.min(Math.PI, phase * 1.06)) ** 1.6 : 0);
  }
  return { time, force, compression, timeOfPeak: contact / 2, timeOfLoss: contact };
}

function frames(kind, parts, curve) {
  const layers = parts.map(([name, , thickness], part) => ({ name, thickness, part }));
  const rows = [], radius = kind === "heel" ? 37 : 42, inner = kind === "heel" ? 27 : 31;
  for (let i = layers.length - 1; i >= 0; --i) {
    if (layers[i].name.endsWith(", ring")) continue;
    const n = Math.max(1, Math.round(layers[i].thickness / 2));
    const ring = layers[i + 1]?.name.endsWith(", ring") ? i + 1 : -1;
    for (let k = 0; k < n; ++k) rows.push({ h: layers[i].thickness / n, part: i, ring });
  }
  const n_x = 21, x0 = [...Array(n_x).keys()].map((i) => (i <= 14 ? (inner * i) / 14 : inner + ((radius - inner) * (i - 14)) / 6));
  const y0 = [0];
  for (const row of rows) y0.push(y0.at(-1) + row.h);
  const total = y0.at(-1), n_nodes = n_x * y0.length, n = 60, quantum = 0.002;
  const time = [...Array(n).keys()].map((f) => (f / (n - 1)) * curve.time.at(-1));
  const positions = new Int16Array(n * n_nodes * 2), quads = [], quadPart = [];
  // The unit is hollow: of its cells those at its faces and its side are there, its film.
  const unit = layers.findIndex(({ name }) => name === "unit");
  const cell_of = [];
  const hollow = (i, j) => rows[j].part === unit && i < 13 && rows[j - 1]?.part === unit && rows[j + 1]?.part === unit;
  for (let j = 0; j < rows.length; ++j)
    for (let i = 0; i + 1 < n_x; ++i) {
      if (hollow(i, j)) continue;
      cell_of.push([i, j]);
      quads.push(j * n_x + i, j * n_x + i + 1, (j + 1) * n_x + i + 1, (j + 1) * n_x + i);
      quadPart.push(rows[j].ring >= 0 && i >= 14 ? rows[j].ring : rows[j].part);
    }
  const n_cells = quadPart.length, tup = [];
  const values = { stretch: [], energy_density: [], dissipated_density: [], pressure: [] };
  let lost = 0;
  for (let f = 0; f < n; ++f) {
    const at = Math.min(curve.time.length - 1, Math.round((time[f] / curve.time.at(-1)) * (curve.time.length - 1)));
    const depth = curve.compression[at], last = f > 0 ? tup.at(-1) : total;
    tup.push(time[f] > curve.timeOfLoss ? total + 2.4 * (time[f] - curve.timeOfLoss) : total - depth);
    lost += Math.abs(last - tup.at(-1)) * 0.01;
    y0.forEach((y, j) =>
      x0.forEach((x, i) => {
        const spread = 1 / (1 + Math.exp((x - 21) / 2.5)), node = j * n_x + i;
        const share = (y / total) ** 1.4 * depth * spread;
        positions[(f * n_nodes + node) * 2] = Math.round((x * (1 + 0.01 * depth * Math.sin((Math.PI * y) / total))) / quantum);
        positions[(f * n_nodes + node) * 2 + 1] = Math.round((y - share) / quantum);
      }),
    );
    for (let c = 0; c < n_cells; ++c) {
      const [a, , , d] = quads.slice(4 * c, 4 * c + 4), base = f * n_nodes;
      const height = (positions[(base + d) * 2 + 1] - positions[(base + a) * 2 + 1]) * quantum;
      const stretch = height / rows[cell_of[c][1]].h;
      values.stretch.push(stretch);
      values.energy_density.push((1 - stretch) ** 2 * 900);
      values.dissipated_density.push((1 - stretch) ** 2 * 200 * Math.min(1, lost));
      values.pressure.push((1 - stretch) * 1.2);
    }
  }
  const outline = (part) => {
    const cells = quadPart.flatMap((p, c) => (p === part ? [c] : []));
    const is = cells.map((c) => cell_of[c][0]), js = cells.map((c) => cell_of[c][1]);
    const [i0, i1, j0, j1] = [Math.min(...is), Math.max(...is) + 1, Math.min(...js), Math.max(...js) + 1];
    const nodes = [];
    for (let i = i0; i <= i1; ++i) nodes.push(j0 * n_x + i);
    for (let j = j0 + 1; j <= j1; ++j) nodes.push(j * n_x + i1);
    for (let i = i1 - 1; i >= i0; --i) nodes.push(j1 * n_x + i);
    if (part === unit) {
      for (let i = i0; i < i1; ++i) nodes.push((j1 - 1) * n_x + i);
      for (let j = j1 - 2; j > j0; --j) nodes.push(j * n_x + i1 - 1);
      for (let i = i1 - 2; i >= i0; --i) nodes.push((j0 + 1) * n_x + i);
    } else for (let j = j1 - 1; j > j0; --j) nodes.push(j * n_x + i0);
    return { part, nodes };
  };
  const field = (name, label, unit, low, high) => {
    const step = (high - low) / 8000;
    const integers = Int16Array.from(values[name], (v) => Math.round((Math.min(high, Math.max(low, v)) - low) / step));
    return { name, label, unit, low, high, quantum: step, offset: low, values: coded(integers, n) };
  };
  return {
    n, time, tup, tupOutline: [[0, 0], [17, 0], [19, 1], [20, 3], [20, 25], [0, 25]], nNodes: n_nodes, quantum,
    positions: coded(positions, n), quads, quadPart,
    outlines: parts.map((_, part) => outline(part)),
    fields: [
      field("stretch", "height of the material, of its height at rest", "", 0.4, 1),
      field("energy_density", "energy stored", "kJ/m³", 0, 320),
      field("dissipated_density", "energy turned into heat", "kJ/m³", 0, 70),
      field("pressure", "pressure", "MPa", 0, 0.7),
    ],
    total, radius, inner,
  };
}

function energy(kind, parts, curve) {
  const input = 4.71;
  const split = kind === "heel" ? [61, 1, 23, 4, 2, 2, 5, 2] : [77, 1, 4, 3, 2, 1, 4, 1, 5, 2];
  const shares = [
    { name: "thrown back", kind: "returned", energy: (input * split[0]) / 100, part: -1 },
    ...parts.map(([name], part) => ({ name, kind: "part", energy: (input * split[1 + part]) / 100, part })),
    { name: "guide", kind: "guide", energy: (input * split.at(-2)) / 100, part: -1 },
    { name: "left in the stack", kind: "left", energy: (input * split.at(-1)) / 100, part: -1 },
  ];
  const time = curve.time.filter((_, i) => i % 3 === 0), end = curve.timeOfLoss;
  const progress = time.map((t) => Math.min(1, t / end));
  const squeeze = time.map((t) => (t < end ? Math.sin((Math.PI * t) / end) ** 2 : 0));
  const lost = parts.map((_, part) => progress.map((p) => shares[1 + part].energy * p ** 1.3));
  const stored = parts.map((_, part) => squeeze.map((s) => input * 0.7 * s * (split[1 + part] / (100 - split[0]))));
  const rows = [
    ...parts.map(([name], part) => ({ name, kind: "lost", part, energy: lost[part] })),
    ...parts.map(([name], part) => ({ name, kind: "stored", part, energy: stored[part] })),
  ];
  const rest = time.map((_, i) => Math.max(0, input - rows.reduce((sum, row) => sum + row.energy[i], 0)));
  rows.push({ name: "drop weight", kind: "weight", part: -1, energy: rest });
  return { input, accounted: 0.998, shares, time, rows };
}

/** Tone and hatch: one of each a material, as the program gives them. */
const materials = [...new Set(Object.values(part_lists).flat().map(([, material]) => material))];
const look_of = (material) => ({ tone: materials.indexOf(material), hatch: materials.indexOf(material) });

const reading = (name, label, value, unit, digits, error, meaning, headline) => ({
  name, label, value, unit, digits, error, meaning, headline,
  how: [
    `Rule: ${meaning}`,
    "Inputs: foam eva-soft (fitted to a press pulse, invented for the demonstration), drop weight 1.20 kg, fall 400 mm.",
    error === null ? "No estimate of the numerical error." : `Numerical error: ±${error} ${unit}, from a finer grid and a shorter step.`,
  ],
});

export function run(kind, { label = `${kind}-drop`, title = `Pair 07, ${kind}, 1.20 kg from 400 mm` } = {}) {
  const parts = part_lists[kind], curve = curves(kind), heel = kind === "heel";
  const { total, radius, inner, ...coded_frames } = frames(kind, parts, curve);
  let bottom = 0;
  const layers = [];
  for (let i = parts.length - 1; i >= 0; --i) {
    if (parts[i][0].endsWith(", ring")) continue;
    layers.push({ name: parts[i][0], bottom, top: bottom + parts[i][2], part: i, assumed: parts[i][0] === "lasting board" });
    bottom += parts[i][2];
  }
  return {
    label, title,
    rig: "Guided rod: 1.20 kg, flat 40 mm puck, falls 400 mm (4.71 J); the guide takes 3 % each way.",
    changes: [], complete: true, stopReason: "",
    readings: [
      reading("rebound_height", "rebound", heel ? 244 : 308, "mm", 0, 2, "rise of the weight above the level of first touch.", true),
      reading("rebound_by_height", "energy return by height", heel ? 61 : 77, "%", 0, 0.5, "rebound over drop height.", false),
      reading("impact_speed", "speed at first touch", 2.76, "m/s", 2, null, "speed at first touch.", false),
      reading("rebound_speed", "speed at contact loss", heel ? 2.22 : 2.5, "m/s", 2, 0.01, "speed at contact loss.", false),
      reading("peak_force", "peak force", heel ? 1.34 : 1.18, "kN", 2, 0.01, "greatest force on the weight, smoothed.", true),
      reading("peak_deceleration", "deceleration", heel ? 113 : 99, "g", 0, 1, "peak force divided by weight, minus one.", false),
      reading("greatest_compression", "greatest compression", heel ? 7.3 : 8.5, "mm", 1, 0.1, "greatest squeeze of the whole stack.", true),
      reading("contact_time", "contact time", heel ? 8.4 : 9.9, "ms", 1, null, "first touch to the moment the force is gone.", false),
    ],
    warnings: heel ? [] : [{ reading: "greatest_compression", text: "The unit came within 12 % of the end of its travel: close to bottoming." }],
    parts: parts.map(([name, material, thickness]) => ({
      name, material, ...look_of(material), thickness, source: "invented for the demonstration",
      assumed: name === "lasting board" ? ["thickness", "stiffness"] : [],
    })),
    section: {
      width: 2 * radius, height: total, layers,
      widths: [
        { name: "drop weight", width: 40, y: total, assumed: false },
        { name: heel ? "core" : "unit", width: 2 * inner, y: total / 2, assumed: !heel },
        { name: "plug", width: 2 * radius, y: 0, assumed: true },
      ],
    },
    curves: curve,
    gases: heel ? [] : [{ part: parts.findIndex(([name]) => name === "unit"), pressure: curve.compression.map((depth) => 140 + 4 * depth ** 2) }],
    energy: energy(kind, parts, curve),
    frames: coded_frames,
    captions: {
      section: `The ${kind} stack is ${total.toFixed(1)} mm high; a 40 mm weight lands in its middle.`,
      moment: `At ${(curve.timeOfPeak).toFixed(1)} ms the stack is squeezed by ${heel ? "7.3" : "8.5"} mm while ${heel ? "1.34" : "1.18"} kN push back.`,
      loop: `Of the energy put in, ${heel ? 64 : 80} % comes back along the lower branch; the area between is lost.`,
      motion: `The ${heel ? "core" : "unit"} takes most of the squeeze.`,
      energy: `${heel ? 61 : 77} of 100 parts of the drop energy go back into the weight; most of the loss is in the ${heel ? "core" : "topper"}.`,
    },
  };
}

const record = {
  program: "solemech 0.3",
  versions: [{ name: "solemech", version: "0.3.0" }, { name: "deal.II", version: "9.4.1" }],
  hash: "6f1c0a9be2",
  caseText: 'format = 1\ntitle = "pair 07, heel"\nrig = "guided-rod-1200"\n\n[[layer]]\nname = "core"\nmaterial = "eva-soft"\nthickness = "16.0 mm"\n',
  resolvedText: 'core.thickness = "16 mm"   # sheet, line 8\ncore.temperature = "23 degC"   # default\n',
  limits: ["The shoe bending at the ball of the foot.", "Side walls and grooves.", "The scatter from shoe to shoe."],
};

const empty = { series: null, tables: [], lines: [], comparison: [], trial: null, lesson: null };
const cautions = [
  "Cut away from yourself and clamp the work; soles are tough and blades slip.",
  "Do not pierce, heat or saw a unit under pressure: it can burst.",
];

export function single_run(options) {
  const heel = run("heel", options);
  return {
    format: 1, kind: "run", title: options?.title ?? heel.title, label: heel.label, origin: "model", invented: "invented demo stacks",
    sentence: "The heel throws the weight back to 244 mm, 61 % of its fall, and peaks at 1.34 kN.",
    headline: [
      { name: "rebound", value: "244 mm", note: "61 % of the drop height", values: [] },
      { name: "peak force", value: "1.34 kN", note: "113 g on the drop weight", values: [] },
      { name: "compression", value: "7.3 mm", note: "28 % of the stack", values: [] },
    ],
    story: ["The weight arrives with 4.71 J. The core takes most of the squeeze and turns 23 % of the energy into heat.", "What it keeps is thrown back: 61 %."],
    runs: [heel], ...empty, cautions, record,
  };
}

export function comparison() {
  const heel = run("heel"), forefoot = run("forefoot");
  return {
    ...single_run(), kind: "comparison", title: "heel-drop and forefoot-drop", label: "heel-drop-and-forefoot-drop",
    sentence: "The forefoot rebounds 64 mm higher than the heel; most of it is the pressurised unit in place of the core.",
    headline: [
      { name: "rebound", value: "244 / 308 mm", note: "64 mm apart", values: ["244 mm", "308 mm"] },
      { name: "peak force", value: "1.34 / 1.18 kN", note: "forefoot lower", values: ["1.34 kN", "1.18 kN"] },
      { name: "compression", value: "7.3 / 8.5 mm", note: "forefoot deeper", values: ["7.3 mm", "8.5 mm"] },
    ],
    runs: [heel, forefoot],
    comparison: [{
      from: 0, to: 1, sentence: "forefoot-drop 64 mm (16 points) higher than heel-drop.",
      sentences: ["The unit returns 95 % of what it takes; the core foam 63 %.", "The plate hardly shows on a drop: its work is in bending."],
      differences: [
        { what: "core", from: "eva-soft, 16 mm", to: "unit, 8 mm at 140 kPa" },
        { what: "base", from: "eva-firm, 7 mm", to: "eva-firm, 4.5 mm" },
        { what: "plate", from: "none", to: "glass-nylon, 1.2 mm" },
      ],
      readings: [
        { name: "rebound", label: "rebound", unit: "mm", digits: 0, from: 244, to: 308, band: 6, verdict: "higher" },
        { name: "peak_force", label: "peak force", unit: "kN", digits: 2, from: 1.34, to: 1.18, band: 0.04, verdict: "lower" },
        { name: "contact_time", label: "contact time", unit: "ms", digits: 1, from: 8.4, to: 8.5, band: 0.3, verdict: "cannot tell" },
      ],
      shares: [{
        reading: "rebound", label: "rebound", unit: "points of energy return", digits: 1, total: 16, band: 1.2,
        rows: [
          { change: "core → pressurised unit", share: 14.1, band: 1.1, verdict: "raises" },
          { change: "thinner base", share: 2.2, band: 0.6, verdict: "raises" },
          { change: "thinner stack", share: -0.6, band: 0.4, verdict: "lowers" },
          { change: "plate", share: 0.3, band: 0.5, verdict: "cannot tell" },
        ],
        interactions: [{ changes: ["core → pressurised unit", "thinner base"], value: 0.8, band: 0.3 }],
        sentence: "14.1 of 16.0 points come from the unit in place of the core.",
      }],
      parts: [{ name: "core / unit", from: 23, to: 4 }, { name: "carrier / base", from: 6, to: 5 }, { name: "guide", from: 5, to: 5 }],
      impossible: ["Unit without its ring: a unit of 62 mm does not fit a core of 54 mm."],
      runs: "16 runs, 9 of them kept from before", rule: "A part that one of the two lacks is replaced by nothing; the rest moves together.",
    }],
  };
}

export function series() {
  const values = [2, 3, 4, 5, 6, 7, 8], heel = run("heel"), forefoot = run("forefoot");
  const runs = values.flatMap((v) => [{ ...heel, label: `heel-${v}J`, title: `heel, ${v} J` }, { ...forefoot, label: `forefoot-${v}J`, title: `forefoot, ${v} J` }]);
  const both = (f) => values.flatMap((v) => [f(v, 0), f(v, 1)]);
  return {
    ...single_run(), title: "From which drop on does the forefoot hit harder?", label: "energy-ladder",
    sentence: "From 6.2 J on the forefoot hits harder than the heel.", runs,
    series: {
      quantity: "drop energy", unit: "J", values: both((v) => v), groups: both((_, k) => (k ? "forefoot" : "heel")),
      readings: [
        { name: "rebound", label: "rebound", unit: "% of the drop height", values: both((v, k) => (k ? 78 - 0.4 * v : 63 - 0.5 * v)) },
        { name: "peak_force", label: "peak force", unit: "kN", values: both((v, k) => (k ? 0.5 + 0.035 * v * v : 0.62 + 0.19 * v)) },
        { name: "compression", label: "compression", unit: "mm", values: both((v, k) => (k ? 4.4 * v ** 0.42 : 3.4 * v ** 0.5)) },
      ],
      sentence: "Peak force of the forefoot climbs faster and passes that of the heel near 6 J.",
    },
  };
}

export function trial() {
  const now = run("heel", { label: "before", title: "before" }), then = run("heel", { label: "after", title: "with a 2 mm insert" });
  const range = series().series;
  return {
    ...single_run(), kind: "trial", title: "A 2 mm semi-rigid insert in pair 07", label: "insert-trial", runs: [now, then],
    sentence: "The insert spreads the load and lowers the peak pressure by 26 %, but the heel sits 2 mm higher.",
    trial: {
      swaps: ["insert = pp-semirigid 2 mm"],
      rows: [
        { name: "rebound", now: "249 mm", then: "252 mm", note: "inside ±6 mm", verdict: "same" },
        { name: "peak force", now: "1.34 kN", then: "1.50 kN", note: "higher on the same drop", verdict: "worse" },
        { name: "peak pressure", now: "1.10 MPa", then: "0.81 MPa", note: "spread over more foam", verdict: "better" },
        { name: "bottoming margin", now: "5.1 J", then: "cannot tell", note: "outside what was run", verdict: "unknown" },
        { name: "mass", now: "210 g", then: "226 g", note: "", verdict: "fact" },
      ],
      geometry: [
        { name: "stack height", value: "+2.0 mm", note: "the heel sits higher" },
        { name: "counter depth", value: "−2.0 mm", note: "less hold at the heel" },
      ],
      range: { ...range, quantity: "gauge pressure", unit: "kPa", values: range.values.map((v) => 60 + 20 * v) },
      bottoms: "Below 95 kPa the unit bottoms on this drop.",
      cautions: ["Do not shape a plate in the shoe.", "Pain or numbness: stop, and ask a licensed foot professional."],
    },
  };
}

export function lesson() {
  return {
    ...single_run(), kind: "lesson", title: "Does a dead unit show on the rebound rule?", label: "dead-unit",
    sentence: "A punctured unit still rebounds 66 %, but its peak force doubles.",
    lesson: {
      question: "A pressurised unit is punctured and goes flat. Where will the rebound rule show it?",
      choices: ["The rebound halves", "The rebound falls a little, the peak force doubles", "Nothing changes"],
      answer: 1,
      explanation: ["The foam around the flat unit still throws the weight back.", "But the travel is used up: the weight stops on a short, hard path."],
      guess: null,
    },
  };
}

/** The page around a report, as the program writes it. */
export function page(report, { js, css }) {
  const data = JSON.stringify(report).replaceAll("<", "\\u003c");
  const title = report.title.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>${title}</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data: blob:; media-src blob:">
<style>${css}</style></head><body><main id="report"></main>
<script type="application/json" id="report-data">${data}</script>
<script>${js}</script></body></html>
`;
}
