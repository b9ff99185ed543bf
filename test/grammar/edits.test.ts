// What an edit of a file leaves as it was, and where its places are taken to lie. That the edited file reads as one read afresh is tested by
// property in lines.test.ts.
import { describe, expect, test } from "vitest";
import {
  blockAt,
  editLines,
  isEmpty,
  isIndented,
  lineAt,
  lineCount,
  readLines,
  type FileLines,
} from "../../grammar/lines.ts";

function textOf(file: FileLines): string {
  return file.lines.map((line) => line.text + line.eol).join("");
}

type At = readonly [line: number, character: number];

function edited(
  file: FileLines,
  [line, character]: At,
  [endLine, endCharacter]: At,
  text: string,
): FileLines {
  const after = editLines(file, {
    start: { line, character },
    end: { line: endLine, character: endCharacter },
    text,
  });
  const afresh = readLines(textOf(after));
  expect([after.lines, after.blocks, after.starts]).toEqual([
    afresh.lines,
    afresh.blocks,
    afresh.starts,
  ]);
  return after;
}

const FILE = readLines(
  [
    ...["job j", "  units inch", "part a", "  material x", "  length 1"],
    ...["part b", "  material y", "part c", "  material z", ""],
  ].join("\n"),
);

describe("the places of an edit", () => {
  test.each([
    ["past a line's end is its end", [2, 99], [2, 99], "!", "part a!\n"],
    [
      "from past a line's end to the next line",
      [2, 99],
      [3, 2],
      " ",
      "part a material x\n",
    ],
    [
      "an end before the start is the start's line",
      [3, 2],
      [2, 0],
      "#",
      "part a\n  #  material x\n",
    ],
    ["a line before the first is the first", [-1, 0], [0, 0], "#", "#job j\n"],
    [
      "the end past the last line is the end",
      [8, 10],
      [99, 3],
      "",
      "  material",
    ],
    [
      "both past the last line",
      [99, 3],
      [99, 5],
      "  note",
      "  material z\n  note",
    ],
    [
      "the empty last line itself",
      [9, 0],
      [9, 0],
      "part d",
      "  material z\npart d",
    ],
  ] as const)("%s", (_, start, end, text, holds) => {
    expect(textOf(edited(FILE, start, end, text))).toContain(holds);
  });

  test("nothing else of the text changes", () => {
    const text = textOf(FILE);
    const at = text.indexOf("x\n");
    expect(textOf(edited(FILE, [3, 11], [3, 12], "steel"))).toBe(
      `${text.slice(0, at)}steel${text.slice(at + 1)}`,
    );
    expect(textOf(edited(FILE, [0, 0], [9, 0], ""))).toBe("");
    expect(textOf(edited(FILE, [8, 2], [99, 99], ""))).toBe(
      text.slice(0, text.lastIndexOf("material")),
    );
  });

  test("a start past the last line adds at its end, whatever its character", () => {
    const file = readLines("part a");
    expect(textOf(edited(file, [1, 0], [1, 0], " # x"))).toBe("part a # x");
    expect(textOf(edited(file, [0, 2], [1, 0], ""))).toBe("pa");
  });
});

describe("line ends that an edit makes or breaks", () => {
  test("a return before a newline becomes one end, from either side", () => {
    const file = readLines("part a\rpart b\rpart c\r");
    expect(edited(file, [2, 0], [2, 0], "\n").lines.length).toBe(4);
    expect(edited(file, [1, 0], [1, 6], "\n").lines.length).toBe(4);
    const other = readLines("part a\npart b\npart c\n");
    expect(edited(other, [1, 6], [1, 6], "\r").lines[1]?.eol).toBe("\r\n");
  });

  test("a text between a return and a newline makes two of them", () => {
    const file = readLines("part a\r\npart b\r\n");
    const [first] = edited(file, [0, 6], [1, 0], "\r#\n").lines;
    expect(first?.eol).toBe("\r");
  });
});

