// Classes that measured pairs and limits in plain numbers come nearest to, as hover says them. Figures of ISO 286-2 and ANSI B4.1 stand beside.
import { describe, expect, test } from "vitest";
import { hoverAt } from "../../server/ide/hover.ts";
import { atCaret } from "./caret.ts";

function said(marked: string): string {
  const { open, position } = atCaret(marked, {});
  return hoverAt(open, position)?.markdown ?? "";
}

const METRIC = `job winch-3
  units mm
part shaft
part case
`;

describe("a measured pair", () => {
  // 25 H7 is +21/0, f7 -20/-41: clearances of 20 to 62 micrometres hold one of 32
  const running = (bore: string) =>
    said(`${METRIC}journal front on shaft
  read 24.981
bore front in case
  ${bore}
fit fr|ont of journal front in bore front
`);

  test("names the running fits that hold it, with their clearance", () => {
    const markdown = running("read 25.013");
    expect(markdown).toContain(
      "As measured, this pair comes nearest to these running fits of ISO 286 at 25.000 mm:",
    );
    expect(markdown).toContain("| H7/f7 | 0.020 to 0.062 mm | holds it |");
    expect(markdown).not.toContain("H7/p6");
  });

  test("says how far it lies outside where none holds it", () => {
    // H11/c11 clears 110 to 370 micrometres: 600 is 230 beyond
    expect(running("read 25.581")).toContain(
      "| H11/c11 | 0.110 to 0.370 mm | it lies 0.230 mm outside |",
    );
  });

  test("shows the digits that the limits of a class take", () => {
    // B4.1 gives RC1 at 1 in 0.30 to 0.95 thou
    expect(
      said(`job winch-3
  units inch
part shaft
part case
journal front on shaft
  read 0.9996
bore front in case
  read 1.0001
fit fr|ont of journal front in bore front
`),
    ).toContain("| RC1 | 0.00030 to 0.00095 in | holds it |");
  });

  test("says nothing of sizes that are known by limits alone", () => {
    expect(running("limits 25.010 to 25.020")).not.toContain("comes nearest");
  });

  test("an interference has its own fits, in inches those of B4.1", () => {
    // FN1 at 1 in interferes 0.3 to 1.2 thousandths, FN2 0.6 to 1.9
    const markdown = said(`job winch-3
  units inch
part case
hole front in case
  read 1.0002
bush front in hole front
  od 1.0012
  read od 1.0012
press fr|ont of bush front in hole front
`);
    expect(markdown).toContain("these interference fits of ANSI B4.1");
    expect(markdown).toContain("| FN2 | 0.0006 to 0.0019 in | holds it |");
  });
});

describe("limits in plain numbers", () => {
  const limits = (fact: string) =>
    said(`${METRIC}journal front on shaft
  lim|its ${fact}
`);

  test("name the class that they are", () => {
    expect(limits("24.959 to 24.980")).toContain(
      "The common class that comes nearest at 25.000 mm is f7, 24.959 to 24.980 mm: the same limits (ISO 286).",
    );
  });

  test("or how far off the nearest one is", () => {
    expect(limits("24.961 to 24.980")).toContain(
      "f7, 24.959 to 24.980 mm: 0.002 mm off at most",
    );
  });

  test.each([
    ["a class is written", "25 mm f7"],
    ["no class is near", "24.700 to 24.701"],
  ])("say nothing where %s", (_, fact) => {
    expect(limits(fact)).not.toContain("comes nearest");
  });
});
