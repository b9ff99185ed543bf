// The job sheet: that all which a check says stands on it, read back by a parser of HTML; and what it says where something is missing.
import { describe, expect, test } from "vitest";
import {
  cautionNamed,
  cautionsOfStep,
  LIMIT_OF_RECORD,
} from "../../server/model/cautions.ts";
import { orderOf } from "../../server/model/evaluate/order.ts";
import {
  RESULT_KINDS,
  resultName,
  VERDICT_WORDS,
} from "../../server/model/result-kinds.ts";
import { samples, soundSamples } from "../samples.ts";
import { attribute, oneLine, readPage, squeezed } from "./read-page.ts";
import { FACTS, sheetsOf, sheetsOfSample } from "./sheets.ts";

/** Sentences quote what was written: its control characters stand as one sign on the sheet. */
const withoutMarks = (text: string): string =>
  squeezed(text.replaceAll("`", "")).replace(/\p{Cc}/gu, "\u{FFFD}");

describe.each(samples)("$path", ({ path }) => {
  const { job, blank, check } = sheetsOfSample(path);
  const read = readPage(job);

  test("both sheets are whole pages that ask for nothing outside", () => {
    for (const html of [job, blank]) {
      const { errors, elements } = readPage(html);
      expect(errors).toEqual([]);
      const asking = elements.filter(
        (each) =>
          ["script", "link", "img", "iframe", "object", "base"].includes(
            each.tagName,
          ) ||
          each.attrs.some(
            ({ name, value }) =>
              ["src", "srcset", "action"].includes(name) ||
              (/^(?:xlink:)?href$/.test(name) && !value.startsWith("#")) ||
              name.startsWith("on"),
          ),
      );
      expect(asking.map((each) => each.tagName)).toEqual([]);
      expect(html).not.toMatch(/@import|url\((?!#)/);
    }
  });

  test("every result stands on it: what, how much, how known and the verdict", () => {
    const rows = read.elements
      .filter(({ tagName }) => tagName === "td" || tagName === "div")
      .map((each) => readPage(fragment(job, each.sourceCodeLocation)).text);
    for (const { kind, text, status, verdict } of check.results) {
      if (kind === "ready" || kind === "chance" || kind === "cut-size")
        continue;
      expect(read.text).toContain(oneLine(resultName(kind)));
      if (kind === "ratio") expect(read.text).toContain(oneLine(text));
      else if (status === "unknown")
        expect(squeezed(read.text)).toContain(`unknown:${withoutMarks(text)}`);
      else {
        const shown = `${text}, ${status}${verdict === "none" ? "" : `, ${VERDICT_WORDS[verdict]}`}`;
        expect(rows).toContain(oneLine(shown));
      }
    }
  });

  test("every finding stands on it with its level, its place and its sentence", () => {
    for (const { message, code, place, accepted, level } of check.findings) {
      expect(squeezed(read.text)).toContain(withoutMarks(message));
      expect(read.text).toContain(`code ${code}`);
      expect(read.text).toContain(`line ${String(place.line + 1)}`);
      expect(read.text).toContain(accepted === null ? level : "accepted");
    }
  });

  test("each working and each source stands on it", () => {
    const squeezedText = squeezed(read.text);
    for (const { kind, working } of check.results) {
      if (kind === "uncertainty") continue;
      for (const step of working) {
        expect(squeezedText).toContain(squeezed(step.formula));
        expect(squeezedText).toContain(squeezed(step.with));
        expect(squeezedText).toContain(squeezed(step.source));
      }
    }
  });

  test("each step stands on it in order, with its cautions in full", () => {
    const { open } = sheetsOfSample(path);
    const { steps } = orderOf(open.shop);
    let from = 0;
    steps.forEach(({ ref }, index) => {
      const at = read.text.indexOf(
        `${String(index + 1)} ${ref.slice("step ".length)}`,
        from,
      );
      expect(at).toBeGreaterThan(-1);
      from = at;
      for (const name of cautionsOfStep(open.shop, ref)) {
        const caution = cautionNamed(name);
        expect(read.text.indexOf(caution?.title ?? "?", at)).toBeGreaterThan(
          at,
        );
        expect(read.text).toContain(oneLine(caution?.text ?? "?"));
      }
    });
    expect(read.text).toContain(LIMIT_OF_RECORD);
  });
});

/** The text of the page between two places that the parser found. */
function fragment(
  html: string,
  at:
    | { readonly startOffset: number; readonly endOffset: number }
    | null
    | undefined,
): string {
  return at === null || at === undefined
    ? ""
    : html.slice(at.startOffset, at.endOffset);
}

test("together the samples show most kinds of results there are", () => {
  const seen = new Set(
    soundSamples.flatMap(({ path }) =>
      sheetsOfSample(path).check.results.map(({ kind }) => kind),
    ),
  );
  expect(
    Object.keys(RESULT_KINDS).filter((kind) => !seen.has(kind)).length,
  ).toBeLessThan(4);
});

describe("the head", () => {
  const JOB =
    'job pump\n  title "Bilge pump"\n  units inch\n  opened 2026-11-02 by AK\n';
  const head = (facts: Parameters<typeof sheetsOf>[1]): string =>
    readPage(sheetsOf(JOB, facts).job).text;

  test("names the job, the day, the tool and the files", () => {
    const text = head({});
    for (const said of [
      "Bilge pump",
      "job pump",
      "2026-11-02 by AK",
      "2026-11-20, with thou 9.8.7",
      "Files read a.thou",
      "inches",
    ])
      expect(text).toContain(said);
  });

  test.each([
    [FACTS.versioned, "revision 0123456789ab, no uncommitted changes"],
    [
      {
        state: "known",
        revision: "0123456789ab",
        changed: ["a.thou", "crib.thou"],
      } as const,
      "revision 0123456789ab, with uncommitted changes in a.thou, crib.thou",
    ],
    [
      { state: "known", revision: undefined, changed: ["a.thou"] } as const,
      "under version control, never committed, with uncommitted changes in a.thou",
    ],
    [
      { state: "none", because: "not under version control" } as const,
      "State of the files not under version control",
    ],
  ])("says how the files stand in version control", (versioned, said) => {
    expect(oneLine(head({ versioned }).replace(/ ,/g, ","))).toContain(said);
  });

  test("a used file that is missing is said", () => {
    const text = readPage(
      sheetsOf('job a\n  units mm\n  use "crib.thou"\n').job,
    ).text;
    expect(text).toContain("crib.thou (not there)");
  });
});

test("a hostile record is text on the sheet", () => {
  const hostile = '</td></table><script>alert("x")</script><b>';
  const { job, blank } = sheetsOf(
    [
      "job a",
      `  title "${hostile}"`,
      "  units inch",
      `  note "${hostile}"`,
      "part case",
      `  serial "${hostile}"`,
      "hole h in case",
      `  limits 1.0000 to 1.0005 from "${hostile}"`,
      "  read <b>near</b> 1.0001",
      "step s",
      `  do "${hostile}"`,
      `  found failed "${hostile}"`,
      "concession c",
      "  allows reading-off-limits on hole h",
      "  up to 1.0010",
      `  why "${hostile}" by "${hostile}" on 2026-11-02`,
    ].join("\n"),
  );
  for (const html of [job, blank]) {
    const { errors, elements, text } = readPage(html);
    expect(errors).toEqual([]);
    expect(elements.some(({ tagName }) => tagName === "script")).toBe(false);
    expect(text).toContain(hostile);
  }
  expect(readPage(job).text.split(hostile).length).toBeGreaterThan(7);
});

describe("concessions", () => {
  const record = (why: string): string =>
    [
      "job a",
      "  units inch",
      "part shaft",
      "journal j on shaft",
      "  limits 0.8740 to 0.8745",
      "  read 0.8747",
      "concession big",
      "  allows reading-off-limits on journal j",
      "  up to 0.8748",
      why,
    ].join("\n");

  test("are shown with who, when and the bound, and accept what they allow", () => {
    const { job, check } = sheetsOf(
      record('  why "no other shaft" by AK on 2026-11-02'),
    );
    expect(check.findings.map(({ accepted }) => accepted)).toContain("big");
    const { text } = readPage(job);
    expect(text).toContain(
      "big reading-off-limits on journal j 0.8748 in no other shaft 2026-11-02 by AK accepts a finding",
    );
    expect(text).toContain("1 accepted finding");
  });

  test("without a signature say nobody", () => {
    expect(
      readPage(sheetsOf(record('  why "no other shaft"')).job).text,
    ).toMatch(
      /big reading-off-limits on journal j 0\.8748 in no other shaft nobody/,
    );
  });
});

test("measured and predicted are told apart, and what is unknown says what would settle it", () => {
  const { text } = readPage(sheetsOfSample("shop/winch.thou").job);
  expect(text).toContain("0.87428 to 0.87435 in, measured");
  expect(text).toContain("0.8740 to 0.8745 in, predicted");
  expect(text).toMatch(/unknown: needs the centre of bore rear/);
  expect(text).toContain("step ream : waits: journal rear is not measured");
});

test("each measured size of the winch has its budget, its U as in the check", () => {
  const { check, job } = sheetsOfSample("shop/winch.thou");
  const { text } = readPage(job);
  for (const { entry, kind, nominal } of check.results) {
    if (kind !== "uncertainty") continue;
    const row = new RegExp(
      `${entry} resolution .*?part expansion \\S+ \\(normal\\) (\\S+) (\\S+) (\\S+) (\\S+)`,
    ).exec(text.slice(text.indexOf("Uncertainty of what was measured")));
    // U = k·u, to the two digits shown
    const [u, k, U] = [row?.[1], row?.[3], row?.[4]].map(Number);
    expect(U).toBeCloseTo(Number(u) * Number(k), -1);
    expect(U).toBeCloseTo(Number(nominal) / 25.4e-9, -0.5);
  }
});

test("shipped values are said to be shipped, the record's own to be written", () => {
  const { text } = readPage(
    sheetsOf(
      [
        "job a",
        "  units mm",
        "material mine",
        "  expansion 12 um/m-K",
        "part one",
        "  material mine",
        "part two",
        "  material steel-4140",
      ].join("\n"),
    ).job,
  );
  expect(text).toMatch(/mine expansion 12\.0 um\/m-K written/);
  expect(text).toMatch(/steel-4140 expansion [\d.]+ um\/m-K shipped \[1\]/);
});

test("the maker is named within the first half kilobyte, where the command line looks for it", () => {
  const { job, blank } = sheetsOfSample("shop/winch.thou");
  for (const html of [job, blank]) {
    expect(html.slice(0, 512)).toContain(
      '<meta name="generator" content="thou sheet',
    );
    const [meta] = readPage(html).elements.filter(
      (each) => attribute(each, "name") === "generator",
    );
    expect(meta === undefined ? "" : attribute(meta, "content")).toBe(
      "thou sheet 9.8.7",
    );
  }
});

test("a place that was read on many lines is counted once in the working", () => {
  const reads = "  read near 24.99 24.98 as run\n".repeat(20);
  const { text } = readPage(
    sheetsOf(
      `job a\n  units mm\npart p\njournal j on p\n${reads}  read far 24.98 as run\n`,
    ).job,
  );
  expect(text).toContain("near: 40 readings, far: 1 reading");
});
