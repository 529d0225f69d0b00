// The client: an operation of the service is a method of the same name.

import createClient from "openapi-fetch";
import type { Client as FetchClient } from "openapi-fetch";

import { Batch } from "./batch.js";
import type * as asked from "./contract.js";
import { encode } from "./encode.js";
import { UnexpectedAnswerError } from "./errors.js";
import { JSON_LINES } from "./lines.js";
import type { CallOptions, ClientOptions, DrawingOptions, LabelSheetsOptions } from "./options.js";
import { blobOf, piecesOf } from "./pieces.js";
import type { Questions } from "./pieces.js";
import { mediaTypeOf, requestIdOf } from "./problems.js";
import { retryFrom } from "./retry.js";
import type { paths } from "./schema.js";
import { answerTo, sleep } from "./sending.js";
import type { Sending } from "./sending.js";

const DEFAULT_BASE_URL = "http://127.0.0.1:8000";
const DEFAULT_TIMEOUT = 10_000;
const JSON_MEDIA = "application/json";
const PDF_MEDIA = "application/pdf";

/** Questions of a batch, from an array, a generator or an asynchronous one. */
export type Many<Asked> = Questions<asked.Batched<Asked>>;

interface Fetched<Answered> {
  readonly data?: Answered;
  readonly response: Response;
}

type CallInit = {
  headers: Readonly<Record<string, string>>;
  fetch: (request: Request) => Promise<Response>;
  signal?: AbortSignal;
};

/** Talks to a Scalewright service, from a browser or from Node; every operation is awaited. */
export class Client {
  readonly #base: string;
  readonly #headers: Readonly<Record<string, string>>;
  readonly #sending: Sending;
  readonly #http: FetchClient<paths, "application/json">;

