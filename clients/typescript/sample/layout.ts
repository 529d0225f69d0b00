// Pick a scale, see the frets.

import type { Client, Fret, Layout, LayoutQuestion, Unit } from "../src/index.js";
import { found, made, onSubmit } from "./elements.js";
import { clearFaults, inWords, showFaults } from "./faults.js";
import { SHAPE } from "./shelf.js";

/** Figures after the point that a shop can use. */
const DIGITS: Record<Unit, number> = { mm: 2, in: 3 };

/** Brings the form for scales to life, and shows what it says at first. */
export function layoutForm(client: Client): void {
  const form = found("layout-form", HTMLFormElement);
  const said = found("layout-said", HTMLParagraphElement);
  const place = found("layout-found", HTMLDivElement);

  onSubmit(form, async (given, signal) => {
    clearFaults(form);
    said.textContent = "Asking …";
    const question = questionOf(given);
    try {
      const layout = await client.layout(question, { signal });
      said.textContent = summary(layout);
      found("table", HTMLElement).replaceChildren(table(layout));
      found("drawing", HTMLElement).replaceChildren(await drawing(client, question, layout, signal));
      place.hidden = false;
    } catch (error) {
      signal.throwIfAborted();
      said.textContent = "";
      place.hidden = true;
      showFaults(form, error);
    }
  });
  form.requestSubmit();
}

function questionOf(given: FormData): LayoutQuestion {
  return {
    scale: String(given.get("scale")),
    rule: given.get("rule") === "equal" ? "equal" : "eighteenth",
    frets: Number(given.get("frets")),
    unit: given.get("unit") === "in" ? "in" : "mm",
    scale_basis: given.get("scale_basis") === "true" ? "true" : "layout",
  };
}

/** The sentence that matters: the true scale, and where fret 12 is. */
function summary({ unit, layout_scale, true_scale, frets }: Layout): string {
  const text = (length: number): string => `${length.toFixed(DIGITS[unit])} ${unit}`;
  const twelfth = frets.find((fret) => fret.fret === 12);
  const sentences = [
    `The true scale is ${text(true_scale ?? layout_scale)}.`,
    ...(twelfth === undefined ? [] : [`Fret 12 stands ${text(twelfth.from_nut)} from the nut.`]),
  ];
  const shorter = layout_scale - (true_scale ?? layout_scale);
  if (Math.abs(shorter) > 0.001) {
    sentences.push(
      `The rule was applied to ${text(layout_scale)}: a bridge placed there would be ${text(shorter)} too far.`,
    );
  }
  return sentences.join(" ");
}

function table({ unit, frets }: Layout): HTMLTableElement {
  const text = (length: number): string => length.toFixed(DIGITS[unit]);
  const head = ["Fret", "From the nut", "From the one before", "To the true end"];
  const row = ({ fret, from_nut, from_previous, to_true_end }: Fret): HTMLTableRowElement =>
    made(
      "tr",
      {},
      made("th", { scope: "row" }, String(fret)),
      ...[from_nut, from_previous, to_true_end].map((length) => made("td", {}, length == null ? "–" : text(length))),
    );
  return made(
    "table",
    {},
    made("caption", {}, `Where the frets go, in ${unit === "in" ? "inches" : unit}`),
    made("thead", {}, made("tr", {}, ...head.map((name) => made("th", { scope: "col" }, name)))),
    made("tbody", {}, ...frets.map(row)),
  );
}

/** The board as an image; where there is no board of such measures, why. */
async function drawing(
  client: Client,
  { scale, rule, frets, unit, scale_basis }: LayoutQuestion,
  layout: Layout,
  signal: AbortSignal,
): Promise<HTMLElement> {
  const board = { scale, rule, frets, ...SHAPE, ...(unit && { unit }), ...(scale_basis && { scale_basis }) };
  try {
    const svg = await client.fingerboardDrawing(board, { signal });
    const source = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    const image = made("img", { src: source, alt: `The board from above, with ${layout.frets.length} frets.` });
    image.addEventListener("load", () => URL.revokeObjectURL(source));
    return image;
  } catch (error) {
    signal.throwIfAborted();
    return made("p", {}, `There is no drawing of it. ${inWords(error)}`);
  }
}
