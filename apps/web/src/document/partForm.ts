import {
  animalGroups,
  type Design,
  drainKinds,
  drainRoles,
  fromPointer,
  type Part,
  placements,
  usualSiphon,
  valueAt,
} from "@tidewright/design";
import type { Words } from "@tidewright/words";
import { words } from "../words/useWords.ts";
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

const say: Words["say"] = (key, values) => words().say(key, values);

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
  if (section === undefined) return jobForm();
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

const jobForm = (): PartForm => ({
  path: "",
  title: say("parts.theJob"),
  fields: [
    { kind: "text", key: "name", label: say("parts.name") },
    { kind: "text", key: "notes", label: say("parts.notes"), optional: true },
    {
      kind: "choice",
      key: "fittingMethod",
      label: say("parts.lossesAfter"),
      optional: true,
      choices: choicesOf(["crane", "hooper", "darby"]),
      hint: say("parts.craneElse"),
    },
  ],
  lists: [],
});

const siphonFields = (): readonly Field[] => [
  { kind: "count", key: "siphon/tubes", label: say("parts.siphon.tubes") },
  length("siphon/bore", say("parts.siphon.bore")),
  length("siphon/length", say("parts.siphon.length")),
  length("siphon/crest", say("parts.siphon.crest")),
  length("siphon/mouth", say("parts.siphon.mouth")),
  length("siphon/innerBox/length", say("parts.siphon.innerLength")),
  length("siphon/innerBox/width", say("parts.siphon.innerWidth")),
  length("siphon/innerBox/floor", say("parts.siphon.innerFloor")),
];

const topOffFields = (): readonly Field[] => [
  { kind: "quantity", dimension: "volume", key: "reservoir", label: say("parts.reservoir") },
  { kind: "quantity", dimension: "flow", key: "flow", label: say("parts.letsIn") },
  optionalLength("band", say("parts.band"), say("parts.bandElse")),
];

