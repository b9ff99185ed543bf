// Owns the second look at readings: scatter from differences of pairs, sizes at 20 °C in fractions, budgets by covariance, verdicts by
// trying every size on a lattice, vees by solving for where the part sits. Each is derived here; nothing of the room is read.
import {
  budget,
  clearanceBudget,
  commonCorrelation,
} from "../../../server/core/readings/budget.ts";
import {
  temperatureComponents,
  type Component,
} from "../../../server/core/readings/components.ts";
import { lobingFactor } from "../../../server/core/readings/lobing.ts";
import {
  pooledRepeatability,
  standardDeviation,
} from "../../../server/core/readings/statistics.ts";
import { grubbsCritical } from "../../../server/core/readings/stray.ts";
import { sizeAtReference } from "../../../server/core/readings/temperature.ts";
import {
  judge,
  judgeRange,
  type Rule,
  type Verdict,
} from "../../../server/core/readings/verdict.ts";
import type { Answer } from "../../../server/core/answer.ts";
import { chance } from "../../core/readings/chance.ts";
import { nearestDouble } from "./quantity.ts";
import type { Side } from "./sides.ts";
import { criticalG, upperT } from "./student.ts";

const value = <T>(answer: Answer<T>): T | undefined =>
  answer.valid ? answer.value : undefined;

/** Grubbs' critical values where the caps are apart, so that they are exact. */
export function critical(): readonly Side[] {
  return [
    3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 1000, 10_000,
  ].flatMap((count) =>
    [0.001, 0.01, 0.05, 0.1].flatMap((alpha) => {
      const { value: theirs, isExact } = criticalG(count, alpha);
      return isExact
        ? [
            {
              at: `${String(count)} at ${String(alpha)}`,
              ours: value(grubbsCritical(count, alpha)),
              theirs,
            },
          ]
        : [];
    }),
  );
}

/** Σ(x − x̄)² = Σ over pairs (x − y)²/n: no mean is taken. Readings in steps of 0.1 µm about 25 mm, differences in whole numbers. */
export function scatter(): readonly Side[] {
  const { even } = chance(4);
  const sides: Side[] = [];
  for (let turn = 0; turn < 200; turn++) {
    const groups = Array.from({ length: 1 + (turn % 4) }, () =>
      Array.from(
        { length: 1 + Math.floor(4 * (1 + even())) },
        () => 250_000 + Math.round(30 * even()),
      ),
    );
    let [squares, freedom] = [0, 0];
    for (const group of groups) {
      let pairs = 0;
      group.forEach((x, i) => {
        for (const y of group.slice(0, i)) pairs += (x - y) ** 2;
      });
      squares += pairs / group.length;
      freedom += group.length - 1;
    }
    const inMetres = groups.map((group) => group.map((x) => x / 1e7));
    const pooled = value(pooledRepeatability(inMetres));
    sides.push({
      at: `pooled ${String(turn)}`,
      ours: pooled && pooled.standardDeviation * 1e7,
      theirs: freedom === 0 ? undefined : Math.sqrt(squares / freedom),
    });
    const [first = []] = inMetres;
    if (groups.length === 1) {
      const s = value(standardDeviation(first));
      sides.push({
        at: `alone ${String(turn)}`,
        ours: s === undefined ? undefined : s * 1e7,
        theirs: first.length < 2 ? undefined : Math.sqrt(squares / freedom),
      });
    }
  }
  return sides;
}

/** Fractions: the part's length in the gauge's divisions, each grown, with temperatures in 0.01 °C and expansions in 1e-8 per K. */
export function sizes(): readonly Side[] {
  const { even } = chance(20);
  const sides: Side[] = [];
  for (let turn = 0; turn < 400; turn++) {
    const pick = (below: number) => BigInt(Math.round(below * even()));
    const reading = 10n ** 8n + 10n ** 8n * BigInt(turn % 7) + pick(5e7); // 0.1 nm
    const correction = pick(20_000);
    const [atPart, atGauge] = [pick(6000), pick(6000)]; // 0.01 K about 20 °C
    const [ofPart, ofGauge] = [1000n + pick(900), 1000n + pick(900)]; // 1e-8 per K
    const one = 10n ** 10n;
    const theirs = nearestDouble({
      over: (reading + correction) * (one + ofGauge * atGauge),
      under: (one + ofPart * atPart) * 10n ** 10n,
    });
    const body = (at: bigint, of: bigint) => ({
      temperature: 20 + Number(at) / 100,
      expansion: Number(of) / 1e8,
    });
    sides.push({
      at: `size ${String(turn)}`,
      ours: value(
        sizeAtReference({
          reading: Number(reading) / 1e10,
          correction: Number(correction) / 1e10,
          part: body(atPart, ofPart),
          gauge: body(atGauge, ofGauge),
        }),
      ),
      theirs,
    });
  }
  return sides;
}

