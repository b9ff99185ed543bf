// The rules about the text of a record.
import type { Rule, TextRule } from "../rule.ts";
import { classWrong } from "./class-wrong.ts";
import { dateWrong } from "./date-wrong.ts";
import { factMissing } from "./fact-missing.ts";
import { factTwice } from "./fact-twice.ts";
import { lineDamaged } from "./line-damaged.ts";
import { nameAmbiguous } from "./name-ambiguous.ts";
import { nameUnknown } from "./name-unknown.ts";
import { notValidHere } from "./not-valid-here.ts";
import { numberComma } from "./number-comma.ts";
import { rangeReversed } from "./range-reversed.ts";
import { unitMissing } from "./unit-missing.ts";
import { unitWrong } from "./unit-wrong.ts";
import { warnIdle } from "./warn-idle.ts";
import { wordMisplaced } from "./word-misplaced.ts";
import { wordUnknown } from "./word-unknown.ts";

/** What an entry's own lines have wrong. */
export const TEXT_RULES: readonly TextRule[] = [
  wordUnknown,
  wordMisplaced,
  lineDamaged,
  unitMissing,
  unitWrong,
  numberComma,
  rangeReversed,
  classWrong,
  dateWrong,
  factTwice,
];

/** What they have wrong beside the other entries. */
export const NAME_RULES: readonly Rule[] = [
  nameUnknown,
  nameAmbiguous,
  factMissing,
  notValidHere,
  warnIdle,
];
