// A record at a glance: what stands in which group, how it stands in words, what is counted, where a click leads; and that no damage upsets
// it.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { overviewMore, overviewOf } from "../../server/ide/overview.ts";
import { withoutName } from "../../server/ide/overview-standing.ts";
import type { Levels } from "../../server/ide/levels.ts";
import type { Overview, OverviewItem } from "../../server/protocol/overview.ts";
import { CRIB, JOB } from "../lsp/winch.ts";
import { opened } from "./opened.ts";

const address = (path: string): string => `file://${path}`;

function of(
  text: string,
  others: Readonly<Record<string, string>> = { "crib.thou": CRIB },
  levels: Levels = {},
): Overview {
  return overviewOf(opened(text, others), levels, address);
}

/** Groups and entries as lines, deeper ones further in. */
function outline({ groups }: Overview): readonly string[] {
  const lines = (item: OverviewItem, depth: number): readonly string[] => [
    `${"  ".repeat(depth)}${item.label}: ${item.detail}`,
    ...item.children.flatMap((child) => lines(child, depth + 1)),
  ];
  return groups.flatMap((group) => lines(group, 0));
}

function all({ groups }: Overview): readonly OverviewItem[] {
  const down = (item: OverviewItem): readonly OverviewItem[] => [
    item,
    ...item.children.flatMap(down),
  ];
  return groups.flatMap(down);
}

const find = (overview: Overview, label: string): OverviewItem | undefined =>
  all(overview).find((item) => item.label === label);

const READ = "  read near 0.87432 0.87428 0.87430 with mic-1 at 68 F\n";

describe("a job that waits only for its cut", () => {
  const overview = of(JOB);

  test("is grouped as a shop would, each entry with how it stands", () => {
    expect(outline(overview)).toEqual([
      "Next: 1",
      "  step ream: next",
      // the stock that the reamer takes hangs on it
      "To measure: 1",
      "  bore front: no reading yet",
      "Parts: 2",
      "  part layshaft: material steel-4140",
      "    journal front: in, measured, 0.87428 to 0.87432 in",
      "  part case: material aluminium-356-t6",
      "    hole front: in, measured, 1.00018 to 1.00021 in",
      "      bush front: material bronze-c932",
      "        bore front: to cut, 0.8756 to 0.8757 in, predicted",
      "Running fits: 1",
      "  fit front: in, predicted, 0.00128 to 0.00142 in",
      "Lines: 1",
      "  line layshaft: r-8755, by measured journals; window 0.87512 to 0.87588 in",
      "Steps: 1",
      "  step ream: next",
    ]);
  });

  test("is counted in words", () => {
    expect(overview.counts).toEqual({
      in: 3,
      out: 0,
      unsure: 0,
      toMeasure: 1,
      faults: 0,
    });
    expect(overview.summary).toBe("1 to measure, 3 in tolerance");
    expect(overview.next).toBe("Next: step ream.");
    expect(overview.name).toBe("job winch-layshaft");
  });

  test("leads to the name of each entry, and of each that is in the way", () => {
    const lines = JOB.split("\n");
    for (const { label, place } of all(overview)) {
      if (place === undefined) continue;
      expect(place.uri).toBe("file:///shop/job.thou");
      const [, name] = label.split(" ");
      expect(lines[place.line]?.slice(place.start, place.end)).toBe(name);
    }
    expect(find(overview, "fit front")?.place).toBeDefined();
  });

  test("says more of each: its results with their numbers", () => {
    const more = overviewMore(
      opened(JOB, { "crib.thou": CRIB }),
      {},
      "fit front",
    );
    expect(more).toContain(
      "clearance (diametral): 0.00128 to 0.00142 in, predicted, in tolerance",
    );
  });

  test("says its findings in plain text, and nothing of what is no entry", () => {
    const open = opened(JOB.replace("  want 0.0008", "  wnat 0.0008"), {
      "crib.thou": CRIB,
    });
    const said = overviewMore(open, {}, "fit front").join("\n");
    expect(said).toMatch(/error: A fit has no fact ‘wnat’/);
    expect(said).not.toContain("`");
    const overview = of(JOB.replace("  want 0.0008", "  wnat 0.0008"));
    expect(find(overview, "line layshaft")?.detail).toMatch(
      /a fit with ‘want’/,
    );
    expect(JSON.stringify(overview)).not.toContain("`");
    for (const no of [
      "",
      "fit nowhere",
      "hole front is not measured",
      "constructor",
    ])
      expect(overviewMore(open, {}, no)).toEqual([]);
  });
});

