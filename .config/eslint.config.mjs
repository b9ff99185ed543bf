import eslint from "@eslint/js";
import { defineConfig, globalIgnores } from "eslint/config";
import tseslint from "typescript-eslint";

const root = new URL("..", import.meta.url).pathname;

export default defineConfig(
  globalIgnores(
    ["dist/", ".editor*/", "**/*.mjs", "**/*.cjs", "**/*.js", ".config/"],
    "not sources",
  ),
  eslint.configs.recommended,
  tseslint.configs.strictTypeChecked,
  tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: root },
    },
    rules: {
      "no-duplicate-imports": "error",
      // numbers stand in sentences all over; a number cannot misprint as an object does
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true },
      ],
    },
  },
);
