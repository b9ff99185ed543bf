// What is said of the bores of a line, their joint and their fits, beyond what the pages' samples show: both sides of each condition, and every half of a
// sentence. Lengths are worked out by hand, in inches where nothing else is said.
import { describe, expect, test } from "vitest";
import { foundIn, messages, theOne, toldIn } from "./found.ts";
import { crib, HEAD } from "./reamed-job.ts";

describe("a joint that is not made as it will run", () => {
  const job = (service: string, cut: string, units = "mm"): string =>
    `job winch
  units ${units}
part case
${service}bore front in case
line a
  bore front from 0 to 30
${cut}`;
  const CODE = "joint-not-as-service";

  test("is told of bolts that are looser or tighter than any that service has, in newton metres", () => {
    const bolts = (cut: string): readonly string[] =>
      toldIn(job("  bolts 40 to 50 N-m\n", `  bolts ${cut}\n`), CODE);
    expect(bolts("30 to 45 N-m")).toEqual([
      "8:3-21 error joint-not-as-service of line a: In service part case has bolts 40.0 to 50.0 N-m, and at the cut it is bolts 30.0 to 45.0 N-m. Cut it made up as it will run, or the bores move afterwards.",
      "  see 4:3-21: bolts of part case as in service",
      "  fix: Write `bolts 40 to 50 N-m`, as it will run",
      '    8:3-21 "bolts 40 to 50 N-m"',
    ]);
    expect(bolts("45 to 55 N-m")[0]).toContain(
      "at the cut it is bolts 45.0 to 55.0 N-m",
    );
    for (const within of ["40 N-m", "50 N-m", "42 to 48 N-m"])
      expect(bolts(within)).toEqual([]);
  });

  test("is told in pound-feet where the job is in inches, one figure where it is one", () => {
    expect(
      messages(job("  bolts 18 lbf-ft\n", "  bolts 12 lbf-ft\n", "inch"), CODE),
    ).toEqual([
      "In service part case has bolts 18.0 lbf-ft, and at the cut it is bolts 12.0 lbf-ft. Cut it made up as it will run, or the bores move afterwards.",
    ]);
  });

  test("is told nothing of where a line can't be read, or nothing is known of service", () => {
    const service = "  joint gasket 0.5\n  dowels 2\n";
    expect(
      messages(job(service, "  joint gaskt 0.5\n  dowels two\n"), CODE),
    ).toEqual([]);
    expect(messages(job("", "  joint bare\n  dowels 1\n"), CODE)).toEqual([]);
  });

  test("offers no line of another file, whose lengths may be in another unit", () => {
    const text = job("", "  joint bare\n").replace(
      "part case\n",
      '  use "case.thou"\n',
    );
    expect(
      toldIn(text, CODE, {
        "case.thou":
          "shop harbour\n  units inch\npart case\n  joint gasket 0.02\n  dowels 2\n",
      }),
    ).toEqual([
      "5:6-7 error joint-not-as-service of line a: In service part case has dowels 2, and the line does not say it for the cut. Cut it made up as it will run, or the bores move afterwards.",
      "  see case.thou 5:3-11: dowels of part case as in service",
      "7:3-13 error joint-not-as-service of line a: In service part case has joint gasket 0.508 mm, and at the cut it is joint bare. Cut it made up as it will run, or the bores move afterwards.",
      "  see case.thou 4:3-20: joint of part case as in service",
    ]);
  });
});

