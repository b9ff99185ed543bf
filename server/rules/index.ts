// Every rule, in the order of the language page.
import type { Rule, TextRule } from "./rule.ts";
import { fitTight } from "./fits/fit-tight.ts";
import { numberComma } from "./text/number-comma.ts";

export const TEXT_RULES: readonly TextRule[] = [numberComma];

export const RULES: readonly Rule[] = [fitTight];
