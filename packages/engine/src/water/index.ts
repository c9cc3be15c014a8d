export * from "./standardGravity.ts";
