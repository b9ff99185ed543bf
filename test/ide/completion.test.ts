// What is offered where, in which order, and with what beside it: cursor fixtures.
import { describe, expect, test } from "vitest";
import { completionAt, type Completion } from "../../server/ide/completion.ts";
import { figuresOf } from "../../server/rules/figures.ts";
import { atCaret, CRIB, edited, JOB, slice } from "./caret.ts";

const TODAY = "2026-11-25";

function offers(marked: string, today?: string): readonly Completion[] {
  const { open, position } = atCaret(marked, { "crib.thou": CRIB });
  return completionAt(open, position, today);
}

const labels = (marked: string, today?: string): readonly string[] =>
  offers(marked, today).map((each) => each.label);

/** The job with a line added to an entry, by the entry's opening line. */
function inEntry(head: string, line: string): string {
  if (!JOB.includes(`${head}\n`)) throw new Error(`no entry ${head}`);
  return JOB.replace(`${head}\n`, `${head}\n${line}\n`);
}

const detail = (marked: string, label: string): string | undefined =>
  offers(marked).find((each) => each.label === label)?.detail;

describe("where nothing is offered", () => {
  test.each([
    ["a comment", "part a\n  # mat|\n"],
    ["a comment after a fact", "part a\n  dowels 2 # with |\n"],
    ["a text", 'job j\n  title "w|\n'],
    ["a closed text", 'job j\n  title "winch| 3"\n'],
    ["just after a text", 'job j\n  title "winch 3"|\n'],
    ["a used file's name", 'job j\n  use "cr|ib.thou"\n'],
    ["a number", "part a\n  dowels 2|\n"],
    ["a number after a word", "journal a on b\n  limits |\n"],
    ["below a word that opens nothing", "jurnal a\n  |\n"],
    ["in the indent before a fact", "part a\n |  dowels 2\n"],
    ["after what can't be read", "fit a of 5 7 |\n"],
    ["after a whole line", "part a\n  vented |\n"],
  ])("%s", (_, marked) => {
    expect(labels(marked)).toEqual([]);
  });
});

describe("at the margin", () => {
  test("entries, with those that the record lacks first", () => {
    const found = offers(`${JOB}\n|`);
    expect(
      found.slice(0, 3).map(({ label, detail }) => [label, detail]),
    ).toEqual([
      ["fit rear of journal rear in bore rear", "journal rear has no fit yet"],
      ["step that presses press rear", "in no step yet"],
      ["part", "part NAME"],
    ]);
    expect(found.map((each) => each.label)).not.toContain("job");
  });

  test("a journal without a fit gets one, with its bore, whole", () => {
    const record = JOB.replace(
      /bore rear in bush rear\n/,
      "bore back in bush rear\n",
    );
    const [first] = offers(`${record}\n|`).filter((each) =>
      each.label.startsWith("fit "),
    );
    expect(first?.label).toBe("fit rear of journal rear in bore back");
    expect(first?.detail).toBe("journal rear has no fit yet");
    expect(first?.insertText).toMatch(
      /^fit rear of journal rear in bore back\n {2}want \$\{1:LOW\} to \$\{2:HIGH\}\n {2}runs \$\{3:SPEED\} \$\{4:rpm\}\n/,
    );
  });

  test("a hole without a bush, a bush without a bore or a press, bores that no line cuts", () => {
    const record =
      "job j\n  units mm\npart c\nhole a in c\nhole b in c\nbush b in hole b\nbore c in part c\n";
    expect(labels(`${record}|`).slice(0, 4)).toEqual([
      "bush a in hole a",
      "bore b in bush b",
      "press b of bush b in hole b",
      "line of bore c",
    ]);
  });

  test("names that exist are choices of an opening line, those that are free first", () => {
    const fit = offers(`${JOB}\nfi|`).find((each) => each.label === "fit");
    expect(fit?.insertText).toBe(
      "fit ${1:rear} of ${2|journal rear,journal front|} in ${3|bore rear,bore front|}",
    );
  });

  test("in a crib the crib's things come first", () => {
    const { open, position } = atCaret(`${CRIB}\n|`, {}, "crib.thou");
    const kinds = completionAt(open, position)
      .filter((each) => each.kind === "entry")
      .map((each) => each.label);
    expect(new Set(kinds.slice(0, 6))).toEqual(
      new Set(["reamer", "pilot", "gauge", "material", "oil", "route"]),
    );
  });

  test("the word under the caret is taken whole, whichever part of it is typed", () => {
    const marked = "pa|rt a\n";
    const { text } = atCaret(marked);
    const [part] = offers(marked).filter((each) => each.label === "part");
    expect(part && slice(text, part.replaceRange)).toBe("part");
  });

  test("after a byte order mark", () => {
    expect(labels("\u{FEFF}|")[0]).toBe("job");
  });
});

