// What is worked out again after an edit: only what depends on it, by name.
import { describe, expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";

const WINCH = "/shop/winch.thou";

function openShop(): { readonly project: Project; readonly text: string } {
  const project = createProject({ root: "/" });
  for (const { path, text } of soundSamples)
    project.setFile(`/${path}`, readLines(text));
  const text =
    soundSamples.find((sample) => sample.path === "shop/winch.thou")?.text ??
    "";
  return { project, text };
}

/** The entries whose results or findings are worked out again when a piece of the winch's text is replaced. */
function worksOutAgain(piece: string, by: string): readonly string[] {
  const { project, text } = openShop();
  project.check(WINCH);
  const open = project.open(WINCH);
  if (open === undefined) throw new Error("no winch");
  const seen = new Set<string>();
  open.shop.graph.trace = (key) => {
    const [query, ...entry] = key.split(" ");
    if (query === "results" || query === "findings") seen.add(entry.join(" "));
  };
  const at = text.indexOf(piece);
  expect(at).toBeGreaterThan(-1);
  const before = text.slice(0, at).split("\n");
  const line = before.length - 1;
  const character = before.at(-1)?.length ?? 0;
  project.setFile(
    WINCH,
    editLines(open.file.lines, {
      start: { line, character },
      end: { line, character: character + piece.length },
      text: by,
    }),
  );
  project.check(WINCH);
  return [...seen].sort();
}

describe("after one edit", () => {
  test("of a reading, its journal, its fit, its line and the steps that wait for them", () => {
    const again = worksOutAgain("0.87435", "0.87436");
    expect(again).toContain("journal front");
    expect(again).toContain("fit front");
    expect(again).toContain("line layshaft");
    for (const other of [
      "journal rear",
      "hole front",
      "hole rear",
      "fit rear",
      "bore front",
      "bore rear",
      "part case",
      "bush front",
    ]) {
      expect(again).not.toContain(other);
    }
  });

  test("of a reading that is neither the largest nor the least, its line stays; the press feels the torque of its fit", () => {
    expect(worksOutAgain("0.87432 0.87428", "0.87433 0.87428")).toEqual([
      "fit front",
      "journal front",
      "press front",
    ]);
  });

  test("of a note's or title's text, nothing that is measured", () => {
    expect(worksOutAgain("layshaft rebush", "layshaft rebushed")).toEqual([
      "job winch-layshaft",
    ]);
  });

  test("of a comment, its own entry at most", () => {
    expect(
      worksOutAgain("# runs in the pressed", "# turns in the pressed"),
    ).toEqual(["line layshaft"]);
  });

  test("of a line above, that only moves the rest, nothing", () => {
    expect(
      worksOutAgain("# The layshaft", "# One more line\n# The layshaft"),
    ).toEqual([]);
  });
});

test("checking again without a change works out nothing", () => {
  const { project } = openShop();
  const first = project.check(WINCH);
  const open = project.open(WINCH);
  const seen: string[] = [];
  if (open !== undefined) open.shop.graph.trace = (key) => seen.push(key);
  expect(project.check(WINCH)).toEqual(first);
  expect(seen).toEqual([]);
});

describe("which entries there are is looked at again", () => {
  const HEAD = "job a\n  units inch\npart shaft\npart case\n";
  /** Whether the tables of the shop are those of before, once one text stands in another's place. */
  const areKept = (text: string, piece: string, by: string): boolean => {
    const project = createProject({ root: "" });
    const places = (job: string): unknown => {
      project.setFile("a.thou", readLines(HEAD + job));
      project.check("a.thou");
      return project.open("a.thou")?.shop.places;
    };
    expect(text).toContain(piece);
    return places(text) === places(text.replace(piece, by));
  };
  const JOURNAL = "journal front on shaft\n  limits 0.8740 to 0.8745\n";

  test.each([
    ["of a fact", "0.8745", "0.8746"],
    ["of a fact that can't be read", "to 0.8745", "tu 0.8745"],
    ["of what an opening line names", "on shaft", "on part shaft"],
    ["of a remark behind it", "on shaft", "on shaft # turned"],
  ])("not after an edit %s", (_, piece, by) => {
    expect(areKept(JOURNAL, piece, by)).toBe(true);
  });

  test.each([
    ["the name", "journal front", "journal rear"],
    ["the kind", "journal front on", "hole front in"],
    ["the opening line to one that can't be read", "on shaft", "onto shaft"],
    ["the number of entries", "journal", "part more\njournal"],
  ])("after an edit of %s", (_, piece, by) => {
    expect(areKept(JOURNAL, piece, by)).toBe(false);
  });

  test("of one that can't be read, only where its opening line is another", () => {
    const damaged = JOURNAL.replace("on shaft", "onto shaft");
    expect(areKept(damaged, "0.8745", "0.8746")).toBe(true);
    expect(areKept(damaged, "onto shaft", "over shaft")).toBe(false);
    const nameless = JOURNAL.replace("front", "1st");
    expect(areKept(nameless, "0.8745", "0.8746")).toBe(true);
    expect(areKept(nameless, "1st", "2nd")).toBe(false);
  });
});
