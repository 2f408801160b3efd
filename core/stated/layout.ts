import type { LayoutShape } from "../recording/layout-shape.ts";
import type { RememberedAnswers } from "../recording/request.ts";

/** A saved layout: applied to every file of its shape and to no other. */
export interface Layout {
  readonly schemaVersion: 1;
  readonly name: string;
  readonly shape: LayoutShape;
  readonly answers: RememberedAnswers;
}
