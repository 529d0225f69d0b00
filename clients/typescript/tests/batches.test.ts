// Many questions: lines out, lines in, and none of them lost.

import assert from "node:assert/strict";
import { test } from "node:test";

import * as sc from "../src/index.js";
import { Double, fault, json, LAYOUT, lines, QUESTION } from "./double.js";

const RESULT = `{"kind":"result","index":0,"id":"A",${JSON.stringify(LAYOUT).slice(1)}\n`;
const REFUSAL = { type: "/problems/unreadable-length", status: 422, title: "Unreadable", errors: [] };
const PROBLEM = `{"kind":"problem","index":1,"id":7,${JSON.stringify(REFUSAL).slice(1)}\n`;
const END = '{"kind":"end","results":1,"problems":1,"complete":true}\n';

/** All that a batch gives. */
async function all<Result>(batch: sc.Batch<Result>): Promise<sc.Outcome<Result>[]> {
  const outcomes: sc.Outcome<Result>[] = [];
  for await (const outcome of batch) {
    outcomes.push(outcome);
  }
  return outcomes;
}

async function* generated(...questions: sc.LayoutQuestion[]): AsyncGenerator<sc.LayoutQuestion> {
  yield* questions;
}

test("Each question has its answer, wherever the pieces are cut", async () => {
  const text = RESULT + PROBLEM + '{"kind":"news","from":"a newer service"}\n' + END;
  for (const cut of [1, 17, RESULT.length, RESULT.length + 1, text.length]) {
    const double = new Double(lines(text.slice(0, cut), text.slice(cut)));
    const batch = double.client().layoutBatch([
      { ...QUESTION, id: "A" },
      { ...QUESTION, scale: "x", id: 7 },
    ]);

    const [result, problem, ...rest] = await all(batch);

    assert.deepEqual(result, { kind: "result", index: 0, id: "A", result: LAYOUT });
    assert.ok(problem?.kind === "problem" && problem.error instanceof sc.UnreadableLengthError);
    assert.deepEqual([problem.index, problem.id, problem.error.requestId], [1, 7, "r-9"]);
    assert.deepEqual(rest, []);
    assert.deepEqual(batch.summary, { results: 1, problems: 1, complete: true, verdicts: {} });
    assert.deepEqual(
      double.bodies[0]
        ?.trimEnd()
        .split("\n")
        .map((line) => (JSON.parse(line) as { id: unknown }).id),
      ["A", 7],
    );
    assert.equal(double.requests[0]?.headers.get("Content-Type"), "application/jsonl");
  }
});

test("Nothing is sent before the first answer is asked for", () => {
  const double = new Double();

  const batch = double.client().layoutBatch([QUESTION]);

  assert.equal(batch.summary, null);
  assert.equal(double.requests.length, 0);
});

for (const [name, pieces, received, why] of [
  ["ends before its end line", [RESULT], 1, /ended before its end line/],
  ["breaks", [RESULT, fault()], 1, /the connection broke/],
  ["has lost a line", [RESULT, END], 1, /lines of the answer were lost/],
  ["is of too many questions", ['{"kind":"end","results":0,"problems":0,"complete":false}\n'], 0, /more questions/],
] as const) {
  test(`An answer that ${name} is truncated, after the answers that came`, async () => {
    const batch = new Double(lines(...pieces)).client().layoutBatch([QUESTION, QUESTION]);
    const outcomes: unknown[] = [];

    await assert.rejects(
      async () => {
        for await (const outcome of batch) {
          outcomes.push(outcome);
        }
      },
      (error: sc.TruncatedError) => {
        assert.ok(error instanceof sc.TruncatedError);
        assert.match(error.message, why);
        assert.deepEqual([error.received, error.requestId], [received, "r-9"]);
        return true;
      },
    );
    assert.equal(outcomes.length, received);
  });
}

test("A line that breaks after the end line has lost nothing", async () => {
  const outcomes = await all(
    new Double(lines(RESULT, PROBLEM, END, fault())).client().layoutBatch([QUESTION, QUESTION]),
  );

  assert.equal(outcomes.length, 2);
});

for (const [name, answer] of [
  ["is of another media type", new Response("{}", { headers: { "Content-Type": "application/json" } })],
  ["has a line that is no object", lines("7\n")],
  ["has a line that is no JSON", lines("{kind\n")],
  ["answers another question", lines(RESULT.replace('"index":0', '"index":1'))],
] as const) {
  test(`An answer that ${name} is not what the contract says`, async () => {
    await assert.rejects(all(new Double(answer).client().layoutBatch([QUESTION])), sc.UnexpectedAnswerError);
  });
}

test("Before its first answer a batch is asked again, whether the line broke or the service was busy", async () => {
  const double = new Double(fault(), json({}, 503), lines(RESULT, PROBLEM, END));

  assert.equal((await all(double.client().layoutBatch([QUESTION, QUESTION]))).length, 2);
  assert.deepEqual(double.waits, [500, 1000]);

  const broken = new Double(lines(fault()), lines(RESULT, PROBLEM, END));
  assert.equal((await all(broken.client().layoutBatch([QUESTION, QUESTION]))).length, 2);
});

test("Questions out of a generator are gone once they are taken, and not asked again", async () => {
  const double = new Double(json({}, 503));

  await assert.rejects(all(double.client().layoutBatch(generated(QUESTION))), sc.UnavailableError);
  assert.equal(double.requests.length, 1);
});

test("A question that cannot be sent is named", async () => {
  const double = new Double();
  const batch = double.client().layoutBatch([QUESTION, { ...QUESTION, scale: Infinity, id: "B" }]);

  await assert.rejects(all(batch), /question 1 of the batch, id "B": scale is not finite/);
});

test("What the questions themselves fail of is thrown as it is", async () => {
  const reason = new Error("the file ended early");
  async function* failing(): AsyncGenerator<sc.LayoutQuestion> {
    yield QUESTION;
    throw reason;
  }

  await assert.rejects(all(new Double().client().layoutBatch(failing())), (error) => error === reason);
});

test("Once a line has failed no more questions are taken", async () => {
  let body: ReadableStreamDefaultReader<Uint8Array> | undefined;
  async function* endless(): AsyncGenerator<sc.LayoutQuestion> {
    for (;;) {
      yield QUESTION;
    }
  }
  const client = new sc.Client("http://scalewright.test", {
    fetch: async (request) => {
      body = request.body?.getReader();
      await body?.read();
      throw fault();
    },
  });

  await assert.rejects(all(client.layoutBatch(endless())), sc.ConnectionFaultError);
  assert.equal((await body?.read())?.done, true);
});

test("Who stops early hangs up", async () => {
  const double = new Double(lines(RESULT, PROBLEM, END));

  for await (const outcome of double.client().layoutBatch([QUESTION, QUESTION])) {
    assert.equal(outcome.index, 0);
    break;
  }

  assert.ok(double.requests[0]?.signal.aborted);
});

test("A batch that says nothing for too long has timed out", async () => {
  const double = new Double(({ signal }) => {
    const silent = new ReadableStream<Uint8Array>({
      start: (controller) => signal.addEventListener("abort", () => controller.error(signal.reason)),
    });
    return new Response(silent, { headers: { "Content-Type": "application/jsonl" } });
  });

  await assert.rejects(all(double.client({ timeout: 20 }).layoutBatch([QUESTION])), sc.TimedOutError);
});
