// The trend of a record through the protocol: real repositories, the record as it stands in the editor. What a trend says is tested with
// server/records and the command line.
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc";
import { LSPErrorCodes } from "vscode-languageserver";
import { pastStatesOf } from "../../server/history/past-states.ts";
import { systemClock } from "../../server/lsp/clock.ts";
import type { Trended } from "../../server/protocol/trend.ts";
import { folderWith } from "../cli/in-process.ts";
import {
  commitAll,
  real,
  repositoryWith,
  write,
} from "../cli/scratch-repository.ts";
import { filesIn, serveHere } from "./in-process.ts";
import { surenessWords } from "../../server/records/trend-words.ts";

const DAYS = [
  ["2019-06-01", "0.87430", "10000"],
  ["2020-06-01", "0.87411", "12000"],
  ["2021-06-01", "0.87390", "14100"],
  ["2022-06-01", "0.87369", "16000"],
] as const;

function record(count: number, hours = false): string {
  const some = DAYS.slice(0, count);
  return `job visit
  units inch
${hours ? some.map(([date, , meter]) => `  hours ${meter} h on ${date}\n`).join("") : ""}part layshaft
  serial W-17
journal front on layshaft
  limits 0.8740 to 0.8745
  service-limit 0.8730 to 0.8745
${some.map(([date, size]) => `  read ${size} as run by AK on ${date}\n`).join("")}`;
}

async function asked(
  cwd: string,
  now: string,
  more: {
    readonly isTrusted?: unknown;
    /** Records that are not open, by their addresses. */
    readonly others?: Readonly<Record<string, string>>;
  } = {},
  hasGit = true,
): Promise<Trended> {
  const uri = pathToFileURL(path.join(cwd, "a.thou")).href;
  const { editor } = serveHere(
    new Map(Object.entries(more.others ?? {})),
    hasGit ? { pastStates: (of) => pastStatesOf(of, real.env) } : {},
  );
  await editor.start([pathToFileURL(cwd).href]);
  await editor.open(uri, now);
  return editor.request<Trended>("thou/trend", {
    uri,
    ...("isTrusted" in more ? more : { isTrusted: true }),
  });
}

function whyNot(answer: Trended): string {
  return answer.state === "not" ? answer.because : "found";
}

test("what git has of a record and what is typed and not saved are one series", async () => {
  const cwd = await repositoryWith({ "a.thou": record(1) });
  // each visit takes the place of the one before
  for (const at of [1, 2]) {
    await write(
      cwd,
      "a.thou",
      record(0).concat(
        `  read ${DAYS[at]?.[1] ?? ""} as run on ${DAYS[at]?.[0] ?? ""}\n`,
      ),
    );
    commitAll(cwd, `visit ${String(at)}`);
  }
  const answer = await asked(
    cwd,
    record(0).concat("  read 0.87369 as run on 2022-06-01\n"),
  );
  expect(whyNot(answer)).toBe("found");
  const series = answer.state === "found" ? answer.series : [];
  expect(series.map(({ title, along }) => `${title}, ${along}`)).toEqual([
    "part layshaft, serial W-17: journal front, over the years",
  ]);
  expect(series[0]?.says).toMatch(
    /^It wears 0\.2\d* thou a year \(.*\), of 4 days with readings\. It is at the service limit, 0\.87300 in, about 20\d\d-/u,
  );
  const html = series[0]?.html ?? "";
  for (const [date, size] of DAYS) {
    expect(html).toContain(`<td>${date}</td>`);
    expect(html).toContain(`<td>${size} in</td>`);
  }
  expect(html.match(/<circle /gu)).toHaveLength(4);
  // by a policy without inline styles and scripts nothing of the page is lost
  expect(html).not.toMatch(/ style=|<script|<style| on\w+=/u);
});

test("where the hours are written it is there against them too", async () => {
  const cwd = await folderWith({});
  const answer = await asked(cwd, record(4, true));
  const series = answer.state === "found" ? answer.series : [];
  expect(series.map(({ along }) => along)).toEqual([
    "over the years",
    "over running hours",
  ]);
  expect(series[1]?.says).toMatch(/thou per 1000 h .* of 4 hour-meter/u);
  expect(series[1]?.html).toContain("<td>12000 h</td>");
  expect(series[0]?.html).toContain("is read as it lies");
});

