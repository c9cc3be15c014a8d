export { Elevation } from "./Elevation.tsx";
