// The reamers that are offered for a line: those that serve, the best first, and only where the line names none.
import { expect, test } from "vitest";
import { refactoringsAt } from "../../server/ide/refactor.ts";
import { JOB_PATH, opened } from "./opened.ts";
import { rewritten } from "./rewritten.ts";

const CRIB = `shop harbour
  units inch
reamer r-0-8755
  size 0.8755
reamer r-0-8750
  size 0.8750
reamer r-0-8757
  size 0.8757
`;
/** By hand: the journal reads 0.8743 to 0.8745 and wants 0.0008 to 0.0016, so the bore is to be 0.8753 to 0.8759. */
const TEXT = `job j
  units inch
  use "crib.thou"
part p
part q
journal a on p
  read 0.8743 0.8745
bore a in q
fit a of journal a in bore a
  want 0.0008 to 0.0016
line p
  bore a from 0 to 1
`;

const offered = (text: string) =>
  refactoringsAt(
    opened(text, { "crib.thou": CRIB }),
    { line: text.split("\n").indexOf("line p"), character: 2 },
    "2026-11-25",
  ).filter(({ title }) => title.startsWith("Ream with"));

test("the crib's reamers that serve, the best first: the one that cuts too small is none of them", () => {
  const [best, other, ...more] = offered(TEXT);
  expect(more).toEqual([]);
  expect(best?.title).toMatch(
    /^Ream with reamer r-0-875[57], the best of those that serve$/,
  );
  expect(other?.title).toMatch(/^Ream with reamer r-0-875[57], which serves$/);
  expect(rewritten(TEXT, best ?? { edits: [] }, JOB_PATH)).toMatch(
    /\nline p\n {2}bore a from 0 to 1\n {2}ream with r-0-875[57]\n$/,
  );
});

test.each([
  ["names a reamer", "  ream with r-0-8750\n"],
  ["is bored", "  cut to 0.8755 to 0.8757\n"],
])("none where the line %s", (_, fact) => {
  expect(offered(TEXT + fact)).toEqual([]);
});

test("none before the journal is known", () => {
  expect(offered(TEXT.replace("  read 0.8743 0.8745\n", ""))).toEqual([]);
});
