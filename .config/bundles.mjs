// What is bundled, and how: one description for the build, the tests and the benches, so that they see what ships.
import { fileURLToPath } from "node:url";

const here = (file) => fileURLToPath(new URL(`../${file}`, import.meta.url));

/**
 * The part of the server that knows records is a file beside it, loaded after the first answer: a start does not read it. It is the same
 * file on Node and in a browser, a module, since both can load one while they run.
 */
const sessionApart = {
  name: "session-apart",
  setup({ onResolve }) {
    onResolve({ filter: /\/session\.ts$/ }, ({ kind }) =>
      kind === "dynamic-import"
        ? { path: "./session.js", external: true }
        : undefined,
    );
  },
};

const common = { bundle: true, legalComments: "none", logLevel: "warning" };

/** The part of both servers that knows records. */
export function session(outdir) {
  return {
    ...common,
    entryPoints: { session: here("server/lsp/session.ts") },
    outdir,
    platform: "neutral",
    mainFields: ["module", "main"],
    format: "esm",
    target: "es2022",
  };
}

/** The server on Node. `entry` in place of the real one is for tests. */
export function serverOnNode(outdir, entry = here("server/main.node.ts")) {
  return {
    ...common,
    entryPoints: { server: entry },
    outdir,
    outExtension: { ".js": ".cjs" },
    platform: "node",
    format: "cjs",
    target: "node20",
    plugins: [sessionApart],
  };
}

/** The extension and the command line on Node. */
export function restOnNode(outdir) {
  return {
    ...common,
    entryPoints: {
      client: here("client/main.node.ts"),
      cli: here("server/cli/main.ts"),
    },
    outdir,
    outExtension: { ".js": ".cjs" },
    platform: "node",
    format: "cjs",
    target: "node20",
    // DuckDB is optional, and a program of its own for each system: the command line looks for it when it is asked
    external: ["vscode", "@duckdb/node-api"],
  };
}

/** The command line alone, as small as it is packaged: for tests and benches that start it. */
export function commandLine(outdir) {
  const { entryPoints, ...rest } = restOnNode(outdir);
  return { ...rest, entryPoints: { cli: entryPoints.cli }, minify: true };
}

/** The server in a worker. */
export function serverInBrowser(outdir) {
  return {
    ...common,
    entryPoints: { "server.browser": here("server/main.browser.ts") },
    outdir,
    platform: "browser",
    format: "iife",
    target: "es2022",
  };
}

/** The extension in a browser: editors load it as CommonJS and add `.js` to its name where that is missing. */
export function clientInBrowser(outdir) {
  return {
    ...common,
    entryPoints: { "client.browser": here("client/main.browser.ts") },
    outdir,
    platform: "browser",
    format: "cjs",
    target: "es2022",
    external: ["vscode"],
  };
}

/** The script and the style of the bench view's page, which is a browser of its own wherever the extension runs. */
export function benchPage(outdir) {
  return {
    ...common,
    entryPoints: {
      bench: here("client/bench-page/page.ts"),
      "bench-style": here("client/bench-page/page.css"),
    },
    outdir,
    platform: "browser",
    format: "iife",
    target: "es2022",
  };
}

/** All that ships. */
export function bundles(outdir) {
  return [
    session(outdir),
    serverOnNode(outdir),
    restOnNode(outdir),
    serverInBrowser(outdir),
    clientInBrowser(outdir),
    benchPage(outdir),
  ];
}
