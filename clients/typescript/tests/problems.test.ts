// Refusals: each is the error that fits it best, and tells what to change.

import assert from "node:assert/strict";
import { test } from "node:test";

import * as sc from "../src/index.js";
import { Double, json, QUESTION } from "./double.js";

/** The error that an answer becomes. */
async function refusal(answer: Response): Promise<sc.ProblemError> {
  try {
    await new Double(answer).client({ retry: { attempts: 1 } }).layout(QUESTION);
  } catch (error) {
    assert.ok(error instanceof sc.ProblemError);
    return error;
  }
  throw new Error("nothing was thrown");
}

test("A problem document is read in full", async () => {
  const error = await refusal(
    json(
      {
        type: "/problems/unreadable-length",
        title: "Unreadable length",
        status: 422,
        detail: "Two lengths cannot be read.",
        instance: "urn:request:r-1",
        errors: [{ pointer: "/scale", code: "unit", detail: "A unit was expected.", example: "628.65 mm" }, 3],
        needed: 2,
      },
      422,
    ),
  );

  assert.ok(error instanceof sc.UnreadableLengthError);
  assert.ok(error instanceof sc.InvalidRequestError);
  assert.ok(error instanceof sc.ScalewrightError);
  assert.equal(error.name, "UnreadableLengthError");
  assert.equal(error.slug, "unreadable-length");
  assert.deepEqual(error.errors[0], {
    pointer: "/scale",
    code: "unit",
    detail: "A unit was expected.",
    example: "628.65 mm",
  });
  assert.deepEqual(error.pointers, ["/scale", ""]);
  assert.deepEqual(error.extensions, { needed: 2 });
  assert.equal(error.requestId, "r-1");
  assert.match(error.message, /^Two lengths .*\n {2}\/scale: A unit was expected\.\n.*request r-1\)$/s);
});

test("The id on the answer itself is taken before the document's", async () => {
  const error = await refusal(json({ instance: "urn:request:r-1" }, 400, { "X-Request-ID": "r-2" }));

  assert.equal(error.requestId, "r-2");
});

test("A refusal that a newer service has added falls back to the class of its status", async () => {
  const error = await refusal(json({ type: "/problems/not-yet-thought-of", title: "New" }, 422));

  assert.equal(error.constructor, sc.InvalidRequestError);
  assert.equal(error.slug, "not-yet-thought-of");
});

for (const [status, kind] of [
  [400, sc.MalformedRequestError],
  [403, sc.NotAuthorisedError],
  [404, sc.NotFoundError],
  [418, sc.RequestProblemError],
  [429, sc.RateLimitedError],
  [431, sc.TooLargeError],
  [500, sc.ServerProblemError],
  [502, sc.UnavailableError],
] as const) {
  test(`A gateway's page with status ${status} is a ${kind.name}`, async () => {
    const error = await refusal(new Response("<p>No.</p>", { status, headers: { "Content-Type": "text/html" } }));

    assert.equal(error.constructor, kind);
    assert.equal(error.title, `HTTP status ${status}`);
    assert.equal(error.slug, null);
  });
}

test("A document that is not what it says still becomes an error", async () => {
  for (const body of ["null", "[1]", "{", '{"errors": {"a": 1}, "type": 7, "title": ["x"]}']) {
    const headers = { "Content-Type": "application/problem+json; charset=utf-8" };
    const error = await refusal(new Response(body, { status: 422, headers }));

    assert.equal(error.constructor, sc.InvalidRequestError);
    assert.deepEqual(error.errors, []);
  }
});
