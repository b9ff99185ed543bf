// Calendar days as ISO 8601 writes them.

const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;

/** The day as it was written if it is ISO 8601 and exists; undefined otherwise. */
export function dateOf(text: string): string | undefined {
  const match = ISO.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = [
    Number(match[1]),
    Number(match[2]),
    Number(match[3]),
  ];
  const date = new Date(Date.UTC(year, month - 1, day));
  date.setUTCFullYear(year);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? text
    : undefined;
}