test("what an entry is known by has its unit, written or not", () => {
  const known = (line: string, units = "inch"): string | undefined =>
    find(
      of(
        `job j\n  units ${units}\npart p\nhole h in p\nbush b in hole h\n  ${line}\n`,
      ),
      "bush b",
    )?.detail;
  expect(known("length 1")).toBe("length 1 in");
  expect(known("length 1", "mm")).toBe("length 1 mm");
  expect(known("length 1 in", "mm")).toBe("length 1 in");
  expect(known("od 1.0020 to 1.0025")).toBe("od 1.0020 to 1.0025 in");
  expect(known("od 1.002 +/- 0.001")).toBe("od 1.002 +/- 0.001 in");
  expect(known("material bronze-c932")).toBe("material bronze-c932");
});

test("a journal that is not read is to measure, and is what the cut waits for", () => {
  const overview = of(JOB.replace(READ, ""));
  expect(outline(overview).slice(0, 5)).toEqual([
    "Next: 1",
    "  step ream: waits: 1 in the way",
    "    journal front is not measured: ",
    "To measure: 2",
    "  journal front: 0.8740 to 0.8745 in expected",
  ]);
  expect(overview.next).toBe(
    "Next: step ream, but it waits: journal front is not measured.",
  );
  expect(overview.counts.toMeasure).toBe(2);
  const inTheWay = find(overview, "journal front is not measured");
  expect(inTheWay?.place).toEqual(find(overview, "journal front")?.place);
});

test("a verdict is in words: out, by what; unsure", () => {
  const tight = of(JOB.replace("0.87432 0.87428 0.87430", "0.87470"));
  expect(find(tight, "journal front")).toMatchObject({
    state: "out",
    detail: "out, measured, 0.87470 in",
  });
  expect(tight.summary).toMatch(/^2 out, |^1 out, /);
  // 0.87449 is under the limit of 0.8745 by less than U = 0.00004 in
  const near = of(
    JOB.replace("0.87432 0.87428 0.87430", "0.87449").replace(
      "  units inch\n",
      "  units inch\n  verdict guarded\n",
    ),
  );
  expect(find(near, "journal front")?.state).toBe("unsure");
  expect(near.summary).toContain("1 unsure");
});

test("a bore is to cut until its line is cut, then to measure until it is read, then judged", () => {
  // step ream is the last entry of the job
  const cut = `${JOB}  done 2026-11-05 by AK\n`;
  expect(find(of(cut), "bore front")?.state).toBe("to-measure");
  expect(find(of(cut), "step ream")?.detail).toBe("done 2026-11-05");
  expect(of(cut).next).toBe("All steps are done.");
  const read = cut.replace(
    "bore front in bush front\n",
    "bore front in bush front\n  limits 0.8751 to 0.8758\n  read 0.87562 with bore-1 at 68 F\n",
  );
  expect(find(of(read), "bore front")).toMatchObject({
    state: "in",
    detail: "in, measured, 0.87562 in",
  });
  expect(of(read).counts.toMeasure).toBe(0);
});

test("an error that is no verdict is a fault, unless the user has turned its code off", () => {
  const part = JOB.replace(
    "  material steel-4140\n",
    "  material steel-4140\n  materal x\n",
  );
  expect(find(of(part), "part layshaft")).toMatchObject({
    state: "fault",
    detail: "1 error; material steel-4140",
  });
  expect(of(part).summary).toContain("1 fault");
  const quiet = of(part, { "crib.thou": CRIB }, { "word-unknown": "off" });
  expect(find(quiet, "part layshaft")?.state).toBe("plain");
  expect(quiet.counts.faults).toBe(0);
});

test("what a signed concession accepts is called accepted, by which, and is not counted out", () => {
  const worn = JOB.replace("0.87432 0.87428 0.87430", "0.87395").replace(
    "want 0.0008 to 0.0016",
    "want 0.0008 to 0.0020",
  );
  expect(find(of(worn), "journal front")?.state).toBe("out");
  const accepted = of(`${worn}
concession thin-front
  allows reading-off-limits on journal front
  up to 0.0001
  why "The fit has room" by AK on 2026-11-05
`);
  expect(find(accepted, "journal front")).toMatchObject({
    state: "accepted",
    detail: "accepted by concession thin-front; out, measured, 0.87395 in",
  });
  expect(accepted.counts.out).toBe(0);
  expect(find(accepted, "concession thin-front")?.detail).toBe(
    "allows reading-off-limits on journal front",
  );
});

