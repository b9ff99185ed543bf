// What a keystroke takes follows what depends on it, not the length of the record. Counted is what is allocated until its findings and
// hints are there: it is the same on every machine, where a time is not, and whoever goes through a record once more allocates for it.
import { expect, test } from "vitest";
import { FULL } from "./editor.ts";
import { serveHere } from "./in-process.ts";

const URI = "file:///shop/long.thou";
const KEYS = 40;

const CRIB = `shop yard
  units inch
gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00004
reamer r-875
  size 0.8755
  oversize +0.0001 to +0.0002
`;

/** One running place after another, all as they should be: each finding is in every answer. */
function recordOf(lines: number): string {
  const places = [
    'job yard\n  units inch\n  use "crib.thou"\npart shaft\npart case\n',
  ];
  for (let name = 1; name * LINES_OF_PLACE < lines; name++)
    places.push(
      PLACE.replaceAll("NAME", `p${String(name)}`).replaceAll(
        "STEP",
        String(name % 9),
      ),
    );
  return places.join("");
}

const PLACE = `
journal NAME on shaft
  length 1.250
  limits 0.8740 to 0.8745
  read near 0.8742STEP 0.87424 with mic-1 at 68 F
  read far 0.87426 0.87425 with mic-1 at 68 F
bore NAME in case
  limits 0.8755 to 0.8760
fit NAME of journal NAME in bore NAME
  want 0.0008 to 0.0020
  runs 240 rpm
  load 180 lbf steady
line NAME
  bore NAME from 0 to 1.25
  ream with r-875
`;
const LINES_OF_PLACE = PLACE.split("\n").length - 1;

/** The KB that a digit typed, or taken out again, allocates half of the times. */
async function allocatedByKey(text: string): Promise<number> {
  const { editor } = serveHere(new Map([["file:///shop/crib.thou", CRIB]]));
  await editor.start(["file:///shop"], FULL);
  await editor.open(URI, text);
  // a long record shows what its lines say first, and all when it is asked again
  for (const codes of [await editor.codes(URI), await editor.codes(URI)])
    expect(codes).toEqual([]);
  const lines = text.split("\n");
  const line = lines.findIndex(
    (each, at) => lines.length / 2 < at && each.startsWith("  read near "),
  );
  const character = "  read near 0.87425".length;
  const allocated: number[] = [];
  for (let key = 0; key < KEYS; key++) {
    const isTyped = key % 2 === 0;
    const before = process.memoryUsage().heapUsed;
    await editor.change(URI, {
      range: {
        start: { line, character },
        end: { line, character: isTyped ? character : character + 1 },
      },
      text: isTyped ? "9" : "",
    });
    const codes = await editor.codes(URI);
    const hints = await editor.request<readonly unknown[]>(
      "textDocument/inlayHint",
      {
        textDocument: { uri: URI },
        range: {
          start: { line: line - 30, character: 0 },
          end: { line: line + 30, character: 0 },
        },
      },
    );
    allocated.push(process.memoryUsage().heapUsed - before);
    // the digit is one of the least, and sets its reading apart from the others
    expect(codes).toEqual(isTyped ? ["reading-uneven"] : []);
    expect(hints.length).toBeGreaterThan(10);
  }
  // where the collector ran in between there is less in the end
  return (allocated.sort((a, b) => a - b)[KEYS / 2] ?? 0) / 1024;
}

test("a keystroke allocates as much in a long record as in a short one", async () => {
  // what runs for the first time allocates more
  await allocatedByKey(recordOf(500));
  const short = await allocatedByKey(recordOf(1_000));
  const long = await allocatedByKey(recordOf(20_000));
  expect(short).toBeGreaterThan(100);
  // the lists of entries and of where they begin are copied, and no more: a fifth on Node 20, a third on Node 26
  expect(long).toBeLessThan(1.75 * short);
});
