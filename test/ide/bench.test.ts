// The bench view as data: what it says where, that it is never blank, and that nothing in it can run. The HTML is read with a parser that is
// none of ours; the pictures themselves are tested with the pictures.
import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { benchOf } from "../../server/ide/bench.ts";
import { escaped } from "../../server/markup/html.ts";
import type { BenchView } from "../../server/protocol/bench.ts";
import { createProject } from "../../server/rules/check.ts";
import { samples } from "../samples.ts";

const WINCH =
  samples.find(({ path }) => path === "shop/winch.thou")?.text ?? "";

function bench(text: string, at = "", width = 800): BenchView {
  const project = createProject({ root: "/" });
  for (const each of samples)
    project.setFile(`/${each.path}`, readLines(each.text));
  project.setFile("/shop/job.thou", readLines(text));
  const open = project.open("/shop/job.thou");
  if (open === undefined) throw new Error("the record is not there");
  const line =
    at === "" ? 0 : text.split("\n").findIndex((each) => each.startsWith(at));
  if (line === -1) throw new Error(`no line begins with ${at}`);
  return benchOf(open, line, width, (path) => `file://${path}`);
}

function htmlOf(view: BenchView, key: string): string {
  return view.sections.find((section) => section.key === key)?.html ?? "";
}

/** Plain words of a section; its pictures left out. */
function wordsOf(view: BenchView, key: string): string {
  return htmlOf(view, key)
    .replace(/<svg[\s\S]*?<\/svg>/g, " ")
    .replace(/<[^>]*>/g, " ")
    .replaceAll("&#39;", "'")
    .replace(/\s+/g, " ")
    .replace(/ ([:.,])/g, "$1")
    .trim();
}

const keys = (view: BenchView): readonly string[] =>
  view.sections.map(({ key }) => key);

describe("every sample, at every tenth line", () => {
  test.each(samples)("$path", ({ text }) => {
    const lines = text.split("\n").length;
    for (let line = 0; line <= lines; line += 10) {
      const project = createProject({ root: "/" });
      for (const each of samples)
        project.setFile(`/${each.path}`, readLines(each.text));
      project.setFile("/shop/x.thou", readLines(text));
      const open = project.open("/shop/x.thou");
      if (open === undefined) throw new Error("the record is not there");
      const view = benchOf(open, line, 400, (path) => path);
      expect(view.sections.length).toBeGreaterThan(0);
      for (const { html, key } of view.sections) {
        const parser = new SaxesParser({ fragment: true });
        parser.on("error", (error) => {
          throw error;
        });
        parser.on("opentag", ({ name, attributes }) => {
          expect(
            ["script", "style", "iframe", "img", "link", "a", "form"],
            key,
          ).not.toContain(name);
          for (const attribute of Object.keys(attributes))
            expect(attribute, key).not.toMatch(/^on|^style$|^src$|^href$/);
        });
        parser.write(html).close();
      }
      expect(new Set(keys(view)).size).toBe(view.sections.length);
    }
  });
});

describe("the winch", () => {
  const view = bench(WINCH, "fit front");

  test("says what is next and what is in its way, and how not to be hurt", () => {
    const words = wordsOf(view, "next");
    expect(words).toContain("step ream: waits; don't cut yet");
    expect(words).toContain("journal rear is not measured");
    expect(words).toContain("4 of 9 steps are done.");
    expect(words).toContain("A reamer turns one way.");
    expect(words).toContain("does not replace the maker's manual");
  });

  test("at a line, the reamers stand before all else, and are told once", () => {
    const said = wordsOf(bench(WINCH, "line layshaft"), "caret");
    const [before = "", after = ""] = said.split("Which reamer");
    expect(before).toBe("At the caret: line layshaft Go to its line ");
    expect(after).toMatch(/reamer r-8755.* serves/);
    const table = after.slice(after.indexOf("What is worked out of"));
    expect(table).toContain("bore sizes that suit every journal");
    expect(table).not.toContain("r-8755");
  });

  test("shows what stands at the caret, then the line, the fits", () => {
    expect(view.title).toBe("Mooring winch 3, layshaft rebush");
    expect(keys(view)).toEqual([
      "next",
      "caret",
      "line layshaft",
      "fit front",
      "fit rear",
    ]);
    expect(wordsOf(view, "caret")).toContain(
      "clearance (diametral) 0.00099 to 0.00136 in predicted in tolerance",
    );
    expect(keys(bench(WINCH, "job"))).not.toContain("caret");
    expect(htmlOf(bench(WINCH, "journal rear"), "caret")).toContain(
      'data-ref="fit rear"',
    );
    expect(htmlOf(bench(WINCH, "bush rear"), "caret")).toContain(
      'data-ref="fit rear"',
    );
    expect(wordsOf(bench(WINCH, "step dry-fit"), "caret")).toContain(
      "It waits for step clean",
    );
  });

  test("says that a result is unknown before all that it needs", () => {
    const text =
      "job j\n  units mm\ngauge g\npart p\njournal a on p\n  read 24.98 with g\n";
    const said = bench(text, "journal a");
    expect(wordsOf(said, "caret")).toMatch(
      / uncertainty U unknown: needs the uncertainty of gauge g$/,
    );
    expect(htmlOf(said, "caret")).not.toContain(">unknown<");
  });

  test("ranks the reamers in words", () => {
    const words = wordsOf(view, "line layshaft");
    expect(words).toMatch(
      /reamer r-8755 \(named by the line\) 0\.87534 to 0\.87564 in 0\.00084 to 0\.00164 in: may be too loose 0\.00099 to 0\.00136 in: as wanted 96 % serves at its likeliest cut/,
    );
    // by hand: 0.87598 less the largest front journal 0.87435 is 0.00163, over the 0.0016 that is wanted
    expect(words).toMatch(
      /reamer r-876 .* 0\.00163 to 0\.00200 in: too loose .* does not serve/,
    );
  });

  test("knows where each entry that it names is written", () => {
    const lines = WINCH.split("\n");
    for (const ref of [
      "fit front",
      "journal rear",
      "bore front",
      "line layshaft",
    ]) {
      expect(lines[view.places[ref]?.line ?? -1]?.startsWith(ref), ref).toBe(
        true,
      );
      expect(view.places[ref]?.uri).toBe("file:///shop/job.thou");
    }
    expect(view.places["reamer r-8755"]?.uri).toBe("file:///shop/crib.thou");
    const named = view.sections.flatMap(({ html }) =>
      [...html.matchAll(/<button[^>]* data-ref="([^"]*)"/g)].map(
        (match) => match[1] ?? "",
      ),
    );
    expect(named.length).toBeGreaterThan(8);
    for (const ref of named)
      expect(Object.keys(view.places), ref).toContain(ref);
  });

  test("pictures are no wider than their room", () => {
    for (const width of [340, 700, 900, 2000]) {
      for (const { html, half } of bench(WINCH, "fit front", width).sections) {
        for (const [, own] of html.matchAll(/<svg[^>]* width="(\d+)"/g))
          expect(Number(own)).toBeLessThanOrEqual(
            half && 660 <= width ? width / 2 : width,
          );
      }
    }
  });
});

