// The sample files, for tests that run over all of them.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

export interface Sample {
  /** Relative to the samples folder, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

const root = path.join(import.meta.dirname, "..", "samples");

export const samples: readonly Sample[] = readdirSync(root, {
  recursive: true,
  encoding: "utf8",
})
  .filter((file) => file.endsWith(".thou"))
  .sort()
  .map((file) => ({
    path: file.replaceAll("\\", "/"),
    text: readFileSync(path.join(root, file), "utf8"),
  }));

/** Samples that a shop would keep: all but those that are damaged on purpose. */
export const soundSamples = samples.filter(
  (sample) => !sample.path.startsWith("broken/"),
);
