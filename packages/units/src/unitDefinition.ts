import type { ConversionOptions, UnitInfo } from "./quantity.ts";

/** How many digits a value in a unit deserves. */
export interface DisplayRule {
  /** Significant digits; 3 when left out. */
  readonly significant?: number;
  /** No more decimals than this, however small the value. */
  readonly decimals?: number;
  /** Exactly this many decimals, trailing zeros kept (money). */
  readonly fixed?: number;
}

/** A unit with its conversion to and from the base unit of its dimension. */
export interface UnitDefinition extends UnitInfo {
  readonly toBase: (value: number, options: Required<ConversionOptions>) => number;
  readonly fromBase: (base: number, options: Required<ConversionOptions>) => number;
  readonly display: DisplayRule;
  /** Why a finite value cannot be meant, or undefined where it can. */
  readonly refuse?: (value: number) => string | undefined;
  /** True where another case means another size (MPa and mPa): then only the exact spelling is taken. */
  readonly caseSensitive?: boolean;
}

/** Everything of a unit that has a default. */
export interface UnitExtras {
  readonly aliases?: readonly string[];
  readonly label?: string;
  readonly display?: DisplayRule;
  readonly caseSensitive?: boolean;
}

const superscript: Readonly<Record<string, string>> = { "2": "²", "3": "³" };

/** "kg/m3" -> "kg/m³": a digit right after a letter is a power in every symbol used here. */
const printed = (symbol: string): string => symbol.replace(/(?<=[a-z])[23]/g, (digit) => superscript[digit] ?? digit);

/** A unit that is a fixed multiple of the base: base = value * times / over.
 *  Two numbers instead of one factor, so that 25 mm is 25 / 1000 rounded once, not 25 * (rounded 0.001). */
export function linearUnit(
  symbol: string,
  name: string,
  times: number,
  over: number,
  extras: UnitExtras = {},
): UnitDefinition {
  return {
    symbol,
    name,
    label: extras.label ?? printed(symbol),
    aliases: extras.aliases ?? [],
    display: extras.display ?? {},
    ...(extras.caseSensitive ? { caseSensitive: true } : {}),
    toBase: (value) => (value * times) / over,
    fromBase: (base) => (base * over) / times,
  };
}
