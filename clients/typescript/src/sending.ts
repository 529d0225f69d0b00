// Sending a question over fetch: time limits, and again where that is safe.

import { TimedOutError } from "./errors.js";
import { Attempts } from "./retry.js";
import type { Retry } from "./retry.js";

/** Timers count in 31 bits, and a longer one would go off at once; it is no limit then. [ms] */
const LONGEST_TIMER = 2_147_483_647;

/** How a client sends. */
export interface Sending {
  /** Takes the place of the platform's fetch. */
  readonly fetch: (request: Request) => Promise<Response>;
  /** When to ask again. */
  readonly retry: Retry;
  /** How long to wait for an answer. [ms] */
  readonly timeout: number;
  /** Waits between attempts. [ms] */
  readonly sleep: (time: number, signal?: AbortSignal) => Promise<void>;
}

/** Ends an attempt that takes too long, or that its caller gives up. */
export class Patience {
  readonly #limit: number;
  readonly #given: AbortSignal | undefined;
  readonly #controller = new AbortController();
  readonly #giveUp = (): void => this.#controller.abort(this.#given?.reason);
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(limit: number, given: AbortSignal | undefined) {
    this.#limit = limit;
    this.#given = given;
    given?.throwIfAborted();
    given?.addEventListener("abort", this.#giveUp);
    this.begin();
  }

  /** The signal to hand to fetch. */
  get signal(): AbortSignal {
    return this.#controller.signal;
  }

  /** Counts from now on. */
  begin(): void {
    this.pause();
    const late = (): void => this.#controller.abort(new TimedOutError(`no answer within ${this.#limit} ms`));
    if (this.#limit <= LONGEST_TIMER) {
      this.#timer = setTimeout(late, this.#limit);
    }
  }

  /** Counts no longer, until it begins again. */
  pause(): void {
    clearTimeout(this.#timer);
  }

  /** Counts no longer, and leaves the caller's signal. */
  end(): void {
    this.pause();
    this.#given?.removeEventListener("abort", this.#giveUp);
  }

  /** Hangs up. */
  hangUp(): void {
    this.end();
    this.#controller.abort();
  }

  /** What an attempt failed of: the caller's own reason is thrown as it is. */
  faultOf(fault: unknown): unknown {
    this.#given?.throwIfAborted();
    return this.#controller.signal.reason instanceof TimedOutError ? this.#controller.signal.reason : fault;
  }
}

/**
 * Sends a request until it is answered, and takes the whole answer.
 *
 * Throws a `ProblemError` for a refusal, a `TransportError` where no answer came, and the reason of the request's
 * signal where that was given up.
 */
export async function answerTo(request: Request, sending: Sending): Promise<Response> {
  const attempts = new Attempts(sending.retry);
  for (;;) {
    const outcome = await attempt(request.clone(), sending);
    const wait =
      outcome instanceof Response
        ? await attempts.afterAnswer(outcome, true)
        : attempts.afterFault(outcome.fault, originOf(request), true);
    if (wait === null) {
      return outcome as Response;
    }
    await sending.sleep(wait, request.signal);
  }
}

async function attempt(request: Request, sending: Sending): Promise<Response | { fault: unknown }> {
  const patience = new Patience(sending.timeout, request.signal);
  try {
    const { status, statusText, headers, body } = await sending.fetch(
      new Request(request, { signal: patience.signal }),
    );
    // Taken here, so that a line that breaks in the middle of an answer is a fault like any other.
    const whole = body === null ? null : await new Response(body).arrayBuffer();
    return new Response(whole, { status, statusText, headers });
  } catch (fault) {
    return { fault: patience.faultOf(fault) };
  } finally {
    patience.end();
  }
}

/** Scheme and host that a request goes to, for messages. */
export function originOf(request: Request): string {
  return new URL(request.url).origin;
}

/** Waits, unless the signal gives up before. */
export async function sleep(time: number, signal?: AbortSignal): Promise<void> {
  signal?.throwIfAborted();
  await new Promise<void>((done, failed) => {
    const giveUp = (): void => {
      clearTimeout(timer);
      failed(signal?.reason as unknown);
    };
    const timer = setTimeout(() => {
      signal?.removeEventListener("abort", giveUp);
      done();
    }, time);
    signal?.addEventListener("abort", giveUp, { once: true });
  });
}
