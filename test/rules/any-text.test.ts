// No text, however broken, makes a check throw or brings a fix that makes it worse.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { Finding } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { readNumber } from "../../server/core/quantity/exact.ts";
import { allPages } from "./pages.ts";
import { check, FIT, withFix } from "./check-job.ts";

describe("any text", () => {
  const lines = allPages()
    .flatMap((page) => page.samples)
    .flatMap((sample) => sample.files)
    .flatMap((file) => file.text.split("\n"))
    .filter((line) => line.trim() !== "");
  const pieces = [
    ...["0", "1", "8", ".", ",", "-", "+", "/", " ", '"', "#", "(", "'"],
    ...["to", "in", "at", "mm", "H7", "\u{B0}", "\u{2013}", "  ", "7/8"],
  ];
  const broken = fc
    .tuple(
      fc.constantFrom(...lines),
      fc.nat(40),
      fc.nat(4),
      fc.constantFrom("", ...pieces),
    )
    .map(
      ([line, at, cut, piece]) =>
        line.slice(0, at) + piece + line.slice(at + cut),
    );
  const file = fc
    .array(broken, { minLength: 1, maxLength: 12 })
    .map((all) => `job j\n  units inch\n${all.join("\n")}\n`);

  test("is checked without a throw; findings and fixes lie inside it, and a sure fix never adds an error of its line", () => {
    fc.assert(
      fc.property(file, (text) => {
        const all = text.split("\n");
        const found = check(text);
        for (const { place, message, fixes } of found) {
          const line = all[place.line] ?? "";
          expect(place.start).toBeLessThanOrEqual(place.end);
          expect(place.end).toBeLessThanOrEqual(line.length);
          expect(message).not.toMatch(/undefined|NaN|\[object/);
          for (const { edits } of fixes) {
            for (const edit of edits) {
              const target = all[edit.place.line] ?? "";
              expect(edit.place.start).toBeLessThanOrEqual(edit.place.end);
              expect(edit.place.end).toBeLessThanOrEqual(target.length);
            }
          }
        }
        for (const finding of found) {
          for (const fix of finding.fixes.filter((each) => each.safe)) {
            const after = check(withFix(text, fix));
            const at = (each: Finding): boolean =>
              each.place.line === finding.place.line &&
              each.code === finding.code;
            expect(
              after.filter(at).length,
              `${fix.title} in ${all[finding.place.line] ?? ""}`,
            ).toBeLessThan(found.filter(at).length);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  test("after any run of edits the findings are those of the text read afresh", () => {
    const heads = [
      ...["journal front on shaft", "jurnal front on shaft", "journal on"],
      ...["the journal front on shaft", "journal journal front on shaft"],
      ...["journal rear on shaft", "  journal front on shaft", "part front"],
      ...["front on shaft", "bore front in case", "step front", "# nothing"],
    ];
    const withHeads = fc
      .array(fc.constantFrom(...heads), { minLength: 2, maxLength: 4 })
      .map(
        (some) =>
          `job j\n  units inch\n${some.join("\n")}\n${FIT}step s\n  checks front\n  after front\n`,
      );
    const versions = fc.array(withHeads, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(versions, (texts) => {
        const project = createProject({ root: "" });
        for (const text of texts) {
          project.setFile("job.thou", readLines(text));
          expect(project.check("job.thou").findings).toEqual(check(text));
        }
      }),
    );
  });

  test("what is offered for a number is a number", () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{1,4}(\.\d{1,3})?,\d{1,4}(\.\d{1,3})?$/),
        (number) => {
          const found = check(
            `job j\n  units mm\npart s\n  joint gasket ${number} mm\n`,
          ).filter((finding) => finding.code === "number-comma");
          expect(found.length).toBe(1);
          for (const fix of found[0]?.fixes ?? [])
            expect(readNumber(fix.edits[0]?.text ?? "")).toBeDefined();
        },
      ),
    );
  });
});
