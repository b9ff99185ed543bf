// What hover says over a class of size. Figures are the standards'.
import { describe, expect, test } from "vitest";
import { said, row } from "./hover-said.ts";

describe("a class of size", () => {
  // 25 H7: 0/+21 µm, 25 f7: −20/−41 µm: Machine Drawing (Narayana, Kannaiah, Reddy), tables 15.1 to 15.4, as printed in
  // test/core/fits/printed-iso.ts
  test("its limits at the size, in both systems", () => {
    const markdown = said(
      "job j\n  units inch\nhole a in b\n  limits 25 mm H|7\n",
    );
    expect(row(markdown, "hole")).toEqual([
      "hole",
      "25.000 to 25.021 mm",
      "0.98425 to 0.98508 in",
    ]);
  });

  test("a fit's: hole, shaft and clearance", () => {
    const markdown = said(
      "job j\n  units mm\nfit a of b in c\n  want 25 H7/|f7\n",
    );
    expect(row(markdown, "hole")[1]).toBe("25.000 to 25.021 mm");
    expect(row(markdown, "shaft")[1]).toBe("24.959 to 24.980 mm");
    expect(row(markdown, "clearance (diametral)")[1]).toBe("0.020 to 0.062 mm");
  });

  test("an inch class on a journal: the shaft counts", () => {
    const markdown = said(
      "job j\n  units inch\njournal a on b\n  limits 0.875 RC|4\n",
    );
    expect(markdown).toContain("ANSI B4.1");
    expect(row(markdown, "shaft, which counts here")).not.toEqual([]);
  });

  test("one that is none", () => {
    expect(
      said("job j\n  units mm\nhole a in b\n  limits 25 mm Q|7\n"),
    ).toMatch(/no deviation letters/);
  });
});
