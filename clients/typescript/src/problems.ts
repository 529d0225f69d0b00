// Problem documents (RFC 9457) to errors: by slug, then by status, then by class of status.

import * as errors from "./errors.js";
import type { Fault, ProblemError, Refusal } from "./errors.js";

type Kind = new (refusal: Refusal) => ProblemError;
type Members = Readonly<Record<string, unknown>>;

/** Slugs that have a class of their own; those of HTTP itself are told by their status. */
export const BY_SLUG: ReadonlyMap<string, Kind> = new Map(
  Object.entries({
    "bad-tolerance": errors.ToleranceError,
    "contradictory-part": errors.ContradictoryPartError,
    "frets-collide": errors.FretsCollideError,
    "impossible-board": errors.ImpossibleBoardError,
    "impossible-reading": errors.ImpossibleReadingError,
    "impossible-setup": errors.ImpossibleSetupError,
    "impossible-string": errors.ImpossibleStringError,
    "label-too-small": errors.LabelSizeError,
    "no-saddle-position": errors.NoSaddlePositionError,
    "outside-scale": errors.OutsideScaleError,
    "string-description": errors.StringDescriptionError,
    "too-few-boards": errors.TooFewBoardsError,
    "too-few-pitches": errors.TooFewPitchesError,
    "too-few-readings": errors.TooFewReadingsError,
    "too-much-paper": errors.TooMuchPaperError,
    "undefined-part": errors.UndefinedPartError,
    "unequal-slots": errors.UnequalSlotsError,
    "unknown-pitch": errors.UnknownPitchError,
    "unplaceable-label": errors.UnplaceableLabelError,
    "unreadable-label-text": errors.UnreadableTagError,
    "unreadable-length": errors.UnreadableLengthError,
    "wrong-pitch-count": errors.PitchCountError,
  }),
);

/** Classes for the rest, by status. */
export const BY_STATUS: ReadonlyMap<number, Kind> = new Map<number, Kind>([
  [400, errors.MalformedRequestError],
  [401, errors.NotAuthorisedError],
  [403, errors.NotAuthorisedError],
  [404, errors.NotFoundError],
  [405, errors.MethodNotAllowedError],
  [406, errors.NotAcceptableError],
  [408, errors.SlowRequestError],
  [413, errors.TooLargeError],
  [414, errors.TooLargeError],
  [415, errors.UnsupportedMediaTypeError],
  [422, errors.InvalidRequestError],
  [429, errors.RateLimitedError],
  [431, errors.TooLargeError],
  [502, errors.UnavailableError],
  [503, errors.UnavailableError],
  [504, errors.UnavailableError],
]);

const OWN_MEMBERS = new Set(["type", "title", "status", "detail", "instance", "errors"]);
const REQUEST_URN = "urn:request:";

/**
 * Reads a refusal into the error that fits it best.
 *
 * Never fails: a body that is no problem document (a gateway's page, say) still gives the class of its status.
 */
export async function problemOf(response: Response): Promise<ProblemError> {
  return problemFrom(await documentOf(response), response.status, {
    title: response.statusText || null,
    requestId: requestIdOf(response),
    retryAfter: retryAfterOf(response),
  });
}

/** Reads the members of a problem document into the error that fits it best; never fails. */
export function problemFrom(
  members: Members,
  status: number,
  known: { title?: string | null; requestId: string | null; retryAfter?: number | null },
): ProblemError {
  const slug = slugOf(members["type"]);
  const kind = BY_SLUG.get(slug ?? "") ?? BY_STATUS.get(status) ?? classOf(status);
  return new kind({
    status,
    title: textOf(members["title"]) ?? known.title ?? `HTTP status ${status}`,
    detail: textOf(members["detail"]),
    slug,
    errors: faultsOf(members["errors"]),
    requestId: known.requestId ?? requestOf(members["instance"]),
    retryAfter: known.retryAfter ?? null,
    extensions: Object.fromEntries(Object.entries(members).filter(([name]) => !OWN_MEMBERS.has(name))),
  });
}

/** The request id that the service put on its answer, if it did. */
export function requestIdOf(response: Response): string | null {
  return response.headers.get("X-Request-ID");
}

/**
 * How long the service asks to wait, from seconds or from a date (RFC 9110, section 10.2.3). [ms]
 *
 * A date is read against the answer's own `Date`, so that a wrong clock here does no harm; where a page of
 * another origin may not read that, against the clock.
 */
export function retryAfterOf(response: Response): number | null {
  const text = response.headers.get("Retry-After")?.trim() ?? "";
  if (/^[0-9]+$/.test(text)) {
    return Number(text) * 1000;
  }
  const until = Date.parse(text);
  const now = Date.parse(response.headers.get("Date") ?? "");
  return Number.isNaN(until) ? null : Math.max(0, until - (Number.isNaN(now) ? Date.now() : now));
}

/** Media type of an answer, without its parameters. */
export function mediaTypeOf(response: Response): string {
  return (response.headers.get("Content-Type") ?? "").split(";", 1)[0]?.trim().toLowerCase() ?? "";
}

async function documentOf(response: Response): Promise<Members> {
  if (!["application/problem+json", "application/json"].includes(mediaTypeOf(response))) {
    return {};
  }
  try {
    return membersOf(await response.json());
  } catch {
    return {};
  }
}

function membersOf(value: unknown): Members {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Members) : {};
}

function classOf(status: number): Kind {
  return status >= 500 ? errors.ServerProblemError : errors.RequestProblemError;
}

function slugOf(type: unknown): string | null {
  const last = (textOf(type) ?? "").replace(/\/$/, "").split("/").at(-1) ?? "";
  return last === "" || last === "about:blank" ? null : last;
}

function requestOf(instance: unknown): string | null {
  const text = textOf(instance) ?? "";
  return text.startsWith(REQUEST_URN) ? text.slice(REQUEST_URN.length) : null;
}

function textOf(value: unknown): string | null {
  return typeof value === "string" ? value : null;
}

function faultsOf(given: unknown): Fault[] {
  return (Array.isArray(given) ? given : []).map(membersOf).map((row) => ({
    pointer: textOf(row["pointer"]) ?? "",
    code: textOf(row["code"]) ?? "",
    detail: textOf(row["detail"]) ?? "",
    ...("example" in row ? { example: row["example"] } : {}),
  }));
}
