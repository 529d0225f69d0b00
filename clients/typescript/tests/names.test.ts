// The names are those of the Python client, and the classes of refusals too.

import assert from "node:assert/strict";
import { readdir } from "node:fs/promises";
import { test } from "node:test";

import * as sc from "../src/index.js";
import { BY_SLUG, BY_STATUS } from "../src/problems.js";
import { CLIENT, textOf } from "./checkout.js";

const PYTHON = "clients/python/src/scalewright_client";

/** Errors that only the Python client has: it alone asks a service for its version. */
const ONLY_IN_PYTHON = new Set(["MissingOperationError NotFoundError", "VersionError ScalewrightError"]);

/** What a pattern finds in a file of the Python client, sorted, each once. */
async function found(file: string, pattern: RegExp): Promise<string[]> {
  const text = await textOf(`${PYTHON}/${file}`);
  return [...new Set([...text.matchAll(pattern)].map((match) => match.slice(1).join(" ")))].sort();
}

/** A name of Python's as it is written here. */
function camel(name: string): string {
  return name.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** What a class has of its own, but for its constructor. */
function methodsOf(kind: { prototype: object }): string[] {
  return Object.getOwnPropertyNames(kind.prototype).filter((name) => name !== "constructor");
}

test("Every operation of the Python client is here, and no other", async () => {
  const operations = await found("_clients.py", /^ {4}(\w+) = _(?:blocking|batched)\(/gm);

  assert.ok(operations.length > 20);
  assert.deepEqual(methodsOf(sc.Client).sort(), operations.map(camel).sort());
});

test("Every error of the Python client is here, below the same one", async () => {
  const classes = await found("_errors.py", /^class (\w+)\((\w+)\):/gm);
  const errors = Object.entries(sc).filter(([name]) => name.endsWith("Error"));
  const here = errors.map(([name, kind]) => {
    const above = Object.getPrototypeOf(kind) as { name: string };
    return `${name} ${above.name.replace(/^Error$/, "Exception")}`;
  });

  assert.ok(classes.length > 40);
  assert.equal(here.sort().join("\n"), classes.filter((line) => !ONLY_IN_PYTHON.has(line)).join("\n"));
});

test("Slugs and statuses become the same errors", async () => {
  const slugs = await found("_problems.py", /^ {8}"([a-z-]+)": errors\.(\w+),/gm);
  const statuses = await found("_problems.py", /^ {8}(\d{3}): errors\.(\w+),/gm);

  assert.deepEqual([...BY_SLUG].map(([slug, kind]) => `${slug} ${kind.name}`).sort(), slugs);
  assert.deepEqual([...BY_STATUS].map(([status, kind]) => `${status} ${kind.name}`).sort(), statuses);
});

test("What a page imports needs nothing of Node", async () => {
  const files = await readdir(new URL("src/", CLIENT));
  for (const file of files) {
    const text = await textOf(`clients/typescript/src/${file}`);
    const imported = [...text.matchAll(/^(?:im|ex)port .*? from "([^"]+)";$/gm)].map((match) => match[1] ?? "");

    assert.deepEqual(
      imported.filter((name) => !/^\.\/|^openapi-fetch$/.test(name)),
      [],
      file,
    );
  }
  assert.ok(files.includes("client.ts"));
});
