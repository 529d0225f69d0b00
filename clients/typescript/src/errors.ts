// Everything that can go wrong, as one tree of errors.
//
//     ScalewrightError                       whatever this client raises on purpose
//     ├── TransportError                     no answer came
//     │   ├── ConnectionFaultError           the service could not be reached, or hung up
//     │   ├── TimedOutError                  the service did not answer in time
//     │   └── TruncatedError                 an answer of many lines broke off
//     ├── UnexpectedAnswerError              an answer came that is not what the contract says
//     └── ProblemError                       the service said no, and why
//         ├── RequestProblemError            4xx: change the request
//         │   ├── MalformedRequestError      400, the body cannot be read
//         │   ├── NotAuthorisedError         401, 403
//         │   ├── NotFoundError              404
//         │   ├── MethodNotAllowedError      405
//         │   ├── NotAcceptableError         406
//         │   ├── SlowRequestError           408
//         │   ├── TooLargeError              413, 414, 431
//         │   ├── UnsupportedMediaTypeError  415
//         │   ├── InvalidRequestError        422, readable but refused; below it
//         │   │   └── one class for each refusal of the craft
//         │   └── RateLimitedError           429
//         └── ServerProblemError             5xx: the request may be right
//             └── UnavailableError           502, 503, 504

/** One thing wrong with a request. */
export interface Fault {
  /** JSON pointer to it in the request, "/scale"; empty for the whole request. */
  readonly pointer: string;
  /** A short name that stays the same, for programs. */
  readonly code: string;
  /** One sentence, for people. */
  readonly detail: string;
  /** Something that would work there, where the service knows one. */
  readonly example?: unknown;
}

/** The base of all that this client raises on purpose. */
export class ScalewrightError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = new.target.name;
  }
}

/** No answer came; what the platform raised is the `cause`. */
export class TransportError extends ScalewrightError {}

/** The service could not be reached, or hung up; in a browser also: it does not know the page's origin. */
export class ConnectionFaultError extends TransportError {}

/** The service did not answer in time. */
export class TimedOutError extends TransportError {}

/** An answer of many lines broke off, or the service did not look at all of the questions. */
export class TruncatedError extends TransportError {
  /** Questions whose answers came; they are good. */
  readonly received: number;
  /** What to quote to whoever runs the service; null where it is not known. */
  readonly requestId: string | null;

  constructor(message: string, facts: { received: number; requestId: string | null }, options?: ErrorOptions) {
    super(message, options);
    this.received = facts.received;
    this.requestId = facts.requestId;
  }
}

/** An answer came that is not what the contract says. */
export class UnexpectedAnswerError extends ScalewrightError {
  /** HTTP status of the answer. */
  readonly status: number;
  /** What to quote to whoever runs the service; null where it is not known. */
  readonly requestId: string | null;

  constructor(message: string, facts: { status: number; requestId: string | null }, options?: ErrorOptions) {
    super(message, options);
    this.status = facts.status;
    this.requestId = facts.requestId;
  }
}

/** What a refusal says. */
export interface Refusal {
  /** HTTP status. */
  readonly status: number;
  /** What kind of problem it is, in a few words. */
  readonly title: string;
  /** What happened this time, in a sentence. */
  readonly detail: string | null;
  /** Last part of the problem's type, for programs; null where the answer is no problem document. */
  readonly slug: string | null;
  /** What is wrong with the request, one by one. */
  readonly errors: readonly Fault[];
  /** What to quote to whoever runs the service. */
  readonly requestId: string | null;
  /** How long the service asks to wait. [ms] */
  readonly retryAfter: number | null;
  /** Further members of the problem document: the numbers that explain a refusal. */
  readonly extensions: Readonly<Record<string, unknown>>;
}

/** The service said no, and why (RFC 9457). */
export class ProblemError extends ScalewrightError implements Refusal {
  readonly status: number;
  readonly title: string;
  readonly detail: string | null;
  readonly slug: string | null;
  readonly errors: readonly Fault[];
  readonly requestId: string | null;
  readonly retryAfter: number | null;
  readonly extensions: Readonly<Record<string, unknown>>;

  constructor(refusal: Refusal) {
    super(told(refusal));
    this.status = refusal.status;
    this.title = refusal.title;
    this.detail = refusal.detail;
    this.slug = refusal.slug;
    this.errors = refusal.errors;
    this.requestId = refusal.requestId;
    this.retryAfter = refusal.retryAfter;
    this.extensions = refusal.extensions;
  }

