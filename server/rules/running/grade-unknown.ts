// An oil says a grade that nothing is shipped for, and no viscosity: nothing is known of it.
import { oils } from "../../core/materials/oils.ts";
import { given } from "../../model/entry.ts";
import { oilOfGrade } from "../../model/evaluate/oil.ts";
import { MOST_OFFERED } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";

export const gradeUnknown: Rule = {
  code: "grade-unknown",
  level: "error",
  about: ["oil"],
  check(_, __, entry) {
    const grade = given(entry, "GradeFact");
    if (
      grade.state !== "given" ||
      given(entry, "ViscosityFact").state !== "absent" ||
      oilOfGrade(grade.value) !== undefined
    )
      return [];
    const { system, grade: number } = grade.value;
    const shipped = oils
      .map((each) => each.grade)
      .filter((each) => each.startsWith(`${system} `))
      .map((each) => each.slice(system.length + 1));
    const why = number.includes("-")
      ? "An oil of two grades is thinned less by warmth than either alone"
      : `${system} grades that are shipped: ${shipped.join(", ")}`;
    return [
      {
        span: grade.span,
        message: `Nothing is known of a grade ${system} ${number}. ${why}. Write the viscosity from its data sheet at two temperatures, as \`viscosity 46 cSt at 40 C, 6.8 cSt at 100 C\`.`,
        fixes: nearBy(number, shipped).map((each): DraftFix => ({
          title: `Write \`grade ${system} ${each}\``,
          safe: false,
          edits: [{ span: grade.span, text: `grade ${system} ${each}` }],
        })),
      },
    ];
  },
};

/** The shipped grades of the same sort that lie nearest: none stands for an oil of two. */
function nearBy(grade: string, shipped: readonly string[]): readonly string[] {
  if (grade.includes("-")) return [];
  const isWinter = (each: string): boolean => /w$/iu.test(each);
  const apart = (each: string): number =>
    Math.abs(Math.log(Number.parseFloat(each) / Number.parseFloat(grade)));
  return shipped
    .filter((each) => isWinter(each) === isWinter(grade))
    .sort((a, b) => apart(a) - apart(b))
    .slice(0, MOST_OFFERED);
}
