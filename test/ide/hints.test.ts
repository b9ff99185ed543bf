// The hints beside the lines of a record: their words, their places, where a click leads, the working behind them.
import { expect, test } from "vitest";
import { hintsIn, hintWorking, type Hint } from "../../server/ide/hints.ts";
import { resultsOfKind } from "../../server/model/results.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { CRIB, JOB } from "../lsp/winch.ts";
import { overviewOf } from "../../server/ide/overview.ts";
import { opened } from "./opened.ts";

const textOf = (hint: Hint): string =>
  hint.parts.map(({ text }) => text).join("");

/** Each line that has a hint, with the hint after it. */
function shown(text: string, others = {}): readonly string[] {
  const open = opened(text, others);
  const lines = text.split("\n");
  return hintsIn(open, 0, lines.length).map((hint) => {
    const line = lines[hint.position.line] ?? "";
    return `${line.slice(0, hint.position.character).trim()} «${textOf(hint)}»`;
  });
}

const withCrib = (text: string): OpenFile =>
  opened(text, { "crib.thou": CRIB });

test("a job that is read and whose bore is still to cut", () => {
  expect(shown(JOB, { "crib.thou": CRIB })).toEqual([
    "journal front on layshaft «0.87428 to 0.87432 in, measured, in tolerance»",
    // 0.87430 in is 22.20722 mm, the inch being 25.4 mm (1959)
    "read near 0.87432 0.87428 0.87430 with mic-1 at 68 F «mean 22.2072 mm»",
    "hole front in case «1.00018 to 1.00021 in, measured, in tolerance»",
    "read 1.00021 1.00018 with bore-1 at 68 F «mean 25.4050 mm»",
    "bore front in bush front «0.8756 to 0.8757 in, predicted»",
    "fit front of journal front in bore front «0.00128 to 0.00142 in, predicted, in tolerance»",
    "line layshaft «bore to be 0.87512 to 0.87588 in, by measured journals: reamer r-8755»",
    "step ream «next»",
  ]);
});

test("a swing comes to a roundness, unless its vee is blind to the lobes", () => {
  const swing = (form: string): readonly string[] =>
    shown(
      `job j\n  units inch\npart p\njournal a on p\n  swing 0.0006 on ${form}\n`,
    ).map((hint) => /«.*»/u.exec(hint)?.[0] ?? "");
  // a vee of 60° shows three lobes three times: 1 + cos 360°/sin 30°
  expect(swing("vee 60 deg, 3 lobes")).toEqual(["«roundness 0.00020 in»"]);
  expect(swing("vee 60 deg, 5 lobes")).toEqual([]);
});

test("sizes that are only limits say nothing twice", () => {
  const unread = JOB.replace(/^ {2}read .*\n/gm, "");
  const hints = shown(unread, { "crib.thou": CRIB });
  expect(hints.filter((hint) => /^(?:journal|hole)/.test(hint))).toEqual([]);
});

test("what is missing is named, and a click leads to what lacks it", () => {
  const open = withCrib(JOB.replace("  ream with r-8755\n", ""));
  const hints = hintsIn(open, 0, 100);
  const [fit] = hints.filter((hint) => hint.source?.kind === "clearance");
  // either will do
  expect(fit && textOf(fit)).toBe(
    "needs a reading of bore front or the reamer of line layshaft",
  );
  const [, need, , other] = fit?.parts ?? [];
  expect(other?.text).toBe("the reamer of line layshaft");
  expect(other?.target?.range.start.line).toBe(28);
  expect(need).toEqual({
    text: "a reading of bore front",
    target: {
      path: open.path,
      range: {
        start: { line: 23, character: 5 },
        end: { line: 23, character: 10 },
      },
    },
  });
});

test("the best reamer leads to its entry in the crib", () => {
  const hints = hintsIn(withCrib(JOB), 0, 100);
  const line = hints.find((hint) => hint.source?.kind === "reamer-window");
  expect(line?.parts.at(-1)).toMatchObject({
    text: "reamer r-8755",
    target: { path: "/shop/crib.thou", range: { start: { line: 14 } } },
  });
});

test("the tool of a line is the first that its results name: of the crib, else to buy, else none", () => {
  const toolOf = (crib: string, want: string): string | undefined => {
    const open = opened(JOB.replace("0.0008 to 0.0016", want), {
      "crib.thou": crib,
    });
    const tool = hintsIn(open, 0, 100)
      .find((hint) => hint.source?.kind === "reamer-window")
      ?.parts.at(-1)?.text;
    const [first] = resultsOfKind(open.shop, "line layshaft", "cut-size");
    expect(tool).toBe(first?.of ?? "no reamer that serves");
    return tool;
  };
  const small = CRIB.replace("size 0.8755", "size 0.8");
  expect(toolOf(CRIB, "0.0008 to 0.0016")).toBe("reamer r-8755");
  // from 0.87472 to 0.87928 in there is room for a 7/8 in reamer, 0.8750 in
  expect(toolOf(small, "0.0004 to 0.0050")).toBe("7/8 in");
  expect(toolOf(small, "0.0010 to 0.0011")).toBe("no reamer that serves");
});