  /** JSON pointers to what is wrong in the request. */
  get pointers(): string[] {
    return this.errors.map((fault) => fault.pointer);
  }
}

/** The problem and each fault in plain words, and the request id to quote. */
function told({ detail, title, errors, requestId, status }: Refusal): string {
  const first = detail ?? title;
  const faults = errors.filter((fault) => !first.includes(fault.detail));
  return [
    first,
    ...faults.map((fault) => `  ${fault.pointer || "(request)"}: ${fault.detail}`),
    ...(requestId === null ? [] : [`  (status ${status}, request ${requestId})`]),
  ].join("\n");
}

/** 4xx: the request has to change. */
export class RequestProblemError extends ProblemError {}

/** 400: the body cannot be read. */
export class MalformedRequestError extends RequestProblemError {}

/** 401 or 403: the key is missing or wrong. */
export class NotAuthorisedError extends RequestProblemError {}

/** 404: there is no such path; an older service may not know the operation. */
export class NotFoundError extends RequestProblemError {}

/** 405: the path exists, and not for this method. */
export class MethodNotAllowedError extends RequestProblemError {}

/** 406: the service cannot make the media type asked for. */
export class NotAcceptableError extends RequestProblemError {}

/** 408: the request did not arrive in time. */
export class SlowRequestError extends RequestProblemError {}

/** 413, 414 or 431: body, address or headers are over the service's limit. */
export class TooLargeError extends RequestProblemError {}

/** 415: the service does not read this media type. */
export class UnsupportedMediaTypeError extends RequestProblemError {}

/** 429: too many requests; `retryAfter` says how long to wait. */
export class RateLimitedError extends RequestProblemError {}

/** 422: readable, and refused; `errors` says what to change. */
export class InvalidRequestError extends RequestProblemError {}

/** A text that is no length. */
export class UnreadableLengthError extends InvalidRequestError {}

/** Fewer readings than a fit needs. */
export class TooFewReadingsError extends InvalidRequestError {}

/** A reading that no board can give. */
export class ImpossibleReadingError extends InvalidRequestError {}

/** A list of pitches shorter than the board. */
export class TooFewPitchesError extends InvalidRequestError {}

/** A label too small for its content; the document names sizes that work. */
export class LabelSizeError extends InvalidRequestError {}

/** A temperament with a pitch too many or too few. */
export class PitchCountError extends InvalidRequestError {}

/** A position or a length that the scale or the rule cannot hold. */
export class OutsideScaleError extends InvalidRequestError {}

/** A name that is no pitch. */
export class UnknownPitchError extends InvalidRequestError {}

/** A string described by too little, or twice in different words. */
export class StringDescriptionError extends InvalidRequestError {}

/** A string that cannot be; look at its measures, its mass and their units. */
export class ImpossibleStringError extends InvalidRequestError {}

/** Strings that cannot lie over their board so. */
export class ImpossibleSetupError extends InvalidRequestError {}

/** No saddle brings a string near its pitches. */
export class NoSaddlePositionError extends InvalidRequestError {}

/** A label whose number fits neither inches nor millimetres. */
export class UnplaceableLabelError extends InvalidRequestError {}

/** A text that is not that of a label's code, or was changed on its way. */
export class UnreadableTagError extends InvalidRequestError {}

/** A part whose scale nothing says. */
export class UndefinedPartError extends InvalidRequestError {}

/** A part that is defined twice, and differently. */
export class ContradictoryPartError extends InvalidRequestError {}

/** A tolerance that is not greater than zero. */
export class ToleranceError extends InvalidRequestError {}

/** Fewer boards than it takes to tell a tool's errors from a board's. */
export class TooFewBoardsError extends InvalidRequestError {}

/** Boards off one tool that do not have the same slots. */
export class UnequalSlotsError extends InvalidRequestError {}

/** Frets of a board that cross or touch. */
export class FretsCollideError extends InvalidRequestError {}

/** A board that no wood can be cut to. */
export class ImpossibleBoardError extends InvalidRequestError {}

/** A drawing that would take more pages than the service makes. */
export class TooMuchPaperError extends InvalidRequestError {}

/** 5xx: the service failed; the request may be right. */
export class ServerProblemError extends ProblemError {}

/** 502, 503 or 504: the service is overloaded, restarting or not there. */
export class UnavailableError extends ServerProblemError {}
