// The traps of several facts in one line: what an entry is and what is known of it, or one fact behind another.
import type { Damage } from "./explain.ts";
import {
  reads,
  readsWhole,
  wordAt,
  wordBefore,
  type Asked,
  isReading,
} from "./asked.ts";
import { ENTRIES } from "./vocabulary.ts";

/** `reamer r-1 size 0.8755`: without this it would be called a remark, and the fact would be lost. */
export function factOnOpening(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const entry = ENTRIES.find((each) => each.rule === asked.rule);
  if (entry === undefined) return undefined;
  const { start, end } = wordAt(body, stoppedAt);
  const before = wordBefore(body, start);
  const word = body.slice(start, end);
  const fact = entry.facts.find((each) => each.word === word);
  if (fact === undefined || before === undefined) return undefined;
  if (!reads(body.slice(0, before.end), asked)) return undefined;
  const below = body.slice(start);
  return {
    start,
    end: body.length,
    message: `\`${word}\` is a fact of this ${entry.kind}, and a fact stands on a line of its own, indented below.`,
    ...(reads(below, { ...asked, rule: fact.rule })
      ? { below, safe: true }
      : {}),
  };
}

/** `size 0.8755 drive hand` */
export function factAfterFact(body: string, asked: Asked): Damage | undefined {
  const kinds = ENTRIES.filter(({ facts }) =>
    facts.some(({ rule }) => rule === asked.rule),
  );
  for (const { index } of body.matchAll(/(?<=\s)\p{Ll}[\p{Ll}-]*(?=\s)/gu)) {
    const below = body.slice(index);
    const word = body.slice(index, wordAt(body, index).end);
    const isFact = kinds.some(({ facts }) =>
      facts.some(
        (fact) => fact.word === word && readsWhole(below, { rule: fact.rule }),
      ),
    );
    if (!isFact || !readsWhole(body.slice(0, index).trimEnd(), asked)) continue;
    return {
      start: index,
      end: body.length,
      message: `\`${word}\` begins another fact, and each fact stands on a line of its own.`,
      below,
      safe: true,
    };
  }
  return undefined;
}

/** `read near 0.8743 far 0.8741`: so near to one another, both are sizes. */
export function placeAfterPlace(
  body: string,
  asked: Asked,
): Damage | undefined {
  const found =
    /^(\S+\s+\p{L}[\p{L}\d-]*\s+(\d*\.?\d+).*?)\s+((?!(?:mm|in|inch|um|thou|tenths)\s)(\p{L}[\p{L}\d-]*)\s+(\d*\.?\d+).*)$/u.exec(
      body,
    );
  if (found === null || !isReading(asked)) return undefined;
  const [, head = "", one, rest = "", place = "", other] = found;
  const below = `${body.slice(0, body.search(/\s/u))} ${rest}`;
  const ratio = Number(one) / Number(other);
  if (
    !(0.5 < ratio && ratio < 2) ||
    !readsWhole(head, asked) ||
    !readsWhole(below, asked)
  )
    return undefined;
  return {
    start: body.length - rest.length,
    end: body.length,
    message: `\`${place}\` begins another reading, and each stands on a line of its own.`,
    below,
    safe: true,
  };
}

/** `concession loose on fit front`: which finding is allowed is not known. */
export function concessionOn(body: string, asked: Asked): Damage | undefined {
  const found = /(?<=^\S+\s+\S+\s+)(?:on|of|for|in)\s+(.+)$/u.exec(body);
  const below = `allows CODE on ${found?.[1] ?? ""}`;
  if (found === null || asked.rule !== "ConcessionEntry") return undefined;
  const isEntry = readsWhole(below, { rule: "AllowsFact" });
  return {
    start: found.index,
    end: body.length,
    message: `What a concession is on stands below it with the finding that it allows, as in \`${isEntry ? below.replace("CODE", "fit-loose") : "allows fit-loose on fit NAME"}\`.`,
    ...(isEntry ? { below } : {}),
  };
}
