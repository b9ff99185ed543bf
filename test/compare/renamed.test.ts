// An entry under another name: the same where nothing but names differs, else one that is gone and one that is new.
import { describe, expect, test } from "vitest";
import type { RecordChanges } from "../../server/compare/changes.ts";
import { compare, JOB } from "./job.ts";

/** "journal drive: journal front → journal drive", and whatever else has changed. */
const said = ({ changes, come, gone }: RecordChanges): readonly string[] => [
  ...changes.map(
    ({ entry, what, before, after }) =>
      `${entry} ${what}: ${before?.text ?? "not there"} → ${after?.text ?? "gone"}`,
  ),
  ...come.map(({ code, entry }) => `new ${code} at ${entry ?? ""}`),
  ...gone.map(({ code, entry }) => `gone ${code} at ${entry ?? ""}`),
];

/** Every place in which a name stands after its kind, or alone where it is the only one that it can be. */
const called = (text: string, from: string, to: string): string =>
  text.replaceAll(new RegExp(`${from}(?![\\w-])`, "gu"), to);

describe("a name that was changed wherever it stands", () => {
  test("of a journal that has a warning is no worse", () => {
    const found = compare(
      JOB,
      called(JOB, "journal rear", "journal drive-end"),
    );
    expect(said(found)).toEqual([
      "journal drive-end name: journal rear → journal drive-end",
    ]);
    expect(found.worse).toBe(0);
    expect(found.changes[0]?.tendency).toBe("neither");
  });

  test.each([
    ["part case", /in case(?![\w-])|part case/gu, "case", "gearcase"],
    ["reamer r-875", /r-875/gu, "r-875", "r-hand"],
    ["line bores", /line bores/gu, "bores", "layshaft"],
    ["concession worn", /concession worn/gu, "worn", "by-hand"],
    ["step ream", /step ream/gu, "ream", "cut"],
  ])("of %s", (ref, places, from, to) => {
    const after = JOB.replaceAll(places, (place) => place.replace(from, to));
    const kind = ref.slice(0, ref.indexOf(" "));
    expect(said(compare(JOB, after))).toEqual([
      `${kind} ${to} name: ${ref} → ${kind} ${to}`,
    ]);
  });

  test("of several at once, each told from its like by what it is of", () => {
    const after = ["journal", "bore", "fit"].reduce(
      (text, kind) =>
        called(
          called(text, `${kind} front`, `${kind} near`),
          `${kind} rear`,
          `${kind} far`,
        ),
      JOB,
    );
    // both bores say the same: they are told apart by the fits, and those by the journals
    const found = compare(JOB, after);
    expect(found.worse).toBe(0);
    expect(found.changes.map(({ what }) => what)).toEqual(
      new Array(6).fill("name"),
    );
    expect(said(found)).toContain("bore far name: bore rear → bore far");
  });

  test("and what is worse besides is told of the new name", () => {
    const after = called(JOB, "journal rear", "journal far").replace(
      "bore rear in case\n  read 0.8751",
      "bore rear in case\n  read 0.8771",
    );
    const found = compare(JOB, after);
    expect(said(found)).toContain("new fit-loose at fit rear");
    expect(said(found)).toContain(
      "journal far name: journal rear → journal far",
    );
    expect(said(found).join()).not.toContain("journal far size");
  });
});

describe("no guess: one is gone and the other new", () => {
  const isGuessed = (after: string, before = JOB): boolean =>
    compare(before, after).changes.some(({ what }) => what === "name");

  test("where a fact differs", () => {
    const after = called(JOB, "journal rear", "journal drive");
    expect(isGuessed(after)).toBe(true);
    expect(
      isGuessed(after.replace("0.8738 to 0.8740", "0.8738 to 0.8741")),
    ).toBe(false);
    expect(isGuessed(after.replace("drive on layshaft", "drive on case"))).toBe(
      false,
    );
  });

  test("where something still refers to the old name, or to another", () => {
    const after = called(JOB, "journal rear", "journal drive");
    expect(
      isGuessed(after.replace("on journal drive", "on journal rear")),
    ).toBe(false);
    expect(
      isGuessed(after.replace("of journal drive", "of journal front")),
    ).toBe(false);
    expect(
      isGuessed(after.replace("of journal front", "of journal drive")),
    ).toBe(false);
  });

  test("where two are alike, before or after", () => {
    const twin = (name: string): string =>
      `gauge ${name}\n  resolution 0.0001\n`;
    expect(isGuessed(JOB + twin("b"), JOB + twin("a"))).toBe(true);
    expect(isGuessed(JOB + twin("b") + twin("c"), JOB + twin("a"))).toBe(false);
    expect(isGuessed(JOB + twin("c"), JOB + twin("a") + twin("b"))).toBe(false);
  });

  test("where nothing but the name tells what it is", () => {
    const step = (name: string, more = ""): string => `step ${name}\n${more}`;
    expect(isGuessed(JOB + step("clean"), JOB + step("drain"))).toBe(false);
    const text = '  do "Flush every bore"\n';
    expect(
      isGuessed(JOB + step("clean", text), JOB + step("drain", text)),
    ).toBe(true);
    expect(isGuessed(JOB + "part pin\n", JOB + "part stud\n")).toBe(false);
    // of both parts nothing is left that was on the other
    const on = (part: string, journal: string): string =>
      `part ${part}\n  material steel-1045\njournal ${journal} on ${part}\n`;
    const other = on("stud", "b\n  limits 0.5000 to 0.5010");
    expect(isGuessed(JOB + other, JOB + on("pin", "a"))).toBe(false);
  });

  test("where its opening line can't be read", () => {
    const after = called(JOB, "journal rear", "journal drive").replace(
      "journal drive on layshaft",
      "journal drive on",
    );
    expect(isGuessed(after)).toBe(false);
  });
});

test("layout, comments and the order of entries make no other entry of it", () => {
  const after = called(JOB, "journal rear", "journal drive").replace(
    "  limits 0.8738 to 0.8740\n",
    "    limits   0.8738 to 0.8740 # by the drawing\n\n",
  );
  expect(said(compare(JOB, after))).toEqual([
    "journal drive name: journal rear → journal drive",
  ]);
});
