import type { Placement } from "@tidewright/catalogue";
import { type ReactNode, useId } from "react";
import { useWords } from "../../words/useWords.ts";
import { ChoiceField, FigureField, TextField, Told } from "./SheetFields.tsx";
import { useSheet } from "./sheetContext.ts";

const placements: readonly Placement[] = ["inSump", "external", "inTank"];

/** What a pump is and how it is run: the head of its data sheet. */
export function FirstGroups() {
  const { form, isNew } = useSheet();
  return (
    <div className="pump-groups pump-groups-first">
      <Group of="what">
        <TextField name="maker" />
        <TextField name="model" />
        <TextField name="id" fixed={!isNew} about={isNew ? "pumps.hint.id" : "pumps.hint.idKept"} className="wide" />
      </Group>
      <Group of="place">
        <Places />
        {form.placements.includes("external") || form.externalCooling !== "" ? (
          <ChoiceField
            name="externalCooling"
            choices={[
              ["", "pumps.cooling."],
              ["air", "pumps.cooling.air"],
              ["water", "pumps.cooling.water"],
            ]}
          />
        ) : null}
        <FigureField name="maximumTemperature" optional />
        <SelfPriming />
      </Group>
      <Group of="control">
        <ChoiceField
          name="control"
          choices={[
            ["constant", "pumps.control.constant"],
            ["controllable", "pumps.control.controllable"],
          ]}
        />
        {form.control === "constant" ? null : <Controlled />}
      </Group>
    </div>
  );
}

/** What stands below the curve. */
export function LastGroups() {
  return (
    <div className="pump-groups pump-groups-last">
      <Group of="electric">
        <FigureField name="ratedPower" />
        <FigureField name="powerFactor" about="pumps.hint.powerFactor" />
        <FigureField name="voltage" />
        <FigureField name="frequency" about="pumps.hint.frequency" />
      </Group>
      <Group of="connections">
        <FigureField name="inletBore" about="pumps.hint.bore" />
        <TextField name="inlet" optional about="pumps.hint.connection" />
        <FigureField name="outletBore" about="pumps.hint.bore" />
        <TextField name="outlet" optional about="pumps.hint.connection" />
      </Group>
      <Group of="trade">
        <FigureField name="soundLevel" about="pumps.hint.soundLevel" />
        <FigureField name="price" about="pumps.hint.price" />
        <FigureField name="warrantyMonths" optional />
        <FigureField name="bestEfficiencyFlow" optional />
      </Group>
      <Group of="source">
        <TextField name="sourceTitle" about="pumps.hint.title" />
        <TextField name="sourceWhere" optional />
        <ChoiceField
          name="sourceStatus"
          choices={[
            ["published", "pumps.status.published"],
            ["common practice", "pumps.status.common practice"],
            ["from memory", "pumps.status.from memory"],
            ["invented", "pumps.status.invented"],
          ]}
        />
        <ChoiceField
          name="chart"
          choices={[
            ["points", "pumps.chart.points"],
            ["reading", "pumps.chart.reading"],
          ]}
        />
        <TextField name="note" optional lines={2} className="wide" />
      </Group>
    </div>
  );
}

interface GroupProps {
  readonly of: "what" | "place" | "control" | "electric" | "connections" | "trade" | "source";
  readonly children: ReactNode;
}

function Group({ of, children }: GroupProps) {
  const { say } = useWords();
  const id = useId();
  return (
    <section className="pump-group" aria-labelledby={id}>
      <h2 id={id}>{say(`pumps.group.${of}`)}</h2>
      <div className="pump-fields">{children}</div>
    </section>
  );
}

function Places() {
  const { say } = useWords();
  const id = useId();
  const { form, change, readOnly, at } = useSheet();
  const problems = at("placements");
  return (
    <fieldset className="pump-places wide" aria-describedby={problems.length > 0 ? `${id}-told` : undefined}>
      <legend className="visually-hidden">{say("pumps.field.placements")}</legend>
      {placements.map((placement, index) => (
        <label key={placement} className="field-check">
          <input
            type="checkbox"
            data-place={index === 0 ? "placements" : undefined}
            disabled={readOnly}
            checked={form.placements.includes(placement)}
            onChange={({ target }) => {
              const { checked } = target;
              change((now) => ({
                ...now,
                placements: placements.filter((each) => (each === placement ? checked : now.placements.includes(each))),
              }));
            }}
          />
          {say(`pumps.place.${placement}`)}
        </label>
      ))}
      <Told problems={problems} id={`${id}-told`} />
    </fieldset>
  );
}

function SelfPriming() {
  const { say } = useWords();
  const { form, change, readOnly } = useSheet();
  return (
    <label className="field-check pump-check">
      <input
        type="checkbox"
        disabled={readOnly}
        checked={form.selfPriming}
        onChange={({ target }) => {
          const { checked } = target;
          change((now) => ({ ...now, selfPriming: checked }));
        }}
      />
      {say("pumps.field.selfPriming")}
    </label>
  );
}

function Controlled() {
  const { form } = useSheet();
  const separate = form.controller === "separate";
  return (
    <>
      <FigureField name="minimumSpeed" />
      <ChoiceField
        name="controller"
        choices={[
          ["", "pumps.controller."],
          ["included", "pumps.controller.included"],
          ["separate", "pumps.controller.separate"],
        ]}
      />
      {form.controller === "" ? null : (
        <>
          <TextField name="controllerLabel" optional />
          <TextField name="controllerRef" optional={!separate} about="pumps.hint.ref" />
          <FigureField name="controllerPrice" optional={!separate} />
        </>
      )}
    </>
  );
}
