// Files that records use are held for the next record, and not for ever: memory must not grow with an archive. Over the real project.
import { describe, expect, test } from "vitest";
import { createLoader, MOST_HELD } from "../../server/cli/load-files.ts";
import { createProject } from "../../server/rules/check.ts";

const TEXTS = 400;

/** A loader over texts that are given, with what was read and what the project holds. */
function loading(textOf: (name: string) => string) {
  const held = new Set<string>();
  const reads: string[] = [];
  const project = createProject({ root: "" });
  const loader = createLoader(
    {
      ...project,
      setFile(path, lines) {
        held.add(path);
        project.setFile(path, lines);
      },
      dropFile(path) {
        held.delete(path);
        project.dropFile(path);
      },
    },
    "/",
    (sentence) => {
      throw new Error(sentence);
    },
    (path) => {
      reads.push(path);
      return Promise.resolve(Buffer.from(textOf(path)));
    },
  );
  const check = async (name: string): Promise<number> => {
    const file = { path: `/${name}.thou`, name };
    await loader.load(file);
    const { length } = project.check(file.path).findings;
    loader.release(file);
    return length;
  };
  return { loader, held, reads, check };
}

const CRIB = "shop c\n  units mm\n";

describe("files that others use", () => {
  test("are held up to a number, however many there are, and each is named once", async () => {
    const { loader, held, check } = loading((path) =>
      path.startsWith("/job")
        ? `job a\n  units mm\n  use "${path.replace("/job", "crib")}"\n`
        : CRIB,
    );
    let most = 0;
    for (let at = 0; at < TEXTS; at++) {
      await check(`job${at}`);
      most = Math.max(most, held.size);
    }
    expect(most).toBeLessThanOrEqual(MOST_HELD);
    expect(most).toBeGreaterThan(MOST_HELD / 2);
    const named = loader.newlyUsed();
    expect(named).toHaveLength(TEXTS);
    await check("job0");
    expect(loader.newlyUsed()).toEqual([]);
  });

  test("are read once by records that share more of them than that", async () => {
    const cribs = Array.from({ length: 2 * MOST_HELD }, (_, at) => `crib${at}`);
    const uses = cribs.map((name) => `  use "${name}.thou"\n`).join("");
    const { reads, check } = loading((path) =>
      path.startsWith("/job") ? `job a\n  units mm\n${uses}` : CRIB,
    );
    for (let at = 0; at < 5; at++) await check(`job${at}`);
    expect(reads).toHaveLength(cribs.length + 5);
  });

  test("that were let go are read again for who needs them", async () => {
    const { check } = loading((path) =>
      path.startsWith("/job")
        ? `job a\n  units mm\n  use "${path.replace("/job", "crib")}"\n`
        : CRIB,
    );
    const first = await check("job0");
    for (let at = 1; at < 2 * MOST_HELD; at++) await check(`job${at}`);
    expect(await check("job0")).toBe(first);
  });
});
