import type { AnalogChannel, C3dFile } from "../../bytes/c3d/c3d-file.ts";
import type { ByteOrder } from "../../bytes/c3d/words.ts";
import type { Limb } from "../../ground/limb.ts";
import type { ForceUnit } from "../force-units.ts";
import { type C3dHint, readHints } from "./c3d-hints.ts";
import type { ForcePlatform } from "./force-platform.ts";
import type { LaboratoryAxis } from "./platform-axes.ts";
import type { PlatformLoads } from "./platform-load.ts";

/** What a C3D file says about its form. */
export interface C3dFacts {
  readonly byteOrder: ByteOrder;
  readonly dataType: "integer" | "float";
  readonly parameterBlock: number;
  readonly dataStartBlock: number;
  readonly points: number;
  readonly firstFrame: number;
  readonly frames: number;
  readonly statedFrames: number;
  readonly frameRateHz?: number;
  readonly samplesPerFrame: number;
  readonly analogRateHz?: number;
  /** The common factor of all channels. */
  readonly generalScale: number;
  /** True where stored integers and offsets carry no sign. */
  readonly isUnsigned: boolean;
}

/** A platform as it was understood. */
export interface PlatformReading extends ForcePlatform {
  /** Degrees between its upwards and the laboratory's; absent where it has no corners. */
  readonly tiltDegrees?: number;
}

/** A platform as a column of force, read like one of a table. */
export interface PlatformColumn {
  /** From 1. */
  readonly position: number;
  readonly name: string;
  readonly role: "force" | "unused";
  readonly limb?: Limb;
  /** Newtons, unless a person or the file says otherwise; "" where the platform is not used. */
  readonly unit: string;
  /** Why it was read this way, in words. */
  readonly reason: string;
  readonly confidence: "certain" | "likely" | "unclear";
}

/** What was understood of a C3D file; shown to the person who imports it. */
export interface C3dReading extends C3dFacts {
  readonly kind: "c3d";
  readonly channels: readonly AnalogChannel[];
  readonly platforms: readonly PlatformReading[];
  /** The laboratory's axis that points up; absent where no platform has corners. */
  readonly upwardAxis?: LaboratoryAxis;
  /** `action`: the file holds the force of the foot on the plate, which was turned. */
  readonly storedForce: "reaction" | "action";
  readonly hints: readonly C3dHint[];
  /** The platforms as columns of force: what a person may state about. */
  readonly columns: readonly PlatformColumn[];
  readonly rateHz?: number;
  readonly rateFrom: "frame rate" | "stated" | "unknown";
  readonly forceUnit?: ForceUnit;
  readonly forceUnitFrom: "header" | "stated" | "format" | "unknown";
}

export function c3dFacts(file: C3dFile): C3dFacts {
  const { layout, frameRateHz, analogRateHz } = file;
  return {
    byteOrder: file.words.byteOrder,
    dataType: layout.dataType,
    parameterBlock: file.parameterBlock,
    dataStartBlock: layout.dataStartBlock,
    points: layout.points,
    firstFrame: file.firstFrame,
    frames: layout.frames,
    statedFrames: layout.statedFrames,
    ...(frameRateHz === undefined ? {} : { frameRateHz }),
    samplesPerFrame: layout.samplesPerFrame,
    ...(analogRateHz === undefined ? {} : { analogRateHz }),
    generalScale: file.generalScale,
    isUnsigned: file.isUnsigned,
  };
}

/** The part of a reading that no answer changes. */
export function describeC3d(
  file: C3dFile,
  { platforms, loads, upwardAxis, signToUp }: PlatformLoads,
): Omit<C3dReading, "columns" | "rateHz" | "rateFrom" | "forceUnit" | "forceUnitFrom"> {
  return {
    kind: "c3d",
    ...c3dFacts(file),
    channels: file.channels,
    platforms: platforms.map((platform): PlatformReading => {
      const load = loads.find((each) => each.platform === platform);
      return load?.axes === undefined ? platform : { ...platform, tiltDegrees: load.tiltDegrees };
    }),
    ...(upwardAxis === undefined ? {} : { upwardAxis }),
    storedForce: signToUp < 0 ? "reaction" : "action",
    hints: readHints(file),
  };
}