describe("facts", () => {
  test("those of this entry that it has not; what would settle something first, what may stand again last", () => {
    const found = labels(
      inEntry("fit front of journal front in bore front", "  |"),
    );
    // the film needs its oil, and how it is fed
    expect(found.slice(0, 2)).toEqual(["oil", "feed"]);
    expect(found.slice(2)).toEqual([
      "want-hot",
      "oscillates",
      "cooled",
      "hot",
      "cold",
      "note",
    ]);
  });

  test("a fact on its own line may be written over by another", () => {
    expect(labels(JOB.replace("  runs 240", "  ru|ns 240"))).toContain("runs");
  });

  test("what would settle something stands first and says so", () => {
    const found = offers("job j\n  units mm\npart s\njournal a on s\n  |\n");
    expect(found[0]?.label).toBe("read");
    expect(found[0]?.detail).toBe("needed: a reading of journal a");
  });

  test("what the next step waits for", () => {
    const record = JOB.replace(/ {2}done .*\n/, "").replace(
      "hole front in case\n",
      "hole front in case\n  |\n",
    );
    // the press waits for its hole to be read
    expect(offers(record)[0]?.detail).toMatch(
      /^needed: hole front is not measured/,
    );
  });

  test("an indented word that would open an entry is still a fact of the one above", () => {
    const found = labels(inEntry("line layshaft", "  bore|"));
    expect(found).toContain("bore");
    expect(found).not.toContain("limits");
    expect(labels("fit a of b in c\n  oil|\n")).toContain("oil");
  });
});

