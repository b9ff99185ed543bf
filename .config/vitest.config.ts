import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/editor/**", "**/node_modules/**"],
    setupFiles: ["test/seed.ts"],
    testTimeout: 60_000,
    // a slow disk takes as long over the folders that a file of tests leaves
    hookTimeout: 60_000,
  },
});
