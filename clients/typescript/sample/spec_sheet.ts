// The spec sheet of the product, as the service writes it.

import type { Client } from "../src/index.js";
import { found } from "./elements.js";
import { inWords } from "./faults.js";
import { PRODUCT } from "./shelf.js";

/** Puts the sheet into the page; its looks follow the custom properties in style.css. */
export async function specSheet(client: Client): Promise<void> {
  const said = found("sheet-said", HTMLParagraphElement);
  try {
    const fragment = await client.specSheetDrawing({
      part: PRODUCT,
      outline: { strings: 6, widths: { nut: "43 mm", last_fret: "57 mm" }, margins: "3.5 mm" },
      title: "Parlour fingerboard NL-22",
      html: "fragment",
    });
    // A template runs no scripts; the fragment has none, and escapes what it was given.
    const template = document.createElement("template");
    template.innerHTML = fragment;
    found("sheet-host", HTMLDivElement).replaceChildren(template.content);
  } catch (error) {
    said.textContent = inWords(error);
  }
}
