// A double of the service: answers from a script, and remembers what it was asked.

import { Client } from "../src/index.js";
import type { ClientOptions } from "../src/index.js";

export const ADDRESS = "http://scalewright.test";

/** Waits 500 ms, then 1000 ms: no chance in it. */
const STEADY = { attempts: 3, firstWait: 500, longestWait: 8000, jitter: (): number => 1 };

/** What comes of one request: an answer, or a fault of the line. */
export type Scripted = Response | Error | ((request: Request) => Response);

/** Answers one scripted answer after another. */
export class Double {
  readonly #script: Scripted[];
  readonly requests: Request[] = [];
  readonly bodies: string[] = [];
  readonly waits: number[] = [];

  constructor(...script: Scripted[]) {
    this.#script = script;
  }

  client(options: ClientOptions = {}, address: string = ADDRESS): Client {
    return new Client(address, {
      retry: STEADY,
      fetch: async (request) => await this.#answer(request),
      sleep: async (time) => {
        this.waits.push(time);
      },
      ...options,
    });
  }

  async #answer(request: Request): Promise<Response> {
    this.requests.push(request);
    this.bodies.push(await request.text());
    const next = this.#script.shift();
    if (next === undefined) {
      throw new Error("the script has ended");
    }
    if (next instanceof Error) {
      throw next;
    }
    return typeof next === "function" ? next(request) : next;
  }
}

/** An answer in JSON. */
export function json(body: unknown, status = 200, headers: Record<string, string> = {}): Response {
  const media = status < 400 ? "application/json" : "application/problem+json";
  return new Response(JSON.stringify(body), { status, headers: { "Content-Type": media, ...headers } });
}

/** An answer of lines, in pieces as they are given; it breaks off where a piece is an error. */
export function lines(...pieces: (string | Error)[]): Response {
  const encoder = new TextEncoder();
  const rest = [...pieces];
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      const piece = rest.shift();
      if (piece === undefined) {
        controller.close();
      } else if (typeof piece === "string") {
        controller.enqueue(encoder.encode(piece));
      } else {
        controller.error(piece);
      }
    },
  });
  return new Response(body, { headers: { "Content-Type": "application/jsonl", "X-Request-ID": "r-9" } });
}

/** What a fetch throws where the line fails. */
export function fault(): Error {
  return new TypeError("fetch failed", { cause: new Error("connection refused") });
}

/**
 * The answer to a board of no frets: what a test that is not about frets needs.
 *
 * 24.75 in by the rule of 18: true scale 2 (1 - (17/18)^12) times as long, worked out by hand.
 */
export const LAYOUT = {
  unit: "in",
  rule: { name: "eighteenth", divisor: 18 },
  layout_scale: 24.75,
  true_scale: 24.570004837421855,
  octave_fret: 12,
  frets: [],
  notes: [],
} as const;

/** Any question that will do. */
export const QUESTION = { scale: "24 3/4 in", rule: "eighteenth", frets: 22, unit: "in" } as const;
