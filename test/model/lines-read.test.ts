// What each example of a fact's line in the grammar is read as, and what is told of it with a number or a unit of it another, in a golden file
// (`npm test -- -u` writes it anew; read the difference before it is committed). That the figures are right is facts.test.ts's; that each form
// is taken or refused, the grammar's own.
import { expect, test } from "vitest";
import { examples } from "../../grammar/examples.ts";
import { readLines } from "../../grammar/lines.ts";
import {
  ENTRIES,
  type EntryKind,
  type EntrySpec,
} from "../../grammar/vocabulary.ts";
import type { System } from "../../server/core/quantity/show.ts";
import { unitOf } from "../../server/core/quantity/units.ts";
import { readEntry } from "../../server/model/read-entry.ts";
import { readFile } from "../../server/model/file-entries.ts";

/** Spans as "line:start-end", and numbers to the digits that every machine has. */
function shown(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) => {
    if (typeof each === "number") return Number(each.toPrecision(12));
    if (typeof each !== "object" || each === null) return each;
    const { line, start, end } = each as Readonly<Record<string, unknown>>;
    return typeof start === "number"
      ? `${String(line)}:${String(start)}-${String(end)}`
      : each;
  }).replaceAll('"', "");
}

function readAs(
  { kind, form }: EntrySpec,
  fact: string,
  system: System | undefined,
): string {
  const head = form.replace(/bush\|part/, "bush").replaceAll(/[A-Z]+/g, "x");
  const [block] = readLines(`${head}\n  ${fact}\n`).blocks;
  if (block === undefined) throw new Error(`no block of ${kind}`);
  const { facts, problems, refs } = readEntry(block, { system, isJob: false });
  const sites = refs.filter(({ span }) => span.line === 1);
  return [
    ...facts.map(({ value, span }) => shown(value ?? span)),
    ...sites.map((site) => `names ${shown(site)}`),
    ...problems.map((each) => `${each.code} ${shown([each.span, each.data])}`),
  ].join(" | ");
}

const NUMBER = /(?<![\w.,/-])[-+]?\d*[.,]?\d+(?![\d/.-])/gu;

