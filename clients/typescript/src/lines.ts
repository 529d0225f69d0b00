// Batches coming in: lines of JSON to answers, and none of them lost.

import type { BatchId } from "./contract.js";
import { TruncatedError, UnexpectedAnswerError } from "./errors.js";
import type { ProblemError } from "./errors.js";
import { mediaTypeOf, problemFrom, requestIdOf } from "./problems.js";

/** Media type of lines of JSON. */
export const JSON_LINES = "application/jsonl";

const MEDIA_TYPES = [JSON_LINES, "application/x-ndjson"];

/** No answer is as long; what is has lost its line feeds. [characters] */
const LONGEST_LINE = 16_777_216;

/** The answer to one question of a batch. */
export interface BatchResult<Result> {
  readonly kind: "result";
  /** Place of the question in the batch, counted from 0. */
  readonly index: number;
  /** The caller's own, as it was given; null where there was none. */
  readonly id: BatchId | null;
  /** The answer. */
  readonly result: Result;
}

/** Why one question of a batch has no answer; the others have theirs. */
export interface BatchProblem {
  readonly kind: "problem";
  /** Place of the question in the batch, counted from 0. */
  readonly index: number;
  /** The caller's own, as it was given; null where there was none or it could not be read. */
  readonly id: BatchId | null;
  /** What the same question alone would have thrown. */
  readonly error: ProblemError;
}

/** What the last line of a batch says. */
export interface BatchSummary {
  /** Questions that were answered. */
  readonly results: number;
  /** Questions that were refused. */
  readonly problems: number;
  /** Whether all questions were looked at; there is a limit on how many one batch may have. */
  readonly complete: boolean;
  /** How many answers have which verdict, of batches that are counted so. */
  readonly verdicts: Readonly<Record<string, number>>;
}

/** What a batch says of one question. */
export type Outcome<Result> = BatchResult<Result> | BatchProblem;

/** Cuts the pieces of a body into lines; only a line feed ends one, as JSON may hold any other separator. */
class LineCutter {
  readonly #decoder = new TextDecoder();
  #open = "";

  feed(piece: Uint8Array): string[] {
    const lines = (this.#open + this.#decoder.decode(piece, { stream: true })).split("\n");
    this.#open = lines.pop() ?? "";
    if (this.#open.length > LONGEST_LINE) {
      throw new RangeError("a line of the answer does not end");
    }
    return lines.filter((line) => line !== "");
  }
}

/** Reads the lines of an answer and holds them against the promises: none is lost, and there is an end. */
export class LineReader<Result> {
  readonly #path: string;
  readonly #cutter = new LineCutter();
  readonly #facts: { status: number; requestId: string | null };
  /** What the last line says; null until it was read. */
  summary: BatchSummary | null = null;
  /** Questions whose answers were read. */
  read = 0;

  /** Looks at the head of an answer; throws an `UnexpectedAnswerError` where it is not made of lines of JSON. */
  constructor(path: string, response: Response) {
    this.#path = path;
    this.#facts = { status: response.status, requestId: requestIdOf(response) };
    if (!response.ok || !MEDIA_TYPES.includes(mediaTypeOf(response))) {
      throw this.#unexpected("the answer is no lines of JSON; check the base address");
    }
  }

  /** Takes a piece of the body, and gives what the lines that it completes say, in the order of the questions. */
  *feed(piece: Uint8Array): Generator<Outcome<Result>, void, undefined> {
    for (const line of this.#linesOf(piece)) {
      const outcome = this.#outcome(line);
      if (outcome !== null) {
        yield outcome;
      }
    }
  }

  /** Looks back when the body has ended; throws a `TruncatedError` where it is not whole. */
  finish(): void {
    if (this.summary === null) {
      throw this.truncated("the answer ended before its end line");
    }
    if (!this.summary.complete) {
      throw this.truncated("the batch has more questions than the service takes at once");
    }
    if (this.summary.results + this.summary.problems !== this.read) {
      throw this.truncated("lines of the answer were lost");
    }
  }

  /** The error for an answer that is not whole. */
  truncated(why: string, cause?: unknown): TruncatedError {
    const facts = { received: this.read, requestId: this.#facts.requestId };
    return new TruncatedError(`${this.#path}: ${why}; ${this.read} lines came`, facts, { cause });
  }

  #linesOf(piece: Uint8Array): string[] {
    try {
      return this.#cutter.feed(piece);
    } catch (error) {
      throw this.#unexpected((error as RangeError).message);
    }
  }

  #outcome(line: string): Outcome<Result> | null {
    const { kind, index, id = null, ...members } = this.#membersOf(line);
    if (kind === "end") {
      this.summary = { verdicts: {}, ...members } as unknown as BatchSummary;
      return null;
    }
    if (kind !== "result" && kind !== "problem") {
      // What a newer service adds for the eye is not for us.
      return null;
    }
    if (index !== this.read) {
      throw this.#unexpected(`expected the answer to question ${this.read}, and not to ${JSON.stringify(index)}`);
    }
    this.read += 1;
    const told = { index, id: id as BatchId | null };
    if (kind === "result") {
      return { kind, ...told, result: members as Result };
    }
    const status = typeof members["status"] === "number" ? members["status"] : 422;
    return { kind, ...told, error: problemFrom(members, status, { requestId: this.#facts.requestId }) };
  }

  #membersOf(line: string): Record<string, unknown> {
    let members: unknown;
    try {
      members = JSON.parse(line);
    } catch {
      members = null;
    }
    if (typeof members !== "object" || members === null || !("kind" in members)) {
      throw this.#unexpected(`line ${this.read} of the answer is no object with a kind`);
    }
    return members as Record<string, unknown>;
  }

  #unexpected(why: string): UnexpectedAnswerError {
    return new UnexpectedAnswerError(`${this.#path}: ${why}`, this.#facts);
  }
}
