// SPDX-License-Identifier: Apache-2.0
// The values that the program writes into the page. Made by solemech-page-types from the descriptions of the blocks in
// tools/output/report/*.h; change those and write this file anew. Every value is ready for people: display units,
// words of the trade, sentences computed from the numbers. Text is plain text; the page must never treat any of it as
// markup.

/** A whole page. */
export interface Report {
  format: number; // rises when an entry changes its name or meaning
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
  comparison: Comparison[]; // one for every other run against the first; empty for one run
  tables: TableBlock[];
  lines: LineBlock[];
  trial: Trial | null;
  lesson: Lesson | null;
  cautions: string[];
  record: RecordFacts;
}

/** One of the three numbers at the top. */
export interface Headline {
  name: string; // "rebound"
  value: string; // "262 mm", for several runs "262 / 325 mm"
  note: string; // "65 % of the drop height"
  values: string[]; // of several runs that stand one by one, each whole
}

/** One run of the page. */
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
  gases: Gas[];
  energy: Energy | null;
  frames: Frames | null;
  captions: Captions;
}

/** One number of a run. */
export interface Reading {
  name: string; // machine name
  label: string; // for people
  value: number; // in `unit`
  unit: string; // display unit, "" for a pure number
  digits: number; // decimals to print
  error: number | null; // estimated numerical error in `unit`
  band: number | null; // half the band that readings of a bench sheet left open, in `unit`
  range: [number, number] | null; // as far as an input with a band lets it be known, in `unit`
  meaning: string; // definition in one sentence
  headline: boolean;
  how: string[]; // how this number came about: inputs with sources, rule, error, versions; one line each
}

/** What to mind of a reading or of the run. */
export interface Warning {
  reading: string; // machine name or ""
  text: string;
}

/** A part of the stack. */
export interface Part {
  name: string; // layer, or layer and place ("core ring")
  material: string;
  tone: number; // of the palette; one material has one tone and one hatch everywhere
  hatch: number; // number of a tile
  thickness: number; // mm
  assumed: string[]; // what no one measured, one phrase each
  source: string; // of the material
}

/** The stack at rest, both halves, x across and y up; y = 0 at the ground side. */
export interface Section {
  width: number; // mm
  height: number; // mm
  layers: SectionLayer[];
  widths: SectionWidth[];
}

/** A layer of the stack at rest. */
export interface SectionLayer {
  name: string;
  bottom: number; // mm
  top: number; // mm
  part: number; // number of a part
  assumed: boolean;
}

/** A diameter: plug, core, unit, striker. */
export interface SectionWidth {
  name: string;
  width: number; // mm
  y: number; // height at which it is drawn, mm
  assumed: boolean;
}

/** Lists of the same length. */
export interface Curves {
  time: number[]; // ms
  force: number[]; // N
  compression: number[]; // mm
  timeOfPeak: number; // of greatest compression, ms
  timeOfLoss: number; // of the end of contact, 0: never, ms
}

/** The gas of an air unit. */
export interface Gas {
  part: number; // number of its film
  pressure: number[]; // over the atmosphere, one a time of the curves, kPa
}

/** Where the energy went, at the end and over time. */
export interface Energy {
  input: number; // 100 %, J
  accounted: number; // share 0..1 that the parts add up to
  shares: EnergySlice[];
  time: number[]; // ms
  rows: EnergyRow[];
}

/** What became of a share of the energy. */
export interface EnergySlice {
  name: string;
  kind: "returned" | "part" | "guide" | "left";
  energy: number; // J
  part: number; // number of a part or -1
}

/** Energy over time, to be stacked on the others. */
export interface EnergyRow {
  name: string;
  kind: "weight" | "stored" | "lost";
  part: number; // number of a part or -1
  energy: number[]; // J
}

/** The deforming section. Mesh edges and cells are given once, positions per frame as whole numbers: value = offset + quantum * number. `positions` and the values of each field are little-endian 16-bit integers, frame after frame, differences to the frame before, deflated (zlib) and base64-coded. */
export interface Frames {
  n: number; // number of frames
  time: number[]; // ms
  tup: number[]; // height of the striker's lowest point, mm
  tupOutline: [number, number][]; // right half, relative to the lowest point, mm
  nNodes: number;
  quantum: number; // of positions, mm
  positions: string; // n x nNodes x 2, right half (x >= 0)
  quads: number[]; // 4 corner nodes a drawn cell, flat, counter-clockwise
  quadPart: number[]; // number of a part, one a cell
  outlines: PartOutline[];
  fields: Field[];
}

