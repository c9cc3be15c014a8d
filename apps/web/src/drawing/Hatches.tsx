import type { Scene, View } from "@tidewright/editor";

/** Hatches for cut glass and for the ground, and the tint of water by depth. */
export function Hatches({ id, scene, view }: { id: string; scene: Scene; view: View }) {
  const water = scene.shapes.find((shape) => shape.kind === "area" && shape.ink === "water");
  const ys = water?.kind === "area" ? water.points.map((point) => view.toScreen(point).y) : [0, 1];
  return (
    <defs>
      <pattern id={`${id}-glass`} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1="0" y1="0" x2="0" y2="4" className="tw-hatch" />
      </pattern>
      <pattern id={`${id}-ground`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1="0" y1="0" x2="0" y2="7" className="tw-hatch" />
      </pattern>
      <linearGradient
        id={`${id}-water`}
        gradientUnits="userSpaceOnUse"
        x1="0"
        x2="0"
        y1={Math.min(...ys)}
        y2={Math.max(...ys)}
      >
        <stop offset="0" className="tw-tintTop" />
        <stop offset="1" className="tw-tintDeep" />
      </linearGradient>
      <linearGradient
        id={`${id}-deepWater`}
        gradientUnits="userSpaceOnUse"
        x1="0"
        x2="0"
        y1={Math.min(...ys)}
        y2={Math.max(...ys)}
      >
        <stop offset="0" className="tw-tintMiddle" />
        <stop offset="1" className="tw-tintDeep" />
      </linearGradient>
    </defs>
  );
}
