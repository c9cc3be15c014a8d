import { bareHeif } from "./bareHeif.ts";
import { bareJpeg } from "./bareJpeg.ts";
import { barePng } from "./barePng.ts";
import { bareWebp } from "./bareWebp.ts";

const ways: Readonly<Record<string, (bytes: Uint8Array) => Uint8Array | undefined>> = {
  "image/jpeg": bareJpeg,
  "image/png": barePng,
  "image/webp": bareWebp,
  "image/avif": bareHeif,
  "image/heic": bareHeif,
  "image/heif": bareHeif,
};

/** Returns a picture without what a camera or a program wrote beside it, such as the place where it was taken: a photo of a
 *  tank would tell where a customer lives. The coded picture, its colours and how the camera was held stay.
 *  bytes of a whole file; contentType as found from its content   -> bytes; those given where it is no picture; undefined
 *  where a picture's parts cannot be told apart, so that nobody can say what is in it
 *  Throws: never. */
export function barePicture(bytes: Uint8Array, contentType: string): Uint8Array | undefined {
  const way = ways[contentType];
  return way === undefined ? bytes : way(bytes);
}
