// What a record costs grows with it, and not faster: of one three times as long, three times as much hangs on each other.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createFiles } from "../../server/model/project.ts";
import { findingsIn } from "../../server/rules/check.ts";

/** A journal and its bore with all that is between them, and the line and the step that cut it. */
const place = (name: string): string => `
journal ${name} on shaft
  read 0.8743 0.8742
hole ${name} in case
  limits 1.0000 to 1.0005
bush ${name} in hole ${name}
  material bronze-c932
  od 1.0011 to 1.0012
  id 0.8715 to 0.8720
bore ${name} in bush ${name}
press ${name} of bush ${name} in hole ${name}
  want 0.6 to 1.2 thou
fit ${name} of journal ${name} in bore ${name}
  want 0.0008 to 0.0016
line ${name}
  bore ${name} from 0 to 1.25
  ream with r
step ream-${name}
  cuts line ${name}
`;

const HEAD = `job growing
  units inch
part shaft
  material steel-4140
part case
  material aluminium-356-t6
reamer r
  size 0.8755
`;

/** How many cells a record of so many places has, and how many links between them. */
function sizesOf(places: number): {
  readonly cells: number;
  readonly links: number;
} {
  const files = createFiles({ root: "/" });
  const names = Array.from({ length: places }, (_, index) => `p${index}`);
  files.setFile("/a.thou", readLines(HEAD + names.map(place).join("")));
  const open = files.open("/a.thou");
  if (open === undefined) throw new Error("no record");
  findingsIn(open);
  let [cells, links] = [0, 0];
  for (const kind of open.shop.graph.kinds.values())
    for (const { needs } of kind.cells.values()) {
      cells++;
      links += Array.isArray(needs) ? needs.length : 1;
    }
  return { cells, links };
}

test("cells and the links between them grow as the record does", () => {
  const few = sizesOf(20);
  const many = sizesOf(60);
  expect(many.cells).toBeGreaterThan(2 * few.cells);
  expect(many.cells).toBeLessThan(3.1 * few.cells);
  expect(many.links).toBeLessThan(3.1 * few.links);
});
