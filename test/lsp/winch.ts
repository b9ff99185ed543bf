// A small job and its crib, for tests of the server. Invented.

export const CRIB = `shop harbour
  units inch

gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00004

gauge bore-1
  kind bore-gauge
  resolution 0.00001
  uncertainty 0.00005
  set with mic-1

reamer r-8755
  size 0.8755
  oversize bronze-c932 +0.0001 to +0.0002
  drive hand
`;

export const JOB = `job winch-layshaft
  units inch
  use "crib.thou"
  opened 2026-11-02 by AK

part layshaft
  material steel-4140

part case
  material aluminium-356-t6

journal front on layshaft
  limits 0.8740 to 0.8745
  read near 0.87432 0.87428 0.87430 with mic-1 at 68 F

hole front in case
  limits 1.0000 to 1.0005
  read 1.00021 1.00018 with bore-1 at 68 F

bush front in hole front
  material bronze-c932
  id 0.8715 to 0.8720

bore front in bush front

fit front of journal front in bore front
  want 0.0008 to 0.0016

line layshaft
  bore front from 0 to 1.25
  ream with r-8755

step ream
  cuts line layshaft
  checks fit front
`;
