import { type Customer, routes } from "@tidewright/protocol";
import { useDeferredValue, useMemo, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { mayRule } from "../state/mayRule.ts";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { customerHash } from "./deskAddress.ts";
import { ListPage } from "./list/ListPage.tsx";
import { SearchedList } from "./list/SearchedList.tsx";
import { foldedOnce, matchWords } from "./matchWords.ts";
import { NameForm } from "./NameForm.tsx";
import { refusalWords } from "./refusalWords.ts";
import { customers, useCustomers, useJobs } from "./shopLists.ts";
import { UnusedCustomers } from "./UnusedCustomers.tsx";
import { whenWords } from "./whenWords.ts";

const searched = foldedOnce<Customer>((customer) => `${customer.name} ${customer.contact} ${customer.notes}`);
const rowHeight = 56;

/** Everybody the shop has worked for, by name. */
export function CustomerList() {
  const words = useWords();
  const { say } = words;
  const list = useCustomers();
  const { items, total, state } = list;
  const jobsOf = useJobsOf();
  const { session } = useSession();
  const [search, setSearch] = useState("");
  const looked = useDeferredValue(search);
  const ordered = useMemo(
    () => [...items].sort((a, b) => a.name.localeCompare(b.name, words.language)),
    [items, words.language],
  );
  const shown = useMemo(() => matchWords(ordered, searched, looked), [ordered, looked]);
  return (
    <ListPage
      name="customers"
      title={say("desk.customers")}
      state={state}
      hands={mayWork(session) ? <NewCustomer /> : null}
      instead={state === "whole" && total === 0 ? <p className="list-empty">{say("desk.noCustomers")}</p> : null}
      foot={mayRule(session) ? <UnusedCustomers /> : null}
    >
      <SearchedList
        list={list}
        search={search}
        searchHint={say("desk.searchCustomerHint")}
        onSearch={setSearch}
        count={say("desk.countCustomers", { shown: shown.length, total })}
        shown={shown}
        height={rowHeight}
        row={(customer, index) => <CustomerRow customer={customer} index={index} jobs={jobsOf.get(customer.id) ?? 0} />}
      />
    </ListPage>
  );
}

/** Returns how many jobs each customer has, by their id. */
function useJobsOf(): ReadonlyMap<string, number> {
  const { items } = useJobs();
  return useMemo(() => {
    const found = new Map<string, number>();
    for (const { customerId } of items)
      if (customerId !== null) found.set(customerId, (found.get(customerId) ?? 0) + 1);
    return found;
  }, [items]);
}

function NewCustomer() {
  const words = useWords();
  const { say } = words;
  const [open, setOpen] = useState(false);
  const create = async (name: string) => {
    const answer = await ask(routes.createCustomer, { body: { name } });
    if (!answer.ok) return refusalWords(answer, words);
    customers.put(answer.value);
    location.hash = customerHash(answer.value.id);
    return undefined;
  };
  return (
    <div className="list-actions">
      <button type="button" className="action action-strong" onClick={() => setOpen(true)}>
        {say("desk.newCustomer")}
      </button>
      <Sheet name="new-customer" title={say("desk.newCustomer")} open={open} onClose={() => setOpen(false)}>
        <NameForm label={say("desk.customerName")} initial="" done={say("desk.createCustomer")} onDone={create} />
      </Sheet>
    </div>
  );
}

interface RowProps {
  readonly customer: Customer;
  readonly index: number;
  readonly jobs: number;
}

function CustomerRow({ customer, index, jobs }: RowProps) {
  const words = useWords();
  return (
    <a className="row row-of-customer" href={customerHash(customer.id)} data-row={index} data-customer={customer.id}>
      <span className="row-name">{customer.name}</span>
      <span className="row-customer">{customer.contact.split("\n")[0]}</span>
      <span className="row-stage">{words.say("desk.jobsOf", { count: jobs })}</span>
      <time className="row-when" dateTime={customer.updatedAt}>
        {whenWords(customer.updatedAt, new Date(), words)}
      </time>
    </a>
  );
}
