// The types of questions and answers, written from the OpenAPI document.
//
//     npm run generate       writes src/schema.ts
//     npm run generated      says whether src/schema.ts is what it would write

import { readFile, writeFile } from "node:fs/promises";
import { argv, exit, stderr } from "node:process";

import openapiTS, { astToString } from "openapi-typescript";

const DOCUMENT = new URL("../../../openapi_examples/openapi.json", import.meta.url);
const TYPES = new URL("../src/schema.ts", import.meta.url);

const HEADER =
  "// Generated from openapi_examples/openapi.json by openapi-typescript: `npm run generate`. Do not edit.\n\n";

/** Whole questions and answers as examples are for the documentation page; here they would be most of the file. */
function withoutExamples(content = {}) {
  for (const media of Object.values(content)) {
    delete media.example;
    delete media.examples;
  }
}

/**
 * Types of an OpenAPI document.
 *
 * @param {string} text The document, as JSON.
 * @returns {Promise<string>} A module of TypeScript.
 */
export async function typesOf(text) {
  const document = JSON.parse(text);
  for (const operations of Object.values(document.paths)) {
    for (const operation of Object.values(operations)) {
      withoutExamples(operation.requestBody?.content);
      Object.values(operation.responses).forEach((response) => withoutExamples(response.content));
    }
  }
  // A member of a question that has a default may be left out.
  return HEADER + astToString(await openapiTS(document, { defaultNonNullable: false }));
}

const words = argv[1] === new URL(import.meta.url).pathname ? argv.slice(2) : null;
if (words !== null) {
  const wanted = await typesOf(await readFile(DOCUMENT, "utf-8"));
  if (!words.includes("--check")) {
    await writeFile(TYPES, wanted);
  } else if ((await readFile(TYPES, "utf-8")) !== wanted) {
    stderr.write("src/schema.ts is not what openapi_examples/openapi.json says: run `npm run generate`.\n");
    exit(1);
  }
}
