/** Returns the secret in a link's hash.
 *  hash of the page's address   -> secret, empty where there is none that a server could have made
 *  Example: tokenOf("#abc")  ->  "abc" */
export function tokenOf(hash: string): string {
  const text = hash.replace(/^#\/?/, "");
  // What no link of ours can be is not asked about.
  return /^[\w-]{1,200}$/.test(text) ? text : "";
}