/** The line with one number or one unit of it another, and with its first two numbers the other way round. */
function* spoilt(body: string): Iterable<string> {
  const numbers = [...body.matchAll(NUMBER)];
  for (const { 0: number, index } of numbers) {
    const [before, after] = [
      body.slice(0, index),
      body.slice(index + number.length),
    ];
    for (const other of [
      number.replace(/\.|$/u, ","),
      `${number.slice(0, -1)}O`,
      "0",
      `-${number.replace(/^[-+]/u, "")}`,
    ])
      yield before + other + after;
  }
  const [one, other] = numbers;
  if (one !== undefined && other !== undefined) {
    const between = body.slice(one.index + one[0].length, other.index);
    const after = body.slice(other.index + other[0].length);
    for (const [first, second] of [
      [other[0], one[0]],
      [one[0], one[0]],
    ])
      yield `${body.slice(0, one.index)}${first ?? ""}${between}${second ?? ""}${after}`;
  }
  for (const { 0: word, index } of body.matchAll(/(?<=[\d ])[A-Za-z/-]+\b"?/gu))
    if (unitOf(word) !== undefined)
      for (const instead of ["", "thuo", "K", "lbf"])
        yield body.slice(0, index) + instead + body.slice(index + word.length);
}

/** Lines of which no example is a slip away. */
const MORE: readonly (readonly [EntryKind, string])[] = [
  ["hole", "limits 25 mm H7/f7"],
  ["hole", "limits 25 mm h7"],
  ["journal", "limits 25 mm H7"],
  ["journal", "limits 25 mm f7"],
  ["journal", "limits 0.875 in LC3"],
  ["hole", "limits 0.875 RC4"],
  ["bush", "od 25 mm s6"],
  ["bush", "id 25 mm H7"],
  ["bush", "length 25 mm H7"],
  ["pilot", "od 25 mm g6"],
  ["line", "cut to 25 mm H7"],
  ["press", "want 25 mm H7/s6"],
  ["fit", "want 25 mm H7"],
  ["fit", "want 25 mm H7/f7"],
  ["fit", "want-hot 25 mm H7/f7"],
  ["fit", "want 0.875 in RC4"],
  ["stack", "want 25 mm H7/f7"],
  ["journal", "service-limit 25 mm f7"],
  ["reamer", "size 25 mm H7"],
  ["reamer", "size 0.875 in RC4"],
  ["reamer", "size no 99"],
  ["reamer", "size no 80"],
  ["reamer", "size letter Z"],
  ["reamer", "stock 25 mm H7"],
  ["journal", "limits 0.8742 +/- -0.0003"],
  ["journal", "limits 0.8745 +0 -0"],
  ["journal", "limits 25 mm +0.02 -0"],
  ["journal", "limits 25 mm +0.02 -0 mm"],
  ["journal", "limits 25 mm +0.02 mm -0"],
  ["journal", "limits 0.874 in to 0.875"],
  ["journal", "limits 0.874 in to 0.873 in"],
  ["journal", "limits 0.874 mm to 0.875 in"],
  ["journal", "read near 0.874 as run as run"],
  ["journal", "read near 0.874 with a at 68 F with b"],
  ["journal", "read near 0.874 by AK on 2026-02-29"],
  ["journal", 'read near 0.874 by "A. Keel" on 2024-02-29'],
  ["journal", "read near 0.874 station 2 mm at 20.5 C as pressed"],
  ["journal", "swing 0.0006 on vee 60 deg, 3 lobes as run as run"],
  ["journal", "swing -0.0006 on vee 60 deg, 3 lobes"],
  ["journal", "swing 0.0006 on vee 60 deg, 1 lobes"],
  ["journal", "swing near 0.0006 on vee 60 deg, 3 lobes with mic-1 as run"],
  ["step", "done on 0099-12-31 by AK"],
  ["step", "done 2026-13-01"],
  ["step", "done 2026-12-32"],
  ["step", "done 2026-00-10"],
  ["lesson", "between 2019-03-04 and 2019-03-04"],
  ["lesson", "between 2019-03-05 and 2019-03-04"],
  ["lesson", "between 2019-02-30 and 2019-03-04"],
  ["lesson", "between 2019-02-03 and 2019-02-30"],
  ["lesson", "oversize mean 0.3 thou from 1"],
  ["lesson", "oversize mean 0.3 thou from 2"],
  ["lesson", "oversize mean 0.3 spread 0.1 thou from 2"],
  ["lesson", "oversize mean 0.3 spread 0 thou from 2"],
  ["lesson", "oversize mean 0.3 spread -0.1 thou from 2"],
  ["lesson", "oversize mean 0.3 spread 0.1 thou from 1"],
  ["lesson", "oversize mean 0.3 spread 0.1 thou from 0"],
  ["lesson", "closes 0.93 spread 0.04 from 1"],
  ["lesson", "closes 0.93 from 1"],
  ["lesson", "closes 0 spread 0.04 from 7"],
  ["lesson", "closes 0.93 spread 0.04 from 0"],
  ["lesson", 'bush bronze-c932 solid 28 by 25 mm lot "K 3"'],
  ["lesson", "bush bronze-c932 solid 28 by 28 mm"],
  ["line", "speed 60 rpm"],
  ["line", "bore rear from 1 to 2 centre 0, 0.001"],
  ["stack", "shims 0.1 mm, 0.2, 0.5 mm"],
  ["stack", "shims 0.1, 0.2, 0,5"],
  ["fit", "hot shaft 140, case 104,5"],
  ["fit", "hot shaft 140, bush 135, case 104 lbf"],
  ["fit", "hot shaft 140 F, shaft 150 F"],
  ["fit", "load 18Olbf steady"],
  ["fit", "load 18 lbf"],
  ["fit", "cooled case 150, air 70 F"],
  ["job", "warn stock-thin at 40 thuo"],
  ["job", "warn stock-thin at 4 lbf"],
  ["concession", "up to 0,0018"],
  ["fit", "load 1OOlbf steady"],
  ["fit", "load 1Olbf"],
  ["fit", "load 1Omm"],
  ["fit", "load 18ll steady"],
  ["fit", "load 18lI lbf"],
  ["fit", "load 1lO lbf"],
  ["journal", "nominal 2Omm"],
  ["journal", "nominal 2lomm"],
  ["journal", "limits 0.874O to 0.8745"],
  ["journal", "limits 0.8740 to 0.8745 from 'a'"],
  ["journal", "service-limit 0.8735"],
  ["journal", "limits 0.8740-0.8745"],
  ["journal", "limits 0.8745-0.8740"],
  ["journal", "limits 24.959 - 24.980"],
  ["journal", "limits 7/8-1"],
  ["journal", "limits 1-3/16"],
  ["bush", "od 1-2"],
  ["press", "want 0.6-1.2 thou"],
  ["press", "want 0.6-1,2 thou"],
  ["hole", "depth 1.350 through"],
  ["journal", "finish 1.6 um Rz"],
  ["part", "joint gasket 0,004"],
  ["oil", "viscosity 100 cP at 40 C, 8 cP at 100 C"],
  ["oil", "viscosity 100 cSt at 40, 8 cSt at 100 C"],
  ["oil", "grade ISO VG 460"],
  ["stack", "minus spacer 0.250 to 0.251 of part case"],
  ["stack", "minus spacer 0.250 to 0.251 of shaft"],
];

test("each example of each fact, and each with one thing of it another", async () => {
  const lines: string[] = [];
  const done = new Set<string>();
  for (const entry of ENTRIES)
    for (const { word, rule } of entry.facts)
      for (const body of examples[rule] ?? []) {
        if (!body.startsWith(word)) continue;
        const say = (fact: string, system: System | undefined): void => {
          lines.push(
            `${entry.kind}, ${system ?? "no unit"}: ${fact}: ${readAs(entry, fact, system)}`,
          );
        };
        say(body, "inch");
        if (done.has(body)) continue;
        done.add(body);
        say(body, "mm");
        say(body, undefined);
        for (const each of new Set(spoilt(body))) say(each, "inch");
      }
  for (const [kind, fact] of MORE) {
    const entry = ENTRIES.find((each) => each.kind === kind);
    if (entry === undefined) throw new Error(`no ${kind}`);
    for (const system of ["inch", "mm", undefined] as const)
      lines.push(
        `${kind}, ${system ?? "no unit"}: ${fact}: ${readAs(entry, fact, system)}`,
      );
  }
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/lines-read.txt",
  );
});

/** Entries that stand or begin otherwise than they should, in a job or in a file without one. */
const BLOCKS = [
  " journal a on shaft\n   read 0.874\n",
  "  journal a on shaft\n  limits 0.874 to 0.875\n  runs 240 rpm\n",
  "jurnal a on shaft\n  read 0.874\n",
  "jurnal\n",
  "journal\n  read 0.874\n",
  "journal 1st on shaft\n",
  "journal a onto shaft\n  read 0.874\n",
  "journal a on shaft of case\n",
  "material steel-4140\n",
  'material steel-4140\n  note "local"\n',
  "material own\n  modulus 14e6 psi\n  read 0.874\n",
  "oil sae-30\n",
  "oil own\n  density 0.87 g/cm3\n",
  'oil at\n  read 0.874\n  note "lost"\n',
  "read 0.874\n",
  "  read 0.874\n",
  "# only a remark\n",
  "part a\nread 0.874\n",
  "part a\n  read 0.874\n  dowels 2\n  dowels 4\n  dowels 6\n",
  'part a\n  dowels 2\n\n  # between\n  note "one"\n  note "two"\n',
  "fit a of a in a\n  want 0.001 to 0.002\n  want 0.001 to 0.003\n",
  "bore a in a\nbore b in part a\nbore c in bush a\nbore d in hole a\n",
];

test("entries that stand or begin otherwise than they should", async () => {
  const lines = BLOCKS.flatMap((text) =>
    ["job j\n  units inch\n", "shop s\n  units mm\n", ""].flatMap((head) => {
      const { entries, context } = readFile(
        "/a.thou",
        readLines(head + text),
        undefined,
      );
      return [
        JSON.stringify(head + text),
        `  ${shown(context)}`,
        ...entries
          .filter(({ kind }) => kind !== "job" && kind !== "shop")
          .map(
            ({ block, facts, ...entry }) =>
              `  ${shown({
                lines: block.lines.length,
                ...entry,
                facts: facts.map(({ word, span, value }) => [
                  word,
                  span,
                  value,
                ]),
              })}`,
          ),
      ];
    }),
  );
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/entries-read.txt",
  );
});
