// Two parts, and whether they belong together.

import type { Assembly, Client } from "../src/index.js";
import { found, made, onSubmit } from "./elements.js";
import { clearFaults, showFaults } from "./faults.js";
import { BOARDS, COMPANIONS, ownBoard } from "./shelf.js";
import type { OnTheShelf } from "./shelf.js";

const OWN = "own";

const IN_WORDS: Record<Assembly["decision"], string> = {
  together: "They belong together.",
  apart: "They do not belong together.",
  undecided: "That can't be told yet.",
};

/** Brings the form for two parts to life. */
export function compareForm(client: Client): void {
  const form = found("compare-form", HTMLFormElement);
  const first = found("first", HTMLSelectElement);
  const second = found("second", HTMLSelectElement);
  const own = found("own", HTMLDivElement);
  const place = found("compare-found", HTMLDivElement);

  first.append(...BOARDS.map(option), made("option", { value: OWN }, "Your own board"));
  second.append(...COMPANIONS.map(option), ...BOARDS.map((board, index) => option(board, COMPANIONS.length + index)));
  first.addEventListener("change", () => {
    own.hidden = first.value !== OWN;
  });

  onSubmit(form, async (given, signal) => {
    clearFaults(form);
    place.removeAttribute("data-decision");
    place.replaceChildren("Asking …");
    const one = given.get("first") === OWN ? ownBoard(String(given.get("twelfth"))) : BOARDS[first.selectedIndex]?.part;
    const other = [...COMPANIONS, ...BOARDS][second.selectedIndex]?.part;
    try {
      const assembly = await client.assembly({ parts: [one, other].filter((part) => part !== undefined) }, { signal });
      place.dataset["decision"] = assembly.decision;
      place.replaceChildren(...told(assembly));
    } catch (error) {
      signal.throwIfAborted();
      place.replaceChildren();
      showFaults(form, error);
    }
  });
}

function option({ name }: OnTheShelf, index: number): HTMLOptionElement {
  return made("option", { value: String(index) }, name);
}

/** The decision, why, and what to mind. */
function told({ decision, statement, explanations, pairs, notes }: Assembly): HTMLElement[] {
  const measure = pairs.flatMap(({ deciding }) => (deciding == null ? [] : [deciding.text]));
  const more = [...explanations, ...measure, ...notes.map((note) => note.text)];
  return [
    made("p", { class: "decision" }, IN_WORDS[decision]),
    made("p", {}, statement),
    ...(more.length === 0 ? [] : [made("ul", {}, ...more.map((text) => made("li", {}, text)))]),
  ];
}
