// What is said of the bores of a line: pilots, stock, reamers. Lengths are worked out by hand, in inches, as the sentence shows them.
import { describe, expect, test } from "vitest";
import { foundIn, theOne } from "./found.ts";

const CRIB = `shop harbour
  units inch
reamer r-8755
  size 0.8755
  drive hand
pilot p-8700
  od 0.8700
  read 0.87000
pilot p-8708
  od 0.8708
  read 0.87080
pilot p-87085
  od 0.87085
  read 0.87085
pilot p-87095
  od 0.87095
  read 0.87095
pilot p-8709
  od 0.8709
  read 0.87090
pilot p-87088
  od 0.87088
  read 0.87088
pilot p-8711
  od 0.8711
  read 0.87110
`;
const files = { "crib.thou": CRIB };

describe("a pilot with slack", () => {
  const job = (front: string, rear: string): string => `job winch
  units inch
  use "crib.thou"
part layshaft
part case
  material iron-grey
journal rear on layshaft
  limits 0.8740 to 0.8742
bore front in case
  ${front}
bore rear in case
  ${rear}
fit rear of journal rear in bore rear
  want 0.0008 to 0.0018
line layshaft
  bore rear from 2.0 to 3.0
  bore front from 0 to 1.5
  ream with r-8755
  pilot p-8700 in bore front for bore rear
`;
  const rough = "read 0.8710 0.8710 as roughed";

  test("may lean by half the slack, and by as much again as the lean makes up to the end of the cut", () => {
    // a quarter of what fit rear wants is 0.00025 in; slack 0.0010: 0.0010 / 2 + 0.0010 / 1.5 · 1.5, the length from the end of its bore to the far end of the cut
    const { message, level } = theOne(job(rough, rough), "pilot-slack", files);
    expect(message).toContain(
      "pilot p-8700 has 0.00100 in of slack in bore front, still uncut, so bore rear may be cut up to 0.00150 in off its axis",
    );
    expect(level).toBe("warning");
  });

  test("is followed by the crib's three that let the cut wander least, the closest first", () => {
    expect(
      theOne(job(rough, rough), "pilot-slack", files).fixes.map(
        ({ title, edits, safe }) => [title, edits[0]?.text, safe],
      ),
    ).toEqual([
      ["Take pilot p-87095", "p-87095", false],
      ["Take pilot p-8709", "p-8709", false],
      ["Take pilot p-87088", "p-87088", false],
    ]);
  });

  test("guides nothing any more once its bore is cut and read", () => {
    expect(
      foundIn(job(rough, "read 0.8755 0.8755"), "pilot-slack", files),
    ).toEqual([]);
  });

  test("is not judged in a bore of which nothing is known", () => {
    expect(foundIn(job("length 1.5", rough), "pilot-slack", files)).toEqual([]);
  });
});