describe("a line of bores that are known by their limits", () => {
  const limits = (name: string, from: string, to: string): string =>
    `bore ${name} in case\n  limits ${from} to ${to}\n`;
  const line = `line layshaft
  bore front from 0 to 1
  bore rear from 4 to 5
`;

  test("conflicts by them, and has one way out alone: two reamers", () => {
    expect(
      toldIn(
        `${HEAD}${limits("front", "0.8750", "0.8755")}${limits("rear", "0.8760", "0.8765")}${line}`,
        "line-needs-two-reamers",
        crib(""),
      ),
    ).toEqual([
      "11:6-14 error line-needs-two-reamers of line layshaft: One size does not suit both the limits of bore rear and the limits of bore front: they conflict by 0.0005 in. Ways out: take 2 reamers, one for the limits of bore front that cuts 0.8750 to 0.8755 in, one for the limits of bore rear that cuts 0.8760 to 0.8765 in.",
      "  see 9:6-10: the limits of bore rear asks for a bore of 0.8760 to 0.8765 in",
      "  see 7:6-11: the limits of bore front asks for a bore of 0.8750 to 0.8755 in",
    ]);
  });

  test("takes a reamer that is in the limits of all, and is told of one that is not in one's", () => {
    const of = (size: string): readonly string[] =>
      toldIn(
        `${HEAD}${limits("front", "0.8750", "0.8756")}${limits("rear", "0.8751", "0.8757")}${line}  ream with r-own\n`,
        "reamer-wrong-size",
        crib(`reamer r-own\n  size ${size}\n  oversize +0.0000 to +0.0000\n`),
      );
    expect(of("0.8751")).toEqual([]);
    expect(of("0.8756")).toEqual([]);
    expect(of("0.8760")).toEqual([
      "14:13-18 error reamer-wrong-size of line layshaft: reamer r-own cuts about 0.8760 in: 0.0004 in too large for bores of 0.8751 to 0.8756 in. Take reamer r-8755.",
      "  fix: Ream with reamer r-8755",
      '    14:13-18 "r-8755"',
    ]);
    expect(of("0.8747")[0]).toContain(
      "cuts about 0.8747 in: 0.0004 in too small for bores",
    );
  });
});

describe("a line of journals that conflict", () => {
  const fit = (name: string, read: string, want: string): string =>
    `journal ${name} on shaft
  ${read}
bore ${name} in case
fit ${name} of journal ${name} in bore ${name}
  want ${want}
`;
  const told = (
    fits: readonly (readonly [string, string, string])[],
  ): readonly string[] =>
    toldIn(
      `${HEAD}${fits.map((each) => fit(...each)).join("")}line layshaft
${fits.map(([name], at) => `  bore ${name} from ${String(2 * at)} to ${String(2 * at + 1)}\n`).join("")}`,
      "line-needs-two-reamers",
      crib(""),
    );

  test("is told of a journal that differs by more at its ends than its fit is wide, once", () => {
    // 0.8760 + 0.0008 at the least, 0.8740 + 0.0016 at the most
    expect(
      told([
        ["front", "read near 0.8740\n  read far 0.8760", "0.0008 to 0.0016"],
      ]),
    ).toEqual([
      "13:6-14 error line-needs-two-reamers of line layshaft: journal front can't have what it wants at both ends: its sizes differ by 0.0012 in more than that is wide. Ways out: (1) true journal front up; (2) accept what 0.8762 in gives, 0.0002 to 0.0022 in at journal front.",
      "  see 11:5-10: journal front asks for a bore of 0.8768 in at its largest and 0.8756 in at its smallest",
    ]);
  });

  test("has truing up as its one way out where halfway leaves nothing", () => {
    // halfway of 0.8768 and 0.8736 is 0.8752, under the 0.8760 that was read
    const [line] = told([
      ["front", "read near 0.8720\n  read far 0.8760", "0.0008 to 0.0016"],
    ]);
    expect(line).toMatch(/Ways out: true journal front up\.$/u);
  });

  test("names the one bore that suits a journal whose difference is just what its fit bears", () => {
    // 0.8748 + 0.0008 = 0.8740 + 0.0016
    expect(
      told([
        ["front", "read near 0.8740\n  read far 0.8748", "0.0008 to 0.0016"],
        ["rear", "read 0.8760", "0.0008 to 0.0016"],
      ]).slice(1),
    ).toEqual([
      "  see 16:5-9: journal rear asks for a bore of 0.8768 to 0.8776 in",
      "  see 11:5-10: journal front asks for a bore of 0.8756 in",
    ]);
  });

  test("has no size to accept where halfway is the very size of a journal", () => {
    // halfway of 0.8780 and 0.8760 is 0.8770
    expect(
      told([
        ["front", "read 0.8740", "0.0010 to 0.0020"],
        ["rear", "read 0.8770", "0.0010 to 0.0020"],
      ])[0],
    ).toMatch(
      /they conflict by 0\.0020 in\. Ways out: \(1\) take 2 reamers, .*; \(2\) size journal rear down by 0\.0020 in at least\.$/u,
    );
  });

  test("sizes down each that asks for more than the smallest allows", () => {
    // 0.8770 and 0.8768 at the least, of 0.8760
    const [line] = told([
      ["front", "read 0.8740", "0.0010 to 0.0020"],
      ["rear", "read 0.8760", "0.0010 to 0.0020"],
      ["mid", "read 0.8758", "0.0010 to 0.0020"],
    ]);
    expect(line).toContain(
      "one for journal rear and journal mid that cuts 0.8770 to 0.8778 in; (2) size journal rear down by 0.0010 in at least, journal mid down by 0.0008 in at least; (3) accept what 0.8765 in gives, 0.0005 in at journal rear and 0.0025 in at journal front.",
    );
  });

  test("is not called sure while limits may yet let one size suit both", () => {
    // the least of the rear asks for 0.8745 + 0.0010, the front allows up to 0.8735 + 0.0020: the same
    const at = (rear: string): string =>
      theOne(
        `${HEAD}${fit("front", "limits 0.8725 to 0.8735", "0.0010 to 0.0020")}${fit("rear", `limits ${rear}`, "0.0010 to 0.0020")}line layshaft
  bore front from 0 to 1
  bore rear from 2 to 3
`,
        "line-needs-two-reamers",
        crib(""),
      ).level;
    expect(at("0.8745 to 0.8755")).toBe("information");
    expect(at("0.8746 to 0.8755")).toBe("error");
  });
});

