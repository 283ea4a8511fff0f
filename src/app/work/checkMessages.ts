import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { CheckReport } from "../../studies/reports/check.ts";

/** What the worker is asked. Numbered, so that an answer can be matched to its question. */
export interface CheckRequest extends ModelAsk {
  readonly id: number;
}

/** What the worker answers. */
export type CheckAnswer =
  | { readonly id: number; readonly ok: true; readonly report: CheckReport }
  | { readonly id: number; readonly ok: false; readonly code: "setup" | "fault"; readonly message: string };
