// A worker of a browser inside a worker of Node, as far as the server's bundle may use one: messages, its address, its end. What only Node
// has is taken away, and so is the making of code from text, so that a bundle that needs either fails here.
import { pathToFileURL } from "node:url";
import { parentPort, workerData } from "node:worker_threads";

const { exit } = process;
const refuse = () => {
  throw new EvalError("code is made from text");
};
Object.assign(globalThis, {
  self: globalThis,
  location: { href: pathToFileURL(workerData).href },
  postMessage: (message) => parentPort.postMessage(message),
  addEventListener: () => undefined,
  close: () => exit(0),
  eval: refuse,
  Function: new Proxy(Function, { apply: refuse, construct: refuse }),
});
for (const name of [
  "process",
  "Buffer",
  "global",
  "setImmediate",
  "clearImmediate",
])
  Object.defineProperty(globalThis, name, { value: undefined });
await import(globalThis.location.href);
// what came before waits until now, as it does in a browser
parentPort.on("message", (data) => globalThis.onmessage({ data }));
