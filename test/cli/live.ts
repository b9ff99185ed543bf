// What a run of the bundled command holds: a script that is required before it.

/** Says on standard error, as the last record is written, what is in use once all that is let go of is collected. */
export const LIVE = `
const { stdout } = process;
const write = stdout.write.bind(stdout);
let left = Number(process.env.THOU_RECORDS);
stdout.write = (text, ...more) => {
  if (text.startsWith('{"file"') && --left === 0) {
    gc();
    gc();
    const { heapUsed, external } = process.memoryUsage();
    process.stderr.write(String(heapUsed + external));
  }
  return write(text, ...more);
};`;
