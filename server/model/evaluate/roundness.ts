// Radial roundness by the swing of a pointer over one turn, and what an odd number of lobes takes of a clearance: two-point diameters don't see
// it, and the mate does. What two points do see is size.ts's.
import { factSpec } from "../../../grammar/vocabulary.ts";
import type { Budget } from "../../core/readings/budget.ts";
import {
  bestVee,
  lobingFactor,
  type RoundnessMethod,
} from "../../core/readings/lobing.ts";
import { swingBudget } from "../../core/readings/swing-budget.ts";
import { showLength, type System } from "../../core/quantity/show.ts";
import { allOf, type Entry, type Fact } from "../entry.ts";
import { known, need, SILENT, unknown, type Known } from "../known.ts";
import { kindOf } from "../reference.ts";
import type { Need, Working } from "../result.ts";
import { entryOf, queryOfFacts, refOf, type Shop } from "../shop.ts";
import type { Stage, Swing } from "../values.ts";
import { gaugeValue } from "./gauge.ts";
import { latestOf, stagesNow } from "./readings.ts";
import { settings } from "./settings.ts";
import { sizeOf, type Size } from "./size.ts";

const FACTORS =
  "J. Jpn. Soc. Precis. Eng. 43 (1977) no. 514, p. 1167, abstract (vee, indicator opposite); the others derived likewise";

/** One swing that counts, and the roundness that it shows. */
export interface LobedForm {
  readonly swing: Swing;
  readonly factor: number;
  /** Largest less smallest radius, m. */
  readonly roundness: number;
  /** Step of what is said of it, m: a digit more than the swing has. */
  readonly step: number | undefined;
  /** Undefined where its gauge does not say enough. */
  readonly budget: Budget | undefined;
  /** What the budget is in want of. */
  readonly needs: readonly Need[];
}

export interface Roundness {
  /** The least round of them. */
  readonly worst: LobedForm;
  /** The least round of an odd number of lobes; undefined where all are even. */
  readonly odd: LobedForm | undefined;
  readonly working: readonly Working[];
}

export function swingsOf(
  entry: Entry,
): readonly Fact<"SwingFact" | "BoreSwingFact">[] {
  return [...allOf(entry, "SwingFact"), ...allOf(entry, "BoreSwingFact")];
}

/** The swings that count for a part at the first of these stages that has any, those that their method is blind to among them. */
function swingsAt(
  entry: Entry,
  stages: readonly Stage[],
): readonly Swing[] | undefined {
  const facts = swingsOf(entry);
  const values = facts.flatMap(({ value }) => value ?? []);
  if (values.length < facts.length) return undefined;
  const stageOf = ({ stage }: Swing): Stage => stage ?? "finished";
  const counts = stages.find((stage) =>
    values.some((each) => stageOf(each) === stage),
  );
  return latestOf(
    values
      .filter((each) => stageOf(each) === counts)
      .map((reading) => ({ reading })),
  ).map(({ reading }) => reading);
}

/** Of a journal, hole or bore as it is now; undefined where no swing of it is written. */
export const roundnessOf = queryOfFacts<Known<Roundness> | undefined>(
  "roundness",
  ["SwingFact", "BoreSwingFact"],
  undefined,
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    return entry === undefined || entry.damaged
      ? undefined
      : roundnessAt(shop, ref, entry, stagesNow(swingsOf(entry)));
  },
);

function roundnessAt(
  shop: Shop,
  ref: string,
  entry: Entry,
  stages: readonly Stage[],
): Known<Roundness> | undefined {
  const swings = swingsAt(entry, stages);
  if (swings === undefined) return SILENT;
  if (swings.length === 0) return undefined;
  // as of readings: of a gauge that can't be read nothing is known
  if (swings.some((swing) => isLost(shop, swing))) return SILENT;
  const forms = swings.flatMap((swing) => formOf(shop, ref, swing) ?? []);
  const worst = leastRound(forms);
  if (worst === undefined) return unknown(...swings.map(seenBy(ref)));
  const { system } = settings(shop);
  return known({
    worst,
    odd: leastRound(forms.filter(({ swing }) => swing.lobes % 2 === 1)),
    working: forms.map((form) => ({
      formula: "radial roundness = swing / factor of the method",
      with: `${form.swing.place === undefined ? "" : `${form.swing.place}: `}${methodWords(form.swing)}: ${showLength(form.swing.swing.value, system, form.swing.swing.step)} / ${form.factor.toFixed(2)} = ${showLength(form.roundness, system, form.step)}`,
      source: FACTORS,
    })),
  });
}

