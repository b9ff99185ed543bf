// What hover says of an entry, and where it says nothing. Figures are worked out by hand beside each; how they are come by is tested with the
// engineering.
import { describe, expect, test } from "vitest";
import { LIMIT_OF_RECORD } from "../../server/model/cautions.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import { atCaret, CRIB, JOB } from "./caret.ts";
import { hover, said, job, row } from "./hover-said.ts";

describe("where there is nothing to say", () => {
  test.each([
    ["a blank", "part a\n |  dowels 2\n"],
    ["a comment", "part a # a p|art\n"],
    ["a text", 'part a\n  note "limits |0.5"\n'],
    ["what nobody can read", "part a\n  dowels 2 of no|thing\n"],
    ["an unknown word", "jur|nal a on b\n"],
    ["past the end", "part a   |\n"],
  ])("%s", (_, marked) => {
    expect(said(marked)).toBe("");
  });
});

describe("an entry", () => {
  test("a measured journal: what it is, its size at 20 °C, verdict, guard, working and what was assumed", () => {
    const { markdown, over } = hover(job("jour|nal front on"));
    expect(over).toBe("journal front");
    expect(markdown).toMatch(
      /^\*\*journal front\*\* on part layshaft, steel-4140: where a shaft runs\./,
    );
    expect(markdown).toContain(
      "Limits: 0.8740 to 0.8745 in, from yard drawing L-204",
    );
    // 72 °F is 2.22 K over 20 °C; 0.87428 in · (12.3 − 11.5)e-6 · 2.22 = 0.0000016 in comes off: 0.87428 in. 68 °F is 20 °C.
    expect(row(markdown, "size")).toEqual([
      "size",
      "0.87428 to 0.87435 in",
      "measured",
      "in tolerance",
    ]);
    expect(markdown).toMatch(
      /held back by 0\.0000\d+ in \(k = 1\.6\d, 95 % conformance, ISO 14253-1\)/,
    );
    expect(markdown).toMatch(/Working:[^]*JCGM 100/);
    expect(markdown).toContain("- Sizes are at 20 °C (ISO 1).");
    expect(markdown).toContain(
      "- The expansion of material steel-4140 is the shipped value.",
    );
  });

  test("what is only drawn is predicted", () => {
    expect(row(said(job("journal re|ar on")), "size")).toEqual([
      "size",
      "0.8740 to 0.8745 in",
      "predicted",
    ]);
  });

  test("what is unknown says what would settle it", () => {
    const markdown = said("job j\n  units mm\npart s\njour|nal a on s\n");
    expect(row(markdown, "size")).toEqual([
      "size",
      "unknown",
      "needs a reading of journal a",
    ]);
  });

  test("a fit: what is wanted, its clearance with the working, and that it is diametral", () => {
    const markdown = said(job("fi|t front of"));
    expect(markdown).toMatch(
      /^\*\*fit front\*\* of journal front in bore front: a running fit\./,
    );
    expect(markdown).toContain("Wanted: 0.0008 to 0.0016 in");
    const [label, value, how] = row(markdown, "clearance (diametral)");
    expect([label, how]).toEqual(["clearance (diametral)", "predicted"]);
    expect(markdown).toContain(`= ${value?.split(" ")[0] ?? "?"} in`);
  });

  test("oversize taken as zero is said on the bore that is cut", () => {
    const bare = CRIB.replaceAll(/ {2}oversize .*\n/g, "");
    const { open, position } = atCaret(job("bo|re front in"), {
      "crib.thou": bare,
    });
    expect(hoverAt(open, position)?.markdown).toMatch(
      /No oversize is written .* taken as zero/,
    );
    expect(said(job("bo|re front in"))).not.toContain("oversize is written");
  });

  test("a reading without a temperature: taken at the job's, or as at 20 °C where the job has none", () => {
    const record = (temperature: string): string =>
      `job j\n  units mm\n${temperature}part s\n  material steel-4140\njournal |a on s\n  read 25.010 25.012\n`;
    expect(said(record(""))).toContain(
      "have no temperature, and the job has none: taken as read at 20 °C",
    );
    expect(said(record("  temperature 30 C\n"))).toContain(
      "taken at the job's, 30 °C (86 °F)",
    );
    expect(
      said(
        "job j\n  units mm\npart s\njournal |a on s\n  read 25.010 at 20 C\n",
      ),
    ).not.toContain("taken");
  });

  test("a step: what is done, what it waits for, and the cautions of a cut without being asked", () => {
    const markdown = said(job("step re|am\n"));
    expect(markdown).toContain("Ream from the pilot, forward turns only");
    expect(markdown).toContain("**waits: step mark to be done**");
    for (const title of [
      "A reamer turns one way",
      "A hand reamer takes no power",
      "Chips and oil",
      "Compressed air",
      "Lead and beryllium",
    ])
      expect(markdown).toContain(`**${title}.**`);
    expect(markdown).not.toContain("**Pressing.**");
    expect(markdown).toContain(LIMIT_OF_RECORD);
  });

  test("a press into a blind hole: press, cavity, heat and cold; of a porous bush neither cold nor solvent", () => {
    const markdown = said(job("step press|-in"));
    for (const title of [
      "Pressing",
      "A closed cavity",
      "Hot parts",
      "Frozen parts",
    ])
      expect(markdown).toContain(`**${title}.**`);
    const porous = JOB.replace(
      "material bronze-c932",
      "construction porous\n  material sae-841",
    );
    const found = said(porous.replace("step press-in", "step press|-in"));
    expect(found).toContain("**An oil-filled bush.**");
    expect(found).not.toContain("**Frozen parts.**");
  });

  test("a first run, heat and lifting bring theirs by the step's words", () => {
    expect(said("job j\nstep fir|st-run\n")).toContain("**First run.**");
    expect(
      said('job j\nstep s|\n  do "Warm the case in the oven"\n'),
    ).toContain("**Hot parts.**");
    expect(said('job j\nstep s|\n  do "Lift the shaft out"\n')).toContain(
      "**Lifting.**",
    );
    expect(said('job j\nstep s|\n  do "Measure the journals"\n')).not.toContain(
      "Cautions",
    );
  });

  test("a job says what is next", () => {
    expect(said(job("job win|ch-layshaft"))).toContain("Next: step mark");
  });

  test("the second of a name says that the first counts", () => {
    expect(said("part a\npart |a\n")).toContain("the first of them counts");
  });

  test("a kind without a name says how it is written", () => {
    expect(said("fi|t\n")).toContain("`fit NAME of JOURNAL in BORE`");
  });
});
