// The contract: what the document renames does not compile any more.

import assert from "node:assert/strict";
import { cp, mkdir, rm, writeFile } from "node:fs/promises";
import { after, before, test } from "node:test";

import { CLIENT, textOf } from "./checkout.js";
import { complaints } from "./compiler.js";

const PLACE = new URL("dist/contract/", CLIENT);
const DOCUMENT = await textOf("openapi_examples/openapi.json");
const { typesOf } = (await import(new URL("scripts/generate.js", CLIENT).href)) as {
  typesOf: (document: string) => Promise<string>;
};

before(async () => {
  await mkdir(PLACE, { recursive: true });
  for (const folder of ["src/", "sample/"]) {
    await cp(new URL(folder, CLIENT), new URL(folder, PLACE), { recursive: true });
  }
});

after(async () => {
  await rm(PLACE, { recursive: true });
});

/** What the compiler has against client and sample page under the types of a document. */
async function against(document: string): Promise<string[]> {
  await writeFile(new URL("src/schema.ts", PLACE), await typesOf(document));
  return complaints(new URL("sample/page.ts", PLACE));
}

test("The types are those of the document, and they say in their first line that they are generated", async () => {
  const types = await textOf("clients/typescript/src/schema.ts");

  assert.ok(types === (await typesOf(DOCUMENT)), "src/schema.ts is not current: npm run generate");
  assert.match(types.split("\n", 1)[0] ?? "", /^\/\/ Generated from .* by openapi-typescript: `npm run generate`/);
});

test("Client and sample page compile under the document as it is", async () => {
  assert.deepEqual(await against(DOCUMENT), []);
});

for (const [what, name, renamed, file] of [
  ["a field of an answer", '"true_scale"', '"real_scale"', "layout.ts"],
  ["a field of a question", '"scale_basis"', '"basis"', "layout.ts"],
  ["a value of a choice", '"undecided"', '"unsettled"', "compare.ts"],
  ["an operation's address", '"/v1/layout"', '"/v1/frets"', "client.ts"],
  ["an operation's name", '"operationId": "assembly"', '"operationId": "match"', "contract.ts"],
  ["a media type", '"image/svg+xml"', '"image/svg"', "client.ts"],
] as const) {
  test(`Where the document renames ${what}, ${file} does not compile`, async () => {
    const mutated = DOCUMENT.replaceAll(name, renamed);
    assert.notEqual(mutated, DOCUMENT);

    const found = await against(mutated);

    assert.ok(
      found.some((complaint) => complaint.startsWith(`${file}: `)),
      found.join("\n"),
    );
  });
}
