/** What a customer sees through a share link. */
export function SharePage() {
  return <main className="share-page" />;
}
