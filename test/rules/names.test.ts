// Names that stand twice, over one file or several, and names in places of another kind.
import { describe, expect, test } from "vitest";
import { foundIn, theOne } from "./found.ts";

const GAUGE = "gauge mic-1\n  kind micrometer\n";
const shop = (name: string, rest: string): string =>
  `shop ${name}\n  units inch\n${rest}`;
const job = (rest: string): string => `job winch\n  units inch\n${rest}`;

describe("two files that a job uses share names", () => {
  const uses = job(`  use "own.thou"\n  use "other.thou"\npart case\n`);

  test("it is said at the use of the second, which neither file need know of", () => {
    const { message, place, level } = theOne(uses, "name-twice", {
      "own.thou": shop("own", GAUGE),
      "other.thou": shop("other", `${GAUGE}gauge mic-2\n  kind micrometer\n`),
    });
    expect(message).toBe(
      "`other.thou` and `own.thou` both have gauge mic-1, and only the first is used: give one of them another name.",
    );
    expect(place).toEqual({
      file: "job.thou",
      line: 3,
      start: "  use ".length,
      end: '  use "other.thou"'.length,
    });
    expect(level).toBe("error");
  });

  test("several names are counted, each once however often a file has it", () => {
    const more = "gauge mic-2\n  kind micrometer\npilot p-870\n  od 0.8700\n";
    const files = {
      "own.thou": shop("own", GAUGE + more),
      "other.thou": shop("other", GAUGE + GAUGE + more),
    };
    expect(theOne(uses, "name-twice", files).message).toContain(
      "both have gauge mic-1 and 2 more, and",
    );
  });

  test("a third file that has it too is told of the first", () => {
    const found = foundIn(
      uses
        .replace("part case\n", `part case\n`)
        .replace(
          '  use "other.thou"\n',
          '  use "other.thou"\n  use "third.thou"\n',
        ),
      "name-twice",
      {
        "own.thou": shop("own", GAUGE),
        "other.thou": shop("other", GAUGE),
        "third.thou": shop("third", GAUGE),
      },
    );
    expect(
      found.map(({ place, message }) => [
        place.line,
        /^.* have /u.exec(message)?.[0],
      ]),
    ).toEqual([
      [3, "`other.thou` and `own.thou` both have "],
      [4, "`third.thou` and `own.thou` both have "],
    ]);
  });

  test("it is said at the first use of a file that is used twice", () => {
    const { place } = theOne(
      uses.replace("part case\n", '  use "other.thou"\npart case\n'),
      "name-twice",
      { "own.thou": shop("own", GAUGE), "other.thou": shop("other", GAUGE) },
    );
    expect(place.line).toBe(3);
  });

  test("names that only one of them has twice are told in that file, not here", () => {
    expect(
      foundIn(uses, "name-twice", {
        "own.thou": shop("own", GAUGE + GAUGE),
        "other.thou": shop("other", ""),
      }),
    ).toEqual([]);
  });

  test("what they use in their turn is theirs to tell", () => {
    const files = {
      "own.thou": shop("own", GAUGE),
      "other.thou": shop("other", '  use "deep.thou"\n'),
      "deep.thou": shop("deep", GAUGE),
    };
    expect(foundIn(uses, "name-twice", files)).toEqual([]);
  });
});

describe("a name of the job that files which it uses have too", () => {
  test("names those files as this one would write them", () => {
    const text = job(`  use "own.thou"\n  use "../crib/other.thou"\n${GAUGE}`);
    const files = {
      "winches/own.thou": shop("own", GAUGE),
      "crib/other.thou": shop("other", GAUGE),
    };
    const found = foundIn(text, "name-twice", files, "winches/job.thou");
    expect(found.map(({ place, message }) => [place.line, message])).toEqual([
      [
        3,
        "`../crib/other.thou` and `own.thou` both have gauge mic-1, and only the first is used: give one of them another name.",
      ],
      [
        4,
        "`own.thou` and `crib/other.thou` have a gauge mic-1 too, and only this one is used: give one of them another name.",
      ],
    ]);
  });

  test("a step adds to the crib's of its name, and is none", () => {
    const text = job(`  use "own.thou"\nstep mark\n  do "Mark both halves"\n`);
    const files = { "own.thou": shop("own", 'step mark\n  do "Mark"\n') };
    expect(foundIn(text, "name-twice", files)).toEqual([]);
  });

  test("an entry whose name can't be read is no twin of another such", () => {
    expect(
      foundIn(job(`  use "own.thou"\npart 1st\npart 2nd\n`), "name-twice", {
        "own.thou": shop("own", "part 1st\n"),
      }),
    ).toEqual([]);
  });
});

