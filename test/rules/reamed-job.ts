// The beginning of a job whose lines are reamed, and the crib with the reamer of it, for tests of what is said of lines and of what cuts them.

export const HEAD = `job winch
  units inch
  use "crib.thou"
part shaft
part case
  material iron-grey
`;

/** @param text what else the crib has */
export const crib = (text: string): Readonly<Record<string, string>> => ({
  "crib.thou": `shop harbour
  units inch
reamer r-8755
  size 0.8755
  oversize +0.0000 to +0.0000
  drive hand
${text}`,
});
