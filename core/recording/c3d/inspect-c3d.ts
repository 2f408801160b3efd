import { channelValues, sampleCountOf } from "../../bytes/c3d/analog-samples.ts";
import type { AnalogChannel } from "../../bytes/c3d/c3d-file.ts";
import { numbersOf } from "../../bytes/c3d/parameter-values.ts";
import { readC3d } from "../../bytes/c3d/read-c3d.ts";
import type { Finding } from "../../ground/finding.ts";
import type { Settings } from "../../settings/settings.ts";
import type { C3dHint } from "./c3d-hints.ts";
import { type C3dFacts, c3dFacts, describeC3d, type PlatformReading } from "./c3d-reading.ts";
import type { LaboratoryAxis } from "./platform-axes.ts";
import { platformFindings } from "./platform-findings.ts";
import { loadPlatforms } from "./platform-load.ts";
import { newtonsPerForceUnit, platformUnit } from "./platform-unit.ts";
import { type SeriesFigures, seriesFigures } from "./series-figures.ts";
import { minus, type Vector } from "./vector.ts";

/** One analog channel, scaled. */
export interface InspectedChannel extends AnalogChannel, SeriesFigures {
  readonly rateHz?: number;
}

/** One force platform. */
export interface InspectedPlatform extends PlatformReading {
  /** Upwards of the platform in the laboratory; absent where its corners span no plane. */
  readonly upwardDirection?: Vector;
  /** Unit of the stored force: of the file's label, or newtons where the format implies them; "" where unknown. */
  readonly unit: string;
  readonly rateHz?: number;
  /** Force along the plate's z axis as the file stores it, in `unit`; absent where the platform cannot be read. */
  readonly stored?: SeriesFigures;
  /** Vertical ground reaction force, upward positive, newtons; absent where unit or platform is unknown. */
  readonly upwardNewtons?: SeriesFigures;
}

/** Everything a reader needs to check what was understood of a C3D file; plain data. */
export interface C3dInspection {
  readonly kind: "c3d";
  /** Absent where the file could not be read at all, with the rest. */
  readonly facts?: C3dFacts;
  readonly hints: readonly C3dHint[];
  readonly sampleCount: number;
  readonly channels: readonly InspectedChannel[];
  readonly platforms: readonly InspectedPlatform[];
  readonly upwardAxis?: LaboratoryAxis;
  readonly storedForce?: "reaction" | "action";
  /** First and last frame over which the file permits a zero to be taken (FORCE_PLATFORM:ZERO); not applied. */
  readonly zeroFrames: readonly number[];
  readonly findings: readonly Finding[];
}

/**
 * Inspects a C3D file.
 * @param sampleIndices analog samples, from 0, at which values are given with full precision
 */
export function inspectC3d(bytes: Uint8Array, sampleIndices: readonly number[], settings: Settings): C3dInspection {
  const { file, findings } = readC3d(bytes);
  if (file === undefined) {
    return { kind: "c3d", hints: [], sampleCount: 0, channels: [], platforms: [], zeroFrames: [], findings };
  }
  const all = loadPlatforms(file, settings);
  const { platforms, hints, upwardAxis, storedForce } = describeC3d(file, all);
  const rate = file.analogRateHz === undefined ? {} : { rateHz: file.analogRateHz };
  return {
    kind: "c3d",
    facts: c3dFacts(file),
    hints,
    sampleCount: sampleCountOf(file),
    channels: file.channels.map((channel) => ({
      ...channel,
      ...rate,
      ...seriesFigures(channelValues(file, channel.number), sampleIndices),
    })),
    platforms: platforms.map((platform): InspectedPlatform => {
      const load = all.loads.find((each) => each.platform.number === platform.number);
      if (load === undefined) return { ...platform, unit: "", ...rate };
      const { unit, written } = platformUnit(file, platform, undefined);
      const up = load.axes?.z;
      return {
        ...platform,
        ...(up === undefined ? {} : { upwardDirection: minus([0, 0, 0], up) }),
        unit: unit ?? written,
        ...rate,
        stored: seriesFigures(load.force.z, sampleIndices),
        ...(unit === undefined
          ? {}
          : {
              upwardNewtons: seriesFigures(
                load.upward.map((value) => value * newtonsPerForceUnit[unit]),
                sampleIndices,
              ),
            }),
      };
    }),
    ...(upwardAxis === undefined ? {} : { upwardAxis }),
    ...(all.loads.length === 0 ? {} : { storedForce }),
    zeroFrames: numbersOf(file.parameters, "FORCE_PLATFORM:ZERO", "unsigned") ?? [],
    findings: [...findings, ...platformFindings(file, all, settings)],
  };
}
