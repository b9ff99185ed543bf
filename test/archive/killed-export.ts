// An export that ends itself, as `kill -9` would, before its nth operation on the disk: bundled and run by killed.test.ts.
//   node killed-export.js FOLDER OUT N
import { createDisk } from "../../server/archive/disk.ts";
import { exportShop } from "./export-shop.ts";

const [, , cwd = "", out = "", number = ""] = process.argv;
let left = Number(number);
const disk = createDisk(() => {
  if (left === 0) process.kill(process.pid, "SIGKILL");
  left--;
});
await exportShop(cwd, out, disk);
