// Why a file can't be read or written, in words: the end of a sentence for the user. Where none are ours, the system's own stand.
import { shown } from "./model/plain-text.ts";

const BY_CODE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EACCES: "its permissions do not allow it",
  EPERM: "its permissions do not allow it",
  EROFS: "the disk can only be read",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is used up",
  EFBIG: "no file may be that large here",
  EEXIST: "a file of that name is there already",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is a file, not a folder",
  ELOOP: "its links lead in a circle",
  ENAMETOOLONG: "its name is too long",
  EMFILE: "too many files are open",
  EIO: "the disk reports a fault",
};

export function whyNot(error: unknown): string {
  return (
    reasonByCode(error) ??
    shown(messageOf(error).split("\n")[0] ?? "").replace(/\.$/, "")
  );
}

/** The same of a file that was to be made: it is no fault that it was not there. */
export function whyNotWritten(error: unknown): string {
  return codeOf(error) === "ENOENT" ? "its folder is not there" : whyNot(error);
}

/** Undefined for a fault that the system gives no code that we know. */
export function reasonByCode(error: unknown): string | undefined {
  return BY_CODE[codeOf(error) ?? ""];
}

export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && "code" in error
    ? String(error.code)
    : undefined;
}

export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
