import type { BytesFindings } from "../../ground/findings/bytes-findings.ts";
import type { FindingSentences } from "../finding-sentences.ts";
import { findingsOfC3d } from "./findings-of-c3d.ts";
import { findingsOfTables } from "./findings-of-tables.ts";

/** What is said of the findings of `core/bytes`. */
export const findingsOfBytes: FindingSentences<BytesFindings> = { ...findingsOfTables, ...findingsOfC3d };