describe("stock that may not reach round", () => {
  const job = (
    lines: string,
    { tool = "r-8755", bores = "", reading = "0.8716 0.8717" } = {},
  ): string => `job winch
  units inch
  use "crib.thou"
part case
  material iron-grey
bore front in case
  limits 0.8750 to 0.8760
  read ${reading} as roughed
${bores}line layshaft
${lines}  ream with ${tool}
`;

  test("is held against the bore's own centre, not another's", () => {
    const rear =
      "bore rear in case\n  limits 0.8750 to 0.8760\n  read 0.8716 0.8717 as roughed\n";
    const found = foundIn(
      job(
        "  bore rear from 2 to 3 centre 0.0015, 0.0000\n  bore front from 0 to 1.25 centre 0.0001, 0.0000\n",
        { bores: rear },
      ),
      "wont-clean-up",
      files,
    );
    expect(found.map(({ message }) => message)).toEqual([
      // 2 · 0.0015 + 0.0020, of 0.8755 − 0.8717
      "bore rear won't clean up: it is out of round by 0.0001 in and off centre by 0.0015 in. With 0.0020 in as the least to cut it needs 0.0050 in of stock over its largest place, and has 0.0038 in. Bore it true first, or start from a bore that is smaller by 0.0012 in. A hand reamer without a pilot follows the old bore besides, whatever the stock.",
    ]);
  });

  test("is held against the further end where both were checked", () => {
    // 3, 4, 5: off by 0.0020 at the far end
    expect(
      theOne(
        job("  bore front from 0 to 1.25 centre 0, 0 to 0.0012, 0.0016\n"),
        "wont-clean-up",
        files,
      ).message,
    ).toContain("off centre by 0.0020 in");
  });

  test("is not called sure where the largest cut would reach round", () => {
    const adjustable = CRIB.replace(
      "size 0.8755",
      "size 0.8755\n  oversize +0.0000 to +0.0020",
    );
    const { message, level } = theOne(
      job("  bore front from 0 to 1.25 centre 0.0015, 0\n"),
      "wont-clean-up",
      { "crib.thou": adjustable },
    );
    expect(level).toBe("warning");
    expect(message).toMatch(
      /^bore front may not clean up: .* at the least\. /u,
    );
  });

  test("of a bore that is round and on its axis is nothing to say, however little there is", () => {
    expect(
      foundIn(
        job("  bore front from 0 to 1.25\n", { reading: "0.8750" }),
        "wont-clean-up",
        files,
      ),
    ).toEqual([]);
  });
});

describe("a line of three journals", () => {
  const job = (
    one: string,
    two: string,
    three: string,
    want = "0.0008 to 0.0016",
  ): string =>
    `job winch
  units inch
part layshaft
part case
${(
  [
    ["front", one],
    ["middle", two],
    ["rear", three],
  ] as const
)
  .map(
    ([name, read]) => `journal ${name} on layshaft
  ${read}
bore ${name} in case
fit ${name} of journal ${name} in bore ${name}
  want ${want}
`,
  )
  .join("")}line layshaft
  bore front from 0 to 1
  bore middle from 2 to 3
  bore rear from 4 to 5
`;

  test("is parted into those that one reamer serves, and the large ones are sized down", () => {
    const { message, related } = theOne(
      job("read 0.8735", "read 0.8736", "read 0.8750"),
      "line-needs-two-reamers",
    );
    // largest asks 0.8750 + 0.0008 = 0.8758, smallest allows 0.8735 + 0.0016 = 0.8751
    expect(message).toBe(
      "One size does not suit both journal rear and journal front: they conflict by 0.0007 in. Ways out: (1) take 2 reamers, one for journal front and journal middle that cuts 0.8744 to 0.8751 in, one for journal rear that cuts 0.8758 to 0.8766 in; (2) size journal rear down by 0.0007 in at least; (3) accept what 0.87545 in gives, 0.00045 in at journal rear and 0.00195 in at journal front.",
    );
    expect(related.map(({ message: each }) => each)).toEqual([
      "journal rear asks for a bore of 0.8758 to 0.8766 in",
      "journal front asks for a bore of 0.8743 to 0.8751 in",
    ]);
  });

  test("is not told to accept a size that leaves one of them no clearance", () => {
    const { message } = theOne(
      job("read 0.8735", "read 0.8735", "read 0.8765"),
      "line-needs-two-reamers",
    );
    // halfway between 0.8773 and 0.8751 is 0.8762, under 0.8765
    expect(message).toContain("they conflict by 0.0022 in");
    expect(message).not.toContain("accept");
  });

  test("names each that no bore suits, to be trued up", () => {
    const { message } = theOne(
      job(
        "read near 0.8745\n  read far 0.8735",
        "read 0.8740",
        "read near 0.8746\n  read far 0.8736",
      ),
      "line-needs-two-reamers",
    );
    expect(message).toContain("(1) true journal front and journal rear up");
    expect(message).not.toContain("reamers, one for");
  });
});
