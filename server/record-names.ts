// What a record is called, and which folders hold none: said once for the command line, the server and the extension.

/** As `thou` writes it: another case is another ending. */
export const RECORD_ENDING = ".thou";

/** @param name a name, a path or an address */
export function isRecordName(name: string): boolean {
  return name.endsWith(RECORD_ENDING);
}

/** The name of what is made beside a record begins with this. */
export function withoutEnding(name: string): string {
  return isRecordName(name.toLowerCase())
    ? name.slice(0, -RECORD_ENDING.length)
    : name;
}

/** Folders and files that hold no one's records: hidden ones, and those of packages. */
export function isLeftOut(name: string): boolean {
  return name.startsWith(".") || name === "node_modules";
}
