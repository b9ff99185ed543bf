// What package.json promises the editor: that the files are there and packed, that the commands exist, and that the server's
// tokens are coloured as the TextMate grammar colours them. Whether an editor takes it is for the tests in the real editor.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import files from "../../.config/package-files.json" with { type: "json" };

interface Manifest {
  readonly main: string;
  readonly browser: string;
  readonly extensionKind: readonly string[];
  readonly capabilities: {
    readonly untrustedWorkspaces: {
      readonly supported: boolean | "limited";
      readonly description: string;
    };
    readonly virtualWorkspaces: { readonly supported: boolean };
  };
  readonly icon: string;
  readonly activationEvents: readonly string[];
  readonly contributes: {
    readonly configurationDefaults: {
      readonly "[thou]": Readonly<Record<string, unknown>>;
    };
    readonly languages: readonly {
      readonly id: string;
      readonly configuration: string;
      readonly icon: { readonly light: string; readonly dark: string };
    }[];
    readonly grammars: readonly {
      readonly language: string;
      readonly scopeName: string;
      readonly path: string;
    }[];
    readonly semanticTokenScopes: readonly {
      readonly scopes: Readonly<Record<string, readonly string[]>>;
    }[];
    readonly menus: {
      readonly commandPalette: readonly {
        readonly command: string;
        readonly when: string;
      }[];
    };
    readonly commands: readonly {
      readonly command: string;
      readonly category: string;
    }[];
  };
}

const manifest = JSON.parse(readFileSync("package.json", "utf8")) as Manifest; // a missing member fails the test that reads it
const { languages, grammars, semanticTokenScopes, commands } =
  manifest.contributes;
const grammar = readFileSync("client/syntaxes/thou.tmLanguage.json", "utf8");
const sources = clientSources();

/** All of the client. */
function clientSources(): string {
  return readdirSync("client")
    .filter((name) => name.endsWith(".ts"))
    .map((name) => readFileSync(`client/${name}`, "utf8"))
    .join("\n");
}

describe("the manifest", () => {
  it("offers what is made of a record while a panel beside it has the keys", () => {
    for (const { command, when } of manifest.contributes.menus.commandPalette)
      expect([command, when]).toEqual([
        command,
        command === "thou.explainFinding" // of the finding at the caret
          ? "editorLangId == thou"
          : "editorLangId == thou || thou.overview == record || thou.overview == empty",
      ]);
  });

  it("lets no editor cut a hint off, which it would do in the middle of a figure", () => {
    const { configurationDefaults } = manifest.contributes;
    expect(
      configurationDefaults["[thou]"]["editor.inlayHints.maximumLength"],
    ).toBe(0);
  });

  it("names files that are there and go into the package", () => {
    const named = [
      manifest.icon,
      ...languages.flatMap(({ configuration, icon }) => [
        configuration,
        icon.light,
        icon.dark,
      ]),
      ...grammars.map(({ path }) => path),
    ].map((file) => file.replace(/^\.\//, ""));
    expect(named.filter((file) => !existsSync(file))).toEqual([]);
    const packed = (file: string): boolean =>
      files.some((pattern) => matches(file, pattern));
    expect(
      [
        ...named,
        "dist/client.cjs",
        "dist/server.cjs",
        "dist/client.browser.js",
        "dist/server.browser.js",
        "dist/session.js",
      ].filter((file) => !packed(file)),
    ).toEqual([]);
    expect(packed("client/extension.ts")).toBe(false);
  });

  it("runs beside the files where there is Node, and in a browser where there is none", () => {
    expect(manifest.main).toBe("./dist/client.cjs");
    expect(manifest.browser).toBe("./dist/client.browser.js"); // editors add `.js` where it is missing
    expect(manifest.extensionKind).toEqual(["workspace"]);
  });

  it("is whole in a folder that lies on no disk, and in one that nobody trusts yet but for comparing: nothing of a record is run", () => {
    const { untrustedWorkspaces, virtualWorkspaces } = manifest.capabilities;
    expect(virtualWorkspaces).toEqual({ supported: true });
    expect(untrustedWorkspaces.supported).toBe("limited");
    expect(untrustedWorkspaces.description).toMatch(
      /Comparing .* are off: both run git/u,
    );
    // what could run something: a setting that names a program, a task, a debugger, a terminal
    const text = JSON.stringify(manifest.contributes);
    expect(text).not.toMatch(
      /"(?:executable|command(?:Line)?Path|serverPath)"|"taskDefinitions"|"debuggers"|"terminal"/u,
    );
    expect(clientSources()).not.toMatch(
      /child_process|createTerminal|executeTask|startDebugging|env\.openExternal/u,
    );
  });

  it("starts the extension for a record, and for the page of a finding or the bench that a window opens again", () => {
    const scheme = /^const scheme = "(.*)";$/m.exec(sources)?.[1] ?? "";
    const panel = /^const BENCH = "(.*)";$/m.exec(sources)?.[1] ?? "";
    expect(manifest.activationEvents).toEqual([
      "onLanguage:thou",
      `onFileSystem:${scheme}`,
      `onWebviewPanel:${panel}`,
    ]);
  });

  it("offers the commands that the extension registers, and no others", () => {
    const registered = [
      ...sources.matchAll(/registerCommand\(\s*"([^"]+)"/g),
    ].map(([, command]) => command);
    expect(registered.toSorted()).toEqual(
      commands.map(({ command }) => command).toSorted(),
    );
    for (const { category } of commands) expect(category).toBe("Thou");
  });

  it("links to no command of its own that is not there", () => {
    const own = new Set([
      ...commands.map(({ command }) => command),
      "thou.overview.focus", // the editor makes one for each view
    ]);
    const linked = [
      ...JSON.stringify(manifest).matchAll(/command:(thou\.\w+)/gi),
      ...sources.matchAll(/command: "(thou\.[\w.]+)"/g),
      ...sources.matchAll(/executeCommand\(\s*"(thou\.[\w.]+)"/g),
    ].map(([, command = ""]) => command);
    expect(linked.length).toBeGreaterThan(5);
    expect(linked.filter((command) => !own.has(command))).toEqual([]);
  });

  it("gives the server's tokens the scopes of the grammar, so that no colour changes when they arrive", () => {
    const scopes = semanticTokenScopes.flatMap((each) =>
      Object.values(each.scopes).flat(),
    );
    expect(scopes.length).toBeGreaterThan(0);
    expect(scopes.filter((scope) => !grammar.includes(`"${scope}"`))).toEqual(
      [],
    );
    const inGrammar = new Set(
      [...grammar.matchAll(/"name": "((?:[a-z]+[.-])+thou)"/g)].map(
        ([, scope]) => scope,
      ),
    );
    const ofNoToken = new Set([
      "constant.numeric.date.thou",
      "variable.other.enummember.class.thou",
      "keyword.operator.sign.thou",
      "punctuation.separator.thou",
    ]);
    expect(
      [...inGrammar].filter(
        (scope = "") => !scopes.includes(scope) && !ofNoToken.has(scope),
      ),
    ).toEqual([]);
  });
});

/** Whether a file is meant by a pattern in which only stars stand for something, within one folder. */
function matches(file: string, pattern: string): boolean {
  const plain = pattern
    .split("*")
    .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`^${plain.join("[^/]*")}$`).test(file);
}
