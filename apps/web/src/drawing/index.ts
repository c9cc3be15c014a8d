export { Elevation, type ElevationProps } from "./Elevation.tsx";
