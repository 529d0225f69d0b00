// One question: what is sent, what comes back, and what is asked again.

import assert from "node:assert/strict";
import { test } from "node:test";

import * as sc from "../src/index.js";
import { Double, fault, json, LAYOUT, QUESTION } from "./double.js";

const BUSY = { type: "/problems/overloaded", title: "Overloaded", status: 503 };

test("A question goes out as JSON, with key and language, below the path of the base address", async () => {
  const double = new Double(json(LAYOUT));
  const client = double.client({ apiKey: "k-1", language: "de" }, "https://shop.test/scales/");

  assert.deepEqual(await client.layout(QUESTION), LAYOUT);

  const [request] = double.requests;
  assert.equal(request?.url, "https://shop.test/scales/v1/layout");
  assert.equal(request.method, "POST");
  assert.equal(request.headers.get("Content-Type"), "application/json");
  assert.equal(request.headers.get("Accept"), "application/json");
  assert.equal(request.headers.get("X-API-Key"), "k-1");
  assert.equal(request.headers.get("Accept-Language"), "de");
  assert.deepEqual(JSON.parse(double.bodies[0] ?? ""), QUESTION);
});

test("A base address without its scheme is refused with an example", () => {
  assert.throws(() => new sc.Client("shop.test"), /baseUrl must be like "http:\/\/127\.0\.0\.1:8000"/);
  assert.throws(() => new sc.Client("ftp://shop.test"), TypeError);
});

test("A number that is not finite is not sent as null", async () => {
  const double = new Double();

  await assert.rejects(double.client().layout({ ...QUESTION, scale: NaN }), /scale is not finite/);
  assert.equal(double.requests.length, 0);
});

test("A picture is a text where it can stand in a page, and a Blob where not", async () => {
  const svg = new Response("<svg/>", { headers: { "Content-Type": "image/svg+xml" } });
  const pdf = new Response("%PDF-1.7", { headers: { "Content-Type": "application/pdf" } });
  const double = new Double(svg, pdf);
  const client = double.client();
  const question = { part: { id: "A", kind: "board", true_scale: 650 } } as const;

  const label: string = await client.labelDrawing(question, { media: "image/svg+xml" });
  const file: Blob = await client.labelDrawing(question);

  assert.equal(label, "<svg/>");
  assert.equal(await file.text(), "%PDF-1.7");
  assert.deepEqual(
    double.requests.map((request) => request.headers.get("Accept")),
    ["image/svg+xml", "application/pdf"],
  );
});

test("What is no answer of the service is told so", async () => {
  const page = new Response("<p>Log in</p>", { headers: { "Content-Type": "text/html", "X-Request-ID": "r-1" } });
  const empty = new Response("", { headers: { "Content-Type": "application/json" } });
  const half = new Response('{"unit":', { headers: { "Content-Type": "application/json" } });
  const client = new Double(page, empty, half).client();

  await assert.rejects(client.rules(), (error: sc.UnexpectedAnswerError) => {
    assert.ok(error instanceof sc.UnexpectedAnswerError);
    assert.match(error.message, /expected application\/json .* not text\/html; check the base address/);
    assert.deepEqual([error.status, error.requestId], [200, "r-1"]);
    return true;
  });
  await assert.rejects(client.rules(), sc.UnexpectedAnswerError);
  await assert.rejects(client.rules(), sc.UnexpectedAnswerError);
});

test("After a broken line and after 503 the same question is put again, with growing waits", async () => {
  const double = new Double(fault(), json(BUSY, 503), json(LAYOUT));

  assert.deepEqual(await double.client().layout(QUESTION), LAYOUT);
  assert.deepEqual(double.waits, [500, 1000]);
  assert.equal(new Set(double.bodies).size, 1);
});

test("A line that breaks in the middle of an answer is asked again too", async () => {
  const broken = new ReadableStream({ pull: (controller) => controller.error(fault()) });
  const half = new Response(broken, { headers: { "Content-Type": "application/json" } });
  const double = new Double(half, json(LAYOUT));

  assert.deepEqual(await double.client().layout(QUESTION), LAYOUT);
});

