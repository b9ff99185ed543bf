// Keeps the server alive: what a handler throws is logged, and is one failed answer.
import {
  ErrorCodes,
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
} from "vscode-languageserver";
import { Cancelled } from "./clock.ts";

/** A sentence for the person who asked: nothing failed. */
export class Refused extends Error {
  override readonly name = "Refused";
}

export type Log = (sentence: string) => void;

/** A handler of requests that never throws. */
export function answering<P, R, Rest extends readonly unknown[]>(
  name: string,
  log: Log,
  handle: (
    params: P,
    token: CancellationToken,
    ...rest: Rest
  ) => R | Promise<R>,
): (
  params: P,
  token: CancellationToken,
  ...rest: Rest
) => Promise<R | ResponseError<never>> {
  return async (params, token, ...rest) => {
    try {
      throwIfCancelled(token);
      const answer = await handle(params, token, ...rest);
      throwIfCancelled(token); // it may have been, meanwhile
      return answer;
    } catch (error) {
      const { name: kind, message } =
        error instanceof Error ? error : new Error(String(error));
      if (kind === "Cancelled")
        return new ResponseError(LSPErrorCodes.RequestCancelled, message);
      if (kind === "Refused")
        return new ResponseError(LSPErrorCodes.RequestFailed, message);
      log(`${name} failed: ${told(error)}`);
      return new ResponseError(
        ErrorCodes.InternalError,
        `${name} failed: ${message}`,
      );
    }
  };
}

function throwIfCancelled(token: CancellationToken): void {
  if (token.isCancellationRequested) throw new Cancelled();
}

/** Does something that nobody waits for; what goes wrong is logged. */
export function quietly(
  name: string,
  log: Log,
  act: () => void | Promise<void>,
): void {
  try {
    Promise.resolve(act()).catch((error: unknown) => {
      log(`${name} failed: ${told(error)}`);
    });
  } catch (error) {
    log(`${name} failed: ${told(error)}`);
  }
}

function told(error: unknown): string {
  return error instanceof Error
    ? (error.stack ?? error.message)
    : String(error);
}
