// What the facts of the language say, as typed values in SI. How they are read off a line is quantities.ts and facts.ts; what
// follows from them is the evaluation's.
import type { Dimension } from "../core/quantity/units.ts";
import type { RoundnessMethod } from "../core/readings/lobing.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";

/** A span within a block: the line from the block's first, the columns within the line. */
export interface Span {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** A length in m with the step of its last written digit in m, where it was written as a decimal. */
export interface Length {
  readonly value: number;
  readonly step: number | undefined;
}

export interface LengthRange {
  readonly low: number;
  readonly high: number;
  readonly step: number | undefined;
  /** The class it was written as, e.g. "H7" or "RC4". */
  readonly className: string | undefined;
}

export interface SourcedRange extends LengthRange {
  readonly source: string | undefined;
}

export interface NumberRange {
  readonly low: number;
  readonly high: number;
}

/** A number whose dimension the reader can't know yet: a threshold of a finding, the bound of a concession. */
export interface AnyQuantity {
  /** In SI where it has a unit, else as written. */
  readonly value: number;
  readonly dimension: Dimension | undefined;
  /** What it would be as a length in the file's unit, in m; undefined where a unit is written or the file has none. */
  readonly asLength: number | undefined;
}

/** A place in the text that names an entry. */
export interface RefSite {
  readonly span: Span;
  /** The name alone. */
  readonly nameSpan: Span;
  readonly kind: EntryKind | undefined;
  readonly name: string;
  /** Kinds that the place takes. */
  readonly takes: readonly EntryKind[];
}

export interface Signature {
  readonly who: string | undefined;
  /** ISO 8601, a day that exists. */
  readonly date: string | undefined;
}

export type Stage = "bought" | "pressed" | "roughed" | "finished" | "run";

export interface Reading {
  readonly place: string | undefined;
  /** Diameters in m, as written, before any correction. */
  readonly values: readonly Length[];
  readonly valueSpans: readonly Span[];
  readonly station: number | undefined;
  readonly gauge: RefSite | undefined;
  /** Of what is read, °C, with the step of its last written digit in K */
  readonly temperature:
    { readonly value: number; readonly step: number } | undefined;
  /** Of the gauge, where it is another; only beside the temperature of what is read. */
  readonly gaugeTemperature: Reading["temperature"];
  readonly stage: Stage | undefined;
  readonly signature: Signature;
}

/** How far a pointer went in one turn of a lobed form. */
export interface Swing {
  readonly place: string | undefined;
  readonly swing: Length;
  readonly swingSpan: Span;
  readonly method: RoundnessMethod;
  readonly lobes: number;
  /** How it was turned, and the lobes: `vee 60 deg, 3 lobes`. */
  readonly methodSpan: Span;
  readonly gauge: RefSite | undefined;
  readonly stage: Stage | undefined;
  readonly signature: Signature;
}

export interface Bodies {
  /** °C; a bush that is not written is as its case. */
  readonly shaft: number | undefined;
  readonly bush: number | undefined;
  readonly case: number | undefined;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The value of a fact, by the rule of thou.ohm that reads it. */
export interface FactValues {
  readonly NoteFact: string;
  readonly TitleFact: string;
  readonly UnitsFact: "inch" | "mm";
  readonly UseFact: readonly { readonly path: string; readonly span: Span }[];
  readonly OpenedFact: Signature;
  readonly HoursFact: {
    /** s */
    readonly meter: number;
    /** ISO 8601; undefined for the day that the job was opened. */
    readonly date: string | undefined;
  };
  readonly TemperatureFact: number;
  readonly VerdictFact: "simple" | "guarded";
  readonly FollowFact: RefSite;
  readonly WarnFact: {
    readonly code: string;
    readonly codeSpan: Span;
    readonly at: AnyQuantity;
  };
  readonly MaterialFact: RefSite;
  readonly SerialFact: string;
  readonly SplitFact: "along" | "across";
  /** Thickness of the gasket in m; 0 for a bare joint. */
  readonly JointFact: number;
  /** N·m */
  readonly BoltsFact: NumberRange;
  readonly DowelsFact: number;
  readonly LimitsFact: SourcedRange;
  readonly NominalFact: Length;
  readonly ServiceLimitFact: SourcedRange;
  readonly LengthFact: LengthRange;
  readonly ReadFact: Reading;
  readonly RepeatFact: Reading;
  readonly BushReadFact: Reading & { readonly side: "od" | "id" };
  readonly StackReadFact: Reading & { readonly member: string };
  readonly SwingFact: Swing;
  readonly BoreSwingFact: Swing;
  readonly FinishFact: {
    readonly value: number;
    readonly parameter: "Ra" | "Rz";
  };
  readonly RunoutFact: Length;
  readonly FilletFact: Length;
  readonly ReachesFact: Length;
  readonly RoundFact: Length;
  readonly TaperFact: Length;
  readonly BossFact: Length;
  readonly DepthFact: {
    readonly depth: Length | undefined;
    readonly bottom: "blind" | "through";
  };
  readonly VentedFact: true;
  readonly OdFact: LengthRange;
  readonly IdFact: LengthRange;
  readonly ConstructionFact: "solid" | "wrapped" | "porous" | "lined";
  readonly LotFact: string;
  readonly GrooveFact: "round" | "lengthwise";
  /** rad */
  readonly OilHoleFact: number;
  readonly HeldFact: string;
  readonly WantFact: LengthRange;
  readonly WantHotFact: LengthRange;
  readonly FrictionFact: NumberRange;
  readonly SmoothingFact: Length;
  /** turns a second */
  readonly RunsFact: number;
  /** rad end to end, full cycles a second */
  readonly OscillatesFact: {
    readonly angle: number;
    readonly frequency: number;
  };
  /** N */
  readonly LoadFact: {
    readonly force: number;
    readonly loading: "steady" | "reversing" | "shock" | undefined;
  };
  readonly OilFact: { readonly oil: RefSite; readonly temperature: number };
  readonly FeedFact: {
    readonly feed: "splash" | "drip" | "grease" | "pressure";
    readonly pressure: number | undefined;
  };
  /** m², undefined where none is written; °C */
  readonly CooledFact: {
    readonly area: number | undefined;
    readonly air: number;
  };
  readonly HotFact: Bodies;
  readonly ColdFact: Bodies;
  readonly LineBoreFact: {
    readonly bore: RefSite;
    readonly from: number;
    readonly to: number;
    readonly centres: readonly Point[];
  };
  readonly ReamFact: RefSite;
  readonly CutFact: LengthRange;
  readonly LinePilotFact: {
    readonly pilot: RefSite;
    readonly in: RefSite;
    readonly for: RefSite;
  };
  readonly CutTemperatureFact: {
    readonly part: number | undefined;
    readonly tool: number | undefined;
  };
  /** m/s, or turns a second */
  readonly SpeedFact: { readonly speed: number } | { readonly turns: number };
  readonly PlusFact: MemberValue;
  readonly MinusFact: MemberValue;
  readonly ShimsFact: readonly number[];
  readonly AfterFact: readonly RefSite[];
  readonly DoFact: string;
  readonly CutsFact: readonly RefSite[];
  readonly PressesFact: readonly RefSite[];
  readonly ChecksFact: readonly RefSite[];
  readonly CautionFact: readonly {
    readonly name: string;
    readonly span: Span;
  }[];
  readonly FoundFact: {
    readonly outcome: "passed" | "failed";
    readonly text: string | undefined;
  };
  readonly DoneFact: Signature;
  readonly AllowsFact: {
    readonly code: string;
    readonly codeSpan: Span;
    readonly on: RefSite;
  };
  readonly UpToFact: AnyQuantity;
  readonly WhyFact: { readonly text: string; readonly signature: Signature };
  readonly SizeFact: {
    readonly range: LengthRange;
    readonly named: string | undefined;
  };
  readonly OversizeFact: {
    readonly material: RefSite | undefined;
    readonly range: LengthRange;
  };
  readonly DriveFact: "hand" | "machine";
  readonly ReamerMaterialFact: "hss" | "carbide";
  readonly ChamferFact: Length;
  readonly PointFact: Length;
  readonly FlutesFact: {
    readonly count: number;
    readonly hand: "straight" | "left" | "right";
  };
  readonly StockFact: LengthRange;
  readonly ExpandsFact: LengthRange;
  readonly KindFact: string;
  readonly ResolutionFact: Length;
  readonly UncertaintyFact: Length;
  readonly MpeFact: Length;
  readonly AddsFact: Length;
  readonly SetFact: { readonly ring: number } | { readonly with: RefSite };
  readonly CalibratedFact: Signature;
  readonly DueFact: Signature;
  /** 1/K */
  readonly ExpansionFact: number;
  /** Pa */
  readonly ModulusFact: number;
  readonly PoissonFact: number;
  /** Pa */
  readonly YieldFact: number;
  readonly SpecificLoadFact: number;
  /** m/s */
  readonly MaterialSpeedFact: number;
  /** Pa·m/s */
  readonly PvFact: number;
  readonly GradeFact: {
    readonly system: "ISO VG" | "SAE";
    readonly grade: string;
  };
  /** kinematic in m²/s or dynamic in Pa·s, at °C */
  readonly ViscosityFact: readonly {
    readonly value: number;
    readonly dynamic: boolean;
    readonly temperature: number;
  }[];
  /** kg/m³ */
  readonly DensityFact: number;
  readonly LessonReamerFact: {
    readonly reamer: RefSite;
    readonly material: RefSite;
  };
  readonly LessonOversizeFact: Learned;
  readonly LessonBushFact: {
    readonly material: RefSite;
    readonly construction: FactValues["ConstructionFact"];
    readonly od: number;
    readonly id: number;
    readonly lot: string | undefined;
  };
  readonly LessonClosesFact: Learned;
  readonly LessonGaugeFact: {
    readonly gauge: RefSite;
    readonly against: RefSite;
  };
  readonly LessonReadsFact: Learned;
  readonly BetweenFact: { readonly first: string; readonly last: string };
  readonly RouteStepFact: { readonly name: string; readonly span: Span };
}

/** What a lesson says of a quantity: m, or a share where it has no unit. */
export interface Learned {
  readonly mean: number;
  /** Standard deviation of one; undefined where a single one taught it. */
  readonly spread: number | undefined;
  readonly count: number;
  /** The last written digit of the mean. */
  readonly step: number | undefined;
}

export interface MemberValue {
  readonly name: string;
  readonly range: LengthRange;
  readonly part: RefSite | undefined;
}

export type FactRule = keyof FactValues;
