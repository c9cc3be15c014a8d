/** The tank from above: its parts, and how to move them. */
export const plan = {
  "plan.title": "Plan, from above",
  "plan.of": "Plan of {name} from above, to scale",
  "plan.front": "front glass",
  "plan.side": "Side",
  "plan.top": "From above",
  "plan.both": "Both",
  "plan.views": "Which side of the tank is drawn",
  "plan.kind.display": "display",
  "plan.kind.zone": "zone",
  "plan.kind.box": "overflow box",
  "plan.kind.hole": "drain",
  "plan.kind.outlet": "outlet",
  "plan.kind.tankPump": "pump in the display",
  "plan.unplaced": "place not told yet",
  "plan.spoken": "{name}, {x} from the left, {y} from the front",
  "plan.step.move": "move on the plan",
  "plan.step.zone": "draw a zone in",
  "plan.drawIn": "Draw in: {zone}",
  "plan.zonesToDraw": "Zones without a place:",
  "plan.keys":
    "Arrows move the part in hand, with Shift in larger steps; with Alt they turn a pump or move a zone's other corner.",
} as const;