describe("references", () => {
  test("of the place's kind, each with its size, how it is known and its verdict", () => {
    const marked = `${JOB}\nfit rear of |`;
    expect(labels(marked)).toEqual(["journal rear", "journal front"]);
    expect(detail(marked, "journal rear")).toBe(
      "0.8740 to 0.8745 in, predicted",
    );
    expect(detail(marked, "journal front")).toMatch(
      /^0\.8742\d to 0\.87435 in, measured, in tolerance$/,
    );
  });

  test("after the kind only its names, and the next word as well", () => {
    expect(labels(`${JOB}\nfit rear of journal |`)).toEqual([
      "rear",
      "front",
      "in",
    ]);
    expect(
      labels(inEntry("step dry-fit", "  checks fit front, press |")),
    ).toEqual(["front", "rear"]);
  });

  test("the other half follows the first: the bore of the journal's name, the hole of the bush", () => {
    expect(labels(`${JOB}\nfit x of journal front in |`)[0]).toBe("bore rear");
    const fresh = JOB.replace(/fit front[^]*?(?=\nline)/, "");
    expect(labels(`${fresh}\nfit x of journal front in |`)[0]).toBe(
      "bore front",
    );
    expect(labels(`${fresh}\nfit x of rear in |`)[0]).toBe("bore rear");
    expect(labels(`${JOB}\npress x of bush rear in |`)[0]).toBe("hole rear");
  });

  test("a bore's bush before its part, and of bushes those without a bore first", () => {
    expect(
      labels(`${JOB.replace("bore rear in bush rear\n", "")}\nbore x in |`),
    ).toEqual(["bush rear", "part layshaft", "part case", "bush front"]);
  });

  test("gauges with what they are", () => {
    const marked = inEntry("journal rear on layshaft", "  read 0.8743 with |");
    expect(labels(marked)).toEqual(["mic-1", "bore-1"]);
    expect(detail(marked, "mic-1")).toBe(
      "micrometer, resolution 0.00001 in, U 0.00004 in, due 2027-05-14",
    );
  });

  test("materials: the crib's own, then the shipped; of a bush what bushes are made of first", () => {
    const bush = labels(
      'job j\n  use "crib.thou"\nbush a in b\n  material |\n',
    );
    expect(bush[0]).toBe("bronze-local");
    expect(bush.indexOf("bronze-c932")).toBeLessThan(
      bush.indexOf("steel-4140"),
    );
    const part = labels("part a\n  material |\n");
    expect(part.indexOf("steel-4140")).toBeLessThan(
      part.indexOf("bronze-c932"),
    );
    expect(detail("part a\n  material st|\n", "steel-4140")).toMatch(
      /molybdenum steel.*; shipped$/,
    );
  });

  test("materials and oils are found by what the trade calls them", () => {
    const found = (marked: string, label: string) =>
      offers(marked).find((each) => each.label === label)?.filterText;
    expect(found("part a\n  material |\n", "bronze-c932")).toBe(
      "bronze-c932 C93200 SAE 660",
    );
    expect(found("part a\n  material |\n", "iron-grey")).toBe(
      "iron-grey G3000 EN-GJL-200",
    );
    expect(found("part a\n  material |\n", "steel-4140")).toBe("steel-4140");
    expect(found("fit a of b in c\n  oil |\n", "iso-vg-68")).toBe(
      "iso-vg-68 VG 68",
    );
  });

  test("oils with their grade", () => {
    expect(detail("fit a of b in c\n  oil |\n", "sae-30")).toMatch(
      /^SAE 30.*shipped$/,
    );
  });

  test("reamers as they serve this line, best first", () => {
    const whole = inEntry("line layshaft", "  ream with |").replace(
      "\nline layshaft",
      "\nfit rear of journal rear in bore rear\n  want 0.0008 to 0.0016\nline layshaft",
    );
    const found = offers(whole);
    expect(found.map((each) => each.label)).toEqual(["r-8755", "r-875"]);
    expect(found[0]?.detail).toMatch(
      /^cuts 0\.8753\d to 0\.8756\d in; fit rear 0\.\d+ to 0\.\d+ in; fit front 0\.\d+ to 0\.\d+ in; margin 0\.\d+ in \([\d.]+ standard deviations\); chance \d+ %$/,
    );
    expect(found[1]?.detail).toMatch(/^does not serve; cuts /);
    expect(
      [...found].sort((a, b) => (a.sortText < b.sortText ? -1 : 1)),
    ).toEqual(found);
  });

  test("reamers of a line that can't be worked out yet, with what they measure", () => {
    expect(detail(inEntry("line layshaft", "  ream with |"), "r-8755")).toBe(
      "0.87539 in measured, mean of 2 readings",
    );
  });

  test("pilots, steps but for the one itself, lines that no step cuts", () => {
    expect(labels(inEntry("line layshaft", "  pilot |"))).toEqual(["p-870"]);
    expect(detail(inEntry("line layshaft", "  pilot |"), "p-870")).toBe(
      "od 0.8697 to 0.8699 in, length 4.5000 in",
    );
    expect(labels(inEntry("step press-in", "  after |"))).toEqual([
      "ream",
      "dry-fit",
      "mark",
    ]);
    expect(
      labels(inEntry("step press-in", "  presses press front, |")),
    ).toEqual(["press rear"]);
  });

  test("what a step checks comes with its kind, fits first", () => {
    expect(labels(inEntry("step ream", "  checks |")).slice(0, 3)).toEqual([
      "fit front",
      "press front",
      "press rear",
    ]);
  });

  test("a name in the middle is taken whole", () => {
    const marked = JOB.replace("ream with r-8755", "ream with r-8|755");
    const { text } = atCaret(marked);
    const [first] = offers(marked);
    expect(
      first && edited(text, [{ range: first.replaceRange, text: "X" }]),
    ).toContain("  ream with X\n");
  });
});

