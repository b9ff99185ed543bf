// The shapes of lines that are shipped, so that the first line of each needs no parse by Ohm: generate.mjs writes them.

/** A word of each kind of letters that a shape tells apart; none is a word of thou.ohm. */
const WORDS = ["qz", "q1", "q", "q1z"];
/** Nodes that are a name, whatever it is. */
const NAMES = new Set(["name", "place", "member"]);

/**
 * The shapes of the lines of these records and of the grammar's own examples, as Ohm reads them: a template by rule and key. A word that may be
 * any word is left open in its key; one that only may be some is as it stands.
 * @param run loads a module of the sources
 */
export async function shapesOf(records, run) {
  const { ENTRIES, lineSpec } = await run("grammar/vocabulary.ts");
  const { parseAfresh } = await run("grammar/by-ohm.ts");
  const { readLines } = await run("grammar/lines.ts");
  const { shapeOf, widerKeys } = await run("grammar/shape.ts");
  const { packed, templateOf } = await run("grammar/template.ts");
  const { tokenize } = await run("grammar/tokens.ts");
  const { nodesIn } = await run("grammar/tree.ts");
  const { examples } = await run("grammar/examples.ts");

  const keyOf = (body) => shapeOf(body).key;
  const wordsIn = (body) =>
    tokenize(body).filter(({ kind }) => kind === "word");

  function templateFor(rule, body) {
    const { tree, damagedAt } = parseAfresh(body, rule);
    const template =
      damagedAt === undefined ? templateOf(tree, shapeOf(body)) : undefined;
    return template === undefined ? undefined : packed(template);
  }

  /** The line with any of the words at each of these places. */
  function withWords(body, places, words) {
    return places.reduceRight(
      (bodies, { start, end }) =>
        bodies.flatMap((each) =>
          words.map((word) => each.slice(0, start) + word + each.slice(end)),
        ),
      [body],
    );
  }

  /** The line with a name of no meaning for each of its own, which may be words of thou.ohm. */
  function withPlainNames(rule, body) {
    const { tree } = parseAfresh(body, rule);
    const names = [...nodesIn(tree)].filter(({ type }) => NAMES.has(type));
    const places = wordsIn(body).filter((word) =>
      names.some(({ start, end }) => start === word.start && end === word.end),
    );
    return withWords(body, places, WORDS.slice(0, 1));
  }

  /** The widest key of a line: open are the words that may be any, each by itself and all at once. */
  function widest(rule, body, template) {
    const key = keyOf(body);
    const isOpen = (places) =>
      withWords(body, places, WORDS).every(
        (each) => templateFor(rule, each) === template,
      );
    const open = wordsIn(body).filter(
      (word) =>
        withWords(body, [word], WORDS).some((each) => keyOf(each) === key) &&
        isOpen([word]),
    );
    if (open.length === 0 || !isOpen(open)) return key;
    const [first, ...others] = withWords(body, open, WORDS).map((each) =>
      widerKeys(keyOf(each)),
    );
    const shared = first.filter((each) =>
      others.every((keys) => keys.includes(each)),
    );
    // the last opens no word but these
    return shared.at(-1) ?? key;
  }

  const lines = ENTRIES.flatMap(({ rule, facts }) => [
    rule,
    ...facts.map((fact) => fact.rule),
  ]).flatMap((rule) => (examples[rule] ?? []).map((body) => ({ rule, body })));
  for (const record of records)
    for (const block of readLines(record).blocks)
      block.lines.forEach(({ word, body }, at) => {
        const rule = lineSpec(block.kind, word, at === 0)?.rule;
        if (rule !== undefined) lines.push({ rule, body });
      });

  const shapes = new Map();
  for (const { rule, body: written } of lines)
    for (const body of [...withPlainNames(rule, written), written]) {
      const keys = [keyOf(body), ...widerKeys(keyOf(body))];
      if (keys.some((key) => shapes.has(`${rule} ${key}`))) continue;
      const template = templateFor(rule, body);
      if (template !== undefined)
        shapes.set(`${rule} ${widest(rule, body, template)}`, template);
    }
  return Object.fromEntries(
    [...shapes].sort(([one], [other]) => (one < other ? -1 : 1)),
  );
}
