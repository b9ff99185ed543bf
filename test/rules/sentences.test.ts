// Sentences that the pages' samples don't reach: the other half of an "or", one journal and many, and what is offered where something lacks.
import { expect, test } from "vitest";
import type { Finding } from "../../server/model/result.ts";
import { checkText } from "../model/check-text.ts";

function found(text: string, code: string): Finding {
  const finding = checkText(text).findings.find((each) => each.code === code);
  if (finding === undefined) throw new Error(`no ${code}`);
  return finding;
}

const press = (hole: string, bush: string) => `job winch-3
  units inch
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
hole front in case
  boss 1.750
  ${hole}
bush front in hole front
  material bronze-c932
  ${bush}
  id 0.8715 to 0.8720
  length 1.250
press front of bush front in hole front
  want 0.6 to 1.2 thou
`;

test("a bush that is smaller than its hole is said to be, measured or foretold", () => {
  expect(
    found(press("read 1.0002 1.0002", "read od 0.9994 0.9994"), "press-light")
      .message,
  ).toMatch(
    /^The bush is 0\.0008 in smaller than its hole, and .*: it lacks 0\.0014 in\. Take a larger bush\./u,
  );
  expect(
    found(press("read 1.0002 1.0002", "read od 1.0004 1.0004"), "press-light")
      .message,
  ).toMatch(/^The interference is 0\.0002 in, and /u);
  expect(
    found(
      press("limits 1.0002 to 1.0004", "od 0.9990 to 0.9994"),
      "press-light",
    ).message,
  ).toMatch(/^The bush is foretold at 0\.0008 to 0\.0014 in smaller than/u);
});

test("a second opening is told which one the file has, and where it begins", () => {
  const finding = found("job winch\n  units inch\nshop bench\n", "name-twice");
  expect(finding.message).toContain("this one is job winch already");
  expect(finding.place.line).toBe(2);
  expect(
    finding.related.map(({ place, message }) => [place.line, message]),
  ).toEqual([[0, "The file begins here."]]);
});

test("a line that begins with a number is asked what it is, with the words that could stand before it", () => {
  const { message, fixes } = found(
    "job winch\n  units inch\npart shaft\njournal front on shaft\n  0.8743\n",
    "word-unknown",
  );
  expect(message).toMatch(
    /^A line begins with a word, and `0\.8743` is a number: say first what it is, such as `\w+`.* or `\w+`\.$/u,
  );
  expect(fixes.map(({ title }) => title)).toContain("Write `read` before it");
  for (const fix of fixes) {
    expect(fix.safe).toBe(false);
    const [edit] = fix.edits;
    expect(edit?.place).toMatchObject({ line: 4, start: 2, end: 2 });
    expect(`Write \`${edit?.text.trimEnd() ?? ""}\` before it`).toBe(fix.title);
    expect(edit?.text).toMatch(/^\S+ $/u);
  }
});

test("where no fact takes a number first, none is offered before it", () => {
  const { message, fixes } = found(
    "shop bench\n  units inch\nroute line-ream\n  0.8743\n",
    "word-unknown",
  );
  expect(message).toBe(
    "A line begins with a word, and `0.8743` is a number: say first what it is.",
  );
  expect(fixes).toEqual([]);
});

test("a fact of another entry is asked for by what the trade calls it here", () => {
  const { message, fixes } = found(
    "job winch\n  units inch\npart shaft\njournal front on shaft\n  od 0.8740 to 0.8745\n",
    "word-unknown",
  );
  expect(message).toBe(
    "`od` is a fact of bush and pilot, not of journal: did you mean `limits`?",
  );
  expect(fixes.map(({ title }) => title)).toEqual(["Write `limits`"]);
});

test("a bush that has been read is not offered other limits to be made to", () => {
  const limits = "od 1.0004 to 1.0006";
  const offered = (bush: string): readonly string[] =>
    found(press("read 1.0002 1.0002", bush), "press-light").fixes.map(
      ({ title }) => title,
    );
  expect(offered(limits)).toEqual([
    "Have the bush made: `od 1.0008 to 1.0014 in`",
  ]);
  expect(offered(`${limits}\n  read od 1.0005 1.0005`)).toEqual([]);
  expect(offered("read od 1.0005 1.0005")).toEqual([]);
});
