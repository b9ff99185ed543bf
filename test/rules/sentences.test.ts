// Sentences that the pages' samples don't reach: the other half of an "or", one journal and many, and what is offered where something lacks.
import { describe, expect, test } from "vitest";
import { endFloat } from "./end-float.ts";
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

test("an end float that is too small is told how much to take off, one that may be anything to be read first", () => {
  const small = found(endFloat("10.05"), "float-off");
  expect(small.level).toBe("error");
  // 0.10 − 0.05 brings it to the least that is wanted, 0.20 − 0.05 to the most
  expect(small.message).toMatch(
    /^The end float is 0\.050? mm, and 0\.100? to 0\.200? mm is wanted: take 0\.050? to 0\.150? mm off what closes it\.$/u,
  );
  const wide = found(endFloat("10.05 to 10.30"), "float-off");
  expect(wide.level).toBe("warning");
  expect(wide.message).toMatch(
    /^The end float may be anything of 0\.050? to 0\.300? mm, and 0\.100? to 0\.200? mm is wanted: read its members, or narrow their limits\.$/u,
  );
});

test("an interference that is foretold is told at its least", () => {
  expect(
    found(
      "job winch\n  units inch\npart shaft\npart case\njournal front on shaft\n  limits 0.8760 to 0.8765\nbore front in case\n  limits 0.8750 to 0.8755\nfit front of journal front in bore front\n",
      "fit-interferes",
    ).message,
  ).toMatch(/^There will be an interference of 0\.0005 in at least: /u);
});

test("a stray word before a line that would read without it is offered to be taken out, with its blank", () => {
  const { message, fixes, place } = found(
    "job winch\n  units inch\npart shaft\njournal front on shaft\n  h length 1.250\n",
    "word-unknown",
  );
  expect(message).toBe(
    "`h` begins no line here, and `length 1.250` would read without it.",
  );
  expect(place).toMatchObject({ line: 4, start: 2, end: 3 });
  expect(fixes.map(({ title, safe, edits }) => [title, safe, edits])).toEqual([
    ["Take `h` out", false, [{ place: { ...place, end: 4 }, text: "" }]],
  ]);
});

describe("a concession that accepts nothing", () => {
  const concession = (bound: string, why: string): string =>
    `job winch
  units inch
part shaft
part case
journal front on shaft
  read 0.8740
bore front in case
  read 0.8760
fit front of journal front in bore front
  want 0.0008 to 0.0016
concession loose
  allows fit-loose on fit front
  up to ${bound}
${why}`;
  const signed = '  why "Low speed" by AK on 2026-11-05\n';
  const idle = (text: string): readonly string[] =>
    checkText(text)
      .findings.filter(({ code }) => code === "concession-idle")
      .map(({ message }) => message);

  test("since its bound is of another kind than the finding is told so", () => {
    expect(idle(concession("5 psi", signed))).toEqual([
      "This concession accepts nothing: its bound is not of the kind that `fit-loose` is measured in. Take it out, or keep it as a record of what was allowed.",
    ]);
  });

  test("since nobody signed it is told that alone", () => {
    const none = (why: string): readonly string[] =>
      idle(concession("0.0025", why).replace("fit-loose", "fit-tight"));
    expect(none("")).toEqual([]);
    expect(none(signed)).toEqual([
      "This concession accepts nothing: fit front has no finding `fit-tight`. Take it out, or keep it as a record of what was allowed.",
    ]);
  });

  test("is told nothing of the sort where it holds, or is spent", () => {
    for (const bound of ["0.0025", "0.0018"])
      expect(idle(concession(bound, signed))).toEqual([]);
  });
});
