// A name that no entry has is told, but for one that may lie in a file that is missing or under a word that could not be read: that is told
// there, and what hangs on it waits.
import { describe, expect, test } from "vitest";
import { foundIn } from "../rules/found.ts";

const told = (
  text: string,
  others: Readonly<Record<string, string>> = {},
): readonly string[] =>
  foundIn(`job winch\n  units inch\n${text}`, "name-unknown", others).map(
    ({ place, message }) =>
      `${String(place.line + 1)} ${/^[^:]*/u.exec(message)?.[0] ?? ""}`,
  );
const FIT = "fit front of journal front in bore front\n";

describe("a name is not told", () => {
  test.each([
    ["under a word that opens nothing", "jurnal front on shaft\n"],
    ["in an opening line that is damaged", "journal front onto shaft\n"],
    [
      "in one that is damaged over a fact that lost its indent",
      "journal front onto shaft\nlimits 0.8740 to 0.8745\n",
    ],
    [
      "of a kind of which one has no name that can be read",
      "journal 1st on shaft\n",
    ],
  ])("%s", (_, opener) => {
    const text = `part shaft\nbore front in shaft\n${opener}${FIT}`;
    expect(told(text)).toEqual([]);
    // the same without the line: told
    expect(told(text.replace(opener, ""))).toEqual([
      "5 There is no journal `front` here or in the files that are used",
    ]);
  });

  test("while a file that is used is missing", () => {
    expect(told(`  use "crib.thou"\npart case\n${FIT}`)).toEqual([]);
    expect(
      told(`  use "crib.thou"\npart case\n${FIT}`, {
        "crib.thou": "shop crib\n  units inch\n",
      }),
    ).toHaveLength(2);
  });

  test("while the line that uses a file can't be read", () => {
    expect(told(`  use “crib.thou”\npart case\n${FIT}`)).toEqual([]);
    expect(
      told(`  use "crib.thou"\npart case\n${FIT}`, {
        "crib.thou": "shop crib\n  units inch\n  use wall thou\n",
      }),
    ).toEqual([]);
  });
});

describe("a name is told", () => {
  test("where what can't be read is of a kind that the place does not take", () => {
    expect(
      told("part shaft\nbush 1st in hole rear\njournal front on shaft\n" + FIT),
    ).toEqual([
      "6 There is no bore `front` here or in the files that are used",
    ]);
  });

  test("where the line that can't be read has another name", () => {
    expect(
      told("part shaft\njurnal rear on shaft\nbore front in shaft\n" + FIT),
    ).toEqual([
      "6 There is no journal `front` here or in the files that are used",
    ]);
  });

  test("where of its kind one is damaged whose name can be read, and is another", () => {
    expect(
      told("part shaft\nbore front in shaft\njournal rear onto shaft\n" + FIT),
    ).toEqual([
      "6 There is no journal `front` here or in the files that are used",
    ]);
  });

  test("where a fact stands at the margin, which is no entry", () => {
    expect(told("part shaft\nbore front in shaft\nread 0.874\n" + FIT)).toEqual(
      ["6 There is no journal `front` here or in the files that are used"],
    );
  });

  test("where it is no material that is shipped and no entry", () => {
    expect(
      told(
        "part shaft\n  material steel-4140\npart case\n  material steel-4141\n",
      ),
    ).toEqual([
      "6 There is no material `steel-4141` here or in the files that are used",
    ]);
  });
});
