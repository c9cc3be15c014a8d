/** Pure hydraulics in SI units. Nothing here knows the clock, the screen or the file system. */
export * from "./energy/index.ts";
export * from "./losses/index.ts";
export * from "./network/index.ts";
export * from "./overflow/index.ts";
export * from "./pumps/index.ts";
export * from "./transient/index.ts";
export * from "./water/index.ts";
