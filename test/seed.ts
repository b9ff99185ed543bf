// Run before every file of tests. What is drawn at random is drawn from one seed, so that a change goes in or not for what it does, never for
// luck; THOU_SEED gives another, a number or `random`, to look further by hand.
import fc from "fast-check";

const wanted = process.env.THOU_SEED ?? "20261101";
if (wanted !== "random") {
  if (!/^-?\d{1,10}$/u.test(wanted))
    throw new Error(
      `THOU_SEED is a whole number or \`random\`, not \`${wanted}\`.`,
    );
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wanted) });
}