function isLost(shop: Shop, { gauge }: Swing): boolean {
  if (gauge === undefined) return false;
  const ref = refOf(shop, gauge);
  return ref === undefined || gaugeValue(shop, ref)?.damaged !== false;
}

/** Whether a part takes a swing: a size by itself does, a bush and a tool don't. */
export function takesSwing(ref: string): boolean {
  return factSpec(kindOf(ref), "swing") !== undefined;
}

/** The radial roundness that a swing shows, m, with its step and the factor between the two; undefined where the method is blind to so many lobes. */
export function shownBy({
  swing: { value, step },
  method,
  lobes,
}: Swing): Pick<LobedForm, "factor" | "roundness" | "step"> | undefined {
  const factor = lobingFactor(method, lobes);
  return factor.valid
    ? {
        factor: factor.value,
        roundness: value / factor.value,
        step: step === undefined ? undefined : step / 10,
      }
    : undefined;
}

/** Undefined where the method is blind to so many lobes. */
function formOf(shop: Shop, ref: string, swing: Swing): LobedForm | undefined {
  const shows = shownBy(swing);
  if (shows === undefined) return undefined;
  const gaugeRef = refOf(shop, swing.gauge);
  const gauge = gaugeRef === undefined ? undefined : gaugeValue(shop, gaugeRef);
  const budget =
    gauge === undefined
      ? undefined
      : swingBudget(
          {
            resolution: gauge.resolution,
            calibration: gauge.uncertainty,
            mpe: gauge.mpe,
          },
          shows.factor,
        );
  return {
    swing,
    ...shows,
    budget: budget?.valid === true ? budget.value : undefined,
    needs:
      budget?.valid === true
        ? []
        : [
            gaugeRef === undefined
              ? need(ref, "swing", `the gauge that showed the swing of ${ref}`)
              : need(gaugeRef, "uncertainty", `the uncertainty of ${gaugeRef}`),
          ],
  };
}

function leastRound(forms: readonly LobedForm[]): LobedForm | undefined {
  return forms.reduce<LobedForm | undefined>(
    (worst, form) =>
      worst === undefined || worst.roundness < form.roundness ? form : worst,
    undefined,
  );
}

/** What would show a form that the method is blind to. */
function seenBy(ref: string): (swing: Swing) => Need {
  return ({ lobes }) => {
    const how = methodThatSees(ref, lobes);
    return need(
      ref,
      "swing",
      how === undefined
        ? `the roundness of ${ref} by an instrument that turns it about one axis`
        : `the swing of ${ref} ${how}, which shows ${lobes} lobes`,
    );
  };
}

/** "in a vee of 90°"; undefined where nothing of the bench sees so many lobes. */
export function methodThatSees(ref: string, lobes: number): string | undefined {
  if (kindOf(ref) !== "journal")
    return lobes % 3 === 0 ? "on three points" : undefined;
  const vee = bestVee(lobes);
  return vee === undefined ? undefined : `in a vee of ${vee.degrees}°`;
}

/** "3 lobes in a vee of 60°" */
export function methodWords({ method, lobes }: Swing): string {
  return `${lobes} lobes ${turnedWords(method)}`;
}

export function turnedWords(method: RoundnessMethod): string {
  switch (method.kind) {
    case "vee":
      return `in a vee of ${degreesOf(method.angle)}°${method.indicator === "between" ? ", read between its faces" : ""}`;
    case "three-contacts":
      return "on three points";
    case "two-point":
      return "by two points";
  }
}

