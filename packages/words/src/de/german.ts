import type { MessageKey } from "../en/english.ts";
import { desk } from "./desk.ts";

/** Every text in German. */
export const german: Record<MessageKey, string> = { ...desk };
