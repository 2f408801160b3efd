import type { PlatformFindings } from "../../ground/findings/platform-findings.ts";
import { countOf, listInWords } from "../../ground/plain-words.ts";
import type { FindingSentences, Told } from "../finding-sentences.ts";
import { hertz } from "./file-parts-in-words.ts";

const checkRate = "Check the rate of the recording.";
const exportAgain = "Export the recording again; no value is put in the place of a missing one.";
const exportForces = "Export the recording with its force platforms.";
const exportIfUsed = "Export the recording again, if the platform was used.";
const leaveRateOut = "Leave the stated rate out to use the file's own.";
const statePlatforms = "State the platform of each foot.";
const stateUnit = "State the unit: N, kN, kgf or lbf.";

/** What is said of the force platforms of a C3D file. */
export const findingsOfPlatforms: FindingSentences<PlatformFindings> = {
  "no-force-platform/no-analog-channel": ({ points }) => ({
    message: `The file holds ${countOf(points, "point")} and no analog channels, so it holds no forces.`,
    action: exportForces,
  }),
  "no-force-platform/none-described": ({ channelCount }) => ({
    message: `The file holds ${countOf(channelCount, "analog channel")}, and its parameters describe no force platform.`,
    action: exportForces,
  }),
  "no-force-platform/none-readable": () => ({
    message: "No force platform of the file can be read.",
    action: exportForces,
  }),
  "platform-unreadable/problem": ({ name, problem }) => ({
    message: `The forces of ${name} cannot be read: ${problem}.`,
    action: exportIfUsed,
  }),
  "platform-unreadable/not-described": ({ first, last }) => ({
    message: `The forces of force platforms ${first} to ${last} cannot be read: nothing in the file describes them.`,
    action: exportIfUsed,
  }),
  "platform-tilted/no-plane": ({ name }) => ({
    message: `The corners of ${name} span no plane, so it was taken as level.`,
    action: "Check that the plate is level.",
  }),
  "platform-tilted/turned": ({ name, degrees, upwardAxis }) => ({
    message: `The corners turn ${name} by ${degrees.toFixed(0)} degrees from the laboratory's ${upwardAxis}, which other platforms show as upwards, so it was taken as level.`,
    action: "Check the order of the corners.",
  }),
  "platform-tilted/by-corners": ({ name, degrees, upwardAxis }) => ({
    message: `The corners tilt ${name} by ${degrees.toFixed(1)} degrees; its force was taken along the laboratory's ${upwardAxis}.`,
    action: "Check the corners of the plate.",
  }),
  "scaling-assumed/calibration": ({ name }) => ({
    message: `The calibration matrix of ${name} is missing; its channels were taken as they are.`,
    action: "Check that standing still shows the body weight.",
  }),
  "sign-turned/platforms": ({ names }) => ({
    message: `The file holds the force of the foot on the plate, downwards; ${listInWords(names)} ${names.length === 1 ? "was" : "were"} turned.`,
    action: "Check that standing still shows body weight upwards.",
  }),

  "columns-unclear/no-platform-loaded": ({ names, newtons }) => ({
    message: `The file has ${names.length} force platforms that can be read, and none shows a load that changes by ${newtons} N or an athlete who stands on it: ${listInWords(names)}.`,
    action: statePlatforms,
  }),
  "columns-unclear/platforms-loaded": ({ readable, names }) => ({
    message: `The file has ${readable} force platforms that can be read, and ${names.length} of them carry load: ${listInWords(names)}. It is not clear which foot stood on which.`,
    action: statePlatforms,
  }),
  "columns-unclear/no-such-platform": ({ key, names }) => ({
    message: `There is no platform "${key}" that can be read; the file has ${listInWords(names)}.`,
    action: statePlatforms,
  }),
  "columns-unclear/platform-twice": ({ platform }) => ({
    message: `Force platform ${platform} was stated twice.`,
    action: statePlatforms,
  }),
  "columns-unclear/total-beside-foot": () => ({
    message: "A platform for both feet was stated beside one for a single foot.",
    action: statePlatforms,
  }),
  "columns-unclear/no-time-in-c3d": () => ({
    message: "A C3D file has no time column; what was stated about one was not used.",
    action: "Leave the time column out.",
  }),
  "platforms-left-out": ({ names }) => ({
    message: `No load comes onto ${listInWords(names)}, which ${names.length === 1 ? "was" : "were"} left out.`,
    action: "State the platforms if others were meant.",
  }),
  "plates-unproved/platform-order": ({ left, right }) => ({
    message: `The file does not say which foot stood on which platform; ${left} was taken as left and ${right} as right.`,
    action: "Record a single-leg trial, or state the platform of each foot.",
  }),

  "unit-not-stated/platform": ({ name, written }) => ({
    message: `The vertical channel of ${name} says ${written}, which is no unit of force.`,
    action: stateUnit,
  }),
  "unit-not-stated/newtons-taken": ({ name, written }) => ({
    message: `The vertical channel of ${name} ${written === "" ? "names no unit" : `says "${written}"`}; newtons were taken, as C3D force platforms are scaled to them.`,
    action: stateUnit,
  }),
  "rate-missing/no-frame-rate": () => ({
    message: "The file states no frame rate.",
    action: "State the sampling rate.",
  }),
  "rate-missing/stated-of-no-plate": ({ rateHz }) => ofNoPlate(rateHz),
  "rate-contradicts/of-no-plate": ({ rateHz }) => ofNoPlate(rateHz),
  "rate-contradicts/frame-rate": ({ statedHz, ownHz }) => ({
    message: `${hertz(statedHz)} was stated, but the file gives ${hertz(ownHz)}.`,
    action: leaveRateOut,
  }),
  "rate-contradicts/frame-rate-used": ({ statedHz, ownHz }) => ({
    message: `${hertz(statedHz)} was stated, but the file gives ${hertz(ownHz)}, which was used.`,
    action: leaveRateOut,
  }),
  "cells-unreadable/too-few-samples": () => ({
    message: "The file holds fewer than two samples that are numbers.",
    action: exportAgain,
  }),
  "cells-unreadable/samples-inside": ({ samples, firstSeconds }) => ({
    message: `Inside the recording ${countOf(samples, "sample")} hold no number, the first at ${firstSeconds.toFixed(3)} s.`,
    action: exportAgain,
  }),
  "cells-unreadable/samples-at-ends": ({ samples }) => ({
    message: `${countOf(samples, "sample")} at the ends without numbers ${samples === 1 ? "was" : "were"} left out.`,
    action: "Export the recording again if the missing part matters.",
  }),
};

function ofNoPlate(rateHz: number): Told {
  return { message: `A rate of ${hertz(rateHz)} is none that a force plate has.`, action: checkRate };
}
