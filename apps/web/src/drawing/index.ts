export { Elevation, type ElevationProps } from "./Elevation.tsx";
export { benchHands, type SheetHands } from "./sheetHands.ts";