describe("what an edit does not touch stays the same object", () => {
  test("lines above and below it, in its own block too", () => {
    const after = edited(FILE, [3, 11], [3, 12], "q");
    const same = after.lines.map((line, at) => line === FILE.lines[at]);
    expect(same).toEqual([
      ...[true, true, true, false, true, true, true, true, true, true],
    ]);
    expect(after.blocks.map((block, at) => block === FILE.blocks[at])).toEqual([
      ...[true, false, true, true],
    ]);
  });

  test("an edit that writes what stood there leaves all as it was", () => {
    const after = edited(FILE, [3, 2], [3, 12], "material x");
    expect(after.blocks.every((block, at) => block === FILE.blocks[at])).toBe(
      true,
    );
    expect(after.blocks.length).toBe(FILE.blocks.length);
  });

  test("lines below a line that is put in, or taken out, move and stay", () => {
    const more = edited(FILE, [3, 12], [3, 12], "\n  length 2");
    expect(more.lines[3]).toBe(FILE.lines[3]);
    expect(more.lines[5]).toBe(FILE.lines[4]);
    expect(more.blocks[2]).toBe(FILE.blocks[2]);
    const less = edited(FILE, [3, 0], [4, 0], "");
    expect(less.lines[2]).toBe(FILE.lines[2]);
    expect(less.lines[3]).toBe(FILE.lines[4]);
    expect(less.blocks[2]).toBe(FILE.blocks[2]);
  });

  test("a line that is put in twice over is no line taken for two", () => {
    const file = readLines('part a\n  note "x"\n  note "x"\n');
    const less = edited(file, [1, 0], [2, 0], "");
    expect(less.lines.length).toBe(3);
    const none = edited(less, [1, 0], [2, 0], "");
    expect(textOf(none)).toBe("part a\n");
  });

  test("the list of starts, where no line is more or less", () => {
    expect(edited(FILE, [3, 11], [3, 12], "q").starts).toBe(FILE.starts);
    expect(edited(FILE, [3, 12], [3, 12], "\n  length 2").starts).not.toBe(
      FILE.starts,
    );
    // what is longer at the end moves nothing
    expect(edited(FILE, [8, 12], [8, 12], "\n  length 2").starts).toBe(
      FILE.starts,
    );
    expect(edited(FILE, [6, 12], [7, 0], "\n  length 2\n").starts).not.toBe(
      FILE.starts,
    );
    // a block more, and the lines of the last one are as they were
    expect(edited(FILE, [8, 0], [8, 12], "part d").starts).not.toBe(
      FILE.starts,
    );
  });

  test("a byte order mark that the first line loses makes it another", () => {
    const file = readLines("\u{FEFF}part a\n");
    expect(file.lines[0]?.indent).toBe(1);
    const after = edited(file, [0, 0], [0, 0], "\n");
    expect(after.lines[1]?.body).toBe("\u{FEFF}part a");
    expect(after.lines[1]).not.toBe(file.lines[0]);
  });
});

describe("how lines are gathered after an edit", () => {
  test("under a word that opens nothing any more, down to the next that opens", () => {
    const file = readLines(
      "line l\n  bore a from 1 to 2\nbore b from 2 to 3\nbore c from 3 to 4\nbore d in case\n",
    );
    expect(file.blocks.map(({ kind }) => kind)).toEqual(["line", "bore"]);
    // as a part it takes no bore, so that each line with one opens its own
    const after = edited(file, [0, 0], [0, 6], "part l");
    expect(after.blocks.map(({ kind }) => kind)).toEqual([
      ...["part", "bore", "bore", "bore", "bore"],
    ]);
    expect(
      edited(after, [0, 0], [0, 6], "line l").blocks.map(({ kind }) => kind),
    ).toEqual(["line", "bore"]);
  });

  test("the lines above the first entry open nothing", () => {
    const file = readLines("# a\n\npart a\n");
    expect(file.blocks.map(({ opens, kind }) => [opens, kind])).toEqual([
      [false, undefined],
      [true, "part"],
    ]);
    const after = edited(file, [2, 0], [2, 6], "  note");
    expect(after.blocks.map(({ opens }) => opens)).toEqual([false]);
    expect(readLines("").blocks.map(({ opens }) => opens)).toEqual([false]);
  });
});

