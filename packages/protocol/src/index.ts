/** What server and screens say to each other: one table of routes, from which the server's checks, the OpenAPI document,
 *  the screens' client and the table of who may do what are all made. */

export { entityTag, versionOf } from "./entityTag.ts";
export { type Reader, readerCookie, readReader, writeReader } from "./reader.ts";
export * from "./records.ts";
export { type Access, type Content, type ParamsOf, type Route, route } from "./route.ts";
export { type Routes, routes } from "./routes.ts";
