// Values that lie on a bound, neither over nor under: which side they count to.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { shown } from "../../server/model/plain-text.ts";
import { MOST_LINES_TOGETHER } from "../../server/model/uses.ts";
import { checkText, resultOf } from "./check-text.ts";
import { filmJob, FIT } from "./film-job.ts";
import { changed, CUT } from "./cut-job.ts";

describe("a bore that is of one size with its journal", () => {
  const job = (fit: string): string => `job winch
  units inch
part shaft
  material steel-4140
part case
  material iron-grey
journal a on shaft
  limits 0.8740 to 0.8745
bore a in case
  limits 0.8745 to 0.8750
fit a of journal a in bore a
${fit}`;

  test("at its least clearance has none, and warm too that is out where it is the most that can come of it", () => {
    const alike = job("  hot shaft 20 C, case 20 C\n").replace(
      "limits 0.8745 to 0.8750",
      "limits 0.8740 to 0.8740",
    );
    expect(resultOf(checkText(alike), "fit a", "hot-clearance")?.verdict).toBe(
      "out",
    );
    expect(
      resultOf(
        checkText(job("  hot shaft 20 C, case 20 C\n")),
        "fit a",
        "hot-clearance",
      )?.verdict,
    ).toBe("none");
  });

  // at best 0.8750 − 0.8740 = 0.0010 is left where little is wanted, 0.8745 − 0.8745 = 0 where much is
  test.each([
    ["want 0.0010 to 0.0020", "unsure"],
    ["want 0.0011 to 0.0020", "out"],
    ["want -0.0010 to 0.0000", "unsure"],
    ["want -0.0010 to -0.0001", "out"],
  ])("foretold, where it may just do: %s is %s", (want, verdict) => {
    const found = checkText(job(`  ${want}\n`));
    expect(resultOf(found, "fit a", "clearance")?.verdict).toBe(verdict);
  });
});

// a journal that is read has all of its sizes: 0.8740 and 0.8745, under a bore of 0.8745 to 0.8750, leave 0.0005 at best, little or much
test.each([
  ["0.0000 to 0.0005", "unsure"],
  ["0.0000 to 0.0004", "out"],
  ["0.0005 to 0.0020", "unsure"],
  ["0.0006 to 0.0020", "out"],
])("a fit of a journal that is read, foretold: %s is %s", (want, verdict) => {
  const found = checkText(`job winch
  units inch
part shaft
part case
journal a on shaft
  read 0.8740 0.8745
bore a in case
  limits 0.8745 to 0.8750
fit a of journal a in bore a
  want ${want}
`);
  expect(resultOf(found, "fit a", "clearance")?.verdict).toBe(verdict);
});

describe("a bush that is of one size with its hole", () => {
  const press = (od: string): string => `job winch
  units inch
part case
  material iron-grey
hole a in case
  boss 1.75
  limits 1.0000 to 1.0000
bush a in hole a
  material bronze-c932
  od ${od}
  id 0.8715
  length 1.0
press a of bush a in hole a
`;
  const pressure = (od: string) =>
    resultOf(checkText(press(od)), "press a", "contact-pressure");

  test("is pressed with nothing; only a smaller one is not pressed", () => {
    expect(pressure("1.0000")).toMatchObject({ low: 0, high: 0 });
    expect(pressure("0.9999")?.text).toBe(
      "not valid here, because the bush is smaller than the hole, so nothing is pressed",
    );
  });
});

describe("of two that are alike the first counts", () => {
  test("the length that a fit runs on is its journal's", () => {
    const text = `job winch
  units inch
part shaft
part case
journal a on shaft
  length 1.000
  limits 0.8740 to 0.8740
bore a in case
  length 1.000
  limits 0.8755 to 0.8755
fit a of journal a in bore a
  runs 600 rpm
  load 150 lbf steady
`;
    const working = (of: string): string =>
      resultOf(checkText(of), "fit a", "specific-load")?.working[0]?.with ?? "";
    expect(working(text)).toContain("1.0000 in of journal a");
    expect(
      working(
        text.replace(
          "length 1.000\n  limits 0.8755",
          "length 0.999\n  limits 0.8755",
        ),
      ),
    ).toContain("0.9990 in of bore a");
  });

  test("the swing that shows the least round", () => {
    const text = `job winch
  units inch
part shaft
gauge dti-1
  kind indicator
  uncertainty 0.00002
gauge dti-2
  kind indicator
journal a on shaft
  read 0.8740
  swing near 0.0006 on vee 60 deg, 3 lobes with dti-1
  swing far 0.0006 on vee 60 deg, 3 lobes with dti-2
`;
    const sure = (job: string): string | undefined =>
      resultOf(checkText(job), "journal a", "uncertainty", {
        of: "roundness",
      })?.status;
    expect(sure(text)).toBe("measured");
    expect(sure(text.replace("far 0.0006", "far 0.0007"))).toBe("unknown");
  });

  test("the film that is thinnest is that at 20 °C, where it is as thin hot", () => {
    const text = filmJob({
      shaft: "  material steel-4140\n",
      case: "  material iron-grey\n",
      journal: { length: "30", size: "25.000", finish: "0.2 um Ra" },
      bore: { length: "30", size: "25.040", finish: "0.4 um Ra" },
      load: "300 N",
      fit: "  hot shaft 20 C, case 20 C\n",
    });
    const film = resultOf(checkText(text), FIT, "film")?.text;
    expect(film).toMatch(/, the least at 20 °C$/u);
  });
});

