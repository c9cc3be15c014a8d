import {
  animalGroups,
  type Design,
  drainKinds,
  drainRoles,
  fromPointer,
  type Part,
  placements,
  valueAt,
} from "@tidewright/design";
import {
  choicesOf,
  deviceChoices,
  fittingChoices,
  pipeChoices,
  placeChoices,
  pumpChoices,
  valveChoices,
} from "./choices.ts";
import type { Field, PartForm, PartList } from "./fields.ts";
import { partName, pumpName } from "./partName.ts";

const length = (key: string, label: string, more: Partial<Field> = {}): Field =>
  ({ kind: "quantity", dimension: "length", key, label, ...more }) as Field;
const optionalLength = (key: string, label: string, hint?: string): Field =>
  length(key, label, hint === undefined ? { optional: true } : { optional: true, hint });

/** Returns everything that can be asked about the part at a path, or about the nearest part above it.
 *  design   path JSON Pointer of a part or of one of its fields   -> PartForm; undefined where the path leads nowhere */
export function partForm(design: Design, path: string): PartForm | undefined {
  const keys = fromPointer(path);
  if (keys === undefined) return undefined;
  for (let depth = keys.length; depth >= 0; depth -= 1) {
    const at = keys
      .slice(0, depth)
      .map((key) => `/${key}`)
      .join("");
    // A section may be asked about before it is there.
    if (depth > 1 && valueAt(design, at) === undefined) continue;
    const form = formAt(design, at, keys.slice(0, depth));
    if (form !== undefined) return form;
  }
  return undefined;
}

function formAt(design: Design, path: string, keys: readonly string[]): PartForm | undefined {
  const [section, second, third] = keys;
  if (section === undefined) return jobForm;
  if (keys.length === 1 && section in sections) return sections[section]!(design);
  const value = valueAt(design, path);
  if (section === "display" && second === "zones" && keys.length === 3)
    return zoneForm(path, String((value as { name: string }).name));
  if (section === "sump" && second === "chambers" && keys.length === 3)
    return chamberForm(path, (value as { id: string; name?: string }).name ?? (value as { id: string }).id);
  if (section === "power" && second === "circuits" && keys.length === 3)
    return circuitForm(path, (value as { name: string }).name);
  if (section === "tankPumps" && keys.length === 2) return tankPumpForm(design, path, Number(second));
  if (section === "drains" && keys.length === 2) return drainForm(design, path, Number(second));
  if (section === "loops" && keys.length === 2) return loopForm(design, path, Number(second));
  if (section === "loops" && third === "pumps" && keys.length === 4) return pumpForm(design, path, keys);
  const inRun =
    keys.length >= 4 && (third === "run" || third === "suction") && (section === "drains" || section === "loops");
  if (inRun && typeof value === "object" && value !== null && "kind" in value)
    return partOfRun(design, path, keys, value as Part);
  return undefined;
}

const jobForm: PartForm = {
  path: "",
  title: "The job",
  fields: [
    { kind: "text", key: "name", label: "Name" },
    { kind: "text", key: "notes", label: "Notes", optional: true },
    {
      kind: "choice",
      key: "fittingMethod",
      label: "Fitting losses after",
      optional: true,
      choices: choicesOf(["crane", "hooper", "darby"]),
      hint: "Crane where nothing is said",
    },
  ],
  lists: [],
};

const topOffFields: readonly Field[] = [
  { kind: "quantity", dimension: "volume", key: "reservoir", label: "Water in the reservoir when full" },
  { kind: "quantity", dimension: "flow", key: "flow", label: "What it lets in while it runs" },
  optionalLength("band", "How far the level falls before it starts", "5 mm where nothing is said"),
];

