// What is asked of an entry and how its verdict was reached, as sentences of the hover and of the sheet.
import { describe, expect, test } from "vitest";
import { askedOf, guardOf } from "../../server/model/asked.ts";
import { opened } from "../ide/caret.ts";

const JOB = `job winch
  units inch
  verdict guarded
gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00005
gauge mic-2
  kind micrometer
  resolution 0.00001
part layshaft
part case
  material iron-grey
journal front on layshaft
  limits 0.8740 to 0.8745 from "yard drawing L-204"
  service-limit 0.8735 from "maker's manual"
  read 0.87420 with mic-1
journal rear on layshaft
  limits 22 mm f7
  read 0.87320
hole front in case
  limits 1.0000 to 1.0005
  boss 1.75
  read 1.00020 with mic-1
bush front in hole front
  material bronze-c932
  id 0.8715
  read od 1.00100 with mic-2
bore front in case
  read 0.87520 with mic-1
press front of bush front in hole front
  want 0.0006 to 0.0012
fit front of journal front in bore front
  want 0.0008 to 0.0016
  want-hot 0.0005 to 0.0020
`;
const { shop } = opened({ "job.thou": JOB }, "job.thou");
const simple = opened(
  { "job.thou": JOB.replace("  verdict guarded\n", "") },
  "job.thou",
).shop;

describe("what is asked", () => {
  test.each([
    [
      "journal front",
      [
        "Limits: 0.8740 to 0.8745 in, from yard drawing L-204",
        "Service limit: 0.8735 in, from maker's manual",
      ],
    ],
    ["hole front", ["Limits: 1.0000 to 1.0005 in"]],
    [
      "fit front",
      [
        "Wanted: 0.0008 to 0.0016 in",
        "Wanted hot or cold: 0.0005 to 0.0020 in",
      ],
    ],
    ["press front", ["Wanted: 0.0006 to 0.0012 in"]],
    ["part case", []],
    ["journal middle", []],
  ])("of %s", (ref, sentences) => {
    expect(askedOf(shop, ref)).toEqual(sentences);
  });

  test("of a size with a class, in the job's units, with its class", () => {
    // ISO 286-2: f7 of 22 mm is −0.020 to −0.041 mm, so 21.959 to 21.980
    expect(askedOf(shop, "journal rear")).toEqual([
      "Limits: 0.86453 to 0.86535 in (f7)",
    ]);
  });
});

test("of a line that can't be read nothing is asked", () => {
  const text = JOB.replace("limits 1.0000 to 1.0005", "limits 1.0000 to");
  const damaged = opened({ "job.thou": text }, "job.thou").shop;
  expect(askedOf(damaged, "hole front")).toEqual([]);
});

describe("how a guarded verdict was reached", () => {
  test("says by how much the limits are held back", () => {
    // U = 0.00005 with k = 2 is 0.000025 of one; 1.64 times that is 0.000041
    expect(guardOf(shop, "journal front")).toBe(
      "Judged with the limits held back by 0.000041 in (k = 1.64, 95 % conformance, ISO 14253-1).",
    );
    // two of them, in quadrature: 1.64 · √2 · 0.000025 = 0.000058
    expect(guardOf(shop, "fit front")).toMatch(
      /^Judged with the limits held back by 0\.00005[89]\d* in \(k = 1\.6[45]/u,
    );
  });

  test("says what it waits for, each once", () => {
    expect(guardOf(shop, "journal rear")).toBe(
      "The verdict is unsure for want of the gauge that read journal rear.",
    );
    expect(guardOf(shop, "press front")).toBe(
      "The verdict is unsure for want of the uncertainty of gauge mic-2.",
    );
  });

  test("says nothing where nothing is judged, or nobody asked for a guard", () => {
    for (const ref of ["bore front", "part case", "journal middle"])
      expect(guardOf(shop, ref)).toBe("");
    for (const ref of ["journal front", "journal rear", "fit front"])
      expect(guardOf(simple, ref)).toBe("");
  });
});
