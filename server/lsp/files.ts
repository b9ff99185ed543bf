// How the server reaches files that are not open: passed in, since a browser has none. Addresses are URIs.

export interface FileAccess {
  /** The text of a file; undefined where there is none, or none that can be read. */
  read(uri: string): Promise<string | undefined>;
  /** The records below a folder, in any order. */
  records(folder: string): AsyncIterable<string>;
}
