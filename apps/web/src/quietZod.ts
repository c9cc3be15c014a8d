import { config } from "zod";

// Zod tries at start whether it may compile code from text, which the page's content security forbids and reports. Told
// beforehand it does not try; this file must be imported before anything that makes a schema.
config({ jitless: true });
