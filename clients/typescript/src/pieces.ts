// Batches going out: many questions as lines of JSON.

import { encode } from "./encode.js";

/** Questions, all there or still to come. */
export type Questions<Asked> = Iterable<Asked> | AsyncIterable<Asked>;

/** Lines are sent together up to so many characters: a packet for each would be slow. */
const PIECE = 65_536;

/** Whether questions can be put again; those of a generator are gone once they are taken. */
export function repeatable(questions: Questions<unknown>): boolean {
  return !("next" in questions);
}

/** Pieces of a body, made as they are sent. */
export async function* piecesOf(questions: Questions<{ id?: unknown }>): AsyncGenerator<Uint8Array, void, undefined> {
  const encoder = new TextEncoder();
  let lines = "";
  let index = 0;
  for await (const question of questions) {
    lines += `${lineOf(question, index)}\n`;
    index += 1;
    if (lines.length >= PIECE) {
      yield encoder.encode(lines);
      lines = "";
    }
  }
  yield encoder.encode(lines);
}

/** A body that is made while it is sent. */
export function streamOf(pieces: AsyncGenerator<Uint8Array, void, undefined>): ReadableStream<Uint8Array> {
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        const { done, value } = await pieces.next();
        if (done) {
          controller.close();
        } else {
          controller.enqueue(value);
        }
      },
      async cancel() {
        await pieces.return();
      },
    },
    { highWaterMark: 0 },
  );
}

/** A body that is made before it is sent, for platforms that cannot do otherwise. */
export async function blobOf(pieces: AsyncIterable<Uint8Array>): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  for await (const piece of pieces) {
    parts.push(new Uint8Array(piece));
  }
  return new Blob(parts);
}

/**
 * Whether fetch sends a body while it is made. Node does; browsers do over HTTP/2 at most, and some not at all,
 * so there a batch is made first.
 */
export function sendsStreams(): boolean {
  const { process } = globalThis as { process?: { versions?: { node?: string } } };
  return process?.versions?.node !== undefined;
}

function lineOf(question: { id?: unknown }, index: number): string {
  try {
    return encode(question);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new RangeError(`question ${index} of the batch, id ${JSON.stringify(question.id)}: ${why}`, { cause: error });
  }
}
