// The checkout that this client stands in, and a service that runs from it.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { env } from "node:process";

/** Top of the checkout. */
export const CHECKOUT = new URL("../../../../", import.meta.url);

/** This client. */
export const CLIENT = new URL("clients/typescript/", CHECKOUT);

/** The text of a file of the checkout. */
export async function textOf(path: string): Promise<string> {
  return await readFile(new URL(path, CHECKOUT), "utf-8");
}

/** A service that runs. */
export interface Service {
  readonly address: string;
  readonly stop: () => Promise<void>;
}

/** Starts a service of this checkout on a free port, with settings of its own. */
export async function liveService(settings: Record<string, string> = {}): Promise<Service> {
  const service = spawn(env["PYTHON"] ?? "python3", ["-m", "service", "serve", "--port", "0"], {
    cwd: CHECKOUT,
    env: { ...env, SCALEWRIGHT_LAME_DUCK_SECONDS: "0", SCALEWRIGHT_LOG_REQUESTS: "false", ...settings },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ended = once(service, "exit");
  const stop = async (): Promise<void> => {
    service.kill();
    await ended;
  };
  return await new Promise((started, failed) => {
    let said = "";
    service.stdout.setEncoding("utf-8").on("data", (piece: string) => {
      said += piece;
      const address = /serves on (http:\/\/\S+?),/.exec(said)?.[1];
      if (address !== undefined) {
        started({ address, stop });
      }
    });
    service.on("exit", (status) => failed(new Error(`the service has not started (status ${status}): ${said}`)));
  });
}
