// What the user has set. Whatever is missing or of another kind than it should be counts as not set.
import { readLevels, type Levels } from "../ide/levels.ts";

export interface Settings {
  /** `thou.hints.enabled`: the texts beside the lines. */
  readonly hints: boolean;
  /** `thou.lenses.enabled`: a line above each fit, press and line of bores. */
  readonly lenses: boolean;
  /** `thou.findings.waitWhileTyping`: no fault on the line being typed. */
  readonly waitWhileTyping: boolean;
  /** `thou.findings.wholeWorkspace`: findings of records that are not open, too. */
  readonly wholeWorkspace: boolean;
  /** `thou.findings.levels`: in place of the shipped levels. */
  readonly levels: Levels;
  /** A sentence for each thing that was set and can't be taken. */
  readonly problems: readonly string[];
}

const DEFAULTS: Settings = {
  hints: true,
  lenses: false,
  waitWhileTyping: true,
  wholeWorkspace: true,
  levels: {},
  problems: [],
};

/** Reads the section `thou`, whatever it holds. */
function settingsFrom(section: unknown): Settings {
  const hints = member(section, "hints");
  const findings = member(section, "findings");
  return {
    hints: flag(hints, "enabled", DEFAULTS.hints),
    lenses: flag(member(section, "lenses"), "enabled", DEFAULTS.lenses),
    waitWhileTyping: flag(
      findings,
      "waitWhileTyping",
      DEFAULTS.waitWhileTyping,
    ),
    wholeWorkspace: flag(findings, "wholeWorkspace", DEFAULTS.wholeWorkspace),
    ...readLevels(member(findings, "levels")),
  };
}

export interface ToldSettings {
  readonly now: () => Settings;
  /** @param section what the editor says of `thou`, whatever it holds */
  take(section: unknown): void;
}

/**
 * The settings as they were last told.
 * @param warn told each thing that can't be taken, once as long as it stays set
 * @param changed called where anything is set otherwise than before
 */
export function createToldSettings(
  warn: (problem: string) => void,
  changed: () => void,
): ToldSettings {
  let settings = DEFAULTS;
  return {
    now: () => settings,
    take(section) {
      const before = settings;
      settings = settingsFrom(section);
      for (const problem of settings.problems)
        if (!before.problems.includes(problem)) warn(problem);
      if (JSON.stringify(before) !== JSON.stringify(settings)) changed();
    },
  };
}

/** A member of something that may be nothing. */
export function member(of: unknown, name: string): unknown {
  return typeof of === "object" && of !== null
    ? (Object.getOwnPropertyDescriptor(of, name)?.value as unknown) // typed any
    : undefined;
}

function flag(of: unknown, name: string, usual: boolean): boolean {
  const value = member(of, name);
  return typeof value === "boolean" ? value : usual;
}
