// The order in which the editor was told what words can be: a type is sent as its number.
import type { SemanticTokensLegend } from "vscode-languageserver";
import type { TokenType } from "../ide/semantic-tokens.ts";

/** The standard types of the protocol that are used. */
export const TYPE_NUMBERS: Readonly<Record<TokenType, number>> = {
  keyword: 0,
  property: 1,
  variable: 2,
  class: 3,
  type: 4,
  number: 5,
  string: 6,
  comment: 7,
  enumMember: 8,
  parameter: 9,
  operator: 10,
  namespace: 11,
};

/** The first modifier, as a bit. */
export const DECLARATION = 1;

export const LEGEND: SemanticTokensLegend = {
  tokenTypes: Object.keys(TYPE_NUMBERS),
  tokenModifiers: ["declaration"],
};
