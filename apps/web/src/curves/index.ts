export { CurvePicture } from "./CurvePicture.tsx";
