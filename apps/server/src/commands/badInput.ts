/** What a command was given that it cannot work with: a sentence of what, and how to mend it. */
export class BadInput extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "BadInput";
  }
}
