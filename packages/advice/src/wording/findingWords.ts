import type { FindingCode } from "../finding.ts";

/** Words of every finding. {value}, {limit}, {name} and other names in braces are filled in. `backward` is the sentence where the
 *  value is below zero, a flow that runs the wrong way; it tells the size of it. `unnamed` is the sentence where the name is empty. */
export interface Words {
  readonly title: string;
  readonly sentence: string;
  readonly backward?: string;
  readonly unnamed?: string;
  /** The sentence where a scenario ends with a pump that draws air and a dry floor; {after} is the time until then. */
  readonly dry?: string;
  readonly fix: string;
  readonly caution?: string;
}

const leak =
  "Every circuit near the water needs leakage protection (RCD or GFCI), every cable a drip loop; local code and a licensed electrician decide.";
const glass = "Drilling and lifting glass hurts people: drain first, lift with enough hands and suction cups.";
const cement = "Solvent cement: air the room, keep flames away, wear gloves.";
const plug = "Before you leave, pull the plug and watch where the water stops.";

/** Words of every finding, in the order of `FindingCode`. */
export const findingWords: Readonly<Record<FindingCode, Words>> = {
  "solve/not-converged": {
    title: "No certain answer",
    sentence: "Flows and levels could not be settled in {name}; what is told is the last attempt.",
    fix: "Look for a part with a strange size there.",
  },
  "flow/below-wish": {
    title: "Too little return flow",
    sentence: "{value} goes over the weir; at least {limit} is wished.",
    fix: "Raise the pump's speed, take a stronger pump or ease the line.",
  },
  "flow/above-wish": {
    title: "More return flow than wished",
    sentence: "{value} goes over the weir; {limit} is the most that is wished.",
    fix: "Lower the pump's speed or take a smaller pump.",
  },
  "flow/no-lift": {
    title: "No water gets up",
    sentence: "{name} moves nothing forward: it reaches {value} where {limit} is asked for.",
    backward: "Water runs back in at {name}: {value} the wrong way.",
    fix: "Open what is shut after it, take a pump with more head, ease the line, or close the branches that take the flow.",
  },
  "flow/total-turnover-low": {
    title: "Little water movement in all",
    sentence: "All pumps together turn the display over {value}; at least {limit} is wished.",
    fix: "Add in-tank pumps or a closed loop.",
  },
  "flow/total-turnover-high": {
    title: "Much water movement in all",
    sentence: "All pumps together turn the display over {value}; {limit} is the most that is wished.",
    fix: "Lower the speed of the in-tank pumps.",
  },
  "drain/beyond-quiet": {
    title: "Drain drags air",
    sentence: "Drain “{name}” carries {value}; it stays quiet and vented up to {limit}.",
    fix: "Take a larger pipe, or make it a throttled full siphon with a vented drain beside it.",
  },
  "drain/beyond-practice": {
    title: "Drain beyond the rule of thumb",
    sentence: "Drain “{name}” carries {value}; the trade reckons with {limit} for this bore.",
    fix: "Take a larger pipe or a second drain.",
    caution: glass,
  },
  "drain/beyond-siphon": {
    title: "Drain cannot carry the flow",
    sentence: "{name}: {value} is sent, {limit} is the most it can take.",
    fix: "Send less, or take a larger drain before the pump is switched on.",
    caution: plug,
  },
  "drain/no-emergency": {
    title: "No emergency drain",
    sentence: "With the best drain blocked the others carry {value}; {limit} is sent.",
    fix: "Add a dry emergency standpipe that alone can carry all of it.",
    caution: glass,
  },
  "drain/emergency-too-small": {
    title: "Emergency drain too small",
    sentence: "Drain “{name}” takes {value} with the box full to its rim; {limit} can come.",
    fix: "Enlarge its rim and pipe, lower its inlet, or send less.",
  },
  "drain/emergency-wet": {
    title: "Emergency drain in use",
    sentence: "Drain “{name}” carries {value} in normal running; it should stay dry.",
    fix: "Open the main drain further or raise the emergency's inlet.",
  },
  "drain/siphon-share-unreachable": {
    title: "Siphon cannot take its share",
    sentence: "Drain “{name}” should carry {value}; fully open it can take {limit}.",
    fix: "Take a larger siphon pipe or a smaller share.",
  },
  "drain/siphon-not-clearing-air": {
    title: "Siphon may not start by itself",
    sentence: "Drain “{name}” runs at Froude number {value}; above about {limit} water sweeps the air out.",
    fix: "Take a smaller siphon pipe, or open its valve to start it and then set it.",
  },
  "overflow/box-over-rim": {
    title: "The overflow box runs over",
    sentence: "{value} more comes than the drains can take with the box full.",
    fix: "Send less or enlarge the drains.",
    caution: plug,
  },
  "overflow/display-over-rim": {
    title: "The display runs over",
    sentence: "The water would stand {value} above the display's rim.",
    fix: "Send less, lengthen or lower the weir, or enlarge the drains.",
    caution: plug,
  },
  "overflow/little-freeboard": {
    title: "Little room to the rim",
    sentence: "{value} is left to the rim; {limit} is usual.",
    fix: "Lower the crest or lengthen the weir.",
  },
  "overflow/weir-drowned": {
    title: "Weir drowned",
    sentence: "The box stands {value} above the weir's crest, so the drains decide the display's level.",
    fix: "Enlarge or lower the drains' inlets.",
  },
  "pipe/fast": {
    title: "Fast water in a pipe",
    sentence: "{value} in {name}; up to {limit} is usual.",
    fix: "Take one size up.",
    caution: cement,
  },
  "pipe/slow": {
    title: "Slow water in a pipe",
    sentence: "{value} in {name}; below {limit} dirt settles.",
    fix: "Take a smaller pipe or clean it more often.",
  },
  "pipe/bulkhead-undersized": {
    title: "Bulkhead narrower than its pipe",
    sentence: "The bulkhead is {value} wide, the pipe after it {limit}.",
    fix: "Fit a bulkhead of the pipe's size.",
    caution: glass,
  },
  "pipe/uncertain-regime": {
    title: "Friction uncertain here",
    sentence: "Reynolds number {value} in {name}: between laminar and turbulent no published curve is right.",
    fix: "Reckon with a third more or less friction in this pipe.",
  },
  "pump/missing": {
    title: "No pump chosen",
    sentence: "The pump {name} is not in the catalogue.",
    unnamed: "This place for a pump is empty: no pump is reckoned with.",
    fix: "Take one from the ranking.",
  },
  "pump/near-shutoff": {
    title: "Pump hardly moves water",
    sentence: "{name} works at {value} of its largest flow; below {limit} it heats up.",
    fix: "Take a smaller pump or a lower speed.",
  },
  "pump/near-runout": {
    title: "Pump at the end of its curve",
    sentence: "{name} works at {value} of its largest flow; beyond {limit} it is noisy and its data end.",
    fix: "Take a larger pump at lower speed.",
  },
  "pump/beyond-curve": {
    title: "Beyond the pump's last point",
    sentence: "{name} works at {value} of the last flow the maker gives: the curve is continued, not known.",
    fix: "Close a valve a little or take a larger pump.",
  },
  "pump/suction-too-small": {
    title: "Suction pipe narrower than the pump",
    sentence: "The suction is {value} wide, the inlet of {name} {limit}.",
    fix: "Bring the suction to the inlet's size or larger.",
  },
  "pump/not-flooded": {
    title: "Pump above the water",
    sentence: "{name} stands {value} above the water it draws from and does not prime itself.",
    fix: "Stand it below the sump's level.",
    caution: leak,
  },
  "pump/npsh-low": {
    title: "Little pressure at the pump's inlet",
    sentence: "{value} of suction head is available at {name}; {limit} is usual.",
    fix: "Shorten and widen the suction.",
  },
  "pump/wrong-place": {
    title: "Pump in the wrong place",
    sentence: "{name} is not made to stand {placed}.",
    fix: "Move it or take another pump.",
    caution: leak,
  },
  "pump/missing-controller": {
    title: "Controller missing",
    sentence: "{name} needs a {controller} that is bought separately and is not in this order.",
    fix: "Add the controller.",
  },
  "pump/not-controllable": {
    title: "Pump has one speed",
    sentence: "{name} cannot be set to {value}: it runs at full speed.",
    fix: "Take a controllable pump, or count with full speed.",
  },
  "pump/below-minimum-speed": {
    title: "Below the pump's lowest speed",
    sentence: "{name} is set to {value}; {limit} is its lowest.",
    fix: "Raise the speed or take a smaller pump.",
  },
  "pump/wrong-voltage": {
    title: "Wrong mains voltage",
    sentence: "{name} is made for {value}; the mains give {limit}.",
    fix: "Take the version for this mains.",
    caution: leak,
  },
  "pump/no-check-valve": {
    title: "Pumps in parallel without check valve",
    sentence: "If one of the pumps of {name} stops, water can run back through it.",
    fix: "Give each pump a check valve, and never rely on it alone.",
  },
  "outlet/jet-fast": {
    title: "Hard jet",
    sentence: "The water leaves at {value}; above {limit} it hisses and hurts.",
    fix: "Take a larger nozzle or a second outlet.",
  },
  "device/flow-low": {
    title: "Too little flow through a device",
    sentence: "{name} gets {value}; its maker asks for at least {limit}.",
    backward: "Water runs backward through {name}, {value}; its maker asks for at least {limit} forward.",
    fix: "Open its valve or close the other branches a little.",
  },
  "device/flow-high": {
    title: "Too much flow through a device",
    sentence: "{name} gets {value}; its maker allows {limit}.",
    fix: "Close its valve a little.",
  },
  "sump/too-small": {
    title: "The sump floods on a power cut",
    sentence: "{value} falls back; the sump has room for {limit}.",
    fix: "Lower the operating level, raise the siphon breaks or take a larger sump.",
    caution: plug,
  },
  "sump/little-room": {
    title: "Little room in the sump",
    sentence: "After a power cut {value} is left; {limit} is usual.",
    fix: "Lower the operating level a little.",
    caution: plug,
  },
  "sump/return-chamber-low": {
    title: "Little water over the return pump",
    sentence: "The return chamber holds {value}; below {limit} a pump draws air.",
    fix: "Raise the operating level.",
  },
  "sump/baffle-drowned": {
    title: "Baffle under water",
    sentence: "The water stands at {value}, above the baffle of {limit}.",
    fix: "Lower the operating level below the baffle.",
  },
  "power/circuit-overload": {
    title: "Circuit loaded too far",
    sentence:
      "Circuit {name} would carry {value}; {limit} is its limit for continuous load. All pumps and devices of this design are reckoned to hang on the first circuit.",
    fix: "Spread the load over circuits, or enter what hangs elsewhere as another circuit's other load.",
    caution: leak,
  },
  "heat/beyond-chiller": {
    title: "Pumps heat more than the chiller takes",
    sentence: "{value} go into the water from pumps alone; the chiller takes {limit}.",
    fix: "Take a larger chiller or thriftier pumps.",
  },
  "cost/over-budget": {
    title: "Over budget",
    sentence: "Pumps and devices cost {value}; the budget is {limit}.",
    fix: "See the ranking by price.",
  },
  "cost/mixed-currencies": {
    title: "Two currencies",
    sentence: "Prices in {one} and {other} are not added up.",
    fix: "Give budget and tariff in the catalogue's currency.",
  },
  "sound/over-wish": {
    title: "Louder than wished",
    sentence: "All pumps together make {value}; {limit} is wished.",
    fix: "Run larger pumps slower or move them.",
  },
  "service/no-union": {
    title: "Nothing to open for service",
    sentence: "Loop {name} has no union and no valve.",
    fix: "Add a union at the pump.",
  },
  "service/no-valve": {
    title: "No valve before the pump",
    sentence: "The suction of {name} has no valve, so the pump cannot come out without draining the sump.",
    fix: "Add a ball valve with unions.",
  },
  "overTime/power-cut": {
    title: "The floor gets wet on a power cut",
    sentence: "With the power off, the {place} runs over after {after}: {value} on the floor.",
    dry: "With the power off a pump draws air after {after}.",
    fix: "Lower the operating level, raise the siphon breaks or take a larger sump.",
    caution: plug,
  },
  "overTime/restart": {
    title: "The floor gets wet when the power comes back",
    sentence:
      "After a power cut the {place} runs over at {after}: {value} on the floor before the drains have caught up.",
    dry: "After a power cut the return chamber runs so low at {after} that the pump draws air.",
    fix: "Give the box more height or the emergency drain more bore; start the pump slowly; lower the operating level.",
    caution: plug,
  },
  "overTime/drain-blocked": {
    title: "One blocked drain wets the floor",
    sentence: "With “{names}” blocked, the {place} runs over at {after}: {value} on the floor.",
    dry: "With “{names}” blocked the display fills until the pump draws air at {after}; the floor stays dry.",
    fix: "Enlarge the emergency drain until it carries the whole flow, or lower the return flow.",
    caution: "Strainers catch snails and leaves: look at them every week.",
  },
  "overTime/two-drains-blocked": {
    title: "Two blocked drains wet the floor",
    sentence: "With “{names}” blocked at once, the {place} runs over at {after}: {value} on the floor.",
    dry: "With “{names}” blocked at once the display fills until the pump draws air at {after}; the floor stays dry.",
    fix: "Keep so little water in the return chamber that the display can hold it, or enlarge the last drain.",
  },
  "overTime/pump-fails": {
    title: "One failed pump makes trouble",
    sentence: "With {names} failed, the {place} runs over at {after}: {value} on the floor.",
    dry: "With {names} failed a pump draws air at {after}.",
    fix: "Give each pump a check valve and room in the sump for what runs back without it.",
  },
  "overTime/check-valve-stuck": {
    title: "Only a check valve keeps the floor dry",
    sentence: "With the check valve of “{names}” stuck open, a power cut puts {value} on the floor after {after}.",
    dry: "With the check valve of “{names}” stuck open a pump draws air at {after}.",
    fix: "Lower the operating level or raise the siphon breaks until the sump takes it all without the valve.",
    caution: "Never rely on a check valve alone: lime and snails hold it open.",
  },
  "overTime/siphon-break-clogged": {
    title: "Only the siphon breaks keep the floor dry",
    sentence: "With the siphon breaks of “{names}” clogged, a power cut puts {value} on the floor after {after}.",
    dry: "With the siphon breaks of “{names}” clogged a pump draws air at {after}.",
    fix: "Bring the nozzles nearer to the surface, or lower the operating level.",
    caution: "Look into every siphon break at each service: algae close it.",
  },
  "overTime/top-off-fails": {
    title: "Return pump runs dry without top-off",
    sentence: "Without top-off {value} ends on the floor after {after}.",
    dry: "Without top-off the return pump draws air after {after}: that is how long nobody has to look.",
    fix: "Widen the return chamber, set the intake lower, cover the water, or have somebody look in before then.",
  },
  "overTime/top-off-stuck-open": {
    title: "A stuck top-off wets the floor",
    sentence: "With the top-off stuck open the {place} runs over after {after}: {value} on the floor.",
    dry: "With the top-off stuck open a pump draws air after {after}.",
    fix: "Let the reservoir hold no more than the sump has room for, or add a second float that shuts it.",
  },
  "overTime/tight": {
    title: "Little is left to the rim on a power cut",
    sentence:
      "The {place} stops {value} below its rim; {limit} is the least for ripples and for the hand that sets the level.",
    fix: "Lower the operating level by as much.",
    caution: plug,
  },
  "overTime/running": {
    title: "It runs over with everything working",
    sentence: "Started as drawn, the {place} runs over after {after}, before anything fails.",
    dry: "Started as drawn, a pump draws air after {after}, before anything fails.",
    fix: "Put right what the running state tells first; the scenarios say little until then.",
    caution: plug,
  },
  "overTime/unsolved": {
    title: "A scenario could not be played to its end",
    sentence: "“{scenario}” stopped before its time; what is told of it is what was reached.",
    fix: "Look for parts with strange sizes, and test this case with water.",
  },
  "caution/leakage-protection": {
    title: "Water and mains",
    sentence: "Pumps, lights and hands share this water.",
    fix: leak,
  },
  "caution/check-valve-alone": {
    title: "Check valves stick",
    sentence: "A check valve that has grown over does not close.",
    fix: "Never rely on a check valve alone: leave room in the sump for all that can fall back.",
  },
  "caution/plug-test": {
    title: "Test with the plug pulled",
    sentence: "The sump's room is a reckoning until it has been seen.",
    fix: plug,
  },
};
