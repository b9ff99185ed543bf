// Every finding with a cure that text can give has a fix: each code has one in the samples of its page, or stands here with the reason why
// it has none.
import { describe, expect, test } from "vitest";
import type { Finding } from "../../server/model/result.ts";
import { CODES } from "../../server/rules/codes.ts";
import { allPages, projectOf } from "./pages.ts";

const METAL = "the cure is at the machine: metal on or off";
const READ = "the cure is at the gauge: read it again, or with a surer one";
const DESIGN =
  "the cure is another part, material, oil or load: someone's choice";
const PERSON = "the cure is a person's word: a signature, a day, a bound";

const WITHOUT: Readonly<Record<string, string>> = {
  "not-valid-here":
    "a method does not reach here: nothing is wrong with the text",
  "reading-off-limits": METAL,
  "reading-off-nominal": `${READ}; only the gauge knows what it showed`,
  "service-limit-within": "which of the two is wrong only the drawing can tell",
  worn: METAL,
  "out-of-round": METAL,
  taper: METAL,
  lobed: METAL,
  "swing-blind": `${READ}; turned otherwise, which only the pointer can tell`,
  "reading-stray": `${READ}; a value is not struck off for looking odd`,
  "gauge-coarse": `${READ}; naming another gauge would say what was not done`,
  "gauge-overdue": `${READ}; a new due day comes with a certificate`,
  "hours-back": "only the meter knows what it showed",
  "fit-tight": METAL,
  "fit-loose": METAL,
  "fit-interferes": METAL,
  "fit-unsure": READ,
  "hot-tight": METAL,
  "hot-loose": METAL,
  "cold-tight": METAL,
  "cold-loose": METAL,
  "press-yields": DESIGN,
  "closure-not-valid": `${READ} once it is pressed`,
  "bush-not-reamable": DESIGN,
  "wall-missing": `${READ}; which of the two is wrong only the part can tell`,
  "heat-over":
    "the cure is another way to fit it: less heat and some cold, or a press",
  "reamer-not-in-crib": "the cure is bought or ground: no reamer there serves",
  "line-needs-two-reamers":
    "two journals conflict, and which one gives way is a choice",
  "stock-thin": METAL,
  "stock-heavy": METAL,
  "wont-clean-up": METAL,
  "ledge-fouls": METAL,
  "fillet-fouls": METAL,
  "line-crooked": METAL,
  "film-thin": DESIGN,
  "pv-over": DESIGN,
  "load-over": DESIGN,
  "speed-over": DESIGN,
  "float-off":
    "the cure is shims or metal: what is put in is written once it is in",
  "shim-none": "the cure is other shims, or readings of the members",
  "step-early": `${PERSON}: what was done when`,
  "step-open": `${PERSON}: that it is done; the editor offers today's date`,
  "cut-unchecked": READ,
  "concession-unsigned": PERSON,
  "concession-spent": PERSON,
};

/** The findings of a page's code over its samples, each file checked as its own. */
function foundIn(code: string): readonly Finding[] {
  const page = allPages().find((each) => each.code === code);
  return (page?.samples ?? []).flatMap(({ files }) => {
    const project = projectOf(files);
    return files.flatMap(({ name }) =>
      project.check(name).findings.filter((finding) => finding.code === code),
    );
  });
}

describe.each(CODES.map((code) => [code]))("%s", (code) => {
  test(
    code in WITHOUT ? `has no fix: ${WITHOUT[code] ?? ""}` : "has a fix",
    () => {
      const fixes = foundIn(code).flatMap((finding) => finding.fixes);
      expect(0 < fixes.length).toBe(!(code in WITHOUT));
    },
  );

  test("a fix does something, and two of one finding differ", () => {
    for (const { fixes: offered } of foundIn(code)) {
      const titles = offered.map(({ title }) => title);
      expect(new Set(titles).size).toBe(titles.length);
      for (const { edits, creates } of offered)
        expect(edits.length + (creates?.length ?? 0)).toBeGreaterThan(0);
    }
  });
});

test("the list names only codes that there are", () => {
  expect(Object.keys(WITHOUT).filter((code) => !CODES.includes(code))).toEqual(
    [],
  );
});