describe("a second of a name in one file", () => {
  test("is given a number that no entry of its kind has", () => {
    const found = foundIn(
      job(
        "part case\npart case-2\npart lever\npart case\npart lever\njournal lever-2 on lever\n",
      ),
      "name-twice",
    );
    expect(
      found.map(({ place, fixes }) => [
        place.line,
        fixes.map(({ title, safe }) => `${title}, ${String(safe)}`),
        fixes.flatMap(({ edits }) => edits.map(({ text }) => text)),
      ]),
    ).toEqual([
      [5, ["Call this one `case-3`, false"], ["case-3"]],
      [6, ["Call this one `lever-2`, false"], ["lever-2"]],
    ]);
  });

  test("is told of the first one, every time", () => {
    const found = foundIn(
      job("part case\npart case\npart case\n"),
      "name-twice",
    );
    expect(
      found.map(({ place, message, related }) => [
        place.line,
        message,
        related.map((each) => [each.place.line, each.message]),
      ]),
    ).toEqual(
      [3, 4].map((line) => [
        line,
        "There is a part case already, and only the first is used: give one of them another name.",
        [[2, "The first part case."]],
      ]),
    );
  });
});

describe("a second opening", () => {
  test("of another name is told of the job, though a shop stands before it", () => {
    const { place, message, related, fixes } = theOne(
      "shop bench\n  units inch\njob winch\n  units inch\n",
      "name-twice",
    );
    expect(place).toMatchObject({ line: 0, start: 5, end: 10 });
    expect(message).toBe(
      "A file is one job or one shop, and this one is job winch already: write this one in a file of its own, and `use` it where it is needed.",
    );
    expect(related.map((each) => [each.place.line, each.message])).toEqual([
      [2, "The file begins here."],
    ]);
    expect(fixes).toEqual([]);
  });

  test("of the same name is a twin, said once", () => {
    const found = foundIn(
      "job winch\n  units inch\njob winch\n  units mm\n",
      "name-twice",
    );
    expect(found.map(({ message }) => message)).toEqual([
      "There is a job winch already, and only the first is used: give one of them another name.",
    ]);
  });

  test("beside one whose name can't be read is not told where the file begins", () => {
    const { message, related } = theOne(
      "job 1st\njob winch\n  units inch\n",
      "name-twice",
    );
    expect(message).toContain(", and this one is a job already: write");
    expect(related).toEqual([]);
  });
});

describe("a name in a place of another kind", () => {
  test("is asked for with the kind where the very name is there", () => {
    const { message, fixes } = theOne(
      job(
        "part case\nhole front in case\nbush front in hole front\nbore front in hole front\n",
      ),
      "name-unknown",
    );
    expect(message).toBe(
      "`front` is a hole, and here stands a bush or a part: did you mean `bush front`?",
    );
    expect(fixes.map(({ title }) => title)).toEqual(["Write `bush front`"]);
  });

  test("is offered each kind that the place takes, where both have it", () => {
    expect(
      theOne(
        job(
          "part front\nhole front in front\nbush front in hole front\nbore front in hole front\n",
        ),
        "name-unknown",
      ).message,
    ).toContain("did you mean `bush front` or `part front`?");
  });

  test("that no entry has is asked for by a name that is near", () => {
    expect(
      theOne(job("part case\nbore front in journal cse\n"), "name-unknown")
        .message,
    ).toBe(
      "Here stands a bush or a part, and `journal cse` is none: did you mean `case`?",
    );
  });
});
