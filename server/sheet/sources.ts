// The sources that a sheet rests on, each with a number and told once, at the end.
import { el, type Markup } from "../markup/html.ts";

export interface Sources {
  /** "[3]"; "" where there is no source. */
  mark(source: string): string;
  all(): readonly string[];
}

/** Numbers are given in the order in which sources are met. */
export function createSources(): Sources {
  const numbers = new Map<string, number>();
  return {
    mark(source) {
      if (source === "") return "";
      const number = numbers.get(source) ?? numbers.size + 1;
      numbers.set(source, number);
      return `[${String(number)}]`;
    },
    all: () => [...numbers.keys()],
  };
}

export function sourcesSection(sources: Sources): Markup | undefined {
  const all = sources.all();
  return all.length === 0
    ? undefined
    : el(
        "section",
        {},
        el("h2", {}, "Sources"),
        el(
          "p",
          { class: "small heads" },
          "Common practice, no source: a rule of the trade that nobody published for us. From memory: the text was not at hand.",
        ),
        el(
          "ol",
          { class: "small columns" },
          all.map((source) => el("li", {}, source)),
        ),
      );
}
