// The answers to the requests of guided work, the taking of readings and a new job: what comes in is looked at before it is used, and the
// record is read as it stands now.
import type {
  NewJobAnswer,
  TakingPrompt,
  TakingSetup,
} from "../protocol/guide.ts";
import { answersFrom } from "../ide/interview.ts";
import { newJob } from "../ide/new-job/new-job.ts";
import { planFrom } from "../ide/taking/plan.ts";
import { promptAfter } from "../ide/taking/prompt.ts";
import { takingSetup } from "../ide/taking/setup.ts";
import type { Clock } from "./clock.ts";
import { member } from "./settings.ts";
import type { Workspace } from "./workspace.ts";

export function createGuideAnswers(workspace: Workspace, clock: Clock) {
  return {
    async takingSetup(params: unknown): Promise<TakingSetup> {
      const open = await workspace.open(text(params, "uri") ?? "");
      if (open === undefined)
        return { sentence: "This record is not there any more." };
      return takingSetup(
        open,
        {
          ref: text(params, "ref") ?? null,
          position: positionFrom(member(params, "position")),
        },
        answersFrom(member(params, "answers")),
        clock.today(),
      );
    },
    newJob(params: unknown): NewJobAnswer {
      const names = member(params, "names");
      return newJob({
        answers: answersFrom(member(params, "answers")),
        names: Array.isArray(names) ? textsFrom(names) : null,
        crib: text(params, "crib") ?? null,
        today: clock.today(),
      });
    },
    async takingStep(params: unknown): Promise<TakingPrompt | null> {
      const plan = planFrom(member(params, "plan"));
      if (plan === undefined) return null;
      const uri = text(params, "uri") ?? "";
      const open = await workspace.open(uri);
      const document = workspace.document(uri);
      // changed meanwhile: the lines would go elsewhere
      const isSame = document?.lines === open?.file.lines;
      const version = isSame ? (document?.version ?? null) : null;
      return promptAfter(
        open,
        version,
        plan,
        textsFrom(member(params, "inputs")),
      );
    },
  };
}

export type GuideAnswers = ReturnType<typeof createGuideAnswers>;

function text(of: unknown, name: string): string | undefined {
  const value = member(of, name);
  return typeof value === "string" ? value : undefined;
}

function textsFrom(given: unknown): readonly string[] {
  return Array.isArray(given)
    ? given.filter((each): each is string => typeof each === "string")
    : [];
}

function positionFrom(given: unknown) {
  const line = member(given, "line");
  const character = member(given, "character");
  return typeof line === "number" && typeof character === "number"
    ? { line, character }
    : null;
}
