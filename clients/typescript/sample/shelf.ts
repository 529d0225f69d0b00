// What the invented shop has on its shelf.

import type { AssemblyQuestion, FingerboardQuestion, Part } from "../src/index.js";

/** The part that the page sells. */
export const PRODUCT: Part = {
  id: "NL-22",
  kind: "board",
  layout_scale: "24 3/4 in",
  rule: "eighteenth",
  frets: 20,
  label: "24 3/4 in",
};

/** How the boards of this shop are shaped. */
export const SHAPE: Pick<FingerboardQuestion, "strings" | "widths" | "margins"> = {
  strings: { count: 6 },
  widths: { nut: "43 mm", last_fret: "57 mm" },
  margins: "3.5 mm",
};

/** A part as the shop describes it. */
export interface OnTheShelf {
  readonly name: string;
  readonly part: AssemblyQuestion["parts"][number];
}

/** Boards to compare with something. */
export const BOARDS: readonly OnTheShelf[] = [
  { name: "Parlour fingerboard NL-22", part: PRODUCT },
  {
    name: "Fingerboard NL-30, equal steps",
    part: { id: "NL-30", kind: "board", layout_scale: "24 3/4 in", rule: "equal", frets: 20, label: "24 3/4 in" },
  },
];

/** What goes with a board. */
export const COMPANIONS: readonly OnTheShelf[] = [
  {
    name: "Bridge NL-B1, placed for 24 3/4 in",
    part: { id: "NL-B1", kind: "bridge", true_scale: "24 3/4 in", label: "24 3/4 in" },
  },
  { name: "Bridge NL-B2, placed for 624 mm", part: { id: "NL-B2", kind: "bridge", true_scale: "624 mm" } },
  {
    name: "Saddle template NL-T1, 628.7 mm",
    part: { id: "NL-T1", kind: "saddle_template", true_scale: "628.7 mm" },
  },
];

/** The visitor's own board, of which one distance was read with a steel rule. */
export function ownBoard(twelfth: string): OnTheShelf["part"] {
  return {
    id: "Your board",
    kind: "board",
    readings: { instrument_uncertainty: "0.25 mm", frets: [12], from_nut: [twelfth] },
  };
}
