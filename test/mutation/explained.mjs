// Mutants that live and may: what they change makes no difference that anyone could meet. Each rule says in which rooms' files, of which
// mutants, and why. `was` is the text that is changed ("" where it spans lines), `text` its line, `before` the line above that.
export const EXPLAINED = [
  {
    file: "server/",
    why: "a query's name only keeps its answers apart from those of others, and no other is called nothing",
    is: ({ was, text, before, by }) =>
      by === '""' &&
      (text.includes(`(${was}, (`) || text === `${was},`) &&
      /\bquery(?:<|\()/u.test(`${before} ${text}`),
  },
  {
    file: "server/",
    why: "a shop has one set of settings: what they are asked of is only the key that they are kept under",
    is: ({ was, text, by }) =>
      by === '""' && was === '"job"' && text.includes('settings(shop, "job")'),
  },
  {
    file: "server/",
    why: "a shop has one order of its steps, and one route: what they are asked of is only the key that they are kept under",
    is: ({ was, text, before, by }) =>
      was === '""' &&
      by === '"Stryker was here!"' &&
      /\b(?:orderOf|routeSteps)\(shop, ""\)/u.test(`${before} ${text}`),
  },
];
