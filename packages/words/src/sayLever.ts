import { levers } from "./en/levers.ts";
import { sayer } from "./sayer.ts";

/** Names of the texts that levers are labelled with. */
export type LeverKey = keyof typeof levers;

/** Says a lever's label in English, with none of the other texts at hand: levers are worked out in workers, which show nothing. */
export const sayLever = /* @__PURE__ */ sayer<LeverKey>("en", levers);
