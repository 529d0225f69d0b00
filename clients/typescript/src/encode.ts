// Questions as JSON.

import type { Rule, RuleLike } from "./contract.js";

/** Writes a question; throws a `RangeError` for a number that is not finite, which JSON would make a null of. */
export function encode(question: unknown): string {
  return JSON.stringify(question, (name, value: unknown) => {
    if (typeof value === "number" && !Number.isFinite(value)) {
      throw new RangeError(`${name} is not finite; leave out what was not measured`);
    }
    return value;
  });
}

/** Turns an answered rule into one to ask with: of its numbers only those that define it. */
export function ruleToAsk(rule: Rule): RuleLike {
  const { name, divisor, steps, cents, repeat } = rule;
  switch (name) {
    case "eighteenth":
      return name;
    case "equal":
      return { name, ...(steps == null ? {} : { steps }) };
    case "divisor":
      return { name, divisor: divisor ?? NaN };
    case "listed":
      return { name, cents: cents ?? [], ...(repeat == null ? {} : { repeat }) };
  }
}