const sections: Readonly<Record<string, (design: Design) => PartForm>> = {
  name: jobForm,
  notes: jobForm,
  fittingMethod: jobForm,
  drains: () => ({
    path: "/drains",
    title: say("parts.drains"),
    fields: [],
    lists: [{ path: "/drains", label: say("parts.drains"), of: "drain" }],
  }),
  topOff: (design) => ({
    path: "/topOff",
    title: say("parts.topOff"),
    within: { path: "/sump", title: say("parts.sump") },
    fields: [
      {
        kind: "presence",
        key: "",
        label: say("parts.toppedUp"),
        start: { reservoir: { value: 20, unit: "L" }, flow: { value: 20, unit: "L/h" } },
      },
      ...(design.topOff === undefined ? [] : topOffFields()),
    ],
    lists: [],
  }),
  loops: () => ({
    path: "/loops",
    title: say("parts.loops"),
    fields: [],
    lists: [{ path: "/loops", label: say("parts.loops"), of: "loop" }],
  }),
  tankPumps: () => ({
    path: "/tankPumps",
    title: say("parts.tankPumps"),
    fields: [],
    lists: [{ path: "/tankPumps", label: say("parts.tankPumps"), of: "tankPump" }],
  }),
  water: () => ({
    path: "/water",
    title: say("parts.water"),
    fields: [
      { kind: "quantity", dimension: "salinity", key: "salinity", label: say("parts.salinity") },
      { kind: "quantity", dimension: "temperature", key: "temperature", label: say("parts.temperature") },
    ],
    lists: [],
  }),
  room: () => ({
    path: "/room",
    title: say("parts.room"),
    fields: [
      {
        kind: "quantity",
        dimension: "temperature",
        key: "temperature",
        label: say("parts.roomTemperature"),
        optional: true,
      },
      { kind: "share", key: "relativeHumidity", label: say("parts.humidity"), optional: true },
      optionalLength("altitude", say("parts.altitude"), say("parts.seaLevelElse")),
    ],
    lists: [],
  }),
  display: () => ({
    path: "/display",
    title: say("parts.display"),
    fields: [
      length("length", say("parts.length")),
      length("width", say("parts.widthBack")),
      length("height", say("parts.glass")),
      length("standHeight", say("parts.stand")),
      { kind: "share", key: "rockShare", label: say("parts.rock"), optional: true },
    ],
    lists: [{ path: "/display/zones", label: say("parts.whoLives"), of: "zone" }],
  }),
  overflow: (design) => ({
    path: "/overflow",
    title: say("parts.overflow"),
    fields: [
      {
        kind: "choice",
        key: "kind",
        label: say("parts.builtAs"),
        choices: choicesOf(["internalBox", "externalBox", "throughWall", "hangOn"]).map((choice) => ({
          ...choice,
          also: [{ path: "/overflow/siphon", value: choice.value === "hangOn" ? usualSiphon(design) : undefined }],
        })),
      },
      length("weir/length", say("parts.weirLength")),
      length("weir/crest", say("parts.weirCrest")),
      {
        kind: "share",
        key: "weir/toothOpenShare",
        label: say("parts.teethShare"),
        optional: true,
        hint: say("parts.plainElse"),
      },
      optionalLength("weir/toothHeight", say("parts.teethHeight")),
      length("box/length", say("parts.boxLength")),
      length("box/width", say("parts.boxWidth")),
      length("box/floor", say("parts.boxFloor")),
      length("box/rim", say("parts.boxRim")),
      ...(design.overflow.siphon === undefined ? [] : siphonFields()),
      ...(design.overflow.box.at === undefined
        ? []
        : ([
            {
              kind: "choice",
              key: "box/at/wall",
              label: say("parts.boxWall"),
              choices: choicesOf(["back", "left", "right"]),
            },
            length("box/at/along", say("parts.boxAlong")),
          ] satisfies Field[])),
    ],
    lists: [],
  }),
  sump: () => ({
    path: "/sump",
    title: say("parts.sump"),
    fields: [
      length("operatingLevel", say("parts.runningDepth")),
      length("height", say("parts.glass")),
      length("floor", say("parts.sumpFloor")),
    ],
    lists: [{ path: "/sump/chambers", label: say("parts.chambers"), of: "chamber" }],
  }),
  power: () => ({
    path: "/power",
    title: say("parts.electricity"),
    fields: [
      { kind: "quantity", dimension: "voltage", key: "voltage", label: say("parts.voltage") },
      { kind: "quantity", dimension: "frequency", key: "frequency", label: say("parts.frequency"), optional: true },
      { kind: "quantity", dimension: "tariff", key: "tariff", label: say("parts.tariff") },
    ],
    lists: [{ path: "/power/circuits", label: say("parts.circuits"), of: "circuit" }],
  }),
  wishes: () => ({
    path: "/wishes",
    title: say("parts.wishes"),
    fields: [
      {
        kind: "range",
        dimension: "turnover",
        key: "returnTurnover",
        label: say("parts.throughSump"),
        optional: true,
      },
      {
        kind: "quantity",
        dimension: "flow",
        key: "returnFlow",
        label: say("parts.sameAsFlow"),
        optional: true,
        hint: say("parts.countsInstead"),
      },
      {
        kind: "range",
        dimension: "turnover",
        key: "totalTurnover",
        label: say("parts.allMovement"),
        optional: true,
      },
      { kind: "quantity", dimension: "money", key: "budget", label: say("parts.budget"), optional: true },
      { kind: "quantity", dimension: "soundLevel", key: "sound", label: say("parts.noLouder"), optional: true },
      { kind: "quantity", dimension: "time", key: "horizon", label: say("parts.horizon"), optional: true },
    ],
    lists: [],
  }),
};

function zoneForm(path: string, name: string): PartForm {
  return {
    path,
    title: say("parts.zone", { name }),
    within: { path: "/display", title: say("parts.display") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name") },
      { kind: "choice", key: "animals", label: say("parts.animals"), choices: choicesOf(animalGroups) },
      { kind: "share", key: "share", label: say("parts.zoneShare"), optional: true },
    ],
    lists: [],
  };
}

