// A comparison as JSON: the contract of docs/language.md. A change here needs a new `schema`.
import type { ComparedRecord } from "../compare/wording.ts";
import { jsonText } from "./json-text.ts";

const COMPARISON_SCHEMA = 1;

/** Every record that was compared, those without a change as well. */
export function comparisonJson(
  before: string,
  after: string,
  records: readonly ComparedRecord[],
): string {
  const worse = records.reduce((sum, { changes }) => sum + changes.worse, 0);
  return `${jsonText({
    schema: COMPARISON_SCHEMA,
    before,
    after,
    records: records.map(({ name, movedFrom, state, changes }) => ({
      file: name,
      movedFrom: movedFrom ?? null,
      state,
      changes: changes.changes,
      come: changes.come,
      gone: changes.gone,
      worse: changes.worse,
    })),
    summary: { compared: records.length, worse },
  })}\n`;
}
