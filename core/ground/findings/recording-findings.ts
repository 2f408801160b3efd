import type { ColumnFindings } from "./column-findings.ts";
import type { PlatformFindings } from "./platform-findings.ts";
import type { TimeFindings } from "./time-findings.ts";
import type { UnitFindings } from "./unit-findings.ts";

/** The figures of what is found in `core/recording`. */
export interface RecordingFindings extends ColumnFindings, UnitFindings, TimeFindings, PlatformFindings {}
