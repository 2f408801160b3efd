import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decodeMessage, encodeMessage } from "../../../electron/boundary/host-codec.ts";

const there = (value: unknown) => decodeMessage(encodeMessage(value));

describe("messages of the boundary", () => {
  test("any list of doubles arrives bit for bit, NaN and signed zero included", () => {
    fc.assert(
      fc.property(fc.float64Array({ maxLength: 50 }), (numbers) => {
        const arrived = there({ numbers }) as { numbers: Float64Array };
        expect(arrived.numbers).toBeInstanceOf(Float64Array);
        expect(new Uint8Array(arrived.numbers.buffer)).toEqual(new Uint8Array(Float64Array.from(numbers).buffer));
      }),
    );
  });

  test("any bytes arrive as they were, Node's own kind included", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(there(bytes)).toEqual(bytes);
      }),
    );
    expect(there(Buffer.from([1, 2, 255]))).toEqual(Uint8Array.from([1, 2, 255]));
  });

  test("an array that starts in the middle of a larger buffer arrives without its surroundings", () => {
    const whole = Float64Array.from([1, 2, 3, 4]);
    expect(there(whole.subarray(1, 3))).toEqual(Float64Array.from([2, 3]));
  });

  test("a list of numbers is its little-endian bytes behind the text and a zero byte", () => {
    // By hand: 1.0 is 0x3FF0000000000000, bytes 00 00 00 00 00 00 F0 3F.
    const text = new TextEncoder().encode('{"a":{"$bytes":[0,2]},"b":{"$float64":[2,8]}}');
    const message = [...text, 0, 7, 9, 0, 0, 0, 0, 0, 0, 0xf0, 0x3f];
    expect([...encodeMessage({ a: Uint8Array.of(7, 9), b: Float64Array.of(1) })]).toEqual(message);
  });

  test("bytes that were read are copies, so that the message can be overwritten", () => {
    const message = encodeMessage({ passphrase: Uint8Array.of(1, 2, 3) });
    const read = decodeMessage(message);
    message.fill(0);
    expect(read).toEqual({ passphrase: Uint8Array.of(1, 2, 3) });
  });

  test("content that looks like a mark stays content", () => {
    for (const content of [{ $bytes: [0, 1] }, { $float64: "x", other: 1 }, { $$bytes: 1 }, { $: { $bytes: [] } }]) {
      expect(there(content)).toEqual(content);
    }
  });

  test("plain content arrives equal, and absent members stay absent", () => {
    const content = { text: "Ødegård µ", list: [1, null, true], nested: { empty: {} } };
    expect(there(content)).toEqual(content);
    expect(there({ absent: undefined })).toEqual({});
  });

  test("a number JSON cannot hold is refused rather than turned into null", () => {
    expect(() => encodeMessage({ value: Number.NaN })).toThrow(RangeError);
    expect(() => encodeMessage([Number.POSITIVE_INFINITY])).toThrow(RangeError);
  });

  test("bytes that are no message are refused", () => {
    const none = ["", "{", '{"$bytes":5}', '{"$other":1}', '{"$bytes":"%"}', '{"$bytes":[0,1]}'];
    const cut = ['{"$float64":[0,4]}', '{"$bytes":[0,5]}', '{"$bytes":[-1,2]}', '{"$bytes":[0.5,1]}', '{"$bytes":[0]}'];
    for (const text of [...none, ...cut.map((each) => `${each}\0abcd`)]) {
      expect(() => decodeMessage(new TextEncoder().encode(text)), text).toThrow(SyntaxError);
    }
  });
});
