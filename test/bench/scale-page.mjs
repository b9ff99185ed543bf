// The words of docs/scale.md around what archive.mjs measured. Whatever is said of a figure here is worked out from the rows.

const number = (value, digits = 0) =>
  value.toLocaleString("en-GB", {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });

/** Bytes for each record more, between the fewest and the most. */
const bytesMore = (held, of) => {
  const [few, many] = [held[0], held.at(-1)];
  return (of(many) - of(few)) / (many.records - few.records);
};

/** @param rows as archive.json has them @param held as held.json has them */
export function scalePage(rows, held) {
  const of = (records, what) =>
    rows.find((row) => row.records === records && row.what === what);
  const sizes = [...new Set(rows.map(({ records }) => records))];
  const perRecord = (what) =>
    sizes.flatMap((records) => {
      const row = of(records, what);
      return row === undefined ? [] : [(1000 * row.processor) / records];
    });
  const range = (values, digits) => {
    const [low, high] = [Math.min(...values), Math.max(...values)].map((each) =>
      number(each, digits),
    );
    return low === high ? low : `${low} to ${high}`;
  };
  /** MB of the runs whose name begins so, from 3,000 records on. */
  const memory = (what) =>
    rows
      .filter((row) => row.what.startsWith(what) && 3000 <= row.records)
      .map(({ megabytes }) => megabytes);
  const loads = rows.map(({ load }) => load);
  const cores = rows.map((row) => row.cores);
  const extra = sizes.flatMap((records) => {
    const one = of(records, "from nothing, 1 thread");
    const two = of(records, "from nothing, 2 threads");
    return one === undefined || two === undefined
      ? []
      : [two.processor / one.processor];
  });
  /** What a hundred that have changed cost more than none; of many more records that is less than two runs differ by. */
  const more = sizes
    .filter((records) => records <= 10_000)
    .flatMap((records) => {
      const none = of(records, "none changed");
      const hundred = of(records, "100 changed");
      return none === undefined || hundred === undefined
        ? []
        : [hundred.processor - none.processor];
    });

  return `# What many records cost

Back to [the archive](archive.md). Made by \`node test/bench/archive.mjs --write\` from what it measured, which is kept in \`test/bench/archive.json\`.

![Two charts over the number of records: the time of the processors goes up in proportion, the largest memory goes up far less than in proportion](pictures/scale.svg)

A check from nothing costs ${range(perRecord("from nothing, 1 thread"), 1)} ms of a processor for each record, however many there are. Where answers are kept
(\`thou check --cache FOLDER\`), a record that has not changed costs ${range(perRecord("none changed"), 1)} ms: it is read, its hash is taken, and its answer is read
and written out. A hundred records that have changed come to ${range(more, 1)} s more; at 100,000 records that is less than two runs differ by. So the cost goes with what has changed, and with
a small part of what is there.

The largest memory from 3,000 records on is ${range(memory("from nothing, 1 thread"))} MB with one thread, up to ${number(sizes.at(-1))} records, and ${range(memory("from nothing, 2 threads"))} MB with two, of which each has a
shop of its own. The runs of 100,000 were measured when a file that
waits for its turn was held with its path; only its name is now.

What is truly held is what is in use once all that was let go of is collected: as the last of so many records of two lines is written, with one
thread, ${number(bytesMore(held, ({ heap, beside }) => heap + beside))} bytes for each record more. They are its name and four bytes that say where it begins.

| records | heap, MB | beside the heap, MB | largest resident set, MB |
| ---: | ---: | ---: | ---: |
${held
  .map(
    ({ records, heap, beside, most }) =>
      `| ${number(records)} | ${number(heap / 1e6, 2)} | ${number(beside / 1e6, 2)} | ${number(most)} |`,
  )
  .join("\n")}

A file that others use costs more: its path and its hash, once in each thread.

## The figures

| records | what | processors, s | wall, s | memory, MB | load |
| ---: | --- | ---: | ---: | ---: | ---: |
${rows
  .map(
    ({ records, what, processor, seconds, megabytes, load }) =>
      `| ${number(records)} | ${what} | ${number(processor, 1)} | ${number(seconds, 1)} | ${number(megabytes)} | ${number(load)} |`,
  )
  .join("\n")}

- The records are those of the made-up harbour of the tests: about 3 kB each, some 50 kB of JSON to write for each, a crib for every 60.
- Each line is one run of the command as it is bundled, as a process of its own, to JSON that goes nowhere. Runs with kept answers have two threads. The
  records are changed before the clock starts.
- **The machine** had ${range(cores)} cores, shared with other work where the load beside a line is over 3: how many processes wanted a core, ours among them, over the last five
  minutes. There the time of the wall is what it can be at worst and says little; the time of the processors is what the run itself used, and is a little
  higher than on a quiet machine. Each was measured once.
- Memory is the largest resident set that the system saw of the process with all its threads.

## What it rests on

- **Threads.** \`--jobs\` says how many; what is written is the same to the byte whatever their number. A second thread costs ${range(
    extra.map((each) => (each - 1) * 100),
  )} % more time of the processors in all: each warms
  up by itself and holds a shop of its own. On a machine with free cores the wall's time goes down by the rest; on a full one, \`--jobs 1\` is the cheaper. At 2,000
  records, on a shared machine, the mean of two runs each: 10.7 s of the processors with one thread and 14.3 s with two; with \`--brief\`, where next to nothing is
  handed over, 10.8 and 13.4 s. So a quarter or so of what a thread costs is the handing over; the rest, which was not told apart further, is what each compiles
  and reads for itself, and what the two take of one another's memory.
- **Memory.** A record is let go once it is written. Of the files that records use, 64 are held; past that, all but those of the last record are let go. A thread
  runs a few batches of 16 records ahead of what is written, and hands over what is written, not what it was worked out from. SARIF, whose
  rules stand before its results, is written at the end: until then what is past the first megabyte lies in a temporary file that no one else can open.
- **Kept answers.** The folder holds one answer for each path that was ever checked, some 6 kB for the records above and at most 32 MB, and the next answer takes its place. It
  can be removed at any time. An answer is taken only where the tool, the record and every file that the record uses, however far, are what they
  were, byte for byte; one that is damaged is worked out anew. THOU_CACHE names a folder for every check.
- **What was tried and brought nothing**, at 2,000 records with two threads, 15.6 s of the processors: a young generation of 16, 48 or 96 MB for each thread (15.3, 15.8
  and 15.9 s), collecting garbage by one thread alone (14.7 s), files read without others being served meanwhile (14.5 to 15.7 s).
- **What was tried and stayed**: leaving out the names of functions from the bundle, which had each set as it was made, took a check with one thread from 12.1 to 10.3 s.
- **An export** works out again only what has changed, and has one thread; what it holds is in [the archive](archive.md#memory).
`;
}
