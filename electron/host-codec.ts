/**
 * Messages of the boundary as text: JSON in which Float64Array and Uint8Array travel as base64 (little-endian), so
 * that not a bit of a number changes on the way. Runs in Node and in browsers; imports nothing.
 *
 * A member name that starts with `$` is written with one more `$`, so that no content can be mistaken for a mark.
 */
const bytesMark = "$bytes";
const floatsMark = "$float64";

/**
 * Writes a message.
 * @throws RangeError for a number JSON cannot hold (NaN, infinities) outside a Float64Array: that is our own mistake.
 */
export function encodeMessage(value: unknown): string {
  return JSON.stringify(value === undefined ? null : value, function (this: Record<string, unknown>, key, seen) {
    // `this[key]` and not `seen`: Node's Buffer turns itself into a list of numbers before a replacer sees it.
    const raw: unknown = this[key];
    if (raw instanceof Float64Array) return { [floatsMark]: toBase64(bytesOf(raw)) };
    if (raw instanceof Uint8Array) return { [bytesMark]: toBase64(raw) };
    if (typeof raw === "number" && !Number.isFinite(raw)) throw new RangeError(`Member "${key}" is ${raw}.`);
    if (isPlain(raw) && Object.keys(raw).some((name) => name.startsWith("$"))) {
      return Object.fromEntries(
        Object.entries(raw).map(([name, member]) => [name.startsWith("$") ? `$${name}` : name, member]),
      );
    }
    return seen;
  });
}

/**
 * Reads a message.
 * @throws SyntaxError (or a DOMException of atob) when the text is no such message.
 */
export function decodeMessage(text: string): unknown {
  return JSON.parse(text, (_key, value: unknown) => {
    if (!isPlain(value)) return value;
    const names = Object.keys(value);
    if (!names.some((name) => name.startsWith("$"))) return value;
    if (names.length === 1 && names[0] === bytesMark) return fromBase64(value[bytesMark]);
    if (names.length === 1 && names[0] === floatsMark) return floatsOf(fromBase64(value[floatsMark]));
    return Object.fromEntries(
      Object.entries(value).map(([name, member]) => {
        if (!name.startsWith("$")) return [name, member];
        if (!name.startsWith("$$")) throw new SyntaxError(`Unknown mark "${name}".`);
        return [name.slice(1), member];
      }),
    );
  });
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function bytesOf(numbers: Float64Array): Uint8Array {
  return new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength);
}

function floatsOf(bytes: Uint8Array): Float64Array {
  if (bytes.byteLength % 8 !== 0) throw new SyntaxError("A list of numbers is cut off.");
  return new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 8);
}

function toBase64(bytes: Uint8Array): string {
  let binary = "";
  // In pieces: one call with every byte as an argument would overflow the stack.
  for (let start = 0; start < bytes.length; start += 0x8000) {
    binary += String.fromCharCode(...bytes.subarray(start, start + 0x8000));
  }
  return btoa(binary);
}

function fromBase64(text: unknown): Uint8Array {
  if (typeof text !== "string") throw new SyntaxError("Bytes must be base64 text.");
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let index = 0; index < binary.length; index += 1) bytes[index] = binary.charCodeAt(index);
  return bytes;
}