test.each([
  ["at both limits and worn within service", "0.8740 0.8745 0.8738", true],
  ["worn down to the service limit", "0.8735", true],
  ["worn past it", "0.8742 0.8734", false],
  ["over its limits, which is no wear", "0.8742 0.8746", false],
])("a journal %s: may its bore be cut?", (_, read, may) => {
  const job = changed(
    changed(CUT, "read 0.8741 at", `read ${read} at`),
    "  limits 0.8740 to 0.8745\n",
    "  limits 0.8740 to 0.8745\n  service-limit 0.8735\n",
  ).replace("want 0.0008 to 0.0020", "want 0.0001 to 0.0030");
  const ready = resultOf(checkText(job), "step ream", "ready")?.text;
  expect(ready).toBe(
    may ? "next" : "waits: journal front is outside its limits",
  );
});

test("limits without a tolerance have no gauge held against them", () => {
  const job = (limits: string): string => `job winch
  units inch
part shaft
gauge mic-1
  uncertainty 0.00005
journal a on shaft
  limits ${limits}
  read 0.8740 with mic-1
`;
  const ratio = (limits: string) =>
    resultOf(checkText(job(limits)), "gauge mic-1", "ratio");
  expect(ratio("0.8740 to 0.8741")?.status).toBe("measured");
  expect(ratio("0.8740 to 0.8740")).toBeUndefined();
});

// the bush is over the hole by 0.0010 to 0.0012
test.each([
  ["want 0.0010 to 0.0011", "press-heavy on press a\n  up to 0.0012"],
  ["want 0.0011 to 0.0012", "press-light on press a\n  up to 0.0010"],
])(
  "a bush may be pressed where the end that keeps to its bound just does, and the other is signed for: %s",
  (want, allows) => {
    const job = `job winch
  units inch
part case
hole a in case
  read 1.0000 1.0001
bush a in hole a
  read od 1.0011 1.0012
press a of bush a in hole a
  ${want}
step push
  presses press a
concession c
  allows ${allows}
`;
    const why = '  why "tried" by AK on 2026-11-05\n';
    const ready = (text: string): string | undefined =>
      resultOf(checkText(text), "step push", "ready")?.text;
    expect(ready(job)).toBe(
      "waits: press a is out of the interference that it wants",
    );
    expect(ready(job + why)).toBe("next");
  },
);

test("a character that has its number in two digits is written out with two, one of more with all", () => {
  expect(shown("a\u001bb\u009fc\u200ed\u{e0001}")).toBe(
    "a\\x1bb\\x9fc\\u{200e}d\\u{e0001}",
  );
  expect(shown("\u0007")).toBe("\\x07");
  expect(shown("Öl, 5 µm − 20 °C")).toBe("Öl, 5 µm − 20 °C");
  expect(shown("a\ud800\u2028\u2029")).toBe("a\\u{d800}\\u{2028}\\u{2029}");
});

test("a record of more lines than all files together may have is itself read, up to its own limit", () => {
  const project = createProject({ root: "/" });
  const text = `job a\n  units mm\npart b\njournal j on b\n  limits 25.00 to 25.02\npart c\n`;
  project.setFile(
    "/job.thou",
    readLines(text + "#\n".repeat(MOST_LINES_TOGETHER)),
  );
  const found = project.check("/job.thou");
  expect(found.findings.map(({ code }) => code)).toEqual(["line-damaged"]);
  expect(resultOf(found, "journal j", "size")?.text).toBe(
    "25.000 to 25.020 mm",
  );
});