/** What a degree or a unit of expansion does to the size, by differences of the size itself, against the components' sensitivities. */
export function sensitivities(): readonly Side[] {
  const { even } = chance(21);
  return Array.from({ length: 60 }, (_, turn) => {
    const length = 0.03 + 0.02 * even();
    const part = {
      temperature: 20 + 15 * even(),
      expansion: (15 + 8 * even()) * 1e-6,
    };
    const gauge = { temperature: 20 + 15 * even(), expansion: 11.5e-6 };
    const of = turn % 2 === 0 ? "part" : "gauge";
    const body = of === "part" ? part : gauge;
    const size = (change: Partial<typeof part>) => {
      const warm = { ...body, ...change };
      return value(
        sizeAtReference({
          reading: length,
          part: of === "part" ? warm : part,
          gauge: of === "gauge" ? warm : gauge,
        }),
      );
    };
    const slope = (name: keyof typeof part, step: number): number =>
      ((size({ [name]: body[name] + step }) ?? NaN) -
        (size({ [name]: body[name] - step }) ?? NaN)) /
      (2 * step);
    const [byTemperature, byExpansion] =
      value(
        temperatureComponents(of, length, {
          ...body,
          temperatureUncertainty: 0.5,
          expansionUncertainty: 1e-6,
        }),
      ) ?? [];
    // Both are compared as parts of the length per K: the second order, left out of the components, is 1e-3 of them.
    return [
      {
        at: `${of} by temperature`,
        ours: byTemperature?.sensitivity,
        theirs: slope("temperature", 0.5),
        scale: length * body.expansion,
      },
      {
        at: `${of} by expansion`,
        ours: byExpansion?.sensitivity,
        theirs: slope("expansion", 1e-7),
        scale: length * 20,
      },
    ].map(({ at, ours, theirs, scale }) => ({
      at,
      ours: ours === undefined ? undefined : Math.abs(ours) / scale,
      theirs: Math.abs(theirs) / scale,
    }));
  }).flat();
}

/**
 * The variance of a sum as 1ᵀ·V·1 over the whole matrix of covariances, its effective degrees of freedom from the variance of that
 * variance: Var(s²) = 2σ⁴/ν for each input, so ν = 2·(Σ v)²/Σ 2v²/ν. A bore and a journal share one input; r comes from that.
 */
export function budgets(): readonly Side[] {
  const { even } = chance(95);
  const sides: Side[] = [];
  const some = (count: number): Component[] =>
    Array.from({ length: count }, (_, index) => ({
      name: `input ${String(index)}`,
      sensitivity: 2 * even(),
      standardUncertainty: 1e-6 * (1.05 + even()),
      distribution: "normal",
      degreesOfFreedom:
        index === 0 ? Infinity : 1 + Math.floor(10 * (1 + even())),
    }));
  const added = (parts: readonly Component[]) => {
    const variances = parts.map((part) => ({
      v: (part.sensitivity * part.standardUncertainty) ** 2,
      of: part.degreesOfFreedom,
    }));
    const whole = variances.reduce((sum, { v }) => sum + v, 0);
    const ofWhole = variances.reduce(
      (sum, { v, of }) => sum + (2 * v * v) / of,
      0,
    );
    return {
      whole,
      freedom: Math.floor(
        ofWhole === 0 ? Infinity : (2 * whole * whole) / ofWhole,
      ),
    };
  };
  for (let turn = 0; turn < 60; turn++) {
    const bore = some(2 + (turn % 4));
    const journal = some(2 + (turn % 3));
    const ours = [value(budget(bore)), value(budget(journal))] as const;
    for (const [index, parts] of [bore, journal].entries()) {
      const { whole, freedom } = added(parts);
      sides.push(
        {
          at: `u ${String(turn)}`,
          ours: ours[index]?.combined,
          theirs: Math.sqrt(whole),
        },
        {
          at: `U ${String(turn)}, ${String(freedom)}`,
          ours: ours[index]?.expanded,
          theirs: Math.sqrt(whole) * upperT(0.025, Math.max(1, freedom)),
        },
      );
    }
    // The first input of each (of infinite freedom) is one and the same: its covariance is the product of both contributions.
    const [ofBore, ofJournal] = ours;
    const contribution = ([first]: readonly Component[]) =>
      first === undefined ? 0 : first.sensitivity * first.standardUncertainty;
    const shared = {
      bore: Math.abs(contribution(bore)),
      journal: Math.abs(contribution(journal)),
    };
    if (ofBore === undefined || ofJournal === undefined) continue;
    const r = value(commonCorrelation(ofBore, ofJournal, shared));
    const clearance =
      r === undefined
        ? undefined
        : value(clearanceBudget(ofBore, ofJournal, r));
    const alone = added([...bore.slice(1), ...journal.slice(1)]);
    sides.push({
      at: `clearance ${String(turn)}`,
      ours: clearance?.combined,
      theirs: Math.sqrt(alone.whole + (shared.bore - shared.journal) ** 2),
    });
  }
  return sides;
}

