import type { Words } from "@tidewright/words";
import { type Maker, withMaker } from "../state/maker.ts";
import type { AnothersItem } from "./anothersWork.ts";

/** Everybody who has a part in what waits, each once. */
export function allMakers(items: readonly AnothersItem[]): readonly Maker[] {
  return items.flatMap(({ makers }) => makers).reduce<readonly Maker[]>(withMaker, []);
}

/** Returns what a piece of waiting work belongs to: the job, or the record it was typed into. */
export function itemName(item: AnothersItem, { say }: Words): string {
  if (item.kind === "design") return item.surroundings.job?.name ?? item.surroundings.head.name;
  const { name } = item.base;
  return item.record === "settings" || typeof name !== "string" ? say("keeping.anothersSettings") : name;
}
