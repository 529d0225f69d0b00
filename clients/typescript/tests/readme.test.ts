// The README, compiled and run as it stands.

import assert from "node:assert/strict";
import { execFile, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdir, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import type { AddressInfo } from "node:net";
import { env, execPath } from "node:process";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

import * as sc from "../src/index.js";
import { CHECKOUT, CLIENT, liveService, textOf } from "./checkout.js";
import { complaints } from "./compiler.js";

const PLACE = new URL("dist/readme/", CLIENT);
const SCRIPT = new URL("examples.js", PLACE);

const service = await liveService();
const readme = await textOf("clients/typescript/README.md");

after(service.stop);

/** The examples, one after another in one module: imports that repeat themselves are as in any module. */
function examples(): string {
  const blocks = [...readme.matchAll(/^```ts\n(.*?)^```$/gms)].map((match) => match[1] ?? "");
  return blocks.join("\n").replaceAll("http://127.0.0.1:8000", service.address);
}

/** A port that nobody listens on. */
async function freePort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, "close");
  return port;
}

/** Starts a command of the text at the top of the checkout, and waits for what it says. */
async function started(command: string, sign: RegExp): Promise<{ said: string; stop: () => Promise<void> }> {
  const own = command.replace("python3", `exec ${env["PYTHON"] ?? "python3"} -u`);
  const surroundings = { ...env, SCALEWRIGHT_LAME_DUCK_SECONDS: "0" };
  const running = spawn("sh", ["-c", own], { cwd: CHECKOUT, env: surroundings, stdio: ["ignore", "pipe", "ignore"] });
  const ended = once(running, "exit");
  const stop = async (): Promise<void> => {
    running.kill();
    await ended;
  };
  return await new Promise((done, failed) => {
    let told = "";
    running.stdout.setEncoding("utf-8").on("data", (piece: string) => {
      told += piece;
      const found = sign.exec(told);
      if (found !== null) {
        done({ said: found[1] ?? "", stop });
      }
    });
    running.on("exit", () => failed(new Error(`${command} has ended: ${told}`)));
  });
}

/** What the examples print. */
async function printed(): Promise<string[]> {
  await rm(PLACE, { recursive: true, force: true });
  await mkdir(PLACE, { recursive: true });
  await writeFile(new URL("examples.ts", PLACE), examples());
  assert.deepEqual(complaints(new URL("examples.ts", PLACE), { emit: true }), []);
  const { stdout } = await promisify(execFile)(execPath, [fileURLToPath(SCRIPT)]);
  return stdout.trimEnd().split("\n");
}

test("The examples compile, and tell what the text says", async () => {
  const lines = await printed();

  // The rule of 18 from 24.75 in: 24.75 * 2 * (1 - (17/18)**12) = 24.570 in, fret 12 at half of it.
  assert.equal(lines[0], "24.75 24.570 12.285");
  assert.match(lines[1] ?? "", /^established The rule of 18/);
  assert.match(lines[2] ?? "", /^31[12]\.\d$/);
  assert.equal(lines[3], "true application/pdf true");
  assert.match(lines[4] ?? "", /^apart BD-17 and BR-3 do not belong together/);
  assert.match(lines[5] ?? "", /^B-1 /);
  assert.equal(lines[6], "B-2 is bad: /from_nut/1");
  assert.equal(lines[7], "1 answered, 1 bad");
  assert.equal(lines[8], "invalid-request true");
  assert.match(lines[9] ?? "", /^\/scale .*unit/);
  assert.equal(lines[10], "4 rules");
  assert.equal(lines[11], "{ rules: [] }");
  assert.equal(lines.length, 12);
});

test("The sample page and its service are started as the text says", async () => {
  const [asked = "", served = ""] = [...readme.matchAll(/^```sh\n(.*?)\n```$/gms)].map((match) => match[1] ?? "");
  const port = await freePort();
  const page = await started(served.replace("8080", String(port)), /Serving HTTP/);
  const other = await started(`${asked.replace("8080", String(port))} serve --port 0`, /serves on (\S+),/);

  const origin = `http://127.0.0.1:${port}`;
  assert.match(readme, /<http:\/\/127\.0\.0\.1:8080\/sample\/>/);
  assert.match(await (await fetch(`${origin}/sample/`)).text(), /data-service="http:\/\/127\.0\.0\.1:8000"/);
  for (const path of ["dist/sample/page.js", "node_modules/openapi-fetch/dist/index.mjs"]) {
    assert.match((await fetch(`${origin}/${path}`)).headers.get("Content-Type") ?? "", /javascript/);
  }
  const answer = await fetch(`${other.said}/v1/rules`, { headers: { Origin: origin } });
  assert.equal(answer.headers.get("Access-Control-Allow-Origin"), origin);
  await Promise.all([page.stop(), other.stop()]);
});

test("Every name in the text exists", () => {
  const named = [...readme.matchAll(/`([a-z]\w+)`/g)].map((match) => match[1] ?? "");
  const methods = Object.getOwnPropertyNames(sc.Client.prototype).filter((name) => name !== "constructor");

  assert.deepEqual(
    methods.filter((name) => !named.includes(name)),
    [],
  );
  for (const [, name = ""] of readme.matchAll(/`(\w+Error)`/g)) {
    assert.ok(name in sc, name);
  }
});
