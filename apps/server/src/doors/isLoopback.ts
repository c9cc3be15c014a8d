/** Returns whether an address is this machine's own, by number; "localhost" counts, other names do not.
 *  address as a socket or an option says it   -> true for 127.0.0.0/8 and ::1
 *  Source: RFC 1122, 3.2.1.3 (g); RFC 4291, 2.5.3 and 2.5.5.2; RFC 6761, 6.3 for the name.
 *  Example: isLoopback("::ffff:127.0.0.1")  ->  true
 *  Example: isLoopback("127.0.0.1.example")  ->  false
 *  Example: isLoopback("0.0.0.0")  ->  false */
export function isLoopback(address: string | undefined): boolean {
  const bare = (address ?? "")
    .toLowerCase()
    .replace(/^\[|\]$/g, "")
    .replace(/^::ffff:/, "");
  return bare === "localhost" || bare === "::1" || /^127(\.\d{1,3}){3}$/.test(bare);
}