test("a tool that may well land outside is named with its chance, beside the line and in the overview", () => {
  const open = opened(
    JOB.replace("0.0008 to 0.0016", "0.0009 to 0.0011").replace(
      "  ream with r-8755\n",
      "",
    ),
    { "crib.thou": CRIB.replace("size 0.8755", "size 0.8") },
  );
  const line = hintsIn(open, 0, 100).find(
    (hint) => hint.source?.kind === "reamer-window",
  );
  // a 7/8 in reamer cuts from 0.8751 to 0.8755 in, and what is wanted asks for 0.87522 to 0.87538 in
  expect(line && textOf(line)).toMatch(
    /^bore to be 0\.87522 to 0\.87538 in, by measured journals: 7\/8 in, chance \d\d %$/,
  );
  const overview = overviewOf(open, {}, (path) => path);
  const lines = overview.groups.find(({ label }) => label === "Lines");
  expect(lines?.children[0]?.detail).toMatch(
    /^7\/8 in, chance \d\d %, by measured journals; window 0\.87522 to 0\.87538 in/,
  );
});

test("steps are next, done, or wait for the first of what is in the way", () => {
  const steps = `${JOB}
step try
  after ream

step mark
  done 2026-11-04 by AK
`;
  expect(
    shown(steps, { "crib.thou": CRIB }).filter((hint) =>
      hint.startsWith("step"),
    ),
  ).toEqual([
    "step ream «next»",
    "step try «waits: step ream to be done»",
    "step mark «done»",
  ]);
  const unread = JOB.replace(/^ {2}read near.*\n/m, "");
  expect(shown(unread, { "crib.thou": CRIB }).at(-1)).toBe(
    "step ream «waits: journal front is not measured»",
  );
});

test("readings are shown in the other unit, whatever their own is", () => {
  const text = (unit: string, values: string): string =>
    `job j\n  units ${unit}\npart p\njournal a on p\n  read ${values}\n`;
  const reading = (unit: string, values: string): string | undefined =>
    shown(text(unit, values)).at(-1)?.replace(/^.*«/, "«");
  // 25.4 mm to the inch; 1.0001 in is 25.40254 mm, and a tenth of a thou is 0.003 mm
  expect(reading("inch", "1.00000")).toBe("«25.4000 mm»");
  expect(reading("mm", "25.400")).toBe("«1.00000 in»");
  expect(reading("mm", "1.0000 1.0002 in  # written in inches")).toBe(
    "«mean 25.403 mm»",
  );
  expect(reading("inch", '1.0000"')).toBe("«25.400 mm»");
  expect(reading("inch", "25.400 mm by AK")).toBe("«1.00000 in»");
  expect(reading("mm", "1000.0 1000.2 thou")).toBe("«mean 25.403 mm»");
});

test("a class is followed by its limits", () => {
  // ISO 286-2:2010 gives 25 H7 as 0 to +21 µm and 25 f7 as −41 to −20 µm (the page of checks names what was seen of the tables)
  const text = `job j
  units mm
part p
journal a on p
  limits 25 mm f7 from "drawing"
hole a in p
  limits 25 mm H7
  boss 40
bore a in p
  limits 25.000 to 25.021
fit a of journal a in bore a
  want 25 mm H7/f7
`;
  expect(shown(text).filter((hint) => /limits|want/.test(hint))).toEqual([
    'limits 25 mm f7 from "drawing" «24.959 to 24.980 mm»',
    "limits 25 mm H7 «25.000 to 25.021 mm»",
    "want 25 mm H7/f7 «0.020 to 0.062 mm»",
  ]);
});

test("damaged lines and entries say nothing, and nor does the second of a name", () => {
  const damaged = JOB.replace(
    "read near 0.87432",
    "read near 0.87432,",
  ).replace("line layshaft", "line 3rd");
  const hints = shown(damaged, { "crib.thou": CRIB });
  expect(
    hints.filter((hint) => /^(?:journal|line|read near)/.test(hint)),
  ).toEqual([]);
  const twice = `${JOB}\njournal front on layshaft\n  read 0.9\n`;
  const heads = shown(twice, { "crib.thou": CRIB }).filter((hint) =>
    hint.startsWith("journal"),
  );
  expect(heads.length).toBeLessThan(2);
});

test("only the lines that are asked for are looked at", () => {
  const open = withCrib(JOB);
  const all = hintsIn(open, 0, 100);
  for (const [first, last] of [
    [0, 0],
    [11, 13],
    [12, 24],
    [13, 13],
    [30, 99],
  ] as const)
    expect(hintsIn(open, first, last)).toEqual(
      all.filter(({ position: { line } }) => first <= line && line <= last),
    );
  const worked: string[] = [];
  const fresh = withCrib(JOB);
  fresh.shop.graph.trace = (key) => worked.push(key);
  hintsIn(fresh, 5, 9);
  expect(worked.filter((key) => key.startsWith("clearance"))).toEqual([]);
});

test("the working behind a clearance has its formulas and its numbers", () => {
  const open = withCrib(JOB);
  const source = { ref: "fit front", kind: "clearance", case: null };
  const working = hintWorking(open, source) ?? "";
  expect(working.split("\n")[0]).toBe(
    "**fit front**, clearance on diameter: `0.00128 to 0.00142 in` (predicted, in tolerance)",
  );
  expect(working).toMatch(
    /^- least clearance = smallest bore − largest journal: `.*0\.87432.*`/m,
  );
  expect(hintWorking(open, { ...source, ref: "fit gone" })).toBeUndefined();
  expect(hintWorking(open, { ...source, kind: "film" })).toBeUndefined();
});

test("a hint stands before the comment of its line", () => {
  const text = JOB.replace("step ream", "step ream   # tomorrow");
  const hint = hintsIn(withCrib(text), 0, 100).at(-1);
  expect(hint?.position.character).toBe("step ream".length);
});
