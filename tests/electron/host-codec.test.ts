import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decodeMessage, encodeMessage } from "../../electron/host-codec.ts";

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

  test("bytes longer than one piece of the encoder arrive whole", () => {
    const bytes = Uint8Array.from({ length: 100_001 }, (_, index) => (index * 7) % 256);
    expect(there(bytes)).toEqual(bytes);
  });

  test("a list of numbers is base64 of its little-endian bytes", () => {
    // By hand: 1.0 is 0x3FF0000000000000, bytes 00 00 00 00 00 00 F0 3F, base64 AAAAAAAA8D8=.
    expect(encodeMessage(Float64Array.of(1))).toBe('{"$float64":"AAAAAAAA8D8="}');
  });

  test("content that looks like a mark stays content", () => {
    for (const content of [{ $bytes: "AAAA" }, { $float64: "x", other: 1 }, { $$bytes: 1 }, { $: { $bytes: [] } }]) {
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

  test("texts that are no message are refused", () => {
    for (const text of ["", "{", '{"$float64":"AAAA"}', '{"$bytes":5}', '{"$other":1}', '{"$bytes":"%"}']) {
      expect(() => decodeMessage(text), text).toThrow();
    }
  });
});
