// What may run and what may be fetched in our pages within the editor, as a Content Security Policy: nothing but what is named here. It makes
// no page.

/** The word that lets one script or style of a page in, and no other: another for each page. */
export function nonceOf(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join(
    "",
  );
}

/** For a page with one script of ours. @param styles where the editor keeps our files, in its own words */
export function withScript(nonce: string, styles: string): string {
  return policy(
    `default-src 'none'; style-src ${styles}; script-src 'nonce-${nonce}'`,
  );
}

/** For a page in which nothing runs. */
export function withStyle(nonce: string): string {
  return policy(`default-src 'none'; style-src 'nonce-${nonce}'`);
}

function policy(content: string): string {
  return `<meta http-equiv="Content-Security-Policy" content="${content}">`;
}