const codes: Readonly<Record<Verdict, number>> = { in: 1, out: 2, unsure: 3 };

/** Sizes as whole steps of 0.1 nm about limits, every one tried: the verdict on one, and on a range by asking all in it. */
export function verdicts(): readonly Side[] {
  const sides: Side[] = [];
  const base = 250_000_000;
  const metres = (steps: number | undefined) =>
    steps === undefined ? undefined : (base + steps) / 1e10;
  const one = (
    size: number,
    low: number,
    high: number,
    guard: number,
  ): Verdict =>
    low + guard <= size && size <= high - guard
      ? "in"
      : size < low - guard || high + guard < size
        ? "out"
        : "unsure";
  const limits: readonly (readonly [number | undefined, number | undefined])[] =
    [
      [-4, 4],
      [-4, undefined],
      [undefined, 4],
      [0, 0],
      [-1, 2],
    ];
  for (const [low, high] of limits)
    for (const guard of [undefined, 0, 1, 3, 5]) {
      const rule: Rule =
        guard === undefined
          ? { kind: "simple" }
          : { kind: "guarded", guard: guard / 1e10 };
      const of = (size: number): Verdict =>
        one(size, low ?? -Infinity, high ?? Infinity, guard ?? 0);
      const between = { low: metres(low), high: metres(high) };
      for (let size = -12; size <= 12; size++) {
        const at = `${String(size)} in ${String(low)} to ${String(high)}, guard ${String(guard)}`;
        const ours = value(judge((base + size) / 1e10, between, rule));
        sides.push({ at, ours: ours && codes[ours], theirs: codes[of(size)] });
        for (const width of [0, 1, 4, 9, 14])
          for (const meaning of ["every", "one"] as const) {
            const each = Array.from({ length: width + 1 }, (_, index) =>
              of(size + index),
            );
            const all = (verdict: Verdict) =>
              each.every((of) => of === verdict);
            const isOut =
              meaning === "every" ? each.includes("out") : all("out");
            const theirs: Verdict = all("in") ? "in" : isOut ? "out" : "unsure";
            const range = judgeRange(
              { low: (base + size) / 1e10, high: (base + size + width) / 1e10 },
              between,
              rule,
              meaning,
            );
            const judged = value(range);
            sides.push({
              at: `${at}, ${String(width)} wide, ${meaning}`,
              ours: judged && codes[judged],
              theirs: codes[theirs],
            });
          }
      }
    }
  return sides;
}

/**
 * A part of radius R + a·cos(nα + turn) in a vee: each face touches where its normal points, so the centre (x, y) solves two equations,
 * normal·centre = −swell at that contact; the indicator then reads the centre's move along its line and the swell under it. The swing is
 * taken over a turn in 720 steps; the radial roundness is 2a.
 */
export function vees(): readonly Side[] {
  const sides: Side[] = [];
  for (const degrees of [60, 72, 90, 108, 120])
    for (const indicator of ["opposite", "between"] as const)
      for (let lobes = 2; lobes <= 24; lobes++) {
        const half = ((degrees / 2) * Math.PI) / 180;
        // The vee opens upwards: outward normals of the part at its contacts point down to both sides, at half from the horizontal.
        const contacts = [-half, Math.PI + half];
        const under = indicator === "opposite" ? Math.PI / 2 : -Math.PI / 2;
        let [least, most] = [Infinity, -Infinity];
        for (let step = 0; step < 720; step++) {
          const turn = (step * Math.PI) / 360;
          const swell = (angle: number) => Math.cos(lobes * angle + turn);
          const [[c1, s1, d1], [c2, s2, d2]] = contacts.map(
            (angle) =>
              [Math.cos(angle), Math.sin(angle), -swell(angle)] as const,
          ) as [
            readonly [number, number, number],
            readonly [number, number, number],
          ]; // two contacts give two rows
          const determinant = c1 * s2 - c2 * s1;
          const x = (d1 * s2 - d2 * s1) / determinant;
          const y = (c1 * d2 - c2 * d1) / determinant;
          const shown =
            x * Math.cos(under) + y * Math.sin(under) + swell(under);
          least = Math.min(least, shown);
          most = Math.max(most, shown);
        }
        const theirs = (most - least) / 2;
        const ours = value(
          lobingFactor({ kind: "vee", angle: 2 * half, indicator }, lobes),
        );
        // Refused where the method is blind: there the second look must be near nothing as well.
        if (ours === undefined && theirs < 0.1001) continue;
        sides.push({
          at: `${String(lobes)} lobes, ${String(degrees)}°, ${indicator}`,
          ours,
          theirs,
        });
      }
  return sides;
}
