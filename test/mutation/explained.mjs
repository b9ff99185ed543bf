// Mutants that live and may: what they change makes no difference that anyone could meet. Each rule says in which rooms' files, of which
// mutants, and why. `was` is the text that is changed ("" where it spans lines), `text` its line, `before` the line above that.
export const EXPLAINED = [
  {
    file: "server/",
    why: "a query's name only keeps its answers apart from those of others, and no other is called nothing",
    is: ({ was, text, before, by }) =>
      by === '""' &&
      (text.includes(`(${was}, (`) || text === `${was},`) &&
      /\bquery(?:OfShop)?(?:<|\()/u.test(`${before} ${text}`),
  },
  {
    file: "server/model/shop.ts",
    why: "what a query of the whole shop is asked of is only the key that its answer is kept under",
    is: ({ was, text }) =>
      was === '""' && text === 'return (shop) => found(shop, "");',
  },
  {
    file: "server/",
    why: "a bound that the rounding of doubles has widened is one that no number that is written lies on",
    is: ({ was, text, by }) =>
      /\b1e-\d/u.test(text) &&
      by.replace("<=", "<") === was.replace("<=", "<") &&
      /<=?/u.test(was),
  },
  {
    file: "server/model/graph.ts",
    why: "whether links stand by themselves, in a list without room to spare or in a set changes the memory and the time of a look, and no answer",
    is: ({ text }) =>
      /\bFEW\b/u.test(text) ||
      text.startsWith("return only !== undefined && another === undefined ?"),
  },
  {
    file: "server/model/graph.ts",
    why: "an input that is set to nothing reads as one that was never set: it only takes the memory of a cell",
    is: ({ text, by }) =>
      text.startsWith("if (value !== undefined) addCell(") && by === "true",
  },
  {
    file: "",
    why: "as the line above says, it spares a look: what it would be found to be is what is given without",
    is: ({ before, by }) =>
      before.startsWith("// spares a look:") && /^(?:true|false)$/u.test(by),
  },
];
