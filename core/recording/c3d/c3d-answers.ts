import type { LayoutAnswers } from "../reading-statements.ts";

/**
 * What a person has said about a C3D file; platforms stand where a table has columns, each by its number or name ("force
 * platform 2"). There is no time column; "none" agrees with that.
 */
export type C3dAnswers = Pick<
  LayoutAnswers,
  "rateHz" | "unit" | "time" | "left" | "right" | "total" | "platesStated" | "swapPlates" | "layout"
>;
