// What a result waits for is told apart: a line that can't be read, a file that is missing, a name that is nowhere.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";

const CRIB = `shop harbour
  units inch
gauge mic-1
  resolution 0.0001
`;
const JOB = `job winch-9
  units inch
  use "crib.thou"
part shaft
part case
journal one on shaft
  limits 0.8740 to 0.8745
  read 0.8742 0.8742 with mic-1 at 68 F
bore one in case
  limits 0.8750 to 0.8755
fit one of journal one in bore one
`;

const project = createProject({ root: "" });

function clearanceText(job: string, crib: string | null): string {
  project.setFile("job.thou", readLines(job));
  project.setFile("crib.thou", crib === null ? null : readLines(crib));
  return (
    project
      .check("job.thou")
      .results.find(
        ({ entry, kind }) => entry === "fit one" && kind === "clearance",
      )?.text ?? ""
  );
}

const damaged = JOB.replace("0.8750 to 0.8755", "0.8750 tu 0.8755");

test("one project, edited to and fro, says each for what it is", () => {
  expect(clearanceText(JOB, CRIB)).toMatch(/^\d/);
  expect(clearanceText(JOB, null)).toBe("waits for a file that is missing");
  expect(clearanceText(damaged, CRIB)).toBe(
    "waits for a line that can't be read in bore one",
  );
  expect(clearanceText(damaged, null)).toBe(
    "waits for a file that is missing, or for a line that can't be read in bore one",
  );
  expect(clearanceText(JOB, null)).toBe("waits for a file that is missing");
  expect(clearanceText(JOB, CRIB)).toMatch(/^\d/);
  // a line that leads nobody knows where
  const unread = JOB.replace('"crib.thou"', "crib thou");
  expect(clearanceText(unread, CRIB)).toBe(
    "waits for a line that can't be read in job winch-9",
  );
  expect(clearanceText(JOB, null)).toBe("waits for a file that is missing");
  expect(clearanceText(JOB, CRIB)).toMatch(/^\d/);
});

test("a name that is nowhere is named, though its line can be read", () => {
  const warm = JOB.replace("at 68 F", "at 90 F").replace(
    "part shaft\n",
    "part shaft\n  material iron-gray\n",
  );
  expect(clearanceText(warm, CRIB)).toBe(
    "waits for material iron-gray, which is nowhere",
  );
  expect(clearanceText(warm.replace("0.8750 to", "0.8750 tu"), CRIB)).toBe(
    "waits for material iron-gray, which is nowhere, or for a line that can't be read in bore one",
  );
  // it may be in the file
  expect(clearanceText(warm, null)).toBe("waits for a file that is missing");
  expect(clearanceText(warm.replace("iron-gray", "iron-grey"), CRIB)).toMatch(
    /^\d/,
  );
});

test("each entry that has a damaged line is named, as far as two, and what may stand under an opening line that is damaged", () => {
  const both = damaged.replace("0.8740 to 0.8745", "0.8740 tu 0.8745");
  expect(clearanceText(both, CRIB)).toBe(
    "waits for lines that can't be read in bore one and journal one",
  );
  const away =
    "waits for gauge mic-1, which may stand under a line that can't be read";
  const opener = CRIB.replace("gauge mic-1", "micrometer mic-1");
  expect(clearanceText(JOB, opener)).toBe(away);
  expect(clearanceText(damaged, opener)).toBe(
    `${away}, or for a line that can't be read in bore one`,
  );
  expect(clearanceText(JOB, CRIB.replace("0.0001", "O.0001"))).toBe(
    "waits for a line that can't be read in gauge mic-1",
  );
  expect(clearanceText(JOB, CRIB)).toMatch(/^\d/);
});
