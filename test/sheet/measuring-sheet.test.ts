// The measuring sheet: a table for every size to read, with what to hold the readings against. The limits are worked out by hand.
import { describe, expect, test } from "vitest";
import { soundSamples } from "../samples.ts";
import { readPage, rowsOf, textOf } from "./read-page.ts";
import { sheetsOf, sheetsOfSample } from "./sheets.ts";

describe.each(soundSamples)("$path", ({ path }) => {
  const { open, blank } = sheetsOfSample(path);
  const { text } = readPage(blank);

  test("has a table for every journal, hole, bush and bore of the record", () => {
    for (const { kind, name = "" } of open.file.entries) {
      if (kind === "journal") expect(text).toContain(`Journal ${name}`);
      if (kind === "hole") expect(text).toContain(`Hole ${name}`);
      if (kind === "bore") expect(text).toContain(`Bore ${name}`);
      if (kind === "bush") {
        expect(text).toContain(`Bush ${name}, od`);
        expect(text).toContain(`Bush ${name}, id`);
      }
      if (kind === "line") {
        expect(text).toContain(`The cut of line ${name}`);
        expect(text).toContain("Reamer taken:");
      }
    }
  });
});

test("what a gauge is set with has no unit, though its name ends in a figure", () => {
  const { text } = readPage(
    sheetsOf(`job a
  units mm
gauge mike-25-50
  resolution 0.001
gauge bore-1
  set with mike-25-50
gauge bore-2
  set on ring 25
part shaft
journal j on shaft
`).blank,
  );
  expect(text).toContain("mike-25-50");
  expect(text).not.toContain("mike-25-50 mm");
  expect(text).toContain("ring 25 mm");
});

describe("what a reading is held against", () => {
  const record = [
    "job a",
    "  units inch",
    "part shaft",
    "part case",
    "journal j on shaft",
    '  limits 0.8740 to 0.8745 from "drawing 7"',
    "  service-limit 0.8730",
    "  round 0.0002",
    "  read near 0.87432 0.87428",
    "bore b in case",
    "fit f of journal j in bore b",
    "  want 0.0008 to 0.0016",
  ].join("\n");
  const { text } = readPage(sheetsOf(record).blank);

  test("limits with their source, the service limit and the roundness allowed", () => {
    expect(text).toContain("Limits: 0.8740 to 0.8745 in (from drawing 7)");
    expect(text).toContain("Service limit: 0.8730");
    expect(text).toContain("Out of round: up to 0.0002 in");
  });

  // 0.87432 + 0.0008 to 0.87428 + 0.0016
  test("a bore, by the journal that is read", () => {
    expect(text).toContain(
      "For fit f: 0.87512 to 0.87588 in (clearance 0.0008 to 0.0016 in over journal j as read)",
    );
  });

  // 0.8745 + 0.0008 to 0.8740 + 0.0016
  test("a bore, by the limits of a journal that nobody has read", () => {
    const unread = record.replace("  read near 0.87432 0.87428\n", "");
    expect(readPage(sheetsOf(unread).blank).text).toContain(
      "For fit f: 0.8753 to 0.8756 in (clearance 0.0008 to 0.0016 in over the limits of journal j, not yet read)",
    );
  });

  test("a size without limits leaves room to write them", () => {
    expect(
      readPage(sheetsOf("job a\n  units mm\npart p\njournal j on p\n").blank)
        .text,
    ).toContain("No limits are written. Limits: from");
  });
});

