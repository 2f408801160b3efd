import type { Parameters } from "./parameters.ts";
import type { Words } from "./words.ts";

/** One analog channel as the file describes it. */
export interface AnalogChannel {
  /** From 1, as force platforms count them. */
  readonly number: number;
  /** "" where the file names nothing. */
  readonly label: string;
  /** As written; "" where the file is silent. */
  readonly unit: string;
  readonly scale: number;
  readonly offset: number;
}

/** Where the samples stand. */
export interface FrameLayout {
  /** Points in one frame. */
  readonly points: number;
  readonly channelCount: number;
  /** Analog samples of one channel in one frame. */
  readonly samplesPerFrame: number;
  readonly dataType: "integer" | "float";
  readonly dataStartBlock: number;
  readonly statedFrames: number;
  /** Whole frames the file really holds, at most the stated ones. */
  readonly frames: number;
}

/** A C3D file, understood as far as its analog channels need it. */
export interface C3dFile {
  readonly words: Words;
  readonly parameterBlock: number;
  readonly parameters: Parameters;
  readonly layout: FrameLayout;
  /** Number of the first frame in the original recording, from 1. */
  readonly firstFrame: number;
  /** Frames a second; undefined where the file states no rate. */
  readonly frameRateHz: number | undefined;
  /** Analog samples a second. */
  readonly analogRateHz: number | undefined;
  /** The common factor of all analog channels. */
  readonly generalScale: number;
  /** True where integer samples and offsets carry no sign. */
  readonly isUnsigned: boolean;
  readonly channels: readonly AnalogChannel[];
}
