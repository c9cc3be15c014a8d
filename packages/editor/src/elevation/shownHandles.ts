import type { Handle, Scene } from "./scene.ts";
import type { View } from "./view.ts";

/** Returns the handles on show: pipes, valves, outlets and in-tank pumps show their grip only in hand, and on a phone only
 *  the part in hand does.
 *  scene, view   selection path of the part in hand   -> handles
 *  Source: own construction. */
export function shownHandles(scene: Scene, view: View, selection: string | undefined): Handle[] {
  return scene.parts.flatMap((part) => {
    if (!part.handle) return [];
    if (part.path === selection) return [part.handle];
    if (view.width < 560 || /\/run\/|\/suction\/|^\/tankPumps/.test(part.path)) return [];
    return [part.handle];
  });
}
