// Asks what a swing says besides its length: how many lobes there are, and how the part is turned under the pointer.
import {
  bestVee,
  faultOfForm,
  lobingFactor,
  usualVees,
  type RoundnessMethod,
} from "../../core/readings/lobing.ts";
import { methodThatSees } from "../../model/evaluate/roundness.ts";
import type { Choice } from "../../protocol/guide.ts";
import {
  askOne,
  askText,
  choice,
  type Fault,
  type Interview,
} from "../interview.ts";
import { TITLE } from "./where.ts";
import { kindOf } from "../../model/reference.ts";

/** As a line writes it after `on`: "vee 60 deg, 3 lobes". */
export function* askTurned(ref: string): Interview<string> {
  const lobes = yield* askText(
    {
      key: `lobes ${ref}`,
      title: TITLE,
      about: `Turn ${ref} once: how often does the pointer rise? So many are the lobes, three from a chuck of three jaws, often five or seven from a centreless grinder.`,
    },
    "",
    (text) => readLobes(text, ref),
  );
  const how =
    kindOf(ref) === "journal" ? yield* askVee(ref, lobes) : "three points";
  return `${how}, ${String(lobes)} lobes`;
}

function readLobes(
  text: string,
  ref: string,
): { readonly value: number } | Fault {
  if (text === "")
    return {
      fault:
        "Nothing follows from a swing without the number of lobes. Turn the part in two different vees and count the rises of one turn in each, or leave with Escape: the readings stand without it.",
    };
  const lobes = /^\d{1,4}$/u.test(text) ? Number(text) : NaN;
  const fault = faultOfForm(THREE_POINTS, lobes);
  if (fault !== undefined)
    return { fault: `Write a whole number, such as 3: ${fault}.` };
  return kindOf(ref) === "journal" || methodThatSees(ref, lobes) !== undefined
    ? { value: lobes }
    : {
        fault: `A gauge of three contacts shows 3, 6, 9 lobes and so on, and nothing of ${String(lobes)}: have it measured by an instrument that turns it about one axis.`,
      };
}

const THREE_POINTS: RoundnessMethod = { kind: "three-contacts" };

function* askVee(ref: string, lobes: number): Interview<string> {
  const best = bestVee(lobes)?.degrees;
  const vees = [...usualVees].sort(
    (a, b) => shownIn(veeOf(b), lobes) - shownIn(veeOf(a), lobes),
  );
  const given = yield* askOne(
    {
      key: `vee ${String(lobes)}`,
      title: TITLE,
      about: `How is ${ref} turned? In a vee, the indicator stands opposite.`,
      isKept: true,
    },
    [
      ...vees.map((degrees) =>
        choiceOf(
          `vee ${String(degrees)} deg`,
          `In a vee of ${String(degrees)}°`,
          shownIn(veeOf(degrees), lobes),
          degrees === best,
        ),
      ),
      choiceOf(
        "three points",
        "On three points, by a gauge of three contacts",
        shownIn(THREE_POINTS, lobes),
        false,
      ),
      choice("other", "In another vee", { below: "Its angle is asked next" }),
    ],
  );
  if (given !== "other") return given;
  const degrees = yield* askText(
    {
      key: "vee-angle",
      title: TITLE,
      about: "How many degrees are between the faces of the vee?",
      isKept: true,
    },
    "",
    readAngle,
  );
  return `vee ${degrees} deg`;
}

function veeOf(degrees: number): RoundnessMethod {
  const angle = (degrees * Math.PI) / 180;
  return { kind: "vee", angle, indicator: "opposite" };
}

/** How much larger than the roundness the swing is; 0 where next to nothing is seen of it. */
function shownIn(method: RoundnessMethod, lobes: number): number {
  const factor = lobingFactor(method, lobes);
  return factor.valid ? factor.value : 0;
}

function choiceOf(
  value: string,
  label: string,
  shown: number,
  picked: boolean,
): Choice {
  return choice(value, label, {
    beside:
      shown === 0
        ? "blind to so many lobes"
        : `shows them ${shown.toFixed(2)} times`,
    picked,
  });
}

function readAngle(text: string): { readonly value: string } | Fault {
  const [, digits = ""] =
    /^(\d{1,3}(?:\.\d{1,3})?) *(?:°|deg)?$/u.exec(text.replace(",", ".")) ?? [];
  return 0 < Number(digits) && Number(digits) < 180
    ? { value: String(Number(digits)) }
    : { fault: "Write an angle between 0 and 180 degrees, such as 72." };
}
