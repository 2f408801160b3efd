import { type Finding, finding } from "../../ground/finding.ts";
import type { C3dCount } from "../../ground/findings/c3d-findings.ts";
import type { FrameLayout } from "./c3d-file.ts";
import type { C3dHeader } from "./header.ts";
import { blockBytes } from "./is-c3d.ts";
import { countOfParameter, numberOf, wideNumberOf } from "./parameter-values.ts";
import type { Parameters } from "./parameters.ts";

/**
 * The number of frames a file cannot state more of in 16 bits; a longer recording states its length elsewhere. No
 * setting: the format says so.
 */
const mostFramesOfWord = 65535;

/** A count as one place states it; in order of trust. */
interface Statement<Value> {
  readonly value: Value;
  readonly from: string;
}

interface AnalogShape {
  readonly channelCount: number;
  readonly samplesPerFrame: number;
}

type Shape = Omit<FrameLayout, "frames">;

/**
 * Finds where the samples stand. Header and parameter section state most counts twice; where they differ, the
 * combination counts whose length fits the file best, and a finding names the difference.
 */
export function findFrameLayout(
  header: C3dHeader,
  parameters: Parameters,
  firstDataBlock: number,
): { readonly layout: FrameLayout; readonly findings: readonly Finding[] } {
  const points = stated([
    ["the header (word 2)", header.points],
    ["POINT:USED", countOfParameter(parameters, "POINT:USED")],
  ]);
  const shapes = analogShapes(header, parameters);
  const types = stated([
    ["the header (word 7)", dataTypeOf(header.scale)],
    ["POINT:SCALE", dataTypeOf(numberOf(parameters, "POINT:SCALE", "signed"))],
  ]);
  const starts = dataStarts(header, parameters, firstDataBlock);
  const frames = statedFrames(header, parameters);
  const all: Shape[] = [];
  for (const { value: statedFrames } of frames)
    for (const { value: dataStartBlock } of starts)
      for (const { value: dataType } of types)
        for (const { value: shape } of shapes)
          for (const { value: count } of points)
            all.push({ points: count, ...shape, dataType, dataStartBlock, statedFrames });
  const fileBytes = parameters.words.length;
  const shape = all.reduce((best, each) => (misfit(each, fileBytes) < misfit(best, fileBytes) ? each : best));
  const room = fileBytes - dataStartOf(shape);
  // A start inside header or parameter section is none.
  const frameBytes = shape.dataStartBlock < firstDataBlock ? Number.POSITIVE_INFINITY : frameBytesOf(shape);
  const held = frameBytes === 0 ? shape.statedFrames : Math.max(0, Math.floor(room / frameBytes));
  const layout: FrameLayout = { ...shape, frames: Math.min(shape.statedFrames, held) };
  const findings: Finding[] = [
    ...disagreement("points", points, layout.points),
    ...shapeFindings(header, parameters, layout),
    ...disagreement("data type", types, layout.dataType),
    ...disagreement("data start", starts, layout.dataStartBlock),
    ...disagreement("frames", frames, layout.statedFrames),
  ];
  // The last block is filled up; whole frames beyond it are data that nobody states.
  const surplus = room - layout.statedFrames * frameBytesOf(layout);
  if (frameBytesOf(layout) > 0 && surplus >= Math.max(blockBytes, frameBytesOf(layout))) {
    const figures = { stated: layout.statedFrames, surplus: Math.floor(surplus / frameBytesOf(layout)) };
    const place = { at: "frame", frame: layout.statedFrames } as const;
    // Part of the recording would pass unseen.
    findings.push(finding("parts-contradict/frames-left-over", "warning", figures, { place }));
  }
  return { layout, findings };
}

/** Bytes of one frame. */
export function frameBytesOf({ points, channelCount, samplesPerFrame, dataType }: Omit<Shape, "statedFrames">): number {
  return (4 * points + samplesPerFrame * channelCount) * (dataType === "float" ? 4 : 2);
}

/** First byte of the data. */
export function dataStartOf({ dataStartBlock }: Pick<Shape, "dataStartBlock">): number {
  return (dataStartBlock - 1) * blockBytes;
}

/** How far the stated length is from the file's; what fills up the last block does not count. */
function misfit(shape: Shape, fileBytes: number): number {
  const surplus = fileBytes - dataStartOf(shape) - shape.statedFrames * frameBytesOf(shape);
  return surplus >= 0 && surplus < blockBytes ? 0 : Math.abs(surplus);
}

/** Statements without those that are missing; a later one that repeats an earlier value is left out. */
function stated<Value>(all: readonly (readonly [from: string, value: Value | undefined])[]): Statement<Value>[] {
  const kept: Statement<Value>[] = [];
  for (const [from, value] of all) {
    if (value !== undefined && !kept.some((each) => each.value === value)) kept.push({ value, from });
  }
  return kept;
}

