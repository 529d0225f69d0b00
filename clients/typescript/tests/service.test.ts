// The client on Node against the live service.

import assert from "node:assert/strict";
import { readdir } from "node:fs/promises";
import { after, test } from "node:test";

import * as sc from "../src/index.js";
import { CHECKOUT, liveService, textOf } from "./checkout.js";

type Asked = (question: unknown) => Promise<unknown>;
type Sent = (questions: unknown[]) => sc.Batch<unknown>;

/** How far numbers of two machines may differ, relatively: their mathematical libraries round differently. */
const SAME_NUMBER = 1e-6;

const BOARD = {
  scale: "24 3/4 in",
  rule: "eighteenth",
  frets: 20,
  strings: { count: 6 },
  widths: { nut: 43, last_fret: 57 },
  margins: 3.5,
} as const;

const service = await liveService();
const client = new sc.Client(service.address, { timeout: 60_000 });

after(service.stop);

/** A method of the client by the name of its operation. */
function method(operation: string): unknown {
  const name = operation.replace(/[_-]([a-z])/g, (_, letter: string) => letter.toUpperCase());
  const asked = (client as unknown as Record<string, unknown>)[name];
  assert.ok(typeof asked === "function", name);
  return asked.bind(client) as unknown;
}

/** Compares two documents: texts word for word, numbers as far as machines agree. */
function assertSame(actual: unknown, wanted: unknown, where: string): void {
  if (typeof wanted === "number" && typeof actual === "number") {
    assert.ok(
      Math.abs(actual - wanted) <= SAME_NUMBER * Math.max(1, Math.abs(wanted)),
      `${where}: ${actual}, ${wanted}`,
    );
  } else if (typeof wanted === "object" && wanted !== null) {
    assert.ok(typeof actual === "object" && actual !== null, where);
    assert.deepEqual(Object.keys(actual), Object.keys(wanted), where);
    for (const [name, value] of Object.entries(wanted)) {
      assertSame((actual as Record<string, unknown>)[name], value, `${where}/${name}`);
    }
  } else {
    assert.equal(actual, wanted, where);
  }
}

/** Words that have examples, with the names of these. */
async function examples(): Promise<[string, string[]][]> {
  const entries = await readdir(new URL("openapi_examples/", CHECKOUT), { withFileTypes: true });
  const words = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return await Promise.all(
    words.map(async (word): Promise<[string, string[]]> => {
      const files = await readdir(new URL(`openapi_examples/${word}/`, CHECKOUT));
      const names = files.filter((file) => file.endsWith(".request.json"));
      return [word, names.map((file) => `openapi_examples/${word}/${file.replace(".request.json", "")}`)];
    }),
  );
}

test("Every example is answered, or refused, as it shows", async () => {
  const asked = (await examples()).flatMap(([word, names]) => names.map((name) => [word, name] as const));
  assert.ok(asked.length > 25);

  for (const [word, name] of asked) {
    const question: unknown = JSON.parse(await textOf(`${name}.request.json`));
    const wanted = JSON.parse(await textOf(`${name}.response.json`)) as Record<string, unknown>;
    try {
      assertSame(await (method(word) as Asked)(question), wanted, name);
    } catch (error) {
      if (!(error instanceof sc.ProblemError)) {
        throw error;
      }
      assert.equal(error.status, wanted["status"], name);
      assert.equal(error.detail, wanted["detail"], name);
    }
  }
});

test("The rules that exist are told", async () => {
  const { rules } = await client.rules();

  assert.deepEqual(
    rules.map((rule) => rule.name),
    ["equal", "eighteenth", "divisor", "listed"],
  );
});

test("Every batch answers its word's examples in their order", async () => {
  const batched = ["layout", "identification", "compensation", "nominal", "assembly", "label"];
  for (const [word, names] of (await examples()).filter(([name]) => batched.includes(name))) {
    const questions = await Promise.all(
      names.map(async (id) => ({ ...(JSON.parse(await textOf(`${id}.request.json`)) as object), id })),
    );
    const batch = (method(`${word}_batch`) as Sent)(questions);
    const ids: unknown[] = [];
    for await (const { id } of batch) {
      ids.push(id);
    }

    assert.deepEqual(ids, names);
    assert.ok(batch.summary?.complete);
  }
});

