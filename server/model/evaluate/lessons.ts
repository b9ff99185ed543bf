// What the lessons that a record uses say of a reamer in a material, of a bush that is pressed, of a gauge. How they are learned is
// records/'s; what is made of them, oversize.ts's and press-closure.ts's. Nothing corrects a reading by a lesson.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { allOf, given } from "../entry.ts";
import { known, SILENT, type Known } from "../known.ts";
import {
  entryOf,
  isLoose,
  queryOfShop,
  refOf,
  refsOfKind,
  type Shop,
} from "../shop.ts";
import type { FactValues, Learned } from "../values.ts";
import { materialOfFeature } from "./size.ts";

/** Bushes whose diameters both lie within this share of each other are of one size. */
export const ONE_SIZE = 0.01;

export interface Lesson {
  readonly ref: string;
  readonly learned: Learned;
}

export interface ReamerLesson extends Lesson {
  readonly reamer: string;
  readonly material: string;
}

export interface BushLesson extends Lesson {
  readonly material: string;
  readonly about: Omit<FactValues["LessonBushFact"], "material">;
}

export interface GaugeLesson extends Lesson {
  readonly gauge: string;
  readonly against: string;
  readonly days: FactValues["BetweenFact"] | undefined;
}

/** Lessons of one sort, that of the latest last day first; silent where a line of one can't be read, since it may be about anything of its sort. */
function lessonsBy<T>(
  name: string,
  about: "LessonReamerFact" | "LessonBushFact" | "LessonGaugeFact",
  says: "LessonOversizeFact" | "LessonClosesFact" | "LessonReadsFact",
  make: (shop: Shop, lesson: Lesson) => T | undefined,
): (shop: Shop) => Known<readonly T[]> {
  return queryOfShop<Known<readonly T[]>>(name, (shop) => {
    if (isLoose(shop, "lesson *")) return SILENT;
    const found: { readonly lesson: T; readonly last: string }[] = [];
    for (const ref of refsOfKind(shop, "lesson")) {
      const entry = entryOf(shop, ref);
      if (entry === undefined) continue;
      const [topic, said] = [given(entry, about), given(entry, says)];
      if (
        entry.damaged ||
        topic.state === "damaged" ||
        said.state === "damaged"
      )
        return SILENT;
      if (topic.state === "absent" || said.state === "absent") continue;
      const lesson = make(shop, { ref, learned: said.value });
      if (lesson === undefined) continue;
      const last = topicOf(shop, ref, "BetweenFact")?.last ?? "";
      found.push({ lesson, last });
    }
    // ISO 8601 days; those of one day stay in the order of the files
    found.sort((a, b) => Number(a.last < b.last) - Number(b.last < a.last));
    return known(found.map(({ lesson }) => lesson));
  });
}

const reamerLessons = lessonsBy<ReamerLesson>(
  "lessons-of-reamers",
  "LessonReamerFact",
  "LessonOversizeFact",
  (shop, lesson) => {
    const about = topicOf(shop, lesson.ref, "LessonReamerFact");
    const reamer = refOf(shop, about?.reamer);
    const material = refOf(shop, about?.material);
    return reamer === undefined || material === undefined
      ? undefined
      : { ...lesson, reamer, material };
  },
);

const bushLessons = lessonsBy<BushLesson>(
  "lessons-of-bushes",
  "LessonBushFact",
  "LessonClosesFact",
  (shop, lesson) => {
    const about = topicOf(shop, lesson.ref, "LessonBushFact");
    const material = refOf(shop, about?.material);
    if (about === undefined || material === undefined) return undefined;
    const { construction, od, id, lot } = about;
    return { ...lesson, material, about: { construction, od, id, lot } };
  },
);

const gaugeLessons = lessonsBy<GaugeLesson>(
  "lessons-of-gauges",
  "LessonGaugeFact",
  "LessonReadsFact",
  (shop, lesson) => {
    const about = topicOf(shop, lesson.ref, "LessonGaugeFact");
    const [gauge, against] = [
      refOf(shop, about?.gauge),
      refOf(shop, about?.against),
    ];
    return gauge === undefined || against === undefined
      ? undefined
      : {
          ...lesson,
          gauge,
          against,
          days: topicOf(shop, lesson.ref, "BetweenFact"),
        };
  },
);

function topicOf<
  K extends
    "LessonReamerFact" | "LessonBushFact" | "LessonGaugeFact" | "BetweenFact",
>(shop: Shop, ref: string, rule: K): FactValues[K] | undefined {
  const entry = entryOf(shop, ref);
  return entry === undefined ? undefined : allOf(entry, rule)[0]?.value;
}

/** Whether a diameter lies within the share of another, m. */
function isOneSize(diameter: number, learned: number): boolean {
  const tenths = metresToTenths(learned);
  const apart = Math.abs(metresToTenths(diameter) - tenths);
  return apart <= Math.round(ONE_SIZE * tenths);
}

/** All lessons of a reamer. */
export function lessonsOfReamer(
  shop: Shop,
  reamer: string,
): Known<readonly ReamerLesson[]> {
  const all = reamerLessons(shop);
  return all.known
    ? known(all.value.filter((lesson) => lesson.reamer === reamer))
    : all;
}

/** All lessons of a gauge, whichever side of the pair it is. */
export function lessonsOfGauge(
  shop: Shop,
  ref: string,
): Known<readonly GaugeLesson[]> {
  const all = gaugeLessons(shop);
  return all.known
    ? known(
        all.value.filter(
          ({ gauge, against }) => gauge === ref || against === ref,
        ),
      )
    : all;
}

/**
 * The lesson of a bush with these mean diameters, m: of its material, construction and size; that of its lot before that of all lots, and the
 * nearest size first. Undefined where there is none.
 */
export function lessonOfBush(
  shop: Shop,
  bush: string,
  size: { readonly od: number; readonly id: number },
): Known<BushLesson | undefined> {
  const all = bushLessons(shop);
  if (!all.known) return all;
  if (all.value.length === 0) return known(undefined);
  const entry = entryOf(shop, bush);
  const material = materialOfFeature(shop, bush);
  if (entry === undefined || !material.known) return SILENT;
  const construction = given(entry, "ConstructionFact");
  const lot = given(entry, "LotFact");
  if (construction.state === "damaged" || lot.state === "damaged")
    return SILENT;
  // a bush that does not say how it is made is of no kind that was learned
  if (construction.state === "absent") return known(undefined);
  const distance = ({ about }: BushLesson): number =>
    Math.max(
      Math.abs(size.od / about.od - 1),
      Math.abs(size.id / about.id - 1),
    );
  const alike = all.value
    .filter(
      (lesson) =>
        lesson.material === material.value.ref &&
        lesson.about.construction === construction.value &&
        isOneSize(size.od, lesson.about.od) &&
        isOneSize(size.id, lesson.about.id),
    )
    .sort((one, other) => distance(one) - distance(other));
  const own =
    lot.state === "absent"
      ? undefined
      : alike.find(({ about }) => about.lot === lot.value);
  return known(own ?? alike.find(({ about }) => about.lot === undefined));
}
