// SPDX-License-Identifier: Apache-2.0
// The contract between the program, which writes these values into the page, and the page, which shows them.
// Every value is ready for people: display units, words of the trade, sentences computed from the numbers.
// Text is plain text; the page must never treat any of it as markup.

export interface Report {
  format: 1;
  kind: "run" | "comparison" | "trial" | "lesson";
  title: string;
  label: string; // short name, used for file names of saved pictures
  origin: "model" | "measured";
  invented: string; // what of it is invented, "" for a stack and materials of somebody's own
  sentence: string; // the answer in one sentence
  headline: Headline[]; // three numbers
  story: string[]; // plain paragraphs: what happened and why
  runs: Run[];
  series: Series | null; // the runs are points of a series
  tables: TableBlock[];
  lines: LineBlock[];
  comparison: Comparison[]; // one for every other run against the first; empty for one run
  trial: Trial | null;
  lesson: Lesson | null;
  cautions: string[];
  record: RecordFacts;
}

export interface Headline {
  name: string; // "rebound"
  value: string; // "262 mm", for several runs "262 / 325 mm"
  note: string; // "65 % of the drop height"
}

export interface Run {
  label: string;
  title: string;
  rig: string; // one sentence
  changes: string[];
  complete: boolean;
  stopReason: string;
  readings: Reading[];
  warnings: Warning[];
  parts: Part[];
  section: Section | null;
  curves: Curves;
  gases?: Gas[];
  energy: Energy | null;
  frames: Frames | null;
  captions: Captions;
}

export interface Reading {
  name: string; // machine name
  label: string; // for people
  value: number; // in `unit`
  unit: string; // display unit, "" for a pure number
  digits: number; // decimals to print
  error: number | null; // estimated numerical error in `unit`
  band: number | null; // half the band that readings of a bench sheet left open, in `unit`
  range?: [number, number] | null; // in `unit`: as far as an input with a band lets it be known
  meaning: string; // definition in one sentence
  headline: boolean;
  how: string[]; // how this number came about: inputs with sources, rule, error, versions; one line each
}

export interface Warning {
  reading: string; // machine name or ""
  text: string;
}

export interface Part {
  name: string; // layer, or layer and place ("core, ring")
  material: string;
  look?: string; // short name of the material: one look each, whatever its part is called
  family?: string; // foam, rubber, plate, film, insert, board
  thickness: number; // mm
  assumed: string[]; // what no one measured, one phrase each
  source: string; // of the material
}

/** The drawing at rest, both halves, mm, x across and y up; y = 0 at the ground side. */
export interface Section {
  width: number;
  height: number;
  layers: { name: string; bottom: number; top: number; part: number; assumed: boolean }[];
  widths: { name: string; width: number; y: number; assumed: boolean }[]; // diameters: plug, core, unit, striker
}

/** All arrays of the same length. */
export interface Curves {
  time: number[]; // ms
  force: number[]; // N
  compression: number[]; // mm
  timeOfPeak: number; // ms, greatest compression
  timeOfLoss: number; // ms, 0: never
}

/** The gas of a unit. */
export interface Gas {
  part: number; // its film
  pressure: number[]; // kPa over the atmosphere, one a time of the curves
}

export interface Energy {
  input: number; // J, 100 %
  accounted: number; // share 0..1 that the parts add up to
  shares: { name: string; kind: "returned" | "part" | "guide" | "left"; energy: number; part: number }[]; // part: index or -1
  time: number[]; // ms
  rows: { name: string; kind: "weight" | "stored" | "lost"; part: number; energy: number[] }[]; // J over time, stackable
}

/**
 * The deforming section. Mesh edges and cells are given once, positions per frame as 16-bit integers: value =
 * offset + quantum * integer. `positions` and each field are little-endian Int16, frame after frame, differences to the
 * frame before, deflated (zlib) and base64-coded.
 */
export interface Frames {
  n: number;
  time: number[]; // ms
  tup: number[]; // height of the striker's lowest point, mm
  tupOutline: [number, number][]; // right half, mm, relative to the lowest point
  nNodes: number;
  quantum: number; // mm
  positions: string; // n x nNodes x 2, right half (x >= 0), mm
  quads: number[]; // 4 corner nodes a drawn cell, flat, counter-clockwise
  quadPart: number[]; // part index a cell
  outlines: { part: number; nodes: number[] }[]; // closed polylines of node numbers, part outlines of the right half
  fields: Field[]; // one value a drawn cell and frame
}

export interface Field {
  name: "stretch" | "energy_density" | "dissipated_density" | "pressure";
  label: string;
  unit: string;
  low: number; // of the colour scale
  high: number;
  quantum: number;
  offset: number;
  values: string; // n x cells, coded like positions
}

/** One sentence for each block, for copying and saved pictures. */
export interface Captions {
  section: string;
  moment: string;
  loop: string;
  motion: string;
  energy: string;
}

export interface Series {
  quantity: string;
  unit: string;
  values: number[]; // one a run
  groups: string[];
  readings: { name: string; label: string; unit: string; values: number[] }[];
  sentence: string;
}

export interface TableBlock {
  heading: string;
  sentence: string;
  columns: string[];
  rows: string[][];
}

export interface LineBlock {
  heading: string;
  sentence: string;
  charts: LineChart[];
}

export interface LineChart {
  name: string;
  xLabel: string;
  yLabel: string;
  lines: { name: string; x: number[]; y: number[] }[];
  round: boolean; // x and y to one scale, rings round the origin
}

/** Run `to` against run `from`. */
export interface Comparison {
  from: number;
  to: number;
  sentence: string;
  sentences: string[]; // what each change does
  differences: { what: string; from: string; to: string }[];
  readings: { name: string; label: string; unit: string; digits: number; from: number; to: number; band: number; verdict: string }[];
  shares: ShareTable[];
  parts: { name: string; from: number; to: number }[]; // energy turned into heat or kept, % of the drop energy
  impossible: string[]; // mixtures that could not be built or run, with the reason
  runs: string; // how many runs it took, in words
  rule: string; // how mixtures are closed, in words
}

export interface ShareTable {
  reading: string;
  label: string;
  unit: string;
  digits: number;
  total: number;
  band: number;
  rows: { change: string; share: number; band: number; verdict: string }[];
  interactions: { changes: string[]; value: number; band: number }[];
  sentence: string;
}

export interface Trial {
  swaps: string[];
  rows: { name: string; now: string; then: string; note: string; verdict: "better" | "worse" | "same" | "unknown" | "fact" }[];
  geometry: { name: string; value: string; note: string }[];
  range: Series | null;
  bottoms: string; // where it bottoms, in words
  cautions: string[];
}

export interface Lesson {
  question: string;
  choices: string[]; // guesses to choose from before the answer is shown
  answer: number; // index into choices
  explanation: string[];
  guess: number | null; // made at the terminal before the run
}

export interface RecordFacts {
  program: string;
  versions: { name: string; version: string }[];
  hash: string;
  caseText: string;
  resolvedText: string;
  limits: string[]; // what the model does not represent
}