const sections: Readonly<Record<string, (design: Design) => PartForm>> = {
  name: () => jobForm,
  notes: () => jobForm,
  fittingMethod: () => jobForm,
  drains: () => ({
    path: "/drains",
    title: "Drains",
    fields: [],
    lists: [{ path: "/drains", label: "Drains", of: "drain" }],
  }),
  topOff: (design) => ({
    path: "/topOff",
    title: "Automatic top-off",
    within: { path: "/sump", title: "Sump" },
    fields: [
      {
        kind: "presence",
        key: "",
        label: "Fresh water is topped up by itself",
        start: { reservoir: { value: 20, unit: "L" }, flow: { value: 20, unit: "L/h" } },
      },
      ...(design.topOff === undefined ? [] : topOffFields),
    ],
    lists: [],
  }),
  loops: () => ({
    path: "/loops",
    title: "Loops",
    fields: [],
    lists: [{ path: "/loops", label: "Loops", of: "loop" }],
  }),
  tankPumps: () => ({
    path: "/tankPumps",
    title: "Pumps in the display",
    fields: [],
    lists: [{ path: "/tankPumps", label: "Pumps in the display", of: "tankPump" }],
  }),
  water: () => ({
    path: "/water",
    title: "Water",
    fields: [
      { kind: "quantity", dimension: "salinity", key: "salinity", label: "Salinity" },
      { kind: "quantity", dimension: "temperature", key: "temperature", label: "Temperature" },
    ],
    lists: [],
  }),
  room: () => ({
    path: "/room",
    title: "Room",
    fields: [
      { kind: "quantity", dimension: "temperature", key: "temperature", label: "Room temperature", optional: true },
      { kind: "share", key: "relativeHumidity", label: "Relative humidity", optional: true },
      optionalLength("altitude", "Height above the sea", "sea level where nothing is said"),
    ],
    lists: [],
  }),
  display: () => ({
    path: "/display",
    title: "Display tank",
    fields: [
      length("length", "Length"),
      length("width", "Width, front to back"),
      length("height", "Height of the glass"),
      length("standHeight", "Stand: tank floor above the room's floor"),
      { kind: "share", key: "rockShare", label: "Share taken by rock and sand", optional: true },
    ],
    lists: [{ path: "/display/zones", label: "Who lives where", of: "zone" }],
  }),
  overflow: () => ({
    path: "/overflow",
    title: "Overflow",
    fields: [
      {
        kind: "choice",
        key: "kind",
        label: "Built as",
        choices: choicesOf(["internalBox", "externalBox", "throughWall"]),
      },
      length("weir/length", "Weir: length of the crest"),
      length("weir/crest", "Weir: crest above the tank floor"),
      {
        kind: "share",
        key: "weir/toothOpenShare",
        label: "Weir: open share of the teeth",
        optional: true,
        hint: "a plain crest where nothing is said",
      },
      optionalLength("weir/toothHeight", "Weir: height of the teeth"),
      length("box/length", "Box: length"),
      length("box/width", "Box: width"),
      length("box/floor", "Box: floor above the tank floor"),
      length("box/rim", "Box: rim above the tank floor"),
    ],
    lists: [],
  }),
  sump: () => ({
    path: "/sump",
    title: "Sump",
    fields: [
      length("operatingLevel", "Running depth in the return chamber"),
      length("height", "Height of the glass"),
      length("floor", "Sump floor above the room's floor"),
    ],
    lists: [{ path: "/sump/chambers", label: "Chambers, in the direction of flow", of: "chamber" }],
  }),
  power: () => ({
    path: "/power",
    title: "Electricity",
    fields: [
      { kind: "quantity", dimension: "voltage", key: "voltage", label: "Mains voltage" },
      { kind: "quantity", dimension: "frequency", key: "frequency", label: "Mains frequency", optional: true },
      { kind: "quantity", dimension: "tariff", key: "tariff", label: "Price of a kilowatt-hour" },
    ],
    lists: [{ path: "/power/circuits", label: "Circuits", of: "circuit" }],
  }),
  wishes: () => ({
    path: "/wishes",
    title: "Wishes",
    fields: [
      {
        kind: "range",
        dimension: "turnover",
        key: "returnTurnover",
        label: "Through the sump, from and to",
        optional: true,
      },
      {
        kind: "quantity",
        dimension: "flow",
        key: "returnFlow",
        label: "The same as a flow",
        optional: true,
        hint: "counts instead of the turnover",
      },
      {
        kind: "range",
        dimension: "turnover",
        key: "totalTurnover",
        label: "All water movement, from and to",
        optional: true,
      },
      { kind: "quantity", dimension: "money", key: "budget", label: "Budget for pumps", optional: true },
      { kind: "quantity", dimension: "soundLevel", key: "sound", label: "No louder than", optional: true },
      { kind: "quantity", dimension: "time", key: "horizon", label: "Costs reckoned over", optional: true },
    ],
    lists: [],
  }),
};

