// When to ask again, and after how long.

import { ConnectionFaultError, TimedOutError } from "./errors.js";
import { problemOf, retryAfterOf } from "./problems.js";

/** Statuses that say "not now" rather than "not so". */
const TRANSIENT = new Set([429, 502, 503, 504]);

/**
 * How often to ask again. Every operation is a pure calculation, so each may be repeated.
 *
 * Asked again is after a fault of the connection and after 429, 502, 503 and 504; never after another refusal
 * and never after a time-out: a service that is slow would only become slower.
 */
export interface Retry {
  /** How often to ask in all; 1 asks once. 3 unless given. */
  readonly attempts: number;
  /** Wait before the second attempt, doubled before each further one. 200 unless given. [ms] */
  readonly firstWait: number;
  /** No wait is longer; where the service's Retry-After is, the client gives up at once. 10,000 unless given. [ms] */
  readonly longestWait: number;
  /** Draws 0 to 1; between half of each wait and all of it is kept, so that clients do not march in step. */
  readonly jitter: () => number;
}

/** Completes a policy, and refuses one that could never ask, or wait less than no time. */
export function retryFrom(given: Partial<Retry>): Retry {
  const retry = { attempts: 3, firstWait: 200, longestWait: 10_000, jitter: Math.random, ...given };
  if (!(retry.attempts >= 1)) {
    throw new RangeError(`attempts must be 1 or more, not ${retry.attempts}`);
  }
  if (!(retry.firstWait >= 0 && retry.firstWait <= retry.longestWait)) {
    throw new RangeError("waits must not be negative, nor firstWait longer than longestWait");
  }
  return retry;
}

/** The attempts of one call: told what happened, it says how long to wait or throws. */
export class Attempts {
  readonly #policy: Retry;
  #made = 0;

  constructor(policy: Retry) {
    this.#policy = policy;
  }

  /**
   * Judges an answer: how long to wait before asking again [ms], or null where this is the answer.
   *
   * Throws a `ProblemError` where the service refused and asking again would not help.
   */
  async afterAnswer(response: Response, repeatable: boolean): Promise<number | null> {
    if (response.status < 400) {
      return null;
    }
    const wait = repeatable && TRANSIENT.has(response.status) ? this.#nextWait() : null;
    const asked = retryAfterOf(response);
    if (wait === null || (asked !== null && asked > this.#policy.longestWait)) {
      throw await problemOf(response);
    }
    await response.body?.cancel();
    return Math.max(wait, asked ?? 0);
  }

  /** Judges a fault of the line: how long to wait before asking again [ms]; throws where that has not helped. */
  afterFault(fault: unknown, where: string, repeatable: boolean): number {
    const wait = repeatable && !(fault instanceof TimedOutError) ? this.#nextWait() : null;
    if (wait === null) {
      throw fault instanceof TimedOutError
        ? fault
        : new ConnectionFaultError(`no answer from ${where} (${reasonOf(fault)})`, { cause: fault });
    }
    return wait;
  }

  #nextWait(): number | null {
    this.#made += 1;
    const { attempts, firstWait, longestWait, jitter } = this.#policy;
    if (this.#made >= attempts) {
      return null;
    }
    return Math.min(firstWait * 2 ** (this.#made - 1), longestWait) * (0.5 + 0.5 * jitter());
  }
}

/** Why a fetch failed: Node says so in the cause, browsers do not say. */
function reasonOf(fault: unknown): string {
  const cause = fault instanceof Error ? fault.cause : undefined;
  return cause instanceof Error && cause.message
    ? cause.message
    : String((fault as Error | undefined)?.message ?? fault);
}
