// A record of one end float, for tests of what rules say of it: a case less a spacer of 10 mm, where 0.10 to 0.20 mm is wanted.

/** @param plus the width of the case, as it is written */
export const endFloat = (plus: string): string => `job float
  units mm
stack output
  want 0.10 to 0.20
  plus case-width ${plus}
  minus spacer 10.00
`;
