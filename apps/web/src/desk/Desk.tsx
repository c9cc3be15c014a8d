/** The desk: jobs, customers, the shop. */
export function Desk() {
  return <main className="desk" />;
}
