// The compiler, asked what it has against a file.

import { fileURLToPath } from "node:url";

import ts from "typescript";

import { CLIENT } from "./checkout.js";

/** What the compiler has against a module and all that it imports, under the options of this client. */
export function complaints(module: URL, { emit = false } = {}): string[] {
  const file = fileURLToPath(new URL("tsconfig.json", CLIENT));
  const { config } = ts.readConfigFile(file, (path) => ts.sys.readFile(path)) as { config: object };
  const { rootDir: _, ...options } = ts.parseJsonConfigFileContent(config, ts.sys, fileURLToPath(CLIENT)).options;
  const path = fileURLToPath(module);
  const folder = fileURLToPath(new URL(".", module));
  const program = ts.createProgram([path], {
    ...options,
    types: ["node"],
    composite: false,
    declaration: false,
    noEmit: !emit,
    ...(emit ? { outDir: folder, rootDir: folder } : {}),
  });
  const found = [...ts.getPreEmitDiagnostics(program), ...(emit ? program.emit().diagnostics : [])];
  return found.map(({ file: where, messageText }) => {
    const name = where?.fileName.split("/").at(-1) ?? "";
    return `${name}: ${ts.flattenDiagnosticMessageText(messageText, " ")}`;
  });
}
