import type { ReactNode } from "react";
import { useWords } from "../words/useWords.ts";
import { Conflicts, KeepingState, KeptText } from "./KeptField.tsx";
import type { Item } from "./keeperSource.ts";
import type { KeptRecord, RecordKeeper } from "./recordKeeper.ts";
import { shownField } from "./useKeeper.ts";
import { useTitle } from "./useTitle.ts";
import { dayWords, whenWords } from "./whenWords.ts";

type Named = Item & { readonly name: string; readonly createdAt: string; readonly updatedAt: string };
type NameField = { readonly name?: string | undefined };

interface Props {
  readonly of: keyof typeof kinds;
  readonly keeper: Pick<RecordKeeper<Named, NameField>, "change" | "flush" | "choose">;
  readonly kept: KeptRecord<Named, NameField>;
  readonly readOnly: boolean;
  /** A field's value in words, where it is not what one reads. */
  readonly wordsOf?: (field: string, value: unknown) => string | undefined;
  /** More fields of the block, between the name and the dates. */
  readonly children?: ReactNode;
}

const kinds = {
  job: { list: "#/jobs", all: "desk.jobs", name: "desk.jobName", begun: "desk.begun", block: "title-block" },
  customer: {
    list: "#/customers",
    all: "desk.customers",
    name: "desk.customerName",
    begun: "desk.since",
    block: "title-block title-customer-block",
  },
} as const;

/** The head of a record's sheet: the way back, the title block that keeps itself, and where two people changed the same. */
export function RecordTitle({ of, keeper, kept, readOnly, wordsOf, children }: Props) {
  const words = useWords();
  const { say } = words;
  const kind = kinds[of];
  const name = shownField(kept, "name");
  useTitle(name);
  return (
    <>
      <nav className="sheet-path" aria-label={say("desk.path")}>
        <a href={kind.list}>{say(kind.all)}</a>
      </nav>
      <header className={kind.block}>
        <h1 className="visually-hidden">{name}</h1>
        <KeptText
          className="title-name"
          label={say(kind.name)}
          value={name}
          readOnly={readOnly}
          problem={name.trim() === "" ? say("desk.nameMissing") : undefined}
          onChange={(text) => keeper.change({ name: text })}
          onLeave={() => void keeper.flush()}
        />
        {children}
        <dl className="title-dates">
          <div>
            <dt>{say(kind.begun)}</dt>
            <dd>{dayWords(kept.record.createdAt, words)}</dd>
          </div>
          <div>
            <dt>{say("desk.changed")}</dt>
            <dd>{whenWords(kept.record.updatedAt, new Date(), words)}</dd>
          </div>
        </dl>
        <KeepingState kept={kept} />
      </header>
      <Conflicts
        kept={kept}
        nameOf={(field) => say(`desk.field.${field as "name" | "customerId" | "stage" | "contact" | "notes"}`)}
        {...(wordsOf === undefined ? {} : { wordsOf })}
        onChoose={(field, whose) => keeper.choose(field, whose)}
      />
    </>
  );
}
