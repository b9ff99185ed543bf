// Made from thou.ohm by npm run generate: do not edit.
export const examples: Readonly<Record<string, readonly string[]>> = {
  "JobEntry": [
    "job winch-layshaft"
  ],
  "ShopEntry": [
    "shop harbour"
  ],
  "PartEntry": [
    "part layshaft"
  ],
  "JournalEntry": [
    "journal front on layshaft",
    "journal front on part layshaft"
  ],
  "HoleEntry": [
    "hole front in case"
  ],
  "BushEntry": [
    "bush front in hole front"
  ],
  "BoreEntry": [
    "bore front in bush front",
    "bore front in part case"
  ],
  "PressEntry": [
    "press front of bush front in hole front"
  ],
  "FitEntry": [
    "fit front of journal front in bore front",
    "fit front of front in front"
  ],
  "LineEntry": [
    "line layshaft"
  ],
  "StackEntry": [
    "stack end-float"
  ],
  "StepEntry": [
    "step ream"
  ],
  "ConcessionEntry": [
    "concession front-loose"
  ],
  "ReamerEntry": [
    "reamer r-8755"
  ],
  "PilotEntry": [
    "pilot p-870"
  ],
  "GaugeEntry": [
    "gauge mic-1"
  ],
  "MaterialEntry": [
    "material bronze-local"
  ],
  "OilEntry": [
    "oil winch-oil"
  ],
  "RouteEntry": [
    "route line-ream"
  ],
  "LessonEntry": [
    "lesson r-8755-in-bronze"
  ],
  "NoteFact": [
    "note \"dressed the face, 12\" long\""
  ],
  "MaterialFact": [
    "material steel-4140"
  ],
  "LimitsFact": [
    "limits 0.8740 to 0.8745 from \"yard drawing L-204\"",
    "limits 0.8745 +0 -0.0005",
    "limits 0.8745 +0.01/-0.00",
    "limits 0.8742 +/- 0.0003",
    "limits 1.1875 ± 3 tenths",
    "limits 25 mm H7",
    "limits 0.875 in RC4",
    "limits 7/8 to 1 3/16",
    "limits 1-3/16 to 1-1/4 in",
    "limits 24.959-24.980"
  ],
  "NominalFact": [
    "nominal 0.875",
    "nominal 1 3/16",
    "nominal 25 mm"
  ],
  "ServiceLimitFact": [
    "service-limit 0.8735 from \"maker's manual p. 41\""
  ],
  "LengthFact": [
    "length 1.250",
    "length 1-3/16"
  ],
  "FinishFact": [
    "finish 16 uin Ra",
    "finish Rz 1.6 um"
  ],
  "RoundFact": [
    "round 0.0002"
  ],
  "TaperFact": [
    "taper 0.0003"
  ],
  "JointFact": [
    "joint gasket 0.004",
    "joint bare"
  ],
  "BoltsFact": [
    "bolts 18 lbf-ft"
  ],
  "DowelsFact": [
    "dowels 2"
  ],
  "ReadFact": [
    "read near 0.87432 0.87428 0.87430 with mic-1 at 68 F",
    "read 1.00021 1.00018 in with bore-1 as pressed by AK on 2026-11-05",
    "read mid 25.40 25.41 mm station 12 with gauge mic-1",
    "read near 0.87510 with mic-1 at 104 F, gauge 68 F"
  ],
  "RepeatFact": [
    "repeat near 0.87432 0.87431 0.87432 with mic-1"
  ],
  "SwingFact": [
    "swing 0.0006 on vee 60 deg, 3 lobes",
    "swing near 0.0006 on vee 60 deg, 3 lobes with dti-1 by AK on 2026-11-02",
    "swing 4 um on vee 90 deg between, 5 lobes as run",
    "swing 0.0004 on three points, 3 lobes"
  ],
  "BoreSwingFact": [
    "swing 0.0004 on three points, 3 lobes",
    "swing far 0.008 mm on three points, 9 lobes with air-1"
  ],
  "BushReadFact": [
    "read od 1.00112 1.00114 with mic-2"
  ],
  "StackReadFact": [
    "read spacer 0.2501 with mic-1"
  ],
  "TitleFact": [
    "title \"Mooring winch 3\""
  ],
  "UnitsFact": [
    "units inch"
  ],
  "UseFact": [
    "use \"crib.thou\""
  ],
  "OpenedFact": [
    "opened 2026-11-02 by AK",
    "opened by AK on 2026-11-02"
  ],
  "HoursFact": [
    "hours 12400 h",
    "hours 12400.5 h on 2026-11-02"
  ],
  "TemperatureFact": [
    "temperature 68 F"
  ],
  "VerdictFact": [
    "verdict guarded"
  ],
  "FollowFact": [
    "follow line-ream"
  ],
  "WarnFact": [
    "warn stock-thin at 0.003",
    "warn out-of-round at 40 %"
  ],
  "SerialFact": [
    "serial W3-1187"
  ],
  "SplitFact": [
    "split across"
  ],
  "RunoutFact": [
    "runout 0.0003"
  ],
  "FilletFact": [
    "fillet 0.030"
  ],
  "ReachesFact": [
    "reaches 1.150"
  ],
  "BossFact": [
    "boss 1.750"
  ],
  "DepthFact": [
    "depth 1.350 blind",
    "depth through"
  ],
  "VentedFact": [
    "vented"
  ],
  "OdFact": [
    "od 1.0011 to 1.0012"
  ],
  "IdFact": [
    "id 0.8715 to 0.8720"
  ],
  "ConstructionFact": [
    "construction solid"
  ],
  "LotFact": [
    "lot K3-1187",
    "lot \"47, second box\""
  ],
  "GrooveFact": [
    "groove lengthwise"
  ],
  "OilHoleFact": [
    "oil-hole at 90 deg"
  ],
  "HeldFact": [
    "held by \"peg\""
  ],
  "WantFact": [
    "want 0.6 to 1.2 thou",
    "want 25 mm H7/f7"
  ],
  "FrictionFact": [
    "friction 0.05 to 0.15"
  ],
  "SmoothingFact": [
    "smoothing 0.0001"
  ],
  "WantHotFact": [
    "want-hot 0.0004 to 0.0020"
  ],
  "RunsFact": [
    "runs 240 rpm"
  ],
  "OscillatesFact": [
    "oscillates 30 deg, 20 per min"
  ],
  "LoadFact": [
    "load 180 lbf steady"
  ],
  "OilFact": [
    "oil sae-30 at 120 F"
  ],
  "FeedFact": [
    "feed splash",
    "feed pressure 30 psi"
  ],
  "CooledFact": [
    "cooled case 150 sq-in, air 70 F",
    "cooled case, air 20 C"
  ],
  "HotFact": [
    "hot shaft 140 F, bush 135 F, case 130 F"
  ],
  "ColdFact": [
    "cold shaft -10 F, case -10 F"
  ],
  "LineBoreFact": [
    "bore rear from 5.50 to 6.75",
    "bore front from 0 to 1.25 centre 0, 0.0002 to 0.0001, 0.0003"
  ],
  "ReamFact": [
    "ream with r-8755"
  ],
  "CutFact": [
    "cut to 0.8752 to 0.8757"
  ],
  "LinePilotFact": [
    "pilot p-870 in bore front for bore rear"
  ],
  "CutTemperatureFact": [
    "temperature part 75 F, tool 80 F"
  ],
  "SpeedFact": [
    "speed 15 ft/min"
  ],
  "PlusFact": [
    "plus case-width 6.000 to 6.002 of case"
  ],
  "MinusFact": [
    "minus spacer 0.250"
  ],
  "ShimsFact": [
    "shims 0.1, 0.2, 0.5 mm"
  ],
  "AfterFact": [
    "after press-in, bolt-up"
  ],
  "DoFact": [
    "do \"Bolt the halves as for service\""
  ],
  "CutsFact": [
    "cuts line layshaft"
  ],
  "PressesFact": [
    "presses press front, press rear"
  ],
  "ChecksFact": [
    "checks fit front, fit rear"
  ],
  "CautionFact": [
    "caution lead-and-beryllium, old-gaskets"
  ],
  "FoundFact": [
    "found passed \"turns freely, no tight spot\""
  ],
  "DoneFact": [
    "done 2026-11-05 by AK",
    "done by AK on 2026-11-05"
  ],
  "AllowsFact": [
    "allows fit-loose on fit front"
  ],
  "UpToFact": [
    "up to 0.0018"
  ],
  "WhyFact": [
    "why \"spare is six weeks off\" by \"A. Keel\" on 2026-11-06"
  ],
  "SizeFact": [
    "size 0.8755",
    "size 7/8",
    "size 25 mm H7",
    "size no 7",
    "size letter F"
  ],
  "OversizeFact": [
    "oversize bronze-c932 +0.0002 to +0.0004",
    "oversize +0.0002"
  ],
  "DriveFact": [
    "drive hand"
  ],
  "ReamerMaterialFact": [
    "material hss"
  ],
  "ChamferFact": [
    "chamfer 0.060"
  ],
  "PointFact": [
    "point 0.020"
  ],
  "FlutesFact": [
    "flutes 6 straight"
  ],
  "StockFact": [
    "stock 0.004 to 0.012"
  ],
  "ExpandsFact": [
    "expands 0.860 to 0.900"
  ],
  "KindFact": [
    "kind bore-gauge"
  ],
  "ResolutionFact": [
    "resolution 0.0001"
  ],
  "UncertaintyFact": [
    "uncertainty 0.00008"
  ],
  "MpeFact": [
    "mpe 0.0001"
  ],
  "AddsFact": [
    "adds -0.0001"
  ],
  "SetFact": [
    "set on ring 0.8750",
    "set with mic-1"
  ],
  "CalibratedFact": [
    "calibrated 2026-05-14"
  ],
  "DueFact": [
    "due 2027-05-14"
  ],
  "ExpansionFact": [
    "expansion 18.0 um/m-K"
  ],
  "ModulusFact": [
    "modulus 14.5e6 psi"
  ],
  "PoissonFact": [
    "poisson 0.34"
  ],
  "YieldFact": [
    "yield 18 ksi"
  ],
  "SpecificLoadFact": [
    "specific-load 4000 psi"
  ],
  "MaterialSpeedFact": [
    "speed 750 ft/min"
  ],
  "PvFact": [
    "pv 75000 psi-ft/min"
  ],
  "GradeFact": [
    "grade ISO VG 46",
    "grade SAE 30",
    "grade SAE 10W-30"
  ],
  "ViscosityFact": [
    "viscosity 46 cSt at 40 C, 6.8 cSt at 100 C"
  ],
  "DensityFact": [
    "density 0.87 g/cm3"
  ],
  "LessonReamerFact": [
    "reamer r-8755 in bronze-c932"
  ],
  "LessonOversizeFact": [
    "oversize mean 0.31 thou spread 0.08 thou from 9",
    "oversize mean -4 um spread 1 um from 3"
  ],
  "LessonBushFact": [
    "bush bronze-c932 solid 1.001 in by 0.872 in",
    "bush bronze-c932 wrapped 28 by 25 lot K3-1187"
  ],
  "LessonClosesFact": [
    "closes 0.93 spread 0.04 from 7"
  ],
  "LessonGaugeFact": [
    "gauge mic-1 against bore-1"
  ],
  "LessonReadsFact": [
    "reads +0.05 thou spread 0.04 thou from 12"
  ],
  "BetweenFact": [
    "between 2019-03-04 and 2026-11-05"
  ],
  "RouteStepFact": [
    "step mark"
  ]
};