  /**
   * @param baseUrl Address of the service; a path in it is kept, and a page may give a path of its own origin.
   * @param options How the client works.
   */
  constructor(baseUrl: string = DEFAULT_BASE_URL, options: ClientOptions = {}) {
    this.#base = addressOf(baseUrl);
    this.#headers = {
      ...(options.apiKey === undefined ? {} : { "X-API-Key": options.apiKey }),
      ...(options.language === undefined ? {} : { "Accept-Language": options.language }),
    };
    this.#sending = {
      fetch: options.fetch ?? ((request) => globalThis.fetch(request)),
      retry: retryFrom(options.retry ?? {}),
      timeout: options.timeout ?? DEFAULT_TIMEOUT,
      sleep: options.sleep ?? sleep,
    };
    this.#http = createClient<paths, "application/json">({
      baseUrl: this.#base,
      headers: { ...this.#headers },
      bodySerializer: encode,
    });
  }

  /** Which spacing rules there are. */
  async rules(options: CallOptions = {}): Promise<asked.Rules> {
    return await json(this.#http.GET("/v1/rules", this.#how(options)));
  }

  /** Where the frets go. */
  async layout(question: asked.LayoutQuestion, options: CallOptions = {}): Promise<asked.Layout> {
    return await json(this.#http.POST("/v1/layout", this.#put(question, options)));
  }

  /** Which rule and which scale these readings come from. */
  async identification(
    question: asked.IdentificationQuestion,
    options: CallOptions = {},
  ): Promise<asked.Identification> {
    return await json(this.#http.POST("/v1/identification", this.#put(question, options)));
  }

  /** Which frets to read with this instrument. */
  async identificationPlan(
    question: asked.IdentificationPlanQuestion,
    options: CallOptions = {},
  ): Promise<asked.MeasuringCard> {
    return await json(this.#http.POST("/v1/identification/plan", this.#put(question, options)));
  }

  /** Where saddle and nut go for each string. */
  async compensation(question: asked.CompensationQuestion, options: CallOptions = {}): Promise<asked.Compensation> {
    return await json(this.#http.POST("/v1/compensation", this.#put(question, options)));
  }

  /** How far out of tune every fretted note is, and why. */
  async intonation(question: asked.IntonationQuestion, options: CallOptions = {}): Promise<asked.Intonation> {
    return await json(this.#http.POST("/v1/intonation", this.#put(question, options)));
  }

  /** From cents that were heard to the moves that mend them. */
  async diagnosis(question: asked.DiagnosisQuestion, options: CallOptions = {}): Promise<asked.Diagnosis> {
    return await json(this.#http.POST("/v1/diagnosis", this.#put(question, options)));
  }

  /** From a stretch test to a string's stiffness in tension. */
  async stretchTest(question: asked.StretchTestQuestion, options: CallOptions = {}): Promise<asked.StretchTest> {
    return await json(this.#http.POST("/v1/stretch-test", this.#put(question, options)));
  }

  /** What a label can mean. */
  async nominal(question: asked.NominalQuestion, options: CallOptions = {}): Promise<asked.Nominal> {
    return await json(this.#http.POST("/v1/nominal", this.#put(question, options)));
  }

  /** Whether parts belong together. */
  async assembly(question: asked.AssemblyQuestion, options: CallOptions = {}): Promise<asked.Assembly> {
    return await json(this.#http.POST("/v1/assembly", this.#put(question, options)));
  }

  /** Whether a board is what its label says. */
  async conformity(question: asked.ConformityQuestion, options: CallOptions = {}): Promise<asked.Conformity> {
    return await json(this.#http.POST("/v1/conformity", this.#put(question, options)));
  }

  /** What a buyer of a part has to know of its scale. */
  async specSheet(question: asked.SpecSheetQuestion, options: CallOptions = {}): Promise<asked.SpecSheet> {
    return await json(this.#http.POST("/v1/spec-sheet", this.#put(question, options)));
  }

  /** What stands on a label, and what its code carries. */
  async label(question: asked.LabelQuestion, options: CallOptions = {}): Promise<asked.PrintedLabel> {
    return await json(this.#http.POST("/v1/label", this.#put(question, options)));
  }

  /** What stands on the labels of many parts, on sheets of label paper. */
  async labelPages(question: asked.LabelPagesQuestion, options: CallOptions = {}): Promise<asked.LabelPages> {
    return await json(this.#http.POST("/v1/label/pages", this.#put(question, options)));
  }

  /** The text of a printed label's code as a part. */
  async labelRead(question: asked.LabelReadQuestion, options: CallOptions = {}): Promise<asked.Tag> {
    return await json(this.#http.POST("/v1/label/read", this.#put(question, options)));
  }

  /** What many boards tell of their tool. */
  async tooling(question: asked.ToolingQuestion, options: CallOptions = {}): Promise<asked.Tooling> {
    return await json(this.#http.POST("/v1/tooling", this.#put(question, options)));
  }

  /** Which tool a board came from. */
  async toolingOrigin(question: asked.ToolOriginQuestion, options: CallOptions = {}): Promise<asked.ToolOrigin> {
    return await json(this.#http.POST("/v1/tooling/origin", this.#put(question, options)));
  }

  /** Every line of a board. */
  async fingerboard(question: asked.FingerboardQuestion, options: CallOptions = {}): Promise<asked.Fingerboard> {
    return await json(this.#http.POST("/v1/fingerboard", this.#put(question, options)));
  }

  /** A spec sheet to show and print: HTML, a page or a fragment, or PDF. */
  async specSheetDrawing<M extends asked.SheetMedia = "text/html">(
    question: asked.SpecSheetQuestion,
    options: DrawingOptions<M> = {},
  ): Promise<asked.Picture<M>> {
    const media = options.media ?? ("text/html" as M);
    return await picture(this.#http.POST("/v1/spec-sheet", this.#draw(question, options, media)), media);
  }

  /** A label to print. */
  async labelDrawing<M extends asked.LabelMedia = "application/pdf">(
    question: asked.LabelQuestion,
    options: DrawingOptions<M> = {},
  ): Promise<asked.Picture<M>> {
    const media = options.media ?? ("application/pdf" as M);
    return await picture(this.#http.POST("/v1/label", this.#draw(question, options, media)), media);
  }

  /** Sheets of labels to print. */
  async labelPagesDrawing<M extends asked.LabelPagesMedia = "application/pdf">(
    question: asked.LabelPagesQuestion,
    options: DrawingOptions<M> = {},
  ): Promise<asked.Picture<M>> {
    const media = options.media ?? ("application/pdf" as M);
    return await picture(this.#http.POST("/v1/label/pages", this.#draw(question, options, media)), media);
  }

  /**
   * Labels for many on sheets, as one PDF; give a timeout that fits their number, a minute for ten thousand.
   *
   * All lines are looked over before the first page comes. Those that make no label are refused with all others, or
   * listed on pages at the end where `options.sheets` says `bad_lines: "list"`.
   */
  async labelBatchDrawing(questions: Many<asked.LabelQuestion>, options: LabelSheetsOptions = {}): Promise<Blob> {
    const how = this.#how(options, PDF_MEDIA);
    const lines = await blobOf(piecesOf(questions));
    const call = this.#http.POST("/v1/label/batch", {
      ...how,
      headers: { ...how.headers, "Content-Type": JSON_LINES },
      params: { query: options.sheets ?? {} },
      // What this stands for are the lines, which the serializer below puts in its place.
      body: [],
      bodySerializer: () => lines,
      parseAs: "blob",
    });
    return await picture(call, PDF_MEDIA);
  }

  /** The drawing of a board, or its cut list. Measure the check bars of a print before you cut by it. */
  async fingerboardDrawing<M extends asked.DrawingMedia = "image/svg+xml">(
    question: asked.FingerboardQuestion,
    options: DrawingOptions<M> = {},
  ): Promise<asked.Picture<M>> {
    const media = options.media ?? ("image/svg+xml" as M);
    return await picture(this.#http.POST("/v1/fingerboard", this.#draw(question, options, media)), media);
  }

  /** The same as `layout` for many. */
  layoutBatch(questions: Many<asked.LayoutQuestion>, options: CallOptions = {}): Batch<asked.Layout> {
    return this.#batch("/v1/layout/batch", questions, options);
  }

  /** The same as `identification` for many. */
  identificationBatch(
    questions: Many<asked.IdentificationQuestion>,
    options: CallOptions = {},
  ): Batch<asked.Identification> {
    return this.#batch("/v1/identification/batch", questions, options);
  }

  /** The same as `compensation` for many. */
  compensationBatch(questions: Many<asked.CompensationQuestion>, options: CallOptions = {}): Batch<asked.Compensation> {
    return this.#batch("/v1/compensation/batch", questions, options);
  }

  /** The same as `nominal` for many. */
  nominalBatch(questions: Many<asked.NominalQuestion>, options: CallOptions = {}): Batch<asked.Nominal> {
    return this.#batch("/v1/nominal/batch", questions, options);
  }

  /** The same as `assembly` for many. */
  assemblyBatch(questions: Many<asked.AssemblyQuestion>, options: CallOptions = {}): Batch<asked.Assembly> {
    return this.#batch("/v1/assembly/batch", questions, options);
  }

  /** The same as `label` for many. */
  labelBatch(questions: Many<asked.LabelQuestion>, options: CallOptions = {}): Batch<asked.PrintedLabel> {
    return this.#batch("/v1/label/batch", questions, options);
  }

  /** What every call is made with: what it accepts, how long it waits, and when it is given up. */
  #how(options: CallOptions, media: string = JSON_MEDIA): CallInit {
    return {
      headers: { Accept: media },
      fetch: async (request) => await this.#fetched(request, media, options.timeout),
      ...(options.signal === undefined ? {} : { signal: options.signal }),
    };
  }

  #put<Asked>(body: Asked, options: CallOptions): CallInit & { body: Asked } {
    return { ...this.#how(options), body };
  }

  #draw<Asked>(body: Asked, options: CallOptions, media: string): CallInit & { body: Asked; parseAs: "blob" } {
    return { ...this.#how(options, media), body, parseAs: "blob" };
  }

  async #fetched(request: Request, media: string, timeout: number = this.#sending.timeout): Promise<Response> {
    const response = await answerTo(request, { ...this.#sending, timeout });
    const got = mediaTypeOf(response);
    if (!response.ok || got !== media) {
      throw unexpected(response, `expected ${media} from ${request.url}, and not ${got || "nothing"}`);
    }
    return response;
  }

  #batch<Asked, Answered>(
    path: keyof paths,
    questions: Many<Asked>,
    { signal, timeout }: CallOptions,
  ): Batch<Answered> {
    const call = { path, url: `${this.#base}${path}`, headers: this.#headers, questions, signal };
    return new Batch<Answered>(call, { ...this.#sending, timeout: timeout ?? this.#sending.timeout });
  }
}

/** The answer that a call brought. */
async function json<Answered>(call: Promise<Fetched<Answered>>): Promise<Answered> {
  const { data, response } = await call.catch(unreadable);
  if (data === undefined) {
    throw unexpected(response, "the answer is empty");
  }
  return data;
}

/** Text that is no JSON comes as an error of syntax; all else is passed on. */
function unreadable(error: unknown): never {
  throw error instanceof SyntaxError
    ? new UnexpectedAnswerError("the answer is not JSON", { status: 200, requestId: null }, { cause: error })
    : error;
}

/** The file that a call brought: a text where that is what its media type is. */
async function picture<M extends string>(call: Promise<Fetched<Blob>>, media: M): Promise<asked.Picture<M>> {
  const file = await json(call);
  const isText = media.startsWith("text/") || media === "image/svg+xml";
  return (isText ? await file.text() : file) as asked.Picture<M>;
}

function unexpected(response: Response, why: string): UnexpectedAnswerError {
  const facts = { status: response.status, requestId: requestIdOf(response) };
  return new UnexpectedAnswerError(`${why}; check the base address`, facts);
}

/** The base address without a slash at its end; in a page it may be relative to the page. */
function addressOf(baseUrl: string): string {
  const { location } = globalThis as { location?: { href: string } };
  const url = URL.canParse(baseUrl, location?.href) ? new URL(baseUrl, location?.href) : null;
  if (url === null || !["http:", "https:"].includes(url.protocol)) {
    throw new TypeError(`baseUrl must be like "${DEFAULT_BASE_URL}", with its scheme and host`);
  }
  return `${url.origin}${url.pathname.replace(/\/+$/, "")}`;
}
