// Runs every check that the files beside this one export.
import { describe, expect, test } from "vitest";
import { allowed, difference, type Check } from "./check.ts";

const files = import.meta.glob<readonly Check[]>("./*.checks.ts", { eager: true, import: "default" });

for (const [file, checks] of Object.entries(files)) {
  describe(file.replace(/^\.\/|\.checks\.ts$/g, ""), () => {
    test.each(checks)("$what", (check) => {
      expect(difference(check)).toBeLessThanOrEqual(allowed(check));
    });
  });
}
