/**
 * Messages of the boundary as bytes: JSON in UTF-8, and where the message holds a Uint8Array or a Float64Array, a zero
 * byte and behind it what they hold (little-endian), so that not a bit of a number changes on the way and a passphrase
 * never becomes part of a text. The JSON says where in that tail each begins. Runs in Node and in browsers; imports
 * nothing.
 *
 * A member name that starts with `$` is written with one more `$`, so that no content can be mistaken for a mark.
 */
const bytesMark = "$bytes";
const floatsMark = "$float64";

/** JSON text has no such byte. */
const tailBegins = 0;

/**
 * Writes a message.
 * @throws RangeError for a number JSON cannot hold (NaN, infinities) outside a Float64Array: that is our own mistake.
 */
export function encodeMessage(value: unknown): Uint8Array<ArrayBuffer> {
  const tail: Uint8Array[] = [];
  let tailLength = 0;
  const placed = (bytes: Uint8Array): readonly [start: number, length: number] => {
    tail.push(bytes);
    tailLength += bytes.byteLength;
    return [tailLength - bytes.byteLength, bytes.byteLength];
  };
  const text = JSON.stringify(value === undefined ? null : value, function (this: Record<string, unknown>, key, seen) {
    // `this[key]` and not `seen`: Node's Buffer turns itself into a list of numbers before a replacer sees it.
    const raw: unknown = this[key];
    if (raw instanceof Float64Array) return { [floatsMark]: placed(bytesOf(raw)) };
    if (raw instanceof Uint8Array) return { [bytesMark]: placed(raw) };
    if (typeof raw === "number" && !Number.isFinite(raw)) throw new RangeError(`Member "${key}" is ${raw}.`);
    if (isPlain(raw) && Object.keys(raw).some((name) => name.startsWith("$"))) {
      return Object.fromEntries(
        Object.entries(raw).map(([name, member]) => [name.startsWith("$") ? `$${name}` : name, member]),
      );
    }
    return seen;
  });
  const head = new TextEncoder().encode(text);
  if (tail.length === 0) return head;
  const message = new Uint8Array(head.byteLength + 1 + tailLength);
  message.set(head);
  message[head.byteLength] = tailBegins;
  let at = head.byteLength + 1;
  for (const bytes of tail) {
    message.set(bytes, at);
    at += bytes.byteLength;
  }
  return message;
}

/** The JSON of a message, without the bytes behind it. */
export function textOfMessage(message: Uint8Array): Uint8Array {
  const end = message.indexOf(tailBegins);
  return end === -1 ? message : message.subarray(0, end);
}

/**
 * Reads a message. What it gives out are copies: the message can be overwritten afterwards.
 * @throws SyntaxError when the bytes are no such message
 */
export function decodeMessage(message: Uint8Array): unknown {
  const head = textOfMessage(message);
  const text = new TextDecoder().decode(head);
  const tail = message.subarray(Math.min(message.length, head.length + 1));
  let left = tail.byteLength;
  const taken = (place: unknown): Uint8Array => {
    const bytes = fromTail(tail, place);
    // Each byte is wanted once: a message that asks for the same ones again and again could fill the memory.
    left -= bytes.byteLength;
    if (left < 0) throw new SyntaxError("Bytes of the message are wanted twice.");
    return bytes;
  };
  return JSON.parse(text, (_key, value: unknown) => {
    if (!isPlain(value)) return value;
    const names = Object.keys(value);
    if (!names.some((name) => name.startsWith("$"))) return value;
    if (names.length === 1 && names[0] === bytesMark) return taken(value[bytesMark]);
    if (names.length === 1 && names[0] === floatsMark) return floatsOf(taken(value[floatsMark]));
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

function fromTail(tail: Uint8Array, place: unknown): Uint8Array {
  const [start, length] = Array.isArray(place) && place.length === 2 ? (place as unknown[]) : [];
  if (!isCount(start) || !isCount(length)) throw new SyntaxError("The place of bytes must be two whole numbers.");
  if (start + length > tail.byteLength) throw new SyntaxError("Bytes of the message are missing.");
  // A buffer of its own from the beginning: a small array would lie among objects that are moved about and leave copies.
  const bytes = new Uint8Array(new ArrayBuffer(length));
  bytes.set(tail.subarray(start, start + length));
  return bytes;
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}
