// Answers to a batch, as they arrive.

import { JSON_LINES, LineReader } from "./lines.js";
import type { BatchSummary, Outcome } from "./lines.js";
import { blobOf, piecesOf, repeatable, sendsStreams, streamOf } from "./pieces.js";
import type { Questions } from "./pieces.js";
import { Attempts } from "./retry.js";
import { Patience } from "./sending.js";
import type { Sending } from "./sending.js";

/** One batch, ready to be sent. */
export interface BatchCall {
  /** Path below the base address. */
  readonly path: string;
  /** The whole address. */
  readonly url: string;
  /** Headers beside those of the lines. */
  readonly headers: Readonly<Record<string, string>>;
  /** The questions. */
  readonly questions: Questions<{ id?: unknown }>;
  /** Given up by the caller. */
  readonly signal: AbortSignal | undefined;
}

/** What a line failed of. */
interface Broken {
  readonly fault: unknown;
}

/**
 * Answers to a batch, one for each question and in their order, as they arrive; for `for await`.
 *
 * The questions are sent when the first answer is asked for. Iterate to the end: an answer that broke off throws a
 * `TruncatedError` there. Who stops early hangs up.
 */
export class Batch<Result> implements AsyncIterableIterator<Outcome<Result>> {
  readonly #call: BatchCall;
  readonly #sending: Sending;
  readonly #outcomes: AsyncGenerator<Outcome<Result>, void, undefined>;
  #begun = false;
  #failure: { error: unknown } | null = null;
  #reader: LineReader<Result> | null = null;

  constructor(call: BatchCall, sending: Sending) {
    this.#call = call;
    this.#sending = sending;
    this.#outcomes = this.#answers();
  }

  /** What the last line of the answer says; null until it was read. */
  get summary(): BatchSummary | null {
    return this.#reader?.summary ?? null;
  }

  [Symbol.asyncIterator](): this {
    return this;
  }

  /** Waits for the next answer. */
  async next(): Promise<IteratorResult<Outcome<Result>, void>> {
    return await this.#outcomes.next();
  }

  /** Stops, and hangs up if the answer is not all there. */
  async return(): Promise<IteratorResult<Outcome<Result>, void>> {
    return await this.#outcomes.return();
  }

  async *#answers(): AsyncGenerator<Outcome<Result>, void, undefined> {
    const attempts = new Attempts(this.#sending.retry);
    for (;;) {
      const patience = new Patience(this.#sending.timeout, this.#call.signal);
      let wait: number | null;
      try {
        const response = await this.#response(patience);
        wait = "fault" in response ? null : await attempts.afterAnswer(response, this.#repeatable);
        const ended = "fault" in response || wait !== null ? response : yield* this.#read(response, patience);
        if (ended === null) {
          return;
        }
        wait ??= attempts.afterFault((ended as Broken).fault, new URL(this.#call.url).origin, this.#repeatable);
      } finally {
        patience.hangUp();
      }
      await this.#sending.sleep(wait, this.#call.signal);
    }
  }

  get #repeatable(): boolean {
    return !this.#begun || repeatable(this.#call.questions);
  }

  async #response(patience: Patience): Promise<Response | Broken> {
    const { url, headers, questions } = this.#call;
    const pieces = this.#watched(piecesOf(questions), patience);
    const body = sendsStreams() ? streamOf(pieces) : await blobOf(pieces);
    const init = {
      method: "POST",
      headers: { ...headers, Accept: JSON_LINES, "Content-Type": JSON_LINES },
      body,
      signal: patience.signal,
      duplex: "half",
    };
    try {
      return await this.#sending.fetch(new Request(url, init));
    } catch (fault) {
      return this.#broken(fault, patience);
    }
  }

  /** Takes the pieces of the body: each begins the wait anew, and what they fail of is kept. */
  async *#watched(pieces: AsyncIterable<Uint8Array>, patience: Patience): AsyncGenerator<Uint8Array, void, undefined> {
    this.#begun = true;
    try {
      for await (const piece of pieces) {
        if (patience.signal.aborted) {
          // Node goes on taking pieces where a connection has failed.
          return;
        }
        patience.begin();
        yield piece;
      }
    } catch (error) {
      this.#failure = { error };
      throw error;
    }
  }

  /** Reads the answer; null where it was whole. */
  async *#read(response: Response, patience: Patience): AsyncGenerator<Outcome<Result>, Broken | null, undefined> {
    const reader = new LineReader<Result>(this.#call.path, response);
    this.#reader = reader;
    const body = response.body?.getReader();
    for (;;) {
      let piece: Uint8Array | undefined;
      try {
        patience.begin();
        piece = (await body?.read())?.value;
      } catch (fault) {
        const broken = this.#broken(fault, patience);
        if (reader.summary !== null) {
          break;
        }
        if (reader.read > 0) {
          throw reader.truncated("the connection broke", broken.fault);
        }
        return broken;
      }
      // How long the reader takes over an answer is the reader's own affair.
      patience.pause();
      if (piece === undefined) {
        break;
      }
      yield* reader.feed(piece);
    }
    reader.finish();
    return null;
  }

  /** What the line failed of; the failure of the questions themselves is thrown. */
  #broken(fault: unknown, patience: Patience): Broken {
    if (this.#failure !== null) {
      throw this.#failure.error;
    }
    return { fault: patience.faultOf(fault) };
  }
}
