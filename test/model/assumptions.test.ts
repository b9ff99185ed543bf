// What a result rests on that nobody wrote: said where it was used, and not where it was not.
import { describe, expect, test } from "vitest";
import { assumptionsOf } from "../../server/model/assumptions.ts";
import { resultsOf } from "../../server/model/results.ts";
import { opened } from "../ide/opened.ts";

const JOB = `job a
  units inch
  temperature 68 F
part shaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on shaft
  read 0.87430
hole front in case
  boss 1.75
  read 1.00000
bush front in hole front
  material bronze-c932
  construction solid
  od 1.0010 to 1.0011
  id 0.8715 to 0.8720
  length 1
bore front in bush front
press front of bush front in hole front
reamer r
  size 0.8755
fit front of journal front in bore front
  want 0.0008 to 0.0020
line l
  bore front from 0 to 1
  ream with r
`;

function said(
  ref: string,
  change: readonly (readonly [string, string])[] = [],
): readonly string[] {
  let text = JOB;
  for (const [from, to] of change) {
    if (!text.includes(from)) throw new Error(`no ${from}`);
    text = text.replace(from, to);
  }
  const { shop } = opened(text);
  return assumptionsOf(shop, ref, resultsOf(shop, ref));
}

const GAUGE =
  "A gauge is taken to have a scale of steel, 6.39 uin/in-F, and to be as warm as what it reads where its line says nothing else.";
const AT_20 = "Sizes are at 20 °C (ISO 1).";
const OVERSIZE =
  "No oversize is written for a reamer in this material: taken as zero.";
const READ = "  read 0.87430\n";

describe("of a size", () => {
  const ofJob =
    "Readings of journal front without a temperature are taken at the job's, 68 °F (20 °C).";

  test("that is not known: nothing", () => {
    expect(said("journal front", [[READ, ""]])).toEqual([]);
  });

  test("that is limits: the temperature that sizes are at", () => {
    expect(
      said("journal front", [[READ, "  limits 0.8740 to 0.8745\n"]]),
    ).toEqual([AT_20]);
  });

  test("that is read: at whose temperature, the line's, the job's or none", () => {
    expect(said("journal front")).toEqual([AT_20, ofJob]);
    expect(said("journal front", [["0.87430", "0.87430 at 68 F"]])).toEqual([
      AT_20,
    ]);
    expect(said("journal front", [["  temperature 68 F\n", ""]])).toEqual([
      AT_20,
      "Some readings of journal front have no temperature, and the job has none: taken as read at 20 °C.",
    ]);
  });

  test("of whose readings one alone has no temperature, or one alone is not at 20 °C: the same", () => {
    const two = (near: string, far: string) =>
      said("journal front", [
        [READ, `  read near 0.87430${near}\n  read far 0.87432${far}\n`],
      ]);
    expect(two("", " at 68 F")).toEqual([AT_20, ofJob]);
    expect(two(" at 68 F", " at 86 F")).toEqual([
      AT_20,
      GAUGE,
      "The expansion of material steel-4140 is the shipped value.",
    ]);
    expect(two(" at 68 F", " at 68 F")).toEqual([AT_20]);
  });

  test("of a hole, as of a journal; of what has no size of its own: nothing", () => {
    expect(said("hole front")).toEqual([
      AT_20,
      "Readings of hole front without a temperature are taken at the job's, 68 °F (20 °C).",
    ]);
    for (const ref of ["bush front", "part case", "reamer r"])
      expect(said(ref)).toEqual([]);
  });

  test("that is brought to 20 °C: by whose expansion, where it is not the job's own", () => {
    const warm = ["0.87430", "0.87430 at 86 F"] as const;
    expect(said("journal front", [warm])).toEqual([
      AT_20,
      GAUGE,
      "The expansion of material steel-4140 is the shipped value.",
    ]);
    expect(
      said("journal front", [
        warm,
        [
          "reamer r\n",
          "material steel-4140\n  expansion 12.3 um/m-K\nreamer r\n",
        ],
      ]),
    ).toEqual([AT_20, GAUGE]);
  });

  test("that a gauge read which was not as warm: its scale alone is taken", () => {
    expect(
      said("journal front", [["0.87430", "0.87430 at 68 F, gauge 86 F"]]),
    ).toEqual([
      AT_20,
      "A gauge is taken to have a scale of steel, 6.39 uin/in-F.",
    ]);
  });

  test("that is cut: the oversize, where none is written", () => {
    expect(said("bore front")).toEqual([AT_20, OVERSIZE]);
    expect(
      said("bore front", [
        ["size 0.8755\n", "size 0.8755\n  oversize +0 to +0.0002\n"],
      ]),
    ).toEqual([AT_20]);
  });
});

