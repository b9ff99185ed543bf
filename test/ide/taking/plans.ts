// Plans and records that the tests of taking readings share. Invented: a harbour's winch gearbox.
import type { TakingPlan } from "../../../server/protocol/guide.ts";

export const PLAN: TakingPlan = {
  ref: "journal rear",
  side: null,
  fact: "read",
  turned: null,
  places: ["near", "far"],
  each: 3,
  gauge: "mic-1",
  temperature: "68 F",
  stage: null,
  date: "2026-11-05",
  system: "inch",
  expected: { low: 0.874 * 0.0254, high: 0.8745 * 0.0254 },
  resolution: 2.54e-7,
};

export const REPEATS: TakingPlan = {
  ...PLAN,
  fact: "repeat",
  places: [null],
  each: 5,
};
