import type { SessionAnalysis, SessionInput } from "./analysis.ts";
import type { Settings } from "./settings.ts";

/** The whole path for one session: being written. */
export declare function analyzeSession(input: SessionInput, settings: Settings): SessionAnalysis;