function chamberForm(path: string, name: string): PartForm {
  return {
    path,
    title: say("parts.chamber", { name }),
    within: { path: "/sump", title: say("parts.sump") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name"), optional: true },
      length("length", say("parts.length")),
      length("width", say("parts.width")),
      optionalLength("baffle", say("parts.baffle"), say("parts.baffleHint")),
    ],
    lists: [],
  };
}

function circuitForm(path: string, name: string): PartForm {
  return {
    path,
    title: say("parts.circuit", { name }),
    within: { path: "/power", title: say("parts.electricity") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name") },
      { kind: "quantity", dimension: "current", key: "rating", label: say("parts.breaker") },
      { kind: "quantity", dimension: "power", key: "otherLoad", label: say("parts.otherLoad"), optional: true },
    ],
    lists: [],
  };
}

function tankPumpForm(design: Design, path: string, place: number): PartForm {
  const pump = design.tankPumps?.[place];
  return {
    path,
    title: pump?.name ?? pumpName(pump?.ref),
    within: { path: "/tankPumps", title: say("parts.tankPumps") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name"), optional: true },
      { kind: "choice", key: "ref", label: say("parts.pump"), choices: pumpChoices("inTank") },
      { kind: "share", key: "speed", label: say("parts.speed"), optional: true },
      length("at/0", say("parts.along")),
      length("at/1", say("parts.across")),
      length("at/2", say("parts.above")),
      ...(pump?.aim === undefined
        ? []
        : ([
            { kind: "quantity", dimension: "angle", key: "aim/yaw", label: say("parts.yaw") },
            { kind: "quantity", dimension: "angle", key: "aim/pitch", label: say("parts.pitch") },
          ] satisfies Field[])),
      ...(pump?.programme === undefined
        ? []
        : ([
            {
              kind: "choice",
              key: "programme/kind",
              label: say("parts.runs"),
              choices: choicesOf(["steady", "alternating", "pulsing", "random", "tide"]),
            },
            { kind: "share", key: "programme/meanShare", label: say("parts.meanShare"), optional: true },
          ] satisfies Field[])),
    ],
    lists: [],
  };
}

function drainForm(design: Design, path: string, place: number): PartForm {
  return {
    path,
    title: say("parts.drain", { name: design.drains[place]?.name ?? String(place + 1) }),
    within: { path: "/drains", title: say("parts.drains") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name") },
      { kind: "choice", key: "role", label: say("parts.role"), choices: choicesOf(drainRoles) },
      { kind: "choice", key: "kind", label: say("parts.worksAs"), choices: choicesOf(drainKinds) },
      length("inlet/elevation", say("parts.inletRim")),
      optionalLength("inlet/diameter", say("parts.inletDiameter"), say("parts.ownBoreElse")),
      {
        kind: "share",
        key: "share",
        label: say("parts.valveShare"),
        optional: true,
        hint: say("parts.valveShareHint"),
      },
    ],
    lists: [{ path: `${path}/run`, label: say("parts.drainLine"), of: "run" }],
  };
}

