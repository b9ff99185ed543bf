// The clearance of a sample's fit when hot, worked out by hand.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";
import { resultOf } from "./check-text.ts";

test("the case that runs hot raises its one finding, where its file says so", () => {
  const text = readFileSync(
    path.join(import.meta.dirname, "../../samples/shop/hot-case.thou"),
    "utf8",
  );
  const project = createProject({ root: "/" });
  for (const sample of soundSamples)
    project.setFile(`/${sample.path}`, readLines(sample.text));
  const check = project.check("/shop/hot-case.thou");
  const found = check.findings.filter(
    ({ level }) => level === "error" || level === "warning",
  );
  expect(found.map(({ code }) => code)).toEqual(["hot-tight"]);
  expect(text.split("\n")[found[0]?.place.line ?? 0]).toContain("shaft 70 C");
  // by hand: bore 19.996 at 25 °C in aluminium 21.5e-6, journal 19.978 at 70 °C in steel 1045, 11.3e-6
  expect(found[0]?.message).toContain("0.009");
  const hot = resultOf(check, "fit idler", "hot-clearance", { case: 2 });
  expect(hot?.low).toBeCloseTo(
    19.996e-3 * (1 + 5 * 21.5e-6) - 19.978e-3 * (1 + 50 * 11.3e-6),
    11,
  );
});
