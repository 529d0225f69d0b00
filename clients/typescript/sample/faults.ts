// Refusals, shown where they can be mended: beside the field that each points at.

import { ProblemError, TransportError } from "../src/index.js";
import type { Fault } from "../src/index.js";

type Field = HTMLInputElement | HTMLSelectElement;

/** Takes back what an earlier refusal has left. */
export function clearFaults(form: HTMLFormElement): void {
  for (const field of fieldsOf(form)) {
    field.removeAttribute("aria-invalid");
  }
  for (const place of form.querySelectorAll(".fault")) {
    place.textContent = "";
  }
}

/** Shows what went wrong, and goes to the first field that has to change. */
export function showFaults(form: HTMLFormElement, error: unknown): void {
  const placed = new Set<Field>();
  const general: string[] = [];
  for (const fault of error instanceof ProblemError ? error.errors : []) {
    const field = fieldOf(form, fault.pointer);
    const place = field?.parentElement?.querySelector(".fault");
    if (field == null || place == null) {
      general.push(mending(fault));
    } else {
      field.setAttribute("aria-invalid", "true");
      place.append(placed.has(field) ? " " : "", mending(fault));
      placed.add(field);
    }
  }
  if (placed.size === 0 && general.length === 0) {
    general.push(inWords(error));
  }
  const place = form.querySelector(".fault.general");
  if (place !== null) {
    place.textContent = general.join(" ");
  }
  [...placed].at(0)?.focus();
}

/** What a visitor is told where nothing on the form is to be changed. */
export function inWords(error: unknown): string {
  if (error instanceof TransportError) {
    return "Our scale service does not answer. Please try again in a minute.";
  }
  if (error instanceof ProblemError) {
    return error.detail ?? error.title;
  }
  throw error;
}

/** What is wrong, and what would work. */
function mending({ detail, example }: Fault): string {
  return example === undefined || example === null ? detail : `${detail} For example: ${String(example)}`;
}

/** The field that a pointer means: its own, or that of what it lies in. */
function fieldOf(form: HTMLFormElement, pointer: string): Field | undefined {
  const around = fieldsOf(form).filter((field) => {
    const own = field.dataset["pointer"] ?? "";
    return field.closest("[hidden]") === null && (pointer === own || pointer.startsWith(`${own}/`));
  });
  return around.sort((one, other) => length(other) - length(one)).at(0);
}

function length(field: Field): number {
  return field.dataset["pointer"]?.length ?? 0;
}

function fieldsOf(form: HTMLFormElement): Field[] {
  return [...form.querySelectorAll<Field>("[data-pointer]")];
}