test("a line that can't be read has a place of its own, and nothing is guessed of it", () => {
  const overview = of(`${JOB}\nfitt rear of journal rear in bore rear\n`);
  const unread = all(overview).filter(({ state }) => state === "unread");
  // nor of the step that cuts: the line may be a fit that stands in its way
  expect(unread.map(({ label }) => label)).toEqual([
    "step ream",
    "fitt rear of journal rear in bore rear",
    "step ream",
  ]);
  expect(outline(overview)).toContain("Can't be read: 1");
  expect(overview.counts.faults).toBe(1);
});

test("a job that follows a route has the route's steps, which lie in the crib", () => {
  const crib = `${CRIB}
route in-line
  step press-in
  step ream

step press-in
  do "Press it home"
step ream
  do "Ream it"
`;
  const job = JOB.replace("opened", "follow in-line\n  opened");
  const overview = of(job, { "crib.thou": crib });
  expect(find(overview, "step press-in")).toMatchObject({
    state: "ready",
    detail: "next; Press it home",
    place: { uri: "file:///shop/crib.thou" },
  });
  expect(
    all(overview).filter(({ label }) => label === "step ream"),
  ).toMatchObject([{ state: "waits", detail: "waits: step press-in" }]);
});

test("a crib shows what hangs on the wall", () => {
  const overview = of(CRIB, {});
  expect(outline(overview)).toEqual([
    "Reamers: 1",
    "  reamer r-8755: size 0.8755 in",
    "Gauges: 2",
    "  gauge mic-1: kind micrometer",
    "  gauge bore-1: kind bore-gauge",
  ]);
  expect(overview).toMatchObject({
    name: "shop harbour",
    summary: "nothing to judge",
    next: "",
  });
});

test("an empty record has nothing, and says so", () => {
  expect(of("", {})).toMatchObject({
    name: "",
    groups: [],
    summary: "nothing to judge",
  });
});

describe("what is needed", () => {
  const WITHOUT = JOB.replace("  ream with r-8755\n", "");

  test("of which one will do is one thing", () => {
    expect(find(of(WITHOUT), "bore front")?.detail).toBe("no reading yet");
    const parts = of(WITHOUT).groups.filter(({ label }) => label === "Parts");
    expect(outline({ ...of(WITHOUT), groups: parts })).toContain(
      "        bore front: to cut; needs a reading or the reamer of line layshaft",
    );
  });

  test("is a reading of the bore as it is before the cut, where one can be told", () => {
    // so much interference that how far the bore closes can't be worked out
    const pressed = WITHOUT.replace(
      "fit front of",
      "press front of bush front in hole front\n\nfit front of",
    )
      .replace("  id 0.8715", "  od 1.0040 to 1.0050\n  id 0.8715")
      .replace("  limits 1.0000", "  boss 1.750\n  limits 1.0000");
    const [bore] = of(pressed).groups.flatMap(({ label, children }) =>
      label === "To measure"
        ? children.filter((each) => each.label === "bore front")
        : [],
    );
    expect(bore?.detail).toBe("no reading as pressed yet");
  });

  test("is said of the entry without its name, and of another with all of it", () => {
    expect(withoutName("a reading of bore front", "bore front")).toBe(
      "a reading",
    );
    expect(withoutName("the oil of fit a and its temperature", "fit a")).toBe(
      "the oil and its temperature",
    );
    for (const other of ["front-2", "frontal", "front2"])
      expect(withoutName(`a reading of bore ${other}`, "bore front")).toBe(
        `a reading of bore ${other}`,
      );
  });

  test("what waits for a line that can't be read says so of fits as of sizes", () => {
    const broken = JOB.replace("read near 0.87432", "read near O.87432");
    expect(find(of(broken), "fit front")?.detail).toBe(
      "waits for a line that can't be read in journal front",
    );
  });
});

describe("no damage upsets it", () => {
  const folder = new URL("../../samples/broken/", import.meta.url);
  const files = Object.fromEntries(
    readdirSync(folder).map((file) => [
      file,
      readFileSync(new URL(file, folder), "utf8"),
    ]),
  );
  test.each(Object.keys(files))("%s", (file) => {
    const overview = of(files[file] ?? "", files);
    const ids = all(overview).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { label, state, detail } of all(overview)) {
      expect(label).not.toBe("");
      // a state is always a word as well, and never a colour alone; what is in the way of a step is a sentence by itself
      const isEntry = /^\S+ \S+$/u.test(label);
      if (isEntry && state !== undefined && state !== "plain")
        expect(detail).not.toBe("");
    }
  });
});
