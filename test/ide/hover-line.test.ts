// What hover says of a line: its window, the reamers in order, who conflicts and the ways out.
import { describe, expect, test } from "vitest";
import { JOB } from "./caret.ts";
import { said, job, row } from "./hover-said.ts";

describe("a line", () => {
  const WHOLE = JOB.replace(
    "\nline layshaft",
    "\nfit rear of journal rear in bore rear\n  want 0.0008 to 0.0016\nline layshaft",
  );

  test("the window, the reamers of the crib in order, sizes to buy and to have ground", () => {
    const markdown = said(
      WHOLE.replace("line layshaft\n  bore", "line lay|shaft\n  bore"),
    );
    // largest journal + least wanted: 0.8745 + 0.0008; smallest journal + most wanted: 0.8740 + 0.0016
    expect(markdown).toContain(
      "**0.87530 to 0.87560 in** (predicted: not every journal is measured)",
    );
    const [name, cuts, rear, front, , chance, serves] = row(
      markdown,
      "reamer r-8755",
    );
    expect([name, serves]).toEqual(["reamer r-8755", "at its likeliest cut"]);
    expect(cuts).toMatch(/^0\.8753\d to 0\.8756\d in$/);
    expect(rear).toMatch(/^0\.0008\d to 0\.0016\d in$/);
    expect(front).toMatch(/^0\.00\d+ to 0\.00\d+ in$/);
    expect(chance).toMatch(/^\d\d %$/);
    expect(row(markdown, "reamer r-875").at(-1)).toBe("**no**");
    // likeliest at 0.8753 in, on the very end of what is wanted
    expect(row(markdown, String.raw`7/8 in \*`).at(-1)).toBe(
      "at its likeliest cut",
    );
    expect(markdown).toMatch(/To have ground: 0\.875\d in/);
    expect(markdown).toContain("oversize taken as zero");
    expect(markdown).toContain("**A reamer turns one way.**");
  });

  // the check values of the engineering page: a reamer of 0.8110 in without oversize over journals of 0.80995 and 0.8097 in leaves 0.00105
  // and 0.0013 in (0.8110 − 0.80995, 0.8110 − 0.8097)
  test("a worked example", () => {
    const markdown = said(
      "job j\n  units inch\npart s\npart c\n" +
        "journal a on s\n  read 0.80995\njournal b on s\n  read 0.80970\nbore a in part c\nbore b in part c\n" +
        "fit a of journal a in bore a\n  want 0.0008 to 0.0015\nfit b of journal b in bore b\n  want 0.0008 to 0.0015\n" +
        "line |l\n  bore a from 0 to 1\n  bore b from 2 to 3\nreamer r\n  size 0.8110\n",
    );
    const cells = row(markdown, String.raw`reamer r \*`);
    expect(cells.slice(0, 4)).toEqual([
      String.raw`reamer r \*`,
      "0.8110 in",
      "0.00105 in",
      "0.00130 in",
    ]);
    expect(cells.at(-1)).toBe("yes");
    expect(markdown).toContain("(measured)");
  });

  test("no size for both: who conflicts, by how much, and the ways out", () => {
    const markdown = said(
      "job j\n  units inch\npart s\npart c\n" +
        "journal a on s\n  read 0.8100\njournal b on s\n  read 0.8080\nbore a in part c\nbore b in part c\n" +
        "fit a of journal a in bore a\n  want 0.0008 to 0.0012\nfit b of journal b in bore b\n  want 0.0008 to 0.0012\n" +
        "line |l\n  bore a from 0 to 1\n  bore b from 2 to 3\n",
    );
    // a wants 0.8108 to 0.8112, b 0.8088 to 0.8092: they lie 0.0016 in apart, halfway is 0.8100
    expect(markdown).toContain("**No one size suits the line**");
    expect(markdown).toContain("journal a and journal b conflict by 0.0016 in");
    expect(markdown).toContain(
      "Take 2 reamers: 0.8088 to 0.8092 in for journal b; 0.8108 to 0.8112 in for journal a.",
    );
    expect(markdown).toContain("Size down journal a by 0.0016 in or more.");
    expect(markdown).toContain(
      "Accept what 0.8100 in gives: 0.0000 in at journal a, 0.0020 in at journal b; 0.0008 in past what is wanted.",
    );
  });

  test("what it still needs", () => {
    expect(said(job("line lay|shaft\n  bore"))).toMatch(
      /unknown; needs .*bore rear/,
    );
  });
});
