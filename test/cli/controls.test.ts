// No raw control reaches any output, whatever stands in a record: texts, JSON and SARIF are looked at byte by byte, over the real check.
import { expect, test } from "vitest";
import { jsonText } from "../../server/cli/json-text.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "./in-process.ts";

/** Escape, delete, a C1 control, one that turns the reading direction, a line separator, a tag outside the first plane. */
const BAD = "\u{1b}[31m\u{7f}\u{9b}2J\u{202e}\u{2028}\u{e0001}";

const RECORD = `job winch-9
  title "a${BAD}b"
  units inch
  use "no${BAD}such.thou"
part shaft
  material ${BAD}steel-4140
  ${BAD}serial 5
part ${BAD}case
journal one on shaft
  limits 0.8740 to 0.8742 from "sheet ${BAD}"
  read 0.8760 0.8761
  limts 0.8${BAD}
  finish 16 u${BAD}n Ra
step mark
  do "Mark ${BAD} both"
step next
  after mark${BAD}
`;

const RAW = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

test.each(["text", "json", "sarif"])("none in %s", async (format) => {
  const cwd = await folderWith({ "job.thou": RECORD });
  const { out, err } = await thou(["check", "--format", format], {
    cwd,
    parts: { createProject: () => createProject({ root: cwd }) },
  });
  expect(out).toContain("limits");
  for (const line of [...out.split("\n"), ...err.split("\n")])
    expect(RAW.exec(line)?.[0].codePointAt(0), line).toBeUndefined();
});

test("messages, titles and what stands under them have none either", async () => {
  const project = createProject({ root: "" });
  const { readLines } = await import("../../grammar/lines.ts");
  project.setFile("job.thou", readLines(RECORD));
  for (const missing of project.missingUses("job.thou"))
    project.setFile(missing, null);
  const { findings } = project.check("job.thou");
  expect(findings.some(({ message }) => message.includes("\\x1b"))).toBe(true);
  for (const { message, related, fixes } of findings)
    for (const text of [
      message,
      ...related.map((each) => each.message),
      ...fixes.map(({ title }) => title),
    ])
      expect(text).not.toMatch(RAW);
});

test("what is escaped in JSON is read back as it was", () => {
  const value = { [BAD]: [BAD, "plain", 1.5, null] };
  expect(JSON.parse(jsonText(value))).toEqual(value);
  expect(JSON.parse(jsonText(value, 2))).toEqual(value);
  expect(jsonText(value)).not.toMatch(RAW);
});
