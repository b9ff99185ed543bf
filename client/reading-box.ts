// The box that readings are typed into, by a hand or by a gauge: it asks for the next one until all is taken, and keeps what was typed in its
// order while an answer is on its way.
import * as vscode from "vscode";
import type { TakingPlan, TakingPrompt } from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";
import { step } from "./unwritten-readings.ts";

type Ask = Connection["ask"];

export interface Outcome {
  readonly inputs: readonly string[];
  /** The gauge, the temperature or the places are to be others. */
  readonly wantsOther: boolean;
  /** Nothing is left to read, and the person said so. */
  readonly isWhole: boolean;
}

const OTHER: vscode.QuickInputButton = {
  iconPath: new vscode.ThemeIcon("settings-gear"),
  tooltip: "Another gauge, temperature or place",
};

const ICONS: Readonly<Record<string, string>> = {
  u: "discard",
  s: "arrow-right",
  k: "check",
  mm: "symbol-ruler",
  in: "symbol-ruler",
};

/** Shows the box until all is taken or it is left. What is typed while an answer is on its way waits for its turn. */
export function showBox(
  ask: Ask,
  uri: vscode.Uri,
  plan: TakingPlan,
  before: readonly string[],
  {
    typed,
  }: {
    readonly typed: (inputs: readonly string[]) => Thenable<void>;
  },
): Promise<Outcome> {
  const box = vscode.window.createInputBox();
  box.ignoreFocusOut = true;
  let inputs = before;
  let queue = Promise.resolve();
  let isOpen = true;
  let isDone = false;
  /** A gauge may send two ends of line: the second is not a person's Enter. */
  let lastTyped = 0;
  const words = new Map<vscode.QuickInputButton, string>();

  return new Promise((resolve) => {
    function end(why: "other" | "whole" | "left"): void {
      if (!isOpen) return;
      isOpen = false;
      box.dispose();
      void queue.then(() => {
        resolve({
          inputs,
          wantsOther: why === "other",
          isWhole: why === "whole",
        });
      });
    }

    function show(prompt: TakingPrompt | null): void {
      if (prompt === null || !isOpen) return;
      isDone = prompt.isDone;
      box.title = prompt.title;
      box.step = prompt.step;
      box.totalSteps = prompt.of;
      box.placeholder = prompt.placeholder;
      // below a prompt the editor says what Escape does in other boxes, and in this one it does not
      box.validationMessage =
        prompt.doubt === null
          ? {
              message:
                prompt.gone === null
                  ? prompt.text
                  : `${prompt.gone}. ${prompt.text}`,
              severity: vscode.InputBoxValidationSeverity.Info,
            }
          : {
              message: prompt.doubt,
              severity: vscode.InputBoxValidationSeverity.Warning,
            };
      words.clear();
      for (const { word, label } of prompt.offers)
        words.set(
          {
            iconPath: new vscode.ThemeIcon(ICONS[word] ?? "edit"),
            tooltip: `${label} (${word})`,
          },
          word,
        );
      box.buttons = [...words.keys(), OTHER];
    }

    function say(word: string): void {
      inputs = [...inputs, word];
      const all = inputs;
      queue = queue
        .then(async () => {
          await typed(all);
          show(await step(ask, uri, plan, all));
        })
        .catch((reason: unknown) => {
          if (!isOpen) return;
          box.validationMessage = {
            message: `No answer (${sentenceOf(reason)}). What was typed is kept: type on, or leave with Escape.`,
            severity: vscode.InputBoxValidationSeverity.Warning,
          };
        });
    }

    function enter(): void {
      const text = box.value;
      box.value = "";
      if (text.trim() !== "") {
        lastTyped = Date.now();
        say(text);
      } else if (isDone && lastTyped + 500 < Date.now()) end("whole");
    }

    box.onDidAccept(enter);
    box.onDidTriggerButton((button) => {
      const word = words.get(button);
      if (word === undefined) end("other");
      else say(word);
    });
    box.onDidHide(() => {
      end("left");
    });
    queue = step(ask, uri, plan, inputs).then(show, (reason: unknown) => {
      box.validationMessage = sentenceOf(reason);
    });
    box.show();
  });
}

export function sentenceOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