function zoneForm(path: string, name: string): PartForm {
  return {
    path,
    title: `Zone: ${name}`,
    within: { path: "/display", title: "Display tank" },
    fields: [
      { kind: "text", key: "name", label: "Name" },
      { kind: "choice", key: "animals", label: "Animals", choices: choicesOf(animalGroups) },
      { kind: "share", key: "share", label: "Share of the display", optional: true },
    ],
    lists: [],
  };
}

function chamberForm(path: string, name: string): PartForm {
  return {
    path,
    title: `Sump chamber: ${name}`,
    within: { path: "/sump", title: "Sump" },
    fields: [
      { kind: "text", key: "name", label: "Name", optional: true },
      length("length", "Length"),
      length("width", "Width"),
      optionalLength("baffle", "Baffle after it: height", "water flows over it into the next chamber"),
    ],
    lists: [],
  };
}

function circuitForm(path: string, name: string): PartForm {
  return {
    path,
    title: `Circuit: ${name}`,
    within: { path: "/power", title: "Electricity" },
    fields: [
      { kind: "text", key: "name", label: "Name" },
      { kind: "quantity", dimension: "current", key: "rating", label: "Breaker rating" },
      { kind: "quantity", dimension: "power", key: "otherLoad", label: "Other load on it", optional: true },
    ],
    lists: [],
  };
}

function tankPumpForm(design: Design, path: string, place: number): PartForm {
  const pump = design.tankPumps?.[place];
  return {
    path,
    title: pump?.name ?? pumpName(pump?.ref),
    within: { path: "/tankPumps", title: "Pumps in the display" },
    fields: [
      { kind: "text", key: "name", label: "Name", optional: true },
      { kind: "choice", key: "ref", label: "Pump", choices: pumpChoices("inTank") },
      { kind: "share", key: "speed", label: "Speed", optional: true },
      length("at/0", "Place along the tank"),
      length("at/1", "Place across, from the back"),
      length("at/2", "Place above the tank floor"),
      ...(pump?.aim === undefined
        ? []
        : ([
            { kind: "quantity", dimension: "angle", key: "aim/yaw", label: "Aim, to the side" },
            { kind: "quantity", dimension: "angle", key: "aim/pitch", label: "Aim, up" },
          ] satisfies Field[])),
      ...(pump?.programme === undefined
        ? []
        : ([
            {
              kind: "choice",
              key: "programme/kind",
              label: "Runs",
              choices: choicesOf(["steady", "alternating", "pulsing", "random", "tide"]),
            },
            { kind: "share", key: "programme/meanShare", label: "Mean share of full flow", optional: true },
          ] satisfies Field[])),
    ],
    lists: [],
  };
}

function drainForm(design: Design, path: string, place: number): PartForm {
  return {
    path,
    title: `Drain: ${design.drains[place]?.name ?? place + 1}`,
    within: { path: "/drains", title: "Drains" },
    fields: [
      { kind: "text", key: "name", label: "Name" },
      { kind: "choice", key: "role", label: "Role", choices: choicesOf(drainRoles) },
      { kind: "choice", key: "kind", label: "Works as", choices: choicesOf(drainKinds) },
      length("inlet/elevation", "Inlet rim above the tank floor"),
      optionalLength("inlet/diameter", "Inlet diameter", "the pipe's own bore where nothing is said"),
      {
        kind: "share",
        key: "share",
        label: "Share of the flow its valve is set for",
        optional: true,
        hint: "for a throttled siphon; else the valve stands as it is",
      },
    ],
    lists: [{ path: `${path}/run`, label: "The line, from inlet to sump", of: "run" }],
  };
}

