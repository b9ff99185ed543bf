// Which form of a line is shown and which part of it is marked: cursor fixtures, and the grammar's own examples word by word.
import { describe, expect, test } from "vitest";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import { formOf, formsOf } from "../../server/ide/signature-forms.ts";
import { placeIn } from "../../server/ide/signature-place.ts";
import { likeliest, signatureAt } from "../../server/ide/signature.ts";
import { exampleLines } from "../client/example-lines.ts";
import { atCaret, CRIB } from "./caret.ts";

function shown(marked: string) {
  const { open, position } = atCaret(marked, { "crib.thou": CRIB });
  return signatureAt(open, position);
}

/** The label with the marked part in braces; "" where nothing is shown. */
function withMark(help: ReturnType<typeof shown>): string {
  const signature = help?.signatures[help.active];
  const at = help && signature?.parameters[help.parameter];
  if (signature === undefined || at === undefined) return "";
  const { label } = signature;
  return `${label.slice(0, at.start)}{${label.slice(at.start, at.end)}}${label.slice(at.end)}`;
}

function marked(line: string, head = "journal a on b"): string {
  return withMark(shown(`job j\n  units inch\n${head}\n  ${line}\n`));
}

describe("a fact", () => {
  test.each([
    ["limits |", 'limits {LOW} to HIGH [from "SOURCE"]'],
    ["limits 0.87|", 'limits {LOW} to HIGH [from "SOURCE"]'],
    ["limits 0.874 |", 'limits LOW {to HIGH} [from "SOURCE"]'],
    ["limits 0.874 in |", 'limits LOW {to HIGH} [from "SOURCE"]'],
    ["limits 7/8 to 1 3/16|", 'limits LOW {to HIGH} [from "SOURCE"]'],
    ["limits 0.8740 to 0.8745 |", 'limits LOW to HIGH [{from "SOURCE"}]'],
    ["limits 0.8745 +0 |", 'limits SIZE +UPPER {-LOWER} [from "SOURCE"]'],
    ["limits 0.8742 +/- |", 'limits MIDDLE {+/- HALF} [from "SOURCE"]'],
    ["limits 0.8742 \u{B1} 3|", 'limits MIDDLE {+/- HALF} [from "SOURCE"]'],
    ["limits 25 mm H|", 'limits SIZE {CLASS} [from "SOURCE"]'],
    ["limits 25 m|", 'limits {LOW} to HIGH [from "SOURCE"]'],
    // the whole line says which form it is, the words before the caret which part
    ["limits 2|5 mm H7", 'limits {SIZE} CLASS [from "SOURCE"]'],
    [
      "read |",
      "read [{PLACE}] VALUES [station Z] [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
    ],
    [
      "read 0.87432 0.8742|",
      "read [PLACE] {VALUES} [station Z] [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
    ],
    [
      "read near 0.87432 at 68 F with |",
      "read [PLACE] VALUES [station Z] [{with GAUGE}] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
    ],
    ["finish Rz |", "finish Ra|Rz {VALUE}"],
  ])("%s", (line, expected) => {
    expect(marked(line)).toBe(expected);
  });

  test.each([
    ["load 180 |", "load FORCE {steady|reversing|shock}"],
    ["oscillates 30 deg, |", "oscillates ANGLE, {RATE per min}"],
    [
      "hot case 130 F, |",
      "hot shaft TEMPERATURE, bush TEMPERATURE, {case TEMPERATURE}",
    ],
    [
      "hot shaft 130 F, |",
      "hot shaft TEMPERATURE, {bush TEMPERATURE}, case TEMPERATURE",
    ],
    ["feed pressure |", "feed {pressure PRESSURE}"],
    ["want 25 mm H7/|", "want SIZE {CLASS}"],
  ])("of a fit: %s", (line, expected) => {
    expect(marked(line, "fit a of a in a")).toBe(expected);
  });

  test.each([
    ["the fact's own word", "lim|its 0.874"],
    ["just after it", "limits|"],
    ["a fact that is whole", "length 1.250 |in"],
    ["a fact of one word", "vented |"],
    ["a text", 'note "dressed |the face"'],
    ["a comment", "limits 0.874 # to |"],
    ["a word of no fact", "jurnal |"],
  ])("nothing in %s", (_, line) => {
    const head = line.startsWith("vented") ? "hole a in b" : "journal a on b";
    expect(marked(line, head)).toBe("");
  });

  test("says what the fact means, what the part is, and an example that reads so", () => {
    const help = shown("journal a on b\n  limits 25 mm H|\n");
    const [usual] = help?.signatures ?? [];
    const active = help?.signatures[help.active];
    expect(usual?.markdown).toBe(
      'Limits of size as drawn; `0.8745 +0 -0.0005`, `0.8742 +/- 0.0003` and a class such as `25 mm H7` do as well.\n\nFor example `limits 0.8740 to 0.8745 from "yard drawing L-204"`',
    );
    expect(active?.markdown).toMatch(/For example `limits 25 mm H7`$/);
    expect(active?.parameters[help?.parameter ?? 0]?.markdown).toMatch(
      /^A class of size/,
    );
  });

  test("a choice says what each of its words means", () => {
    const help = shown("hole a in b\n  depth 1.3 |\n");
    expect(
      help?.signatures[help.active]?.parameters[help.parameter]?.markdown,
    ).toBe("`blind` It has a bottom. `through` It is open at both ends.");
  });
});

