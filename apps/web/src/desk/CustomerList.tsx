import { useWindowVirtualizer } from "@tanstack/react-virtual";
import { type Customer, routes } from "@tidewright/protocol";
import { useDeferredValue, useLayoutEffect, useMemo, useRef, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { customerHash } from "./deskAddress.ts";
import { foldedOnce, matchWords } from "./matchWords.ts";
import { NameForm } from "./NameForm.tsx";
import { refusalWords } from "./refusalWords.ts";
import { customers, useCustomers, useJobs } from "./shopLists.ts";
import { UnusedCustomers } from "./UnusedCustomers.tsx";
import { useListKeys } from "./useListKeys.ts";
import { whenWords } from "./whenWords.ts";

const searched = foldedOnce<Customer>((customer) => `${customer.name} ${customer.contact} ${customer.notes}`);
const rowHeight = 56;

/** Everybody the shop has worked for, by name. */
export function CustomerList() {
  const words = useWords();
  const { say } = words;
  const { items, total, state } = useCustomers();
  const { session } = useSession();
  const [search, setSearch] = useState("");
  const looked = useDeferredValue(search);
  const ordered = useMemo(
    () => [...items].sort((a, b) => a.name.localeCompare(b.name, words.language)),
    [items, words.language],
  );
  const shown = useMemo(() => matchWords(ordered, searched, looked), [ordered, looked]);
  const input = useRef<HTMLInputElement>(null);
  const owns = session?.role === "owner" || session?.who === "thisMachine";
  return (
    <section className="job-list" aria-labelledby="customers-title">
      <header className="list-head">
        <h1 id="customers-title">{say("desk.customers")}</h1>
        {mayWork(session) ? <NewCustomer /> : null}
      </header>
      {state === "refused" ? <p className="field-problem">{say("desk.listRefused")}</p> : null}
      {state === "whole" && total === 0 ? (
        <p className="list-empty">{say("desk.noCustomers")}</p>
      ) : (
        <>
          <div className="list-tools">
            <label className="search-field">
              <span className="field-label">{say("desk.search")}</span>
              <input
                ref={input}
                className="text-input"
                type="search"
                autoComplete="off"
                placeholder={say("desk.searchCustomerHint")}
                value={search}
                onChange={(event) => setSearch(event.target.value)}
              />
            </label>
          </div>
          <p className="list-count quiet" role="status">
            {state === "loading" && items.length === 0
              ? say("desk.loading")
              : say("desk.countCustomers", { shown: shown.length, total })}
          </p>
          <Rows shown={shown} input={input} />
          {shown.length === 0 && items.length > 0 ? <p className="list-none">{say("desk.noneFound")}</p> : null}
        </>
      )}
      {owns ? <UnusedCustomers /> : null}
    </section>
  );
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

interface RowsProps {
  readonly shown: readonly Customer[];
  readonly input: { readonly current: HTMLInputElement | null };
}

function Rows({ shown, input }: RowsProps) {
  const words = useWords();
  const { items } = useJobs();
  const counts = useMemo(() => {
    const found = new Map<string, number>();
    for (const { customerId } of items)
      if (customerId !== null) found.set(customerId, (found.get(customerId) ?? 0) + 1);
    return found;
  }, [items]);
  const list = useRef<HTMLOListElement>(null);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => setTop(list.current?.offsetTop ?? 0), []);
  const rows = useWindowVirtualizer({
    count: shown.length,
    estimateSize: () => rowHeight,
    overscan: 8,
    scrollMargin: top,
    getItemKey: (index) => shown[index]?.id ?? index,
  });
  const keys = useListKeys({ count: shown.length, list, input, reveal: (index) => rows.scrollToIndex(index) });
  const now = new Date();
  return (
    <ol className="rows" ref={list} style={{ height: rows.getTotalSize() }} onKeyDown={keys}>
      {rows.getVirtualItems().map(({ index, start, key }) => {
        const customer = shown[index];
        if (customer === undefined) return null;
        return (
          <li
            key={key}
            aria-setsize={shown.length}
            aria-posinset={index + 1}
            style={{ height: rowHeight, transform: `translateY(${start - top}px)` }}
          >
            <a
              className="row row-of-customer"
              href={customerHash(customer.id)}
              data-row={index}
              data-customer={customer.id}
            >
              <span className="row-name">{customer.name}</span>
              <span className="row-customer">{customer.contact.split("\n")[0]}</span>
              <span className="row-stage">{words.say("desk.jobsOf", { count: counts.get(customer.id) ?? 0 })}</span>
              <time className="row-when" dateTime={customer.updatedAt}>
                {whenWords(customer.updatedAt, now, words)}
              </time>
            </a>
          </li>
        );
      })}
    </ol>
  );
}
