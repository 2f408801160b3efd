import fc from "fast-check";
import { inspectC3d } from "../../../../core/recording/c3d/inspect-c3d.ts";
import { readC3dRecording } from "../../../../core/recording/c3d/read-c3d-recording.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";
import { standingFile } from "../../bytes/c3d/standing-file.ts";
import { writeC3d } from "../../bytes/c3d/write-c3d.ts";

const wholeFiles = (["Intel", "DEC", "SGI"] as const).map((byteOrder) =>
  writeC3d(standingFile({ byteOrder, dataType: byteOrder === "DEC" ? "float" : "integer" })),
);

const whole = fc.constantFrom(...wholeFiles);
const processor = fc.constantFrom(84, 85, 86);

/** A whole file with any header behind its mark. */
const anyHeader = fc.tuple(whole, fc.uint8Array({ minLength: 22, maxLength: 22 })).map(([file, header]) => {
  const bytes = file.slice();
  bytes.set(header, 2);
  return bytes;
});

/** A whole file with any bytes over a stretch of its parameter section, and any byte order. */
const anyParameters = fc
  .tuple(whole, fc.nat({ max: 1020 }), fc.uint8Array({ minLength: 1, maxLength: 64 }), processor)
  .map(([file, at, patch, byteOrder]) => {
    const bytes = file.slice();
    bytes.set(patch, 512 + 4 + at);
    bytes[512 + 3] = byteOrder;
    return bytes;
  });

/** A whole file cut anywhere, with a few flipped bits. */
const anyCut = fc
  .tuple(whole, fc.double({ min: 0, max: 1, noNaN: true }), fc.array(fc.nat({ max: 16_383 }), { maxLength: 4 }))
  .map(([file, part, places]) => {
    const bytes = file.slice(0, Math.round(part * file.length));
    for (const place of places) if (bytes.length > 0) bytes[(place >> 3) % bytes.length]! ^= 1 << (place & 7);
    return bytes;
  });

/** Any bytes behind the mark. */
const anyBytes = fc.tuple(fc.uint8Array({ maxLength: 3000 }), processor).map(([rest, byteOrder]) => {
  const bytes = Uint8Array.from([2, 0x50, ...rest]);
  if (bytes.length > 515) bytes[515] = byteOrder;
  return bytes;
});

/** C3D files with damage of every kind, and bytes that only begin like one. */
export const anyC3d: fc.Arbitrary<Uint8Array> = fc.oneof(anyHeader, anyParameters, anyCut, anyBytes);

/**
 * Reads and inspects bytes as a C3D file, and says what must not be: a file neither read nor refused, a recording that
 * holds anything but numbers, an inspection that is no plain data. Undefined when all is well; throws what the reader throws.
 */
export function complaintAboutC3d(bytes: Uint8Array): string | undefined {
  const { recording, findings } = readC3dRecording(bytes, {}, defaultSettings);
  const isRefused = findings.some(({ severity }) => severity === "refusal");
  if (isRefused === (recording !== undefined)) return "it is both read and refused, or neither";
  if (recording?.plates.some(({ force }) => !force.every(Number.isFinite))) return "its force holds no numbers";
  const { platforms } = inspectC3d(bytes, [0, bytes.length], defaultSettings);
  if (recording !== undefined && platforms.length === 0) return "it is read and its inspection shows no platform";
  return undefined;
}
