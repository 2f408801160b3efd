import type { C3dFindings } from "./c3d-findings.ts";
import type { TableFindings } from "./table-findings.ts";

/** The figures of what is found in `core/bytes`. */
export interface BytesFindings extends TableFindings, C3dFindings {}