describe("words and units", () => {
  test("clauses of a reading that it has not, then units of the file's system first", () => {
    expect(
      labels(
        inEntry(
          "journal rear on layshaft",
          "  read 0.8743 0.8744 with mic-1 |",
        ),
      ),
    ).toEqual(["at", "as", "by", "on", "station"]);
    const all = labels(inEntry("journal rear on layshaft", "  read 0.8743 |"));
    expect(all.slice(0, 8)).toEqual([
      "with",
      "at",
      "as",
      "by",
      "on",
      "station",
      "in",
      "thou",
    ]);
  });

  test.each([
    ["press a of b in c\n  friction 0.05 |\n", ["to"]],
    ["part a\n  split |\n", ["along", "across"]],
    [
      "hole a in b\n  depth 5 |\n",
      [
        "blind",
        "through",
        "mm",
        "um",
        "cm",
        "m",
        "in",
        "thou",
        "tenths",
        "uin",
      ],
    ],
    ["part a\n  bolts 18 |\n", ["to", "N-m", "lbf-ft", "lbf-in"]],
    [
      "fit a of b in c\n  load 180lb|\n",
      ["steady", "reversing", "shock", "N", "kN", "lbf"],
    ],
    ["fit a of b in c\n  oscillates 30 deg, 20 per m|\n", ["per min"]],
    ["line a\n  speed 15 |\n", ["m/min", "m/s", "ft/min", "rpm"]],
    [
      "journal a on b\n  read 1.0 as |\n",
      ["bought", "pressed", "roughed", "finished", "run"],
    ],
    ["gauge a\n  set |\n", ["with", "on"]],
    [
      "gauge a\n  kind |\n",
      ["micrometer", "bore-gauge", "plug", "indicator", "air"],
    ],
    ["journal a on b\n  finish 0.4 um |\n", ["Ra", "Rz"]],
    ["fit a of b in c\n  hot shaft 50 C, |\n", ["shaft", "bush", "case"]],
  ])("%s", (marked, expected) => {
    const found = labels(`job j\n  units mm\n${marked}`);
    expect(new Set(found)).toEqual(new Set(expected));
    const units = expected.filter((each) =>
      /^(?:N|m|lbf|um|cm|in|thou|tenths|uin|kN|rpm|ft)/.test(each),
    );
    expect(found.filter((each) => units.includes(each))).toEqual(units);
  });

  test("a unit that touches its number", () => {
    const marked = "job j\n  units inch\npart a\n  bolts 18lb|\n";
    const { text } = atCaret(marked);
    const unit = offers(marked).find((each) => each.label === "lbf-ft");
    expect(unit && slice(text, unit.replaceRange)).toBe("lb");
  });
});

describe("classes of size, with their limits at the size written", () => {
  // 25 H7: +21/0 µm, 25 f7: −20/−41 µm, 25 H7/f7: 0.020 to 0.062 mm: Machine Drawing (Narayana, Kannaiah, Reddy), tables 15.1 to 15.4, as
  // printed in test/core/fits/printed-iso.ts
  test("of a hole and of a journal in millimetres", () => {
    expect(
      detail("job j\n  units mm\nhole a in b\n  limits 25 |\n", "H7"),
    ).toBe("25.000 to 25.021 mm");
    expect(
      detail("job j\n  units mm\njournal a on b\n  limits 25 |\n", "f7"),
    ).toBe("24.959 to 24.980 mm");
    expect(
      detail("job j\n  units mm\nfit a of b in c\n  want 25 |\n", "H7/f7"),
    ).toBe("clearance 0.020 to 0.062 mm");
  });

  test("only classes of this side", () => {
    expect(
      labels("job j\n  units mm\njournal a on b\n  limits 25 |\n"),
    ).not.toContain("H7");
  });

  test("a bare size takes the classes of the file's own system, one with its unit takes all", () => {
    const bare = labels("job j\n  units inch\nhole a in b\n  limits 0.875 |\n");
    expect(bare).toContain("RC4");
    expect(bare).not.toContain("H7");
    const written = labels(
      "job j\n  units inch\nhole a in b\n  limits 25 mm |\n",
    );
    expect(written).toContain("H7");
    expect(written.indexOf("H7")).toBeLessThan(written.indexOf("RC4"));
  });

  test("none where no class can stand", () => {
    expect(
      offers("job j\n  units mm\nstack a\n  want 0.1 |\n").filter(
        (each) => each.kind === "class",
      ),
    ).toEqual([]);
  });
});

