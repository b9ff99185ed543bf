// The ready questions by name: the SQL of questions/*.sql as it stands, and what each asks, which is its first line.
import { questionTexts } from "./question-texts.ts";

export interface Question {
  readonly name: string;
  /** One line. */
  readonly asks: string;
  /** Over the tables of the archive by their names; it ends with a line end and has no semicolon. */
  readonly sql: string;
}

export const QUESTIONS: readonly Question[] = Object.entries(questionTexts).map(
  ([name, sql]) => ({
    name,
    asks: (sql.split("\n")[0] ?? "").replace(/^-- /, ""),
    sql,
  }),
);

export function questionNamed(name: string): Question | undefined {
  return QUESTIONS.find((question) => question.name === name);
}
