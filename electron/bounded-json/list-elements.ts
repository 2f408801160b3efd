const [space, tab, lineFeed, carriageReturn] = [0x20, 0x09, 0x0a, 0x0d];
const [quote, backslash, comma] = [0x22, 0x5c, 0x2c];
const [openList, closeList, openObject, closeObject] = [0x5b, 0x5d, 0x7b, 0x7d];

/**
 * The bytes of each element of a JSON list, one after another, so that a long list need not be in memory as values.
 * @throws SyntaxError where the document is no list; an element that is no JSON is left to its reader
 */
export function* listElements(document: Uint8Array): Generator<Uint8Array> {
  let at = afterBlanks(document, 0);
  if (document[at] !== openList) throw new SyntaxError("A list is expected.");
  let start = at + 1;
  let depth = 1;
  let isEmpty = document[afterBlanks(document, start)] === closeList;
  while (depth > 0) {
    at += 1;
    if (at >= document.length) throw new SyntaxError("The list has no end.");
    const byte = document[at];
    if (byte === quote) {
      at += 1;
      while (at < document.length && document[at] !== quote) at += document[at] === backslash ? 2 : 1;
    } else if (byte === openList || byte === openObject) depth += 1;
    else if (byte === closeList || byte === closeObject) depth -= 1;
    const ends = depth === 0 || (depth === 1 && byte === comma);
    if (!ends) continue;
    if (!isEmpty) yield document.subarray(start, at);
    isEmpty = false;
    start = at + 1;
  }
  if (document[at] !== closeList || afterBlanks(document, at + 1) !== document.length) {
    throw new SyntaxError("The list does not end as one.");
  }
}

function afterBlanks(document: Uint8Array, start: number): number {
  let at = start;
  while ([space, tab, lineFeed, carriageReturn].includes(document[at] ?? -1)) at += 1;
  return at;
}
