import { isC3d } from "../../bytes/c3d/is-c3d.ts";
import type { Reader } from "../reader.ts";
import { inspectC3d } from "./inspect-c3d.ts";
import { readC3dRecording } from "./read-c3d-recording.ts";

/** Reads C3D files: their force platforms. Saved layouts know files by columns, so none speaks of a C3D file. */
export const c3dReader: Reader = {
  kind: "c3d",
  recognises: isC3d,
  read: (file, { answers }, settings) => ({ file, ...readC3dRecording(file.bytes, answers, settings) }),
  inspect: (file, { sampleIndices }, settings) => inspectC3d(file.bytes, sampleIndices, settings),
};
