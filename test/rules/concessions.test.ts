// What is said of concessions, beyond what the pages' samples show: what each lacks, what it can't accept, and where it has been passed.
import { describe, expect, test } from "vitest";
import { foundIn, toldIn } from "./found.ts";

const HEAD = `job winch
  units inch
part shaft
part case
journal front on shaft
  read 0.8740
bore front in case
  read 0.8760
fit front of journal front in bore front
  want 0.0008 to 0.0016
`;
const SIGNED = '  why "Slow" by AK on 2026-11-05\n';
const concession = (allows: string, ...facts: readonly string[]): string =>
  `${HEAD}concession c\n  allows ${allows}\n${facts.join("")}`;
const told = (text: string): readonly string[] =>
  ["concession-idle", "concession-spent", "concession-unsigned"].flatMap(
    (code) => toldIn(text, code),
  );

describe("a concession", () => {
  test("that nobody could sign is a warning at the code, signed or not, and its fix keeps every line as a comment", () => {
    const fix = (from: number, to: number): readonly string[] => [
      "  fix: Make this concession a comment",
      ...Array.from({ length: to - from + 1 }, (_, at) =>
        at === 0
          ? `    ${String(from)}:1-1 "# "`
          : `    ${String(from + at)}:3-3 "# "`,
      ),
    ];
    expect(
      told(concession("press-yields on fit front", "  up to 0.5\n")),
    ).toEqual([
      "12:10-22 warning concession-idle of concession c: This concession accepts nothing: `press-yields` can't be signed away. Put right what the finding says; it stands until then.",
      ...fix(11, 13),
    ]);
    expect(told(concession("fit-unsure on fit front"))).toEqual([
      "12:10-20 warning concession-idle of concession c: This concession accepts nothing: `fit-unsure` has no value that a bound could hold. Put right what the finding says; it stands until then.",
      ...fix(11, 12),
    ]);
  });

  test("that is passed is told beside the finding that passes it", () => {
    expect(
      told(
        concession(
          "fit-loose on fit front",
          "  # agreed\n\n",
          "  up to 0.0018\n",
          SIGNED,
        ),
      ),
    ).toEqual([
      "15:3-15 error concession-spent of concession c: The `fit-loose` of fit front is past what was signed for, so it is not accepted. Put it right, or have it looked at and signed anew.",
      "  see 9:5-10: The clearance is 0.0020 in and 0.0008 to 0.0016 in is wanted: 0.0004 in too much at the loosest place. Make bore front new, or build journal front up.",
    ]);
    expect(
      told(concession("fit-loose on fit front", "  up to 0.0020\n", SIGNED)),
    ).toEqual([]);
  });

  test("says what it lacks, of three things, and what to write", () => {
    const UP = "  up to 0.0020\n";
    const lacks = (...facts: readonly string[]): readonly string[] =>
      told(concession("fit-loose on fit front", ...facts));
    expect(lacks()).toEqual([
      '11:12-13 error concession-unsigned of concession c: This concession does not say who signed it, the day and up to what value, so it accepts nothing: write `why "…" by NAME on DATE`.',
    ]);
    expect(lacks(UP)).toEqual([
      '11:12-13 error concession-unsigned of concession c: This concession does not say who signed it and the day, so it accepts nothing: write `why "…" by NAME on DATE`.',
    ]);
    expect(lacks(UP, '  why "Slow" by AK\n')).toEqual([
      '14:3-19 error concession-unsigned of concession c: This concession does not say the day, so it accepts nothing: write `why "…" by NAME on DATE`.',
    ]);
    expect(lacks(SIGNED)).toEqual([
      "13:3-33 error concession-unsigned of concession c: This concession does not say up to what value, so it accepts nothing: write `up to` and the value that is still good enough.",
    ]);
    expect(lacks(UP, SIGNED)).toEqual([]);
  });

  test("of a finding that is not there, or has no value to hold, is idle", () => {
    const idle = (allows: string, facts = ""): string =>
      foundIn(
        concession(allows, "  up to 3\n", SIGNED).replace(
          "part shaft",
          `${facts}part shaft`,
        ),
        "concession-idle",
      )
        .map(({ message, level }) => `${level}: ${message}`)
        .join("\n");
    expect(idle("gauge-coarse on journal front")).toBe(
      "hint: This concession accepts nothing: journal front has no finding `gauge-coarse`. Take it out, or keep it as a record of what was allowed.",
    );
    const coarse = "gauge mic-2\n  resolution 0.0005\n";
    expect(
      foundIn(
        concession("gauge-coarse on journal front", "  up to 3\n", SIGNED)
          .replace("part shaft", `${coarse}part shaft`)
          .replace(
            "  read 0.8740\n",
            "  limits 0.8740 to 0.8750\n  read 0.8745 with mic-2\n",
          ),
        "concession-idle",
      ).map(({ message }) => message),
    ).toEqual([
      "This concession accepts nothing: the `gauge-coarse` of journal front has no value that a bound could hold. Take it out, or keep it as a record of what was allowed.",
    ]);
  });

  test("is told nothing of while its code or what it is for is not there, or it can't be read", () => {
    for (const text of [
      concession("none-such on fit front"),
      concession("fit-loose on fit none", "  up to 0.0018\n", SIGNED),
      concession("fit-loose on concession c"),
      concession("fit-loose on fit front", "  up to 0.0018x\n"),
      concession("fit-loose on fit front", "  up to 0.0018\n", "  why Slow\n"),
    ])
      expect(told(text)).toEqual([]);
  });

  test("that accepts a finding names itself, who signed it and when, beside it", () => {
    expect(
      toldIn(
        concession("fit-loose on fit front", "  up to 0.0020\n", SIGNED),
        "fit-loose",
      ),
    ).toEqual([
      "9:5-10 information fit-loose of fit front, accepted by c: The clearance is 0.0020 in and 0.0008 to 0.0016 in is wanted: 0.0004 in too much at the loosest place. Make bore front new, or build journal front up. Accepted by concession c, signed by AK on 2026-11-05.",
      "  see 5:9-14: journal front: 0.8740 in, measured",
      "  see 7:6-11: bore front: 0.8760 in, measured",
      "  see 11:12-13: what was signed for",
    ]);
    // of another finding at the same entry nothing is accepted
    expect(
      foundIn(
        concession("fit-tight on fit front", "  up to 0.0020\n", SIGNED),
        "fit-loose",
      )[0]?.accepted,
    ).toBe(null);
  });
});