function disagreement(
  about: C3dCount,
  all: readonly Statement<number | string>[],
  used: number | string,
): readonly Finding[] {
  if (all.length < 2) return [];
  const statements = all.map(({ from, value }) => ({ from, value }));
  const place = { at: "name", name: all[0]!.from } as const;
  return [finding("parts-contradict/statements", "warning", { about, statements, used }, { place })];
}

function dataTypeOf(scale: number | undefined): FrameLayout["dataType"] | undefined {
  if (scale === undefined || Number.isNaN(scale) || scale === 0) return undefined;
  return scale < 0 ? "float" : "integer";
}

/** Three counts, of which two give the third: values a frame, samples a frame, channels. */
function analogShapes(header: C3dHeader, parameters: Parameters): Statement<AnalogShape>[] {
  const { analogWords, samplesPerFrame } = header;
  const channels = countOfParameter(parameters, "ANALOG:USED");
  const shapes: Statement<AnalogShape>[] = [];
  const add = (channelCount: number, samples: number, from: string): void => {
    if (channelCount === 0) samples = 1;
    const isWhole = Number.isInteger(channelCount) && Number.isInteger(samples) && samples > 0;
    const isNew = !shapes.some(({ value }) => value.channelCount === channelCount && value.samplesPerFrame === samples);
    if (isWhole && isNew) shapes.push({ value: { channelCount, samplesPerFrame: samples }, from });
  };
  add(analogWords / samplesPerFrame, samplesPerFrame, "the header (words 3 and 10)");
  if (channels === 0) add(0, 1, "ANALOG:USED");
  else if (channels !== undefined) {
    add(channels, analogWords / channels, "the header (word 3) with ANALOG:USED");
    add(channels, samplesPerFrame, "the header (word 10) with ANALOG:USED");
  }
  // Rates never make the number of samples; they only decide between two that are stated.
  const pointRate = numberOf(parameters, "POINT:RATE", "signed") ?? header.frameRateHz;
  const ratio = (numberOf(parameters, "ANALOG:RATE", "signed") ?? Number.NaN) / pointRate;
  const rank = ({ value }: Statement<AnalogShape>): number => (value.samplesPerFrame === ratio ? 0 : 1);
  if (shapes.length > 1) shapes.sort((one, other) => rank(one) - rank(other));
  return shapes.length > 0
    ? shapes
    : [{ value: { channelCount: 0, samplesPerFrame: 1 }, from: "the header (words 3 and 10)" }];
}

/** Says where the values a frame that were used differ from what header and parameters state. */
function shapeFindings(
  { analogWords, samplesPerFrame }: C3dHeader,
  parameters: Parameters,
  used: AnalogShape,
): readonly Finding[] {
  const channels = countOfParameter(parameters, "ANALOG:USED") ?? used.channelCount;
  const words = used.channelCount * used.samplesPerFrame;
  const isOne = used.channelCount === 0 || samplesPerFrame === used.samplesPerFrame;
  if (channels === used.channelCount && words === analogWords && isOne) return [];
  return [
    finding(
      "parts-contradict/analog-values",
      "warning",
      {
        analogValues: analogWords,
        samplesPerFrame,
        channels,
        usedChannels: used.channelCount,
        usedSamplesPerFrame: used.samplesPerFrame,
      },
      { place: { at: "name", name: "the header (words 3 and 10)" } },
    ),
  ];
}

/** Blocks of the header and of the parameter section; a copy of 0 or 1 is one that was never filled in. */
function dataStarts(header: C3dHeader, parameters: Parameters, firstDataBlock: number): Statement<number>[] {
  const copy = countOfParameter(parameters, "POINT:DATA_START");
  const all = stated([
    ["the header (word 9)", header.dataStartBlock],
    ["POINT:DATA_START", copy === undefined || copy < 2 ? undefined : copy],
  ]);
  const possible = all.filter(({ value }) => value >= firstDataBlock);
  return possible.length > 0 ? possible : all;
}

function statedFrames(header: C3dHeader, parameters: Parameters): Statement<number>[] {
  const short = countOfParameter(parameters, "POINT:FRAMES");
  const long = countOfParameter(parameters, "POINT:LONG_FRAMES");
  const first = wideNumberOf(parameters, "TRIAL:ACTUAL_START_FIELD");
  const last = wideNumberOf(parameters, "TRIAL:ACTUAL_END_FIELD");
  const trial = first !== undefined && last !== undefined && last >= first ? Math.round(last - first) + 1 : undefined;
  const ofHeader = header.lastFrame >= header.firstFrame ? header.lastFrame - header.firstFrame + 1 : undefined;
  const isLong = short === mostFramesOfWord;
  const found = stated([
    ["POINT:FRAMES", isLong ? undefined : short],
    ["POINT:LONG_FRAMES", long],
    ["TRIAL:ACTUAL_START_FIELD and ACTUAL_END_FIELD", trial],
    // The header counts in 16 bits, so it says nothing about a long recording.
    ["the header (words 4 and 5)", isLong ? undefined : ofHeader],
  ]);
  return found.length > 0 ? found : [{ value: short ?? 0, from: "POINT:FRAMES" }];
}
