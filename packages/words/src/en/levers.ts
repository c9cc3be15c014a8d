/** Single changes that help, as their labels say them. */
export const levers = {
  "levers.size-up": "{from} to {to}",
  "levers.sweep-elbows": "{count, plural, one {# square elbow} other {# square elbows}} to sweeps",
  "levers.open-valve": "valve to full bore",
  "levers.larger-nozzle": "nozzle {from} to {to} {unit}",
  "levers.remove-nozzle": "outlet without nozzle",
  "levers.add-union": "union at the pump",
  "levers.speed": "speed {from} % to {to} %",
  "levers.add-controller": "order the controller",
  "levers.move-into-sump": "pump into the sump",
  "levers.move-outside": "pump outside",
  "levers.operating-level": "operating level to {to} mm",
  "levers.operating-level-from": "operating level {from} mm to {to} mm",
  "levers.longer-weir": "weir a quarter longer",
  "levers.raise-siphon-break": "siphon break 10 mm below the surface",
  "levers.siphon-breaks":
    "siphon break {depth} mm below the running level at {count, plural, one {# outlet} other {# outlets}}",
  "levers.add-emergency-drain": "a dry emergency standpipe, one size up",
  "levers.taller-sump": "sump glass {from} mm to {to} mm high",
} as const;
