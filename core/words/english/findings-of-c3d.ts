import type { C3dCount, C3dFindings } from "../../ground/findings/c3d-findings.ts";
import { listInWords } from "../../ground/plain-words.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { hertz } from "./file-parts-in-words.ts";

const checkRate = "Check the rate of the recording.";
const copyAgain = "Copy the file again.";
const exportAgain = "Export the recording again if figures look wrong.";

const counts: Readonly<Record<C3dCount, string>> = {
  points: "the number of points",
  "data type": "the form of the data",
  "data start": "the block where the data start",
  frames: "the number of frames",
};

/** What is said of the bytes of a C3D file. */
export const findingsOfC3d: FindingSentences<C3dFindings> = {
  "parts-contradict/statements": ({ about, statements, used }) => ({
    message: `Parts of the file differ about ${counts[about]}: ${statements.map(({ from, value }) => `${from} says ${value}`).join(", ")}; ${used} fits the length of the file and was used.`,
    action: exportAgain,
  }),
  "parts-contradict/analog-values": ({
    analogValues,
    samplesPerFrame,
    channels,
    usedChannels,
    usedSamplesPerFrame,
  }) => ({
    message: `The header counts ${analogValues} analog values a frame in ${samplesPerFrame} samples (words 3 and 10), ANALOG:USED ${channels} channels; ${usedChannels} channels with ${usedSamplesPerFrame} samples fit the length of the file and were used.`,
    action: exportAgain,
  }),
  "parts-contradict/frames-left-over": ({ stated, surplus }) => ({
    message: `Behind the ${stated} stated frames the file holds room for ${surplus} more, which were not read.`,
    action: exportAgain,
  }),
  "scaling-assumed/general-scale": () => ({
    message: "ANALOG:GEN_SCALE is missing; 1 was taken.",
    action: exportAgain,
  }),
  "scaling-assumed/channels": ({ name, fromChannel, toChannel, taken }) => ({
    message: `${name} is missing for ${fromChannel === 1 ? "all channels" : `channels ${fromChannel} to ${toChannel}`}; ${taken} was taken.`,
    action: exportAgain,
  }),
  "parameters-damaged": ({ defects, others }) => ({
    message: `The parameter section is not quite in order: ${listInWords(defects.map(({ at, what }) => `${what} (byte ${at})`))}${others > 0 ? `, and ${others} more` : ""}.`,
    action: "Check what was understood of the file.",
  }),
  "unreadable/processor": ({ processor }) => ({
    message: `The parameter section names the processor ${processor}, which is none of 84, 85 and 86, so the order of its bytes is unknown.`,
    action: copyAgain,
  }),
  "truncated/no-parameters": () => ({
    message: "The file ends before its parameter section.",
    action: copyAgain,
  }),
  "truncated/no-frames": ({ stated }) => ({
    message: `The file states ${stated} frames and holds none.`,
    action: copyAgain,
  }),
  "truncated/frames-missing": ({ stated, held }) => ({
    message: `The file states ${stated} frames and holds ${held}: the last ${stated - held === 1 ? "one is" : `${stated - held} are`} missing.`,
    action: "Copy the file again if more of the recording is expected.",
  }),
  "rate-contradicts/frame-rates": ({ parameterHz, headerHz, usedHz }) => ({
    message: `POINT:RATE says ${hertz(parameterHz)} and the header ${hertz(headerHz)}; ${hertz(usedHz)} was used.`,
    action: checkRate,
  }),
  "rate-contradicts/analog-rate": ({ analogHz, samplesPerFrame, frameRateHz, usedHz }) => ({
    message: `ANALOG:RATE says ${hertz(analogHz)}, but ${samplesPerFrame} samples in each of ${hertz(frameRateHz)} frames make ${hertz(usedHz)}, which was used.`,
    action: checkRate,
  }),
};