describe("a line whose centres were checked", () => {
  const names = ["a", "b", "c", "d"];
  const job = (
    journal: string,
    bore: string,
    centres: readonly string[],
    wants: readonly string[] = [],
  ): string => {
    const used = names.slice(0, centres.length);
    return `job winch
  units inch
part shaft
part case
${used.map((name, at) => `journal ${name} on shaft\n  ${journal}\nbore ${name} in case\n  ${bore}\nfit ${name} of journal ${name} in bore ${name}\n${wants[at] === undefined ? "" : `  want ${wants[at]}\n`}`).join("")}line layshaft
${used.map((name, at) => `  bore ${name} from ${String(4 * at)} to ${String(4 * at + 1)} centre 0, ${centres[at] ?? ""}\n`).join("")}`;
  };
  const CODE = "line-crooked";

  test("stops a straight shaft where what is read leaves none, and nowhere while what is foretold may let it through", () => {
    // with the shaft at its best in the others, bore b has 0.0010 − 2 · 0.0012
    expect(
      toldIn(job("read 1.0000", "read 1.0010", ["0", "0.0012", "0"]), CODE),
    ).toEqual([
      "22:3-38 error line-crooked of line layshaft: A straight shaft does not go through: bore b stops it by 0.0014 in, with the shaft at its best in the others. Cut the line again from its datum, or open bore b out by that and the clearance that it wants.",
      "  see 14:5-6: fit b",
    ]);
    expect(
      toldIn(
        job("limits 0.9998 to 1.0000", "limits 1.0010 to 1.0012", [
          "0",
          "0.0012",
          "0",
        ]),
        CODE,
      ),
    ).toEqual([]);
    expect(
      foundIn(
        job("limits 0.9998 to 1.0000", "limits 1.0010 to 1.0012", [
          "0",
          "0.0050",
          "0",
        ]),
        CODE,
      ),
    ).toHaveLength(1);
  });

  test("that is crooked at more than one bore says that the others would stop it too", () => {
    expect(
      theOne(
        job("read 1.0000", "read 1.0010", ["0", "0.0050", "0", "0.0050"]),
        CODE,
      ).message,
    ).toContain(", and without it the others would too. Cut the line again");
  });

  test("leaves less than a fit wants, measured at its least and foretold at its most, one that wants just so much passing", () => {
    // the straightest shaft lies 0.0005 off each centre, and takes twice that of each clearance
    const read = ["0.0010 to 0.0030", "0.0011 to 0.0030"];
    expect(
      toldIn(
        job("read 1.0000", "read 1.0020", ["0", "0.0010", "0"], read),
        CODE,
      ),
    ).toEqual([
      "24:3-38 warning line-crooked of line layshaft: In line with the others a straight shaft has 0.0010 in left in bore b, and fit b wants 0.0011 in at the least.",
      "  see 15:5-6: fit b",
    ]);
    const foretold = ["0.0014 to 0.0030", "0.0015 to 0.0030"];
    expect(
      messages(
        job(
          "limits 0.9998 to 1.0000",
          "limits 1.0020 to 1.0022",
          ["0", "0.0010", "0"],
          foretold,
        ),
        CODE,
      ),
    ).toEqual([
      "In line with the others a straight shaft has 0.0010 to 0.0014 in left in bore b, and fit b wants 0.0015 in at the least.",
    ]);
  });
});
