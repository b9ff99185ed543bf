// Heat and cold of a press fit, written as if they were facts: what works them out, and where what is done is said.
import { expect, test } from "vitest";
import { HEAD, said } from "./said-of-line.ts";

const CODE = "word-unknown";
const WORKED =
  "how hot the case is to be, or how cold the bush, is worked out under its press (`heat-to`, `freeze-to`) and not written";
const STEP = `${HEAD}step press-in\n`;
const PRESS = `${HEAD}part case\nhole a in case\nbush a in hole a\npress a of bush a in hole a\n`;

test("under a step it is what the step does", () => {
  expect(said(CODE, "  heat case to 300 F # by oven", { under: STEP })).toEqual(
    [
      `\`heat\` begins no fact: ${WORKED}; what this step does is said in words, with \`do\`.`,
      "  fix: Write it as `do`",
      '    3-21 "do \\"heat case to 300 F\\""',
    ],
  );
});

test("under a step that says already what it does, and under a press, it may be a note", () => {
  const elsewhere =
    "what is done is said in words, with `do` under the step that presses it";
  for (const under of [`${STEP}  do "press it"\n`, PRESS])
    expect(said(CODE, "  chill bush to -40 F", { under })).toEqual([
      `\`chill\` begins no fact: ${WORKED}; ${elsewhere}.`,
      "  fix: Write it as `note`",
      '    3-22 "note \\"chill bush to -40 F\\""',
    ]);
});

test("in column 1, and with a text of its own, there is no fix", () => {
  expect(said(CODE, "heat case to 300 F", { under: PRESS })).toEqual([
    `\`heat\` begins no entry: ${WORKED}; what is done is said in words, with \`do\` under the step that presses it.`,
  ]);
  expect(said(CODE, '  heat case "well"', { under: STEP })).toHaveLength(1);
});
