import { type Customer, routes } from "@tidewright/protocol";
import { useId, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { Problem } from "../fields/Problem.tsx";
import { useWords } from "../words/useWords.ts";
import { beginHere } from "./beginHere.ts";
import { customerHash } from "./deskAddress.ts";
import { KeptText } from "./KeptField.tsx";
import { folded, foldedOnce, matchWords } from "./matchWords.ts";
import { refusalWords } from "./refusalWords.ts";
import { customers, useCustomers } from "./shopLists.ts";

const searched = foldedOnce<Customer>((customer) => `${customer.name} ${customer.contact}`);
/** How many of those found are offered at once. */
const offered = 8;

interface Props {
  readonly customerId: string | null;
  /** The name, where the job itself brings it. */
  readonly customerName: string | null | undefined;
  readonly readOnly: boolean;
  readonly onChoose: (customerId: string | null) => void;
}

/** Whose job it is: a link to the customer, and a sheet to choose another or a new one. */
export function CustomerChoice({ customerId, customerName, readOnly, onChoose }: Props) {
  const { say } = useWords();
  const { items } = useCustomers();
  const [open, setOpen] = useState(false);
  const name = customerName ?? items.find(({ id }) => id === customerId)?.name;
  const choose = (id: string | null) => {
    setOpen(false);
    onChoose(id);
  };
  return (
    <div className="title-customer field">
      <span className="field-label">{say("desk.customer")}</span>
      <div className="title-line">
        {customerId === null ? (
          <span className="title-none">{say("desk.noCustomer")}</span>
        ) : (
          <a className="plain-link" href={customerHash(customerId)}>
            {name ?? say("desk.loading")}
          </a>
        )}
        {readOnly ? null : (
          <button type="button" className="tool" onClick={() => setOpen(true)}>
            {say(customerId === null ? "desk.chooseCustomer" : "desk.otherCustomer")}
          </button>
        )}
      </div>
      <Sheet name="customer" title={say("desk.whoseJob")} open={open} onClose={() => setOpen(false)}>
        <Choosing present={customerId} onChoose={choose} />
      </Sheet>
    </div>
  );
}

interface ChoosingProps {
  readonly present: string | null;
  readonly onChoose: (customerId: string | null) => void;
}

function Choosing({ present, onChoose }: ChoosingProps) {
  const words = useWords();
  const { say } = words;
  const id = useId();
  const { items } = useCustomers();
  const [search, setSearch] = useState("");
  const [contact, setContact] = useState("");
  const [problem, setProblem] = useState<string>();
  const found = matchWords(items, searched, search);
  const create = async () => {
    const name = search.trim();
    if (name === "") {
      setProblem(say("desk.customerNameMissing"));
      return;
    }
    // Enter after the whole name of somebody known means them, not a second one of the same name.
    const known = items.find((customer) => folded(customer.name) === folded(name));
    if (known !== undefined && contact.trim() === "") {
      onChoose(known.id);
      return;
    }
    const answer = await ask(routes.createCustomer, { body: { name, contact } });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    customers.put(answer.value);
    onChoose(answer.value.id);
  };
  return (
    <form
      className="choosing"
      onSubmit={(event) => {
        event.preventDefault();
        void create();
      }}
    >
      <label className="field" htmlFor={id}>
        <span className="field-label">{say("desk.customerNameOrSearch")}</span>
        <input
          id={id}
          className="text-input"
          autoComplete="off"
          maxLength={200}
          value={search}
          ref={beginHere}
          onChange={(event) => {
            setSearch(event.target.value);
            setProblem(undefined);
          }}
        />
      </label>
      <ul className="choices">
        {found.slice(0, offered).map((customer) => (
          <li key={customer.id}>
            <button
              type="button"
              className="choice"
              aria-pressed={customer.id === present}
              onClick={() => onChoose(customer.id)}
            >
              <span>{customer.name}</span>
              <span className="quiet">{customer.contact.split("\n")[0]}</span>
            </button>
          </li>
        ))}
      </ul>
      {found.length > offered ? (
        <p className="quiet">{say("desk.moreFound", { count: found.length - offered })}</p>
      ) : null}
      <fieldset className="desk-fieldset">
        <legend>{say("desk.newCustomer")}</legend>
        <KeptText
          label={say("desk.contactOf", { name: search.trim() || "…" })}
          value={contact}
          lines={2}
          most={2000}
          onChange={setContact}
        />
        <Problem text={problem} />
        <p className="sheet-actions">
          {present === null ? null : (
            <button type="button" className="action" onClick={() => onChoose(null)}>
              {say("desk.withoutCustomer")}
            </button>
          )}
          <button type="submit" className="action action-strong">
            {say("desk.createCustomer")}
          </button>
        </p>
      </fieldset>
    </form>
  );
}
