// The box that readings are typed into, by a hand or by a gauge: it asks for the next one until all is taken, and keeps what was typed in its
// order while an answer is on its way.
import * as vscode from "vscode";
import {
  OTHER_WORD,
  type TakingPlan,
  type TakingPrompt,
} from "../server/protocol/guide.ts";
import type { Connection } from "./connection.ts";
import { createTurns } from "./turns.ts";
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
  tooltip: `Another gauge, temperature or place (${OTHER_WORD})`,
};

const ICONS: Readonly<Record<string, string>> = {
  u: "discard",
  s: "arrow-right",
  k: "check",
  mm: "symbol-ruler",
  in: "symbol-ruler",
};

/** The second end of line of a gauge that sends two is not a person's Enter; milliseconds. */
const ONE_ENTER = 500;

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
  let isOpen = true;
  let isDone = false;
  let lastTyped = 0;
  let words: ReadonlyMap<vscode.QuickInputButton, string> = new Map();
  const turns = createTurns(
    before,
    step(ask, uri, plan, before).then(show, (reason: unknown) => {
      box.validationMessage = sentenceOf(reason);
    }),
  );

  function show(prompt: TakingPrompt | null): void {
    if (prompt === null || !isOpen) return;
    isDone = prompt.isDone;
    words = buttonsFor(prompt);
    box.title = prompt.title;
    box.step = prompt.step;
    box.totalSteps = prompt.of;
    box.placeholder = prompt.placeholder;
    box.validationMessage = messageOf(prompt);
    box.buttons = [...words.keys(), OTHER];
  }

  async function take(inputs: readonly string[]): Promise<void> {
    try {
      await typed(inputs);
      show(await step(ask, uri, plan, inputs));
    } catch (reason) {
      if (!isOpen) return;
      box.validationMessage = {
        message: `No answer (${sentenceOf(reason)}). What was typed is kept: type on, or leave with Escape.`,
        severity: vscode.InputBoxValidationSeverity.Warning,
      };
    }
  }

  return new Promise((resolve) => {
    function end(why: "other" | "whole" | "left"): void {
      if (!isOpen) return;
      isOpen = false;
      box.dispose();
      void turns.taken().then(() => {
        resolve({
          inputs: turns.inputs(),
          wantsOther: why === "other",
          isWhole: why === "whole",
        });
      });
    }

    box.onDidAccept(() => {
      const text = box.value;
      box.value = "";
      if (text.trim().toLowerCase() === OTHER_WORD) end("other");
      else if (text.trim() !== "") {
        lastTyped = Date.now();
        turns.add(text, take);
      } else if (isDone && lastTyped + ONE_ENTER < Date.now()) end("whole");
    });
    box.onDidTriggerButton((button) => {
      const word = words.get(button);
      if (word === undefined) end("other");
      else turns.add(word, take);
    });
    box.onDidHide(() => {
      end("left");
    });
    box.show();
  });
}

/** It stands where a fault would: below a prompt the editor says what Escape does in other boxes, and in this one it does not. */
function messageOf({
  doubt,
  gone,
  text,
}: TakingPrompt): vscode.InputBoxValidationMessage {
  return doubt === null
    ? {
        message: gone === null ? text : `${gone}. ${text}`,
        severity: vscode.InputBoxValidationSeverity.Info,
      }
    : { message: doubt, severity: vscode.InputBoxValidationSeverity.Warning };
}

/** A button for each word that may be typed now. */
function buttonsFor({
  offers,
}: TakingPrompt): ReadonlyMap<vscode.QuickInputButton, string> {
  return new Map(
    offers.map(({ word, label }) => [
      {
        iconPath: new vscode.ThemeIcon(ICONS[word] ?? "edit"),
        tooltip: `${label} (${word})`,
      },
      word,
    ]),
  );
}

export function sentenceOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason);
}
