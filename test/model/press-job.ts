// One bush pressed into one hole, with the fit that runs in it, hot and cold: in inches, and the same in millimetres.

export const INCH = `
job winch-9
  units inch
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on layshaft
  read 0.8699 0.8700 at 68 F
hole front in case
  boss 1.750
  finish 63 uin Rz
  read 1.0002 1.0003 at 68 F
bush front in hole front
  material bronze-c932
  read od 1.0011 1.0012 at 68 F
  read id 0.8720 0.8721 at 68 F
  finish 32 uin Rz
  length 1.250
bore front in bush front
press front of bush front in hole front
  want 0.6 to 1.2 thou
  friction 0.08 to 0.12
fit front of journal front in bore front
  load 180 lbf
  hot shaft 140 F, bush 131 F, case 122 F
  hot shaft 212 F, case 176 F
  cold shaft -4 F, case -4 F
`;

export const METRIC = `
job winch-9
  units mm
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on layshaft
  read 22.09546 22.098 at 20 C
hole front in case
  boss 44.45
  finish 1.6002 um Rz
  read 25.40508 25.40762 at 20 C
bush front in hole front
  material bronze-c932
  read od 25.42794 25.43048 at 20 C
  read id 22.1488 22.15134 at 20 C
  finish 0.8128 um Rz
  length 31.75
bore front in bush front
press front of bush front in hole front
  want 0.01524 to 0.03048
  friction 0.08 to 0.12
fit front of journal front in bore front
  load 800.679890722449 N
  hot shaft 60 C, bush 55 C, case 50 C
  hot shaft 100 C, case 80 C
  cold shaft -20 C, case -20 C
`;
