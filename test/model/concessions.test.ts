// What a concession accepts, and what it does not.
import { describe, expect, test } from "vitest";
import { checkText } from "./check-text.ts";
import { changed, CUT } from "./cut-job.ts";

/** A fit with its bore as read, wanting 0.0008 to 0.0016 over a journal of 0.8740. */
function job(bore: string, concession: string, more = ""): string {
  return `
job winch-9
  units inch
part layshaft
part case
journal front on layshaft
  limits 0.8740 to 0.8740
bore front in case
  read ${bore} at 68 F
${more}
fit front of journal front in bore front
  want 0.0008 to 0.0016

concession one
${concession}`;
}

function allowing(
  code: string,
  bound: string,
  signed = 'why "a few hours a year" by AK on 2026-11-06',
  on = "fit front",
): string {
  return `  allows ${code} on ${on}\n  up to ${bound}\n  ${signed}\n`;
}

/** "level code [accepted]" of each finding. */
function found(text: string): readonly string[] {
  return checkText(text).findings.map(
    ({ level, code, accepted }) =>
      `${level} ${code}${accepted === null ? "" : ` [${accepted}]`}`,
  );
}

describe("a loose fit", () => {
  test("within its bound is information, and named as accepted", () => {
    expect(found(job("0.8760", allowing("fit-loose", "0.0020")))).toEqual([
      "information fit-loose [one]",
    ]);
    const [finding] = checkText(
      job("0.8760", allowing("fit-loose", "0.0020")),
    ).findings;
    expect(finding?.message).toContain(
      "Accepted by concession one, signed by AK on 2026-11-06.",
    );
  });

  test("on the bound is within, to a tenth of a nanometre", () => {
    expect(found(job("0.8760", allowing("fit-loose", "0.0508 mm")))).toEqual([
      "information fit-loose [one]",
    ]);
    expect(found(job("0.8760", allowing("fit-loose", "2 thou")))).toEqual([
      "information fit-loose [one]",
    ]);
    expect(found(job("0.8760", allowing("fit-loose", "0.0507999 mm")))).toEqual(
      ["error fit-loose", "error concession-spent"],
    );
  });

  test("past it stands, and the concession is spent", () => {
    expect(found(job("0.87605", allowing("fit-loose", "0.0020")))).toEqual([
      "error fit-loose",
      "error concession-spent",
    ]);
  });
});

test("a tight fit may go down to its bound, and no further", () => {
  expect(found(job("0.8746", allowing("fit-tight", "0.0006")))).toEqual([
    "information fit-tight [one]",
  ]);
  expect(found(job("0.8745", allowing("fit-tight", "0.0006")))).toEqual([
    "error fit-tight",
    "error concession-spent",
  ]);
  // tight is not what a bound for loose is for
  expect(found(job("0.8746", allowing("fit-loose", "0.0030")))).toEqual([
    "error fit-tight",
    "hint concession-idle",
  ]);
});

test("a reading off its limits may be off on its own side", () => {
  const limited = (read: string, bound: string): string =>
    job(
      "0.8750",
      allowing("reading-off-limits", bound, undefined, "journal rear"),
      `journal rear on layshaft\n  limits 0.8740 to 0.8745\n  read ${read} at 68 F\n`,
    );
  expect(found(limited("0.8738", "0.8737"))).toEqual([
    "information reading-off-limits [one]",
  ]);
  expect(found(limited("0.8736", "0.8737"))).toEqual([
    "error reading-off-limits",
    "error concession-spent",
  ]);
  expect(found(limited("0.8746", "0.8747"))).toEqual([
    "information reading-off-limits [one]",
  ]);
  expect(found(limited("0.8748", "0.8747"))).toEqual([
    "error reading-off-limits",
    "error concession-spent",
  ]);
});

test("a bound of PV is one of PV", () => {
  const running = (bound: string): string =>
    job("0.8752", allowing("pv-over", bound))
      .replace(
        "part case",
        "part case\n  material soft\nmaterial soft\n  pv 1000 psi-ft/min",
      )
      .replace("  want", "  runs 240 rpm\n  load 180 lbf reversing\n  want")
      .replace(
        "journal front on layshaft",
        "journal front on layshaft\n  length 1.25",
      );
  // 180 / (0.874 · 1.25) psi · π · 0.874 / 12 · 240 ft/min = 9048
  const pv = (text: string): readonly string[] =>
    found(text).filter((each) => /pv-over|concession/.test(each));
  expect(pv(running("9050 psi-ft/min"))).toEqual(["information pv-over [one]"]);
  expect(pv(running("9040 psi-ft/min"))).toEqual([
    "error pv-over",
    "error concession-spent",
  ]);
  expect(pv(running("0.0020"))).toEqual([
    "error pv-over",
    "hint concession-idle",
  ]);
});

