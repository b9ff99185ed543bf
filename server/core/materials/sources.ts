// Where the figures of the shipped materials and oils were read. "Seen": the text was read for this; all else is memory.

export const callister =
  "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., tables B.2, B.4, B.6 (seen)";
export const philpot =
  "Philpot, Mechanics of Materials, 2017, table D.1b (seen)";
export const cda =
  "Copper Development Association, as quoted on founders' data sheets (seen)";
export const b505 =
  "ASTM B505 minimum, continuous cast, 0.5 % under load, as quoted on founders' data sheets (seen)";
export const database = "MakeItFrom material property database (seen)";
export const mott =
  "Mott, Machine Elements in Mechanical Design, table 16-1, as quoted (seen)";
export const tribology =
  "The Tribology Handbook, table of rubbing bearing materials (seen)";
export const dataHandbook =
  "Mechanical Engineer's Data Handbook, sec. 2.9.3 (seen)";
export const plastics = "Engineering Plastics Handbook, table 5.5 (seen)";
export const gearTable =
  "Elements of Metric Gear Technology, table 18-10 (seen)";
export const founder = "a bronze founder's table of loads and speeds (seen)";
export const guide = "a bronze founder's bearing design guide, ch. 4 (seen)";
export const steelSheet = "a steel data sheet, figures typical of steel (seen)";
export const barSheet = "stockholders' sheets of the grade (seen)";
export const alloyPage =
  "Copper Development Association, page of the alloy (seen)";
export const materialsLibrary =
  "an online materials library's sheet of the grade (seen)";
export const memory = "typical, from memory";
export const practice = "common practice, no source";