function degreesOf(angle: number): string {
  return String(Number(((angle * 180) / Math.PI).toFixed(2)));
}

/** What the mate of a journal or a bore meets besides the sizes that were read. */
export interface Lobes {
  /** m on diameter: a circle round a journal of an odd number of lobes is larger by its radial roundness, one within a bore smaller. */
  readonly taken: number;
  readonly form: LobedForm | undefined;
}

export const NO_LOBES: Lobes = { taken: 0, form: undefined };

/** A bore that is still to be cut or pressed is of the form that it then has, whatever it was. */
export function lobesOf(shop: Shop, ref: string, { from }: Size): Known<Lobes> {
  return from === "readings" || from === "limits"
    ? takenBy(roundnessOf(shop, ref))
    : known(NO_LOBES);
}

/** The same of a part as it was at a stage that is not what it is now: a bore that is still to be cut. */
export function lobesAt(shop: Shop, ref: string, stage: Stage): Known<Lobes> {
  return takenBy(roundnessThen(shop, ref, stage));
}

export function roundnessThen(
  shop: Shop,
  ref: string,
  stage: Stage,
): Known<Roundness> | undefined {
  const entry = entryOf(shop, ref);
  return entry === undefined || entry.damaged
    ? SILENT
    : roundnessAt(shop, ref, entry, [stage]);
}

function takenBy(found: Known<Roundness> | undefined): Known<Lobes> {
  if (found === undefined) return known(NO_LOBES);
  // of a form that its method does not see nothing is known, and nothing is taken
  if (!found.known) return found.silent ? found : known(NO_LOBES);
  const { odd } = found.value;
  return known(
    odd === undefined ? NO_LOBES : { taken: odd.roundness, form: odd },
  );
}

/** The same of the two halves of a fit. */
export function lobesOfBoth(
  shop: Shop,
  journal: { readonly ref: string; readonly size: Size },
  bore: { readonly ref: string; readonly size: Size },
): Known<{ readonly journal: Lobes; readonly bore: Lobes }> {
  const ofJournal = lobesOf(shop, journal.ref, journal.size);
  if (!ofJournal.known) return ofJournal;
  const ofBore = lobesOf(shop, bore.ref, bore.size);
  if (!ofBore.known) return ofBore;
  return known({ journal: ofJournal.value, bore: ofBore.value });
}

/** A journal as its bore meets it: its sizes, and the greatest with what its lobes take, m. */
export function journalAsMet(
  shop: Shop,
  ref: string,
): Known<{
  readonly size: Size;
  readonly greatest: number;
  readonly lobes: Lobes;
}> {
  const size = sizeOf(shop, ref);
  if (!size.known) return size;
  const lobes = lobesOf(shop, ref, size.value);
  if (!lobes.known) return lobes;
  const greatest = size.value.high + lobes.value.taken;
  return known({ size: size.value, greatest, lobes: lobes.value });
}

/** Why the lobes count, with the numbers; nothing where there are none. */
export function lobesWorking(
  ref: string,
  { form, taken }: Lobes,
  system: System,
): readonly Working[] {
  if (form === undefined) return [];
  const { swing, step, factor } = form;
  return [
    {
      formula: `the mate of ${ref} meets ${kindOf(ref) === "journal" ? "its largest diameter and its radial roundness more" : "its smallest diameter less its radial roundness"}: two points don't see an odd number of lobes`,
      with: `${methodWords(swing)}: ${showLength(swing.swing.value, system, swing.swing.step)} / ${factor.toFixed(2)} = ${showLength(taken, system, step)}`,
      source: `geometry; factor: ${FACTORS}`,
    },
  ];
}

/** "its 3 lobes take 0.0150 mm"; nothing where there are none. */
export function lobesTake({ form }: Lobes, system: System): string {
  return form === undefined
    ? ""
    : `its ${form.swing.lobes} lobes take ${showLength(form.roundness, system, form.step)}`;
}