/** A closed polyline round a part of the right half. */
export interface PartOutline {
  part: number; // number of a part
  nodes: number[];
}

/** One value a drawn cell and frame. */
export interface Field {
  name: "stretch" | "energy_density" | "dissipated_density" | "pressure";
  label: string;
  unit: string;
  low: number; // of the colour scale
  high: number; // of the colour scale
  quantum: number; // in `unit`
  offset: number; // in `unit`
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

/** A chart of readings over what a series varies. */
export interface Series {
  quantity: string; // "drop energy"
  unit: string; // "J"
  values: number[]; // one a run
  groups: string[]; // one a run: runs of one group are joined by a line
  readings: SeriesReading[];
  sentence: string;
}

/** One reading of every run of a series. */
export interface SeriesReading {
  name: string; // machine name
  label: string; // for people
  unit: string; // display unit
  values: number[]; // one a run, in `unit`
}

/** Run `to` against run `from`. */
export interface Comparison {
  from: number; // number of a run of the page
  to: number; // number of a run of the page
  sentence: string;
  sentences: string[]; // what each change does
  differences: Difference[];
  readings: ComparedReading[];
  shares: ShareTable[];
  parts: ComparedPart[];
  impossible: string[]; // mixtures that could not be built or run, with the reason
  runs: string; // how many runs it took, in words
  rule: string; // how mixtures are closed, in words
}

/** One entry that differs between two runs. */
export interface Difference {
  what: string;
  from: string;
  to: string;
}

/** One reading of two runs. */
export interface ComparedReading {
  name: string; // machine name
  label: string; // for people
  unit: string; // display unit
  digits: number; // decimals to print
  from: number; // in `unit`
  to: number; // in `unit`
  band: number; // the difference is good to ± this, in `unit`
  verdict: string; // "higher", "cannot tell", "no difference"
}

/** How much of the difference of one reading each change makes. */
export interface ShareTable {
  reading: string; // machine name
  label: string; // for people
  unit: string; // display unit
  digits: number; // decimals to print
  total: number; // what the shares add up to
  band: number;
  rows: ChangeShare[];
  interactions: Interaction[];
  sentence: string;
}

/** What one change does to a reading, in the unit of its table. */
export interface ChangeShare {
  change: string; // "core -> pressurised unit"
  share: number;
  band: number;
  verdict: string;
}

/** What several changes do together beyond what each does on its own. */
export interface Interaction {
  changes: string[];
  value: number;
  band: number;
}

/** Energy turned into heat or kept by one part. */
export interface ComparedPart {
  name: string;
  from: number; // of the energy put in, %
  to: number; // of the energy put in, %
}

/** A table of ready texts. */
export interface TableBlock {
  heading: string;
  sentence: string;
  columns: string[];
  rows: string[][];
}

/** Charts of one kind of rig. */
export interface LineBlock {
  heading: string;
  sentence: string;
  charts: LineChart[];
}

/** Lines over something other than time. */
export interface LineChart {
  name: string;
  xLabel: string;
  yLabel: string;
  lines: ChartLine[];
  round: boolean; // x and y to one scale, y ahead, x to the outer side
}

/** One line of a chart, in the units of its labels. */
export interface ChartLine {
  name: string;
  x: number[];
  y: number[];
}

/** A change before cutting a shoe: before, after, what to know. */
export interface Trial {
  swaps: string[];
  rows: TrialRow[];
  geometry: GeometryLine[];
  range: Series | null;
  bottoms: string; // where it bottoms, in words
  cautions: string[];
}

/** One reading before and after a change. */
export interface TrialRow {
  name: string;
  now: string;
  then: string;
  note: string;
  verdict: "better" | "worse" | "same" | "unknown" | "fact";
}

/** What a change costs in room: stack height, heel-to-toe drop, counter depth. */
export interface GeometryLine {
  name: string;
  value: string;
  note: string;
}

/** A teaching case: question, guess, answer. */
export interface Lesson {
  question: string;
  choices: string[]; // guesses to choose from before the answer is shown
  answer: number; // index into choices
  explanation: string[];
  guess: number | null; // made at the terminal before the run
}

/** What the page was made from. */
export interface RecordFacts {
  program: string;
  versions: Version[];
  hash: string;
  caseText: string;
  resolvedText: string;
  limits: string[]; // what the model does not represent
}

/** A program or library that took part. */
export interface Version {
  name: string;
  version: string;
}