test("A long batch comes out of a generator while it is read, and every bad line is told apart", async () => {
  const count = 5000;
  async function* stock(): AsyncGenerator<sc.LayoutQuestion & { id: number }> {
    for (let id = 0; id < count; id += 1) {
      yield { id, scale: id % 100 === 7 ? "7 furlongs" : 500 + id / 10, rule: "equal", frets: 12 };
    }
  }
  let next = 0;
  for await (const outcome of client.layoutBatch(stock())) {
    assert.equal(outcome.id, next);
    assert.equal(outcome.kind, next % 100 === 7 ? "problem" : "result");
    if (outcome.kind === "result") {
      // Equal temperament halves the string at the twelfth fret.
      assertSame(outcome.result.frets[11]?.from_nut, (500 + next / 10) / 2, `line ${next}`);
    }
    next += 1;
  }
  assert.equal(next, count);
});

test("Pictures and files come in the media type that was asked for", async () => {
  const part = { id: "BD-17", kind: "board", layout_scale: "24 3/4 in", rule: "eighteenth", frets: 20 } as const;

  assert.match(await client.fingerboardDrawing(BOARD), /^<svg /);
  assert.match(await client.fingerboardDrawing(BOARD, { media: "text/csv" }), /^[a-z_]+,/);
  assert.match(await client.specSheetDrawing({ part }), /^<!doctype html>/i);
  assert.match(await client.labelDrawing({ part }, { media: "image/svg+xml" }), /^<svg /);
  const files: [Promise<Blob>, string, string][] = [
    [client.fingerboardDrawing(BOARD, { media: "application/pdf" }), "application/pdf", "%PDF"],
    [client.fingerboardDrawing(BOARD, { media: "image/png" }), "image/png", "PNG"],
    [client.fingerboardDrawing(BOARD, { media: "image/vnd.dxf" }), "image/vnd.dxf", "SECTION"],
    [client.specSheetDrawing({ part }, { media: "application/pdf" }), "application/pdf", "%PDF"],
    [client.labelDrawing({ part }), "application/pdf", "%PDF"],
    [client.labelPagesDrawing({ labels: [{ part }] }), "application/pdf", "%PDF"],
    [client.labelBatchDrawing([{ part }, { part }]), "application/pdf", "%PDF"],
  ];
  for (const [file, type, start] of files) {
    assert.equal((await file).type.split(";", 1)[0], type);
    assert.ok((await (await file).slice(0, 40).text()).includes(start), type);
  }
});

test("Labels on sheets take their options, and a bad line is refused by its pointer or listed", async () => {
  const part = { id: "BD-17", kind: "board", true_scale: 650 } as const;
  const bad = { part: { id: "BD-18", kind: "board" } } as const;
  const sheets = { paper: "letter", size: "50x25mm", start: 3 } as const;

  await assert.rejects(client.labelBatchDrawing([{ part }, bad], { sheets }), (error: unknown) => {
    assert.ok(error instanceof sc.ProblemError);
    assert.deepEqual(error.pointers, ["/1/part"]);
    return true;
  });
  await assert.rejects(client.labelBatchDrawing([{ part }], { sheets: { ...sheets, start: 1000 } }), sc.ProblemError);
  const listed = await client.labelBatchDrawing([{ part }, bad], { sheets: { ...sheets, bad_lines: "list" } });
  const alone = await client.labelBatchDrawing([{ part }], { sheets });
  assert.ok(listed.size > alone.size);
});

test("A sheet is written in the language that the client asks for", async () => {
  const german = new sc.Client(service.address, { language: "de" });
  const sheet = await german.specSheetDrawing({ part: { id: "A", kind: "board", true_scale: 650 } });

  assert.match(sheet, /<html lang="de"/);
});

test("A rule out of one answer goes into the next question", async () => {
  const found = await client.layout({ scale: 650, rule: { name: "divisor", divisor: 17.835 }, frets: 12 });
  const again = await client.layout({ scale: 650, rule: sc.ruleToAsk(found.rule), frets: 12 });

  assert.deepEqual(again, found);
});

test("A refusal points at the field and says what would work there", async () => {
  await assert.rejects(client.layout({ scale: "25 furlongs", rule: "equal", frets: 22 }), (error: unknown) => {
    assert.ok(error instanceof sc.InvalidRequestError);
    assert.deepEqual(error.pointers, ["/scale"]);
    assert.match(error.requestId ?? "", /^[0-9a-f]+$/);
    return true;
  });
});

test("Where nobody listens, that is said after as many attempts as allowed", async () => {
  const nobody = new sc.Client("http://127.0.0.1:9", { retry: { attempts: 2, firstWait: 1 } });

  await assert.rejects(nobody.rules(), sc.ConnectionFaultError);
  await assert.rejects(nobody.layoutBatch([{ scale: 650, rule: "equal", frets: 12 }]).next(), sc.ConnectionFaultError);
});
