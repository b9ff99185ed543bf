// How often the server may stop by itself: a crash now and then is mended by starting again, one after another is not.
const BORNE = 3;
const COUNTED = 3 * 60_000; // milliseconds

export interface Crash {
  /** The server is to be started again. */
  readonly isBorne: boolean;
  /** What is said of it: to the log where it is borne, else to the person. */
  readonly sentence: string;
}

export interface Crashes {
  /** The server has stopped just now. */
  happened(): Crash;
  /** Those so far count no longer. */
  forgive(): void;
}

export function createCrashes(): Crashes {
  let times: readonly number[] = [];
  return {
    happened() {
      const now = Date.now();
      times = [...times.filter((at) => now - COUNTED < at), now];
      const isBorne = times.length <= BORNE;
      return {
        isBorne,
        sentence: isBorne
          ? `The server stopped by itself and is started again. It may do so ${BORNE} times within three minutes; this was number ${times.length}.`
          : `The Thou server stopped ${times.length} times within three minutes and was not started again, so findings and clearances are out of date or missing. The log says why.`,
      };
    },
    forgive() {
      times = [];
    },
  };
}
