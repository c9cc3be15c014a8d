/** One drain as it is planned; heights [m] above the display's floor. */
export interface DrainPlan {
  readonly name: string;
  readonly role: "main" | "secondary" | "emergency";
  readonly kind: "ventedStandpipe" | "throttledSiphon" | "openChannel" | "dryStandpipe";
  readonly series: string;
  readonly inlet: number;
  /** Rim wider than the pipe [m]. */
  readonly rim?: number;
  readonly share?: number;
}

/** An automatic top-off as it is planned: what the reservoir holds [m3], the flow [m3/s], and what the air takes a day [m3]. */
export interface TopOffPlan {
  readonly reservoir: number;
  readonly flow: number;
  readonly evaporationPerDay: number;
  /** The sump holds no more than this, should the top-off stick open. */
  readonly boundBySump: boolean;
  /** The running sump has room for all of it. */
  readonly fits: boolean;
}

/** Everything of a first design that is sized, SI; the document is written from it. */
export interface Plan {
  readonly weir: {
    readonly length: number;
    readonly crest: number;
    readonly toothHeight: number;
  };
  readonly box: { readonly length: number; readonly width: number };
  /** Siphon tubes of an overflow that hangs on the glass, and their bore [m]; absent where the glass is drilled. */
  readonly siphon?: { readonly tubes: number; readonly bore: number };
  readonly drains: readonly DrainPlan[];
  readonly sump: {
    readonly length: number;
    readonly width: number;
    readonly height: number;
    readonly operating: number;
  };
  /** Fresh water [m3] and its flow [m3/s]; absent where it is made good by hand. */
  readonly topOff?: TopOffPlan;
  readonly line: {
    readonly series: string;
    readonly nozzleDepth: number;
    readonly siphonBreak: number;
    /** Depth of the pump's intake below the surface of its chamber. */
    readonly intake: number;
  };
  /** Wish for the return in display volumes an hour, as the document has it. */
  readonly returnTurnover: readonly [number, number];
  readonly pump?: {
    readonly ref: string;
    readonly speed: number;
    readonly count: number;
    readonly controller: boolean;
    readonly placed: "inSump" | "external";
  };
  readonly placed: "inSump" | "external";
  readonly tankPumps: readonly { readonly ref: string; readonly speed: number }[];
  /** Watts on the stand's circuits besides the pumps, one entry for each circuit; the pumps hang on the first. */
  readonly otherLoads: readonly number[];
}