function loopForm(design: Design, path: string, place: number): PartForm {
  const loop = design.loops[place];
  const lists: PartList[] = [
    { path: `${path}/pumps`, label: "Pumps", of: "pump" },
    { path: `${path}/suction`, label: "Suction side, from the place to the pump", of: "run" },
    { path: `${path}/run`, label: "Pressure side, in the direction of flow", of: "run" },
  ];
  return {
    path,
    title: `Loop: ${loop?.name ?? place + 1}`,
    within: { path: "/loops", title: "Loops" },
    fields: [
      { kind: "text", key: "name", label: "Name" },
      {
        kind: "choice",
        key: "purpose",
        label: "Purpose",
        optional: true,
        choices: choicesOf(["return", "closed", "side"]),
      },
      { kind: "choice", key: "from/place", label: "Takes water from", choices: placeChoices(design) },
      optionalLength("from/depth", "Depth of the intake below the surface"),
      ...((loop?.pumps.length ?? 1) > 1
        ? ([
            {
              kind: "choice",
              key: "arrangement",
              label: "Pumps stand",
              optional: true,
              choices: choicesOf(["parallel", "series"]),
            },
          ] satisfies Field[])
        : []),
    ],
    lists,
  };
}

function pumpForm(design: Design, path: string, keys: readonly string[]): PartForm {
  const loop = design.loops[Number(keys[1])];
  const pump = loop?.pumps[Number(keys[3])];
  return {
    path,
    title: `Pump: ${pumpName(pump?.ref)}`,
    within: { path: `/loops/${keys[1]}`, title: `Loop: ${loop?.name ?? ""}` },
    fields: [
      { kind: "choice", key: "ref", label: "Pump", optional: true, choices: pumpChoices(pump?.placed) },
      { kind: "share", key: "speed", label: "Speed", optional: true, hint: "full speed where nothing is said" },
      { kind: "choice", key: "placed", label: "Stands", choices: choicesOf(placements) },
      optionalLength("elevation", "Impeller above the room's floor", "the sump's floor where nothing is said"),
      { kind: "check", key: "controller", label: "Separate controller is part of the order", optional: true },
      { kind: "check", key: "checkValve", label: "Check valve of its own at its outlet", optional: true },
    ],
    lists: [],
  };
}

function partOfRun(design: Design, path: string, keys: readonly string[], part: Part): PartForm {
  const owner = keys[0] === "drains" ? design.drains[Number(keys[1])] : design.loops[Number(keys[1])];
  const within = {
    path: `/${keys[0]}/${keys[1]}`,
    title: `${keys[0] === "drains" ? "Drain" : "Loop"}: ${owner?.name ?? ""}`,
  };
  const lists: PartList[] =
    part.kind === "tee"
      ? part.branches.map((_branch, place) => ({
          path: `${path}/branches/${place}`,
          label: place === 0 ? "Branch 1, straight on" : `Branch ${place + 1}`,
          of: "run",
        }))
      : [];
  return {
    path,
    title: partName(part),
    within,
    fields: [...fieldsOfPart(part, design), { kind: "text", key: "note", label: "Note", optional: true }],
    lists,
  };
}

/** Fields of one part of a run, the most used one first. */
export function fieldsOfPart(part: Part, design: Design): Field[] {
  switch (part.kind) {
    case "pipe":
      return [
        length("length", "Length"),
        {
          kind: "choice",
          key: "series",
          label: "Size",
          optional: true,
          choices: pipeChoices,
          hint: "or a bore of your own below",
        },
        optionalLength("rise", "Rise along the flow", "negative falls; level where nothing is said"),
        optionalLength("bore", "Bore of your own", "counts instead of the size"),
        optionalLength("roughness", "Roughness of your own"),
      ];
    case "fitting":
      return [
        { kind: "count", key: "count", label: "How many", optional: true },
        { kind: "choice", key: "fitting", label: "Fitting", choices: fittingChoices },
        {
          kind: "number",
          key: "lossCoefficient",
          label: "Loss coefficient K of your own",
          optional: true,
          hint: "in place of the published value",
        },
      ];
    case "valve":
      return [
        { kind: "share", key: "opening", label: "Opening" },
        { kind: "choice", key: "valve", label: "Valve", choices: valveChoices },
      ];
    case "device":
      return [{ kind: "choice", key: "ref", label: "Device", choices: deviceChoices }];
    case "outlet":
      return [
        optionalLength("nozzle", "Nozzle bore", "the pipe's own bore where nothing is said"),
        { kind: "choice", key: "to", label: "Goes to", choices: placeChoices(design) },
        optionalLength("depth", "Depth below the surface", "negative stands above it"),
        optionalLength("siphonBreak", "Siphon-break hole: depth below the surface"),
      ];
    case "tee":
      return [];
  }
}
