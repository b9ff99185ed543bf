// Every link from one page of the project to another leads to a file that is there, and its anchor to a heading of that file.
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const root = path.join(import.meta.dirname, "..", "..");
const PAGES = [
  "README.md",
  "DEVELOPERS.md",
  "CHANGELOG.md",
  ...markdownIn("docs"),
  ...markdownIn("test/rules"),
];

function markdownIn(folder: string): readonly string[] {
  return readdirSync(path.join(root, folder), {
    recursive: true,
    encoding: "utf8",
  })
    .filter((file) => file.endsWith(".md"))
    .map((file) => `${folder}/${file.replaceAll("\\", "/")}`)
    .sort();
}

/** The page without its blocks of code, where a bracket is no link. */
function prose(page: string): string {
  return readFileSync(path.join(root, page), "utf8")
    .replace(/^ *```[^]*?^ *```$/gm, "")
    .replace(/`[^`\n]*`/g, (code) => code.replace(/[[\]]/g, " "));
}

/** As the forges that render Markdown make them: lower case, blanks as hyphens, other marks left out. */
function anchorsOf(page: string): readonly string[] {
  return [...prose(page).matchAll(/^#+ (.*)$/gm)].map(([, title = ""]) =>
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N} _-]/gu, "")
      .replaceAll(" ", "-"),
  );
}

test.each(PAGES)("%s", (page) => {
  const broken = [...prose(page).matchAll(/\]\(([^)\s]+)\)/g)]
    .map((match) => match[1] ?? "")
    .filter((link) => !/^[a-z]+:/.test(link))
    .filter((link) => {
      const [file = "", anchor] = link.split("#");
      const target =
        file === "" ? page : path.posix.join(path.posix.dirname(page), file);
      if (!existsSync(path.join(root, target))) return true;
      if (anchor === undefined) return false;
      return (
        statSync(path.join(root, target)).isDirectory() ||
        !anchorsOf(target).includes(anchor)
      );
    });
  expect(broken).toEqual([]);
});
