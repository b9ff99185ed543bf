// What hover says over a reference: what it means there, of the crib's own or shipped.
import { describe, expect, test } from "vitest";
import { hover, said, job, row } from "./hover-said.ts";

describe("a reference", () => {
  test("says what it means, briefly", () => {
    const { markdown, over } = hover(job("of journal fr|ont in"));
    expect(over).toBe("journal front");
    expect(markdown).toContain("**journal front**");
    expect(markdown).not.toContain("Working");
  });

  test("a reamer in a line: what it measures and would leave there", () => {
    const markdown = said(job("ream with r-87|55"));
    // (0.87538 + 0.87540)/2
    expect(markdown).toContain("0.87539 in measured, mean of 2 readings");
    expect(markdown).toMatch(
      /It would leave:\n\n- bore rear: 0\.8753\d to 0\.8756\d in, predicted/,
    );
  });

  test("a gauge: its facts, and what it was set with", () => {
    expect(said(job("with mi|c-1 at 72"))).toMatch(
      /- kind micrometer\n- resolution 0\.00001/,
    );
    expect(
      said(
        "shop s\n  units inch\ngauge a\n  uncertainty 0.0001\ngauge |b\n  set with a\n",
      ),
    ).toContain("Set with gauge a: U 0.0001 in");
  });

  test("a shipped material: each value in both systems with its source, and that it is shipped", () => {
    const markdown = said(job("material bron|ze-c932"));
    // 18.0 um/m-K is 10.0 uin/in-F, for a kelvin is 1.8 degrees Fahrenheit
    expect(row(markdown, "expansion").slice(0, 3)).toEqual([
      "expansion",
      "10.0 uin/in-F",
      "18.0 um/m-K",
    ]);
    expect(row(markdown, "expansion").at(-1)).toMatch(/^shipped: \S/);
    expect(markdown).toContain("Shipped with the tool");
    expect(markdown).toContain("a material shipped with the tool");
  });

  test("one of the crib's: what is written, and no more", () => {
    const markdown = said(
      'job j\n  units mm\n  use "crib.thou"\npart a\n  material bronze-|local\n',
    );
    expect(row(markdown, "expansion")).toEqual([
      "expansion",
      "18.0 um/m-K",
      "10.0 uin/in-F",
      "written",
    ]);
    expect(row(markdown, "modulus")).toEqual([]);
  });

  test("a shipped oil: its grade's band", () => {
    // ISO 3448: a grade is within 10 % of its number at 40 °C
    const markdown = said("fit a of b in c\n  oil iso-vg-|46 at 40 C\n");
    expect(row(markdown, "viscosity at 40 °C").slice(1, 3)).toEqual([
      "46.0 cSt",
      "41.4 to 50.6",
    ]);
  });

  test("a name that means several things, another kind, or nothing", () => {
    expect(said("bush a in x\npart a\nbore b in |a\n")).toContain(
      "Several entries have this name: bush a, part a",
    );
    expect(said("part a\nfit f of a|  in b\n")).toContain(
      "part a is no journal",
    );
    expect(said("fit f of no|thing in b\n")).toContain(
      "No journal has this name",
    );
  });

  test("a step of a route", () => {
    expect(
      said('route r\n  step ma|rk\nstep mark\n  do "Mark it"\n'),
    ).toContain("Mark it");
  });
});
