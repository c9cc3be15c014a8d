/** One box of a file: where it begins, where its content begins, and where it ends [bytes]. */
export interface IsoBox {
  readonly type: string;
  readonly start: number;
  readonly body: number;
  readonly end: number;
}

/** Returns the boxes that stand one after another.
 *  data of the file; from, to where they stand   -> IsoBox[], or undefined where one does not end inside
 *  Source: ISO/IEC 14496-12, 4.2 (size 1 is followed by 64 bits, size 0 reaches to the end). */
export function isoBoxes(data: Buffer, from: number, to: number): readonly IsoBox[] | undefined {
  const boxes: IsoBox[] = [];
  for (let at = from; at < to; ) {
    if (at + 8 > to) return undefined;
    const said = data.readUInt32BE(at);
    const isLong = said === 1;
    if (isLong && at + 16 > to) return undefined;
    const size = said === 0 ? to - at : isLong ? Number(data.readBigUInt64BE(at + 8)) : said;
    const body = at + (isLong ? 16 : 8);
    const end = at + size;
    if (end < body || end > to) return undefined;
    boxes.push({ type: data.toString("latin1", at + 4, at + 8), start: at, body, end });
    at = end;
  }
  return boxes;
}