describe("which lines open an entry", () => {
  const kinds = (...lines: readonly string[]): readonly unknown[] =>
    readLines(lines.join("\n")).blocks.map(({ kind }) => kind);
  test.each([
    // a fact that lost its indent is known by its form
    [["line l", "bore a from 1 to 2"], ["line"]],
    [
      ["line l", "bore a in case"],
      ["line", "bore"],
    ],
    [
      ["line l", "bore a from 1", "bore"],
      ["line", "bore"],
    ],
    [["line l", "pilot p in bore a for bore b"], ["line"]],
    [
      ["line l", "pilot p"],
      ["line", "pilot"],
    ],
    [
      ["line l", "pilot p from bore a"],
      ["line", "pilot"],
    ],
    [["fit f of a in b", "oil sae-30 at 120 F"], ["fit"]],
    [
      ["fit f of a in b", "oil winch-oil"],
      ["fit", "oil"],
    ],
    [
      ["fit f of a in b", "oil winch-oil in tub"],
      ["fit", "oil"],
    ],
    [
      ["press p of a in b", "bore a from 1 to 2"],
      ["press", "bore"],
    ],
    [
      ["press p of a in b", "oil sae-30 at 120 F"],
      ["press", "oil"],
    ],
    // set in, only what no fact is opens
    [
      ["part p", "  journal a on p"],
      ["part", "journal"],
    ],
    [["part p", "  material x"], ["part"]],
    [["stack s", "  material x"], ["stack"]],
    [["stack s", "  oil o"], ["stack"]],
    [["line l", "  bore a in case"], ["line"]],
    [
      ["step s", "  bore a in case"],
      ["step", "bore"],
    ],
    [["prat p", "  bore a in case"], [undefined]],
    [["  bore a in case"], [undefined]],
    // a word of some entry's fact opens nothing, one that nobody knows does
    [["part p", "limits 1 to 2"], ["part"]],
    [
      ["part p", "material x"],
      ["part", "material"],
    ],
    [
      ["part p", "prat q"],
      ["part", undefined],
    ],
    [["part p", "# note", "", "  note"], ["part"]],
  ] as const)("%j", (lines, found) => {
    expect(kinds(...lines)).toEqual(found);
  });
});

describe("a line's first word and its blanks", () => {
  test.each([
    ["part a", "part", "part a", 0],
    ["  service-limit 1", "service-limit", "service-limit 1", 2],
    ["\t\u{A0} note_2x 1 ", "note_2x", "note_2x 1", 3],
    ["not\u{E9} 1", "not\u{E9}", "not\u{E9} 1", 0],
    ["\u{E9}t\u{E9} 1", "\u{E9}t\u{E9}", "\u{E9}t\u{E9} 1", 0],
    ["\u{1F600}\u{1F600} x", "\u{1F600}", "\u{1F600}\u{1F600} x", 0],
    ["+1", "+", "+1", 0],
    ["   ", "", "", 3],
    ["  # x", "", "", 2],
    ["a\t# x", "a", "a", 0],
  ])("%j", (text, word, body, indent) => {
    const line = lineAt(readLines(text), 0);
    expect([line?.word, line?.body, line?.indent]).toEqual([
      word,
      body,
      indent,
    ]);
  });

  test.each([
    ["part", false],
    [" part", true],
    ["\u{FEFF}part", false],
    ["\u{FEFF} part", true],
  ])("%j is set in: %s", (text, setIn) => {
    const line = lineAt(readLines(text), 0);
    expect(line && isIndented(line)).toBe(setIn);
  });
});

test.each([
  ["", true],
  ["\n  \n# a\n  # b", true],
  ["\u{FEFF}\n", true],
  ["# a\n  note", false],
  ["part a", false],
  ["# a\npart a\npart b\n", false],
])("%j has nothing but comments: %s", (text, empty) => {
  expect(isEmpty(readLines(text))).toBe(empty);
});

test("the block of a line past the last is the last one", () => {
  expect(lineCount(FILE)).toBe(10);
  expect([0, 1, 2, 4, 5, 6, 7, 9].map((line) => blockAt(FILE, line))).toEqual([
    ...[0, 0, 1, 1, 2, 2, 3, 3],
  ]);
  expect(blockAt(FILE, 99)).toBe(3);
  expect(lineAt(FILE, 99)).toBeUndefined();
});
