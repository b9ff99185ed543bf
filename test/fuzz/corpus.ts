// The sound and the broken texts that the fuzzer starts from: all samples, and every fixture that is text.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

export interface Seed {
  readonly name: string;
  readonly text: string;
}

/** @param test the folder that holds the tests */
export function corpusOf(test: string): readonly Seed[] {
  const folders: readonly [string, RegExp][] = [
    [path.join(test, "..", "samples"), /\.thou$/u],
    [path.join(test, "fixtures"), /\.(?:txt|thou|md)$/u],
    [path.join(test, "rules"), /\.md$/u],
    [path.join(test, "history"), /\.thou$/u],
  ];
  const seeds = folders.flatMap(([folder, wanted]) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((name) => wanted.test(name))
      .sort()
      .map((name) => ({
        name: name.replaceAll("\\", "/"),
        text: readFileSync(path.join(folder, name), "utf8"),
      })),
  );
  return seeds.flatMap(({ name, text }) =>
    // of a page of a finding its samples, each a record
    name.endsWith(".md")
      ? [...text.matchAll(/```thou[^\n]*\n(.*?)```/gsu)].map(
          ([, sample = ""], index) => ({
            name: `${name} ${index + 1}`,
            text: sample,
          }),
        )
      : [{ name, text: text.slice(0, 20_000) }],
  );
}
