// How words become a sentence, wherever one is said.

/** The words with a capital at their beginning. */
export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
