import { type Finding, finding, isRefused } from "../../ground/finding.ts";
import { readAnalogScaling } from "./analog-channels.ts";
import { readRates } from "./analog-rate.ts";
import type { C3dFile } from "./c3d-file.ts";
import { framesMissing, noFrames, parametersDamaged } from "./c3d-findings.ts";
import { findFrameLayout, frameBytesOf } from "./frame-layout.ts";
import { headerBytes, readHeader } from "./header.ts";
import { blockBytes } from "./is-c3d.ts";
import { countOfParameter } from "./parameter-values.ts";
import { type Parameters, readParameters } from "./parameters.ts";
import { byteOrderOf, type Words, wordsOf } from "./words.ts";

/** A C3D file as far as it could be understood. */
export interface C3dOutcome {
  /** Absent where not even the parameter section could be read. */
  readonly file?: C3dFile;
  readonly findings: readonly Finding[];
}

/**
 * Reads header and parameter section of a C3D file (The C3D File Format, c3d.org); samples are read from it channel by
 * channel. Takes any bytes that `isC3d` takes, and never throws: what is wrong is a finding. Nothing is allocated for a
 * count that the file has no room for.
 */
export function readC3d(bytes: Uint8Array): C3dOutcome {
  // Byte order first: no number can be read before it is known.
  const parameterBlock = bytes[0] ?? 0;
  const start = (parameterBlock - 1) * blockBytes;
  if (bytes.length < headerBytes || start + 4 > bytes.length) {
    return { findings: [finding("truncated/no-parameters", "refusal", {}, { place: { at: "end of the file" } })] };
  }
  const processor = bytes[start + 3]!;
  const byteOrder = byteOrderOf(processor);
  if (byteOrder === undefined) {
    const place = { at: "byte", byte: start + 3 } as const;
    return { findings: [finding("unreadable/processor", "refusal", { processor }, { place })] };
  }

  // Header and parameters, which state most things twice.
  const words = wordsOf(bytes, byteOrder);
  const header = readHeader(words);
  const parameters = readSection(words, start, header.dataStartBlock);
  const { layout, findings: layoutFindings } = findFrameLayout(header, parameters, parameterBlock + 1);
  const rates = readRates(header, parameters, layout);
  const scaling = readAnalogScaling(parameters, layout);

  const isEmpty = frameBytesOf(layout) > 0 && layout.frames === 0;
  const findings: Finding[] = [
    ...parametersDamaged(parameters.defects),
    ...layoutFindings,
    ...rates.findings,
    ...(layout.channelCount > 0 ? scaling.findings : []),
    ...(isEmpty ? [noFrames(layout.statedFrames)] : []),
  ];
  if (!isRefused(findings) && layout.frames < layout.statedFrames) {
    findings.push(framesMissing(layout.statedFrames, layout.frames, rates.frameRateHz));
  }
  const file: C3dFile = {
    words,
    parameterBlock,
    parameters,
    layout,
    firstFrame: header.firstFrame,
    frameRateHz: rates.frameRateHz,
    analogRateHz: rates.analogRateHz,
    generalScale: scaling.generalScale,
    isUnsigned: scaling.isUnsigned,
    channels: scaling.channels,
  };
  return { file, findings };
}

/**
 * The parameter section, which ends where the data start. Where records leave it, and the parameters themselves say that
 * the data start later than the header says, the header is not believed.
 */
function readSection(words: Words, start: number, dataStartBlock: number): Parameters {
  const statedEnd = (dataStartBlock - 1) * blockBytes;
  const end = statedEnd > start && statedEnd <= words.length ? statedEnd : words.length;
  const parameters = readParameters(words, start, end);
  if (!parameters.leavesSection || end === words.length) return parameters;
  const copy = countOfParameter(readParameters(words, start, words.length), "POINT:DATA_START") ?? 0;
  const laterEnd = (copy - 1) * blockBytes;
  return laterEnd > end && laterEnd <= words.length ? readParameters(words, start, laterEnd) : parameters;
}