test.each([
  ["fit front |", "fit NAME {of JOURNAL} in BORE"],
  ["fit front of journal |", "fit NAME {of JOURNAL} in BORE"],
  ["fit front of journal front |", "fit NAME of JOURNAL {in BORE}"],
  ["bore a in bush |", "bore NAME {in bush|part NAME}"],
])("an opening line: %s", (line, expected) => {
  expect(withMark(shown(`${line}\n`))).toBe(expected);
});

describe("the grammar's examples", () => {
  const specs = ENTRIES.flatMap((entry) =>
    [entry, ...entry.facts].map((spec) => ({
      kind: entry.kind,
      spec,
      word: "word" in spec ? spec.word : spec.kind,
    })),
  );
  const lines = exampleLines().flatMap(({ rule, body }) => {
    const found = specs.filter(
      ({ spec, word }) =>
        spec.rule === rule && (body === word || body.startsWith(`${word} `)),
    );
    // entries that share a rule differ in the classes that they take
    const forms = found.flatMap(({ spec, kind }) => formsOf(spec, kind));
    return found.length === 0 ? [] : [{ body, forms }];
  });
  // read so that it can be refused in one sentence
  const REFUSED = "limits 24.959-";

  test("most of the grammar is among them", () => {
    expect(lines.length).toBeGreaterThan(100);
  });

  test.each(lines.filter(({ body }) => !body.startsWith(REFUSED)))(
    "$body",
    ({ body, forms }) => {
      const form = forms[likeliest(forms, body, body)];
      if (form === undefined) throw new Error("no form");
      expect(placeIn(form, body).misfits).toBe(0);
      // while it is being typed, something is marked until all that must stand is there
      for (
        let end = body.indexOf(" ") + 1;
        0 < end && end < body.length;
        end++
      ) {
        const now =
          forms[likeliest(forms, body.slice(0, end), body.slice(0, end))];
        const place = now && placeIn(now, body.slice(0, end));
        const isWordEnd = body[end - 1] !== " ";
        if (isWordEnd) expect(place?.part).toBeDefined();
      }
    },
  );

  test("every part of every form is words of it", () => {
    for (const { kind, spec } of specs)
      for (const { text, parts } of formsOf(spec, kind)) {
        let last = 0;
        for (const part of parts) {
          expect(last).toBeLessThanOrEqual(part.start);
          expect(text.slice(part.start, part.end)).toContain(part.name);
          expect(text.slice(part.start, part.end)).not.toMatch(/^\s|\s$|[[\]]/);
          last = part.end;
        }
      }
  });
});

test("a form is taken apart into its parts", () => {
  expect(
    formOf("oil NAME at TEMPERATURE").parts.map(({ name, lead, isNumber }) => [
      name,
      lead,
      isNumber,
    ]),
  ).toEqual([
    ["NAME", [], false],
    ["TEMPERATURE", ["at"], true],
  ]);
});
