// What can be asked and what is answered, by the names of the Python client; all of it out of the generated types.

import type { components, operations } from "./schema.js";

type Schemas = components["schemas"];
type Operation = keyof operations;
type Content<Name extends Operation> = operations[Name]["responses"][200] extends { content: infer Media }
  ? Media
  : never;

/** What an operation is asked. */
export type Question<Name extends Operation> = operations[Name] extends {
  requestBody: { content: { "application/json": infer Body } };
}
  ? Body
  : never;

/** What an operation answers. */
export type Answer<Name extends Operation> = Content<Name> extends { "application/json": infer Body } ? Body : never;

/** Media types that an operation can answer in beside JSON. */
export type Media<Name extends Operation> = Exclude<keyof Content<Name>, "application/json"> & string;

/** A file of a media type: a text where it is one to put into a page, else a Blob. */
export type Picture<M extends string> = M extends `text/${string}` | "image/svg+xml" ? string : Blob;

export type LayoutQuestion = Question<"layout">;
export type IdentificationQuestion = Question<"identification">;
export type IdentificationPlanQuestion = Question<"identification_plan">;
export type CompensationQuestion = Question<"compensation">;
export type IntonationQuestion = Question<"intonation">;
export type DiagnosisQuestion = Question<"diagnosis">;
export type StretchTestQuestion = Question<"stretch_test">;
export type NominalQuestion = Question<"nominal">;
export type AssemblyQuestion = Question<"assembly">;
export type ConformityQuestion = Question<"conformity">;
export type SpecSheetQuestion = Question<"spec_sheet">;
export type LabelQuestion = Question<"label">;
export type LabelPagesQuestion = Question<"label_pages">;
export type LabelReadQuestion = Question<"label_read">;
export type ToolingQuestion = Question<"tooling">;
export type ToolOriginQuestion = Question<"tooling_origin">;
export type FingerboardQuestion = Question<"fingerboard">;

export type Rules = Answer<"rules">;
export type Layout = Answer<"layout">;
export type Identification = Answer<"identification">;
export type MeasuringCard = Answer<"identification_plan">;
export type Compensation = Answer<"compensation">;
export type Intonation = Answer<"intonation">;
export type Diagnosis = Answer<"diagnosis">;
export type StretchTest = Answer<"stretch_test">;
export type Nominal = Answer<"nominal">;
export type Assembly = Answer<"assembly">;
export type Conformity = Answer<"conformity">;
export type SpecSheet = Answer<"spec_sheet">;
export type PrintedLabel = Answer<"label">;
export type LabelPages = Answer<"label_pages">;
export type Tag = Answer<"label_read">;
export type Tooling = Answer<"tooling">;
export type ToolOrigin = Answer<"tooling_origin">;
export type Fingerboard = Answer<"fingerboard">;

export type SheetMedia = Media<"spec_sheet">;
export type LabelMedia = Media<"label">;
export type LabelPagesMedia = Media<"label_pages">;
export type LabelSheets = NonNullable<operations["label_batch"]["parameters"]["query"]>;
export type DrawingMedia = Media<"fingerboard">;

export type Estimate = Schemas["Estimate"];
export type Fret = Schemas["FretOut"];
export type Length = LayoutQuestion["scale"];
export type Note = Schemas["Note"];
export type Pair = Schemas["PairOut"];
export type Part = Schemas["PartIn"];
export type Reading = Schemas["ReadingIn"];
export type Rule = Schemas["RuleOut"];
export type RuleLike = LayoutQuestion["rule"];
export type StatedPart = Schemas["StatedPartOut"];
export type StringRequest = Schemas["StringIn"];
export type Unit = Layout["unit"];

/** The caller's own name for a question of a batch, which comes back with its answer. */
export type BatchId = string | number;

/** A question of a batch: that of the single operation, and the caller's own `id`. */
export type Batched<Asked> = Asked & { readonly id?: BatchId };