function loopForm(design: Design, path: string, place: number): PartForm {
  const loop = design.loops[place];
  const lists: PartList[] = [
    { path: `${path}/pumps`, label: say("parts.pumps"), of: "pump" },
    { path: `${path}/suction`, label: say("parts.suction"), of: "run" },
    { path: `${path}/run`, label: say("parts.pressure"), of: "run" },
  ];
  return {
    path,
    title: say("parts.loop", { name: loop?.name ?? String(place + 1) }),
    within: { path: "/loops", title: say("parts.loops") },
    fields: [
      { kind: "text", key: "name", label: say("parts.name") },
      {
        kind: "choice",
        key: "purpose",
        label: say("parts.purpose"),
        optional: true,
        choices: choicesOf(["return", "closed", "side"]),
      },
      { kind: "choice", key: "from/place", label: say("parts.takesFrom"), choices: placeChoices(design) },
      optionalLength("from/depth", say("parts.intakeDepth")),
      ...((loop?.pumps.length ?? 1) > 1
        ? ([
            {
              kind: "choice",
              key: "arrangement",
              label: say("parts.pumpsStand"),
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
    title: say("parts.pumpNamed", { name: pumpName(pump?.ref) }),
    within: { path: `/loops/${keys[1]}`, title: say("parts.loop", { name: loop?.name ?? "" }) },
    fields: [
      { kind: "choice", key: "ref", label: say("parts.pump"), optional: true, choices: pumpChoices(pump?.placed) },
      { kind: "share", key: "speed", label: say("parts.speed"), optional: true, hint: say("parts.fullSpeedElse") },
      { kind: "choice", key: "placed", label: say("parts.stands"), choices: choicesOf(placements) },
      optionalLength("elevation", say("parts.impeller"), say("parts.sumpFloorElse")),
      { kind: "check", key: "controller", label: say("parts.controller"), optional: true },
      { kind: "check", key: "checkValve", label: say("parts.checkValve"), optional: true },
    ],
    lists: [],
  };
}

function partOfRun(design: Design, path: string, keys: readonly string[], part: Part): PartForm {
  const owner = keys[0] === "drains" ? design.drains[Number(keys[1])] : design.loops[Number(keys[1])];
  const within = {
    path: `/${keys[0]}/${keys[1]}`,
    title: say(keys[0] === "drains" ? "parts.drain" : "parts.loop", { name: owner?.name ?? "" }),
  };
  const lists: PartList[] =
    part.kind === "tee"
      ? part.branches.map((_branch, place) => ({
          path: `${path}/branches/${place}`,
          label: place === 0 ? say("parts.branchOne") : say("parts.branch", { number: String(place + 1) }),
          of: "run",
        }))
      : [];
  return {
    path,
    title: partName(part),
    within,
    fields: [...fieldsOfPart(part, design), { kind: "text", key: "note", label: say("parts.note"), optional: true }],
    lists,
  };
}

/** Fields of one part of a run, the most used one first. */
export function fieldsOfPart(part: Part, design: Design): Field[] {
  switch (part.kind) {
    case "pipe":
      return [
        length("length", say("parts.length")),
        {
          kind: "choice",
          key: "series",
          label: say("parts.size"),
          optional: true,
          choices: pipeChoices(),
          hint: say("parts.sizeHint"),
        },
        optionalLength("rise", say("parts.rise"), say("parts.riseHint")),
        optionalLength("bore", say("parts.ownBore"), say("parts.ownBoreHint")),
        optionalLength("roughness", say("parts.ownRoughness")),
      ];
    case "fitting":
      return [
        { kind: "count", key: "count", label: say("parts.howMany"), optional: true },
        { kind: "choice", key: "fitting", label: say("parts.fitting"), choices: fittingChoices() },
        {
          kind: "number",
          key: "lossCoefficient",
          label: say("parts.ownK"),
          optional: true,
          hint: say("parts.ownKHint"),
        },
      ];
    case "valve":
      return [
        { kind: "share", key: "opening", label: say("parts.opening") },
        { kind: "choice", key: "valve", label: say("parts.valve"), choices: valveChoices() },
      ];
    case "device":
      return [{ kind: "choice", key: "ref", label: say("parts.device"), choices: deviceChoices() }];
    case "outlet":
      return [
        optionalLength("nozzle", say("parts.nozzle"), say("parts.ownBoreElse")),
        { kind: "choice", key: "to", label: say("parts.goesTo"), choices: placeChoices(design) },
        optionalLength("depth", say("parts.depth"), say("parts.depthHint")),
        optionalLength("siphonBreak", say("parts.siphonBreak")),
      ];
    case "tee":
      return [];
  }
}
