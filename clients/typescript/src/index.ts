// Typed client of the Scalewright service, for browsers and Node.
//
//     import { Client } from "scalewright-client";
//
//     const client = new Client("http://127.0.0.1:8000");
//     const layout = await client.layout({ scale: "24 3/4 in", rule: "eighteenth", frets: 22, unit: "in" });
//     console.log(layout.true_scale, layout.frets[11]?.from_nut);

export { Batch } from "./batch.js";
export { Client } from "./client.js";
export type { Many } from "./client.js";
export type * from "./contract.js";
export { ruleToAsk } from "./encode.js";
export * from "./errors.js";
export type { BatchProblem, BatchResult, BatchSummary, Outcome } from "./lines.js";
export type { CallOptions, ClientOptions, DrawingOptions, LabelSheetsOptions } from "./options.js";
export type { Retry } from "./retry.js";
export type { components, operations, paths } from "./schema.js";