describe("never blank", () => {
  test.each([
    [
      "nothing at all",
      "",
      "Nothing is written yet that could be drawn. Write first:",
    ],
    [
      "a comment",
      "# soon\n",
      "Nothing is written yet that could be drawn. Write first:",
    ],
    [
      "a job",
      "job j\n  units mm\n",
      "Nothing can be drawn yet. Write next: the shaft and the case",
    ],
    [
      "parts",
      "job j\n  units mm\npart w\n",
      "Write next: where the shaft runs",
    ],
    [
      "a crib",
      "shop s\n  units mm\n",
      "A crib This is a crib: it holds what the shop has, and nothing stands in it yet. Write first: gauge mic-1",
    ],
    [
      "a crib that holds something",
      "shop s\n  units mm\ngauge mic-1\nreamer r-1\nreamer r-2\n",
      "A crib This is a crib: it holds what the shop has, 2 reamers, 1 gauge. Nothing of it is drawn by itself: open a job that uses it.",
    ],
    [
      "tools without a word of whose they are",
      "gauge mic-1\n",
      "A crib This is a crib: it holds what the shop has, 1 gauge.",
    ],
    ["a shop with a part", "shop s\npart p\n", "Write first Nothing can be"],
  ])("%s", (_, text, said) => {
    expect(wordsOf(bench(text), "first")).toContain(said);
  });

  test("a damaged line is said, with its entry, and marks what waits for it", () => {
    const view = bench(
      WINCH.replace("read near 0.87432", "read near 0,87432"),
      "fit rear",
    );
    expect(wordsOf(view, "damaged")).toContain(
      "journal front: one line of it can't be read",
    );
    const unread = view.sections
      .filter((section) => section.unread)
      .map(({ key }) => key);
    expect(unread).toContain("fit front");
    expect(unread).not.toContain("fit rear");
  });

  test("a sound record says nothing of damage", () => {
    expect(keys(bench(WINCH))).not.toContain("damaged");
  });

  test("a crowd of fits is cut, and said", () => {
    const text = `job j\n  units mm\npart w\npart g\n${Array.from({ length: 15 }, (_each, index) => `journal a${String(index)} on w\nbore a${String(index)} in g\nfit a${String(index)} of journal a${String(index)} in bore a${String(index)}\n`).join("")}`;
    const view = bench(text);
    expect(wordsOf(view, "more fit")).toContain("3 more are not drawn here");
  });
});

test("texts of the record are text", () => {
  const hostile = `<img src=x onerror=alert(1)>&'`;
  const view = bench(
    WINCH.replace("step ream\n", `step ream\n  do "${hostile}"\n`).replace(
      "Mooring winch 3",
      hostile,
    ),
  );
  expect(view.title).toContain(hostile);
  expect(htmlOf(view, "next")).toContain(escaped(hostile));
  for (const { html } of view.sections) expect(html).not.toContain("<img");
});

test("words of the record are set off in sentences, and in a picture stand in quotes", () => {
  // a front fit that wants nothing: its line has no window
  const text = WINCH.replace("  want 0.0008 to 0.0016\n", "");
  const view = bench(text, "line layshaft");
  expect(htmlOf(view, "line layshaft")).toContain(
    "write a fit with <code>want</code>, or limits, of bore front",
  );
  for (const { html } of view.sections)
    expect(html.replaceAll(/<code>[^<]*<\/code>/gu, "")).not.toContain("`");
});
