import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { c3dWithoutForces } from "../../bytes/c3d/c3d-findings.ts";
import { type Finding, proseFinding } from "../../ground/finding.ts";
import { countOf, listInWords } from "../../ground/plain-words.ts";
import type { Settings } from "../../settings/settings.ts";
import { statedPlatforms } from "./force-platform.ts";
import { platformAxes } from "./platform-axes.ts";
import type { PlatformLoads } from "./platform-load.ts";

const exportForces = "Export the recording with its force platforms.";

/** What is doubtful about the platforms of a file; a refusal where none can be read. */
export function platformFindings(file: C3dFile, all: PlatformLoads, settings: Settings): Finding[] {
  const { platforms, loads } = all;
  const { points, channelCount } = file.layout;
  const stated = statedPlatforms(file);
  if (channelCount === 0) {
    return [
      c3dWithoutForces(
        `The file holds ${countOf(points, "point")} and no analog channels, so it holds no forces.`,
        exportForces,
      ),
    ];
  }
  if (stated === 0) {
    const message = `The file holds ${countOf(channelCount, "analog channel")}, and its parameters describe no force platform.`;
    return [c3dWithoutForces(message, exportForces)];
  }
  const unreadable = platforms.flatMap(({ name, problem }) =>
    problem === undefined ? [] : [platformUnreadable(name, problem)],
  );
  if (stated > platforms.length) {
    unreadable.push(
      platformUnreadable(`force platforms ${platforms.length + 1} to ${stated}`, "nothing in the file describes them"),
    );
  }
  if (loads.length === 0) {
    return [...unreadable, c3dWithoutForces("No force platform of the file can be read.", exportForces)];
  }
  return [...unreadable, ...cornerFindings(all, settings), ...calibrationFindings(all), ...signFindings(all)];
}

function platformUnreadable(name: string, problem: string): Finding {
  return proseFinding(
    "platform-unreadable",
    "warning",
    `The forces of ${name} cannot be read: ${problem}.`,
    "Export the recording again, if the platform was used.",
    { where: name },
  );
}

function cornerFindings({ loads, upwardAxis }: PlatformLoads, settings: Settings): Finding[] {
  return loads.flatMap(({ platform: { name, corners }, tiltDegrees, isTilted }): Finding[] => {
    const where = { where: name };
    if (platformAxes(corners) === undefined) {
      const message = `The corners of ${name} span no plane, so it was taken as level.`;
      return [proseFinding("platform-tilted", "warning", message, "Check that the plate is level.", where)];
    }
    if (tiltDegrees >= settings.platformSteepestDegrees) {
      const message = `The corners turn ${name} by ${tiltDegrees.toFixed(0)} degrees from the laboratory's ${upwardAxis}, which other platforms show as upwards, so it was taken as level.`;
      return [proseFinding("platform-tilted", "warning", message, "Check the order of the corners.", where)];
    }
    if (!isTilted) return [];
    const message = `The corners tilt ${name} by ${tiltDegrees.toFixed(1)} degrees; its force was taken along the laboratory's ${upwardAxis}.`;
    return [proseFinding("platform-tilted", "warning", message, "Check the corners of the plate.", where)];
  });
}

function calibrationFindings({ loads }: PlatformLoads): Finding[] {
  return loads
    .filter(({ platform }) => platform.type === 4 && platform.calibration.length === 0)
    .map(({ platform: { name } }) =>
      proseFinding(
        "scaling-assumed",
        "warning",
        `The calibration matrix of ${name} is missing; its channels were taken as they are.`,
        "Check that standing still shows the body weight.",
        { where: name },
      ),
    );
}

function signFindings({ loads, signToUp }: PlatformLoads): Finding[] {
  if (signToUp < 0) return [];
  const names = listInWords(loads.map(({ platform }) => platform.name));
  return [
    proseFinding(
      "sign-turned",
      "note",
      `The file holds the force of the foot on the plate, downwards; ${names} ${loads.length === 1 ? "was" : "were"} turned.`,
      "Check that standing still shows body weight upwards.",
    ),
  ];
}