describe("what makes it one", () => {
  test.each([
    'why "a few hours a year"',
    'why "a few hours a year" by AK',
    'why "a few hours a year" on 2026-11-06',
  ])("%s is not signed", (signed) => {
    expect(
      found(job("0.8760", allowing("fit-loose", "0.0020", signed))),
    ).toEqual(["error fit-loose", "error concession-unsigned"]);
  });

  test("without a bound it accepts nothing", () => {
    expect(
      found(
        job(
          "0.8760",
          '  allows fit-loose on fit front\n  why "seldom" by AK on 2026-11-06\n',
        ),
      ),
    ).toEqual(["error fit-loose", "error concession-unsigned"]);
  });

  test("a line of it that can't be read is said there and nowhere else", () => {
    expect(found(job("0.8760", allowing("fit-loose", "0.0020 inhc")))).toEqual([
      "error fit-loose",
      "error unit-wrong",
    ]);
  });
});

describe("what can't be signed away", () => {
  const step =
    "line bores\n  bore front from 0 to 1\nstep ream\n  cuts line bores\n";
  test("the gate before a cut", () => {
    const text = job(
      "0.8750",
      allowing("cut-unchecked", "0.0020", undefined, "step ream"),
      step,
    );
    expect(found(text)).toEqual(
      expect.arrayContaining([
        "error cut-unchecked",
        "warning concession-idle",
      ]),
    );
  });

  test("the text of the record", () => {
    const text = job("0.8760", allowing("line-damaged", "1"));
    expect(found(text)).toEqual(["error fit-loose", "warning concession-idle"]);
  });
});

describe("the gate before a cut asks what was signed for", () => {
  /** The journal at 0.8738, outside its limits of 0.8740 to 0.8745. */
  const gated = (
    more: string,
    { read = "0.8738", want = "0.0008 to 0.0020", service = "" } = {},
  ): string =>
    changed(
      changed(CUT, "  read 0.8741", `${service}  read ${read}`),
      "0.0008 to 0.0020",
      want,
    ) + more;
  const gate = (text: string): readonly string[] =>
    checkText(text)
      .findings.filter(({ code }) => code === "cut-unchecked")
      .map(({ message }) => message);
  const signed = (code: string, on: string, bound: string): string =>
    `concession one\n${allowing(code, bound, undefined, on)}`;
  const off = "Don't cut yet: journal front is outside its limits.";

  test("a journal outside its limits holds the cut back", () => {
    expect(gate(gated(""))).toEqual([off]);
  });

  test("a signed concession that covers it lets the cut go on, one that does not holds it", () => {
    const on = "journal front";
    expect(gate(gated(signed("reading-off-limits", on, "0.8737")))).toEqual([]);
    expect(gate(gated(signed("reading-off-limits", on, "0.8739")))).toEqual([
      off,
    ]);
    const unsigned =
      'concession one\n  allows reading-off-limits on journal front\n  up to 0.8737\n  why "later"\n';
    expect(gate(gated(unsigned))).toEqual([off]);
  });

  test("worn within its service limit is no bar; past it is, unless that is signed for", () => {
    const service = "  service-limit 0.8737\n";
    expect(gate(gated("", { service }))).toEqual([]);
    const past = { service, read: "0.8736", want: "0.0008 to 0.0020" };
    expect(gate(gated("", past))).toEqual([off]);
    expect(
      gate(gated(signed("worn", "journal front", "0.8735"), past)),
    ).toEqual([]);
  });

  test("a fit that is foretold out: the bore of 0.8751 to 0.8753 over 0.8741 leaves 0.0010 to 0.0012", () => {
    const loose = { read: "0.8741", want: "0.0006 to 0.0008" };
    const held = ["Don't cut yet: fit front is foretold out of what it wants."];
    expect(gate(gated("", loose))).toEqual(held);
    expect(
      gate(gated(signed("fit-loose", "fit front", "0.0013"), loose)),
    ).toEqual([]);
    expect(
      gate(gated(signed("fit-loose", "fit front", "0.0011"), loose)),
    ).toEqual(held);
    expect(
      gate(gated(signed("fit-tight", "fit front", "0.0001"), loose)),
    ).toEqual(held);
  });
});

test("a reamer of the wrong size is signed for by how far it lies outside", () => {
  // 0.8751 to 0.8753, 0.8752 in the middle, over 0.8741: 0.0011, and 0.0006 to 0.0008 is wanted: 0.0003 too large
  const text = (bound: string): string =>
    `${changed(CUT, "0.0008 to 0.0020", "0.0006 to 0.0008")}concession one
${allowing("reamer-wrong-size", bound, undefined, "line bores")}`;
  expect(found(text("0.0003"))).toContain(
    "information reamer-wrong-size [one]",
  );
  expect(found(text("0.00029"))).toEqual(
    expect.arrayContaining([
      "error reamer-wrong-size",
      "error concession-spent",
    ]),
  );
});
