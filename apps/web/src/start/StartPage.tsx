/** The guided start: a first design from what a customer can say. */
export function StartPage() {
  return <main className="start-page" />;
}
