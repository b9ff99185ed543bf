// What a step that cuts or presses still waits for, as its `ready` says it. Sizes are worked out beside each; that a concession opens the gate
// is tested with the concessions.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";
import { changed, CUT } from "./cut-job.ts";

const PRESSED = `
job winch-9
  units inch
part case
hole front in case
  limits 1.0000 to 1.0005
  read 1.0002 at 68 F
bush front in hole front
  od 1.0010 to 1.0014
press front of bush front in hole front
  want 0.0006 to 0.0014
step press
  presses press front
`;

const unread = (entry: string): string =>
  `waits for a line that can't be read in ${entry}`;

const said = (text: string, step: string): string | undefined =>
  resultOf(checkText(text), `step ${step}`, "ready")?.text;
const cut = (from = "", to = ""): string | undefined =>
  said(changed(CUT, from, to), "ream");
const pressed = (from = "", to = ""): string | undefined =>
  said(changed(PRESSED, from, to), "press");

describe("a cut", () => {
  const WANT = "want 0.0008 to 0.0020";

  test("is ready where the journal is read and the fit is foretold within what it wants, its bounds among it", () => {
    expect(cut()).toBe("next");
    expect(cut(WANT, "want 0.0010 to 0.0012")).toBe("next");
  });

  test("waits for a fit that is foretold out, or not surely in", () => {
    expect(cut(WANT, "want 0.0013 to 0.0020")).toBe(
      "waits: fit front is foretold out of what it wants",
    );
    expect(cut(WANT, "want 0.0011 to 0.0020")).toBe(
      "waits: fit front is foretold not surely within what it wants",
    );
  });

  test("waits for the bore's own limits as for those of the fit", () => {
    const limits = (range: string): string =>
      `bore front in case\n  limits ${range}\n`;
    const BORE = "bore front in case\n";
    expect(cut(BORE, limits("0.8751 to 0.8753"))).toBe("next");
    expect(cut(BORE, limits("0.8754 to 0.8760"))).toBe(
      "waits: bore front is foretold out of its limits",
    );
    expect(cut(BORE, limits("0.8752 to 0.8760"))).toBe(
      "waits: bore front is foretold not surely within its limits",
    );
  });

  test("of a bore that is read already is done there: its fit, however it came out, holds back no cut", () => {
    // 0.8770 over 0.8741 leaves 0.0029
    const read = checkText(
      changed(
        CUT,
        "bore front in case\n",
        "bore front in case\n  read 0.8770 at 68 F\n",
      ),
    );
    expect(read.findings.map(({ code }) => code)).toContain("fit-loose");
    expect(resultOf(read, "step ream", "ready")?.text).toBe("next");
  });

  test("waits for the tool where none is named, and where the one that is named cuts no size that can be told", () => {
    const toolless = checkText(changed(CUT, "  ream with r-875\n", ""));
    const ready = resultOf(toolless, "step ream", "ready");
    expect(ready?.text).toBe(
      "waits: bore front is not foretold: it needs the reamer of line bores",
    );
    expect(ready?.needs.map(({ ref, fact }) => [ref, fact])).toEqual([
      ["line bores", "ream"],
    ]);
    const tooFine = checkText(changed(CUT, "size 0.8750", "size 25 mm H1"));
    const waiting = resultOf(tooFine, "step ream", "ready");
    expect(waiting?.text).toBe("waits: bore front is not foretold");
    expect(waiting?.needs.map(({ ref, fact }) => [ref, fact])).toEqual([
      ["line bores", "ream"],
    ]);
  });

  test("waits for a journal that is not read, and one that is out of its limits", () => {
    expect(cut("  read 0.8741 at 68 F\n")).toBe(
      "waits: journal front is not measured",
    );
    expect(cut("read 0.8741", "read 0.8739")).toBe(
      "waits: journal front is outside its limits",
    );
    expect(cut("read 0.8741", "read 0.8740")).toBe("next");
  });

  test("is neither ready nor known to wait where a line that it hangs on can't be read", () => {
    for (const [entry, from, to] of [
      ["fit front", WANT, "want 0.0008 to 0.0020 lbf"],
      ["journal front", "limits 0.8740 to 0.8745", "limits 0.8740 to"],
      ["line bores", "ream with r-875", "ream by r-875"],
      ["line bores", "bore front from 0 to 1", "bore front from 0 to"],
    ] as const)
      expect([from, cut(from, to)]).toEqual([from, unread(entry)]);
  });

  test("says once what two bores of its line wait for alike", () => {
    const bores = changed(
      CUT,
      "  bore front from 0 to 1\n  ream with r-875\n",
      "  bore front from 0 to 1\n  bore rear from 2 to 3\n",
    );
    const two = `${changed(bores, "  read 0.8741 at 68 F\n", "")}bore rear in case
fit rear of journal front in bore rear
  want 0.0008 to 0.0020
`;
    expect(said(two, "ream")).toBe("waits: journal front is not measured");
  });
});

describe("a press", () => {
  // 1.0010 - 1.0002 = 0.0008 to 1.0014 - 1.0002 = 0.0012
  const WANT = "want 0.0006 to 0.0014";

  test("is ready where the interference may come out as wanted", () => {
    expect(pressed()).toBe("next");
    expect(pressed(WANT, "want 0.0008 to 0.0012")).toBe("next");
    // with the smallest bush it would not, and nobody signed for that
    expect(pressed(WANT, "want 0.0010 to 0.0014")).toBe("next");
    expect(pressed(WANT, "want 0.0006 to 0.0010")).toBe("next");
  });

  test("waits where no size of the bush can", () => {
    expect(pressed(WANT, "want 0.0013 to 0.0020")).toBe(
      "waits: press front is out of the interference that it wants",
    );
  });

  test("waits for the hole's reading and the bush's size, each by itself", () => {
    const hole = "hole front is not measured";
    const bush = "bush front has neither limits nor a reading of its od";
    expect(pressed("  read 1.0002 at 68 F\n")).toBe(`waits: ${hole}`);
    expect(pressed("  od 1.0010 to 1.0014\n")).toBe(`waits: ${bush}`);
    expect(
      pressed(
        "  read 1.0002 at 68 F\nbush front in hole front\n  od 1.0010 to 1.0014\n",
        "bush front in hole front\n",
      ),
    ).toBe(`waits: ${hole}; ${bush}`);
    expect(pressed("read 1.0002", "read 1.0006")).toBe(
      "waits: hole front is outside its limits",
    );
    expect(pressed("  od 1.0010 to 1.0014\n", "  read od 1.0012\n")).toBe(
      "next",
    );
  });

  test("is neither ready nor known to wait where the bush's size or the want can't be read", () => {
    for (const [entry, from, to] of [
      ["bush front", "od 1.0010 to 1.0014", "od 1.0010 to"],
      ["press front", WANT, "want 0.0006 to 0.0014 lbf"],
      ["hole front", "limits 1.0000 to 1.0005", "limits 1.0000 to"],
    ] as const)
      expect([from, pressed(from, to)]).toEqual([from, unread(entry)]);
  });
});