test("a part is followed over the other records that name its serial, and no other part", async () => {
  const cwd = await folderWith({});
  const at = (name: string): string => pathToFileURL(path.join(cwd, name)).href;
  const visit = (index: number): string =>
    `${record(0)}  read ${DAYS[index]?.[1] ?? ""} as run on ${DAYS[index]?.[0] ?? ""}\n`;
  const answer = await asked(
    cwd,
    visit(3),
    {
      others: {
        [at("visits/first.thou")]: visit(0),
        [at("visits/second.thou")]: visit(1),
        [at("visits/third.thou")]: visit(2),
        [at("visits/other.thou")]: record(4).replace("W-17", "W-18"),
        [at("visits/harmed.thou")]: record(4)
          .replace("W-17", "W-19")
          .replace("read 0.8", "read 0.8x 0.8"),
      },
    },
    false,
  );
  expect(whyNot(answer)).toBe("found");
  const series = answer.state === "found" ? answer.series : [];
  expect(series.map(({ title }) => title)).toEqual([
    "part layshaft, serial W-17: journal front",
  ]);
  expect(series[0]?.says).toMatch(/of 4 days with readings/u);
  const html = series[0]?.html ?? "";
  for (const file of ["visits/first.thou", "visits/third.thou", "a.thou"])
    expect(html).toContain(`<td>${file}</td>`);
  // what is amiss in a record of another part is not told here
  expect(html).not.toContain("be read, and left out");
});

test("while thousands of records are read others are answered, and it can be called off", async () => {
  const cwd = await folderWith({});
  const at = (name: string): string => pathToFileURL(path.join(cwd, name)).href;
  const uri = at("a.thou");
  const others = new Map(
    Array.from({ length: 2000 }, (_, index) => [
      at(`visits/${String(index)}.thou`),
      record(2),
    ]),
  );
  const files = filesIn(others);
  let reads = 0;
  let begun = (): void => undefined;
  const hasBegun = new Promise<void>((resolve) => {
    begun = resolve;
  });
  const { editor } = serveHere(others, {
    clock: systemClock,
    files: {
      ...files,
      read(address) {
        // well after they are listed
        if (++reads === 100) begun();
        return files.read(address);
      },
    },
  });
  await editor.start([pathToFileURL(cwd).href]);
  await editor.open(uri, record(4));
  const source = new CancellationTokenSource();
  let isDone = false;
  const trend = editor.connection
    .sendRequest<Trended>("thou/trend", { uri, isTrusted: true }, source.token)
    .finally(() => {
      isDone = true;
    });
  const refused = expect(trend).rejects.toMatchObject({
    code: LSPErrorCodes.RequestCancelled,
  });
  await hasBegun;
  const symbols = await editor.request<readonly unknown[]>(
    "textDocument/documentSymbol",
    { textDocument: { uri } },
  );
  expect(symbols.length).toBeGreaterThan(0);
  expect(isDone).toBe(false);
  source.cancel();
  await refused;
  expect(reads).toBeLessThan(others.size);
});

test("what is said stands beside the chart and not in it a second time", async () => {
  const answer = await asked(await folderWith({}), record(4));
  const [series] = answer.state === "found" ? answer.series : [];
  const shown = (series?.html ?? "")
    // what a reader of the screen is told of the picture is drawn nowhere
    .replaceAll(/<title>.*?<\/title>/gsu, "")
    .replaceAll(/ aria-label="[^"]*"/gu, "");
  expect(shown.split("serial W-17")).toHaveLength(2);
  expect(shown.split("It wears")).toHaveLength(2);
});

test("what was read is as sure in the unit of its size, and in a rate only where there is one", async () => {
  const tableOf = async (visits: number): Promise<string> => {
    const answer = await asked(await folderWith({}), record(visits));
    const html = answer.state === "found" ? (answer.series[0]?.html ?? "") : "";
    return /<table>.*<\/table>/su.exec(html)?.[0] ?? "";
  };
  const [one, four] = [await tableOf(1), await tableOf(4)];
  expect(one).toContain("What was read");
  expect(one).not.toMatch(/In the rate|yes/u);
  expect(four).toMatch(/In the rate.*yes/su);
  expect(surenessWords(1.05e-6, "mm")).toBe("±0.0021 mm");
  expect(surenessWords(0.508e-6, "inch")).toBe("±0.000040 in");
});

test("nothing that a record says is obeyed", async () => {
  const cwd = await folderWith({});
  const answer = await asked(
    cwd,
    record(2).replace("serial W-17", 'serial "<img src=x>"'),
  );
  const html = answer.state === "found" ? (answer.series[0]?.html ?? "") : "";
  expect(html).toContain("&lt;img");
  expect(html).not.toContain("<img");
});

test("where there is nothing to show, why is said, with the way out", async () => {
  const cwd = await folderWith({});
  expect(whyNot(await asked(cwd, "job visit\n"))).toMatch(
    /^a\.thou has no trend yet: .* Write the day after each such reading/u,
  );
  // a size that is on its way has a day, and wears nothing
  expect(
    whyNot(await asked(cwd, record(4).replaceAll("as run", "as roughed"))),
  ).toMatch(/no size in it that is finished or has run has a day/u);
  // only a plain yes is one
  for (const isTrusted of [false, null, 1, "true"])
    expect(whyNot(await asked(cwd, record(4), { isTrusted }))).toMatch(
      /^This folder is not trusted/u,
    );
  // without git, as in a browser, the record itself is shown
  const browser = await asked(cwd, record(4), {}, false);
  expect(browser.state === "found" ? browser.series[0]?.html : "").toContain(
    "there is no git here to read its versions",
  );
});
