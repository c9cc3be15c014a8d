/** The part of yauzl 3 that is used here; the package brings no types. */
declare module "yauzl" {
  import type { Readable } from "node:stream";

  export interface Entry {
    readonly fileName: string;
    readonly compressedSize: number;
    readonly uncompressedSize: number;
    readonly relativeOffsetOfLocalHeader: number;
    readonly compressionMethod: number;
    isEncrypted(): boolean;
  }
  export interface LocalHeader {
    readonly fileDataStart: number;
  }
  export interface ZipFile {
    readonly entryCount: number;
    readonly comment: string;
    eachEntry(): AsyncIterable<Entry>;
    openReadStreamPromise(entry: Entry): Promise<Readable>;
    readLocalFileHeaderPromise(entry: Entry, options: { readonly minimal: true }): Promise<LocalHeader>;
    close(): void;
  }
  export function fromBufferPromise(
    buffer: Buffer,
    options: {
      readonly strictFileNames?: boolean;
      readonly validateEntrySizes?: boolean;
      readonly lazyEntries?: boolean;
    },
  ): Promise<ZipFile>;
}
