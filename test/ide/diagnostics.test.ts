// How a finding is shown.
import { expect, test } from "vitest";
import { isFault, shown } from "../../server/ide/diagnostics.ts";
import type { Finding } from "../../server/model/result.ts";

const FINDING: Finding = {
  code: "fit-loose",
  level: "error",
  place: { file: "/a", line: 3, start: 4, end: 9 },
  message: "The fit is loose.",
  entry: "fit front",
  related: [],
  fixes: [],
  accepted: null,
};

test("a finding is shown as it is", () => {
  expect(shown(FINDING)).toMatchObject({
    level: "error",
    message: "The fit is loose.",
    code: "fit-loose",
  });
});

test("an accepted one is information, and says by which concession, with no fix of its own", () => {
  expect(shown({ ...FINDING, accepted: "front-loose" })).toEqual({
    code: "fit-loose",
    level: "information",
    place: FINDING.place,
    message: "The fit is loose. Accepted by concession front-loose.",
    related: [],
  });
});

test("errors and warnings are faults of a line that is typed, the rest is not", () => {
  const faults = (["error", "warning", "information", "hint"] as const).map(
    (level) => isFault(shown({ ...FINDING, level })),
  );
  expect(faults).toEqual([true, true, false, false]);
  expect(isFault(shown({ ...FINDING, accepted: "x" }))).toBe(false);
});
