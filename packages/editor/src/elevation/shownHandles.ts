import type { Handle, Scene } from "./scene.ts";
import type { View } from "./view.ts";

/** Returns the handles on show: pipes, valves, outlets and in-tank pumps show their grip only in hand, and on a phone only
 *  the part in hand does. A pump in the tank can be moved at once wherever there is room.
 *  scene, view   selection path of the part in hand   -> handles
 *  Source: own construction. */
export function shownHandles(scene: Scene, view: View, selection: string | undefined): Handle[] {
  return scene.parts.flatMap((part): readonly Handle[] => {
    const { handle, grips = [] } = part;
    if (part.path === selection) return handle ? [handle, ...grips] : grips;
    if (view.width < 560) return [];
    const places = grips.filter(({ axis }) => axis === "place");
    return !handle || /\/run\/|\/suction\/|^\/tankPumps/.test(part.path) ? places : [handle, ...places];
  });
}
