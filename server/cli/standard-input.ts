// Standard input, where a path would be `-`.
import type { Io } from "./io.ts";

export const STANDARD_INPUT = "-";

export async function allOf(stdin: Io["stdin"]): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of stdin) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}