test("of a press of a wrapped bush: the ring that it is taken as", () => {
  const ring =
    "bush front is wrapped: taken as a whole ring, and its od as with its joint closed.";
  expect(
    said("press front", [["construction solid", "construction wrapped"]]),
  ).toContain(ring);
  expect(said("press front")).not.toContain(ring);
});

test("of a line: the oversize, where a reamer that was looked at has none", () => {
  expect(said("line l")).toEqual([OVERSIZE]);
  expect(
    said("line l", [
      ["size 0.8755\n", "size 0.8755\n  oversize +0 to +0.0002\n"],
    ]),
  ).toEqual([]);
});

describe("of a press", () => {
  const smoothing =
    "The finishes that press front joins are not both written: no smoothing is taken off.";
  const modulus = (name: string): string =>
    `Modulus and Poisson's ratio of material ${name} are shipped values.`;
  const friction = "No friction is written: taken as 0.05 to 0.15.";
  const PRESS = "press front of bush front in hole front\n";

  test("what stands for each figure that nobody wrote", () => {
    expect(said("press front")).toEqual([
      AT_20,
      "Readings of hole front without a temperature are taken at the job's, 68 °F (20 °C).",
      modulus("bronze-c932"),
      modulus("aluminium-356-t6"),
      friction,
      smoothing,
    ]);
  });

  test("nothing of the readings of a bush, whose size is not what a fit runs on", () => {
    expect(
      said("press front", [
        ["  od 1.0010 to 1.0011\n", "  read od 1.0010\n"],
      ]).filter((each) => each.startsWith("Readings of")),
    ).toEqual([
      "Readings of hole front without a temperature are taken at the job's, 68 °F (20 °C).",
    ]);
  });

  test("nothing of what is written", () => {
    expect(
      said("press front", [[PRESS, `${PRESS}  friction 0.1 to 0.2\n`]]),
    ).not.toContain(friction);
    expect(
      said("press front", [[PRESS, `${PRESS}  smoothing 0.0001\n`]]),
    ).not.toContain(smoothing);
    const finish = "  finish 16 uin Ra\n";
    const one = ["  boss 1.75\n", `  boss 1.75\n${finish}`] as const;
    expect(said("press front", [one])).toContain(smoothing);
    expect(
      said("press front", [
        one,
        ["  construction solid\n", `  construction solid\n${finish}`],
      ]),
    ).not.toContain(smoothing);
  });

  test("nothing of what is not worked out", () => {
    const bushless = said("press front", [["  od 1.0010 to 1.0011\n", ""]]);
    expect(bushless).not.toContain(friction);
    expect(bushless).not.toContain(smoothing);
    expect(bushless).not.toContain(modulus("bronze-c932"));
    // without its length no force is worked out, and where the case lets go takes no friction
    const short = said("press front", [["  length 1\n", ""]]);
    expect(short).toContain(smoothing);
    expect(short).not.toContain(friction);
  });
});

describe("of a fit that is worked out hot", () => {
  const FIT = "  want 0.0008 to 0.0020\n";
  const bush = "The bush is taken to be as warm as its case.";
  const smoothing =
    "The finishes that press front joins are not both written: no smoothing is taken off.";

  test("how warm the bush is, where that is not written, and what the press below rests on", () => {
    const hot = said("fit front", [
      [FIT, `${FIT}  hot shaft 140 F, case 130 F\n`],
    ]);
    expect(hot).toContain(bush);
    expect(hot).toContain(smoothing);
    const written = said("fit front", [
      [FIT, `${FIT}  hot shaft 140 F, bush 135 F, case 130 F\n`],
    ]);
    expect(written).not.toContain(bush);
    expect(written).toContain(smoothing);
  });

  test("nothing of that where it is only worked out at 20 °C", () => {
    const cold = said("fit front");
    expect(cold).not.toContain(bush);
    expect(cold).not.toContain(smoothing);
    expect(cold).toContain(AT_20);
  });
});
