// How a client works, and how one call differs.

import type { LabelSheets } from "./contract.js";
import type { Retry } from "./retry.js";

/** How a client works; times are milliseconds. */
export interface ClientOptions {
  /** Sent as `X-API-Key`. A page shows its key to everyone: give it one that may do little. */
  readonly apiKey?: string;
  /** Sent as `Accept-Language`: what labels and sheets are written in, "de" or "fr, en;q=0.5". */
  readonly language?: string;
  /** For the whole of an answer; in a batch for each wait. 10,000 unless given, Infinity for no limit. [ms] */
  readonly timeout?: number;
  /** When to ask again. */
  readonly retry?: Partial<Retry>;
  /** Takes the place of the platform's fetch, for tests. */
  readonly fetch?: (request: Request) => Promise<Response>;
  /** Waits between attempts. [ms] */
  readonly sleep?: (time: number, signal?: AbortSignal) => Promise<void>;
}

/** How one call differs. */
export interface CallOptions {
  /** Gives the call up; its reason is thrown. */
  readonly signal?: AbortSignal;
  /** Instead of the client's own. [ms] */
  readonly timeout?: number;
}

/** How a call for a file differs. */
export interface DrawingOptions<M extends string> extends CallOptions {
  /** Media type of the file. */
  readonly media?: M;
}

/** How a call for labels on sheets differs. */
export interface LabelSheetsOptions extends CallOptions {
  /** Size of all labels, paper, the first label's place, gaps and edges, and what becomes of bad lines. */
  readonly sheets?: LabelSheets;
}