test("a record with guarded verdicts shows what is surely in, inside the limits", () => {
  const { text } = readPage(sheetsOfSample("shop/winch.thou").blank);
  const [, low, high, guard] =
    /Surely in: ([\d.]+) to ([\d.]+) in \(held back by ([\d.]+) in/.exec(
      text,
    ) ?? [];
  expect(Number(low)).toBeCloseTo(0.874 + Number(guard), 6);
  expect(Number(high)).toBeCloseTo(0.8745 - Number(guard), 6);
});

test("how a line is written shows a temperature in the scale of the job", () => {
  const [inch, mm] = ["inch", "mm"].map(
    (unit) => readPage(sheetsOf(`job a\n  units ${unit}\n`).blank).text,
  );
  expect(inch).toContain("with GAUGE at 68 F by");
  expect(mm).toContain("with GAUGE at 20 C by");
});

test("each row has four angles and a verdict to tick; a gauge, a temperature, a day and initials are asked for once", () => {
  const { elements, text } = readPage(
    sheetsOf("job a\n  units mm\npart p\njournal j on p\n  limits 25 h6\n")
      .blank,
  );
  const rows = elements.filter(
    (each) =>
      each.tagName === "tr" &&
      each.childNodes.length === 6 &&
      each.childNodes.every((cell) => cell.nodeName === "td") &&
      textOf(each).endsWith("out"),
  );
  expect(rows.length).toBe(3);
  expect(text.match(/With gauge part at by on/g)?.length).toBe(1);
});

test("a member of a stack stands with its sign, as it is written", () => {
  const { elements } = readPage(
    sheetsOfSample("shop/gearbox-float.thou").blank,
  );
  const table = elements.find(
    (each) => each.tagName === "table" && textOf(each).startsWith("Member"),
  );
  expect(
    (table === undefined ? [] : rowsOf(table)).map((cells) =>
      cells.slice(0, 2),
    ),
  ).toEqual([
    ["plus case", "182.350 to 182.450 mm"],
    ["minus left-ring", "18.980 to 19.020 mm"],
    ["minus shoulders", "141.500 to 141.560 mm"],
    ["minus right-ring", "18.980 to 19.020 mm"],
    ["minus cover-spigot", "2.100 to 2.200 mm"],
  ]);
});

test("a bore that is cut asks for each stage with what it was read", () => {
  const { text } = readPage(
    sheetsOf(
      "job a\n  units mm\npart p\nhole h in p\nbush u in h\nbore b in u\nline l\n  bore b from 0 to 30\n",
    ).blank,
  );
  for (const stage of ["pressed", "finished"]) {
    expect(text).toContain(`near ${stage}`);
    expect(text).toContain(`As ${stage}, with gauge part at by on`);
  }
});

describe("the swing of a pointer", () => {
  const job = (swings: string, bore = ""): string =>
    `job a
  units inch
gauge dti-1
part shaft
part case
journal j on shaft
  limits 0.8740 to 0.8745
${swings}bore b in case
${bore}fit f of journal j in bore b
  want 0.0008 to 0.0016
`;
  /** The cells of the rows of the tables of swings. */
  const rows = (text: string): readonly (readonly string[])[] =>
    readPage(sheetsOf(text).blank)
      .elements.filter(
        (each) =>
          each.tagName === "table" &&
          /^PlaceSwing|^PlaceAsSwing/.test(textOf(each)),
      )
      .flatMap(rowsOf);

  test("that is not measured has lines to write on: two for a journal in a vee, two for a bore on three points", () => {
    const vee = ["", "", "in a vee of °", "", "", ""];
    const points = ["", "", "on three points", "", "", ""];
    expect(rows(job(""))).toEqual([vee, vee, points, points]);
  });

  test("that is measured stands there with what it shows, and a line for the next", () => {
    expect(
      rows(
        job(
          "  swing near 0.0006 on vee 60 deg, 3 lobes with dti-1 by AK on 2026-11-02\n  swing 0.0000 on vee 60 deg, 5 lobes\n",
          "  swing 0.0004 on three points, 3 lobes\n",
        ),
      ),
    ).toEqual([
      // 0.0006 over the 3.00 of a vee of 60°
      [
        "near",
        "0.0006 in",
        "in a vee of 60°",
        "3",
        "dti-1",
        "2026-11-02 by AK",
        "0.00020 in, measured",
      ],
      [
        "",
        "0.0000 in",
        "in a vee of 60°",
        "5",
        "",
        "",
        "not shown: this way is blind to 5 lobes",
      ],
      ["", "", "in a vee of °", "", "", "", ""],
      // over the 2 of three points
      ["", "0.0004 in", "on three points", "3", "", "", "0.00020 in, measured"],
      ["", "", "on three points", "", "", "", ""],
    ]);
  });

  test("of a bore that is cut says at which stage it was", () => {
    const cut = `${job("", "  swing 0.0004 on three points, 3 lobes as roughed\n")}line l\n  bore b from 0 to 1\n`;
    expect(
      rows(cut)
        .slice(2)
        .map((cells) => cells.slice(0, 4)),
    ).toEqual([
      ["", "roughed", "0.0004 in", "on three points"],
      ["", "", "", "on three points"],
    ]);
  });

  // 0.8745 + 0.0002 + 0.0008 to 0.8740 + 0.0016: the journal is foretold from its limits, its lobes are measured
  test("counts in what a bore is held against, and is told apart from a size that nobody has read", () => {
    const { text } = readPage(
      sheetsOf(job("  swing 0.0006 on vee 60 deg, 3 lobes\n")).blank,
    );
    expect(text).toContain(
      "For fit f: 0.8755 to 0.8756 in (clearance 0.0008 to 0.0016 in over the limits of journal j, not yet read; its 3 lobes take 0.00020 in, as measured)",
    );
  });

  test("has no place on a reamer, a pilot or a bush", () => {
    const { text } = readPage(
      sheetsOf(
        "shop a\n  units inch\nreamer r\n  size 0.875\npilot p\n  od 0.875\n",
      ).blank,
    );
    expect(text).toContain("Reamer r");
    expect(text).not.toContain("Turned");
  });
});
