// What the archive keeps of an entry by itself: that it is there, what it names, what was read. The rest of a record is rows.ts's.
import { allOf, valueIn, type Entry } from "../model/entry.ts";
import { correct } from "../model/evaluate/readings.ts";
import { shownBy, swingsOf } from "../model/evaluate/roundness.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import { materialOf, type MaterialValue } from "../model/evaluate/material.ts";
import { SILENT, type Known } from "../model/known.ts";
import type { OpenFile } from "../model/project.ts";
import { refOf, resolve, type Shop, isFirstOfName } from "../model/shop.ts";
import type { Reading, RefSite, Span, Stage } from "../model/values.ts";
import type { Row, Value } from "./schema.ts";

/** What the archive calls a file, by its path. */
export type Naming = (path: string) => string;

export function entryRows(
  { file, shop }: OpenFile,
  name: string,
): readonly Row[] {
  return file.entries.map((entry, index) => [
    name,
    index + 1,
    (file.lines.starts[index] ?? 0) + 1,
    entry.kind ?? null,
    entry.name ?? null,
    entry.ref === "" ? null : entry.ref,
    isFirstOfName(shop, entry.ref, index),
    entry.damaged,
    valueIn(entry, "SerialFact") ?? null,
    valueIn(entry, "LotFact") ?? null,
  ]);
}

export function linkRows(
  shop: Shop,
  entry: Entry,
  name: string,
  naming: Naming,
): readonly Row[] {
  return entry.refs.map((site, index) => {
    const [target, record] = targetOf(shop, site, naming);
    return [
      name,
      entry.ref,
      factOf(entry, site),
      index + 1,
      target,
      record,
      site.name,
    ];
  });
}

/** The word of the line that a reference stands on. */
function factOf(entry: Entry, { span }: RefSite): string {
  return span.line === 0
    ? "on"
    : (entry.facts.find((fact) => fact.span.line === span.line)?.word ?? "");
}

/** The full reference of what a site means, and the file that holds it. */
function targetOf(
  shop: Shop,
  site: RefSite | undefined,
  naming: Naming,
): readonly [Value, Value] {
  if (site === undefined) return [null, null];
  const found = resolve(shop, site);
  if (found.state === "shipped") return [found.ref, null];
  if (found.state !== "found") return [null, null];
  const place = shop.places.get(found.ref);
  const file = place === undefined ? undefined : shop.files[place.file];
  return [found.ref, file === undefined ? null : naming(file.path)];
}

/** A line that says what was read, of whatever form. */
interface ReadLine {
  readonly reading: Reading;
  readonly span: Span;
  readonly word: "read" | "repeat";
  readonly side: "od" | "id" | null;
  readonly member: string | null;
  readonly unwritten: Stage;
}

/** @param start first line of the entry in its file, from 0 */
export function readingRows(
  shop: Shop,
  entry: Entry,
  start: number,
  name: string,
  naming: Naming,
): readonly Row[] {
  return readLines(entry).flatMap((line) => {
    const { reading } = line;
    const [gauge, gaugeRecord] = targetOf(shop, reading.gauge, naming);
    const corrected = correct(shop, reading, line.span, () =>
      materialFor(shop, entry, line.member),
    );
    return reading.values.map(({ value, step }, index) => [
      name,
      entry.ref,
      start + line.span.line + 1,
      line.word,
      line.side,
      line.member,
      reading.place ?? null,
      index + 1,
      value,
      step ?? null,
      corrected.known ? (corrected.value.values[index] ?? null) : null,
      reading.station ?? null,
      gauge,
      gaugeRecord,
      reading.temperature?.value ?? null,
      reading.gaugeTemperature?.value ?? null,
      reading.stage ?? line.unwritten,
      reading.signature.date ?? null,
      reading.signature.who ?? null,
    ]);
  });
}

/** The lines that can be read, in their order. */
function readLines(entry: Entry): readonly ReadLine[] {
  const plain = { side: null, member: null, unwritten: "finished" } as const;
  return [
    ...allOf(entry, "ReadFact").map(({ value, span }) => ({
      ...plain,
      reading: value,
      span,
      word: "read" as const,
    })),
    ...allOf(entry, "RepeatFact").map(({ value, span }) => ({
      ...plain,
      reading: value,
      span,
      word: "repeat" as const,
    })),
    ...allOf(entry, "BushReadFact").map(({ value, span }) => ({
      ...plain,
      reading: value,
      span,
      word: "read" as const,
      side: value?.side ?? null,
      unwritten: "bought" as const,
    })),
    ...allOf(entry, "StackReadFact").map(({ value, span }) => ({
      ...plain,
      reading: value,
      span,
      word: "read" as const,
      member: value?.member ?? null,
    })),
  ]
    .flatMap(({ reading, ...line }) =>
      reading === undefined ? [] : [{ ...line, reading }],
    )
    .sort((a, b) => a.span.line - b.span.line);
}

/** What the part that was read grows as: a stack's member as the part that its line names. */
function materialFor(
  shop: Shop,
  entry: Entry,
  member: string | null,
): Known<MaterialValue> {
  if (member === null) return materialOfFeature(shop, entry.ref);
  const part = [...allOf(entry, "PlusFact"), ...allOf(entry, "MinusFact")].find(
    ({ value }) => value?.name === member,
  )?.value?.part;
  const ref = refOf(shop, part);
  return ref === undefined ? SILENT : materialOf(shop, ref);
}

/** @param start first line of the entry in its file, from 0 */
export function swingRows(
  shop: Shop,
  entry: Entry,
  start: number,
  name: string,
  naming: Naming,
): readonly Row[] {
  return swingsOf(entry).flatMap(({ value, span }): readonly Row[] => {
    if (value === undefined) return [];
    const { swing, method, lobes, signature } = value;
    const [gauge, gaugeRecord] = targetOf(shop, value.gauge, naming);
    const shows = shownBy(value);
    const isVee = method.kind === "vee";
    return [
      [
        name,
        entry.ref,
        start + span.line + 1,
        value.place ?? null,
        swing.value,
        swing.step ?? null,
        isVee ? "vee" : "three-points",
        isVee ? method.angle : null,
        isVee ? method.indicator : null,
        lobes,
        shows?.factor ?? null,
        shows?.roundness ?? null,
        gauge,
        gaugeRecord,
        value.stage ?? "finished",
        signature.date ?? null,
        signature.who ?? null,
      ],
    ];
  });
}
