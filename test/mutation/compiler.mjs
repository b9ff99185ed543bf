// Whether the compiler lets a change pass, as far as its types go: what it refuses can't come into the project, tests or no tests. Names that
// a change leaves without use, and code that nothing reaches any more, are no such reason here: nobody would be told that it is wrong.
import path from "node:path";
import ts from "typescript";

/** Says of a text in place of a file of the project whether its types are at odds. */
export function compilerOf(root) {
  const config = ts.readConfigFile(
    path.join(root, "tsconfig.json"),
    ts.sys.readFile,
  );
  const options = {
    ...ts.parseJsonConfigFileContent(config.config, ts.sys, root).options,
    noUnusedLocals: false,
    noUnusedParameters: false,
    allowUnreachableCode: true,
  };
  const texts = new Map();
  const versions = new Map();
  const service = ts.createLanguageService({
    getCompilationSettings: () => options,
    getCurrentDirectory: () => root,
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    getScriptFileNames: () => [...versions.keys()],
    getScriptVersion: (name) => String(versions.get(name) ?? 0),
    getScriptSnapshot: (name) => {
      const text = texts.get(name) ?? ts.sys.readFile(name);
      return text === undefined
        ? undefined
        : ts.ScriptSnapshot.fromString(text);
    },
    fileExists: ts.sys.fileExists,
    readFile: ts.sys.readFile,
    directoryExists: ts.sys.directoryExists,
    getDirectories: ts.sys.getDirectories,
  });
  return (file, text) => {
    const name = path.join(root, file);
    versions.set(name, (versions.get(name) ?? 0) + 1);
    texts.set(name, text);
    const refused =
      service.getSyntacticDiagnostics(name).length === 0 &&
      0 < service.getSemanticDiagnostics(name).length;
    versions.set(name, versions.get(name) + 1);
    texts.delete(name);
    return refused;
  };
}
