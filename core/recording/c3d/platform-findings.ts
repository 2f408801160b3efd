import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { type Finding, finding } from "../../ground/finding.ts";
import type { Settings } from "../../settings/settings.ts";
import { statedPlatforms } from "./force-platform.ts";
import { platformAxes } from "./platform-axes.ts";
import type { PlatformLoads } from "./platform-load.ts";

/** What is doubtful about the platforms of a file; a refusal where none can be read. */
export function platformFindings(file: C3dFile, all: PlatformLoads, settings: Settings): Finding[] {
  const { platforms, loads } = all;
  const { points, channelCount } = file.layout;
  const stated = statedPlatforms(file);
  if (channelCount === 0) return [finding("no-force-platform/no-analog-channel", "refusal", { points })];
  if (stated === 0) return [finding("no-force-platform/none-described", "refusal", { channelCount })];
  const unreadable: Finding[] = platforms.flatMap(({ name, problem }) =>
    problem === undefined
      ? []
      : [finding("platform-unreadable/problem", "warning", { name, problem }, { place: { at: "name", name } })],
  );
  if (stated > platforms.length) {
    const span = { first: platforms.length + 1, last: stated };
    unreadable.push(
      finding("platform-unreadable/not-described", "warning", span, { place: { at: "platforms", ...span } }),
    );
  }
  if (loads.length === 0) {
    return [...unreadable, finding("no-force-platform/none-readable", "refusal", {})];
  }
  return [...unreadable, ...cornerFindings(all, settings), ...calibrationFindings(all), ...signFindings(all)];
}

function cornerFindings({ loads, upwardAxis }: PlatformLoads, settings: Settings): Finding[] {
  return loads.flatMap(({ platform: { name, corners }, tiltDegrees, isTilted }): Finding[] => {
    const place = { at: "name", name } as const;
    if (platformAxes(corners) === undefined) {
      return [finding("platform-tilted/no-plane", "warning", { name }, { place })];
    }
    // A platform with a tilt has an axis that it is tilted from.
    if (upwardAxis === undefined) return [];
    const figures = { name, degrees: tiltDegrees, upwardAxis };
    if (tiltDegrees >= settings.platformSteepestDegrees) {
      return [finding("platform-tilted/turned", "warning", figures, { place })];
    }
    return isTilted ? [finding("platform-tilted/by-corners", "warning", figures, { place })] : [];
  });
}

function calibrationFindings({ loads }: PlatformLoads): Finding[] {
  return loads
    .filter(({ platform }) => platform.type === 4 && platform.calibration.length === 0)
    .map(({ platform: { name } }) =>
      finding("scaling-assumed/calibration", "warning", { name }, { place: { at: "name", name } }),
    );
}

function signFindings({ loads, signToUp }: PlatformLoads): Finding[] {
  if (signToUp < 0) return [];
  return [finding("sign-turned/platforms", "note", { names: loads.map(({ platform }) => platform.name) })];
}
