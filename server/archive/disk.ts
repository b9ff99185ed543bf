// What an export does to the disk, one operation at a time, each of which a test can make fail or end the process at. What is written is on
// the disk, not only on its way there, before anything that rests on it is done.
import {
  appendFile,
  copyFile,
  link,
  open,
  rename,
  rm,
  symlink,
} from "node:fs/promises";
import { makeFolder } from "../make-folder.ts";
import { codeOf } from "../why-not.ts";

export type Operation =
  | "folder"
  | "append"
  | "write"
  | "copy"
  | "sync"
  | "rename"
  | "link"
  | "point"
  | "remove";

export interface Disk {
  /** Called before each operation, those of the engine among them (`copy`). What it throws is what the disk says. */
  before(operation: Operation, path: string): void;
  makeFolder(path: string): Promise<void>;
  /** For what is an export's own: it need not be on the disk when the machine stops. */
  append(path: string, text: string): Promise<void>;
  write(path: string, text: string): Promise<void>;
  /** Waits until a file or a folder that others wrote is on the disk. */
  sync(path: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  /** The same file under a second name; a copy of it where the disk has no such thing. */
  share(from: string, to: string): Promise<void>;
  /** A link to a folder beside it. */
  point(target: string, at: string): Promise<void>;
  remove(path: string): Promise<void>;
}

export function createDisk(before: Disk["before"] = () => undefined): Disk {
  return {
    before,
    async makeFolder(path) {
      before("folder", path);
      await makeFolder(path);
    },
    async append(path, text) {
      before("append", path);
      await appendFile(path, text);
    },
    async write(path, text) {
      before("write", path);
      const file = await open(path, "w");
      try {
        await file.writeFile(text);
        await file.sync();
      } finally {
        await file.close();
      }
    },
    async sync(path) {
      before("sync", path);
      try {
        const file = await open(path, "r");
        try {
          await file.sync();
        } finally {
          await file.close();
        }
      } catch (error) {
        // some systems do not let a folder, or what is open to read only, be synced
        if (
          !["EISDIR", "EPERM", "EINVAL", "EACCES"].includes(codeOf(error) ?? "")
        )
          throw error;
      }
    },
    async rename(from, to) {
      before("rename", to);
      await rename(from, to);
    },
    async share(from, to) {
      before("link", to);
      try {
        await link(from, to);
      } catch (error) {
        if (
          ![
            "EPERM",
            "ENOTSUP",
            "ENOSYS",
            "EMLINK",
            "EOPNOTSUPP",
            "EXDEV",
          ].includes(codeOf(error) ?? "")
        )
          throw error;
        await copyFile(from, to);
      }
    },
    async point(target, at) {
      before("point", at);
      await symlink(target, at, "dir");
    },
    async remove(path) {
      before("remove", path);
      await rm(path, { recursive: true, force: true });
    },
  };
}
