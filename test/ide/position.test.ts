// What stands at a caret.
import { expect, test } from "vitest";
import {
  factAt,
  nodesAt,
  rangeOfEntry,
  refAt,
  ruleOf,
  spotAt,
} from "../../server/ide/position.ts";
import { atCaret, opened, slice } from "./caret.ts";

function spot(marked: string) {
  const { open, position } = atCaret(marked);
  const found = spotAt(open, position);
  if (found === undefined) throw new Error("a file has a line");
  return found;
}

test("a reference is touched from its first character to just after its last", () => {
  const at = (marked: string) => refAt(spot(marked))?.name;
  expect(at("fit a of |journal front in bore rear\n")).toBe("front");
  expect(at("fit a of journal front| in bore rear\n")).toBe("front");
  expect(at("fit a of journal front in |bore rear\n")).toBe("rear");
  expect(at("fit a o|f journal front in bore rear\n")).toBeUndefined();
});

test("the fact of a line, its rule and its nodes", () => {
  const found = spot("part a\n  bolts 18 lb|f-ft\n");
  expect(factAt(found)?.rule).toBe("BoltsFact");
  expect(ruleOf(found)).toBe("BoltsFact");
  expect(nodesAt(found).map((node) => node.type)).toEqual([
    "BoltsFact",
    "Range_one",
    "torque",
    "unit",
  ]);
});

test("comments, indents and what is past the end of a line are told apart", () => {
  expect(spot("part a\n | vented # no\n").where).toBe("indent");
  expect(spot("part a\n  vented  | # no\n").where).toBe("after");
  expect(spot("part a\n  vented # n|o\n").where).toBe("comment");
  expect(spot("part a\n  vented #|\n").where).toBe("comment");
  expect(spot("part a\n  vented |# no\n").where).toBe("after");
});

test("positions outside the file are brought into it", () => {
  const open = opened({ "job.thou": "part a\n  dowels 2" }, "job.thou");
  expect(spotAt(open, { line: 99, character: 99 })?.position).toEqual({
    line: 1,
    character: 10,
  });
  expect(spotAt(open, { line: -1, character: -1 })?.position).toEqual({
    line: 0,
    character: 0,
  });
  const empty = opened({ "job.thou": "" }, "job.thou");
  expect(spotAt(empty, { line: 0, character: 0 })?.where).toBe("body");
});

test("a byte order mark takes a character and is no word", () => {
  const open = opened({ "job.thou": "\u{FEFF}part a\n" }, "job.thou");
  expect(spotAt(open, { line: 0, character: 1 })?.offset).toBe(0);
});

test("an entry ends with its last fact or a remark on it, not with the remark on the next", () => {
  const text = "part a\n  dowels 2\n  # why two\n\n# the next\npart b\n";
  const open = opened({ "job.thou": text }, "job.thou");
  expect(slice(text, rangeOfEntry(open.file, 0))).toBe(
    "part a\n  dowels 2\n  # why two",
  );
});
