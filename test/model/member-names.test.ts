// Names that every object of the language has as members are names like any other: a record with them comes to what it comes to with plain
// ones, in every kind of entry that is named, and as JSON.
import { describe, expect, test } from "vitest";
import { jsonText } from "../../server/cli/json-text.ts";
import { readLines } from "../../grammar/lines.ts";
import { dimensionsOf } from "../../server/ide/completion-units.ts";
import { summaryOf } from "../../server/ide/hover-findings.ts";
import {
  choiceMeaning,
  clauseMeaning,
  unitName,
} from "../../server/ide/hover-words.ts";
import { readLevels } from "../../server/ide/levels.ts";
import { partMeaning } from "../../server/ide/signature-words.ts";
import { createToldSettings } from "../../server/lsp/settings.ts";
import { canBeAllowed, figuresOf } from "../../server/rules/figures.ts";
import { otherNames } from "../../server/rules/text/near.ts";
import { unitMeant } from "../../server/rules/text/unit-names.ts";
import { createProject } from "../../server/rules/check.ts";
import { serveHere } from "../lsp/in-process.ts";
import { CRIB, JOB } from "../lsp/winch.ts";

/** Of Object.prototype, those that are names in a record: names begin with a letter. */
const MEMBERS = Object.getOwnPropertyNames(Object.prototype).filter((name) =>
  /^[A-Za-z]+$/u.test(name),
);

/** Each entry's name, but for those that are words of the language as well: to put another in their place would change more than a name. */
const NAMES = [
  ...new Set(
    [...`${JOB}${CRIB}`.matchAll(/^[a-z]+ ([a-z][\w-]*)/gmu)].map(
      ([, name = ""]) => name,
    ),
  ),
].filter((name) => !new RegExp(`^ +${name} `, "mu").test(JOB + CRIB));

function checked(job: string, crib: string): string {
  const project = createProject({ root: "/" });
  project.setFile("/winch.thou", readLines(job));
  project.setFile("/crib.thou", readLines(crib));
  return jsonText(project.check("/winch.thou"), 1);
}

/** Without places: another name is of another length. */
function plain(json: string): string {
  return json.replace(/"(?:start|end)": \d+/gu, "");
}

test("there are such names, and such entries", () => {
  expect(MEMBERS).toContain("constructor");
  expect(MEMBERS).toContain("toString");
  expect(NAMES).toContain("mic-1");
  expect(NAMES.length).toBeGreaterThan(5);
});

test("a name is in what comes out", () => {
  expect(
    checked(
      JOB.replaceAll("r-8755", "constructor"),
      CRIB.replaceAll("r-8755", "constructor"),
    ),
  ).toContain("constructor");
});

describe.each(MEMBERS)("%s", (member) => {
  test.each(NAMES)("for %s", (name) => {
    const word = new RegExp(`(?<![\\w-])${name}(?![\\w.-])`, "gu");
    const plainName = "zz-plain-name";
    const asked = checked(
      JOB.replace(word, member),
      CRIB.replace(word, member),
    );
    const other = checked(
      JOB.replace(word, plainName),
      CRIB.replace(word, plainName),
    );
    expect(plain(asked.replaceAll(member, plainName))).toBe(plain(other));
  });
});

test("`__proto__` is no name, and says so", () => {
  const project = createProject({ root: "/" });
  project.setFile(
    "/a.thou",
    readLines("job a\n  units mm\npart __proto__\n  __proto__ 5\n"),
  );
  expect(project.check("/a.thou").findings.map(({ code }) => code)).toContain(
    "line-damaged",
  );
});

test.each([...MEMBERS, "__proto__"])(
  "%s stands in no table of words, units or findings",
  async (name) => {
    expect(figuresOf(name)).toEqual(figuresOf("no-such-finding"));
    expect(canBeAllowed(name)).toBe(false);
    expect(summaryOf(name)).toBe("");
    for (const look of [choiceMeaning, clauseMeaning, unitName, dimensionsOf])
      expect(look(name), look.name).toBeUndefined();
    expect(partMeaning(name, name)).toBe("");
    expect(otherNames(name, ["limits"])).toEqual([]);
    expect(unitMeant(name, ["length"]).words).toEqual([]);
    const { editor } = serveHere();
    await editor.start([]);
    expect(await editor.request("thou/page", { code: name })).toBeNull();
  },
);

/** Whether hints are shown once an editor has said this of its settings. */
function hintsSet(json: string): boolean {
  const settings = createToldSettings(
    () => undefined,
    () => undefined,
  );
  settings.take(JSON.parse(json));
  return settings.now().hints;
}

test("in settings they are no codes, and leave every object as it was", () => {
  const before = Object.getOwnPropertyNames(Object.prototype).join();
  for (const name of [...MEMBERS, "__proto__"]) {
    const levels: unknown = JSON.parse(`{"${name}": "off"}`);
    const { problems, levels: read } = readLevels(levels);
    expect(problems.length, name).toBe(1);
    expect(Object.keys(read)).toEqual([]);
    expect(hintsSet(`{"${name}": {"enabled": false}}`)).toBe(true);
  }
  expect(hintsSet('{"__proto__": {"hints": {"enabled": false}}}')).toBe(true);
  expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(before);
});
