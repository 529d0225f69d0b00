// A headless Chromium, and the pages it looks at.

import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { env } from "node:process";
import { fileURLToPath } from "node:url";

import { chromium } from "playwright-core";
import type { Browser, Page } from "playwright-core";

import { CLIENT } from "./checkout.js";

const DEFAULT_SERVICE = "http://127.0.0.1:8000";

const MEDIA: Record<string, string> = {
  css: "text/css",
  html: "text/html",
  js: "text/javascript",
  mjs: "text/javascript",
};

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

/** Starts the browser of this machine; CHROMIUM says where it is, if it is somewhere else. */
export async function browser(): Promise<Browser> {
  const executablePath = env["CHROMIUM"] ?? PLACES.find((place) => existsSync(place)) ?? "chromium";
  return await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-background-networking"] });
}

/** A site that serves this folder. */
export interface Site {
  readonly origin: string;
  readonly stop: () => void;
  /** Lets its pages ask the service at another address. */
  ask(service: string): void;
}

/** Serves this folder on a free port. */
export async function site(): Promise<Site> {
  let service = DEFAULT_SERVICE;
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://site").pathname.replace(/\/$/, "/index.html");
    const media = MEDIA[path.split(".").at(-1) ?? ""] ?? "application/octet-stream";
    readFile(new URL(`.${path}`, CLIENT), "utf-8").then(
      (text) => response.setHeader("Content-Type", media).end(text.replace(DEFAULT_SERVICE, service)),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    stop: () => {
      server.closeAllConnections();
      server.close();
    },
    ask: (address) => {
      service = address;
    },
  };
}

/** What axe-core finds against a page as it stands: rules of WCAG 2.2 A and AA, and good practice. */
export async function barriers(page: Page): Promise<string[]> {
  await page.addScriptTag({ path: fileURLToPath(new URL("node_modules/axe-core/axe.min.js", CLIENT)) });
  const { violations } = await page.evaluate<{ violations: { id: string; nodes: { html: string }[] }[] }>(
    "axe.run(document)",
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
}
