// The pieces that many findings are made of: how an excess is shown, where a fact is written under an entry, and how long a sentence may be.
import { describe, expect, test } from "vitest";
import { showExcess, stepOfExcess } from "../../server/rules/show-excess.ts";
import { theOne, toldIn } from "./found.ts";

const INCH = 0.0254;

describe("an excess", () => {
  test("is shown in the step of its value, or finer where it would read as nothing", () => {
    expect(showExcess(0.0002 * INCH, "inch", 0.0001 * INCH)).toBe("0.0002 in");
    expect(showExcess(0.00002 * INCH, "inch", 0.0001 * INCH)).toBe(
      "0.00002 in",
    );
    expect(showExcess(0.004e-3, "mm", 0.001e-3)).toBe("0.004 mm");
    expect(showExcess(0.0004e-3, "mm", 0.001e-3)).toBe("0.0004 mm");
    expect(showExcess(0.0002 * INCH, "inch", undefined)).toBe("0.0002 in");
  });

  test("that no digit shows is less than the least that one does, in its unit", () => {
    // a tenth of a nanometre is 0.000000004 in
    expect(showExcess(1e-10, "inch", 0.0001 * INCH)).toMatch(
      /^less than 0\.0+1 in$/u,
    );
    expect(showExcess(1e-10, "mm", 0.001e-3)).toMatch(
      /^(?:less than )?0\.0+1 mm$/u,
    );
  });

  test("has the finer of its own step and its value's", () => {
    expect(stepOfExcess(3, undefined)).toBe(3);
    expect(stepOfExcess(3, 2)).toBe(2);
    expect(stepOfExcess(2, 3)).toBe(2);
  });
});

describe("a fact that a fix writes under an entry", () => {
  const edits = (text: string): readonly unknown[] =>
    theOne(text, "vent-missing").fixes.flatMap(({ edits: all }) =>
      all.map(({ place: { line, start, end }, text: written }) => [
        line,
        start,
        end,
        written,
      ]),
    );
  const job = (eol: string, end: string): string =>
    `job winch${eol}  units inch${eol}part case${eol}hole a in case${eol}  depth 1.5 blind${end}`;

  test("stands after the last line of it that has anything, in the line ends of the file", () => {
    const bush = (eol: string): string => `bush a in hole a${eol}`;
    expect(edits(job("\n", `\n\n\n${bush("\n")}`))).toEqual([
      [4, 17, 17, "\n  vented"],
    ]);
    expect(edits(job("\r\n", `\r\n\r\n${bush("\r\n")}`))).toEqual([
      [4, 17, 17, "\r\n  vented"],
    ]);
    // an entry that ends the file without a line end
    expect(
      edits(
        `job winch\n  units inch\npart case\nbush a in hole a\nhole a in case\n  depth 1.5 blind`,
      ),
    ).toEqual([[5, 17, 17, "\n  vented"]]);
    expect(
      edits(
        "job winch\r\n  units inch\r\npart case\r\nbush a in hole a\r\nhole a in case\r\n  depth 1.5 blind",
      ),
    ).toEqual([[5, 17, 17, "\r\n  vented"]]);
  });
});

describe("a sentence", () => {
  const name = (length: number): string => "x".repeat(length);

  test("shows the beginning of what it quotes, past four hundred letters", () => {
    const of = (length: number): string =>
      theOne(
        `job j\n  units inch\njournal a on ${name(length)}\n`,
        "name-unknown",
      ).message;
    const most = 400 - (of(1).length - 1);
    expect(of(most)).toHaveLength(400);
    expect(of(most)).toContain(`\`${name(most)}\``);
    expect(of(most + 1)).toMatch(/^There is no part `x{60}…` here/u);
  });

  test("ends at a thousand, whatever it is made of, and never in half a letter", () => {
    const ring = (letter: string, count: number): string =>
      `job j\n  units inch\n${Array.from(
        { length: count },
        (_, at) =>
          `step ${letter}${String(at)}\n  after ${letter}${String((at + 1) % count)}\n`,
      ).join("")}`;
    // some 18 letters for each step that waits
    expect(theOne(ring("s", 40), "step-loop").message).toMatch(/out\.$/u);
    const cut = theOne(ring("s", 100), "step-loop").message;
    expect(cut).toHaveLength(1000);
    expect(cut).toMatch(/…$/u);
    expect(theOne(ring("s", 100), "step-loop").related).toHaveLength(99);
  });

  test("writes out what a terminal would obey", () => {
    expect(
      toldIn(
        "job j\n  units inch\npart a\n  materil \u{1B}[2Jx\n",
        "word-unknown",
      ).join("\n"),
    ).not.toContain("\u{1B}");
  });
});