test("Retry-After is waited for, in seconds or as a date against the answer's own", async () => {
  const date = { "Retry-After": "Wed, 25 Nov 2026 12:00:05 GMT", Date: "Wed, 25 Nov 2026 12:00:01 GMT" };
  const double = new Double(json(BUSY, 503, { "Retry-After": "2" }), json(BUSY, 429, date), json(LAYOUT));

  await double.client().layout(QUESTION);

  assert.deepEqual(double.waits, [2000, 4000]);
});

test("Where the service asks for a longer wait than the longest, the client gives up at once", async () => {
  const double = new Double(json(BUSY, 503, { "Retry-After": "60" }));

  await assert.rejects(double.client().layout(QUESTION), (error: sc.UnavailableError) => {
    assert.ok(error instanceof sc.UnavailableError);
    assert.equal(error.retryAfter, 60_000);
    return true;
  });
  assert.deepEqual(double.waits, []);
});

test("The last attempt's failure is the one that is thrown, with its cause", async () => {
  const last = fault();
  const double = new Double(fault(), fault(), last);

  await assert.rejects(double.client().layout(QUESTION), (error: sc.ConnectionFaultError) => {
    assert.ok(error instanceof sc.ConnectionFaultError);
    assert.equal(error.message, "no answer from http://scalewright.test (connection refused)");
    assert.equal(error.cause, last);
    return true;
  });
  assert.equal(double.requests.length, 3);
});

test("Another refusal is never asked again", async () => {
  const double = new Double(json({ type: "/problems/unknown-pitch", status: 422 }, 422));

  await assert.rejects(double.client().layout(QUESTION), sc.UnknownPitchError);
  assert.equal(double.requests.length, 1);
});

test("A service that is slow is not asked again", async () => {
  const asked: Request[] = [];
  const client = new sc.Client("http://scalewright.test", {
    timeout: 20,
    fetch: async (request) => {
      asked.push(request);
      return await new Promise<Response>((_, failed) => {
        request.signal.addEventListener("abort", () => failed(request.signal.reason));
      });
    },
  });

  await assert.rejects(client.layout(QUESTION), sc.TimedOutError);
  await assert.rejects(client.layout(QUESTION, { timeout: 5 }), /no answer within 5 ms/);
  assert.equal(asked.length, 2);
});

test("A caller who gives up gets the own reason back, also during a wait", async () => {
  const reason = new Error("the visitor left");
  const controller = new AbortController();
  const double = new Double(json(BUSY, 503, { "Retry-After": "5" }), json(LAYOUT));
  const client = double.client({ sleep: async () => controller.abort(reason) });

  await assert.rejects(client.layout(QUESTION, { signal: controller.signal }), (error) => error === reason);
  await assert.rejects(client.layout(QUESTION, { signal: AbortSignal.abort(reason) }), (error) => error === reason);
  assert.equal(double.requests.length, 1);
});

test("A policy that could never ask, or wait less than no time, is refused", () => {
  assert.throws(() => new sc.Client(undefined, { retry: { attempts: 0 } }), RangeError);
  assert.throws(() => new sc.Client(undefined, { retry: { firstWait: 2, longestWait: 1 } }), RangeError);
  assert.throws(() => new sc.Client(undefined, { retry: { firstWait: -1 } }), RangeError);
});

test("An answered rule becomes one to ask with: only what defines it", () => {
  assert.equal(sc.ruleToAsk({ name: "eighteenth", divisor: 18 }), "eighteenth");
  assert.deepEqual(sc.ruleToAsk({ name: "equal", divisor: 17.8, steps: 12 }), { name: "equal", steps: 12 });
  assert.deepEqual(sc.ruleToAsk({ name: "divisor", divisor: 17.9 }), { name: "divisor", divisor: 17.9 });
  assert.deepEqual(sc.ruleToAsk({ name: "listed", cents: [90, 204], repeat: true }), {
    name: "listed",
    cents: [90, 204],
    repeat: true,
  });
});
