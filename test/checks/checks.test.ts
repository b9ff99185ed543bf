// Runs every check that the files beside this one export, and holds docs/checks.md to them (`npm test -- -u` writes it anew).
import { describe, expect, test } from "vitest";
import { allowed, difference, type Check } from "./check.ts";
import { checksPage } from "./page.ts";

const files = import.meta.glob<readonly Check[]>("./*.checks.ts", {
  eager: true,
  import: "default",
});

for (const [file, checks] of Object.entries(files)) {
  describe(file.replace(/^\.\/|\.checks\.ts$/g, ""), () => {
    test.each(checks)("$what", (check) => {
      expect(difference(check)).toBeLessThanOrEqual(allowed(check));
    });
  });
}

test("docs/checks.md says what they say", async () => {
  const all = Object.keys(files)
    .sort()
    .flatMap((file) => files[file] ?? []);
  await expect(checksPage(all)).toMatchFileSnapshot("../../docs/checks.md");
});
