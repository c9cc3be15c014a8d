export { Elevation, type ElevationProps } from "./Elevation.tsx";
export type { SetEdit } from "./handleEdits.ts";
export { layoutElevation } from "./layoutElevation.ts";
export type { Format, Levels, Scene, ScenePart } from "./scene.ts";
