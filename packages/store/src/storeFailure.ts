/** What keeps the store from working: `inUse` another program holds the folder; `newer` a later program wrote it;
 *  `diskFull` no room; `damaged` the file is not what was written; `unreachable` no such folder, file or server;
 *  `notEmpty` a restore would overwrite what is there. */
export type StoreFailureCode = "inUse" | "newer" | "diskFull" | "damaged" | "unreachable" | "notEmpty";

/** Thrown when a resource fails, never for what a user typed; the message says what to do. */
export class StoreFailure extends Error {
  readonly code: StoreFailureCode;
  constructor(code: StoreFailureCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "StoreFailure";
    this.code = code;
  }
}
