// Jobs that use what no sample does (jobs/, made up): all that is said of each, and what becomes of it where one fact or one entry is left out or
// can't be read, word for word, in golden files (`npm test -- -u` writes them anew; read the difference before they are committed). That the
// figures are right, no golden file says: the tests of each working do.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { askedOf, guardOf } from "../../server/model/asked.ts";
import { assumptionsOf } from "../../server/model/assumptions.ts";
import { cautionsOfStep } from "../../server/model/cautions.ts";
import { adviceFor } from "../../server/model/evaluate/advice.ts";
import { orderOf } from "../../server/model/evaluate/order.ts";
import { reamingAdviceFor } from "../../server/model/evaluate/reaming-advice.ts";
import { kindOf } from "../../server/model/reference.ts";
import { resultsOf } from "../../server/model/results.ts";
import type { Shop } from "../../server/model/shop.ts";
import { createProject } from "../../server/rules/check.ts";
import { told } from "../rules/found.ts";
import type { Sample } from "../samples.ts";
import { leftOut } from "./left-out.ts";

const folder = path.join(import.meta.dirname, "jobs");
const jobs: readonly Sample[] = readdirSync(folder)
  .sort()
  .map((file) => ({
    path: file,
    text: readFileSync(path.join(folder, file), "utf8"),
  }));

const digits = (_: string, value: unknown): unknown =>
  typeof value === "number" ? Number(value.toPrecision(9)) : value;
const shown = (value: unknown): string =>
  JSON.stringify(value, digits).replaceAll('"', "");

/** All that is said of one entry beside its results. */
function besides(shop: Shop, ref: string): readonly string[] {
  if (ref === "") return [];
  const results = resultsOf(shop, ref);
  const guard = guardOf(shop, ref);
  return [
    ...assumptionsOf(shop, ref, results),
    ...askedOf(shop, ref),
    ...(guard === "" ? [] : [guard]),
    ...(kindOf(ref) === "fit" ? adviceFor(shop, ref).map(shown) : []),
    ...(kindOf(ref) === "line" ? reamingAdviceFor(shop, ref).map(shown) : []),
    ...(kindOf(ref) === "step" ? cautionsOfStep(shop, ref) : []),
  ];
}

/** All that is said of one entry. */
function saidOf(shop: Shop, ref: string): readonly string[] {
  return [
    ...resultsOf(shop, ref).flatMap(({ working, ...result }) => [
      shown(result),
      ...working.map((each) => `    ${shown(each)}`),
    ]),
    ...besides(shop, ref),
  ];
}

test.each(jobs)("all that is said of $path", async ({ path: name }) => {
  const project = createProject({ root: "/" });
  for (const { path: each, text } of jobs)
    project.setFile(`/${each}`, readLines(text));
  const open = project.open(`/${name}`);
  if (open === undefined) throw new Error(`no ${name}`);
  const { shop, file } = open;
  const { steps, ...order } = orderOf(shop);
  const lines = [
    ...project.check(`/${name}`).findings.flatMap((each) => told(each)),
    ...file.entries.flatMap(({ ref }) =>
      ref === "" ? [] : [ref, ...saidOf(shop, ref).map((line) => `  ${line}`)],
    ),
    ...steps.map(shown),
    shown(order),
  ];
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    `../fixtures/jobs/${name.replace(".thou", ".txt")}`,
  );
});

test("each fact and each entry left out, and each line damaged", async () => {
  const { unknown, otherwise } = leftOut(jobs, besides);
  await expect(`${unknown.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/jobs/without.txt",
  );
  await expect(`${otherwise.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/jobs/otherwise.txt",
  );
});
