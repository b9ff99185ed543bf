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
    why: "from how many on links are held as a set changes how long a look takes, and no answer",
    is: ({ text }) => /\bFEW\b/u.test(text),
  },
  {
    file: "server/model/",
    why: "as the line above says, it spares a look: what it would be found to be is what is given without",
    is: ({ before, by }) =>
      before.startsWith("// spares a look:") && by === "false",
  },
];
