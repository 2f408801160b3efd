/**
 * UTF-16 as UTF-8 bytes, so that every later step sees one kind of text. A lone surrogate becomes U+FFFD; an odd last
 * byte is left out (the caller says that the file is cut).
 */
export function utf16ToUtf8(bytes: Uint8Array, littleEndian: boolean): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const unitCount = bytes.length >> 1;
  const output = new Uint8Array(utf8Length(view, unitCount, littleEndian));
  let length = 0;
  for (let index = 0; index < unitCount; index++) {
    let point = view.getUint16(2 * index, littleEndian);
    if (point >= 0xd800 && point <= 0xdfff) {
      const next = index + 1 < unitCount ? view.getUint16(2 * index + 2, littleEndian) : 0;
      const isPair = point < 0xdc00 && next >= 0xdc00 && next <= 0xdfff;
      point = isPair ? 0x10000 + ((point - 0xd800) << 10) + (next - 0xdc00) : 0xfffd;
      if (isPair) index++;
    }
    if (point < 0x80) {
      output[length++] = point;
      continue;
    }
    if (point < 0x800) output[length++] = 0xc0 | (point >> 6);
    else {
      if (point < 0x10000) output[length++] = 0xe0 | (point >> 12);
      else {
        output[length++] = 0xf0 | (point >> 18);
        output[length++] = 0x80 | ((point >> 12) & 0x3f);
      }
      output[length++] = 0x80 | ((point >> 6) & 0x3f);
    }
    output[length++] = 0x80 | (point & 0x3f);
  }
  return output.subarray(0, length);
}

/** Bytes that suffice: one to three a unit. */
function utf8Length(view: DataView, unitCount: number, littleEndian: boolean): number {
  let length = 0;
  for (let index = 0; index < unitCount; index++) {
    const unit = view.getUint16(2 * index, littleEndian);
    length += unit < 0x80 ? 1 : unit < 0x800 ? 2 : 3;
  }
  return length;
}
