import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { readC3d } from "../../bytes/c3d/read-c3d.ts";
import { type Finding, finding, isRefused } from "../../ground/finding.ts";
import type { Settings } from "../../settings/settings.ts";
import type { Recording } from "../recording.ts";
import type { C3dAnswers } from "./c3d-answers.ts";
import { decideRate } from "./c3d-rate.ts";
import { type C3dReading, describeC3d, type PlatformColumn } from "./c3d-reading.ts";
import { platformFindings } from "./platform-findings.ts";
import { loadPlatforms, type PlatformLoad, type PlatformLoads } from "./platform-load.ts";
import { limbOn, makePlatformPlates, proofOf, type UsedPlatform } from "./platform-plates.ts";
import { assignPlatforms, type PlatformRole } from "./platform-roles.ts";
import { platformUnit } from "./platform-unit.ts";
import { findUsableSamples } from "./usable-samples.ts";

/** A C3D file as a recording, or as far as it was understood. */
export interface C3dRecording {
  readonly reading?: C3dReading;
  /** Absent when the file was refused. */
  readonly recording?: Recording;
  readonly findings: readonly Finding[];
}

/**
 * Reads a C3D file as a recording: the vertical ground reaction force of its force platforms. Any bytes that `isC3d`
 * takes are allowed; what is wrong or had to be decided is in the findings.
 */
export function readC3dRecording(bytes: Uint8Array, answers: C3dAnswers, settings: Settings): C3dRecording {
  // Bytes to channels, channels to platforms with their loads.
  const { file, findings: fileFindings } = readC3d(bytes);
  if (file === undefined) return { findings: fileFindings };
  const all = loadPlatforms(file, settings);
  const aboutPlatforms = platformFindings(file, all, settings);

  // Which platform carried which foot, in which unit, at which rate.
  const { roles, findings: roleFindings } = assignPlatforms(
    all.loads,
    (load) => labelsOf(file, load),
    answers,
    settings,
  );
  const used = all.loads.flatMap((load): UsedPlatform[] => {
    const limb = roles.get(load.platform.number)?.limb;
    return limb === undefined ? [] : [{ load, limb, unit: platformUnit(file, load.platform, answers.unit) }];
  });
  const rate = decideRate(file, answers.rateHz, settings);
  const unit = used[0]?.unit ?? { from: "unknown", written: "" };
  const { rateHz, rateFrom } = rate;
  const reading: C3dReading = {
    ...describeC3d(file, all),
    columns: describeColumns(all, roles, used, answers),
    ...(rateHz === undefined ? {} : { rateHz }),
    rateFrom,
    ...(unit.unit === undefined ? {} : { forceUnit: unit.unit }),
    forceUnitFrom: unit.from,
  };
  const doubts = [...fileFindings, ...aboutPlatforms];
  if (isRefused(doubts)) return { reading, findings: doubts };
  const findings: Finding[] = [...doubts, ...roleFindings, ...used.flatMap(unitFindings), ...rate.findings];
  if (answers.time !== undefined && answers.time !== "none")
    findings.push(finding("columns-unclear/no-time-in-c3d", "note", {}));
  if (isRefused(findings) || rateHz === undefined) return { reading, findings };

  // Newtons on an even time base.
  const span = findUsableSamples(
    used.map(({ load }) => load.upward),
    rateHz,
  );
  findings.push(...span.findings);
  if (isRefused(findings)) return { reading, findings };
  const recording: Recording = {
    rateHz,
    sampleCount: span.end - span.start,
    timeOriginSeconds: originOf(file) + span.start / rateHz,
    plates: makePlatformPlates(used, span, answers),
  };
  return { reading, recording, findings };
}

/** Frames are counted from 1 at the beginning of the original recording, of which the file may hold a later part. */
function originOf({ firstFrame, frameRateHz }: C3dFile): number {
  return frameRateHz === undefined || firstFrame < 1 ? 0 : (firstFrame - 1) / frameRateHz;
}

function labelsOf(file: C3dFile, { platform }: PlatformLoad): string[] {
  return platform.channels.map((channel) => file.channels[channel - 1]?.label ?? "");
}

function describeColumns(
  { platforms }: PlatformLoads,
  roles: ReadonlyMap<number, PlatformRole>,
  used: readonly UsedPlatform[],
  answers: C3dAnswers,
): PlatformColumn[] {
  return platforms.map(({ number, name, problem }): PlatformColumn => {
    const base = { position: number, name };
    const own = used.find(({ load }) => load.platform.number === number);
    const reason = problem ?? roles.get(number)?.reason ?? "";
    if (own === undefined) return { ...base, role: "unused", unit: "", reason, confidence: "certain" };
    const { limb, unit } = own;
    const confidence = limb === "both" || proofOf(answers) !== "unproved" ? "certain" : "likely";
    return { ...base, role: "force", limb: limbOn(limb, answers), unit: unit.unit ?? unit.written, reason, confidence };
  });
}

function unitFindings({ load: { platform }, unit }: UsedPlatform): readonly Finding[] {
  const figures = { name: platform.name, written: unit.written };
  const parts = { place: { at: "name", name: platform.name }, answers: [{ unit: "N" }] } as const;
  if (unit.from === "unknown") return [finding("unit-not-stated/platform", "refusal", figures, parts)];
  if (unit.from === "format" && platform.type !== 4) {
    return [finding("unit-not-stated/newtons-taken", "warning", figures, parts)];
  }
  return [];
}
