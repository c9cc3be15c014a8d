/** Findings: {value}, {limit}, {name} and other names in braces are filled in. "backward" is the sentence where the value is
 *  below zero, a flow that runs the wrong way; "unnamed" where the name is empty; "dry" where a scenario ends with a pump that
 *  draws air and a dry floor. */
export const findings = {
  "findings.solve/not-converged.title": "No certain answer",
  "findings.solve/not-converged.sentence":
    "Flows and levels could not be settled in {name}; what is told is the last attempt.",
  "findings.solve/not-converged.fix": "Look for a part with a strange size there.",
  "findings.flow/below-wish.title": "Too little return flow",
  "findings.flow/below-wish.sentence": "{value} goes over the weir; at least {limit} is wished.",
  "findings.flow/below-wish.fix": "Raise the pump's speed, take a stronger pump or ease the line.",
  "findings.flow/above-wish.title": "More return flow than wished",
  "findings.flow/above-wish.sentence": "{value} goes over the weir; {limit} is the most that is wished.",
  "findings.flow/above-wish.fix": "Lower the pump's speed or take a smaller pump.",
  "findings.flow/no-lift.title": "No water gets up",
  "findings.flow/no-lift.sentence": "{name} moves nothing forward: it reaches {value} where {limit} is asked for.",
  "findings.flow/no-lift.backward": "Water runs back in at {name}: {value} the wrong way.",
  "findings.flow/no-lift.fix":
    "Open what is shut after it, take a pump with more head, ease the line, or close the branches that take the flow.",
  "findings.flow/total-turnover-low.title": "Little water movement in all",
  "findings.flow/total-turnover-low.sentence":
    "All pumps together turn the display over {value}; at least {limit} is wished.",
  "findings.flow/total-turnover-low.fix": "Add in-tank pumps or a closed loop.",
  "findings.flow/total-turnover-high.title": "Much water movement in all",
  "findings.flow/total-turnover-high.sentence":
    "All pumps together turn the display over {value}; {limit} is the most that is wished.",
  "findings.flow/total-turnover-high.fix": "Lower the speed of the in-tank pumps.",
  "findings.drain/beyond-quiet.title": "Drain drags air",
  "findings.drain/beyond-quiet.sentence": "Drain “{name}” carries {value}; it stays quiet and vented up to {limit}.",
  "findings.drain/beyond-quiet.fix":
    "Take a larger pipe, or make it a throttled full siphon with a vented drain beside it.",
  "findings.drain/beyond-practice.title": "Drain beyond the rule of thumb",
  "findings.drain/beyond-practice.sentence":
    "Drain “{name}” carries {value}; the trade reckons with {limit} for this bore.",
  "findings.drain/beyond-practice.fix": "Take a larger pipe or a second drain.",
  "findings.drain/beyond-siphon.title": "Drain cannot carry the flow",
  "findings.drain/beyond-siphon.sentence": "{name}: {value} is sent, {limit} is the most it can take.",
  "findings.drain/beyond-siphon.fix": "Send less, or take a larger drain before the pump is switched on.",
  "findings.drain/no-emergency.title": "No emergency drain",
  "findings.drain/no-emergency.sentence": "With the best drain blocked the others carry {value}; {limit} is sent.",
  "findings.drain/no-emergency.fix": "Add a dry emergency standpipe that alone can carry all of it.",
  "findings.drain/emergency-too-small.title": "Emergency drain too small",
  "findings.drain/emergency-too-small.sentence":
    "Drain “{name}” takes {value} with the box full to its rim; {limit} can come.",
  "findings.drain/emergency-too-small.fix": "Enlarge its rim and pipe, lower its inlet, or send less.",
  "findings.drain/emergency-wet.title": "Emergency drain in use",
  "findings.drain/emergency-wet.sentence": "Drain “{name}” carries {value} in normal running; it should stay dry.",
  "findings.drain/emergency-wet.fix": "Open the main drain further or raise the emergency's inlet.",
  "findings.drain/siphon-share-unreachable.title": "Siphon cannot take its share",
  "findings.drain/siphon-share-unreachable.sentence":
    "Drain “{name}” should carry {value}; fully open it can take {limit}.",
  "findings.drain/siphon-share-unreachable.fix": "Take a larger siphon pipe or a smaller share.",
  "findings.drain/siphon-not-clearing-air.title": "Siphon may not start by itself",
  "findings.drain/siphon-not-clearing-air.sentence":
    "Drain “{name}” runs at Froude number {value}; above about {limit} water sweeps the air out.",
  "findings.drain/siphon-not-clearing-air.fix":
    "Take a smaller siphon pipe, or open its valve to start it and then set it.",
  "findings.overflow/box-over-rim.title": "The overflow box runs over",
  "findings.overflow/box-over-rim.sentence": "{value} more comes than the drains can take with the box full.",
  "findings.overflow/box-over-rim.fix": "Send less or enlarge the drains.",
  "findings.overflow/display-over-rim.title": "The display runs over",
  "findings.overflow/display-over-rim.sentence": "The water would stand {value} above the display's rim.",
  "findings.overflow/display-over-rim.fix": "Send less, lengthen or lower the weir, or enlarge the drains.",
  "findings.overflow/little-freeboard.title": "Little room to the rim",
  "findings.overflow/little-freeboard.sentence": "{value} is left to the rim; {limit} is usual.",
  "findings.overflow/little-freeboard.fix": "Lower the crest or lengthen the weir.",
  "findings.overflow/weir-drowned.title": "Weir drowned",
  "findings.overflow/weir-drowned.sentence":
    "The box stands {value} above the weir's crest, so the drains decide the display's level.",
  "findings.overflow/weir-drowned.fix": "Enlarge or lower the drains' inlets.",
  "findings.overflow/siphon-alone.title": "One siphon keeps the floor dry",
  "findings.overflow/siphon-alone.sentence":
    "If the siphon over the glass draws air, all that is pumped up stays in the display: after {after} it runs over.",
  "findings.overflow/siphon-alone.dry":
    "If the siphon over the glass draws air, all that is pumped up stays in the display: the return pump draws air after {after}, before the display runs over.",
  "findings.overflow/siphon-alone.fix":
    "Put a float switch in the display that stops return pump and top-off, give the siphon a second tube, and leave the display room for all that can be pumped up. Drilled glass has no such weakness.",
  "findings.overflow/siphon-runs-dry.title": "The siphon draws air at every power cut",
  "findings.overflow/siphon-runs-dry.sentence":
    "When everything has drained down, the ends of the tubes stand {value} above the water; nothing runs over after the restart.",
  "findings.overflow/siphon-runs-dry.fix":
    "Lower the ends of the tubes below the lowest drain inlet, or raise that inlet.",
  "findings.overflow/siphon-gathers-air.title": "Bubbles may gather in the siphon",
  "findings.overflow/siphon-gathers-air.sentence":
    "The tubes run at Froude number {value}; above about {limit} water sweeps bubbles along, below it they gather at the crest.",
  "findings.overflow/siphon-gathers-air.fix":
    "Take narrower or fewer tubes as far as their head allows, and look for bubbles each week.",
  "findings.overflow/siphon-vacuum.title": "Too much vacuum at the siphon’s crest",
  "findings.overflow/siphon-vacuum.sentence":
    "At the crest {value} of water are left before the water boils; {limit} is the least. The siphon breaks.",
  "findings.overflow/siphon-vacuum.fix": "Lower the crest, or raise the level of the box outside.",
  "findings.pipe/fast.title": "Fast water in a pipe",
  "findings.pipe/fast.sentence": "{value} in {name}; up to {limit} is usual.",
  "findings.pipe/fast.fix": "Take one size up.",
  "findings.pipe/slow.title": "Slow water in a pipe",
  "findings.pipe/slow.sentence": "{value} in {name}; below {limit} dirt settles.",
  "findings.pipe/slow.fix": "Take a smaller pipe or clean it more often.",
  "findings.pipe/bulkhead-undersized.title": "Bulkhead narrower than its pipe",
  "findings.pipe/bulkhead-undersized.sentence": "The bulkhead is {value} wide, the pipe after it {limit}.",
  "findings.pipe/bulkhead-undersized.fix": "Fit a bulkhead of the pipe's size.",
  "findings.pipe/uncertain-regime.title": "Friction uncertain here",
  "findings.pipe/uncertain-regime.sentence":
    "Reynolds number {value} in {name}: between laminar and turbulent no published curve is right.",
  "findings.pipe/uncertain-regime.fix": "Reckon with a third more or less friction in this pipe.",
  "findings.pump/missing.title": "Pump not in the catalogue",
  "findings.pump/missing.sentence":
    "The pump {name} ({one}) is not in the catalogue, where it may have been removed. Nothing else of the design is touched; this place is reckoned without a pump.",
  "findings.pump/missing.inDisplay":
    "The pump {name} (in the display) is not in the catalogue, where it may have been removed. Nothing else of the design is touched; this place is reckoned without a pump.",
  "findings.pump/missing.unnamedTitle": "No pump chosen",
  "findings.pump/missing.unnamed": "This place for a pump is empty: no pump is reckoned with.",
  "findings.pump/missing.fix": "Choose another pump for this place, or enter {name} among the shop’s pumps again.",
  "findings.pump/missing.unnamedFix": "Take one from the ranking.",
  "findings.pump/near-shutoff.title": "Pump hardly moves water",
  "findings.pump/near-shutoff.sentence": "{name} works at {value} of its largest flow; below {limit} it heats up.",
  "findings.pump/near-shutoff.fix": "Take a smaller pump or a lower speed.",
  "findings.pump/near-runout.title": "Pump at the end of its curve",
  "findings.pump/near-runout.sentence":
    "{name} works at {value} of its largest flow; beyond {limit} it is noisy and its data end.",
  "findings.pump/near-runout.fix": "Take a larger pump at lower speed.",
  "findings.pump/beyond-curve.title": "Beyond the pump's last point",
  "findings.pump/beyond-curve.sentence":
    "{name} works at {value} of the last flow the maker gives: the curve is continued, not known.",
  "findings.pump/beyond-curve.fix": "Close a valve a little or take a larger pump.",
  "findings.pump/suction-too-small.title": "Suction pipe narrower than the pump",
  "findings.pump/suction-too-small.sentence": "The suction is {value} wide, the inlet of {name} {limit}.",
  "findings.pump/suction-too-small.fix": "Bring the suction to the inlet's size or larger.",
  "findings.pump/not-flooded.title": "Pump above the water",
  "findings.pump/not-flooded.sentence":
    "{name} stands {value} above the water it draws from and does not prime itself.",
  "findings.pump/not-flooded.fix": "Stand it below the sump's level.",
  "findings.pump/npsh-low.title": "Little pressure at the pump's inlet",
  "findings.pump/npsh-low.sentence": "{value} of suction head is available at {name}; {limit} is usual.",
  "findings.pump/npsh-low.fix": "Shorten and widen the suction.",
  "findings.pump/wrong-place.title": "Pump in the wrong place",
  "findings.pump/wrong-place.sentence": "{name} is not made to stand {placed}.",
  "findings.pump/wrong-place.fix": "Move it or take another pump.",
  "findings.pump/missing-controller.title": "Controller missing",
  "findings.pump/missing-controller.sentence":
    "{name} needs a {controller} that is bought separately and is not in this order.",
  "findings.pump/missing-controller.fix": "Add the controller.",
  "findings.pump/not-controllable.title": "Pump has one speed",
  "findings.pump/not-controllable.sentence": "{name} cannot be set to {value}: it runs at full speed.",
  "findings.pump/not-controllable.fix": "Take a controllable pump, or count with full speed.",
  "findings.pump/below-minimum-speed.title": "Below the pump's lowest speed",
  "findings.pump/below-minimum-speed.sentence": "{name} is set to {value}; {limit} is its lowest.",
  "findings.pump/below-minimum-speed.fix": "Raise the speed or take a smaller pump.",
  "findings.pump/wrong-voltage.title": "Wrong mains voltage",
  "findings.pump/wrong-voltage.sentence": "{name} is made for {value}; the mains give {limit}.",
  "findings.pump/wrong-voltage.fix": "Take the version for this mains.",
  "findings.pump/no-check-valve.title": "Pumps in parallel without check valve",
  "findings.pump/no-check-valve.sentence": "If one of the pumps of {name} stops, water can run back through it.",
  "findings.pump/no-check-valve.fix": "Give each pump a check valve, and never rely on it alone.",
  "findings.outlet/jet-fast.title": "Hard jet",
  "findings.outlet/jet-fast.sentence": "The water leaves at {value}; above {limit} it hisses and hurts.",
  "findings.outlet/jet-fast.fix": "Take a larger nozzle or a second outlet.",
  "findings.device/flow-low.title": "Too little flow through a device",
  "findings.device/flow-low.sentence": "{name} gets {value}; its maker asks for at least {limit}.",
  "findings.device/flow-low.backward":
    "Water runs backward through {name}, {value}; its maker asks for at least {limit} forward.",
  "findings.device/flow-low.fix": "Open its valve or close the other branches a little.",
  "findings.device/flow-high.title": "Too much flow through a device",
  "findings.device/flow-high.sentence": "{name} gets {value}; its maker allows {limit}.",
  "findings.device/flow-high.fix": "Close its valve a little.",
  "findings.sump/over-rim.title": "A chamber of the sump runs over",
  "findings.sump/over-rim.sentence": "Chamber “{name}” stands at {value} while running; the sump’s rim is at {limit}.",
  "findings.sump/over-rim.fix": "Lower the baffle after it or the operating level, or take a higher sump.",
  "findings.sump/does-not-fit.title": "The sump does not fit under the tank",
  "findings.sump/does-not-fit.sentence":
    "Its rim lies {value} above the room’s floor; the tank’s floor lies at {limit}.",
  "findings.sump/does-not-fit.fix":
    "Take a lower sump or a higher stand. Where the sump stands beside the tank nothing is wrong.",
  "findings.sump/too-small.title": "The sump floods on a power cut",
  "findings.sump/too-small.sentence": "{value} falls back; the sump has room for {limit}.",
  "findings.sump/too-small.fix": "Lower the operating level, raise the siphon breaks or take a larger sump.",
  "findings.sump/little-room.title": "Little room in the sump",
  "findings.sump/little-room.sentence": "After a power cut {value} is left; {limit} is usual.",
  "findings.sump/little-room.fix": "Lower the operating level a little.",
  "findings.sump/return-chamber-low.title": "Little water over the return pump",
  "findings.sump/return-chamber-low.sentence": "The return chamber holds {value}; below {limit} a pump draws air.",
  "findings.sump/return-chamber-low.fix": "Raise the operating level.",
  "findings.sump/baffle-drowned.title": "Baffle under water",
  "findings.sump/baffle-drowned.sentence": "The water stands at {value}, above the baffle of {limit}.",
  "findings.sump/baffle-drowned.fix": "Lower the operating level below the baffle.",
  "findings.power/circuit-overload.title": "Circuit loaded too far",
  "findings.power/circuit-overload.sentence":
    "Circuit {name} would carry {value}; {limit} is its limit for continuous load. All pumps and devices of this design are reckoned to hang on the first circuit.",
  "findings.power/circuit-overload.fix":
    "Spread the load over circuits, or enter what hangs elsewhere as another circuit's other load.",
  "findings.heat/beyond-chiller.title": "Pumps heat more than the chiller takes",
  "findings.heat/beyond-chiller.sentence": "{value} go into the water from pumps alone; the chiller takes {limit}.",
  "findings.heat/beyond-chiller.fix": "Take a larger chiller or thriftier pumps.",
  "findings.cost/over-budget.title": "Over budget",
  "findings.cost/over-budget.sentence": "Pumps and devices cost {value}; the budget is {limit}.",
  "findings.cost/over-budget.fix": "See the ranking by price.",
  "findings.cost/mixed-currencies.title": "Two currencies",
  "findings.cost/mixed-currencies.sentence": "Prices in {one} and {other} are not added up.",
  "findings.cost/mixed-currencies.fix": "Give budget and tariff in the catalogue's currency.",
  "findings.sound/over-wish.title": "Louder than wished",
  "findings.sound/over-wish.sentence": "All pumps together make {value}; {limit} is wished.",
  "findings.sound/over-wish.fix": "Run larger pumps slower or move them.",
  "findings.service/no-union.title": "Nothing to open for service",
  "findings.service/no-union.sentence": "Loop {name} has no union and no valve.",
  "findings.service/no-union.fix": "Add a union at the pump.",
  "findings.service/no-valve.title": "No valve before the pump",
  "findings.service/no-valve.sentence":
    "The suction of {name} has no valve, so the pump cannot come out without draining the sump.",
  "findings.service/no-valve.fix": "Add a ball valve with unions.",
  "findings.overTime/power-cut.title": "The floor gets wet on a power cut",
  "findings.overTime/power-cut.sentence":
    "With the power off, the {place} runs over after {after}: {value} on the floor.",
  "findings.overTime/power-cut.dry": "With the power off a pump draws air after {after}.",
  "findings.overTime/power-cut.fix": "Lower the operating level, raise the siphon breaks or take a larger sump.",
  "findings.overTime/restart.title": "The floor gets wet when the power comes back",
  "findings.overTime/restart.sentence":
    "After a power cut the {place} runs over at {after}: {value} on the floor before the drains have caught up.",
  "findings.overTime/restart.dry":
    "After a power cut the return chamber runs so low at {after} that the pump draws air.",
  "findings.overTime/restart.fix":
    "Give the box more height or the emergency drain more bore; start the pump slowly; lower the operating level.",
  "findings.overTime/drain-blocked.title": "One blocked drain wets the floor",
  "findings.overTime/drain-blocked.sentence":
    "With “{names}” blocked, the {place} runs over at {after}: {value} on the floor.",
  "findings.overTime/drain-blocked.dry":
    "With “{names}” blocked the display fills until the pump draws air at {after}; the floor stays dry.",
  "findings.overTime/drain-blocked.fix":
    "Enlarge the emergency drain until it carries the whole flow, or lower the return flow.",
  "findings.overTime/two-drains-blocked.title": "Two blocked drains wet the floor",
  "findings.overTime/two-drains-blocked.sentence":
    "With “{names}” blocked at once, the {place} runs over at {after}: {value} on the floor.",
  "findings.overTime/two-drains-blocked.dry":
    "With “{names}” blocked at once the display fills until the pump draws air at {after}; the floor stays dry.",
  "findings.overTime/two-drains-blocked.fix":
    "Keep so little water in the return chamber that the display can hold it, or enlarge the last drain.",
  "findings.overTime/pump-fails.title": "One failed pump makes trouble",
  "findings.overTime/pump-fails.sentence":
    "With {names} failed, the {place} runs over at {after}: {value} on the floor.",
  "findings.overTime/pump-fails.dry": "With {names} failed a pump draws air at {after}.",
  "findings.overTime/pump-fails.fix":
    "Give each pump a check valve and room in the sump for what runs back without it.",
  "findings.overTime/check-valve-stuck.title": "Only a check valve keeps the floor dry",
  "findings.overTime/check-valve-stuck.sentence":
    "With the check valve of “{names}” stuck open, a power cut puts {value} on the floor after {after}.",
  "findings.overTime/check-valve-stuck.dry":
    "With the check valve of “{names}” stuck open a pump draws air at {after}.",
  "findings.overTime/check-valve-stuck.fix":
    "Lower the operating level or raise the siphon breaks until the sump takes it all without the valve.",
  "findings.overTime/siphon-break-clogged.title": "Only the siphon breaks keep the floor dry",
  "findings.overTime/siphon-break-clogged.sentence":
    "With the siphon breaks of “{names}” clogged, a power cut puts {value} on the floor after {after}.",
  "findings.overTime/siphon-break-clogged.dry":
    "With the siphon breaks of “{names}” clogged a pump draws air at {after}.",
  "findings.overTime/siphon-break-clogged.fix":
    "Bring the nozzles nearer to the surface, or lower the operating level.",
  "findings.overTime/overflow-siphon-lost.title": "One siphon keeps the floor dry",
  "findings.overTime/overflow-siphon-lost.sentence":
    "With air in the siphon over the glass the display runs over after {after}: {value} on the floor.",
  "findings.overTime/overflow-siphon-lost.dry":
    "With air in the siphon over the glass the display rises until a pump draws air after {after}; the floor stays dry as long as nobody refills the sump.",
  "findings.overTime/overflow-siphon-lost.fix":
    "Put a float switch in the display that stops return pump and top-off, give the siphon a second tube, and leave the display room for all that can be pumped up. Drilled glass has no such weakness.",
  "findings.overTime/top-off-fails.title": "Return pump runs dry without top-off",
  "findings.overTime/top-off-fails.sentence": "Without top-off {value} ends on the floor after {after}.",
  "findings.overTime/top-off-fails.dry":
    "Without top-off the return pump draws air after {after}: that is how long nobody has to look.",
  "findings.overTime/top-off-fails.unattended":
    "With the top-off’s reservoir full nobody has to look for {unattended}. Should the top-off fail, the return pump draws air after {after}.",
  "findings.overTime/top-off-fails.fix":
    "Widen the return chamber, set the intake lower, cover the water, or have somebody look in before then.",
  "findings.overTime/top-off-stuck-open.title": "A stuck top-off wets the floor",
  "findings.overTime/top-off-stuck-open.sentence":
    "With the top-off stuck open the {place} runs over after {after}: {value} on the floor.",
  "findings.overTime/top-off-stuck-open.dry": "With the top-off stuck open a pump draws air after {after}.",
  "findings.overTime/top-off-stuck-open.fix":
    "Let the reservoir hold no more than the sump has room for, or add a second float that shuts it.",
  "findings.overTime/tight.title": "Little is left to the rim on a power cut",
  "findings.overTime/tight.sentence":
    "The {place} stops {value} below its rim; {limit} is the least for ripples and for the hand that sets the level.",
  "findings.overTime/tight.fix": "Lower the operating level by as much.",
  "findings.overTime/running.title": "It runs over with everything working",
  "findings.overTime/running.sentence": "Started as drawn, the {place} runs over after {after}, before anything fails.",
  "findings.overTime/running.dry": "Started as drawn, a pump draws air after {after}, before anything fails.",
  "findings.overTime/running.fix": "Put right what the running state tells first; the scenarios say little until then.",
  "findings.overTime/unsolved.title": "A scenario could not be played to its end",
  "findings.overTime/unsolved.sentence":
    "“{scenario}” stopped before its time; what is told of it is what was reached.",
  "findings.overTime/unsolved.fix": "Look for parts with strange sizes, and test this case with water.",
  "findings.caution/leakage-protection.title": "Water and mains",
  "findings.caution/leakage-protection.sentence": "Pumps, lights and hands share this water.",
  "findings.caution/leakage-protection.fix":
    "Every circuit near the water needs leakage protection (RCD or GFCI), every cable a drip loop; local code and a licensed electrician decide.",
  "findings.caution/check-valve-alone.title": "Check valves stick",
  "findings.caution/check-valve-alone.sentence": "A check valve that has grown over does not close.",
  "findings.caution/check-valve-alone.fix":
    "Never rely on a check valve alone: leave room in the sump for all that can fall back.",
  "findings.caution/plug-test.title": "Test with the plug pulled",
  "findings.caution/plug-test.sentence": "The sump's room is a reckoning until it has been seen.",
  "findings.caution/plug-test.fix": "Before you leave, pull the plug and watch where the water stops.",
  "findings.caution.glass":
    "Drilling and lifting glass hurts people: drain first, lift with enough hands and suction cups.",
  "findings.caution.plug": "Before you leave, pull the plug and watch where the water stops.",
  "findings.caution.cement": "Solvent cement: air the room, keep flames away, wear gloves.",
  "findings.caution.leak":
    "Every circuit near the water needs leakage protection (RCD or GFCI), every cable a drip loop; local code and a licensed electrician decide.",
  "findings.caution.strainers": "Strainers catch snails and leaves: look at them every week.",
  "findings.caution.checkValve": "Never rely on a check valve alone: lime and snails hold it open.",
  "findings.caution.siphonBreak": "Look into every siphon break at each service: algae close it.",
  "findings.caution.hangOn":
    "Look at the tubes every day: bubbles at the crest come before air. Try with the plug pulled that the siphon runs again by itself.",
  "findings.name.allDrains": "all drains together",
  "findings.name.levels": "display, box and sump",
  "findings.name.controller": "controller",
  "findings.outlet": "the outlet to {place}",
  "findings.loop": "loop {name}",
  "findings.placed.inSump": "in the sump",
  "findings.placed.external": "outside the sump",
  "findings.placed.inTank": "in the tank",
} as const;