describe("values that the record or the trade has", () => {
  test("today, where a day may stand, as it is told", () => {
    expect(labels(inEntry("step ream", "  done |"), TODAY)[0]).toBe(TODAY);
    expect(labels(inEntry("step ream", "  done by AK on |"), TODAY)).toEqual([
      TODAY,
    ]);
    expect(labels(inEntry("step ream", "  done |"))).not.toContain(TODAY);
    const marked = inEntry("step ream", "  done 2026-|");
    const { text } = atCaret(marked);
    const [first] = offers(marked, TODAY);
    expect(first?.label).toBe(TODAY);
    expect(first && slice(text, first.replaceRange)).toBe("2026-");
  });

  test("who has signed, with quotes where the name needs them", () => {
    expect(labels(inEntry("step ream", "  done 2026-11-25 by |"))).toEqual([
      "AK",
      '"Bench 2"',
    ]);
  });

  test("places that are read already", () => {
    expect(labels(inEntry("journal rear on layshaft", "  read |"))).toEqual([
      "near",
      "far",
    ]);
  });

  test("members of the stack, those not read yet first", () => {
    expect(
      labels(
        "job j\n  units mm\nstack a\n  plus one 1\n  minus two 2\n  read one 1.0\n  read |\n",
      ),
    ).toEqual(["two", "one"]);
  });

  test("cautions but for those given, with what they say", () => {
    const found = offers(inEntry("step ream", "  caution lifting, |"));
    expect(found).toHaveLength(15);
    expect(found.map((each) => each.label)).not.toContain("lifting");
    expect(
      found.find((each) => each.label === "press-work")?.documentation,
    ).toMatch(/ram/);
  });

  test("codes of findings that more than the text can have; those a concession never covers are left out", () => {
    const warn = labels("job j\n  warn out-of-round at 40 %\n  warn |\n");
    expect(warn).toContain("stock-thin");
    expect(warn).not.toContain("out-of-round");
    expect(warn).not.toContain("number-comma");
    expect(warn).not.toContain("fit-tight"); // it has a value, and no threshold
    expect(warn.every((code) => 0 < figuresOf(code).warn.length)).toBe(true);
    const allows = labels("concession c\n  allows |\n");
    expect(allows).toContain("fit-loose");
    expect(allows).not.toContain("cut-unchecked");
    expect(allows).not.toContain("gauge-unset"); // it has no value
    expect(allows).not.toContain("press-yields");
    expect(allows).not.toContain("heat-over");
  });

  test("a concession is offered the findings that stand, and then what they stand on", () => {
    const record = JOB.replace(
      "  want 0.0008 to 0.0016",
      "  want 0.0001 to 0.0002",
    );
    const [first] = offers(`${record}\nconcession c\n  allows fit-|`).filter(
      (each) => each.label.startsWith("fit-"),
    );
    expect(first?.label).toBe("fit-loose");
    expect(first?.detail).toBe("error, now on fit front");
    expect(labels(`${record}\nconcession c\n  allows fit-loose on |`)[0]).toBe(
      "fit front",
    );
  });

  test("names that a new entry is likely to have", () => {
    expect(labels(`${JOB}\nfit |`)).toEqual(["rear"]);
    expect(labels(`${JOB}\nstep |`)).toEqual(["mark"]);
  });

  test("letter sizes with their diameter", () => {
    // letter F is 0.2570 in: test/core/line/gauge-sizes.published.ts
    expect(
      detail("shop s\n  units inch\nreamer a\n  size letter |\n", "F"),
    ).toBe("0.2570 in");
    expect(detail("shop s\n  units inch\nreamer a\n  size no |\n", "7")).toBe(
      "0.2010 in",
    );
  });
});

test("a damaged line is completed by what stands before the caret", () => {
  expect(labels(JOB.replace("in bore front\n", "in | xx 5 ,,\n"))).toContain(
    "bore front",
  );
});
